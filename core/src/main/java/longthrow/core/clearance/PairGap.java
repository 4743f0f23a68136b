package longthrow.core.clearance;

/** Gap of one outline of a body to one of another at any crank angle, and how fast it can change. Belongs to one thread. */
final class PairGap {
    /** Points nearer than this [m] tell no direction: round-off of coordinates of a metre is a ten-thousandth of it. */
    private static final double SHORTEST = 1e-12;
    /** By how much a strip may fall short of a depth before a second direction is looked for [m]; below what is promised of the least gap. */
    private static final double LOOSE = 0.5e-6;

    private final Motion motionA;
    private final Motion motionB;
    private final Edges a;
    private final Edges b;
    private final Outline one;
    private final Outline other;
    private final OutlineGap gap;
    private final Pose poseA = new Pose();
    private final Pose poseB = new Pose();
    private double lastAngle = Double.NaN;
    private double lastGap = Double.NaN;
    private boolean isApart;
    private final Strip strip;

    PairGap(Motion motionA, Outline one, Motion motionB, Outline other) {
        this.motionA = motionA;
        this.motionB = motionB;
        a = one.edges();
        b = other.edges();
        this.one = one;
        this.other = other;
        gap = new OutlineGap(one, other);
        strip = new Strip(a);
    }

    void place(double angle) {
        motionA.at(angle, poseA);
        motionB.at(angle, poseB);
    }

    /** Gap where the pair was placed last, as {@link OutlineGap#gap(double, boolean)}. */
    double gap(double enough, boolean deep) {
        double dx = poseB.x - poseA.x;
        double dy = poseB.y - poseA.y;
        // turned back by the first frame's angle
        gap.place(
                poseB.c * poseA.c + poseB.s * poseA.s,
                poseB.s * poseA.c - poseB.c * poseA.s,
                poseA.c * dx - poseA.s * dy,
                poseA.s * dx + poseA.c * dy);
        return gap.gap(enough, deep);
    }

    double at(double angle) {
        place(angle);
        return gap(Double.POSITIVE_INFINITY, true);
    }

    /**
     * Gap at an angle a little on from that of the last question, or any value from {@code enough} on where it is more than that. So much is
     * only left open where the pair was apart before and cannot have met since.
     */
    double next(double angle, double enough) {
        change(angle);
        return keep(angle, gap(isApart ? enough : Double.POSITIVE_INFINITY, true));
    }

    /** The same, left open only where no gap from the last angle to this one can be less than {@code least}, and by so much more. */
    double nextNear(double angle, double least) {
        double enough = least + change(angle);
        return keep(angle, gap(isApart || enough < 0 ? enough : Double.POSITIVE_INFINITY, true));
    }

    /** Places the pair and gives the bound on the change of its gap since the last question [m]. */
    private double change(double angle) {
        place(angle);
        double half = Math.abs(angle - lastAngle);
        double change = steepest(angle, half) * half;
        isApart = lastGap > change; // not before there was a question
        return change;
    }

    private double keep(double angle, double gap) {
        lastAngle = angle;
        lastGap = gap;
        return gap;
    }

    /** The gap asked for last, with its points carried into the frame of the crank axis. */
    Closest closest(double value, double angle) {
        return new Closest(
                value,
                angle,
                new Point(poseA.worldX(gap.ax, gap.ay), poseA.worldY(gap.ax, gap.ay)),
                new Point(poseA.worldX(gap.bx, gap.by), poseA.worldY(gap.bx, gap.by)));
    }

    /** Depth of the deepest core of either outline. */
    double deepestCore() {
        return Math.max(one.cores().deepest(), other.cores().deepest());
    }

    long evaluations() {
        return gap.evaluations;
    }

    /**
     * Bound on the change of the gap with the crank angle [m/rad] within half an interval to either side of where the pair was placed last. The gap changes no faster
     * than points of one body move past the other, and either body may be taken for the one that moves.
     */
    double steepest(double angle, double half) {
        double originA = motionA.originSpread(angle, half, poseA);
        double turnA = motionA.turnSpread(angle, half, poseA);
        double originB = motionB.originSpread(angle, half, poseB);
        double turnB = motionB.turnSpread(angle, half, poseB);
        return Math.min(
                past(b, poseB, originB, turnB, poseA, originA, turnA, half),
                past(a, poseA, originA, turnA, poseB, originB, turnB, half));
    }

    /** Lays a {@link Strip} where the pair was placed last and its gap is exact; false where that has no direction. */
    boolean layStrip(double value) {
        double dx = gap.bx - gap.ax;
        double dy = gap.by - gap.ay;
        double length = Math.sqrt(dx * dx + dy * dy);
        if (!(length > SHORTEST)) {
            return false;
        }
        boolean swap = value < 0 && !gap.isOneWithin();
        double sign = value < 0 ? -1 / length : 1 / length;
        double nx = sign * (poseA.c * dx + poseA.s * dy);
        double ny = sign * (poseA.c * dy - poseA.s * dx);
        if (swap) {
            strip.lay(b, poseB, a, poseA, nx, ny);
        } else {
            strip.lay(a, poseA, b, poseB, nx, ny);
        }
        if (value < 0 && strip.width() < value - LOOSE && gap.findsRidge()) {
            Pose frame = swap ? poseA : poseB;
            double mx = gap.ridgeX();
            double my = gap.ridgeY();
            strip.hold(
                    frame.c * mx + frame.s * my,
                    frame.c * my - frame.s * mx,
                    gap.ridgeShare(),
                    (swap ? other : one).cores().deepest() + Cores.TOLERANCE);
        }
        return true;
    }

    /**
     * Lower bound on the gap from where the strip was laid to so far on [m].
     * @param way [rad], either way
     */
    double leastOn(double angle, double way) {
        double half = Math.abs(way);
        double bend = Strip.bend(
                        a,
                        poseA,
                        motionA.originSpread(angle, half, poseA),
                        motionA.turnSpread(angle, half, poseA),
                        half)
                + Strip.bend(
                        b,
                        poseB,
                        motionB.originSpread(angle, half, poseB),
                        motionB.turnSpread(angle, half, poseB),
                        half);
        return strip.least(way, bend);
    }

    /** How fast points of a body move past another at most: the middle of its circle, and the turn about it times the circle's radius. */
    private static double past(
            Edges body,
            Pose p,
            double originSpread,
            double turnSpread,
            Pose q,
            double originSpreadOther,
            double turnSpreadOther,
            double half) {
        double mx = body.nodeX[0];
        double my = body.nodeY[0];
        double rx = p.c * mx + p.s * my;
        double ry = -p.s * mx + p.c * my;
        double arm = Math.sqrt(mx * mx + my * my);
        double vx = p.vx + p.w * ry;
        double vy = p.vy - p.w * rx;
        double dx = p.x + rx - q.x;
        double dy = p.y + ry - q.y;
        double relX = vx - q.vx - q.w * dy;
        double relY = vy - q.vy + q.w * dx;
        double turning = Math.abs(p.w) + turnSpread;
        double own = originSpread + turnSpread * arm + turning * turning * arm * half;
        double away =
                half * (Math.sqrt(vx * vx + vy * vy) + own + Math.sqrt(q.vx * q.vx + q.vy * q.vy) + originSpreadOther);
        double others =
                originSpreadOther + turnSpreadOther * (Math.sqrt(dx * dx + dy * dy) + away) + Math.abs(q.w) * away;
        return Math.sqrt(relX * relX + relY * relY)
                + own
                + others
                + (Math.abs(p.w - q.w) + turnSpread + turnSpreadOther) * body.nodeR[0];
    }
}
