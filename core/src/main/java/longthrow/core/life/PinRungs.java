package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alloy;
import longthrow.core.formula.Expression;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Limits of the piston pin: bending and shear between bosses and rod. With the bounding gas, the load spread as beam theory has it and the hard case not counted, the
 * sum of bending is so far on the safe side that pins which never break do not pass it: see {@link RungMaker#bounded}.
 */
final class PinRungs {
    private static final Alloy STEEL = Alloy.CASE_HARDENED_PIN;

    /** Shear over normal stress at yield: von Mises, one over the root of three. */
    private static final double SHEAR = 1 / Math.sqrt(3);

    private static final String MEND =
            "a thicker pin, a narrower boss gap, or a measured gas trace instead of the bounding one";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    PinRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Rung> all() {
        return List.of(bending(), shear());
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    private static PistonPin pin(Asked of) {
        of.takes(
                "piston",
                "the pin is reckoned as " + STEEL.label() + ", the only metal of pins that is on file",
                STEEL.source());
        return new PistonPin(
                of.figure(Term.PIN_DIAMETER),
                of.figure(Term.PIN_INSIDE),
                of.figure(Term.PIN_LENGTH),
                of.figure(Term.SMALL_END_WIDTH),
                of.figure(Term.BOSS_GAP));
    }

    /** Pull of piston, pin and rings at top dead centre on the overrun [N]. */
    private static Expression pull(Driven driven) {
        return driven.pistonAssembly()
                .times(driven.crank().travelBend(driven.crank().topDeadCentre()))
                .times(SpeedSought.speed().squared())
                .plus(driven.boreArea().times(GasTrace.STANDARD_ATMOSPHERE));
    }

    private Rung bending() {
        Asked of = ask();
        return maker.bounded(share -> bending(of, share));
    }

    private Rung bending(Asked of, double share) {
        Driven driven = new Driven(of);
        PistonPin pin = pin(of);
        Expression scatter = of.scatter("strength of " + STEEL.label(), STEEL.spread());
        Expression ultimate = scatter.times(STEEL.ultimate());
        of.takes("piston", RodRungs.RELIABILITY_TAKEN, RodRungs.RELIABILITY_SOURCE);
        Expression endurance = scatter.times(STEEL.fatigue())
                .times(EnduranceLimit.Finish.GROUND.of(ultimate))
                .times(EnduranceLimit.size(pin.diameter()))
                .times(EnduranceLimit.reliability(RodRungs.RELIABILITY));
        MeanStress stress = MeanStress.between(
                pin.bendingStressTapering(pull(driven)).negated(),
                pin.bendingStressTapering(driven.largestPush(share)));
        return maker.byShare(
                new Head(
                        "pin_bending",
                        "piston pin, bending",
                        Part.PISTON,
                        Kind.FATIGUE,
                        Weight.HOLDS_BACK,
                        "beam between bosses that press hardest at their inner edges (Kolchin and Demidov; from memory), modified Goodman for good (Shigley 6-12), "
                                + STEEL.label() + "; " + STEEL.source(),
                        MEND),
                of,
                Expression.constant(1).dividedBy(stress.goodman(endurance, ultimate)));
    }

    private Rung shear() {
        Asked of = ask();
        return maker.bounded(share -> shear(of, share));
    }

    private Rung shear(Asked of, double share) {
        Driven driven = new Driven(of);
        PistonPin pin = pin(of);
        Expression load = pull(driven).plus(driven.largestPush(share));
        Expression yield =
                of.scatter("strength of " + STEEL.label(), STEEL.spread()).times(STEEL.yieldStrength() * SHEAR);
        of.takes("piston", "push and pull on the pin are added as if they came at once", "on the safe side");
        return maker.byShare(
                new Head(
                        "pin_shear",
                        "piston pin, shear",
                        Part.PISTON,
                        Kind.STRENGTH,
                        Weight.HOLDS_BACK,
                        "largest shear stress of a thick tube (Roark, chapter 8) over the shear yield strength of "
                                + STEEL.label() + "; " + STEEL.source(),
                        MEND),
                of,
                pin.largestShear(load).dividedBy(yield));
    }
}
