package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;
import longthrow.core.life.Asked;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Choice;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What sits on a camshaft in the case: core, lobes, compression-release weight. */
final class Camwork {
    /** Lifters stand along the cylinder within this, 95 % half-width [rad]; common practice, no source. */
    private static final double LIFTERS = Math.toRadians(10);

    private static final String DIRECTION = "direction of the lifters";
    /** Corners of a lobe's outline; they stand out so that its sides lie on the curve. */
    private static final int CORNERS = 120;

    private Camwork() {}

    // ---- asking

    static void place(Asked of) {
        of.figure(Term.CAM_AXIS_UP);
        of.figure(Term.CAM_AXIS_ACROSS);
    }

    private static void direction(Asked of) {
        of.given(DIRECTION, Measured.of(0, List.of(Source.at95(DIRECTION, Source.Kind.ASSUMED, DIRECTION, LIFTERS))));
        of.takes(
                Part.CAMSHAFT.key(),
                "lifters are taken to move along the cylinder, within 10°",
                "common practice, no source; where a lobe stands hangs on it");
    }

    /** The shaft between its lobes. */
    static Function<Sizes, Body> core(Asked of) {
        place(of);
        of.figure(Term.CAM_CORE);
        return s -> Body.of(
                "camshaft core",
                Outline.circle(axis(s), s.of(Term.CAM_CORE) / 2 * s.grown(Warm.CAM_GROWTH)),
                Depth.throughout(),
                Motion.fixed());
    }

    /**
     * One lobe. At every angle about its shaft it reaches as far as base circle and lift together, as it does under a flat foot or a roller at the most.
     */
    static Function<Sizes, Body> lobe(Asked of, Part valve) {
        Function<Sizes, Nose> nose = nose(of, valve);
        Optional<Outlined> traced =
                Outlined.of(of, valve == Part.INTAKE_VALVE ? OutlinedPart.INTAKE_LOBE : OutlinedPart.EXHAUST_LOBE);
        if (traced.isPresent()) {
            return s -> onShaft(traced.get(), nose.apply(s), s);
        }
        of.figure(Term.CAM_BASE_CIRCLE);
        of.figure(Lift.lash(valve));
        boolean isOverhead =
                of.word(Choice.VALVE_LAYOUT).filter("overhead"::equals).isPresent();
        if (isOverhead) {
            of.figure(Term.ROCKER_PUSHROD_ARM);
            of.figure(Term.ROCKER_VALVE_ARM);
        }
        return s -> {
            Nose at = nose.apply(s);
            double ratio = isOverhead ? s.of(Term.ROCKER_VALVE_ARM) / s.of(Term.ROCKER_PUSHROD_ARM) : 1;
            double base = s.of(Term.CAM_BASE_CIRCLE) / 2;
            List<Point> corners = new ArrayList<>();
            double outside = s.grown(Warm.CAM_GROWTH) / Math.cos(Math.PI / CORNERS);
            for (int k = 0; k < CORNERS; k++) {
                double direction = 2 * Math.PI * k / CORNERS;
                double lift = at.lift.at(s, -2 * at.way * (direction - at.direction));
                double radius = (base + (lift + s.of(Lift.lash(valve))) / ratio) * outside;
                corners.add(new Point(radius * Math.sin(direction), radius * Math.cos(direction)));
            }
            return new Body(
                    valve == Part.INTAKE_VALVE ? "intake lobe" : "exhaust lobe",
                    List.of(Outline.polygon(corners)),
                    Depth.throughout(),
                    Motion.halfSpeed(axis(s), at.hand(), 0));
        };
    }

    /** The compression-release weight, swung out. */
    static Function<Sizes, Body> release(Asked of) {
        Function<Sizes, Nose> nose = nose(of, Part.EXHAUST_VALVE);
        Optional<Outlined> traced = Outlined.of(of, OutlinedPart.RELEASE);
        if (traced.isPresent()) {
            return s -> onShaft(traced.get(), nose.apply(s), s);
        }
        of.figure(Term.CAM_CORE);
        of.figure(Term.RELEASE_REACH);
        of.figure(Term.RELEASE_ANGLE);
        of.figure(Term.RELEASE_SPAN);
        return s -> {
            Nose at = nose.apply(s);
            double reach = s.of(Term.RELEASE_REACH);
            Outline weight = Outline.ringSector(
                    new Point(0, 0),
                    Math.min(s.of(Term.CAM_CORE) / 2, reach / 2),
                    reach,
                    at.direction + at.way * s.of(Term.RELEASE_ANGLE),
                    s.of(Term.RELEASE_SPAN));
            return new Body(
                            "compression release",
                            List.of(weight),
                            Depth.throughout(),
                            Motion.halfSpeed(axis(s), at.hand(), 0))
                    .grown(s.warm(Warm.CAM_GROWTH));
        };
    }

    /** Something traced with the nose up, turned to where the nose stands at crank angle 0. */
    private static Body onShaft(Outlined traced, Nose at, Sizes s) {
        return traced.turned(at.direction, s.warm(Warm.CAM_GROWTH), Motion.halfSpeed(axis(s), at.hand(), 0));
    }

    /** A lobe by its readings, in a frame with its nose up. */
    static Function<Sizes, Body> lobeNoseUp(Asked of, Part valve) {
        return noseUp(lobe(of, valve), nose(of, valve));
    }

    /** The weight by its readings, in a frame with the exhaust lobe's nose up. */
    static Function<Sizes, Body> releaseNoseUp(Asked of) {
        return noseUp(release(of), nose(of, Part.EXHAUST_VALVE));
    }

    private static Function<Sizes, Body> noseUp(Function<Sizes, Body> standing, Function<Sizes, Nose> nose) {
        return s -> {
            Body body = standing.apply(s);
            double back = -nose.apply(s).direction;
            return new Body(
                    body.name(),
                    body.outlines().stream().map(o -> o.placed(back, 0, 0)).toList(),
                    body.depth(),
                    body.motion());
        };
    }

    /**
     * A lobe's nose as it stands at crank angle 0.
     * @param direction from the head towards the anti-thrust side [rad]
     * @param way       1 where the camshaft turns with the crankshaft, -1 where against it
     */
    private record Nose(Lift lift, double direction, int way) {
        Motion.Hand hand() {
            return way > 0 ? Motion.Hand.WITH_CRANK : Motion.Hand.AGAINST_CRANK;
        }
    }

    private static Function<Sizes, Nose> nose(Asked of, Part valve) {
        place(of);
        direction(of);
        Crankwork.asks(of);
        Optional<Lift> lift = Lift.of(of, valve);
        int way = of.word(Choice.CAM_TURN).filter("with"::equals).isPresent() ? 1 : -1;
        return s -> new Nose(
                lift.orElseThrow(),
                s.of(DIRECTION) - way * lift.orElseThrow().peak(s, Crankwork.topDeadCentre(s)) / 2,
                way);
    }

    private static Point axis(Sizes s) {
        return new Point(s.of(Term.CAM_AXIS_ACROSS), s.of(Term.CAM_AXIS_UP));
    }
}
