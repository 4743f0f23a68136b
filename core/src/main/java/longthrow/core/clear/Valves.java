package longthrow.core.clear;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.clearance.Course;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Point;
import longthrow.core.life.Asked;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Valves as they open, against piston, bore wall and each other. Lash is taken as gone where the engine runs. */
final class Valves {
    /** A head's underside rises no flatter than at 45° from its edge to its stem; common practice, no source. Half of the thinnest stem [m]. */
    private static final double STEM = 2e-3;
    /** As far down the bore as a valve can reach [m]. */
    private static final double WALL = 0.03;

    private static final double THICK = 0.02;
    /** Growth of a head at work: intake about 400 K, exhaust about 700 K above the bench, austenitic steel 17e-6 1/K; from memory, rounded up. */
    private static final double INTAKE_GROWTH = 0.007;

    private static final double EXHAUST_GROWTH = 0.012;

    private final Part valve;
    private final Term diameter;
    private final Term tilt;
    private final Term recess;
    private final Term margin;
    private final Term pocket;
    private final Term fromAxis;
    private final String name;

    private Valves(Part valve) {
        boolean isIntake = valve == Part.INTAKE_VALVE;
        this.valve = valve;
        diameter = isIntake ? Term.INTAKE_HEAD : Term.EXHAUST_HEAD;
        tilt = isIntake ? Term.INTAKE_TILT : Term.EXHAUST_TILT;
        recess = isIntake ? Term.INTAKE_RECESS : Term.EXHAUST_RECESS;
        margin = isIntake ? Term.INTAKE_MARGIN : Term.EXHAUST_MARGIN;
        pocket = isIntake ? Term.INTAKE_POCKET : Term.EXHAUST_POCKET;
        fromAxis = isIntake ? Term.INTAKE_FROM_AXIS : Term.EXHAUST_FROM_AXIS;
        name = valve.label();
    }

    static Valves of(Part valve) {
        return new Valves(valve);
    }

    private void asks(Asked of, boolean runs) {
        of.takes(
                valve.key(),
                "the stem is taken to be 4 mm thick at the least and the head to rise to it at 45°",
                "common practice, no source");
        if (runs) {
            of.takes(
                    valve.key(),
                    String.format(
                            Locale.ROOT, "the valve's head grows by %.1f %% of its diameter at work", 100 * growth()),
                    "some 400 K (intake) or 700 K (exhaust) above the bench, austenitic steel; from memory, rounded up");
        }
        of.figure(diameter);
        of.figure(tilt);
        of.figure(recess);
        of.figure(margin);
        of.figure(Lift.lash(valve));
    }

    private double growth() {
        return valve == Part.INTAKE_VALVE ? INTAKE_GROWTH : EXHAUST_GROWTH;
    }

    /**
     * The valve's head.
     * @param seat  where the middle of its face is, shut
     * @param angle of its stem
     * @param runs  whether the engine runs: then the lash is gone and the head has grown
     */
    private Body head(Sizes s, Point seat, double angle, Course lift, boolean runs) {
        double half = s.of(diameter) / 2 * (runs ? 1 + growth() : 1);
        double lashGone = runs ? s.of(Lift.lash(valve)) : 0;
        double edge = s.of(margin);
        double rise = Math.max(half - STEM, 0);
        Outline outline = Outline.polygon(List.of(
                new Point(-half, 0),
                new Point(half, 0),
                new Point(half, edge),
                new Point(half - rise, edge + rise),
                new Point(-half + rise, edge + rise),
                new Point(-half, edge)));
        Point shut = new Point(seat.x() - lashGone * Math.sin(angle), seat.y() - lashGone * Math.cos(angle));
        return Body.of(name, outline, Depth.throughout(), Motion.valve(shut, angle, lift));
    }

    /** To the piston: its crown's rim, its pocket's floor, or the highest point of its dome. */
    Function<Sizes, Pair> toPiston(Asked of, boolean runs) {
        Crown.asks(of);
        asks(of, runs);
        of.figure(pocket);
        of.figure(Term.GASKET_THICKNESS);
        boolean isFlat = of.value(pocket).filter(p -> p.value() == 0).isPresent();
        if (isFlat) {
            of.figure(Term.CROWN_RISE);
        } else {
            of.takes(
                    pocket.path(),
                    "the pocket is taken to be wide enough for the valve; whether the rim meets its wall, clay tells",
                    "its depth alone is read");
        }
        Optional<Lift> lift = Lift.of(of, valve);
        return s -> {
            double crown = Crown.level(s) + (isFlat ? s.of(Term.CROWN_RISE) : -s.of(pocket));
            double seat = Crown.headFace(s) + s.of(recess);
            Course course = lift.orElseThrow().course(s, Crankwork.topDeadCentre(s));
            return new Pair(
                    Crankwork.pistonUpTo("piston", s, crown),
                    head(s, new Point(0, seat), s.of(tilt), course, runs),
                    s.warm(Warm.SLACK_TO_PISTON));
        };
    }

    /** To the bore wall, in the plane of both axes. */
    Function<Sizes, Pair> toWall(Asked of, boolean runs) {
        asks(of, runs);
        of.figure(fromAxis);
        of.figure(Term.GASKET_THICKNESS);
        of.figure(Term.BORE);
        Optional<Lift> lift = Lift.of(of, valve);
        of.takes(
                tilt.path(),
                "the valve is taken to lean in the plane of bore axis and valve; the chamber's own wall is not looked"
                        + " at",
                "geometry");
        return s -> {
            double wall = s.of(Term.BORE) / 2;
            Body bore = Body.of(
                    "bore wall",
                    Outline.polygon(List.of(
                            new Point(wall, -WALL),
                            new Point(wall + THICK, -WALL),
                            new Point(wall + THICK, 0),
                            new Point(wall, 0))),
                    Depth.throughout(),
                    Motion.fixed());
            Point seat = new Point(s.of(fromAxis), s.of(Term.GASKET_THICKNESS) + s.of(recess));
            return Pair.of(bore, head(s, seat, s.of(tilt), lift.orElseThrow().course(s, 0), runs));
        };
    }

    /** To each other, in the plane of both. */
    static Function<Sizes, Pair> toEachOther(Asked of, boolean runs) {
        Valves intake = of(Part.INTAKE_VALVE);
        Valves exhaust = of(Part.EXHAUST_VALVE);
        intake.asks(of, runs);
        exhaust.asks(of, runs);
        of.figure(Term.VALVE_SPACING);
        Optional<Lift> in = Lift.of(of, Part.INTAKE_VALVE);
        Optional<Lift> ex = Lift.of(of, Part.EXHAUST_VALVE);
        of.takes(
                Term.VALVE_SPACING.path(),
                "both valves are taken to lean in the plane through their heads",
                "geometry");
        return s -> {
            double half = s.of(Term.VALVE_SPACING) / 2;
            return Pair.of(
                    intake.head(
                            s,
                            new Point(-half, s.of(intake.recess)),
                            -s.of(intake.tilt),
                            in.orElseThrow().course(s, 0),
                            runs),
                    exhaust.head(
                            s,
                            new Point(half, s.of(exhaust.recess)),
                            s.of(exhaust.tilt),
                            ex.orElseThrow().course(s, 0),
                            runs));
        };
    }

    /** Crown and head face, for what meets above the piston. */
    static final class Crown {
        private Crown() {}

        static void asks(Asked of) {
            Crankwork.asks(of);
            of.figure(Term.COMPRESSION_HEIGHT);
            of.figure(Term.DECK_HEIGHT);
            if (isTiltRead(of)) {
                of.figure(Term.DECK_TILT_ENDS);
            }
        }

        private static boolean isTiltRead(Asked of) {
            return of.known().build().has(Term.DECK_CLEARANCE_FLYWHEEL_END)
                    || of.known().build().has(Term.DECK_CLEARANCE_OUTPUT_END)
                    || of.known().build().has(Term.SQUISH_FLYWHEEL_END)
                    || of.known().build().has(Term.SQUISH_OUTPUT_END);
        }

        /** Crown's rim over the pin, at its higher end. */
        static double level(Sizes s) {
            double tilt = s.has(Term.DECK_TILT_ENDS.path()) ? Math.abs(s.of(Term.DECK_TILT_ENDS)) / 2 : 0;
            return s.of(Term.COMPRESSION_HEIGHT) * s.grown(Warm.CROWN_GROWTH) + tilt + s.warm(Warm.ROCK);
        }

        /** Over the crankshaft's axis, gasket crushed. */
        static double headFace(Sizes s) {
            return s.of(Term.DECK_HEIGHT) * s.grown(Warm.CYLINDER_GROWTH) + s.of(Term.GASKET_THICKNESS);
        }
    }

    /** Crown to head face, whose gap the trade calls squish. */
    static Function<Sizes, Pair> crownToHead(Asked of) {
        Crown.asks(of);
        of.figure(Term.GASKET_THICKNESS);
        return s -> new Pair(
                Crankwork.pistonUpTo("piston crown", s, Crown.level(s)),
                Crankwork.from("head", Crown.headFace(s)),
                s.warm(Warm.SLACK_TO_PISTON));
    }
}
