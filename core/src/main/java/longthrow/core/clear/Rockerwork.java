package longthrow.core.clear;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.clearance.Course;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Point;
import longthrow.core.life.Asked;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Pushrods in their tubes and rockers over their retainers. Both valves have one set of readings, so they are drawn once: at every crank angle as far open as that
 * valve which is open by more of its lift, and all the way as far as the one that opens farther. No lift of either is left out. Plane geometry of the swinging rocker, exact for it.
 */
final class Rockerwork {
    /**
     * Rockers stand square to their valve at half lift within this, 95 % half-width [rad]; common practice, no source. It holds what a rounded tip does as it rolls on the
     * stem: what swings is then the centre of its round, which a radius of 6 mm on an arm of 25 mm puts 13° higher.
     */
    private static final double ROCKER = Math.toRadians(15);
    /** A lifter moves along its pushrod's tube within this, 95 % half-width [rad]; common practice, no source. */
    private static final double LIFTER = Math.toRadians(2);
    /** The balls or cups of a pushrod have their centre half its diameter inside its ends, and so much of that more or less, 95 % half-width; common practice, no source. */
    private static final double BALL = 0.5;

    private static final String HOW_IT_STANDS = "how the rocker stands to its valve";
    private static final String LIFTER_WAY = "way of the lifter against the tube";
    private static final String LIFTER_BESIDE = "way of the lifter against the tube, beside";
    private static final String BALLS = "centres of the pushrod's ends";

    /** So finely a way is laid down over the lift: straight between, it is off by less than 0.001 mm at the retainer, even with 16 mm of lift on arms of 10 mm. */
    private static final int STEPS = 256;

    /** What stands around a hole is drawn so thick [m]; layout. */
    private static final double WALL = 3e-3;
    /**
     * Rocker and retainer reach so far to either side and away from each other, farther than any retainer overlaps [m]. They come to a point there: a bar has no deepest
     * place, and how deep two overlap then takes tens of times as long to work out.
     */
    private static final double WIDE = 0.06;

    private static final double THICK = 0.03;

    private Rockerwork() {}

    // ---- lift

    /** Share of the full lift by crank angle, of the valve that is farther open. */
    private record Opening(Course share) {
        /** Full lift of the valve that opens farther [m]. */
        static double full(Sizes s) {
            return Math.max(s.of(Term.INTAKE_LIFT), s.of(Term.EXHAUST_LIFT));
        }

        /** A course that hangs on the share of the full lift alone, laid down in {@link #STEPS} of it and straight between. */
        Course through(DoubleUnaryOperator of) {
            double[] table = new double[STEPS + 1];
            for (int k = 0; k <= STEPS; k++) {
                table[k] = of.applyAsDouble((double) k / STEPS);
            }
            return Course.of(angle -> {
                double cell = share.at(angle) * STEPS;
                int k = Math.min((int) cell, STEPS - 1);
                return table[k] + (cell - k) * (table[k + 1] - table[k]);
            });
        }
    }

    /**
     * Asks for how far both valves open and when. The least gap hangs on the lift alone, so one of two valves may tell the angles. The compression release counts for nothing
     * here, since a shut valve is looked at as well.
     */
    private static Optional<Opening> opening(Asked of) {
        of.figure(Term.INTAKE_LIFT);
        of.figure(Term.EXHAUST_LIFT);
        Optional<Lift> exhaust = exhaust(of);
        Optional<Lift> intake = Lift.of(of, Part.INTAKE_VALVE);
        if (!of.isWhole() || intake.isEmpty()) {
            return Optional.empty();
        }
        List<Lift> lifts = Stream.of(intake, exhaust).flatMap(Optional::stream).toList();
        Sizes best = new Sourced(of.figures(), Rockerwork::nothingDrawn).best();
        return Optional.of(new Opening(Course.of(angle -> lifts.stream()
                .mapToDouble(lift -> lift.at(best, angle - lift.peak(best, 0)) / best.of(Lift.full(lift.valve())))
                .max()
                .orElse(0))));
    }

    private static Optional<Lift> exhaust(Asked of) {
        Asked alone = new Asked(of.known());
        Optional<Lift> lift = Lift.of(alone, Part.EXHAUST_VALVE).filter(l -> alone.isWhole());
        if (lift.isPresent()) {
            of.figure(Lift.centre(Part.EXHAUST_VALVE));
        } else {
            of.takes(
                    Part.EXHAUST_VALVE.key(),
                    "when the exhaust valve opens is not known: rocker and pushrod gaps are told at the angles of the intake valve alone; how far it opens counts",
                    "geometry: such a gap hangs on the lift alone");
        }
        return lift;
    }

    private static Pair nothingDrawn(Sizes s) {
        throw new IllegalStateException("nothing is drawn yet");
    }

    // ---- the rocker's swing

    private static void rocker(Asked of) {
        of.figure(Term.ROCKER_VALVE_ARM);
        of.given(
                HOW_IT_STANDS,
                Measured.of(0, List.of(Source.at95(HOW_IT_STANDS, Source.Kind.ASSUMED, HOW_IT_STANDS, ROCKER))));
        of.takes(
                Part.ROCKER.key(),
                "rockers are taken to stand square to their valve at half lift, within 15°, a round tip that rolls on the stem counted in",
                "common practice, no source");
    }

    /** The larger of both valves' [m]. */
    private static double lash(Sizes s) {
        return Math.max(s.of(Term.INTAKE_LASH), s.of(Term.EXHAUST_LASH));
    }

    /** How far the valve's end of the rocker stands above square with the valve shut [rad]. */
    private static double valveEndHigh(Sizes s, double full) {
        return Math.asin(full / 2 / s.of(Term.ROCKER_VALVE_ARM)) + s.of(HOW_IT_STANDS);
    }

    /**
     * Angle turned for a travel of its tip along the valve [rad].
     * @param high how far its valve end stands above square at no travel
     */
    private static double swing(Sizes s, double travel, double high) {
        return Math.asin(travel / s.of(Term.ROCKER_VALVE_ARM) - Math.sin(high)) + high;
    }

    /** Refuses an arm that cannot travel so far. */
    private static double within(Sizes s, double travel, double high) {
        if (!Double.isFinite(swing(s, travel, high))) {
            throw new IllegalArgumentException("a rocker with so short an arm at the valve cannot lift it so far");
        }
        return travel;
    }

    // ---- pushrod in its tube

    /**
     * The pushrod in its tube, looked at along the tube: a circle in a hole, as far off its middle as the rod is at that end of the tube where it is farther off.
     * The rod's end on the lifter keeps its place and rises, that on the rocker goes round the pivot; between them the rod is straight.
     */
    static Function<Sizes, Pair> pushrodInTube(Asked of) {
        Optional<Opening> opening = opening(of);
        rocker(of);
        of.figure(Term.ROCKER_PUSHROD_ARM);
        of.figure(Term.ROCKER_PUSHROD_LOW);
        of.figure(Term.INTAKE_LASH);
        of.figure(Term.EXHAUST_LASH);
        of.figure(Term.PUSHROD_LENGTH);
        of.figure(Term.PUSHROD_OUTSIDE);
        of.figure(Term.TUBE_INSIDE);
        of.figure(Term.TUBE_FROM);
        of.figure(Term.TUBE_TO);
        of.figure(Term.PUSHROD_FOOT_OFF);
        of.figure(Term.PUSHROD_FOOT_BESIDE);
        of.figure(Term.PUSHROD_TIP_OFF);
        of.figure(Term.PUSHROD_TIP_BESIDE);
        for (String way : List.of(LIFTER_WAY, LIFTER_BESIDE)) {
            of.given(way, Measured.of(0, List.of(Source.at95(way, Source.Kind.ASSUMED, way, LIFTER))));
        }
        of.takes(
                Part.PUSHROD.key(),
                "lifters are taken to move along the pushrod's tube, within 2° either way",
                "common practice, no source");
        of.scatter(BALLS, BALL);
        of.takes(
                Term.PUSHROD_LENGTH.path(),
                "the centres of the pushrod's ends are taken to lie half its diameter, ± half of that, inside them",
                "common practice, no source");
        return s -> {
            Leaning rod = Leaning.of(s);
            Course off = opening.orElseThrow().through(rod::off);
            return new Pair(
                    Body.of(
                            "pushrod, seen along its tube",
                            Outline.circle(new Point(0, 0), rod.radius * s.grown(Warm.GEAR_GROWTH)),
                            Depth.throughout(),
                            Motion.pushrod(new Point(0, 0), Math.PI / 2, off, Motion.Hand.WITH_CRANK, Course.none())),
                    Body.of(
                            "pushrod tube",
                            Outline.ring(
                                    new Point(0, 0), s.of(Term.TUBE_INSIDE) / 2, s.of(Term.TUBE_INSIDE) / 2 + WALL),
                            Depth.throughout(),
                            Motion.fixed()),
                    0);
        };
    }

    /** A pushrod by how far its rocker has turned, in the frame of its tube: off its middle line away from the pivot, beside it, and up along it. */
    private static final class Leaning {
        private final Sizes s;
        private final double travel;
        private final double high;
        private final double low;
        private final double arm;
        private final double foot;
        private final double length;
        final double radius;

        private Leaning(Sizes s) {
            this.s = s;
            double full = Opening.full(s);
            high = valveEndHigh(s, full);
            travel = within(s, full + lash(s), high);
            low = s.of(Term.ROCKER_PUSHROD_LOW);
            arm = s.of(Term.ROCKER_PUSHROD_ARM);
            foot = s.of(BALLS) * s.of(Term.PUSHROD_OUTSIDE) / 2;
            length = s.of(Term.PUSHROD_LENGTH) - 2 * foot;
            double across = Math.hypot(
                    s.of(Term.PUSHROD_TIP_OFF) - s.of(Term.PUSHROD_FOOT_OFF),
                    s.of(Term.PUSHROD_TIP_BESIDE) - s.of(Term.PUSHROD_FOOT_BESIDE));
            // cut square to the tube a leaning rod is a little longer than wide
            radius = s.of(Term.PUSHROD_OUTSIDE) / 2 * Math.hypot(1, across / length);
        }

        static Leaning of(Sizes s) {
            return new Leaning(s);
        }

        /** How far the rod's middle is from the tube's at that end where it is farther, by the share of the lift; the lash is taken up in step with it. */
        double off(double share) {
            double turned = swing(s, share * travel, high);
            double rise = arm * (Math.sin(turned - low) + Math.sin(low));
            double footOff = s.of(Term.PUSHROD_FOOT_OFF) + rise * Math.sin(s.of(LIFTER_WAY));
            double tipOff = s.of(Term.PUSHROD_TIP_OFF) + arm * (Math.cos(turned - low) - Math.cos(low));
            return Math.max(
                    off(s.of(Term.TUBE_FROM), rise, footOff, tipOff), off(s.of(Term.TUBE_TO), rise, footOff, tipOff));
        }

        private double off(double end, double rise, double footOff, double tipOff) {
            double along = (end - foot - rise) / length;
            double off = footOff + along * (tipOff - footOff);
            double footBeside = s.of(Term.PUSHROD_FOOT_BESIDE) + rise * Math.sin(s.of(LIFTER_BESIDE));
            double beside = footBeside + along * (s.of(Term.PUSHROD_TIP_BESIDE) - footBeside);
            return Math.hypot(off, beside);
        }
    }

    // ---- retainer under its rocker

    /** Whether what lies over the retainer at full lift is not known, so that the rocker is drawn flat and across all of it. */
    static boolean isFlat(Asked of) {
        return !Outlined.has(of, OutlinedPart.ROCKER)
                && of.value(Term.ROCKER_OVER_RETAINER_OPEN).isEmpty();
    }

    /**
     * The retainer under its rocker, in the plane the rocker swings in: the end of the shut valve's stem at the origin, y along the stem, x away from the pivot.
     * The rocker is as traced, or else as large as it can be with the gaps that were read: nothing of it lies lower than those over the retainer, shut and at full lift.
     */
    static Function<Sizes, Pair> retainerUnderRocker(Asked of, boolean runs) {
        Optional<Opening> opening = opening(of);
        rocker(of);
        if (runs) {
            of.figure(Term.INTAKE_LASH);
            of.figure(Term.EXHAUST_LASH);
            of.takes(
                    Part.ROCKER.key(),
                    "running, all of the lash may be gone, so that the valve opens farther by as much",
                    "geometry; on the safe side");
        }
        Optional<Outlined> rocker = Outlined.of(of, OutlinedPart.ROCKER);
        Optional<Outlined> retainer = Outlined.of(of, OutlinedPart.RETAINER);
        Optional<Function<Sizes, Body>> read = retainer.isEmpty() ? Optional.of(retainer(of)) : Optional.empty();
        boolean isFlat = isFlat(of);
        if (rocker.isEmpty()) {
            of.figure(Term.RETAINER_BELOW_TIP);
            of.figure(Term.ROCKER_OVER_RETAINER);
            if (!isFlat) {
                of.figure(Term.ROCKER_OVER_RETAINER_OPEN);
            }
        }
        return s -> {
            double full = Opening.full(s);
            double high = valveEndHigh(s, full);
            double travel = within(s, runs ? full + lash(s) : full, high);
            double arm = s.of(Term.ROCKER_VALVE_ARM);
            Point pivot = new Point(-arm * Math.cos(high), -arm * Math.sin(high));
            Motion swings = Motion.rocker(
                    pivot,
                    0,
                    Motion.Hand.WITH_CRANK,
                    opening.orElseThrow().through(share -> swing(s, share * travel, high)));
            Motion slides = Motion.valve(
                    new Point(0, 0), 0, opening.orElseThrow().share().times(travel));
            Body over = rocker.map(traced -> traced.moved(-pivot.x(), -pivot.y(), swings))
                    .orElseGet(() -> Body.of(
                            "rocker",
                            underside(s, isFlat, pivot, swing(s, full, high), full)
                                    .placed(0, -pivot.x(), -pivot.y()),
                            Depth.throughout(),
                            swings));
            Body under = retainer.map(traced -> traced.moved(0, 0, slides))
                    .orElseGet(() -> read.orElseThrow().apply(s).moving(slides));
            return new Pair(under, over, s.closer(Warm.GAP_TO_RETAINER));
        };
    }

    /** The retainer by its readings, in the frame of its outline. */
    static Function<Sizes, Body> retainer(Asked of) {
        of.figure(Term.RETAINER_OUTSIDE);
        of.figure(Term.RETAINER_BELOW_TIP);
        return s -> Body.of("spring retainer", retainer(s), Depth.throughout(), Motion.fixed());
    }

    /** Nothing of the retainer stands higher than its rim. */
    private static Outline retainer(Sizes s) {
        double half = s.of(Term.RETAINER_OUTSIDE) / 2;
        double top = -s.of(Term.RETAINER_BELOW_TIP);
        return Outline.polygon(List.of(
                new Point(-half, top - half),
                new Point(0, top - half - THICK),
                new Point(half, top - half),
                new Point(half, top),
                new Point(-half, top)));
    }

    /**
     * As it stands with the valve shut: all that lies above both of two lines. One is level, by the gap that was read shut over the rim. The other is level at full lift,
     * by the gap that was read there, and so rises away from the pivot by the angle that the rocker has yet to turn.
     */
    private static Outline underside(Sizes s, boolean isFlat, Point pivot, double turned, double full) {
        double rim = -s.of(Term.RETAINER_BELOW_TIP);
        double shut = rim + s.of(Term.ROCKER_OVER_RETAINER);
        if (isFlat) {
            return Outline.polygon(List.of(new Point(-WIDE, shut), new Point(WIDE, shut), new Point(0, shut + WIDE)));
        }
        double overPivot = rim - full + s.of(Term.ROCKER_OVER_RETAINER_OPEN) - pivot.y();
        double slope = Math.tan(turned);
        // a point (0, overPivot) about the pivot, turned back, and the line through it
        double across = pivot.x() - overPivot * Math.sin(turned);
        double up = pivot.y() + overPivot * Math.cos(turned);
        double corner = Math.max(-WIDE, Math.min(WIDE, across + (shut - up) / slope));
        double atCorner = Math.max(shut, up + slope * (corner - across));
        double atEnd = Math.max(shut, up + slope * (WIDE - across));
        double top = Math.max(atEnd, atCorner) + WIDE;
        double atStart = Math.max(shut, up + slope * (-WIDE - across));
        return corner <= -WIDE || corner >= WIDE
                ? Outline.polygon(List.of(new Point(-WIDE, atStart), new Point(WIDE, atEnd), new Point(0, top)))
                : Outline.polygon(List.of(
                        new Point(-WIDE, shut),
                        new Point(corner, atCorner),
                        new Point(WIDE, atEnd),
                        new Point(0, top)));
    }
}
