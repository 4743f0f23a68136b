package longthrow.core.clearance;

/** Gap of one outline of a body to one of another at any crank angle, and how fast it can change. Belongs to one thread. */
final class PairGap {
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

    PairGap(Motion motionA, Outline one, Motion motionB, Outline other) {
        this.motionA = motionA;
        this.motionB = motionB;
        a = one.edges();
        b = other.edges();
        this.one = one;
        this.other = other;
        gap = new OutlineGap(one, other);
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
