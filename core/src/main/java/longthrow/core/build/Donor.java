package longthrow.core.build;

import java.util.Map;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A version of a donor engine and the figures that tell it from its look-alikes.
 * @param name    of the version
 * @param note    what to know about it
 * @param figures nominal figure and half-width of the spread among engines of this version
 */
public record Donor(String name, String note, Map<Term, Figure> figures) {
    public Donor {
        figures = Map.copyOf(figures);
    }

    /**
     * A figure that tells versions apart.
     * @param nominal figure
     * @param spread half-width, rectangular; null when the sheet gives none
     */
    public record Figure(Quantity nominal, @Nullable Quantity spread) {}
}
