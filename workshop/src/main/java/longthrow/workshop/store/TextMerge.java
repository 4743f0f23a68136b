package longthrow.workshop.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Two edits of one text brought together line by line, where they touch different lines. */
public final class TextMerge {
    private TextMerge() {}

    /**
     * Lines of the text that were begun with, taken out and put in.
     * @param from  first line taken out, counted from 0
     * @param to    behind the last one; as {@code from} where lines were only put in
     * @param lines put in, each with the sign that ends it
     */
    private record Change(int from, int to, List<String> lines) {
        /** Whether both are about one line, or put lines in at one place. */
        boolean touches(Change other) {
            boolean overlap = from < other.to && other.from < to;
            boolean putInThere = isPutIn() && other.from <= from && from <= other.to;
            boolean putInHere = other.isPutIn() && from <= other.from && other.from <= to;
            return overlap || putInThere || putInHere;
        }

        private boolean isPutIn() {
            return from == to;
        }
    }

    /**
     * The text with both edits in it; empty where they touch the same lines.
     * @param begun  what both began with
     * @param mine   the one edit
     * @param theirs the other
     */
    public static Optional<String> of(String begun, String mine, String theirs) {
        List<Change> both = new ArrayList<>(changes(begun, mine));
        for (Change other : changes(begun, theirs)) {
            if (both.stream().anyMatch(other::equals)) {
                continue; // the same in both
            }
            if (both.stream().anyMatch(other::touches)) {
                return Optional.empty();
            }
            both.add(other);
        }
        both.sort((a, b) -> Integer.compare(a.from(), b.from()));
        List<String> lines = LineDiff.lines(begun);
        StringBuilder text = new StringBuilder();
        int at = 0;
        for (Change change : both) {
            lines.subList(at, change.from()).forEach(text::append);
            change.lines().forEach(text::append);
            at = change.to();
        }
        lines.subList(at, lines.size()).forEach(text::append);
        return Optional.of(text.toString());
    }

    /** What is different between two texts, all lines of both in their order. */
    public static List<DiffLine> difference(String before, String after) {
        return LineDiff.of(before, after);
    }

    private static List<Change> changes(String before, String after) {
        List<String> written = LineDiff.lines(after);
        List<Change> changes = new ArrayList<>();
        List<String> put = new ArrayList<>();
        int at = 0;
        int from = 0;
        boolean open = false;
        for (DiffLine line : LineDiff.of(before, after)) {
            if (line.same()) {
                if (open) {
                    changes.add(new Change(from, at, List.copyOf(put)));
                }
                open = false;
                at++;
                continue;
            }
            if (!open) {
                open = true;
                from = at;
                put.clear();
            }
            if (line.added()) {
                put.add(written.get(line.after().orElseThrow() - 1));
            } else {
                at++;
            }
        }
        if (open) {
            changes.add(new Change(from, at, List.copyOf(put)));
        }
        return changes;
    }
}
