package longthrow.buildfile;

import java.util.List;
import java.util.Optional;
import longthrow.core.build.Build;

/**
 * What became of a build file.
 * @param build  there when nothing is wrong; half an engine is never handed on
 * @param faults all that is wrong, in the order of the file
 * @param notes  how anything unusual was understood
 */
public record ReadBuild(Optional<Build> build, List<Fault> faults, List<Note> notes) {
    public ReadBuild {
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
        if (build.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("a build is there when there is no fault, and only then");
        }
    }
}
