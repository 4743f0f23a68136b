package longthrow.workshop.store;

import java.util.List;

/** What is different between two revisions of a build, all lines of both in their order. */
public record Comparison(RevisionEntry before, RevisionEntry after, List<DiffLine> lines) {
    /** Keeps its own copy of the lines. */
    public Comparison {
        lines = List.copyOf(lines);
    }

    /** Whether both texts are the same to the last sign. */
    public boolean same() {
        return lines.stream().allMatch(DiffLine::same);
    }
}
