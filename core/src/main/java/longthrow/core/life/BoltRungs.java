package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.BoltGrade;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the rod bolts: how often they were drawn up, whether the torque strains them, when the cap gapes, when they tire. */
final class BoltRungs {
    /** Bolts of a rod's cap; every rod of this class has two. */
    private static final int BOLTS = 2;

    /** Of the full profile that real threads bear; see {@link ScrewThread#holeShearArea}. */
    private static final double THREAD_SHARE = 0.8;

    private static final String BOLT_SOURCE =
            "Shigley 8-4 to 8-11; clamp by torque, NSTS 08307; pull at top dead centre on the overrun; from memory";

    private static final String MEND =
            "new bolts of a higher grade drawn up as the rod's maker says, a rod that its maker rates for the speed, or less speed";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    BoltRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Rung> all() {
        return List.of(uses(), strained(), stripping(), gaping(), fatigue());
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    /** Grade, thread and clamp of one bolt. */
    private record Bolt(BoltGrade grade, ScrewThread thread, Expression clamp) {}

    /** Asks for all that the clamp hangs on; empty while something is missing. */
    private static Optional<Bolt> bolt(Asked of) {
        Optional<BoltGrade> grade = of.word(Choice.ROD_BOLT_GRADE).map(BoltRungs::grade);
        Optional<Tightening> drawnUp = of.word(Choice.ROD_BOLT_LUBRICANT).map(BoltRungs::tightening);
        Optional<String> into = of.word(Choice.ROD_BOLT_INTO);
        Expression diameter = of.figure(Term.ROD_BOLT_DIAMETER);
        Expression pitch = of.figure(Term.ROD_BOLT_PITCH);
        Expression torque = of.figure(Term.ROD_BOLT_TORQUE);
        of.figure(Term.ROD_BOLT_USES);
        Optional<Integer> uses = of.value(Term.ROD_BOLT_USES).map(BoltRungs::count);
        if (grade.isEmpty() || drawnUp.isEmpty() || into.isEmpty() || uses.isEmpty()) {
            return Optional.empty();
        }
        if (uses.get() > Tightening.MOST) {
            of.lacks(new Rung.Missing(
                    Term.ROD_BOLT_USES.path(),
                    "clamp of bolts tightened " + uses.get() + " times",
                    "nobody can say it after more than " + Tightening.MOST
                            + " tightenings: fit new bolts and count from 1",
                    0));
            return Optional.empty();
        }
        ScrewThread.Form form = grade.get() == BoltGrade.SAE_5 || grade.get() == BoltGrade.SAE_8
                ? ScrewThread.Form.UNIFIED
                : ScrewThread.Form.METRIC;
        of.takes("connecting_rod", "two bolts hold the cap and share its pull evenly", "common practice, no source");
        of.takes(
                Choice.ROD_BOLT_LUBRICANT.path(),
                "clamp " + drawnUp.get().label() + ", within "
                        + RungMaker.percent(drawnUp.get().scatter(uses.get()))
                        + " either way after so many tightenings",
                "Shigley table 8-15, NSTS 08307; from memory");
        Expression clamp = drawnUp.get()
                .preload(torque, diameter)
                .times(of.spread("clamp of the rod bolts", drawnUp.get().scatter(uses.get())));
        return Optional.of(new Bolt(grade.get(), new ScrewThread(diameter, pitch, form), clamp));
    }

    /** The most that they may be: a count that its owner is not sure of counts at its upper end. */
    private static int count(Measured uses) {
        return (int) Math.round(uses.high());
    }

    private static String upTo(Measured uses) {
        return (count(uses) > Math.round(uses.value()) ? "up to " : "") + count(uses);
    }

    private static BoltGrade grade(String word) {
        return switch (word) {
            case "class_8_8" -> BoltGrade.ISO_8_8;
            case "class_10_9" -> BoltGrade.ISO_10_9;
            case "class_12_9" -> BoltGrade.ISO_12_9;
            case "grade_5" -> BoltGrade.SAE_5;
            case "grade_8" -> BoltGrade.SAE_8;
            default -> throw new IllegalArgumentException("no bolt grade is called " + word);
        };
    }

    /** How a torque becomes a clamp with this on the threads. */
    static Tightening tightening(String word) {
        return switch (word) {
            case "dry" -> Tightening.TORQUE_DRY;
            case "oil" -> Tightening.TORQUE_OILED;
            case "paste" -> Tightening.TORQUE_PASTE;
            default -> throw new IllegalArgumentException("no lubricant is called " + word);
        };
    }

    private Rung uses() {
        Asked of = ask();
        Expression left = Expression.constant(Tightening.MOST).minus(of.figure(Term.ROD_BOLT_USES));
        Head head = new Head(
                "rod_bolts_uses",
                "rod bolts, tightenings",
                Part.ROD,
                Kind.STRENGTH,
                Weight.REFUSES,
                "part-maker sheets: " + Tightening.MOST + " tightenings at most; certainty C, widely repeated",
                "new rod bolts");
        return of.isWhole()
                ? maker.still(
                        head,
                        of,
                        Measured.through(Formula.of(head.key(), left), of.inputs()),
                        "tightened " + upTo(of.value(Term.ROD_BOLT_USES).orElseThrow()) + " times, allowed "
                                + Tightening.MOST)
                : maker.unknown(head, of);
    }

    private Rung strained() {
        Asked of = ask();
        Optional<Bolt> bolt = bolt(of);
        Head head = new Head(
                "rod_bolts_strained",
                "rod bolts, strained by their torque",
                Part.ROD,
                Kind.STRENGTH,
                Weight.REFUSES,
                "clamp by torque against the proof strength of the grade: past it surely, with the least clamp of the scatter, a bolt is stretched for good; "
                        + BOLT_SOURCE,
                "draw them up by measured stretch, or to the maker's torque for this lubricant");
        if (bolt.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        Expression proof =
                bolt.get().thread().stressArea().times(bolt.get().grade().proof());
        Measured room =
                Measured.through(Formula.of(head.key(), proof.minus(bolt.get().clamp())), of.inputs());
        return asDrawnUp(maker.still(
                head,
                of,
                room,
                maker.printed(Dimension.FORCE, room) + " between the proof load and the clamp of one bolt"));
    }

    /** Bolts are drawn up to near their proof load on purpose, within a wide scatter: what is not sure stands in no way, nor does a torque that the rod's maker asks for. */
    private Rung asDrawnUp(Rung rung) {
        boolean isMakersTorque = !known.build().of(Term.ROD_BOLT_TORQUE).isEmpty()
                && known.build().of(Term.ROD_BOLT_TORQUE).stream()
                        .filter(g -> g.figure().isPresent())
                        .allMatch(g -> g.isMakersWord(Term.ROD_BOLT_TORQUE));
        return switch (rung.state()) {
            case NEAR -> rung.seenAs(rung.state(), Weight.TELLS, rung.why(), rung.unlock());
            case EXCEEDED ->
                isMakersTorque
                        ? rung.seenAs(
                                rung.state(),
                                Weight.TELLS,
                                "it is the maker's torque, and by this sum " + rung.why(),
                                "ask him what is on the threads at that torque, and which bolts it is for")
                        : rung;
            case HOLDS, UNKNOWN, COVERED, NOT_ASKED -> rung;
        };
    }

    private static Expression pull(Asked of) {
        of.takes("life", Driven.OVERRUN, "no cylinder can hold less than nothing");
        of.takes(
                "connecting_rod",
                "all of the big end hangs on the bolts, the cap too, which the crankpin really swings round",
                "on the safe side");
        return new Driven(of)
                .deadCentre()
                .boltPull(SpeedSought.speed(), Driven.DRAWN)
                .dividedBy(BOLTS);
    }

    /** What the threads bear before they shear, the weaker of bolt and hole, over clamp and pull. */
    private Rung stripping() {
        Asked of = ask();
        Optional<Bolt> bolt = bolt(of);
        Expression engaged = of.figure(Term.ROD_BOLT_ENGAGEMENT);
        Expression pull = pull(of);
        Head head = new Head(
                "rod_bolts_strip",
                "rod bolt threads strip",
                Part.ROD,
                Kind.STRENGTH,
                Weight.HOLDS_BACK,
                "clamp and pull over the thread areas in shear (ISO 68-1 profile, less a fifth for clearance; Shigley, section 8-2; from memory)",
                "more thread in, a thread insert set by a machinist, or a rod that its maker rates for the speed");
        Optional<Expression> hole = of.word(Choice.ROD_BOLT_INTO).flatMap(into -> held(of, into));
        if (bolt.isEmpty() || hole.isEmpty()) {
            return maker.unknown(head, of);
        }
        Bolt b = bolt.get();
        of.takes(
                "connecting_rod",
                "threads bear four fifths of what their full profile would, and metals in shear 0.577 of their tensile strength; all of the pull is added to the clamp",
                "on the safe side; von Mises; real threads have less than the profile by a tenth or two, common practice, no source");
        Expression bears = Expression.min(
                b.thread().holeShearArea(engaged).times(hole.get()),
                b.thread().boltShearArea(engaged).times(b.grade().ultimate()));
        return maker.byShare(head, of, b.clamp().plus(pull).dividedBy(bears.times(THREAD_SHARE / Math.sqrt(3))));
    }

    /** Tensile strength of what the bolts are screwed into; empty while something is missing. */
    private static Optional<Expression> held(Asked of, String into) {
        if (into.equals("aluminium")) {
            return RodMetal.of(of).map(RodMetal::ultimateStrength);
        }
        Alloy steel = Alloy.FORGED_CARBON_STEEL;
        of.takes(
                Choice.ROD_BOLT_INTO.path(),
                "nut or steel rod is reckoned as " + steel.label(),
                steel.source() + "; a nut of its bolt's class is stronger, ISO 898-2");
        return Optional.of(
                of.scatter("strength of " + steel.label(), steel.spread()).times(steel.ultimate()));
    }

    private Rung gaping() {
        Asked of = ask();
        Optional<Bolt> bolt = bolt(of);
        Expression pull = pull(of);
        Head head = new Head(
                "rod_bolts_gaping",
                "rod cap gapes",
                Part.ROD,
                Kind.STRENGTH,
                Weight.REFUSES,
                "pull on each bolt over its clamp; " + BOLT_SOURCE,
                MEND);
        return bolt.map(b -> maker.byShare(head, of, pull.dividedBy(b.clamp())))
                .orElseGet(() -> maker.unknown(head, of));
    }

    private Rung fatigue() {
        Asked of = ask();
        Optional<Bolt> bolt = bolt(of);
        Optional<String> metal = of.word(Choice.ROD_METAL);
        Expression grip = of.figure(Term.ROD_BOLT_GRIP);
        Expression pull = pull(of);
        Head head = new Head(
                "rod_bolts_fatigue",
                "rod bolts, fatigue",
                Part.ROD,
                Kind.FATIGUE,
                Weight.HOLDS_BACK,
                "Goodman growing from the preload (Shigley eq. (8-38)), for good; " + BOLT_SOURCE,
                MEND);
        if (bolt.isEmpty() || metal.isEmpty()) {
            return maker.unknown(head, of);
        }
        Bolt b = bolt.get();
        double rod = metal.get().equals("steel") ? BoltGrade.MODULUS : ALUMINIUM_MODULUS;
        of.takes(
                Term.ROD_BOLT_GRIP.path(),
                "the bolt is taken at its full shank over the whole grip, the stiffest it can be, so that it feels the most",
                "on the safe side");
        of.takes("connecting_rod", RodRungs.RELIABILITY_TAKEN, RodRungs.RELIABILITY_SOURCE);
        BoltedJoint joint = new BoltedJoint(
                BoltedJoint.boltStiffness(
                        b.thread(), grip, Expression.constant(0), Expression.constant(BoltGrade.MODULUS)),
                BoltedJoint.memberStiffness(Expression.constant(rod), b.thread().diameter(), grip),
                b.thread().stressArea(),
                b.clamp());
        Expression endurance =
                Expression.constant(b.grade().endurance() * EnduranceLimit.reliability(RodRungs.RELIABILITY));
        Expression factor =
                joint.fatigueFactor(endurance, Expression.constant(b.grade().ultimate()), pull);
        return maker.byShare(head, of, Expression.constant(1).dividedBy(factor));
    }

    /** Young's modulus of the aluminium of rods [Pa]; 71 to 75 GPa by {@code engine.Alloy}. */
    private static final double ALUMINIUM_MODULUS = longthrow.core.engine.Alloy.BILLET_ALUMINIUM_ROD.modulus();
}
