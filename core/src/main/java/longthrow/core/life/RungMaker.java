package longthrow.core.life;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.Kind;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.answer.Verdict;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Unit;
import longthrow.core.term.Part;

/** Sets a limit against the speed asked for: what is known becomes a rung with its speed, what is not becomes one that says what is missing. */
final class RungMaker {
    /** A speed with a smaller relative doubt was stated as it is. */
    private static final double STATED = 1e-6;

    /** Longer than any engine of this kind is run: ten thousand hours [s]; a judgement of layout. */
    private static final double LONGEST = 1e4 * 3600;

    /** Shorter than any run that is worth its start [s]; a judgement of layout, and near it the line of swings ends. */
    private static final double SHORTEST = 60;

    private final FigurePrinter printer;
    private final Optional<Measured> asked;
    private final Optional<MeasuredGas> gas;
    private final Optional<Double> slowest;

    /**
     * For one engine.
     * @param asked   the speed to hold against; empty when none is wanted and none is the maker's
     * @param gas     measured on it; empty where the bounding one counts alone
     * @param slowest speed at which it pulls at full throttle [rad/s], down to which measured gas must speak; empty where nobody knows
     */
    RungMaker(FigurePrinter printer, Optional<Measured> asked, Optional<MeasuredGas> gas, Optional<Double> slowest) {
        this.printer = printer;
        this.asked = asked;
        this.gas = gas;
        this.slowest = slowest;
    }

    /**
     * What a rung says of itself, whatever comes out.
     * @param key    stable
     * @param label  what gives up
     * @param source formula and where its figures come from
     * @param mend   what helps when it does not hold
     */
    record Head(String key, String label, Part part, Kind kind, Weight weight, String source, String mend) {}

    /** The highest speed that may be asked about; above its own doubt. */
    private double highest() {
        Measured speed = asked.orElseThrow();
        return speed.standardUncertainty() <= STATED * speed.value() ? speed.value() : speed.high();
    }

    /** By a share used up, of {@link SpeedSought#speed()}. */
    Rung byShare(Head head, Asked of, Expression share) {
        if (!of.isWhole()) {
            return unknown(head, of);
        }
        SpeedSought.Found found = SpeedSought.of(head.key(), share, of.inputs());
        if (found.speed().isPresent()) {
            return at(head, of, found.speed().get());
        }
        return found.atStandstill()
                ? rung(
                        head,
                        of,
                        Optional.empty(),
                        State.EXCEEDED,
                        0,
                        "does not hold at any speed, by this sum",
                        head.mend())
                : rung(
                        head,
                        of,
                        Optional.empty(),
                        State.HOLDS,
                        1,
                        "holds at every speed up to " + speed(SpeedSought.FASTEST),
                        "");
    }

    /** By the speed itself. */
    Rung bySpeed(Head head, Asked of, Expression speed) {
        return of.isWhole()
                ? at(head, of, Measured.through(Formula.of(head.key(), speed), of.inputs()))
                : unknown(head, of);
    }

    /**
     * What hangs on the gas, of which only a bound is known. It holds when it holds by the bound, and is passed when it is passed without any gas; between the two it is
     * not proven. It stands in the way only when it would not hold by what firing reaches in use either: the bound alone condemns sound engines.
     * @param byGas the rung, by the share of the bound that is counted
     */
    Rung bounded(DoubleFunction<Rung> byGas) {
        return bounded(slowest.orElse(0.0), asked.isEmpty() ? 0 : highest(), byGas);
    }

    /**
     * As {@link #bounded(DoubleFunction)}, of what is run between two speeds alone: traces that do not reach them say nothing of it.
     * @param low  slowest speed that counts [rad/s]
     * @param high fastest speed that counts [rad/s]
     */
    Rung bounded(double low, double high, DoubleFunction<Rung> byGas) {
        Rung bound = byGas.apply(1);
        if (bound.state() == State.HOLDS) {
            return bound.seenAs(
                    bound.state(), bound.weight(), bound.why() + ", by the bounding gas trace", bound.unlock());
        }
        if (holdsOrIsUnknown(bound)) {
            return bound;
        }
        Rung none = byGas.apply(0);
        if (none.state() == State.EXCEEDED) {
            return none.seenAs(State.EXCEEDED, none.weight(), "without any gas too: " + none.why(), none.unlock());
        }
        double unbounded =
                Math.min(high, Math.max(low, bound.speed().map(Measured::low).orElse(low)));
        Optional<MeasuredGas.Heard> heard = gas.flatMap(g -> g.between(unbounded, high));
        if (heard.isPresent()) {
            return byMeasured(bound, byGas.apply(heard.get().share()), heard.get());
        }
        Rung usual = byGas.apply(BoundingGas.USUAL_SHARE);
        return unproven(
                bound,
                usual.state() == State.HOLDS,
                "By the bounding gas trace, which is far on the safe side: " + bound.why() + ". By "
                        + percent(BoundingGas.USUAL_SHARE) + " of it, which the quickest cycles reach: " + usual.why()
                        + ". A gas trace measured on this engine, or the part maker's rating, would tell");
    }

    /** By measured traces, which say nothing of speeds above that at which they were taken: from there on the bounding one counts again. */
    private static Rung byMeasured(Rung bound, Rung measured, MeasuredGas.Heard gas) {
        Optional<Measured> known = Optional.of(
                bound.speed().filter(s -> s.value() > gas.fastest()).orElseGet(() -> Measured.exact(gas.fastest())));
        boolean isFaster = measured.state() == State.HOLDS
                && measured.speed().filter(s -> s.value() <= gas.fastest()).isEmpty();
        return measured.by(
                gas.places(),
                isFaster ? known : measured.speed(),
                "by " + gas.said() + ", " + percent(gas.share()) + " of the bounding one: " + measured.why()
                        + (isFaster ? ". Faster than it was taken, nothing is said by it" : ""));
    }

    /**
     * What hangs on how the part was made, which only its maker can tell. It holds when it holds as the plainest, is passed when it is passed as the best, and is not
     * proven between; it then stands in no way.
     * @param plain as the plainest is made
     * @param best  as the best is made
     * @param how   the best is made
     */
    static Rung eitherWay(Rung plain, Rung best, String how) {
        if (holdsOrIsUnknown(plain)) {
            return plain;
        }
        return best.state() == State.HOLDS
                ? unproven(
                        plain,
                        true,
                        "As the plainest is made: " + plain.why() + ". " + how + ": " + best.why()
                                + ". Ask its maker which it is")
                : best.seenAs(best.state(), best.weight(), how + " too: " + best.why(), best.unlock());
    }

    private static boolean holdsOrIsUnknown(Rung rung) {
        return rung.state() != State.NEAR && rung.state() != State.EXCEEDED;
    }

    private static Rung unproven(Rung rung, boolean isLikelySound, String said) {
        return rung.seenAs(
                State.NEAR, isLikelySound ? Weight.TELLS : rung.weight(), "not proven. " + said, rung.unlock());
    }

    /** The speed that limits are held against; empty when none is asked about. */
    Optional<Double> askedAbout() {
        return asked.map(a -> highest());
    }

    /** With a speed that is known. */
    Rung at(Head head, Asked of, Measured speed) {
        if (asked.isEmpty()) {
            return rung(
                    head,
                    of,
                    Optional.of(speed),
                    State.NOT_ASKED,
                    Double.NaN,
                    "gives up at " + printed(speed) + "; no speed is wanted to hold it against",
                    "");
        }
        double probability = speed.standardUncertainty() <= STATED * Math.abs(speed.value())
                ? (speed.value() >= highest() * (1 - 1e-9) ? 1 : 0)
                : speed.probabilityAtLeast(highest());
        State state = state(probability);
        String against = speed(highest());
        String why = switch (state) {
            case HOLDS -> printed(speed) + "; " + against + " is wanted";
            case NEAR ->
                "not proven: " + printed(speed) + "; " + against + " is wanted, " + percent(probability) + " sure";
            case EXCEEDED -> "only " + printed(speed) + "; " + against + " is wanted";
            case UNKNOWN, COVERED, NOT_ASKED -> printed(speed);
        };
        return rung(head, of, Optional.of(speed), state, probability, why, state == State.HOLDS ? "" : head.mend());
    }

    /**
     * What no speed decides.
     * @param room how much is left [of its dimension]; holds from 0 on
     * @param said of it with its doubt
     */
    Rung still(Head head, Asked of, Measured room, String said) {
        return judged(head, of, room, " at any speed", said);
    }

    /**
     * By the running time until something breaks, which lies decades wide: by its logarithm.
     * @param lasts  logarithm of the time [s]
     * @param wanted time that is wanted [s]
     * @param by     which sum
     */
    Rung hours(Head head, Asked of, Expression lasts, Expression wanted, String by) {
        if (!of.isWhole()) {
            return unknown(head, of);
        }
        Formula formula = Formula.of(head.key(), lasts);
        if (!Double.isFinite(formula.at(name -> of.inputs().apply(name).value()))) {
            return rung(
                    head,
                    of,
                    Optional.empty(),
                    State.EXCEEDED,
                    0,
                    "does not hold: at the fastest step the mean pull alone is more than the metal bears",
                    head.mend());
        }
        Measured time = Measured.through(formula, of.inputs());
        Measured room =
                Measured.through(Formula.of("room before " + head.key(), lasts.minus(wanted.logarithm())), of.inputs());
        double asked = of.told("time wanted", wanted).orElseThrow().value();
        return there(
                head,
                of,
                room,
                time(time.value()) + " (" + time(time.low()) + " to " + time(time.high()) + ") by " + by + "; "
                        + printer.print(Dimension.TIME, asked, 0).first().text() + " are wanted");
    }

    /** A time by its logarithm [s], to two figures; past what anything is run, or under what counts as run, only that. */
    private String time(double logarithm) {
        double seconds = Math.exp(logarithm);
        if (!(seconds <= LONGEST)) {
            return "over " + time(Math.log(LONGEST));
        }
        if (seconds < SHORTEST) {
            return "under " + time(Math.log(SHORTEST));
        }
        Unit unit = BenchUnits.of(Dimension.TIME, seconds).metric();
        return new BigDecimal(unit.fromSi(seconds)).round(new MathContext(2)).toPlainString() + " " + unit.symbol();
    }

    /** As {@link #still}, of what was reckoned at the speed asked about, or for the duty that is stated. */
    Rung there(Head head, Asked of, Measured room, String said) {
        return judged(head, of, room, "", said);
    }

    private static Rung judged(Head head, Asked of, Measured room, String where, String said) {
        double probability = room.probabilityAtLeast(0);
        State state = state(probability);
        String how = switch (state) {
            case HOLDS -> "holds" + where + ": ";
            case NEAR -> "not proven" + where + ", " + percent(probability) + " sure: ";
            case EXCEEDED -> "does not hold" + where + ": ";
            case UNKNOWN, COVERED, NOT_ASKED -> "";
        };
        return rung(
                head, of, Optional.empty(), state, probability, how + said, state == State.HOLDS ? "" : head.mend());
    }

    Rung unknown(Head head, Asked of) {
        List<String> what = of.missing().stream()
                .map(m -> m.where().isEmpty() ? m.what() : m.what() + " (" + m.where() + ")")
                .toList();
        return new Rung(
                head.key(),
                head.label(),
                head.part(),
                head.kind(),
                head.weight(),
                Optional.empty(),
                State.UNKNOWN,
                Double.NaN,
                of.hangsOn(),
                of.from(),
                head.source(),
                of.missing(),
                "not known: " + String.join("; ", what),
                "read or ask: " + String.join("; ", what));
    }

    private static Rung rung(
            Head head, Asked of, Optional<Measured> speed, State state, double probability, String why, String unlock) {
        return new Rung(
                head.key(),
                head.label(),
                head.part(),
                head.kind(),
                head.weight(),
                speed,
                state,
                probability,
                of.hangsOn(),
                of.from(),
                head.source(),
                List.of(),
                why + of.asPlanned(),
                unlock);
    }

    private static State state(double probability) {
        return switch (Verdict.State.of(probability)) {
            case MEETS -> State.HOLDS;
            case NEAR -> State.NEAR;
            case FAILS -> State.EXCEEDED;
            case UNKNOWN -> throw new IllegalStateException("a known limit has a probability");
        };
    }

    String printed(Measured speed) {
        return printed(Dimension.ROTATIONAL_SPEED, speed);
    }

    String printed(Dimension dimension, Measured figure) {
        return printer.print(dimension, figure.value(), figure.expanded()).line();
    }

    String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, speed, 0).first().text();
    }

    static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
