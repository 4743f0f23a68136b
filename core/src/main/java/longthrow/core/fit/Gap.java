package longthrow.core.fit;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Sureness;
import longthrow.core.catalogue.Operation;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.ExactLength;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A gap between two parts: what is wide, what goes in, by which rule it is judged, from which play on it is another size altogether, and which machining
 * widens it.
 */
enum Gap {
    PIN_IN_ROD(
            Obstacle.PIN_IN_ROD,
            Rule.PIN_CLEARANCE,
            Term.PIN_CLEARANCE,
            Term.SMALL_END_BORE,
            Term.PIN_DIAMETER,
            0.1e-3,
            Operation.Kind.SMALL_END_HONE),
    ROD_IN_PISTON(
            Obstacle.ROD_IN_PISTON,
            Rule.BOSS_CLEARANCE,
            Term.BOSS_CLEARANCE,
            Term.BOSS_GAP,
            Term.SMALL_END_WIDTH,
            8e-3,
            null),
    ROD_ON_CRANKPIN(
            Obstacle.ROD_ON_CRANKPIN,
            Rule.BIG_END_CLEARANCE,
            Term.BIG_END_CLEARANCE,
            Term.BIG_END_BORE,
            Term.CRANKPIN_DIAMETER,
            0.15e-3,
            null),
    ROD_BETWEEN_CHEEKS(
            Obstacle.ROD_BETWEEN_CHEEKS,
            Rule.ROD_SIDE_CLEARANCE,
            Term.ROD_SIDE_CLEARANCE,
            Term.CRANKPIN_WIDTH,
            Term.BIG_END_WIDTH,
            3e-3,
            Operation.Kind.BIG_END_FACE),
    PIN_IN_CLIPS(Obstacle.PIN_IN_CLIPS, Rule.PIN_FLOAT, Term.PIN_FLOAT, Term.CLIP_SPAN, Term.PIN_LENGTH, 3e-3, null),
    PIN_IN_PISTON(
            Obstacle.PIN_IN_PISTON,
            Rule.PIN_BOSS_CLEARANCE,
            Term.PIN_BOSS_CLEARANCE,
            Term.PISTON_PIN_BORE,
            Term.PIN_DIAMETER,
            0.1e-3,
            null),
    PISTON_IN_BORE(
            Obstacle.PISTON_IN_BORE,
            Rule.PISTON_TO_WALL,
            Term.PISTON_TO_WALL,
            Term.BORE,
            Term.PISTON_DIAMETER,
            0.3e-3,
            null),
    FLYWHEEL_ON_TAPER(
            Obstacle.FLYWHEEL,
            Rule.FLYWHEEL_ON_TAPER,
            Term.FLYWHEEL_ON_TAPER,
            Term.FLYWHEEL_TAPER_BORE,
            Term.CRANK_TAPER,
            1e-3,
            null),
    FLYWHEEL_KEY(
            Obstacle.FLYWHEEL,
            Rule.FLYWHEEL_KEY,
            Term.FLYWHEEL_KEY_STEP,
            Term.FLYWHEEL_KEYWAY,
            Term.CRANK_KEYWAY,
            1e-3,
            null),
    CLUTCH_ON_SHAFT(
            Obstacle.CLUTCH,
            Rule.CLUTCH_ON_SHAFT,
            Term.CLUTCH_ON_SHAFT,
            Term.CLUTCH_BORE,
            Term.OUTPUT_SHAFT_DIAMETER,
            1e-3,
            null),
    CLUTCH_KEY(
            Obstacle.CLUTCH,
            Rule.CLUTCH_KEY,
            Term.CLUTCH_KEY_STEP,
            Term.CLUTCH_KEYWAY,
            Term.OUTPUT_SHAFT_KEYWAY,
            1e-3,
            null),
    CLUTCH_LENGTH(
            Obstacle.CLUTCH,
            Rule.CLUTCH_LENGTH,
            Term.CLUTCH_OVERHANG,
            Term.OUTPUT_SHAFT_LENGTH,
            Term.CLUTCH_HUB_LENGTH,
            1,
            null);

    private final Obstacle obstacle;
    private final Rule rule;
    private final Term term;
    private final Term wide;
    private final Term inner;
    private final double other;

    @SuppressWarnings("ImmutableEnumChecker") // an enum, or none
    private final Operation.@Nullable Kind widens;

    /** The play from which on two parts are of different sizes altogether [m] is common practice, no source. */
    Gap(Obstacle obstacle, Rule rule, Term term, Term wide, Term inner, double other, Operation.@Nullable Kind widens) {
        this.obstacle = obstacle;
        this.rule = rule;
        this.term = term;
        this.wide = wide;
        this.inner = inner;
        this.other = other;
        this.widens = widens;
    }

    Obstacle obstacle() {
        return obstacle;
    }

    Term term() {
        return term;
    }

    Term wide() {
        return wide;
    }

    Term inner() {
        return inner;
    }

    /**
     * How two parts go into each other.
     * @param one        the part with the wide side; the other has what goes in
     * @param windows    by the rules for their words
     * @param operations on offer
     */
    Pairing of(Row one, Row two, RuleWindows windows, List<Operation> operations) {
        Optional<Dim> outside = one.dim(wide);
        Optional<Dim> inside = two.dim(inner);
        if (outside.isEmpty() || inside.isEmpty()) {
            return new Pairing(Sureness.SURE, 1, 0, 0, null);
        }
        Dim gap = outside.get().plus(-1, inside.get());
        RuleWindows.Limits limits = limits(one, two, windows);
        Pairing asItIs = held(gap, limits.least(), limits.most());
        Pairing fitted = asItIs.fits()
                ? asItIs
                : widened(gap, inside.get(), limits, operations).orElse(asItIs);
        // how much play these two need no rule says: that they can be put together is not all there is to know
        return fitted.fits() && !isRuled(one, two, windows)
                ? fitted.and(new Pairing(Sureness.SURE, 1, 0, 0, null))
                : fitted;
    }

    /** Whether a rule says how much play the two need, made of what they are made of. */
    boolean isRuled(Row one, Row two, RuleWindows windows) {
        return !byRules(one, two, windows).isNone();
    }

    private RuleWindows.Limits byRules(Row one, Row two, RuleWindows windows) {
        Map<Choice, String> words = new EnumMap<>(Choice.class);
        words.putAll(one.words());
        words.putAll(two.words());
        Function<Term, Optional<Measured>> figures =
                t -> one.dim(t).or(() -> two.dim(t)).map(d -> Measured.exact(d.value()));
        RuleWindows around = windows.around(one, two);
        return around.mayNotApply(rule, words) ? around.own(term) : around.of(rule, term, words, figures);
    }

    private RuleWindows.Limits limits(Row one, Row two, RuleWindows windows) {
        double least = mayBeNegative() ? -other : 0;
        return byRules(one, two, windows).and(new RuleWindows.Limits(least, other));
    }

    /**
     * By how much this operation widens a gap so that it surely keeps its least, in the operation's steps [m].
     * @param toLimit  that brings the sizes as stated to the limit
     * @param forDoubt more, for what the part that goes in may lie beside its size
     * @param forShop  more, for what the shop may miss its size by, and up to its next step
     */
    record Widening(double toLimit, double forDoubt, double forShop) {
        double amount() {
            return toLimit + forDoubt + forShop;
        }

        /** Why it is more than what brings it to the limit. */
        String words() {
            return String.format(
                    Locale.ROOT,
                    "%.3f mm to the limit, %.3f for the doubt of what goes in, %.3f for the shop's own tolerance and steps",
                    toLimit * 1e3,
                    forDoubt * 1e3,
                    forShop * 1e3);
        }
    }

    Widening widenedBy(Row one, Row two, RuleWindows windows, Operation operation) {
        Dim inside = two.dim(inner).orElseThrow();
        double toLimit = limits(one, two, windows).least()
                - one.dim(wide).orElseThrow().plus(-1, inside).value();
        return new Widening(
                toLimit,
                inside.half(),
                amount(operation, toLimit + inside.half() + held(operation)) - toLimit - inside.half());
    }

    /** The least amount the shop takes off that is as much as wanted; more than its most when it cannot. */
    private static double amount(Operation operation, double wanted) {
        double least = operation.least().metres();
        ExactLength step = operation.step();
        if (wanted <= least) {
            return least;
        }
        return step == null ? wanted : least + Math.ceil((wanted - least) / step.metres() - 1e-9) * step.metres();
    }

    private boolean mayBeNegative() {
        return this == PIN_IN_PISTON || this == FLYWHEEL_ON_TAPER || this == FLYWHEEL_KEY || this == CLUTCH_KEY;
    }

    private Pairing held(Dim gap, double least, double most) {
        Sureness sureness = Boxes.of(
                gap.picometres(),
                gap.halfPicometres(),
                gap.uncertaintyPicometres(),
                picometres(least),
                picometres(most));
        boolean bySizes = gap.picometres() >= picometres(least) && gap.picometres() <= picometres(most);
        if (sureness == Sureness.NO || !bySizes) {
            return Pairing.never(obstacle);
        }
        return gap.isVague()
                ? new Pairing(Sureness.worse(sureness, Sureness.SELECTION), 1, 0, 0, null)
                : new Pairing(sureness, 0, 0, 0, null);
    }

    static long picometres(double length) {
        return Double.isInfinite(length) ? (length < 0 ? Window.NO_LEAST : Window.NO_MOST) : Math.round(length * 1e12);
    }

    /** The cheapest operation on offer that surely brings the gap to its least and not past its most. */
    private Optional<Pairing> widened(Dim gap, Dim inside, RuleWindows.Limits limits, List<Operation> operations) {
        if (widens == null || Double.isInfinite(limits.least())) {
            return Optional.empty();
        }
        double wanted = limits.least() + inside.half() - gap.value();
        return operations.stream()
                .filter(o -> o.kind() == widens)
                .filter(o -> wanted + held(o) > 0
                        && amount(o, wanted + held(o)) <= o.most().metres() + 1e-12)
                .filter(o -> gap.value() + inside.half() + amount(o, wanted + held(o)) + held(o) <= limits.most())
                .min(Comparator.comparingLong(Gap::price))
                .map(o -> {
                    boolean vague = inside.isVague() || o.tolerance() == null;
                    return new Pairing(
                            vague ? Sureness.SELECTION : Sureness.SURE,
                            (o.offer().price().isPresent() ? 0 : 1) + (vague ? 1 : 0),
                            1,
                            price(o),
                            null);
                });
    }

    /** The machining that widens it; empty where none does. */
    Optional<Operation.Kind> widens() {
        return Optional.ofNullable(widens);
    }

    /** Nothing where the shop does not say; what comes of it is then not for sure. */
    private static double held(Operation operation) {
        ExactLength held = operation.tolerance();
        return held == null ? 0 : held.metres();
    }

    private static long price(Operation operation) {
        return operation.offer().price().orElse(0)
                + operation.offer().shipping().orElse(0);
    }

    /** The operation that {@link #of} counted on. */
    Optional<Operation> cure(Row one, Row two, RuleWindows windows, List<Operation> operations) {
        Pairing pairing = of(one, two, windows, operations);
        return pairing.cuts() == 0 || widens == null
                ? Optional.empty()
                : operations.stream()
                        .filter(o -> o.kind() == widens && price(o) == pairing.price())
                        .findFirst();
    }
}
