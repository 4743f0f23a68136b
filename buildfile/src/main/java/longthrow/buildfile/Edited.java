package longthrow.buildfile;

import java.util.List;
import java.util.Optional;

/**
 * What became of an edit.
 * @param text   the whole file with the one value changed; there when nothing is wrong
 * @param faults of the new value, or of the file as it stood
 */
public record Edited(Optional<String> text, List<Fault> faults) {
    public Edited {
        faults = List.copyOf(faults);
        if (text.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("an edited text is there when there is no fault, and only then");
        }
    }
}
