package longthrow.core.clearance;

import java.util.List;

/**
 * Depth of penetration of two outlines that overlap: the largest depth to which a point of one, of its inside as well as of its edge, lies inside the other,
 * measured to the nearest point of the other's edge; the larger of both ways. So much has to come off one of them, at least at one place, for the two
 * to be clear. The deepest point is either on an edge of the body that goes in, sought by halving edges, or a {@link Cores core} of the other
 * that is covered whole. Belongs to one thread.
 */
final class Overlap {
    /** How closely depth is found [m]: a twentieth of the 0.01 mm the least gap is guaranteed to. */
    private static final double TOLERANCE = 0.5e-6;
    /** Pieces of edges so short [m] are not halved again. */
    private static final double SHORTEST = 0.1e-6;

    private final Outline one;
    private final Outline other;
    private final PointDepth inOne;
    private final PointDepth inOther;
    private final double[] at = new double[2];
    private final double[] start = new double[2];
    private final double[] end = new double[2];

    private final Deepest otherInOne = new Deepest();
    private final Deepest oneInOther = new Deepest();
    private Deepest deepest = otherInOne;
    private Edges moving;
    private Edges still;
    private PointDepth depths;
    private double c;
    private double s;
    private double tx;
    private double ty;
    private double best;
    private double pointX;
    private double pointY;
    private double edgeX;
    private double edgeY;

    /** Deepest point and the nearest point of the edge to it, in the frame of the first outline. */
    double inX;

    double inY;
    double outX;
    double outY;

    Overlap(Outline one, Outline other) {
        this.one = one;
        this.other = other;
        inOne = new PointDepth(one);
        inOther = new PointDepth(other);
        moving = other.edges();
        still = one.edges();
        depths = inOne;
    }

    /**
     * Depth with the frame of the other outline so placed in that of the first.
     * @param least 0 or more [m]; it is given back where nothing is deeper, as when no point of one lies inside the other
     */
    double depth(double cosine, double sine, double x, double y, double least) {
        best = least;
        deepest = otherInOne;
        way(other, one, inOne, inOther, cosine, sine, x, y);
        inX = pointX;
        inY = pointY;
        outX = edgeX;
        outY = edgeY;
        double first = best;
        // the frame of the first in that of the other: turned back
        double bx = -(cosine * x - sine * y);
        double by = -(sine * x + cosine * y);
        deepest = oneInOther;
        way(one, other, inOther, inOne, cosine, -sine, bx, by);
        if (best > first) {
            inX = cosine * pointX + sine * pointY + x;
            inY = -sine * pointX + cosine * pointY + y;
            outX = cosine * edgeX + sine * edgeY + x;
            outY = -sine * edgeX + cosine * edgeY + y;
        }
        return best;
    }

    /** Deepest point of what moves within what stands still, whose frame is used. */
    private void way(
            Outline goesIn,
            Outline stands,
            PointDepth inStanding,
            PointDepth inMoving,
            double cosine,
            double sine,
            double x,
            double y) {
        moving = goesIn.edges();
        still = stands.edges();
        depths = inStanding;
        c = cosine;
        s = sine;
        tx = x;
        ty = y;
        seed();
        node(0);
        List<Cores.Core> cores = stands.cores().all();
        for (Cores.Core core : cores) {
            if (core.depth() > best) {
                double px = core.x() - tx;
                double py = core.y() - ty;
                if (inMoving.at(c * px - s * py, s * px + c * py) >= 0) {
                    offer(core.x(), core.y(), depths.at(core.x(), core.y()));
                }
            }
        }
    }

    /** Where on an edge the deepest point of the last question was. */
    private static final class Deepest {
        private int edge;
        private double share = 0.5;
    }

    /** A first look where it was deepest last time, and if that is outside now at the middles of all edges, so that halving starts from something. */
    private void seed() {
        look(deepest.edge, deepest.share);
        for (int i = 0; i < moving.count && best <= 0; i++) {
            look(i, 0.5);
        }
    }

    /** Depth of a point on an edge. */
    private double look(int edge, double share) {
        moving.along(edge, share, at);
        double x = c * at[0] + s * at[1] + tx;
        double y = -s * at[0] + c * at[1] + ty;
        double depth = depths.at(x, y);
        if (depth > best) {
            deepest.edge = edge;
            deepest.share = share;
        }
        offer(x, y, depth);
        return depth;
    }

    private void offer(double x, double y, double depth) {
        if (depth > best) {
            best = depth;
            pointX = x;
            pointY = y;
            edgeX = depths.nearX;
            edgeY = depths.nearY;
        }
    }

    private void node(int node) {
        double x = c * moving.nodeX[node] + s * moving.nodeY[node] + tx;
        double y = -s * moving.nodeX[node] + c * moving.nodeY[node] + ty;
        if (depths.at(x, y) + moving.nodeR[node] <= best + TOLERANCE) {
            return;
        }
        if (moving.left[node] < 0) {
            piece(-1 - moving.left[node], 0, 1, moving.length(-1 - moving.left[node]));
        } else {
            node(moving.left[node]);
            node(moving.right[node]);
        }
    }

    private void piece(int edge, double from, double to, double length) {
        double depth = look(edge, 0.5 * (from + to));
        int nearest = depths.edge;
        if (depth + 0.5 * length <= best + TOLERANCE || length < SHORTEST) {
            return;
        }
        if (depth >= 0 && along(edge, from, to, length, nearest) <= best + TOLERANCE) {
            return;
        }
        double middle = 0.5 * (from + to);
        piece(edge, from, middle, 0.5 * length);
        piece(edge, middle, to, 0.5 * length);
    }

    /**
     * Bound by the nearest edge alone: depth is no more than the distance to it, and along a chord the distance to a straight edge, or from outside to a circle,
     * is largest at an end; from inside a circle where the chord is nearest to its centre. An arc stands off its chord by its rise.
     */
    private double along(int edge, double from, double to, double length, int nearest) {
        moving.along(edge, from, start);
        moving.along(edge, to, end);
        double x0 = c * start[0] + s * start[1] + tx;
        double y0 = -s * start[0] + c * start[1] + ty;
        double x1 = c * end[0] + s * end[1] + tx;
        double y1 = -s * end[0] + c * end[1] + ty;
        double r = moving.row[edge * Edges.ROW + Edges.R];
        double rise = r > 0 ? length * length / (8 * r) : 0;
        int at = nearest * Edges.ROW;
        double[] row = still.row;
        if (!still.isArc(nearest)) {
            return Math.max(toStraight(row, at, x0, y0), toStraight(row, at, x1, y1)) + rise;
        }
        double radius = row[at + Edges.R];
        double u0 = x0 - row[at + Edges.CX];
        double v0 = y0 - row[at + Edges.CY];
        double u1 = x1 - row[at + Edges.CX];
        double v1 = y1 - row[at + Edges.CY];
        double d0 = length(u0, v0);
        double d1 = length(u1, v1);
        boolean inWedge = u0 * row[at + Edges.MX] + v0 * row[at + Edges.MY] >= row[at + Edges.COS] * d0
                && u1 * row[at + Edges.MX] + v1 * row[at + Edges.MY] >= row[at + Edges.COS] * d1;
        if (!inWedge || Math.min(d0, d1) < rise) {
            return Double.POSITIVE_INFINITY;
        }
        double outer = Math.max(d0, d1) - radius;
        double du = u1 - u0;
        double dv = v1 - v0;
        double square = du * du + dv * dv;
        double share = square > 0 ? Math.min(1, Math.max(0, -(u0 * du + v0 * dv) / square)) : 0;
        double inner = radius - length(u0 + share * du, v0 + share * dv);
        return Math.max(outer, inner) + rise;
    }

    private static double toStraight(double[] row, int at, double x, double y) {
        double ux = row[at + Edges.X1] - row[at];
        double uy = row[at + Edges.Y1] - row[at + Edges.Y0];
        double share = ((x - row[at]) * ux + (y - row[at + Edges.Y0]) * uy) / (ux * ux + uy * uy);
        double k = Math.min(1, Math.max(0, share));
        return length(x - row[at] - k * ux, y - row[at + Edges.Y0] - k * uy);
    }

    /** As {@link Math#hypot}, in a tenth of the time; lengths here are far from over- and underflow. */
    private static double length(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }
}
