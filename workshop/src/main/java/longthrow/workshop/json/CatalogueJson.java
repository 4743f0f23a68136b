package longthrow.workshop.json;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.buildfile.Fault;
import longthrow.buildfile.Imported;
import longthrow.buildfile.Note;
import longthrow.buildfile.RowFate;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.PartKind;

/** The JSON of what became of catalogues, and its schema, docs/catalogue.schema.json. */
public final class CatalogueJson {
    /** Raised when a key changes its meaning or goes away; adding keys does not raise it. */
    private static final int FORMAT = 1;

    private record File(String name, Imported imported) {}

    private record Kind(String key, String label, int count) {}

    private record Document(List<File> files, Imported together) {}

    private static final JsonShape<Fault> FAULT = new JsonShape<Fault>()
            .number("line", "from 1; 0 for the file as a whole", Fault::line)
            .number("column", "from 1, in characters; 0 when not told", Fault::column)
            .text("where", "header of the column or key path", Fault::path)
            .text("found", "what stands there, shortened", Fault::found)
            .text("why", "what is wrong with it", Fault::why)
            .text("allowed", "what fits there", Fault::allowed)
            .text("mend", "what to write instead", Fault::mend);

    private static final JsonShape<Note> NOTE = new JsonShape<Note>()
            .number("line", "from 1", Note::line)
            .text("where", "header of the column or key path", Note::path)
            .text("text", "how it was understood, or what to look at", Note::text);

    private static final JsonShape<File> FILE = new JsonShape<File>()
            .text("file", "name as given", File::name)
            .number("rows", "read in it", f -> f.imported().fates().size())
            .list(
                    "faults",
                    "of the file as a whole; rows may not have been looked at",
                    FAULT,
                    f -> f.imported().faults())
            .list(
                    "notes",
                    "how anything unusual of the whole file was understood",
                    NOTE,
                    f -> f.imported().notes());

    private static final JsonShape<Kind> KIND = new JsonShape<Kind>()
            .text("kind", "as in catalogues and build files", Kind::key)
            .text("label", "name for people", Kind::label)
            .number("count", "rows kept", Kind::count);

    private static final JsonShape<RowFate> ROW = new JsonShape<RowFate>()
            .text("file", "name as given", RowFate::file)
            .number("line", "from 1", RowFate::line)
            .text("code", "as written; empty when it has none", RowFate::code)
            .word(
                    "outcome",
                    "what became of it",
                    Arrays.stream(RowFate.Outcome.values())
                            .map(RowFate.Outcome::label)
                            .toList(),
                    f -> f.outcome().label())
            .text("other", "file and line of the row it is the same as, or shares its code with", RowFate::other)
            .list("reasons", "why it was refused", FAULT, RowFate::reasons)
            .list("remarks", "what to look at all the same", NOTE, RowFate::remarks);

    private static final JsonShape<Document> REPORT = new JsonShape<Document>()
            .list("files", "read, in order", FILE, Document::files)
            .list(
                    "kinds",
                    "what there is, rows refused left out",
                    KIND,
                    d -> kinds(d.together().catalogue()))
            .list(
                    "rows",
                    "every row that was not plainly kept",
                    ROW,
                    d -> d.together().fates().stream()
                            .filter(f -> f.outcome() != RowFate.Outcome.KEPT
                                    || !f.remarks().isEmpty())
                            .toList());

    private static final JsonDocument<Document> DOCUMENT = new JsonDocument<>(
            FORMAT,
            "Longthrow catalogue report",
            "What became of catalogues, as printed by 'catalogue --json'.",
            REPORT);

    private CatalogueJson() {}

    /**
     * The document, ended by a line feed.
     * @param files    each by itself, under its name
     * @param together all as one
     */
    public static String of(Map<String, Imported> files, Imported together) {
        List<File> each = files.entrySet().stream()
                .map(e -> new File(e.getKey(), e.getValue()))
                .toList();
        return DOCUMENT.of(new Document(each, together));
    }

    /** How many rows of each kind there are, by the kind's name for people. */
    public static Map<String, Integer> counts(Catalogue catalogue) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        kinds(catalogue).forEach(k -> counts.put(k.label(), k.count()));
        return counts;
    }

    private static List<Kind> kinds(Catalogue catalogue) {
        Map<PartKind, Integer> counts = new EnumMap<>(PartKind.class);
        catalogue.parts().forEach(p -> counts.merge(p.kind(), 1, Integer::sum));
        List<Kind> kinds = new ArrayList<>();
        counts.forEach((kind, count) -> kinds.add(new Kind(kind.key(), kind.label(), count)));
        if (!catalogue.operations().isEmpty()) {
            kinds.add(new Kind(
                    "machine_operation",
                    "machine operation",
                    catalogue.operations().size()));
        }
        return kinds;
    }

    /** The JSON Schema (draft 2020-12) of every document that {@link #of} writes. */
    public static String schema() {
        return DOCUMENT.schema();
    }
}
