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
    /** A piece is cut no nearer to its end than this share of it. */
    private static final double LEAST_SHARE = 1.0 / 32;
    /** How far aside of a deepest point the second edge that holds it is looked for [m]; a judgement, on which only speed hangs. */
    private static final double ASIDE = 50e-6;

    private final Outline one;
    private final Outline other;
    private final PointDepth inOne;
    private final PointDepth inOther;
    private final double[] at = new double[2];
    private double startX;
    private double startY;
    private double endX;
    private double endY;
    private double lookX;
    private double lookY;

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
    /** Whether the deepest point is one of the first outline, within the other. */
    boolean isOneWithin;
    /** Direction in from the second edge that holds the deepest point, in the frame of the outline it lies in, and the share of the direction from the nearest edge. */
    double ridgeX;

    double ridgeY;
    double ridgeShare;
    private boolean isOnEdge;
    private double turnCosine;
    private double turnSine;
    private double alongX;
    private double alongY;

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
        isOnEdge = false;
        deepest = otherInOne;
        turnCosine = cosine;
        turnSine = sine;
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
        isOneWithin = best > first;
        if (isOneWithin) {
            inX = cosine * pointX + sine * pointY + x;
            inY = -sine * pointX + cosine * pointY + y;
            outX = cosine * edgeX + sine * edgeY + x;
            outY = -sine * edgeX + cosine * edgeY + y;
        }
        return best;
    }

    /**
     * Looks for a second edge that holds the deepest point of the last question: on from it along its own edge, to where it would be farther from the nearest edge, another one is nearer. In
     * the mean of both directions its edge then reaches no farther than it does itself.
     */
    boolean findsRidge() {
        if (!isOnEdge) {
            return false;
        }
        Edges within = (isOneWithin ? one : other).edges();
        PointDepth standing = isOneWithin ? inOther : inOne;
        Deepest place = isOneWithin ? oneInOther : otherInOne;
        double nx = (pointX - edgeX) / best;
        double ny = (pointY - edgeY) / best;
        int edge = place.edge;
        double way = slope(within, edge, place.share, nx, ny);
        if (place.share == 0 && way < 0) {
            edge = within.previous[edge];
            way = slope(within, edge, 1, nx, ny);
            if (way > 0) {
                return false;
            }
        } else if (place.share == 1 && way > 0) {
            edge = within.next[edge];
            way = slope(within, edge, 0, nx, ny);
            if (way < 0) {
                return false;
            }
        }
        double ux = Math.signum(way) * alongX;
        double uy = Math.signum(way) * alongY;
        double x = pointX + ASIDE * ux;
        double y = pointY + ASIDE * uy;
        double depth = standing.at(x, y);
        if (!(depth > 0)) {
            return false;
        }
        ridgeX = (x - standing.nearX) / depth;
        ridgeY = (y - standing.nearY) / depth;
        double up = Math.abs(way);
        double down = -(ridgeX * ux + ridgeY * uy);
        ridgeShare = down / (up + down);
        return up > 0 && down > 0;
    }

    /** How fast a direction rises along an edge of what goes in, in the frame of what stands. */
    private double slope(Edges within, int edge, double share, double nx, double ny) {
        within.along(edge, share, at);
        within.normal(edge, at[0], at[1], at);
        double sine = isOneWithin ? -turnSine : turnSine;
        alongX = turnCosine * -at[1] + sine * at[0];
        alongY = sine * at[1] + turnCosine * at[0];
        return nx * alongX + ny * alongY;
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
        Cores standing = stands.cores();
        if (standing.deepest() <= best) {
            return;
        }
        moving = goesIn.edges();
        still = stands.edges();
        depths = inStanding;
        c = cosine;
        s = sine;
        tx = x;
        ty = y;
        seed();
        node(0);
        core(standing.all(), inMoving);
    }

    /** The deepest core that is covered whole; they stand with the deepest first, and one that is far outside tells of those near it. */
    private void core(List<Cores.Core> cores, PointDepth inMoving) {
        double farX = 0;
        double farY = 0;
        double far = -1;
        for (int i = 0; i < cores.size() && cores.get(i).depth() > best; i++) {
            Cores.Core core = cores.get(i);
            if (length(core.x() - farX, core.y() - farY) < far) {
                continue;
            }
            double px = core.x() - tx;
            double py = core.y() - ty;
            double covered = inMoving.at(c * px - s * py, s * px + c * py);
            if (covered >= 0) {
                double depth = depths.at(core.x(), core.y());
                isOnEdge &= depth <= best;
                offer(core.x(), core.y(), depth);
            } else if (-covered > far) {
                far = -covered;
                farX = core.x();
                farY = core.y();
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
        lookX = c * at[0] + s * at[1] + tx;
        lookY = -s * at[0] + c * at[1] + ty;
        return lookThere(edge, share);
    }

    private double lookThere(int edge, double share) {
        double x = lookX;
        double y = lookY;
        double depth = depths.at(x, y);
        if (depth > best) {
            deepest.edge = edge;
            deepest.share = share;
            isOnEdge = true;
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
        if (!depths.isDeeper(x, y, best + TOLERANCE - moving.nodeR[node])) {
            return;
        }
        if (moving.left[node] < 0) {
            whole(-1 - moving.left[node]);
        } else {
            node(moving.left[node]);
            node(moving.right[node]);
        }
    }

    /** An edge, between its two ends, unless the edge of the other that is nearest to its middle bounds it already. */
    private void whole(int edge) {
        ends(edge, 0, 1);
        double length = moving.length(edge);
        int near = depths.edge;
        double bound = rise(edge, length)
                + standsOff(near)
                + Math.max(still.distance(near, startX, startY), still.distance(near, endX, endY));
        if (bound <= best + TOLERANCE) {
            return;
        }
        double x0 = startX;
        double y0 = startY;
        double x1 = endX;
        double y1 = endY;
        lookX = x0;
        lookY = y0;
        double from = lookThere(edge, 0);
        int nearFrom = depths.edge;
        lookX = x1;
        lookY = y1;
        double to = lookThere(edge, 1);
        piece(edge, 0, x0, y0, from, nearFrom, 1, x1, y1, to, depths.edge, length);
    }

    /**
     * Looks for more within a piece of an edge whose ends are known. Depth changes no faster than place, and is no more than the distance to the edge that is nearest
     * at one end or at the other: where the two bounds cross is looked at next, which finds a ridge in a few steps (Kelley 1960).
     */
    private void piece(
            int edge,
            double from,
            double x0,
            double y0,
            double atFrom,
            int nearFrom,
            double to,
            double x1,
            double y1,
            double atTo,
            int nearTo,
            double length) {
        double most = 0.5 * (atFrom + atTo + length);
        if (most <= best + TOLERANCE || length < SHORTEST) {
            return;
        }
        double share = 0.5 * (1 + (atTo - atFrom) / length);
        startX = x0;
        startY = y0;
        endX = x1;
        endY = y1;
        double rise = rise(edge, length);
        double one = rise + standsOff(nearFrom);
        double other = rise + (nearTo == nearFrom ? standsOff(nearFrom) : standsOff(nearTo));
        if (one < Double.POSITIVE_INFINITY && other < Double.POSITIVE_INFINITY) {
            double a0 = Math.abs(atFrom) + one;
            double a1 = still.distance(nearFrom, endX, endY) + one;
            double b0 = still.distance(nearTo, startX, startY) + other;
            double b1 = Math.abs(atTo) + other;
            double crossing = (b0 - a0) / (b0 - a0 + a1 - b1);
            boolean isRidge = crossing > 0 && crossing < 1;
            double bound = Math.max(Math.min(a0, b0), Math.min(a1, b1));
            if (isRidge) {
                bound = Math.max(bound, a0 + crossing * (a1 - a0));
            }
            if (bound <= best + TOLERANCE) {
                return;
            }
            if (bound < most) {
                share = isRidge ? crossing : 0.5;
            }
        }
        share = Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, share));
        double middle = from + share * (to - from);
        double there = look(edge, middle);
        int near = depths.edge;
        double x = lookX;
        double y = lookY;
        piece(edge, from, x0, y0, atFrom, nearFrom, middle, x, y, there, near, share * length);
        piece(edge, middle, x, y, there, near, to, x1, y1, atTo, nearTo, (1 - share) * length);
    }

    /** By how much a piece of an edge stands off its chord. */
    private double rise(int edge, double length) {
        double r = moving.row[edge * Edges.ROW + Edges.R];
        return r > 0 ? length * length / (8 * r) : 0;
    }

    private void ends(int edge, double from, double to) {
        moving.end(edge, from, at);
        startX = c * at[0] + s * at[1] + tx;
        startY = -s * at[0] + c * at[1] + ty;
        moving.end(edge, to, at);
        endX = c * at[0] + s * at[1] + tx;
        endY = -s * at[0] + c * at[1] + ty;
    }

    /**
     * By how much the distance to an edge that stands may exceed, along the chord between the two ends, what lies straight between its values there: nothing from a
     * straight edge, whose distance is convex; from within an arc a little; infinite where an end does not face the arc.
     */
    private double standsOff(int edge) {
        if (!still.isArc(edge)) {
            return 0;
        }
        int k = edge * Edges.ROW;
        double[] row = still.row;
        double u0 = startX - row[k + Edges.CX];
        double v0 = startY - row[k + Edges.CY];
        double u1 = endX - row[k + Edges.CX];
        double v1 = endY - row[k + Edges.CY];
        boolean isFaced = u0 * row[k + Edges.MX] + v0 * row[k + Edges.MY] >= row[k + Edges.COS] * length(u0, v0)
                && u1 * row[k + Edges.MX] + v1 * row[k + Edges.MY] >= row[k + Edges.COS] * length(u1, v1);
        if (!isFaced) {
            return Double.POSITIVE_INFINITY;
        }
        double du = u1 - u0;
        double dv = v1 - v0;
        double square = du * du + dv * dv;
        double share = square > 0 ? Math.min(1, Math.max(0, -(u0 * du + v0 * dv) / square)) : 0;
        double least = length(u0 + share * du, v0 + share * dv);
        return least > 0 ? square / (8 * least) : Double.POSITIVE_INFINITY;
    }

    /** As {@link Math#hypot}, in a tenth of the time; lengths here are far from over- and underflow. */
    private static double length(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }
}
