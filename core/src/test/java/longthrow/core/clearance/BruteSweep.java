package longthrow.core.clearance;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * The twin of {@link Sweep}: crank steps of 0.01 degrees, dense polygons, its own formulas for shapes, motions, distance, inside and depth; nothing of the package
 * under test. It leaves out only what cannot matter, by bounds of its own: a block of steps is skipped when the gap at its middle less the
 * largest way of the corners of one body's box there is no smaller than the least gap so far (a rigid body moves no point farther than the farthest
 * corner of a box around it), and pieces of polygons when their boxes are farther apart than the least distance so far.
 */
final class BruteSweep {
    private static final int STEPS = 72_000;
    private static final double STEP = 4 * Math.PI / STEPS;
    private static final int CHUNK = 12;
    /** Depth is found this closely [m]. */
    private static final double CLOSE = 2e-6;

    private final Poly a;
    private final Poly b;
    private final Specimen.Moves movesA;
    private final Specimen.Moves movesB;
    private final List<double[]> coresOfA;
    private final List<double[]> coresOfB;
    private final double[] cosine = new double[STEPS + 1];
    private final double[] sine = new double[STEPS + 1];
    private final double[] tx = new double[STEPS + 1];
    private final double[] ty = new double[STEPS + 1];
    double least = Double.POSITIVE_INFINITY;
    int step;

    /** A polygon as flat segments x0 y0 x1 y1, with a box around every few. */
    private static final class Poly {
        final double[] s;
        final int n;
        final double[] box; // of chunks: lo x, lo y, hi x, hi y
        final double[] all = {1e9, 1e9, -1e9, -1e9};

        Poly(List<List<double[]>> loops) {
            n = loops.stream().mapToInt(List::size).sum();
            s = new double[4 * n];
            int at = 0;
            for (List<double[]> loop : loops) {
                for (int i = 0; i < loop.size(); i++) {
                    double[] p = loop.get(i);
                    double[] q = loop.get((i + 1) % loop.size());
                    s[at++] = p[0];
                    s[at++] = p[1];
                    s[at++] = q[0];
                    s[at++] = q[1];
                }
            }
            box = boxes(s, n);
            for (int c = 0; c < box.length; c += 4) {
                all[0] = Math.min(all[0], box[c]);
                all[1] = Math.min(all[1], box[c + 1]);
                all[2] = Math.max(all[2], box[c + 2]);
                all[3] = Math.max(all[3], box[c + 3]);
            }
        }

        static double[] boxes(double[] s, int n) {
            int chunks = (n + CHUNK - 1) / CHUNK;
            double[] box = new double[4 * chunks];
            for (int c = 0; c < chunks; c++) {
                double x0 = 1e9;
                double y0 = 1e9;
                double x1 = -1e9;
                double y1 = -1e9;
                for (int i = c * CHUNK; i < Math.min(n, (c + 1) * CHUNK); i++) {
                    x0 = Math.min(x0, Math.min(s[4 * i], s[4 * i + 2]));
                    x1 = Math.max(x1, Math.max(s[4 * i], s[4 * i + 2]));
                    y0 = Math.min(y0, Math.min(s[4 * i + 1], s[4 * i + 3]));
                    y1 = Math.max(y1, Math.max(s[4 * i + 1], s[4 * i + 3]));
                }
                box[4 * c] = x0;
                box[4 * c + 1] = y0;
                box[4 * c + 2] = x1;
                box[4 * c + 3] = y1;
            }
            return box;
        }
    }

    BruteSweep(Specimen.Side one, Specimen.Side other) {
        a = new Poly(one.loops());
        b = new Poly(other.loops());
        coresOfA = cores(a);
        coresOfB = cores(b);
        movesA = one.moves();
        movesB = other.moves();
        for (int k = 0; k <= STEPS; k++) {
            double[] p = movesA.at(k * STEP);
            double[] q = movesB.at(k * STEP);
            double ca = Math.cos(p[2]);
            double sa = Math.sin(p[2]);
            cosine[k] = Math.cos(q[2] - p[2]);
            sine[k] = Math.sin(q[2] - p[2]);
            double dx = q[0] - p[0];
            double dy = q[1] - p[1];
            tx[k] = ca * dx - sa * dy;
            ty[k] = sa * dx + ca * dy;
        }
    }

    private double[] moved(int k) {
        double[] m = new double[b.s.length];
        for (int i = 0; i < m.length; i += 2) {
            m[i] = cosine[k] * b.s[i] + sine[k] * b.s[i + 1] + tx[k];
            m[i + 1] = -sine[k] * b.s[i] + cosine[k] * b.s[i + 1] + ty[k];
        }
        return m;
    }

    /**
     * Signed gap at a step.
     * @param shallow a depth from which on upwards it is wanted; less depth than this may come back as this
     */
    double gap(int k, double shallow) {
        double[] m = moved(k);
        double[] boxes = Poly.boxes(m, b.n);
        double best = 1e9;
        boolean crossing = false;
        // the nearest pairs of boxes first would be quicker; a first pass over middles of chunks gives a good start
        for (int c = 0; c < a.box.length; c += 4) {
            for (int d = 0; d < boxes.length; d += 4) {
                double dx = a.s[4 * (c / 4 * CHUNK)] - m[4 * (d / 4 * CHUNK)];
                double dy = a.s[4 * (c / 4 * CHUNK) + 1] - m[4 * (d / 4 * CHUNK) + 1];
                best = Math.min(best, dx * dx + dy * dy);
            }
        }
        best = Math.sqrt(best);
        for (int c = 0; c < a.box.length && !crossing; c += 4) {
            for (int d = 0; d < boxes.length && !crossing; d += 4) {
                double gx = Math.max(0, Math.max(a.box[c] - boxes[d + 2], boxes[d] - a.box[c + 2]));
                double gy = Math.max(0, Math.max(a.box[c + 1] - boxes[d + 3], boxes[d + 1] - a.box[c + 3]));
                if (gx * gx + gy * gy > best * best) {
                    continue;
                }
                for (int i = c / 4 * CHUNK; i < Math.min(a.n, (c / 4 + 1) * CHUNK) && !crossing; i++) {
                    for (int j = d / 4 * CHUNK; j < Math.min(b.n, (d / 4 + 1) * CHUNK); j++) {
                        if (cross(a.s, 4 * i, m, 4 * j)) {
                            crossing = true;
                            break;
                        }
                        best = Math.min(best, toSegment(a.s, 4 * i, m[4 * j], m[4 * j + 1]));
                        best = Math.min(best, toSegment(m, 4 * j, a.s[4 * i], a.s[4 * i + 1]));
                    }
                }
            }
        }
        if (!crossing && best > 0 && !inside(a.s, a.n, m[0], m[1]) && !inside(m, b.n, a.s[0], a.s[1])) {
            return best;
        }
        double deepest = depth(a.s, a.n, a.box, m, b.n, boxes, Math.max(0, shallow));
        deepest = depth(m, b.n, boxes, a.s, a.n, a.box, deepest);
        for (double[] core : coresOfA) {
            if (core[2] > deepest && inside(m, b.n, core[0], core[1])) {
                deepest = core[2];
            }
        }
        for (double[] core : coresOfB) {
            double x = cosine[k] * core[0] + sine[k] * core[1] + tx[k];
            double y = -sine[k] * core[0] + cosine[k] * core[1] + ty[k];
            if (core[2] > deepest && inside(a.s, a.n, x, y)) {
                deepest = core[2];
            }
        }
        return -deepest;
    }

    /** Points deeper than all around them: the best of a grid and its neighbours, then of ever finer grids about it. */
    private static List<double[]> cores(Poly p) {
        int n = 70;
        double step = Math.max(p.all[2] - p.all[0], p.all[3] - p.all[1]) / n;
        double[][] d = new double[n + 1][n + 1];
        int[] near = {0};
        for (int i = 0; i <= n; i++) {
            for (int j = 0; j <= n; j++) {
                d[i][j] = within(p.s, p.n, p.box, p.all, p.all[0] + i * step, p.all[1] + j * step, 0, near);
            }
        }
        List<double[]> cores = new ArrayList<>();
        for (int i = 1; i < n; i++) {
            for (int j = 1; j < n; j++) {
                double around = Math.max(
                        Math.max(Math.max(d[i - 1][j], d[i + 1][j]), Math.max(d[i][j - 1], d[i][j + 1])),
                        Math.max(
                                Math.max(d[i - 1][j - 1], d[i + 1][j + 1]),
                                Math.max(d[i + 1][j - 1], d[i - 1][j + 1])));
                if (d[i][j] > 0 && d[i][j] >= around) {
                    double x = p.all[0] + i * step;
                    double y = p.all[1] + j * step;
                    double best = d[i][j];
                    for (double h = step / 3; h > 1e-7; h *= 0.6) {
                        double cx = x;
                        double cy = y;
                        for (int u = -3; u <= 3; u++) {
                            for (int v = -3; v <= 3; v++) {
                                double e = within(p.s, p.n, p.box, p.all, cx + u * h, cy + v * h, best, near);
                                if (e > best) {
                                    best = e;
                                    x = cx + u * h;
                                    y = cy + v * h;
                                }
                            }
                        }
                    }
                    cores.add(new double[] {x, y, best});
                }
            }
        }
        return cores;
    }

    private static double[] all(double[] boxes) {
        double[] all = {1e9, 1e9, -1e9, -1e9};
        for (int c = 0; c < boxes.length; c += 4) {
            all[0] = Math.min(all[0], boxes[c]);
            all[1] = Math.min(all[1], boxes[c + 1]);
            all[2] = Math.max(all[2], boxes[c + 2]);
            all[3] = Math.max(all[3], boxes[c + 3]);
        }
        return all;
    }

    private static double turn(double ax, double ay, double bx, double by, double cx, double cy) {
        return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    }

    private static boolean cross(double[] p, int i, double[] q, int j) {
        double t1 = turn(p[i], p[i + 1], p[i + 2], p[i + 3], q[j], q[j + 1]);
        double t2 = turn(p[i], p[i + 1], p[i + 2], p[i + 3], q[j + 2], q[j + 3]);
        if (t1 > 0 == t2 > 0) {
            return false;
        }
        double t3 = turn(q[j], q[j + 1], q[j + 2], q[j + 3], p[i], p[i + 1]);
        double t4 = turn(q[j], q[j + 1], q[j + 2], q[j + 3], p[i + 2], p[i + 3]);
        return t3 > 0 != t4 > 0;
    }

    private static double toSegment(double[] s, int i, double x, double y) {
        double ux = s[i + 2] - s[i];
        double uy = s[i + 3] - s[i + 1];
        double wx = x - s[i];
        double wy = y - s[i + 1];
        double t = Math.max(0, Math.min(1, (ux * wx + uy * wy) / (ux * ux + uy * uy)));
        double dx = wx - t * ux;
        double dy = wy - t * uy;
        return Math.sqrt(dx * dx + dy * dy);
    }

    private static boolean inside(double[] s, int n, double x, double y) {
        boolean in = false;
        for (int i = 0; i < 4 * n; i += 4) {
            if (s[i + 1] > y != s[i + 3] > y && x < s[i] + (y - s[i + 1]) / (s[i + 3] - s[i + 1]) * (s[i + 2] - s[i])) {
                in = !in;
            }
        }
        return in;
    }

    /**
     * Distance to the edge, negative outside; outside the box around all, minus the distance to that. A distance below what is needed to matter comes back negative:
     * then it makes no difference on which side the point is.
     * @param near a segment to begin with; the nearest one afterwards, or one near enough
     */
    private static double within(
            double[] s, int n, double[] box, double[] all, double x, double y, double needed, int[] near) {
        double ox = Math.max(0, Math.max(all[0] - x, x - all[2]));
        double oy = Math.max(0, Math.max(all[1] - y, y - all[3]));
        if (ox > 0 || oy > 0) {
            return -Math.sqrt(ox * ox + oy * oy);
        }
        double best = toSegment(s, 4 * near[0], x, y);
        if (best <= needed) {
            return -best;
        }
        for (int c = 0; c < box.length; c += 4) {
            double gx = Math.max(0, Math.max(box[c] - x, x - box[c + 2]));
            double gy = Math.max(0, Math.max(box[c + 1] - y, y - box[c + 3]));
            if (gx * gx + gy * gy < best * best) {
                for (int i = c / 4 * CHUNK; i < Math.min(n, (c / 4 + 1) * CHUNK); i++) {
                    double d = toSegment(s, 4 * i, x, y);
                    if (d < best) {
                        best = d;
                        near[0] = i;
                    }
                }
                if (best <= needed) {
                    return -best;
                }
            }
        }
        return best > needed && inside(s, n, x, y) ? best : -best;
    }

    /**
     * Largest depth of a point of p's edges inside q, if more than a given one: edges halved. Depth changes no faster than place, so that a piece of p is left out where even
     * half the diagonal of its box deeper than the middle of that is not deep enough.
     */
    private static double depth(
            double[] p, int np, double[] boxesOfP, double[] q, int nq, double[] boxesOfQ, double atLeast) {
        double best = atLeast;
        double[] boxOfQ = all(boxesOfQ);
        int[] near = {0};
        for (int c = 0; c < boxesOfP.length; c += 4) {
            double x = (boxesOfP[c] + boxesOfP[c + 2]) / 2;
            double y = (boxesOfP[c + 1] + boxesOfP[c + 3]) / 2;
            double half = Math.hypot(boxesOfP[c + 2] - boxesOfP[c], boxesOfP[c + 3] - boxesOfP[c + 1]) / 2;
            if (within(q, nq, boxesOfQ, boxOfQ, x, y, best + CLOSE - half, near) + half > best + CLOSE) {
                int from = c / 4 * CHUNK;
                best = depth(p, from, Math.min(np, from + CHUNK), q, nq, boxesOfQ, boxOfQ, best, near);
            }
        }
        return best;
    }

    private static double depth(
            double[] p,
            int from,
            int to,
            double[] q,
            int nq,
            double[] boxesOfQ,
            double[] boxOfQ,
            double atLeast,
            int[] near) {
        double best = atLeast;
        ArrayDeque<double[]> open = new ArrayDeque<>();
        for (int i = from; i < to; i++) {
            open.push(new double[] {p[4 * i], p[4 * i + 1], p[4 * i + 2], p[4 * i + 3]});
        }
        while (!open.isEmpty()) {
            double[] e = open.pop();
            double x = (e[0] + e[2]) / 2;
            double y = (e[1] + e[3]) / 2;
            double half = Math.hypot(e[2] - e[0], e[3] - e[1]) / 2;
            double d = within(q, nq, boxesOfQ, boxOfQ, x, y, best + CLOSE - half, near);
            best = Math.max(best, d);
            if (d + half > best + CLOSE) {
                open.push(new double[] {e[0], e[1], x, y});
                open.push(new double[] {x, y, e[2], e[3]});
            }
        }
        return best;
    }

    /** Farthest way of a corner of either box from a step to others, the smaller of the two. */
    private double way(int middle, int from, int to) {
        double ofB = 0;
        double ofA = 0;
        for (int corner = 0; corner < 4; corner++) {
            double bx = b.all[(corner & 1) * 2];
            double by = b.all[(corner & 2) + 1];
            double ax = a.all[(corner & 1) * 2];
            double ay = a.all[(corner & 2) + 1];
            double mx = cosine[middle] * bx + sine[middle] * by + tx[middle];
            double my = -sine[middle] * bx + cosine[middle] * by + ty[middle];
            double nx = cosine[middle] * (ax - tx[middle]) - sine[middle] * (ay - ty[middle]);
            double ny = sine[middle] * (ax - tx[middle]) + cosine[middle] * (ay - ty[middle]);
            for (int k = from; k <= to; k++) {
                double dx = cosine[k] * bx + sine[k] * by + tx[k] - mx;
                double dy = -sine[k] * bx + cosine[k] * by + ty[k] - my;
                ofB = Math.max(ofB, dx * dx + dy * dy);
                double ex = cosine[k] * (ax - tx[k]) - sine[k] * (ay - ty[k]) - nx;
                double ey = sine[k] * (ax - tx[k]) + cosine[k] * (ay - ty[k]) - ny;
                ofA = Math.max(ofA, ex * ex + ey * ey);
            }
        }
        return Math.sqrt(Math.min(ofA, ofB));
    }

    /** Blocks of two degrees, not in their order, so that a small gap is soon known. */
    BruteSweep sweep() {
        int block = 200;
        int count = STEPS / block;
        for (int i = 0; i < count; i++) {
            int from = (int) ((long) i * 77 % count) * block;
            block(from, from + block);
        }
        return this;
    }

    private void offer(double gap, int k) {
        if (gap < least) {
            least = gap;
            step = k;
        }
    }

    private void block(int from, int to) {
        int middle = (from + to) / 2;
        double way = way(middle, from, to);
        double gap = gap(middle, -least - way);
        offer(gap, middle);
        if (to - from <= 1 || gap - way >= least) {
            return;
        }
        int part = (to - from) / 2;
        for (int k = from; k < to; k += part) {
            block(k, Math.min(to, k + part));
        }
    }

    double angle() {
        return step * STEP;
    }

    /** Gap at any angle, with the formulas of the twin. */
    static double gapAt(Specimen.Side one, Specimen.Side other, double angle) {
        BruteSweep sweep = new BruteSweep(one, other, angle);
        return sweep.gap(0, 0);
    }

    private BruteSweep(Specimen.Side one, Specimen.Side other, double angle) {
        a = new Poly(one.loops());
        b = new Poly(other.loops());
        coresOfA = cores(a);
        coresOfB = cores(b);
        movesA = one.moves();
        movesB = other.moves();
        double[] p = movesA.at(angle);
        double[] q = movesB.at(angle);
        double ca = Math.cos(p[2]);
        double sa = Math.sin(p[2]);
        cosine[0] = Math.cos(q[2] - p[2]);
        sine[0] = Math.sin(q[2] - p[2]);
        double dx = q[0] - p[0];
        double dy = q[1] - p[1];
        tx[0] = ca * dx - sa * dy;
        ty[0] = sa * dx + ca * dy;
    }
}
