package longthrow.buildfile;

import java.util.List;
import java.util.Optional;

/**
 * What became of an edit.
 * @param text   the whole file with the one value changed; there when nothing is wrong
 * @param faults of the new value, or of the file as it stood
 * @param read   what {@link BuildFile#read(String)} makes of the text, where it had to be read on the way
 */
public record Edited(Optional<String> text, List<Fault> faults, Optional<ReadBuild> read) {
    public Edited {
        faults = List.copyOf(faults);
        if (text.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("an edited text is there when there is no fault, and only then");
        }
    }

    /** Not read on the way. */
    public Edited(Optional<String> text, List<Fault> faults) {
        this(text, faults, Optional.empty());
    }
}
