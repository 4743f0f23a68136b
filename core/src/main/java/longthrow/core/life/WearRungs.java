package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.Condition;
import longthrow.core.engine.Judge;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stops;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RungMaker.Head;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * What is worn or set past its limit, whatever the speed. No maker's word covers it: he spoke of the engine as he made it. A limit is on the ladder once its figure
 * is read; what is not read is for {@code measure} to ask. Of a run that no maker vouches for, what seizes or breaks at once has to be shown to hold: unknown, guessed,
 * or told too widely it holds back.
 */
final class WearRungs {
    /** Past it something seizes, knocks itself to pieces or lets go: the speed is not approved. */
    private static final List<Passing> HOLD_BACK = List.of(
            Passing.due(Rule.BIG_END_CLEARANCE, Side.LOW, "it runs dry and seizes"),
            new Passing(Rule.BIG_END_LIMIT, Side.HIGH, "it knocks, and rod and bolts are hammered at every turn"),
            Passing.due(Rule.PIN_CLEARANCE, Side.LOW, "the pin seizes in the rod"),
            Passing.due(Rule.PISTON_TO_WALL, Side.LOW, "the piston scuffs or seizes"),
            Passing.due(
                    Rule.TOP_RING_GAP_LEAST, Side.LOW, "its ends meet when it is hot, and it breaks or tears the bore"),
            new Passing(Rule.TOP_RING_IN_BORE, Side.LOW, "the ring springs out and catches on the deck"),
            new Passing(Rule.SLEEVE_WALL, Side.LOW, "thin sleeves break"),
            new Passing(Rule.CRANK_END_PLAY_LIMIT, Side.HIGH, "the crankshaft walks, and what just clears touches"),
            Passing.due(Rule.CRANK_RUN_OUT, Side.HIGH, "a bent crankshaft breaks, and shakes its bearings out"),
            new Passing(Rule.LEAK_DOWN_OPEN, Side.HIGH, "it is opened before it runs again"),
            new Passing(Rule.OIL_HEAT, Side.HIGH, "oil that hot carries nothing"),
            new Passing(Rule.SQUISH_LEAST, Side.LOW, "piston and head meet when the rod stretches"),
            new Passing(Rule.STATIC_RATIO, Side.HIGH, "it knocks, and knock breaks pistons and rings"),
            new Passing(Rule.DECK_FLATNESS, Side.HIGH, "the gasket blows"),
            new Passing(Rule.HEAD_FLATNESS, Side.HIGH, "the gasket blows"),
            new Passing(Rule.LASH, Side.LOW, "a valve that does not shut burns"),
            new Passing(Rule.RING_SIDE_CLEARANCE, Side.LOW, "the ring sticks in its groove"),
            Passing.due(Rule.ROD_SIDE_CLEARANCE, Side.LOW, "the rod binds between the webs and seizes"),
            new Passing(Rule.CRANK_END_PLAY_NEW, Side.LOW, "the crankshaft binds as the case warms"),
            new Passing(Rule.BOSS_CLEARANCE, Side.LOW, "the pin seizes in the piston"),
            new Passing(Rule.BOSS_CLEARANCE, Side.HIGH, "the pin hammers its bosses out"),
            new Passing(Rule.PIN_FLOAT, Side.LOW, "the pin drives its clips out, and they go through the bore"),
            new Passing(Rule.OIL_GROOVE, Side.LOW, "the groove is cut open by the pin bore"),
            new Passing(Rule.GASKET_OVER_BORE, Side.LOW, "the gasket stands into the bore and burns, or is hit"),
            new Passing(Rule.VALVE_TO_VALVE, Side.LOW, "the valves meet"),
            new Passing(Rule.VALVE_TO_WALL, Side.LOW, "the valve meets the bore"),
            new Passing(Rule.VALVE_TO_HEAD, Side.LOW, "the valve meets the head"),
            new Passing(
                    Rule.FLYWHEEL_ON_TAPER, Side.LOW, "the wheel does not sit on its taper, works loose and bursts"),
            new Passing(
                    Rule.FLYWHEEL_ON_TAPER, Side.HIGH, "the wheel does not sit on its taper, works loose and bursts"),
            new Passing(Rule.FLYWHEEL_KEY, Side.LOW, "the key does not go in"),
            new Passing(Rule.FLYWHEEL_KEY, Side.HIGH, "the wheel rocks on its key and shears it"),
            new Passing(Rule.CLUTCH_ON_SHAFT, Side.LOW, "the clutch does not go on its shaft"),
            new Passing(Rule.CLUTCH_ON_SHAFT, Side.HIGH, "the clutch runs out of true and works loose"),
            new Passing(Rule.CLUTCH_KEY, Side.LOW, "the key does not go in"),
            new Passing(Rule.CLUTCH_KEY, Side.HIGH, "the clutch rocks on its key"),
            new Passing(Rule.COIL_GAP, Side.LOW, "the wheel hits the coil"));

    /** Past it the engine smokes, tires or is due for work, and many run so: it is said. */
    private static final List<Passing> TELL = List.of(
            new Passing(Rule.BORE_TAPER, Side.HIGH, "it smokes and uses oil; many engines in mild use run so"),
            new Passing(Rule.OUT_OF_ROUND, Side.HIGH, "it smokes and uses oil; many engines in mild use run so"),
            new Passing(Rule.RING_GAP_CEILING, Side.HIGH, "it blows by"),
            new Passing(Rule.PISTON_TO_WALL, Side.HIGH, "the piston slaps and its rings wear"),
            new Passing(Rule.LEAK_DOWN_REFRESH, Side.HIGH, "rings and valves are due"),
            new Passing(Rule.RING_SIDE_CLEARANCE, Side.HIGH, "the ring rocks, pumps oil and breaks in time"),
            new Passing(Rule.SEAT_WIDTH, Side.LOW, "the valve sheds its heat badly"));

    private enum Side {
        LOW,
        HIGH
    }

    /**
     * A limit on the ladder.
     * @param then  what passing it does; of the trade, common practice, no source
     * @param isDue whether it has to be shown to hold where no maker vouches for the run: it seizes or breaks at once, and another throw, rod or piston is in it
     */
    private record Passing(Rule rule, Side side, String then, boolean isDue) {
        Passing(Rule rule, Side side, String then) {
            this(rule, side, then, false);
        }

        static Passing due(Rule rule, Side side, String then) {
            return new Passing(rule, side, then, true);
        }
    }

    private final Known known;
    private final RungMaker maker;
    private final List<Asked> asked = new ArrayList<>();

    WearRungs(Known known, RungMaker maker) {
        this.known = known;
        this.maker = maker;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    List<Rung> all() {
        List<Rung> rungs = new ArrayList<>();
        HOLD_BACK.forEach(p ->
                p.rule().terms().forEach(t -> rung(p, t, Weight.HOLDS_BACK).ifPresent(rungs::add)));
        TELL.forEach(p -> p.rule().terms().forEach(t -> rung(p, t, Weight.TELLS).ifPresent(rungs::add)));
        butts(Term.TOP_RING_GAP).ifPresent(rungs::add);
        butts(Term.SECOND_RING_GAP).ifPresent(rungs::add);
        return rungs;
    }

    /** By the source that counts; where none does, passed by what every source says, and not proven by what some say. */
    private Optional<Rung> rung(Passing passing, Term term, Weight weight) {
        List<Verdict> spread = known.verdicts().stream()
                .filter(v -> v.term() == term
                        && Rule.of(v).filter(r -> r == passing.rule()).isPresent()
                        && v.state() != Verdict.State.UNKNOWN)
                .filter(v -> !Judge.isOverruled(known.build(), v))
                .toList();
        List<Verdict> inForce = spread.stream().filter(Verdict::chosen).toList();
        List<Verdict> heard = inForce.isEmpty() ? spread : inForce;
        Optional<Measured> figure = known.figure(term);
        boolean isDue = isDue(passing);
        if (heard.isEmpty() || figure.isEmpty()) {
            return isDue
                            && isFirstOfNone(passing.rule(), term)
                            && !passing.rule().applicable(known.build()).isEmpty()
                    ? Optional.of(notShown(passing, term, weight))
                    : Optional.empty();
        }
        double value = figure.get().value();
        List<Verdict> passed = heard.stream()
                .filter(v -> v.state() == Verdict.State.FAILS && isOnItsSide(passing.side(), v, value))
                .toList();
        boolean isPassed = passed.size() == heard.size();
        boolean isNear = !isPassed
                && heard.stream()
                        .anyMatch(v -> v.state() != Verdict.State.MEETS && isOnItsSide(passing.side(), v, value));
        boolean isKeptByOne = isWordMissing(passing.rule())
                ? heard.stream().allMatch(v -> isSurelyKept(passing.side(), v, figure.get()))
                : heard.stream().anyMatch(v -> isSurelyKept(passing.side(), v, figure.get()));
        isNear |= !isPassed && isDue && !isKeptByOne;
        boolean isGuess = isDue && !isPassed && known.isGuessed(term);
        Verdict told = isPassed ? passed.get(0) : heard.get(0);
        Asked of = ask();
        of.figure(term);
        State state = isPassed ? State.EXCEEDED : isNear || isGuess ? State.NEAR : State.HOLDS;
        String why = isGuess
                ? "not proven, for it rests on a guess; passed, " + passing.then()
                : isPassed || isNear
                        ? (isPassed ? "past it: " : heard.size() > 1 ? "sources differ: " : "not proven: ")
                                + worst(heard, passed).why() + "; then " + passing.then()
                        : heard.stream()
                                .filter(v -> v.state() == Verdict.State.FAILS)
                                .findFirst()
                                .map(v -> "not past it on the side that breaks things; on the other: " + v.why())
                                .orElse("within it");
        return Optional.of(new Rung(
                key(passing, term),
                label(passing, term),
                passing.rule().part(),
                Kind.WEAR,
                isGuess || (isNear && isDue && !isKeptByOne) || !isNear ? weight : Weight.TELLS,
                Optional.empty(),
                state,
                told.probability(),
                of.hangsOn(),
                of.from(),
                told.source(),
                List.of(),
                why + of.asPlanned(),
                state == State.HOLDS ? "" : worst(heard, passed).cure()));
    }

    /** Where a rule may be read in several ways, one of them is enough: the first is asked for where none is there. */
    private boolean isFirstOfNone(Rule rule, Term term) {
        return rule.terms().get(0) == term
                && rule.terms().stream()
                        .allMatch(t -> t == term || known.figure(t).isEmpty());
    }

    private boolean isDue(Passing passing) {
        boolean isVouchedFor = Stops.covers(known.build(), known::figure, Term.GOVERNED_SPEED)
                && Stops.isThrowAsMade(known.build(), known::figure)
                && Stops.isMakersOwn(known.build(), passing.rule().part());
        return passing.isDue() && !isVouchedFor;
    }

    /** What nobody read, or what no rule can be held against before a word more is said. */
    private Rung notShown(Passing passing, Term term, Weight weight) {
        Asked of = ask();
        of.figure(term);
        Optional<Verdict> open = known.verdicts().stream()
                .filter(v -> v.term() == term
                        && Rule.of(v).filter(r -> r == passing.rule()).isPresent())
                .findFirst();
        String cure = open.map(Verdict::cure).filter(c -> !c.isEmpty()).orElse("read " + term.label());
        List<Rung.Missing> missing = of.isWhole()
                ? List.of(new Rung.Missing(
                        passing.rule().part().key(), passing.rule().label(), cure, 0))
                : of.missing();
        return new Rung(
                key(passing, term),
                label(passing, term),
                passing.rule().part(),
                Kind.WEAR,
                weight,
                Optional.empty(),
                State.UNKNOWN,
                Double.NaN,
                of.hangsOn(),
                of.from(),
                open.map(Verdict::source)
                        .orElseGet(() ->
                                passing.rule().applicable(known.build()).get(0).source()),
                missing,
                "not known, and no maker vouches for this run; passed, " + passing.then(),
                cure);
    }

    private static String key(Passing passing, Term term) {
        return passing.rule().key()
                + (passing.rule().terms().size() > 1 ? "_" + name(passing.rule(), term) : "")
                + (passing.side() == Side.LOW ? "_low" : "");
    }

    private static String label(Passing passing, Term term) {
        return passing.rule().label() + (passing.rule().terms().size() > 1 ? ", " + term.label() : "");
    }

    /** Of one of several terms of a rule; with its part where two parts have a term of that name. */
    private static String name(Rule rule, Term term) {
        boolean isOfOnePart =
                rule.terms().stream().filter(t -> t.key().equals(term.key())).count() == 1;
        return isOfOnePart ? term.key() : term.path().replace('.', '_');
    }

    private static Verdict worst(List<Verdict> heard, List<Verdict> passed) {
        return passed.isEmpty()
                ? heard.stream()
                        .filter(v -> v.state() != Verdict.State.MEETS)
                        .findFirst()
                        .orElse(heard.get(0))
                : passed.get(0);
    }

    /** Between sources the owner chooses; where only a word of his is missing that says which is meant, the hardest may be. */
    private boolean isWordMissing(Rule rule) {
        return rule.applicable(known.build()).stream()
                .anyMatch(a -> a.condition().in(known.build()) == Condition.Holds.NOT_SAID);
    }

    private static boolean isSurelyKept(Side side, Verdict verdict, Measured figure) {
        return switch (side) {
            case LOW -> figure.probabilityAtLeast(verdict.least()) >= Verdict.SURE;
            case HIGH -> figure.probabilityAtLeast(verdict.most()) <= 1 - Verdict.SURE;
        };
    }

    private static boolean isOnItsSide(Side side, Verdict verdict, double value) {
        double middle = Double.isInfinite(verdict.least()) || Double.isInfinite(verdict.most())
                ? Double.NaN
                : 0.5 * (verdict.least() + verdict.most());
        return switch (side) {
            case LOW -> !Double.isInfinite(verdict.least()) && !(value > middle);
            case HIGH -> !Double.isInfinite(verdict.most()) && !(value < middle);
        };
    }

    /** A ring whose gap cannot be told from none cold has none once it is warm. */
    private Optional<Rung> butts(Term gap) {
        return known.figure(gap).map(figure -> {
            Asked of = ask();
            Expression room = of.figure(gap);
            Head head = new Head(
                    gap.key() + "_shut",
                    gap.label() + ": its ends touch",
                    Part.RINGS,
                    Kind.WEAR,
                    Weight.REFUSES,
                    "geometry: the ring grows as it warms, and more than the bore it runs in",
                    "file the ring ends square to the gap that its maker or the trade asks for, before it is run");
            boolean isShut = figure.value() - figure.expanded() <= 0;
            String said = maker.printed(Dimension.LENGTH, figure) + " between its ends, cold";
            Measured left = Measured.through(Formula.of(head.key(), room), of.inputs());
            Rung rung = maker.still(head, of, left, said);
            return isShut
                    ? new Rung(
                            head.key(),
                            head.label(),
                            head.part(),
                            head.kind(),
                            head.weight(),
                            Optional.empty(),
                            State.EXCEEDED,
                            rung.probability(),
                            of.hangsOn(),
                            of.from(),
                            head.source(),
                            List.of(),
                            said
                                    + ", which cannot be told from none; warm it has none, and the ring breaks or tears the bore",
                            head.mend())
                    : rung.seenAs(State.HOLDS, head.weight(), said, "");
        });
    }

    private Asked ask() {
        Asked of = new Asked(known);
        asked.add(of);
        return of;
    }
}
