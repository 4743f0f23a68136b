package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.CoilSpring;
import longthrow.core.engine.SpringWire;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits of the wire of a valve spring: whether it sets at full lift, whether it breaks in the long run. Of one spring on its own, the outer of two. */
final class SpringRungs {
    private static final String MEND =
            "a spring of better wire or of less stress at the same load, by its maker's sheet for this lift";

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    SpringRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    List<Rung> all() {
        return List.of(sets(), breaks());
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    private static Optional<SpringStress> stress(Asked of) {
        Expression wire = of.figure(Term.SPRING_WIRE);
        Expression mean = of.figure(Term.SPRING_OUTSIDE).minus(wire);
        Expression none = Expression.constant(0); // how many coils there are does not matter to the stress of one
        of.takes(
                Choice.SPRING_METAL.path(),
                "one spring carries all the load; where two stand in each other the outer one carries less than is reckoned",
                "on the safe side");
        return of.word(Choice.SPRING_METAL)
                .map(SpringRungs::wire)
                .map(w -> new SpringStress(new CoilSpring(wire, mean, none, none), w));
    }

    private static SpringWire wire(String word) {
        return switch (word) {
            case "music" -> SpringWire.MUSIC;
            case "oil_tempered" -> SpringWire.OIL_TEMPERED;
            case "chrome_vanadium" -> SpringWire.CHROME_VANADIUM;
            case "chrome_silicon" -> SpringWire.CHROME_SILICON;
            default -> throw new IllegalArgumentException("no spring wire is called " + word);
        };
    }

    private static Expression scatter(Asked of) {
        return of.scatter("strength of spring wire", SpringWire.SPREAD);
    }

    private Rung sets() {
        Asked of = ask();
        Optional<SpringStress> stress = stress(of);
        Expression load = of.figure(Term.SPRING_OPEN_LOAD);
        Head head = new Head(
                "spring_sets",
                "valve spring sets at full lift",
                Part.SPRING,
                Kind.STRENGTH,
                Weight.HOLDS_BACK,
                "shear stress with Wahl's factor over the share of the wire's tensile strength at which it sets (Shigley 10-1, tables 10-4 and 10-6; from memory)",
                MEND);
        if (stress.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        return RungMaker.eitherWay(
                spare(head, of, stress.get().setFactor(load), "the load that makes it set"),
                spare(head, of, stress.get().setFactorPressed(load), "the load that makes it set"),
                "Pressed solid by its maker, as most valve springs are");
    }

    private Rung breaks() {
        Asked of = ask();
        Optional<SpringStress> stress = stress(of);
        Expression seat = of.figure(Term.SPRING_SEAT_LOAD);
        Expression open = of.figure(Term.SPRING_OPEN_LOAD);
        Head head = new Head(
                "spring_breaks",
                "valve spring breaks in the long run",
                Part.SPRING,
                Kind.FATIGUE,
                Weight.HOLDS_BACK,
                "Goodman in shear between seat and full lift, for good, by Zimmerli's strengths (Shigley 10-9; from memory); surge comes on top",
                MEND);
        if (stress.isEmpty() || !of.isWhole()) {
            return maker.unknown(head, of);
        }
        return RungMaker.eitherWay(
                spare(head, of, stress.get().fatigueFactor(seat, open, false), "the swing that it bears for good"),
                spare(head, of, stress.get().fatigueFactor(seat, open, true), "the swing that it bears for good"),
                "Shot-peened, as springs for racing are");
    }

    /** @param factor by how much the load may grow */
    private Rung spare(Head head, Asked of, Expression factor, String what) {
        Measured room = Measured.through(
                Formula.of(head.key(), factor.times(scatter(of)).minus(1)), of.inputs());
        return maker.still(
                head, of, room, "its load is " + maker.printed(Dimension.RATIO, share(of, factor)) + " of " + what);
    }

    private static Measured share(Asked of, Expression factor) {
        return Measured.through(
                Formula.of("share", Expression.constant(1).dividedBy(factor.times(scatter(of)))), of.inputs());
    }
}
