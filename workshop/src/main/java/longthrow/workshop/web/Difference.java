package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.List;
import longthrow.workshop.store.Comparison;
import longthrow.workshop.store.DiffLine;

/** What is different between two revisions, for a page: the lines that changed with a few around them. */
public final class Difference {
    /** Lines shown before and after a change; layout. */
    private static final int AROUND = 2;

    private Difference() {}

    /**
     * A line.
     * @param kind for the style sheet: same, added, removed or gap
     * @param sign beside the line, so that colour is not the only sign
     * @param word for those who hear the page
     */
    public record Line(String kind, String sign, String word, String text) {}

    /** The changed lines and those around them. */
    public static List<Line> of(Comparison comparison) {
        return of(comparison.lines());
    }

    /** As the other, of texts that are no revisions. */
    public static List<Line> of(List<DiffLine> all) {
        List<Line> shown = new ArrayList<>();
        boolean gap = false;
        for (int i = 0; i < all.size(); i++) {
            if (isNear(all, i)) {
                shown.add(line(all.get(i)));
                gap = false;
            } else if (!gap) {
                shown.add(new Line("gap", "…", "lines that are the same", ""));
                gap = true;
            }
        }
        return shown;
    }

    private static boolean isNear(List<DiffLine> all, int at) {
        int from = Math.max(0, at - AROUND);
        int to = Math.min(all.size(), at + AROUND + 1);
        return all.subList(from, to).stream().anyMatch(line -> !line.same());
    }

    private static Line line(DiffLine line) {
        return line.same()
                ? new Line("same", " ", "same", line.text())
                : line.added()
                        ? new Line("added", "+", "now", line.text())
                        : new Line("removed", "−", "was", line.text());
    }
}
