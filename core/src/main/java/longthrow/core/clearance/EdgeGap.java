package longthrow.core.clearance;

import static longthrow.core.clearance.Edges.COS;
import static longthrow.core.clearance.Edges.CX;
import static longthrow.core.clearance.Edges.CY;
import static longthrow.core.clearance.Edges.MX;
import static longthrow.core.clearance.Edges.MY;
import static longthrow.core.clearance.Edges.R;
import static longthrow.core.clearance.Edges.X0;
import static longthrow.core.clearance.Edges.X1;
import static longthrow.core.clearance.Edges.Y0;
import static longthrow.core.clearance.Edges.Y1;

/**
 * Least distance of two edges, straight or circular, exact: the ends of each against the other, and where both have a common normal. Every candidate is the
 * distance of a point of one from a point of the other, so one too many does no harm. Belongs to one thread.
 */
final class EdgeGap {
    /** Least squared distance so far, and its two points; the caller sets the first to what is to be beaten. */
    double square;

    double ax;
    double ay;
    double bx;
    double by;
    /** Whether two edges were found that cross. */
    boolean crossing;

    private double sharedX = Double.NaN; // a corner where crossing does not count
    private double sharedY = Double.NaN;

    void start(double squareToBeat) {
        square = squareToBeat;
        crossing = false;
    }

    /** Edges that meet at a corner may cross there by the round-off of written figures, which is no crossing. */
    void sharing(double x, double y) {
        sharedX = x;
        sharedY = y;
    }

    private boolean isShared(double x, double y) {
        return Math.abs(x - sharedX) < WRITTEN && Math.abs(y - sharedY) < WRITTEN; // false where none is set
    }

    /** Round-off of coordinates written by drawing programs [m]; a judgement. */
    private static final double WRITTEN = 2e-8;

    private void offer(double px, double py, double qx, double qy) {
        double dx = px - qx;
        double dy = py - qy;
        double d = dx * dx + dy * dy;
        if (d < square) {
            square = d;
            ax = px;
            ay = py;
            bx = qx;
            by = qy;
        }
    }

    /** Brings two edges together, each given as a row of {@link Edges} at a place of an array. */
    void between(double[] a, int i, double[] b, int j) {
        boolean arcA = a[i + R] > 0;
        boolean arcB = b[j + R] > 0;
        if (!arcA && !arcB) {
            straight(a, i, b, j);
        } else {
            endsOf(a, i, b, j);
            if (arcA && arcB) {
                arcs(a, i, b, j);
            } else if (arcB) {
                straightAndArc(a, i, b, j, false);
            } else {
                straightAndArc(b, j, a, i, true);
            }
        }
    }

    private void straight(double[] a, int i, double[] b, int j) {
        double ux = a[i + X1] - a[i + X0];
        double uy = a[i + Y1] - a[i + Y0];
        double vx = b[j + X1] - b[j + X0];
        double vy = b[j + Y1] - b[j + Y0];
        double wx = b[j + X0] - a[i + X0];
        double wy = b[j + Y0] - a[i + Y0];
        double uu = ux * ux + uy * uy;
        double vv = vx * vx + vy * vy;
        double uv = ux * vx + uy * vy;
        double uw = ux * wx + uy * wy;
        double vw = vx * wx + vy * wy;
        double cross = ux * vy - uy * vx;
        if (cross != 0) {
            double s = (wx * vy - wy * vx) / cross;
            double t = (wx * uy - wy * ux) / cross;
            if (s > 0 && s < 1 && t > 0 && t < 1 && !isShared(a[i + X0] + s * ux, a[i + Y0] + s * uy)) {
                crossing = true;
                return;
            }
        }
        // each end against the other edge
        double s0 = clamp(uw / uu);
        offer(a[i + X0] + s0 * ux, a[i + Y0] + s0 * uy, b[j + X0], b[j + Y0]);
        double s1 = clamp((uw + uv) / uu);
        offer(a[i + X0] + s1 * ux, a[i + Y0] + s1 * uy, b[j + X1], b[j + Y1]);
        double t0 = clamp(-vw / vv);
        offer(a[i + X0], a[i + Y0], b[j + X0] + t0 * vx, b[j + Y0] + t0 * vy);
        double t1 = clamp((uv - vw) / vv);
        offer(a[i + X1], a[i + Y1], b[j + X0] + t1 * vx, b[j + Y0] + t1 * vy);
    }

    private static double clamp(double share) {
        return share < 0 ? 0 : Math.min(share, 1);
    }

    private void endsOf(double[] a, int i, double[] b, int j) {
        toEdge(a, i, b[j + X0], b[j + Y0], false);
        toEdge(a, i, b[j + X1], b[j + Y1], false);
        toEdge(b, j, a[i + X0], a[i + Y0], true);
        toEdge(b, j, a[i + X1], a[i + Y1], true);
    }

    /** A point of one against an edge of the other. */
    private void toEdge(double[] e, int k, double x, double y, boolean pointIsOfA) {
        double nx;
        double ny;
        if (e[k + R] > 0) {
            double dx = x - e[k + CX];
            double dy = y - e[k + CY];
            double d = Math.sqrt(dx * dx + dy * dy);
            if (d > 0 && dx * e[k + MX] + dy * e[k + MY] >= e[k + COS] * d) {
                nx = e[k + CX] + dx / d * e[k + R];
                ny = e[k + CY] + dy / d * e[k + R];
            } else {
                return; // then an end of the arc is nearest, or all of it is equally far; the ends are offered by
                // themselves
            }
        } else {
            double ux = e[k + X1] - e[k + X0];
            double uy = e[k + Y1] - e[k + Y0];
            double s = clamp(((x - e[k + X0]) * ux + (y - e[k + Y0]) * uy) / (ux * ux + uy * uy));
            nx = e[k + X0] + s * ux;
            ny = e[k + Y0] + s * uy;
        }
        if (pointIsOfA) {
            offer(x, y, nx, ny);
        } else {
            offer(nx, ny, x, y);
        }
    }

    private static boolean isInSpan(double[] e, int k, double dx, double dy, double length) {
        return dx * e[k + MX] + dy * e[k + MY] >= e[k + COS] * length;
    }

    private void straightAndArc(double[] e, int k, double[] arc, int m, boolean arcIsA) {
        endToEnd(e, k, arc, m, arcIsA);
        double ux = e[k + X1] - e[k + X0];
        double uy = e[k + Y1] - e[k + Y0];
        double uu = ux * ux + uy * uy;
        double s = ((arc[m + CX] - e[k + X0]) * ux + (arc[m + CY] - e[k + Y0]) * uy) / uu;
        double fx = e[k + X0] + s * ux;
        double fy = e[k + Y0] + s * uy;
        double dx = fx - arc[m + CX];
        double dy = fy - arc[m + CY];
        double d2 = dx * dx + dy * dy;
        double r = arc[m + R];
        if (d2 < r * r) {
            double half = Math.sqrt((r * r - d2) / uu);
            crossing |= crosses(s - half, fx - half * ux, fy - half * uy, arc, m)
                    || crosses(s + half, fx + half * ux, fy + half * uy, arc, m);
        } else if (s >= 0 && s <= 1) {
            double d = Math.sqrt(d2);
            if (isInSpan(arc, m, dx, dy, d)) {
                double px = arc[m + CX] + dx / d * r;
                double py = arc[m + CY] + dy / d * r;
                if (arcIsA) {
                    offer(px, py, fx, fy);
                } else {
                    offer(fx, fy, px, py);
                }
            }
        }
    }

    /** The ends of an edge against those of an arc they do not face. */
    private void endToEnd(double[] e, int k, double[] arc, int m, boolean arcIsA) {
        for (int p = 0; p <= X1; p += X1) {
            for (int q = 0; q <= X1; q += X1) {
                if (arcIsA) {
                    offer(arc[m + q], arc[m + q + 1], e[k + p], e[k + p + 1]);
                } else {
                    offer(e[k + p], e[k + p + 1], arc[m + q], arc[m + q + 1]);
                }
            }
        }
    }

    private boolean crosses(double share, double x, double y, double[] arc, int m) {
        return share > 0
                && share < 1
                && !isShared(x, y)
                && (x - arc[m + CX]) * arc[m + MX] + (y - arc[m + CY]) * arc[m + MY] > arc[m + COS] * arc[m + R];
    }

    private void arcs(double[] a, int i, double[] b, int j) {
        endToEnd(a, i, b, j, false);
        double dx = b[j + CX] - a[i + CX];
        double dy = b[j + CY] - a[i + CY];
        double d2 = dx * dx + dy * dy;
        double d = Math.sqrt(d2);
        double ra = a[i + R];
        double rb = b[j + R];
        if (d < Edges.SAME) {
            concentric(a, i, b, j);
            return;
        }
        double ux = dx / d;
        double uy = dy / d;
        for (int p = -1; p <= 1; p += 2) {
            if (isInSpan(a, i, p * ux, p * uy, 1)) {
                for (int q = -1; q <= 1; q += 2) {
                    if (isInSpan(b, j, q * ux, q * uy, 1)) {
                        offer(
                                a[i + CX] + p * ux * ra,
                                a[i + CY] + p * uy * ra,
                                b[j + CX] + q * ux * rb,
                                b[j + CY] + q * uy * rb);
                    }
                }
            }
        }
        if (d < ra + rb && d > Math.abs(ra - rb)) {
            double along = (d2 + ra * ra - rb * rb) / (2 * d);
            double across = Math.sqrt(Math.max(0, ra * ra - along * along));
            for (int p = -1; p <= 1; p += 2) {
                double x = along * ux - p * across * uy;
                double y = along * uy + p * across * ux;
                if (!isShared(a[i + CX] + x, a[i + CY] + y)
                        && x * a[i + MX] + y * a[i + MY] > a[i + COS] * ra
                        && (x - dx) * b[j + MX] + (y - dy) * b[j + MY] > b[j + COS] * rb) {
                    crossing = true;
                    return;
                }
            }
        }
    }

    /** Two arcs about one centre: where both face the same way they are as far apart as their radii; one end of either is there. */
    private void concentric(double[] a, int i, double[] b, int j) {
        for (int q = 0; q <= X1; q += X1) {
            double x = b[j + q] - b[j + CX];
            double y = b[j + q + 1] - b[j + CY];
            if (isInSpan(a, i, x, y, b[j + R] * (1 - 1e-12))) {
                double f = a[i + R] / b[j + R];
                offer(a[i + CX] + f * x, a[i + CY] + f * y, b[j + q], b[j + q + 1]);
            }
            x = a[i + q] - a[i + CX];
            y = a[i + q + 1] - a[i + CY];
            if (isInSpan(b, j, x, y, a[i + R] * (1 - 1e-12))) {
                double f = b[j + R] / a[i + R];
                offer(a[i + q], a[i + q + 1], b[j + CX] + f * x, b[j + CY] + f * y);
            }
        }
    }
}
