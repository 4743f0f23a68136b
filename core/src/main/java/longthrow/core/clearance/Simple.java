package longthrow.core.clearance;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;

/** Whether the edges of an outline keep away from each other. */
final class Simple {
    /** Digits of a coordinate that is named; layout. */
    private static final MathContext SHOWN = new MathContext(6);

    private Simple() {}

    /**
     * Two edges that meet where they should not, or one corner at which an outline runs back over itself.
     * @param one   edge, from 0
     * @param other edge, from 0; the next one for a corner
     * @param near  where they meet [m]
     */
    record Crossing(Edges edges, int one, int other, boolean isSpike, Point near) {
        /** In metres. */
        String inMetres() {
            return isSpike
                    ? String.format(
                            Locale.ROOT,
                            "the outline runs back over itself at %.6f, %.6f m (corner %d); leave that corner out",
                            near.x(),
                            near.y(),
                            other + 1)
                    : String.format(
                            Locale.ROOT,
                            "edges %d and %d of the outline cross or touch near %.6f, %.6f m; an outline may not meet itself:"
                                    + " look for points in the wrong order or entered twice",
                            one + 1,
                            other + 1,
                            near.x(),
                            near.y());
        }

        /**
         * In the numbers of the text it was read from.
         * @param unit length of one unit of it [m]
         * @param up   1 where its y counts upwards, -1 where down
         */
        String inUnits(double unit, int up) {
            String where = shown(near.x(), near.y(), unit, up);
            return isSpike
                    ? "runs back over itself at " + where + ", in units of the drawing"
                    : "the edge " + edge(one, unit, up) + " and the edge " + edge(other, unit, up)
                            + " cross or touch near " + where + ", in units of the drawing";
        }

        private String edge(int edge, double unit, int up) {
            double[] row = edges.row;
            int at = edge * Edges.ROW;
            return "from " + shown(row[at + Edges.X0], row[at + Edges.Y0], unit, up) + " to "
                    + shown(row[at + Edges.X1], row[at + Edges.Y1], unit, up);
        }

        private static String shown(double x, double y, double unit, int up) {
            return shown(x / unit) + ", " + shown(up * y / unit);
        }

        private static String shown(double number) {
            return BigDecimal.valueOf(number + 0.0)
                    .round(SHOWN)
                    .stripTrailingZeros()
                    .toPlainString();
        }
    }

    /** The first two edges that cross or touch and should not. */
    static Optional<Crossing> crossing(Edges edges) {
        EdgeGap gap = new EdgeGap();
        for (int i = 0; i < edges.count; i++) {
            if (isSpike(edges, i)) {
                return Optional.of(new Crossing(
                        edges,
                        i,
                        edges.next[i],
                        true,
                        new Point(edges.row[i * Edges.ROW + Edges.X1], edges.row[i * Edges.ROW + Edges.Y1])));
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
                    return Optional.of(new Crossing(edges, i, j, false, meeting(edges, i, j)));
                }
            }
        }
        return Optional.empty();
    }

    /** Where two straight edges meet; of arcs, and of edges along each other, the middle of the first. */
    private static Point meeting(Edges edges, int one, int other) {
        int a = one * Edges.ROW;
        int b = other * Edges.ROW;
        double[] row = edges.row;
        double ax = row[a + Edges.X1] - row[a + Edges.X0];
        double ay = row[a + Edges.Y1] - row[a + Edges.Y0];
        double bx = row[b + Edges.X1] - row[b + Edges.X0];
        double by = row[b + Edges.Y1] - row[b + Edges.Y0];
        double cross = ax * by - ay * bx;
        boolean isAlong = Math.abs(cross) <= 1e-9 * Math.hypot(ax, ay) * Math.hypot(bx, by);
        if (isAlong || edges.isArc(one) || edges.isArc(other)) {
            return new Point(edges.middleX(one), edges.middleY(one));
        }
        double share =
                ((row[b + Edges.X0] - row[a + Edges.X0]) * by - (row[b + Edges.Y0] - row[a + Edges.Y0]) * bx) / cross;
        return new Point(row[a + Edges.X0] + share * ax, row[a + Edges.Y0] + share * ay);
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
