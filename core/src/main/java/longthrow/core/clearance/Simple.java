package longthrow.core.clearance;

import java.util.Locale;
import java.util.Optional;

/** Whether the edges of an outline keep away from each other. */
final class Simple {
    private Simple() {}

    /** Says where two edges cross or touch that should not. */
    static Optional<String> crossing(Edges edges) {
        EdgeGap gap = new EdgeGap();
        for (int i = 0; i < edges.count; i++) {
            if (isSpike(edges, i)) {
                return Optional.of(String.format(
                        Locale.ROOT,
                        "the outline runs back over itself at %.6f, %.6f m (corner %d); leave that corner out",
                        edges.row[i * Edges.ROW + Edges.X1],
                        edges.row[i * Edges.ROW + Edges.Y1],
                        edges.next[i] + 1));
            }
            double reach = 0.5 * edges.length(i);
            for (int j = i + 1; j < edges.count; j++) {
                double far = reach + 0.5 * edges.length(j);
                if (Math.abs(edges.middleX(i) - edges.middleX(j)) > far
                        || Math.abs(edges.middleY(i) - edges.middleY(j)) > far) {
                    continue;
                }
                gap.start(Edges.SAME * Edges.SAME);
                int corner = edges.next[i] == j ? j : i;
                boolean adjacent = edges.next[i] == j || edges.next[j] == i;
                gap.sharing(
                        adjacent ? edges.row[corner * Edges.ROW] : Double.NaN,
                        adjacent ? edges.row[corner * Edges.ROW + Edges.Y0] : Double.NaN);
                gap.between(edges.row, i * Edges.ROW, edges.row, j * Edges.ROW);
                if (gap.crossing || (!adjacent && gap.square < Edges.SAME * Edges.SAME)) {
                    return Optional.of(String.format(
                            Locale.ROOT,
                            "edges %d and %d of the outline cross or touch near %.6f, %.6f m; an outline may not meet itself:"
                                    + " look for points in the wrong order or entered twice",
                            i + 1,
                            j + 1,
                            edges.middleX(i),
                            edges.middleY(i)));
                }
            }
        }
        return Optional.empty();
    }

    /** Whether the next edge leaves straight back along this one. */
    private static boolean isSpike(Edges edges, int edge) {
        int at = edge * Edges.ROW;
        double[] here = new double[2];
        double[] there = new double[2];
        edges.normal(edge, edges.row[at + Edges.X1], edges.row[at + Edges.Y1], here);
        edges.normal(edges.next[edge], edges.row[at + Edges.X1], edges.row[at + Edges.Y1], there);
        return here[0] * there[0] + here[1] * there[1] < -1 + 1e-12;
    }
}
