package longthrow.core.clearance;

import static longthrow.core.clearance.Edges.COS;
import static longthrow.core.clearance.Edges.CX;
import static longthrow.core.clearance.Edges.CY;
import static longthrow.core.clearance.Edges.MX;
import static longthrow.core.clearance.Edges.MY;
import static longthrow.core.clearance.Edges.R;
import static longthrow.core.clearance.Edges.ROW;
import static longthrow.core.clearance.Edges.SHARE;
import static longthrow.core.clearance.Edges.UX;
import static longthrow.core.clearance.Edges.UY;
import static longthrow.core.clearance.Edges.X0;
import static longthrow.core.clearance.Edges.X1;
import static longthrow.core.clearance.Edges.Y0;
import static longthrow.core.clearance.Edges.Y1;

/** How deep points lie inside an outline, and which edge is nearest. Belongs to one thread. */
final class PointDepth {
    /** Deeper than any tree of edges. */
    private static final int STACK = 128;

    private final Edges edges;
    private final int[] stack = new int[STACK];
    private final double[] bounds = new double[STACK];
    private final double[] scratch = new double[2];
    private int warm;
    /** Nearest edge and point of the last question. */
    int edge;

    double nearX;
    double nearY;
    private double best;
    private double square;

    PointDepth(Outline outline) {
        this.edges = outline.edges();
    }

    /** Distance to the nearest edge, negative outside the outline. */
    double at(double x, double y) {
        nearest(x, y, Double.NEGATIVE_INFINITY);
        return isInside(x, y) ? best : -best;
    }

    /** Whether a point lies deeper than so much, which is quicker to know than how deep: one edge that is near is enough to tell that it does not. */
    boolean isDeeper(double x, double y, double least) {
        if (-bound(0, x, y) <= least) {
            return false; // all edges lie within the first circle
        }
        nearest(x, y, least);
        return best > least && (-best > least || isInside(x, y));
    }

    private boolean isInside(double x, double y) {
        return edges.side(edge, nearX, nearY, x, y, scratch) <= 0;
    }

    /** Finds the nearest edge, or stops at one that is no farther than so much. */
    private void nearest(double x, double y, double enough) {
        best = Double.POSITIVE_INFINITY;
        square = best;
        offer(warm, x, y);
        int top = 0;
        stack[0] = 0;
        bounds[0] = 0;
        while (top >= 0 && best > enough) {
            int node = stack[top];
            double bound = bounds[top--];
            if (bound >= best) {
                continue;
            }
            int child = edges.left[node];
            if (child < 0) {
                offer(-1 - child, x, y);
                continue;
            }
            int other = edges.right[node];
            double d = bound(child, x, y);
            double e = bound(other, x, y);
            if (d > e) {
                int swap = child;
                child = other;
                other = swap;
                double keep = d;
                d = e;
                e = keep;
            }
            if (e < best) {
                stack[++top] = other;
                bounds[top] = e;
            }
            if (d < best) {
                stack[++top] = child;
                bounds[top] = d;
            }
        }
        warm = edge;
    }

    private double bound(int node, double x, double y) {
        double dx = x - edges.nodeX[node];
        double dy = y - edges.nodeY[node];
        return Math.sqrt(dx * dx + dy * dy) - edges.nodeR[node];
    }

    private void offer(int i, double x, double y) {
        double[] row = edges.row;
        int at = i * ROW;
        double nx;
        double ny;
        if (row[at + R] > 0) {
            double dx = x - row[at + CX];
            double dy = y - row[at + CY];
            double d = Math.sqrt(dx * dx + dy * dy);
            if (d == 0) {
                nx = row[at + CX] + row[at + R] * row[at + MX];
                ny = row[at + CY] + row[at + R] * row[at + MY];
            } else if (dx * row[at + MX] + dy * row[at + MY] >= row[at + COS] * d) {
                nx = row[at + CX] + dx / d * row[at + R];
                ny = row[at + CY] + dy / d * row[at + R];
            } else {
                double ex = x - row[at + X0];
                double ey = y - row[at + Y0];
                double fx = x - row[at + X1];
                double fy = y - row[at + Y1];
                boolean start = ex * ex + ey * ey <= fx * fx + fy * fy;
                nx = row[at + (start ? X0 : X1)];
                ny = row[at + (start ? Y0 : Y1)];
            }
        } else {
            double s = ((x - row[at + X0]) * row[at + UX] + (y - row[at + Y0]) * row[at + UY]) * row[at + SHARE];
            if (s <= 0) {
                nx = row[at + X0];
                ny = row[at + Y0];
            } else if (s >= 1) {
                nx = row[at + X1];
                ny = row[at + Y1];
            } else {
                nx = row[at + X0] + s * row[at + UX];
                ny = row[at + Y0] + s * row[at + UY];
            }
        }
        double d = (x - nx) * (x - nx) + (y - ny) * (y - ny);
        if (d < square) {
            square = d;
            best = Math.sqrt(d);
            edge = i;
            nearX = nx;
            nearY = ny;
        }
    }
}
