package longthrow.core.clearance;

import longthrow.core.motion.CrankMotion;

/**
 * How the frame of a body moves with the crank: where its origin is and how far it is turned, from +y towards +x, at every angle. Each says what its
 * origin is; the outline is drawn in that frame, upright. Angles [rad], lengths [m].
 */
public abstract class Motion {
    Motion() {}

    /** After how many turns of the crank the frame stands as before: 1 or 2. */
    abstract int turns();

    /** Frame at a crank angle, with its rates. */
    abstract void at(double angle, Pose pose);

    /** Bound on how much the origin's rate changes within some angle to either side of a pose just asked for [m/rad]. */
    abstract double originSpread(double angle, double half, Pose pose);

    /** The same for the rate of turning. */
    abstract double turnSpread(double angle, double half, Pose pose);

    /**
     * Where a frame stands, for a picture.
     * @param x    of its origin, across towards the anti-thrust side [m]
     * @param y    of its origin, up along the cylinder [m]
     * @param turn from +y towards +x [rad], within half a turn to either side
     */
    public record Standing(double x, double y, double turn) {}

    /** Where the frame stands at a crank angle [rad]. */
    public Standing standing(double angle) {
        if (!Double.isFinite(angle)) {
            throw new IllegalArgumentException("a frame is asked for at " + angle + " rad; give a finite crank angle");
        }
        Pose pose = new Pose();
        at(angle, pose);
        return new Standing(pose.x, pose.y, Math.atan2(pose.s, pose.c));
    }

    /** What does not move: case, cylinder, head, sleeve. Drawn where it is, origin on the crank axis. */
    public static Motion fixed() {
        return new Turning(0, 0, 0, 0);
    }

    /** What turns with the crank: cheeks, counterweights. Drawn as it stands with the throw along the cylinder, origin on the crank axis. */
    public static Motion crank() {
        return new Turning(0, 0, 1, 0);
    }

    /**
     * What turns at half speed about an axis of its own: cam core, lobes, compression-release weight. Drawn as it stands at crank angle 0.
     * @param axis  its origin
     * @param hand  whether it turns the way the crank does
     * @param later by how much of its own angle it stands back in its direction of turning
     */
    public static Motion halfSpeed(Point axis, Hand hand, double later) {
        finite("phase", later);
        double way = hand == Hand.WITH_CRANK ? 1 : -1;
        return new Turning(axis.x(), axis.y(), way / 2, -way * later);
    }

    /** Which way something turns. */
    public enum Hand {
        /** The way of the crank, as by chain or belt. */
        WITH_CRANK,
        /** The other way, as by two gears. */
        AGAINST_CRANK
    }

    /** The connecting rod: origin at the big end's centre, +y to the small end; cap, bolts and dipper have negative y. */
    public static Motion rod(CrankMotion crank) {
        return new Rod(crank);
    }

    /**
     * The piston: origin at the pin's centre, y along the cylinder, so that its own axis is at x = -pin offset.
     * @param crank with both offsets added up
     * @param rock  turn about the pin [rad], from +y towards +x, as play between skirt and wall allows; 0 is square
     */
    public static Motion piston(CrankMotion crank, double rock) {
        finite("rock of a piston", rock);
        return new Reciprocating(crank, rock);
    }

    /**
     * A valve: drawn shut with its stem along +y away from the head of the valve, so that it opens towards -y.
     * @param seat  where its frame's origin is with the valve shut
     * @param angle of the stem from +y towards +x
     * @param lift  0 or more
     */
    public static Motion valve(Point seat, double angle, Course lift) {
        finite("angle of a valve", angle);
        return new Guided(seat, angle, -1, lift, 0, Course.none());
    }

    /**
     * A pushrod: drawn upright with its origin at the lower end's centre, which the follower lifts.
     * @param foot  lower end with the follower down
     * @param angle of the way of the follower from +y towards +x
     * @param lift  of the follower
     * @param way   sense in which the swing turns it
     * @param swing about its lower end, as its upper end follows the rocker [rad]; {@link Course#none} where that may be left out
     */
    public static Motion pushrod(Point foot, double angle, Course lift, Hand way, Course swing) {
        finite("angle of a pushrod", angle);
        return new Guided(foot, angle, 1, lift, sign(way), swing);
    }

    /**
     * A rocker: drawn as it stands with its valve shut, origin on its axis.
     * @param axis  its origin
     * @param angle by which the drawing is turned [rad]
     * @param way   sense in which it turns as it opens, WITH_CRANK from +y towards +x
     * @param swing angle turned [rad], 0 with the valve shut
     */
    public static Motion rocker(Point axis, double angle, Hand way, Course swing) {
        finite("angle of a rocker", angle);
        return new Guided(axis, angle, 0, Course.none(), sign(way), swing);
    }

    private static double sign(Hand way) {
        return way == Hand.WITH_CRANK ? 1 : -1;
    }

    private static void finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the " + what + " is " + value + " rad; it must be a finite number");
        }
    }

    /** Turns evenly about a point, or stands. */
    private static final class Turning extends Motion {
        private final double x;
        private final double y;
        private final double rate;
        private final double start;
        private final double startCosine;
        private final double startSine;

        Turning(double x, double y, double rate, double start) {
            this.x = x;
            this.y = y;
            this.rate = rate;
            this.start = start;
            startCosine = Math.cos(start);
            startSine = Math.sin(start);
        }

        @Override
        int turns() {
            return rate == Math.rint(rate) ? 1 : 2;
        }

        @Override
        void at(double angle, Pose pose) {
            pose.x = x;
            pose.y = y;
            pose.vx = 0;
            pose.vy = 0;
            pose.w = rate;
            if (rate == 0) { // what stands is asked for as often as what turns
                pose.c = startCosine;
                pose.s = startSine;
            } else {
                pose.turn(rate * angle + start);
            }
        }

        @Override
        double originSpread(double angle, double half, Pose pose) {
            return 0;
        }

        @Override
        double turnSpread(double angle, double half, Pose pose) {
            return 0;
        }
    }

    /** Bounds on the second derivatives of a slider-crank. */
    private abstract static class Cranked extends Motion {
        final CrankMotion crank;
        final double mostSide;
        final double leastRise;

        Cranked(CrankMotion crank) {
            this.crank = crank;
            mostSide = crank.crankRadius() + Math.abs(crank.offset());
            leastRise = Math.sqrt(crank.rodLength() * crank.rodLength() - mostSide * mostSide);
        }

        @Override
        final int turns() {
            return 1;
        }
    }

    private static final class Rod extends Cranked {
        private final double mostBend; // of the angle: d/da (r cos / rise) = -r sin / rise + r2 cos2 side / rise3

        Rod(CrankMotion crank) {
            super(crank);
            double r = crank.crankRadius();
            mostBend = r / leastRise + r * r * mostSide / (leastRise * leastRise * leastRise);
        }

        @Override
        void at(double angle, Pose pose) {
            double r = crank.crankRadius();
            double l = crank.rodLength();
            double sine = r * Math.sin(angle);
            double cosine = r * Math.cos(angle);
            double side = sine - crank.offset();
            double rise = Math.sqrt(l * l - side * side);
            pose.x = sine;
            pose.y = cosine;
            pose.vx = cosine;
            pose.vy = -sine;
            pose.s = -side / l;
            pose.c = rise / l;
            pose.w = -cosine / rise;
        }

        @Override
        double originSpread(double angle, double half, Pose pose) {
            return crank.crankRadius() * half;
        }

        @Override
        double turnSpread(double angle, double half, Pose pose) {
            return mostBend * half;
        }
    }

    private static final class Reciprocating extends Cranked {
        private final double cosine;
        private final double sine;
        private final double mostBend; // of the height, from CrankMotion.travelBend

        Reciprocating(CrankMotion crank, double rock) {
            super(crank);
            cosine = Math.cos(rock);
            sine = Math.sin(rock);
            double r = crank.crankRadius();
            double l = crank.rodLength();
            mostBend = r * (1 + mostSide / leastRise + r * l * l / (leastRise * leastRise * leastRise));
        }

        @Override
        void at(double angle, Pose pose) {
            pose.x = crank.offset();
            pose.y = crank.pinHeight(angle);
            pose.vx = 0;
            pose.vy = -crank.travelSlope(angle);
            pose.c = cosine;
            pose.s = sine;
            pose.w = 0;
        }

        @Override
        double originSpread(double angle, double half, Pose pose) {
            return mostBend * half;
        }

        @Override
        double turnSpread(double angle, double half, Pose pose) {
            return 0;
        }
    }

    /** Slides along a line by one course and turns about its origin by another. */
    private static final class Guided extends Motion {
        private final Point start;
        private final double angle;
        private final double dx;
        private final double dy;
        private final Course along;
        private final double way;
        private final Course swing;

        Guided(Point start, double angle, double direction, Course along, double way, Course swing) {
            this.start = start;
            this.angle = angle;
            this.dx = direction * Math.sin(angle);
            this.dy = direction * Math.cos(angle);
            this.along = along;
            this.way = way;
            this.swing = swing;
        }

        @Override
        int turns() {
            return 2;
        }

        @Override
        void at(double crankAngle, Pose pose) {
            double lift = along.at(crankAngle);
            double rate = along.slope(crankAngle);
            pose.x = start.x() + dx * lift;
            pose.y = start.y() + dy * lift;
            pose.vx = dx * rate;
            pose.vy = dy * rate;
            pose.w = way * swing.slope(crankAngle);
            pose.turn(angle + way * swing.at(crankAngle));
        }

        @Override
        double originSpread(double crankAngle, double half, Pose pose) {
            return along.spread(crankAngle, half, pose.vx * dx + pose.vy * dy);
        }

        @Override
        double turnSpread(double crankAngle, double half, Pose pose) {
            return swing.spread(crankAngle, half, way * pose.w);
        }
    }
}
