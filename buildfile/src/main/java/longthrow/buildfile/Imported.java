package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;

/**
 * What became of a catalogue file, or of several.
 * @param parts      kept, in the order of the file
 * @param operations kept, in the order of the file
 * @param fates      of every row, in the order of the file
 * @param faults     of the file as a whole; with one of them, rows may not have been looked at
 * @param notes      how anything unusual of the file as a whole was understood
 */
public record Imported(
        List<CataloguePart> parts,
        List<Operation> operations,
        List<RowFate> fates,
        List<Fault> faults,
        List<Note> notes) {
    public Imported {
        parts = List.copyOf(parts);
        operations = List.copyOf(operations);
        fates = List.copyOf(fates);
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
    }

    static Imported refused(List<Fault> faults) {
        return new Imported(List.of(), List.of(), List.of(), faults, List.of());
    }

    /** Several files as one catalogue: the same row or the same code in two of them is seen. */
    public static Imported together(List<Imported> files) {
        if (files.size() == 1) {
            return files.get(0);
        }
        Rows rows = new Rows();
        List<Fault> faults = new ArrayList<>();
        List<Note> notes = new ArrayList<>();
        files.forEach(file -> {
            rows.addAll(file);
            faults.addAll(file.faults());
            notes.addAll(file.notes());
        });
        return rows.imported(faults, notes);
    }

    public Catalogue catalogue() {
        return new Catalogue(parts, operations);
    }

    /** Whether every row of every file was taken. */
    public boolean isClean() {
        return faults.isEmpty() && fates.stream().noneMatch(f -> f.outcome().isRefused());
    }
}
