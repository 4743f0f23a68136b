package longthrow.core.quantity;

import java.util.List;
import java.util.Optional;

/**
 * What a person stated: a value, perhaps with its doubt.
 *
 * @param written the whole text, as it was
 * @param expandedDoubt the ± as typed, not negative: half width of the 95 % interval (JCGM 100:2008, 6.2)
 * @param notes how anything unusual was understood, to be said back: "read 16,2 as 16.2"
 */
public record Stated(String written, Quantity value, Optional<Quantity> expandedDoubt, List<String> notes) {
    public Stated {
        notes = List.copyOf(notes);
        Dimension wanted = value.dimension().ofDifference();
        expandedDoubt.ifPresent(doubt -> {
            if (doubt.dimension() != wanted || doubt.siFraction().signum() < 0) {
                throw new IllegalArgumentException("doubt is '" + doubt.written() + "'; for '" + value.written()
                        + "' it must be " + wanted.withArticle() + " of zero or more");
            }
        });
    }
}
