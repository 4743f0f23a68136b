package longthrow.workshop.web.parts;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * The catalogues that are kept, and the way to another.
 * @param kinds of rows that a CSV file may hold
 */
public record PartsPage(Frame frame, List<Kept> kept, List<String> kinds, boolean demoIsKept) {
    public PartsPage {
        kept = List.copyOf(kept);
        kinds = List.copyOf(kinds);
    }

    /** How many files in use hold nothing but what was made up. */
    public long inventedInUse() {
        return kept.stream().filter(k -> k.invented() && k.active()).count();
    }

    /** How many such files are left out of searches. */
    public long inventedLeftOut() {
        return kept.stream().filter(k -> k.invented() && !k.active()).count();
    }

    /** A catalogue that is kept. */
    public record Kept(String id, String name, String counts, String imported, boolean active, boolean invented) {}
}
