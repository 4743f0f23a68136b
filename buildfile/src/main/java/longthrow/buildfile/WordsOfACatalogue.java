package longthrow.buildfile;

import java.util.List;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.term.Part;

/** The part of the glossary on catalogues of parts. */
final class WordsOfACatalogue {
    private WordsOfACatalogue() {}

    static void write(Markdown page) {
        page.heading(2, "Catalogues of parts");
        page.line("A CSV file holds one kind of part, told by its name (`connecting_rod.csv`) or by a line"
                + " `# kind: connecting_rod` above its header; `# invented: yes` there says that it is made up. Cells are parted"
                + " by commas, semicolons or tabs; where by semicolons or tabs, a decimal comma is taken. A header names a figure"
                + " by its key or label, with the unit of bare numbers in brackets or behind a space: `length [mm]`. A unit in a"
                + " cell goes before that of the header; a number without any is refused. What stands behind a ± in the cell is a doubt of"
                + " 95 in 100; half the width of a limit that no piece exceeds has its own column: `length ±` or `length"
                + " tolerance`. An empty cell or `unknown` says nothing. A header"
                + " that begins with # is left out.");
        page.line("");
        page.line("A YAML file holds several kinds: `" + CatalogueFile.VERSION + ": " + CatalogueFile.FORMAT_VERSION
                + "`, `invented: yes`, and a list for each, such as `crankshafts: [{code: M-1, stroke: 56.50 mm ± 0.02 mm,"
                + " price: 120 EUR}]`. Its keys are those of the columns; a limit is `stroke_tolerance: 0.02 mm`.");
        page.line("");
        page.head("kind", "list in YAML", "sections of the build file whose terms and words it may state");
        for (Shelf shelf : Shelf.all()) {
            PartKind kind = shelf.kind();
            page.row(
                    "`" + shelf.key() + "` " + shelf.label(),
                    "`" + shelf.plural() + "`",
                    kind == null
                            ? "none: see its columns below"
                            : kind == PartKind.DONOR_ENGINE
                                    ? "all, written `section.key`"
                                    : Markdown.keys(kind.sections().stream()
                                            .map(Part::key)
                                            .toList()));
        }
        page.line("");
        page.line("Columns of every kind, besides figures and words:");
        page.line("");
        page.head("column", "what stands in it", "also taken");
        for (CatalogueLabel label : CatalogueLabel.values()) {
            List<String> others = label.others();
            page.row("`" + label.key() + "`", label.meaning(), others.isEmpty() ? "" : Markdown.keys(others));
        }
        page.line("");
        page.line("Machine operations, each measured from its datum; the range is metal taken off, or the size made:");
        page.line("");
        page.head("operation", "what is done", "datum", "changes first", "range", "what else follows");
        for (Operation.Kind kind : Operation.Kind.values()) {
            page.row(
                    "`" + kind.key() + "`",
                    kind.label(),
                    kind.datum(),
                    "`" + kind.changes().path() + "`",
                    kind.takesOff() ? "taken off" : "size made",
                    kind.consequences());
        }
    }
}
