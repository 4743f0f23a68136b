package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The edges of an outline, straight or circular, in flat rows, and circles around ever fewer of them. Along each loop the material is on the left.
 * No arc is longer than a quarter turn, so that the wedge it spans is convex.
 */
final class Edges {
    /** Start, end. */
    static final int X0 = 0;

    static final int Y0 = 1;
    static final int X1 = 2;
    static final int Y1 = 3;
    /** Centre of an arc. */
    static final int CX = 4;

    static final int CY = 5;
    /** Radius of an arc, 0 for a straight edge. */
    static final int R = 6;
    /** Unit vector from the centre to the middle of an arc. */
    static final int MX = 7;

    static final int MY = 8;
    /** Cosine of half the angle an arc spans. */
    static final int COS = 9;
    /** +1 where the centre is on the side of the material, -1 where it is not. */
    static final int TURN = 10;

    /** Of a straight edge, in the places of what only arcs have: from its start to its end. */
    static final int UX = CX;

    static final int UY = CY;
    /** Of a straight edge: 1 by its length squared. */
    static final int SHARE = COS;

    static final int ROW = 11;

    final int count;
    final double[] row; // count rows of ROW numbers
    final int[] next; // of each edge, in its loop
    final int[] previous;
    private final double[] length; // along each edge
    private final double[] halfAngle; // that each arc spans; 0 of straight edges
    // tree of circles: node 0 holds all edges; a leaf holds one
    final double[] nodeX;
    final double[] nodeY;
    final double[] nodeR;
    final int[] left; // first child; -1 - edge for a leaf
    final int[] right;
    /** Of each node the straight way from its first edge's start to its last one's end, and how far its edges stand off that: CHORD numbers. */
    private final double[] chord;

    private static final int CHORD = 6; // start, way, 1 by its length squared or 0, how far the edges stand off
    private int nodes;

    private Edges(double[] row, int[] next) {
        this.count = next.length;
        this.row = row;
        this.next = next;
        this.previous = new int[count];
        for (int i = 0; i < count; i++) {
            previous[next[i]] = i;
        }
        length = new double[count];
        halfAngle = new double[count];
        for (int i = 0; i < count; i++) {
            int at = i * ROW;
            if (row[at + R] > 0) {
                halfAngle[i] = Math.acos(Math.min(1, Math.max(-1, row[at + COS])));
                length[i] = 2 * row[at + R] * halfAngle[i];
            } else {
                row[at + UX] = row[at + X1] - row[at + X0];
                row[at + UY] = row[at + Y1] - row[at + Y0];
                double square = row[at + UX] * row[at + UX] + row[at + UY] * row[at + UY];
                row[at + SHARE] = 1 / square;
                length[i] = Math.sqrt(square);
            }
        }
        int most = 2 * count - 1;
        nodeX = new double[most];
        nodeY = new double[most];
        nodeR = new double[most];
        left = new int[most];
        right = new int[most];
        chord = new double[most * CHORD];
        grow(0, count);
    }

    private int grow(int from, int to) {
        int node = nodes++;
        double loX = Double.POSITIVE_INFINITY;
        double loY = loX;
        double hiX = Double.NEGATIVE_INFINITY;
        double hiY = hiX;
        for (int i = from; i < to; i++) {
            int at = i * ROW;
            double mx = middleX(i);
            double my = middleY(i);
            loX = Math.min(loX, Math.min(mx, Math.min(row[at + X0], row[at + X1])));
            hiX = Math.max(hiX, Math.max(mx, Math.max(row[at + X0], row[at + X1])));
            loY = Math.min(loY, Math.min(my, Math.min(row[at + Y0], row[at + Y1])));
            hiY = Math.max(hiY, Math.max(my, Math.max(row[at + Y0], row[at + Y1])));
        }
        double x = 0.5 * (loX + hiX);
        double y = 0.5 * (loY + hiY);
        double radius = 0;
        for (int i = from; i < to; i++) {
            radius = Math.max(radius, farthest(i, x, y));
        }
        nodeX[node] = x;
        nodeY[node] = y;
        nodeR[node] = radius;
        span(node, from, to);
        if (to - from == 1) {
            left[node] = -1 - from;
            right[node] = -1;
        } else {
            int middle = (from + to) >>> 1;
            left[node] = grow(from, middle);
            right[node] = grow(middle, to);
        }
        return node;
    }

    /** The chord of a node and how far its edges stand off: no farther than their ends, and an arc by its rise more. */
    private void span(int node, int from, int to) {
        int k = node * CHORD;
        int first = from * ROW;
        int last = (to - 1) * ROW;
        chord[k] = row[first + X0];
        chord[k + 1] = row[first + Y0];
        chord[k + 2] = row[last + X1] - row[first + X0];
        chord[k + 3] = row[last + Y1] - row[first + Y0];
        double square = chord[k + 2] * chord[k + 2] + chord[k + 3] * chord[k + 3];
        chord[k + 4] = square > 0 ? 1 / square : 0;
        double off = 0;
        for (int i = from; i < to; i++) {
            int at = i * ROW;
            double ends = Math.max(fromChord(k, row[at + X0], row[at + Y0]), fromChord(k, row[at + X1], row[at + Y1]));
            off = Math.max(off, ends + row[at + R] * (row[at + R] > 0 ? 1 - row[at + COS] : 0));
        }
        chord[k + 5] = off;
    }

    private double fromChord(int k, double x, double y) {
        double wx = x - chord[k];
        double wy = y - chord[k + 1];
        double along = (wx * chord[k + 2] + wy * chord[k + 3]) * chord[k + 4];
        double share = along < 0 ? 0 : along > 1 ? 1 : along;
        double dx = wx - share * chord[k + 2];
        double dy = wy - share * chord[k + 3];
        return Math.sqrt(dx * dx + dy * dy);
    }

    /**
     * How far the edges reach along a direction: the largest product of it and a point of them.
     * @param least given back where nothing reaches farther
     * @param stack scratch, deeper than the tree
     */
    double reach(double nx, double ny, double least, int[] stack) {
        double norm = Math.sqrt(nx * nx + ny * ny);
        double most = least;
        if (nx * nodeX[0] + ny * nodeY[0] + norm * nodeR[0] <= most) {
            return most;
        }
        int top = 0;
        stack[0] = 0;
        while (top >= 0) {
            int node = stack[top--];
            int k = node * CHORD;
            double start = nx * chord[k] + ny * chord[k + 1];
            double way = nx * chord[k + 2] + ny * chord[k + 3];
            if (start + (way > 0 ? way : 0) + norm * chord[k + 5] <= most) {
                continue;
            }
            if (left[node] < 0) {
                most = Math.max(most, edgeReach(-1 - left[node], nx, ny, norm));
            } else { // the half that the way leads to first
                stack[++top] = way > 0 ? left[node] : right[node];
                stack[++top] = way > 0 ? right[node] : left[node];
            }
        }
        return most;
    }

    private double edgeReach(int edge, double nx, double ny, double norm) {
        int at = edge * ROW;
        double ends = Math.max(nx * row[at + X0] + ny * row[at + Y0], nx * row[at + X1] + ny * row[at + Y1]);
        return row[at + R] > 0 && nx * row[at + MX] + ny * row[at + MY] >= norm * row[at + COS]
                ? Math.max(ends, nx * row[at + CX] + ny * row[at + CY] + norm * row[at + R])
                : ends;
    }

    boolean isArc(int edge) {
        return row[edge * ROW + R] > 0;
    }

    double middleX(int edge) {
        int at = edge * ROW;
        return row[at + R] > 0 ? row[at + CX] + row[at + R] * row[at + MX] : 0.5 * (row[at + X0] + row[at + X1]);
    }

    double middleY(int edge) {
        int at = edge * ROW;
        return row[at + R] > 0 ? row[at + CY] + row[at + R] * row[at + MY] : 0.5 * (row[at + Y0] + row[at + Y1]);
    }

    /** Largest distance of a point of the edge from a point. */
    private double farthest(int edge, double x, double y) {
        int at = edge * ROW;
        double most = Math.max(
                Math.hypot(row[at + X0] - x, row[at + Y0] - y), Math.hypot(row[at + X1] - x, row[at + Y1] - y));
        if (row[at + R] > 0) {
            double dx = row[at + CX] - x;
            double dy = row[at + CY] - y;
            double d = Math.hypot(dx, dy);
            if (dx * row[at + MX] + dy * row[at + MY] >= row[at + COS] * d) {
                most = Math.max(most, d + row[at + R]);
            }
        }
        return most;
    }

    /** Distance of a point from a straight edge, or from the whole circle of an arc, which is no more than that from the arc. */
    double distance(int edge, double x, double y) {
        int at = edge * ROW;
        if (row[at + R] > 0) {
            double dx = x - row[at + CX];
            double dy = y - row[at + CY];
            return Math.abs(Math.sqrt(dx * dx + dy * dy) - row[at + R]);
        }
        double ux = row[at + UX];
        double uy = row[at + UY];
        double wx = x - row[at + X0];
        double wy = y - row[at + Y0];
        double share = Math.max(0, Math.min(1, (wx * ux + wy * uy) * row[at + SHARE]));
        double dx = wx - share * ux;
        double dy = wy - share * uy;
        return Math.sqrt(dx * dx + dy * dy);
    }

    /** Distance of a point from the farther end of an edge. */
    double farthestEnd(int edge, double x, double y) {
        int at = edge * ROW;
        double ux = x - row[at + X0];
        double uy = y - row[at + Y0];
        double vx = x - row[at + X1];
        double vy = y - row[at + Y1];
        return Math.sqrt(Math.max(ux * ux + uy * uy, vx * vx + vy * vy));
    }

    /** Length along the edge. */
    double length(int edge) {
        return length[edge];
    }

    /** Point at a share 0 to 1 of the length. */
    void along(int edge, double share, double[] out) {
        int at = edge * ROW;
        if (row[at + R] > 0) {
            double turned = (2 * share - 1) * halfAngle[edge] * row[at + TURN];
            double c = Math.cos(turned);
            double s = Math.sin(turned);
            out[0] = row[at + CX] + row[at + R] * (c * row[at + MX] - s * row[at + MY]);
            out[1] = row[at + CY] + row[at + R] * (s * row[at + MX] + c * row[at + MY]);
        } else {
            out[0] = row[at + X0] + share * (row[at + X1] - row[at + X0]);
            out[1] = row[at + Y0] + share * (row[at + Y1] - row[at + Y0]);
        }
    }

    /** Its start for a share of 0, its end for 1. */
    void end(int edge, double share, double[] out) {
        int at = edge * ROW + (share > 0 ? X1 : X0);
        out[0] = row[at];
        out[1] = row[at + 1];
    }

    /** Unit normal out of the material at a point of the edge. */
    void normal(int edge, double x, double y, double[] out) {
        int at = edge * ROW;
        double nx;
        double ny;
        if (row[at + R] > 0) {
            nx = (x - row[at + CX]) * row[at + TURN];
            ny = (y - row[at + CY]) * row[at + TURN];
        } else {
            nx = row[at + Y1] - row[at + Y0];
            ny = row[at + X0] - row[at + X1];
        }
        double length = Math.sqrt(nx * nx + ny * ny); // hypot takes ten times as long
        out[0] = nx / length;
        out[1] = ny / length;
    }

    /**
     * On which side of the outline a point lies whose nearest point of all edges is (nearX, nearY) on this edge: positive outside, negative inside.
     * At a corner the sum of both normals decides.
     */
    double side(int edge, double nearX, double nearY, double x, double y, double[] scratch) {
        int at = edge * ROW;
        double dx = x - nearX;
        double dy = y - nearY;
        normal(edge, nearX, nearY, scratch);
        double nx = scratch[0];
        double ny = scratch[1];
        int other = -1;
        if (isSame(nearX, nearY, row[at + X0], row[at + Y0])) {
            other = previous[edge];
        } else if (isSame(nearX, nearY, row[at + X1], row[at + Y1])) {
            other = next[edge];
        }
        if (other >= 0) {
            normal(other, nearX, nearY, scratch);
            nx += scratch[0];
            ny += scratch[1];
        }
        return nx * dx + ny * dy;
    }

    private static boolean isSame(double x, double y, double u, double v) {
        return Math.abs(x - u) < SAME && Math.abs(y - v) < SAME;
    }

    /** Points no farther apart than this [m] are one: round-off of coordinates of a metre is a thousandth of it. */
    static final double SAME = 1e-12;

    /** Collects the edges of one outline, loop by loop. */
    static final class Maker {
        private double[] row = new double[64 * ROW];
        private int[] next = new int[64];
        private int count;
        private int loop;

        private int add() {
            if (count == next.length) {
                row = Arrays.copyOf(row, 2 * row.length);
                next = Arrays.copyOf(next, 2 * count);
            }
            next[count] = count + 1;
            return ROW * count++;
        }

        void line(double x0, double y0, double x1, double y1) {
            if (Math.hypot(x1 - x0, y1 - y0) < SAME) {
                return;
            }
            int at = add();
            row[at + X0] = x0;
            row[at + Y0] = y0;
            row[at + X1] = x1;
            row[at + Y1] = y1;
        }

        /** From an angle by a signed sweep [rad], both counted from +x towards +y; cut into pieces of a quarter turn at most. */
        void arc(double cx, double cy, double radius, double from, double sweep) {
            if (radius * Math.abs(sweep) < SAME) {
                return;
            }
            int pieces = (int) Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9);
            double piece = sweep / pieces;
            for (int i = 0; i < pieces; i++) {
                double start = from + i * piece;
                double end = from + (i + 1) * piece;
                int at = add();
                row[at + X0] = cx + radius * Math.cos(start);
                row[at + Y0] = cy + radius * Math.sin(start);
                row[at + X1] = cx + radius * Math.cos(end);
                row[at + Y1] = cy + radius * Math.sin(end);
                row[at + CX] = cx;
                row[at + CY] = cy;
                row[at + R] = radius;
                row[at + MX] = Math.cos(0.5 * (start + end));
                row[at + MY] = Math.sin(0.5 * (start + end));
                row[at + COS] = Math.cos(0.5 * piece);
                row[at + TURN] = Math.signum(sweep);
            }
        }

        /** Ends a loop: its last edge meets its first, to the last digit. */
        void close() {
            int first = loop * ROW;
            for (int i = loop; i < count; i++) {
                int at = i * ROW;
                int to = i + 1 < count ? at + ROW : first;
                row[at + X1] = row[to + X0];
                row[at + Y1] = row[to + Y0];
            }
            next[count - 1] = loop;
            loop = count;
        }

        Edges made() {
            return new Edges(Arrays.copyOf(row, count * ROW), Arrays.copyOf(next, count));
        }
    }

    /** The same edges moved: size times, turned by an angle from +y towards +x, then shifted. */
    Edges moved(double size, double angle, double dx, double dy) {
        double c = Math.cos(angle) * size;
        double s = Math.sin(angle) * size;
        double[] to = row.clone();
        for (int at = 0; at < to.length; at += ROW) {
            for (int k = X0; k <= CX; k += 2) {
                to[at + k] = c * row[at + k] + s * row[at + k + 1] + dx;
                to[at + k + 1] = -s * row[at + k] + c * row[at + k + 1] + dy;
            }
            to[at + R] = row[at + R] * size;
            to[at + MX] = (c * row[at + MX] + s * row[at + MY]) / size;
            to[at + MY] = (-s * row[at + MX] + c * row[at + MY]) / size;
        }
        return new Edges(to, next);
    }

    /** Twice the area on the left of all edges. */
    double twiceArea() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            int at = i * ROW;
            sum += row[at + X0] * row[at + Y1] - row[at + X1] * row[at + Y0];
            if (row[at + R] > 0) {
                double angle = 2 * halfAngle[i];
                sum += row[at + TURN] * row[at + R] * row[at + R] * (angle - Math.sin(angle));
            }
        }
        return sum;
    }

    /** The loops of several. */
    static Edges together(List<Edges> parts) {
        int count = parts.stream().mapToInt(part -> part.count).sum();
        double[] rows = new double[count * ROW];
        int[] after = new int[count];
        int from = 0;
        for (Edges part : parts) {
            System.arraycopy(part.row, 0, rows, from * ROW, part.row.length);
            for (int i = 0; i < part.count; i++) {
                after[from + i] = from + part.next[i];
            }
            from += part.count;
        }
        return new Edges(rows, after);
    }

    /** Left and right changed, and run through the other way, so that the material stays where it was. */
    Edges mirrored() {
        double[] to = row.clone();
        for (int at = 0; at < to.length; at += ROW) {
            for (int k : new int[] {X0, X1, CX, MX, TURN}) {
                to[at + k] = -row[at + k];
            }
        }
        return new Edges(to, next.clone()).reversed();
    }

    /** The loop that encloses most. */
    Edges outermost() {
        List<Edges> loops = new ArrayList<>();
        boolean[] done = new boolean[count];
        for (int first = 0; first < count; first++) {
            List<Integer> loop = new ArrayList<>();
            for (int edge = first; !done[edge]; edge = next[edge]) {
                done[edge] = true;
                loop.add(edge);
            }
            if (!loop.isEmpty()) {
                double[] rows = new double[loop.size() * ROW];
                int[] after = new int[loop.size()];
                for (int i = 0; i < after.length; i++) {
                    System.arraycopy(row, loop.get(i) * ROW, rows, i * ROW, ROW);
                    after[i] = (i + 1) % after.length;
                }
                loops.add(new Edges(rows, after));
            }
        }
        return loops.stream().max(Comparator.comparingDouble(Edges::twiceArea)).orElseThrow();
    }

    /** The same loops run through the other way. */
    Edges reversed() {
        double[] to = new double[row.length];
        int[] after = new int[count];
        for (int i = 0; i < count; i++) {
            int from = (count - 1 - i) * ROW;
            int at = i * ROW;
            System.arraycopy(row, from, to, at, ROW);
            to[at + X0] = row[from + X1];
            to[at + Y0] = row[from + Y1];
            to[at + X1] = row[from + X0];
            to[at + Y1] = row[from + Y0];
            to[at + TURN] = -row[from + TURN];
            after[i] = count - 1 - previous[count - 1 - i];
        }
        return new Edges(to, after);
    }
}
