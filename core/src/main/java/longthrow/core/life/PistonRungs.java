package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Condition;
import longthrow.core.engine.Rule;
import longthrow.core.formula.Expression;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** Limits the trade sets by figures of its own: ring flutter, mean piston speed, the speed of cast rods. */
final class PistonRungs {
    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    PistonRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }

    List<Rung> all() {
        List<Rung> rungs = new ArrayList<>(List.of(flutter(), pistonSpeed()));
        castRod().ifPresent(rungs::add);
        return rungs;
    }

    private Rung flutter() {
        Asked of = ask();
        Alternative old = Rule.RING_FLUTTER.alternatives().get(0);
        of.sum(Term.STROKE, Term.ROD_LENGTH, Term.TOP_RING_THICKNESS);
        return maker.bySpeed(
                new Head(
                        "ring_flutter",
                        "top ring flutters",
                        Part.RINGS,
                        Kind.FLUTTER,
                        Weight.HOLDS_BACK,
                        "acceleration at top dead centre against 38 700 m/s² × mm over the ring's thickness, "
                                + old.label() + "; " + old.source(),
                        "a thinner ring, or less speed"),
                of,
                of.figure(Term.RING_SPEED));
    }

    private Rung pistonSpeed() {
        Asked of = ask();
        Rule rule = Rule.MEAN_PISTON_SPEED;
        of.word(Choice.DUTY);
        Expression stroke = of.figure(Term.STROKE);
        Optional<Alternative> row = rule.picked(known.build())
                .or(() -> rule.alternatives().stream()
                        .filter(a -> a.condition().in(known.build()) == Condition.Holds.YES)
                        .findFirst());
        Head head = new Head(
                "mean_piston_speed",
                "mean piston speed" + row.map(a -> ", " + a.label()).orElse(""),
                Part.PISTON,
                Kind.TRADE,
                Weight.TELLS,
                row.map(a -> a.limits() + "; " + a.source()).orElse(rule.dispute()),
                "less speed; or better rod, rings and oil, and fewer hours between rebuilds");
        return row.map(a -> maker.bySpeed(
                        head,
                        of,
                        Guide.metresPerSecond(of, rule.key(), a).times(Math.PI).dividedBy(stroke)))
                .orElseGet(() -> maker.unknown(head, of));
    }

    private Optional<Rung> castRod() {
        if (!known.build().chose(Choice.ROD_METAL, "cast_aluminium")) {
            return Optional.empty();
        }
        Asked of = ask();
        of.word(Choice.ROD_METAL);
        Alternative breaks = Rule.CAST_ROD_SPEED.alternative("break_risk").orElseThrow();
        double most = breaks.upper().orElseThrow().value(t -> Optional.empty()).orElseThrow();
        return Optional.of(maker.bySpeed(
                new Head(
                        "cast_rod_trade",
                        "stock cast rod by the trade's figure",
                        Part.ROD,
                        Kind.TRADE,
                        Weight.HOLDS_BACK,
                        Rule.CAST_ROD_SPEED.label() + ", " + breaks.label() + "; " + breaks.source(),
                        "a billet rod that its maker rates for the speed, with new bolts"),
                of,
                Expression.constant(most)));
    }
}
