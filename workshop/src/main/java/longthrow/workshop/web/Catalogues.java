package longthrow.workshop.web;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.Imported;
import longthrow.workshop.store.CatalogueEntry;

/** The catalogues that the owner keeps, read as one. */
public final class Catalogues {
    private static final int MOST_REMEMBERED = 4;

    private final Workbench bench;
    private final Lately<List<CatalogueEntry>, Imported> read = new Lately<>(MOST_REMEMBERED, this::fresh);
    private final Lately<CatalogueEntry, Imported> each = new Lately<>(64, this::one);

    /** Those in the store of a workbench. */
    public Catalogues(Workbench bench) {
        this.bench = bench;
    }

    /** Those from which parts are wanted. */
    public List<CatalogueEntry> active() {
        return bench.store().catalogues().stream()
                .filter(CatalogueEntry::active)
                .toList();
    }

    /** All rows of these catalogues. */
    public Imported together(List<CatalogueEntry> entries) {
        return read.of(entries);
    }

    /** The rows of one by itself. */
    public Imported alone(CatalogueEntry entry) {
        return each.of(entry);
    }

    private Imported fresh(List<CatalogueEntry> entries) {
        return Imported.together(entries.stream().map(each::of).collect(Collectors.toList()));
    }

    private Imported one(CatalogueEntry entry) {
        return read("", entry.name(), bench.store().content(entry));
    }

    /**
     * Reads a file as its name says.
     * @param kind of the rows of a CSV file; empty to be told by the file or its name
     */
    public static Imported read(String kind, String name, byte[] content) {
        String lower = name.toLowerCase(Locale.ROOT);
        return lower.endsWith(".yaml") || lower.endsWith(".yml")
                ? CatalogueFile.yaml(name, content)
                : CatalogueFile.csv(kind, name, content);
    }
}
