package longthrow.core.clearance;

/**
 * Signed gap of two outlines that moved: their distance when apart, minus the depth of penetration when not. The other outline is carried into the frame of
 * the first by a turn and a shift. The two edges that were nearest last time, and their neighbours, mostly still are: a strip that parts the outlines there proves it. Where none
 * does, two trees of circles are gone down together, nearest first, from what is known already: measured in docs/measurements.md. Belongs to one thread.
 */
final class OutlineGap {
    private static final int STACK = 512;
    /** Below this distance [m] the outlines may as well lie on each other, and depth is looked for. */
    private static final double TOUCHING = 1e-9;
    /** Of two ways to work out one distance [m]; a thousandth of what lies below {@link #TOUCHING}. */
    private static final double ROUND_OFF = 1e-12;
    /** After so many questions in a row that no strip answered, one is tried only every so often; a judgement, on which only speed hangs. */
    private static final int HOLLOW = 8;

    private final Edges a;
    private final Edges b;
    private final Overlap overlap;
    private final EdgeGap edges = new EdgeGap();
    private final double[] moved = new double[Edges.ROW];
    private final int[] stackA = new int[STACK];
    private final int[] stackB = new int[STACK];
    private final double[] bounds = new double[STACK];
    private final double[] scratch = new double[2];
    private int warmA;
    private int warmB;
    private int hollows; // questions in a row that no strip answered
    private double c = 1;
    private double s;
    private double tx;
    private double ty;

    /** Nearest points, or deepest point and the nearest edge to it, in the frame of the first outline, after {@link #gap}. */
    double ax;

    double ay;
    double bx;
    double by;
    /** How often an exact gap was worked out. */
    long evaluations;

    OutlineGap(Outline one, Outline other) {
        a = one.edges();
        b = other.edges();
        overlap = new Overlap(one, other);
    }

    /** Where the frame of the other outline stands in that of the first: cosine and sine of its turn from +y towards +x, and its origin. */
    void place(double cosine, double sine, double x, double y) {
        c = cosine;
        s = sine;
        tx = x;
        ty = y;
    }

    /**
     * Gap here.
     * @param enough from which on any value will do: a distance where the outlines are surely apart, or minus a depth whatever they are; infinite to have it exactly
     */
    double gap(double enough) {
        return gap(enough, true);
    }

    /**
     * The same, with the depth left out where only contact is asked for: then any overlap is minus infinity.
     * @param deep whether depth is wanted
     */
    double gap(double enough, boolean deep) {
        evaluations++;
        if (enough < 0) {
            double least = -enough;
            double depth = overlap.depth(c, s, tx, ty, least);
            if (depth > least) {
                atDeepest();
            }
            return -depth;
        }
        edges.start(Double.POSITIVE_INFINITY);
        warm();
        boolean tries = hollows < HOLLOW || evaluations % HOLLOW == 0;
        if (tries && !edges.crossing && (isParted(enough) || (climb() && isParted(enough)))) {
            hollows = 0;
            double distance = Math.sqrt(edges.square);
            atNearest();
            return Math.min(distance, enough);
        }
        hollows++;
        double best = edges.crossing ? 0 : descend(Math.min(Math.sqrt(edges.square), enough));
        if (!edges.crossing && best >= enough) {
            return best;
        }
        if (!edges.crossing && best > TOUCHING && isOutside()) {
            atNearest();
            return best;
        }
        if (!deep && (edges.crossing || best > TOUCHING)) {
            return Double.NEGATIVE_INFINITY;
        }
        double depth = overlap.depth(c, s, tx, ty, 0);
        atDeepest();
        if (depth <= 0) {
            atNearest();
            return 0;
        }
        return -depth;
    }

    /** Whether the deepest point is one of the first outline, within the other; after a depth. */
    boolean isOneWithin() {
        return overlap.isOneWithin;
    }

    /** As {@link Overlap#findsRidge}. */
    boolean findsRidge() {
        return overlap.findsRidge();
    }

    double ridgeX() {
        return overlap.ridgeX;
    }

    double ridgeY() {
        return overlap.ridgeY;
    }

    double ridgeShare() {
        return overlap.ridgeShare;
    }

    private void atNearest() {
        ax = edges.ax;
        ay = edges.ay;
        bx = edges.bx;
        by = edges.by;
    }

    private void atDeepest() {
        ax = overlap.inX;
        ay = overlap.inY;
        bx = overlap.outX;
        by = overlap.outY;
    }

    private void warm() {
        carry(warmB);
        edges.between(a.row, warmA * Edges.ROW, moved, 0);
    }

    /**
     * Whether a strip square to the line between the nearest points so far parts the outlines, as wide as they are apart or as {@code enough}: then they are apart, and no
     * two points are nearer. It never says so wrongly; around hollows it may not say so where they are apart, which the trees then tell.
     */
    private boolean isParted(double enough) {
        double distance = Math.sqrt(edges.square);
        if (edges.crossing || distance <= TOUCHING) {
            return false;
        }
        double nx = (edges.bx - edges.ax) / distance;
        double ny = (edges.by - edges.ay) / distance;
        double slack = 0.5 * Math.max(0, distance - enough) + ROUND_OFF;
        double ofA = nx * edges.ax + ny * edges.ay + slack;
        if (a.reach(nx, ny, ofA, stackA) > ofA) {
            return false;
        }
        double ofB = slack - nx * (edges.bx - tx) - ny * (edges.by - ty);
        return b.reach(s * ny - c * nx, -s * nx - c * ny, ofB, stackA) <= ofB;
    }

    /** Goes on to neighbouring edges as long as they are nearer, and says whether any was and none cross. */
    private boolean climb() {
        double before = edges.square;
        double last;
        do {
            last = edges.square;
            carry(warmB);
            boolean done =
                    tryA(a.next[warmA]) || tryA(a.previous[warmA]) || tryB(b.next[warmB]) || tryB(b.previous[warmB]);
            if (done) {
                return false;
            }
        } while (edges.square < last);
        return edges.square < before;
    }

    /** Takes an edge of the first for the warm one if it is nearer; whether the two cross. */
    private boolean tryA(int edge) {
        double before = edges.square;
        edges.between(a.row, edge * Edges.ROW, moved, 0);
        if (edges.square < before || edges.crossing) {
            warmA = edge;
        }
        return edges.crossing;
    }

    /** The same of the other. */
    private boolean tryB(int edge) {
        double before = edges.square;
        carry(edge);
        edges.between(a.row, warmA * Edges.ROW, moved, 0);
        if (edges.square < before || edges.crossing) {
            warmB = edge;
        }
        return edges.crossing;
    }

    /** Whether the nearest points lie outside each other's outline; with no edges crossing the outlines then do. */
    private boolean isOutside() {
        if (a.side(warmA, edges.ax, edges.ay, edges.bx, edges.by, scratch) < 0) {
            return false;
        }
        double px = edges.bx - tx;
        double py = edges.by - ty;
        double qx = edges.ax - tx;
        double qy = edges.ay - ty;
        return b.side(warmB, c * px - s * py, s * px + c * py, c * qx - s * qy, s * qx + c * qy, scratch) >= 0;
    }

    private void carry(int edge) {
        int at = edge * Edges.ROW;
        double[] row = b.row;
        for (int k = 0; k <= Edges.X1; k += 2) {
            moved[k] = c * row[at + k] + s * row[at + k + 1] + tx;
            moved[k + 1] = -s * row[at + k] + c * row[at + k + 1] + ty;
        }
        moved[Edges.R] = row[at + Edges.R];
        if (row[at + Edges.R] > 0) {
            moved[Edges.CX] = c * row[at + Edges.CX] + s * row[at + Edges.CY] + tx;
            moved[Edges.CY] = -s * row[at + Edges.CX] + c * row[at + Edges.CY] + ty;
            moved[Edges.MX] = c * row[at + Edges.MX] + s * row[at + Edges.MY];
            moved[Edges.MY] = -s * row[at + Edges.MX] + c * row[at + Edges.MY];
            moved[Edges.COS] = row[at + Edges.COS];
        }
    }

    /** Lower bound on the distance of what two nodes hold; where one holds a single edge that is long beside the other, from that edge instead of the circle about it. */
    private double bound(int i, int j, double best) {
        double x = c * b.nodeX[j] + s * b.nodeY[j] + tx;
        double y = -s * b.nodeX[j] + c * b.nodeY[j] + ty;
        double dx = x - a.nodeX[i];
        double dy = y - a.nodeY[i];
        double ra = a.nodeR[i];
        double rb = b.nodeR[j];
        double circles = Math.sqrt(dx * dx + dy * dy) - ra - rb;
        if (circles >= best) {
            return circles;
        }
        if (a.left[i] < 0 && ra > rb) {
            return Math.max(circles, a.distance(-1 - a.left[i], x, y) - rb);
        }
        if (b.left[j] < 0 && rb > ra) {
            double px = a.nodeX[i] - tx;
            double py = a.nodeY[i] - ty;
            return Math.max(circles, b.distance(-1 - b.left[j], c * px - s * py, s * px + c * py) - ra);
        }
        return circles;
    }

    /**
     * Lower bound on the distance of two edges, from the whole circle of each arc: exact where the nearest points face each other, so that the other arcs of a circle
     * are passed over once the right one is known.
     */
    private double atLeast(int edgeA, int edgeB) {
        int i = edgeA * Edges.ROW;
        int j = edgeB * Edges.ROW;
        double[] rowA = a.row;
        double[] rowB = b.row;
        double ra = rowA[i + Edges.R];
        double rb = rowB[j + Edges.R];
        if (rb > 0) {
            double x = c * rowB[j + Edges.CX] + s * rowB[j + Edges.CY] + tx;
            double y = -s * rowB[j + Edges.CX] + c * rowB[j + Edges.CY] + ty;
            if (ra > 0) {
                double dx = x - rowA[i + Edges.CX];
                double dy = y - rowA[i + Edges.CY];
                double d = Math.sqrt(dx * dx + dy * dy);
                return Math.max(d - ra - rb, Math.abs(ra - rb) - d);
            }
            return toCircle(a, edgeA, x, y, rb);
        }
        if (ra > 0) {
            double px = rowA[i + Edges.CX] - tx;
            double py = rowA[i + Edges.CY] - ty;
            return toCircle(b, edgeB, c * px - s * py, s * px + c * py, ra);
        }
        return 0;
    }

    /** The same of a straight edge and a whole circle. */
    private static double toCircle(Edges of, int edge, double x, double y, double radius) {
        double outside = of.distance(edge, x, y) - radius;
        return outside >= 0 ? outside : radius - of.farthestEnd(edge, x, y);
    }

    private double descend(double toBeat) {
        double best = toBeat;
        int top = 0;
        stackA[0] = 0;
        stackB[0] = 0;
        bounds[0] = bound(0, 0, best);
        while (top >= 0) {
            int i = stackA[top];
            int j = stackB[top];
            if (bounds[top--] >= best) {
                continue;
            }
            boolean leafA = a.left[i] < 0;
            boolean leafB = b.left[j] < 0;
            if (leafA && leafB) {
                int edgeA = -1 - a.left[i];
                int edgeB = -1 - b.left[j];
                if (atLeast(edgeA, edgeB) >= best - ROUND_OFF) {
                    continue;
                }
                double before = edges.square;
                carry(edgeB);
                edges.between(a.row, edgeA * Edges.ROW, moved, 0);
                if (edges.crossing) {
                    warmA = edgeA;
                    warmB = edgeB;
                    return 0;
                }
                if (edges.square < before) {
                    warmA = edgeA;
                    warmB = edgeB;
                    best = Math.min(best, Math.sqrt(edges.square));
                }
                continue;
            }
            boolean splitA = leafB || (!leafA && a.nodeR[i] >= b.nodeR[j]);
            int i1 = splitA ? a.left[i] : i;
            int j1 = splitA ? j : b.left[j];
            int i2 = splitA ? a.right[i] : i;
            int j2 = splitA ? j : b.right[j];
            double d1 = bound(i1, j1, best);
            double d2 = bound(i2, j2, best);
            boolean firstNearer = d1 <= d2;
            double far = firstNearer ? d2 : d1;
            double near = firstNearer ? d1 : d2;
            if (far < best) {
                stackA[++top] = firstNearer ? i2 : i1;
                stackB[top] = firstNearer ? j2 : j1;
                bounds[top] = far;
            }
            if (near < best) {
                stackA[++top] = firstNearer ? i1 : i2;
                stackB[top] = firstNearer ? j1 : j2;
                bounds[top] = near;
            }
        }
        return best;
    }
}
