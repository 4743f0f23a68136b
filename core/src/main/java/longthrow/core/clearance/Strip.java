package longthrow.core.clearance;

/**
 * How small the gap of two outlines can become a little way on, told from the direction in which they are nearest, or in which one would have to go to come free of the other.
 *
 * <p>Square to any direction stands a strip that parts the hulls of the two: its width is how far the other begins past where the one ends, below 0 where they overlap. The signed
 * gap is never less: apart, no two points are nearer than the strip is wide; overlapping, a circle about a point of one that fits into the other reaches no
 * farther along the direction than the other does, so that its radius is at most what they overlap by. With the direction kept and every point taken on at
 * its speed the width is the least of straight lines over the way, so it is least at one end; what the speeds may change on the way comes off.
 * Where the outlines are nearest it starts at the gap itself and falls off no faster than the gap does there, but for the square of the way: that is what
 * the bound by the largest speed of any point lacks.
 *
 * <p>A deepest point as far from two edges is held by two directions n and m together: it lies no deeper than a share of its way past where the other begins along n and the rest of
 * that along m, which is the way along their mean; the one reaches no farther along that. The mean is shorter than 1, so that for the way in of the other into the one, which it does not
 * bound by itself, this is divided by its length, or the deepest core of the one is taken. Belongs to one thread.
 */
final class Strip {
    private static final int STACK = 128;
    private final int[] stack = new int[STACK];
    private Edges one;
    private Edges other;
    private Pose p = new Pose();
    private Pose q = new Pose();
    private double nx;
    private double ny;
    private double mx;
    private double my;
    private double share;
    private double mostOtherWay;

    Strip(Edges one) {
        this.one = one;
        other = one;
    }

    /**
     * Lays it between the two as they stand.
     * @param nx direction from the one to the other in the frame of the crank axis, a unit vector
     */
    void lay(Edges one, Pose p, Edges other, Pose q, double nx, double ny) {
        this.one = one;
        this.p = p;
        this.other = other;
        this.q = q;
        this.nx = nx;
        this.ny = ny;
        share = 1;
        mostOtherWay = Double.POSITIVE_INFINITY;
    }

    /**
     * Takes a second direction to it.
     * @param share of the first, 0 to 1
     * @param most  how deep the other can lie within the one at all [m]
     */
    void hold(double mx, double my, double share, double most) {
        this.mx = mx;
        this.my = my;
        this.share = share;
        mostOtherWay = most;
    }

    /**
     * Lower bound on the gap from where both stand to so far on.
     * @param way  [rad], either way
     * @param bend by how much speeds of points of the one and of the other may change on the way, together [m/rad]
     */
    double least(double way, double bend) {
        double ax = share * nx + (1 - share) * mx;
        double ay = share * ny + (1 - share) * my;
        double least = Math.min(width(ax, ay, 0), width(ax, ay, way)) - bend * Math.abs(way);
        return share == 1 || least >= 0
                ? least
                : Math.min(least, Math.max(-mostOtherWay, least / Math.sqrt(ax * ax + ay * ay)));
    }

    /** Width here. */
    double width() {
        return width(nx, ny, 0);
    }

    private double width(double ax, double ay, double way) {
        double begins = -reach(other, q, -nx, -ny, way);
        if (share < 1) {
            begins = share * begins - (1 - share) * reach(other, q, -mx, -my, way);
        }
        return begins - reach(one, p, ax, ay, way);
    }

    /** How far points reach along a direction, each taken on at its speed. */
    private double reach(Edges body, Pose pose, double dx, double dy, double way) {
        double ex = dx - way * pose.w * dy; // a point at r from the origin is carried on by the turn in proportion to r
        double ey = dy + way * pose.w * dx;
        return dx * (pose.x + way * pose.vx)
                + dy * (pose.y + way * pose.vy)
                + body.reach(pose.c * ex - pose.s * ey, pose.s * ex + pose.c * ey, Double.NEGATIVE_INFINITY, stack);
    }

    /** By how much the speed of any point of a body may change within some angle: that of its origin, and that about it [m/rad]. */
    static double bend(Edges body, Pose pose, double originSpread, double turnSpread, double way) {
        double x = body.nodeX[0];
        double y = body.nodeY[0];
        double arm = Math.sqrt(x * x + y * y) + body.nodeR[0];
        double turning = Math.abs(pose.w);
        return originSpread + turnSpread * arm + turning * (turning + turnSpread) * arm * way;
    }
}
