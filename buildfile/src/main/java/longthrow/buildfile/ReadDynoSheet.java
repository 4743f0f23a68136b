package longthrow.buildfile;

import java.util.List;
import java.util.Optional;
import longthrow.core.dyno.DynoSheet;

/**
 * What became of a sheet of runs.
 * @param sheet  empty if there is a fault
 * @param faults all of them, in the order of the file
 * @param notes  how anything unusual was understood
 */
public record ReadDynoSheet(Optional<DynoSheet> sheet, List<Fault> faults, List<Note> notes) {
    public ReadDynoSheet {
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
    }
}
