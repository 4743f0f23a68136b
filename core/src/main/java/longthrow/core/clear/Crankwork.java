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
import longthrow.core.motion.CrankMotion;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Term;

/** Crank, rod, piston and what stands around them, drawn from the figures. Whatever is not measured of a shape is drawn larger than it can be. */
final class Crankwork {
    /**
     * Pin and bore offsets of small singles are 0 to 1.5 mm where there are any; common practice, no source. 95 % half-width of one that was not read [m].
     */
    private static final double UNREAD_OFFSET = 1.5e-3;

    private static final String PIN_OFFSET = "pin offset, not read";
    private static final String BORE_OFFSET = "bore offset, not read";

    /** Half of what reaches all across, farther than anything of the engine [m]. */
    private static final double ACROSS = 0.2;
    /** As thick as matters of a wall or a slab [m]. */
    private static final double THICK = 0.04;

    private Crankwork() {}

    // ---- asking

    /** Throw, rod and offsets. */
    static void asks(Asked of) {
        of.figure(hasOffset(of) ? Term.THROW : Term.STROKE);
        of.figure(Term.ROD_LENGTH);
        offset(of, Term.PIN_OFFSET, PIN_OFFSET);
        offset(of, Term.BORE_OFFSET, BORE_OFFSET);
    }

    private static boolean hasOffset(Asked of) {
        return of.known().build().has(Term.PIN_OFFSET) || of.known().build().has(Term.BORE_OFFSET);
    }

    private static void offset(Asked of, Term term, String name) {
        if (of.known().build().has(term)) {
            of.figure(term);
            return;
        }
        of.given(name, Measured.of(0, List.of(Source.at95(name, Source.Kind.ASSUMED, name, UNREAD_OFFSET))));
        of.takes(
                term.path(),
                term.label() + " not read: taken as 0 ± 1.5 mm where gaps are worked out",
                "what small singles have; common practice, no source");
    }

    /** The counterweights, as traced or by their radius. */
    static Function<Sizes, Body> counterweight(Asked of) {
        return traced(of, OutlinedPart.COUNTERWEIGHT, Warm.CRANK_GROWTH, s -> Motion.crank())
                .orElseGet(() -> {
                    of.figure(Term.COUNTERWEIGHT_RADIUS);
                    return Crankwork::counterweight;
                });
    }

    /** The case, as traced or by three of its walls. */
    static Function<Sizes, Body> caseWalls(Asked of) {
        Optional<Function<Sizes, Body>> traced =
                Outlined.of(of, OutlinedPart.CASE).map(outlined -> s -> outlined.body(0, Motion.fixed()));
        return traced.orElseGet(() -> {
            of.figure(Term.CASE_BELOW);
            of.figure(Term.CASE_THRUST);
            of.figure(Term.CASE_ANTITHRUST);
            return Crankwork::caseWalls;
        });
    }

    /** Something of the piston that hangs below its pin, as traced; empty where it was not. */
    static Optional<Function<Sizes, Body>> tracedOnPiston(Asked of, OutlinedPart part) {
        return traced(of, part, Warm.SKIRT_GROWTH, s -> Motion.piston(motion(s, -1), 0));
    }

    /** Something of the rod as traced; empty where it was not. */
    static Optional<Function<Sizes, Body>> tracedOnRod(Asked of, OutlinedPart part) {
        return traced(of, part, Warm.ROD_GROWTH, s -> Motion.rod(motion(s, 0)));
    }

    private static Optional<Function<Sizes, Body>> traced(
            Asked of, OutlinedPart part, Warm growth, Function<Sizes, Motion> moves) {
        return Outlined.of(of, part).map(outlined -> s -> outlined.body(s.warm(growth), moves.apply(s)));
    }

    // ---- drawing

    private static double offset(Sizes s) {
        return (s.has(PIN_OFFSET) ? s.of(PIN_OFFSET) : s.of(Term.PIN_OFFSET)) + boreOffset(s);
    }

    static double boreOffset(Sizes s) {
        return s.has(BORE_OFFSET) ? s.of(BORE_OFFSET) : s.of(Term.BORE_OFFSET);
    }

    /**
     * The crank as it moves.
     * @param way 1 where inertia draws the rod longer, -1 where it presses it together, 0 where that does not matter
     */
    static CrankMotion motion(Sizes s, int way) {
        double radius = s.has(Term.THROW.path()) ? s.of(Term.THROW) : s.of(Term.STROKE) / 2;
        return new CrankMotion(
                radius * s.grown(Warm.CRANK_GROWTH),
                s.of(Term.ROD_LENGTH) * s.grown(Warm.ROD_GROWTH) + way * s.warm(Warm.STRETCH),
                offset(s));
    }

    /** The crank with what is read of it, for true top dead centre. */
    static double topDeadCentre(Sizes s) {
        return motion(s, 0).topDeadCentre();
    }

    private static Body fixed(String name, List<Outline> outlines) {
        return new Body(name, outlines, Depth.throughout(), Motion.fixed());
    }

    private static Outline box(double x0, double y0, double x1, double y1) {
        return Outline.polygon(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)));
    }

    /** The piston down to so far below its pin, solid and all across: nothing of it reaches lower. */
    static Body pistonDownTo(String name, Sizes s, Term belowPin) {
        double low = -s.of(belowPin) * s.grown(Warm.SKIRT_GROWTH);
        return new Body(
                name,
                List.of(box(-ACROSS, low, ACROSS, low + THICK)),
                Depth.throughout(),
                Motion.piston(motion(s, -1), 0));
    }

    /** The piston up to a level over its pin, solid and all across. */
    static Body pistonUpTo(String name, Sizes s, double level) {
        return new Body(
                name,
                List.of(box(-ACROSS, level - THICK, ACROSS, level)),
                Depth.throughout(),
                Motion.piston(motion(s, 1), 0));
    }

    /** The counterweights as a full circle: over two turns their outer edge comes by everywhere. */
    static Body counterweight(Sizes s) {
        double radius = s.of(Term.COUNTERWEIGHT_RADIUS) * s.grown(Warm.CRANK_GROWTH);
        return fixed("counterweight", List.of(Outline.circle(new Point(0, 0), radius)));
    }

    /** Everything of the cylinder from a level upwards, as if it were solid. */
    static Body from(String name, double level) {
        return fixed(name, List.of(box(-ACROSS, level, ACROSS, level + THICK)));
    }

    private static Body onRod(String name, List<Outline> outlines, Sizes s) {
        return new Body(name, outlines, Depth.throughout(), Motion.rod(motion(s, 0))).grown(s.warm(Warm.ROD_GROWTH));
    }

    /** Big end and cap, bolts left out: a circle that nothing of them reaches over. */
    static Body bigEnd(Sizes s) {
        return onRod("big end", List.of(Outline.circle(new Point(0, 0), s.of(Term.BIG_END_REACH))), s);
    }

    /** Big end with the beam, which tapers straight from the big end's reach to its narrowest width at the pin: no beam is wider. */
    static Body rod(Sizes s) {
        double big = s.of(Term.BIG_END_REACH);
        double small = Math.min(s.of(Term.BEAM_WIDTH) / 2, big);
        double length = s.of(Term.ROD_LENGTH);
        double sine = (big - small) / length;
        double cosine = Math.sqrt(1 - sine * sine);
        List<Outline> outlines = new ArrayList<>();
        outlines.add(Outline.circle(new Point(0, 0), big));
        outlines.add(Outline.polygon(List.of(
                new Point(-big * cosine, big * sine),
                new Point(big * cosine, big * sine),
                new Point(small * cosine, length + small * sine),
                new Point(-small * cosine, length + small * sine))));
        return onRod("rod", outlines, s);
    }

    /** Both bolts, heads and nuts, as boxes. */
    static Body bolts(Sizes s) {
        double out = s.of(Term.BOLT_OUT);
        double in = out - Math.min(s.of(Term.BOLT_ACROSS), out);
        double up = s.of(Term.BOLT_UP);
        double down = -s.of(Term.BOLT_DOWN);
        return onRod("rod bolts", List.of(box(in, down, out, up), box(-out, down, -in, up)), s);
    }

    /** The dipper, straight down the middle of the rod. */
    static Body dipper(Sizes s) {
        double half = s.of(Term.DIPPER_WIDTH) / 2;
        return onRod("dipper", List.of(box(-half, -s.of(Term.DIPPER_REACH), half, 0)), s);
    }

    /** The three walls of the case that were read. */
    static Body caseWalls(Sizes s) {
        double below = -s.of(Term.CASE_BELOW);
        double thrust = -s.of(Term.CASE_THRUST);
        double anti = s.of(Term.CASE_ANTITHRUST);
        return fixed(
                "case",
                List.of(
                        box(-ACROSS, below - THICK, ACROSS, below),
                        box(thrust - THICK, -ACROSS, thrust, ACROSS),
                        box(anti, -ACROSS, anti + THICK, ACROSS)));
    }

    /**
     * The lower end of the sleeve, both sides.
     * @param halfDepth along the crankshaft to either side of the middle: there the round bore is narrower than its diameter
     */
    static Body sleeve(Sizes s, double halfDepth) {
        double radius = s.of(Term.BORE) / 2;
        double half = Math.sqrt(Math.max(0, radius * radius - halfDepth * halfDepth));
        double end = s.of(Term.DECK_HEIGHT) - s.of(Term.SLEEVE_LENGTH);
        double middle = boreOffset(s);
        return fixed(
                "sleeve",
                List.of(
                        box(middle + half, end, middle + half + THICK, end + THICK),
                        box(middle - half - THICK, end, middle - half, end + THICK)));
    }
}
