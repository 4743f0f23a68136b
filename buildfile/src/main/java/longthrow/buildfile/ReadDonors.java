package longthrow.buildfile;

import java.util.List;
import java.util.Optional;
import longthrow.core.build.Donor;

/**
 * What became of a catalogue of donors.
 * @param donors   there when nothing is wrong
 * @param invented whether the catalogue says that it is made up
 * @param faults   all that is wrong, in the order of the file
 * @param notes    how anything unusual was understood
 */
public record ReadDonors(Optional<List<Donor>> donors, boolean invented, List<Fault> faults, List<Note> notes) {
    public ReadDonors {
        donors = donors.map(List::copyOf);
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
        if (donors.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("donors are there when there is no fault, and only then");
        }
    }
}
