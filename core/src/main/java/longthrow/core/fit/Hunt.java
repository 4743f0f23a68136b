package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import longthrow.core.answer.Sureness;
import longthrow.core.build.FitWish;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.Timing;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * The search of an assembly: for each head, each cut of the deck and each rod metal (squish limits differ by it) one search of the stack, the best of all
 * kept in the owner's order of preference.
 */
final class Hunt {
    /** So many of the best are kept. */
    static final int MOST_KEPT = 60;
    /** Combinations of the plain parts up to which those that do not fit are counted one by one. */
    static final long MOST_COUNTED = 200_000_000L;

    /** Up to so many combinations, each that does not fit is told by itself. */
    static final long FEW = 24;

    private final Assembly assembly;
    private final RuleWindows windows;
    private final Neighbours neighbours;
    private final Ranking ranking;
    private final Map<String, Found> best = new LinkedHashMap<>();
    private final Map<Obstacle, Long> rejected = new EnumMap<>(Obstacle.class);
    private final Map<Obstacle, Found> examples = new EnumMap<>(Obstacle.class);
    private final Map<Found, Obstacle> rejectedOnes = new LinkedHashMap<>();
    private long fitting;
    private long combinations;
    private long overBudget;
    private long cheapestOver = Long.MAX_VALUE;
    /** Nothing worse need be kept; null while there is room. */
    private @Nullable Found worstKept;

    Hunt(Assembly assembly) {
        this.assembly = assembly;
        this.windows = new RuleWindows(assembly.build());
        this.neighbours = new Neighbours(assembly, windows);
        this.ranking = new Ranking(assembly.build());
        List<Row> heads = assembly.rows(PartKind.HEAD);
        heads.forEach(head -> byRodMetal(head, null, null));
        if (best.values().stream()
                .noneMatch(f -> f.sureness().compareTo(Sureness.PROBABLE) <= 0 && !f.isPartlyUnknown())) {
            assembly.operations().forEach(operation -> machined(heads, operation));
        }
    }

    /** One kind of machining at a time: what two operations together would do is left to the owner, step by step. */
    private void machined(List<Row> heads, Operation operation) {
        switch (operation.kind()) {
            case DECK_CUT ->
                Machining.amounts(operation)
                        .forEach(amount -> heads.forEach(head -> byRodMetal(
                                head, new Row.Cut(operation, amount, Machining.text(operation, amount)), null)));
            case HEAD_CUT ->
                heads.stream()
                        .flatMap(head -> Machining.of(head, operation))
                        .forEach(head -> byRodMetal(head, null, null));
            case CROWN_CUT, SKIRT_CUT, COUNTERWEIGHT_TURN, CRANKPIN_OFFSET_GRIND ->
                heads.forEach(head -> byRodMetal(head, null, operation));
            case SMALL_END_HONE, BIG_END_FACE, BORE_AND_HONE, SLEEVE -> {} // with every pair that needs it, see Gap
            case GASKET_TO_ORDER, ROD_TO_ORDER -> {} // see ToOrder
        }
    }

    private void byRodMetal(Row head, Row.@Nullable Cut deckCut, @Nullable Operation operation) {
        Map<Optional<String>, List<Row>> byMetal = new LinkedHashMap<>();
        for (Row rod : rows(PartKind.CONNECTING_ROD, operation)) {
            byMetal.computeIfAbsent(Optional.ofNullable(rod.words().get(Choice.ROD_METAL)), m -> new ArrayList<>())
                    .add(rod);
        }
        byMetal.forEach((metal, rods) -> search(head, deckCut, operation, rods));
    }

    /** As they are, or as the operation makes those that it is done on. */
    private List<Row> rows(PartKind kind, @Nullable Operation operation) {
        List<Row> plain = assembly.rows(kind);
        return operation != null
                        && Machining.on(operation.kind()).filter(k -> k == kind).isPresent()
                ? plain.stream().flatMap(r -> Machining.of(r, operation)).toList()
                : plain;
    }

    private void search(Row head, Row.@Nullable Cut deckCut, @Nullable Operation operation, List<Row> rods) {
        Table table = new Table(
                neighbours,
                rows(PartKind.CRANKSHAFT, operation),
                rows(PartKind.PISTON, operation),
                rods,
                rows(PartKind.GASKET, operation));
        StackLimits limits = limits(head, deckCut, rods.get(0).words());
        StackSearch search = new StackSearch(table.columns(), limits);
        boolean plain = deckCut == null && operation == null && head.cuts().isEmpty();
        search.each(one -> {
            fitting += plain ? 1 : 0;
            take(table.found(one, head, deckCut));
        });
        if (plain) {
            count(table, search, head);
        }
    }

    private void count(Table table, StackSearch search, Row head) {
        long all = table.columns().combinations();
        combinations += all;
        if (all > MOST_COUNTED) {
            return;
        }
        search.rejections().forEach((obstacle, r) -> {
            rejected.merge(obstacle, r.count(), Long::sum);
            if (!examples.containsKey(obstacle)) {
                examples.put(obstacle, apart(table, head, r.crank(), r.piston(), r.rod(), r.gasket()));
            }
        });
        if (all <= FEW) {
            oneByOne(table, search, head);
        }
    }

    /** All that do not fit, while they are few. */
    private void oneByOne(Table table, StackSearch search, Row head) {
        for (int i = 0; i < table.cranks().size(); i++) {
            for (int j = 0; j < table.pistons().size(); j++) {
                for (int k = 0; k < table.rods().size(); k++) {
                    for (int g = 0; g < table.gaskets().size(); g++) {
                        Optional<Obstacle> obstacle = search.obstacle(i, j, k, g);
                        if (obstacle.isPresent()) {
                            rejectedOnes.put(apart(table, head, i, j, k, g), obstacle.get());
                        }
                    }
                }
            }
        }
    }

    private Found apart(Table table, Row head, int i, int j, int k, int g) {
        Combination apart = new Combination(i, j, k, g, Sureness.NO, false, 0, 0, 0, 0, 0, 0, Double.NaN);
        return neighbours.machining(table.found(apart, head, null));
    }

    private void take(Found found) {
        if (found.isMachined() && !found.combination().bySizes()) {
            return; // metal is cut to a size that fits, not to one that may
        }
        OptionalLong budget = assembly.budget();
        if (budget.isPresent() && found.price() > budget.getAsLong()) {
            overBudget++;
            cheapestOver = Math.min(cheapestOver, found.price());
            return;
        }
        if (worstKept != null && ranking.compare(found, worstKept) > 0) {
            return;
        }
        best.merge(found.base(), found, (a, b) -> ranking.compare(a, b) <= 0 ? a : b);
        if (best.size() > 4 * MOST_KEPT) {
            List<Found> ordered = ranked().subList(0, 2 * MOST_KEPT);
            worstKept = ordered.get(ordered.size() - 1);
            best.clear();
            ordered.forEach(f -> best.put(f.base(), f));
        }
    }

    private List<Found> ranked() {
        return best.values().stream().sorted(ranking).toList();
    }

    /** Best first; of the same parts only the best way to machine them. */
    List<Found> best() {
        return ranked().stream().limit(MOST_KEPT).map(neighbours::machining).toList();
    }

    /** Why plain parts, none machined, do not go together; empty when there were too many to count. */
    Map<Obstacle, Long> rejected() {
        return rejected;
    }

    Map<Obstacle, Found> examples() {
        return examples;
    }

    /** Those that do not fit, one by one, while they are few. */
    Map<Found, Obstacle> rejectedOnes() {
        return rejectedOnes;
    }

    long fitting() {
        return fitting;
    }

    long combinations() {
        return combinations;
    }

    /** Price of the cheapest that fits and costs more than the budget; empty when none does. */
    OptionalLong cheapestOver() {
        return cheapestOver == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(cheapestOver);
    }

    long overBudget() {
        return overBudget;
    }

    // ---- limits of the stack

    private Optional<Measured> ownFigure(Term term) {
        return assembly.own().figure(term);
    }

    private static Sizes sizes(Optional<Dim> dim) {
        return dim.map(d -> new Sizes(new long[] {d.picometres()}, new long[] {d.halfPicometres()}, new double[] {
                    d.uncertaintyPicometres()
                }))
                .orElse(Sizes.unknown(1));
    }

    /** Limits that exclude each other leave a window that nothing can stand in. */
    private static Window window(RuleWindows.Limits limits) {
        if (limits.least() > limits.most()) {
            return Window.atLeast(Window.NO_MOST - 1);
        }
        return new Window(Gap.picometres(limits.least()), Gap.picometres(limits.most()));
    }

    private StackLimits limits(Row head, Row.@Nullable Cut deckCut, Map<Choice, String> rodWords) {
        Function<Term, Optional<Measured>> figures = this::ownFigure;
        boolean sideValve = assembly.build().chose(Choice.VALVE_LAYOUT, "side");
        Dim deck = Dim.of(ownFigure(Term.DECK_HEIGHT).orElseThrow());
        if (deckCut != null) {
            var held = deckCut.operation().tolerance();
            deck = deck.moved(-deckCut.amount(), held == null ? 0 : held.metres());
        }
        RuleWindows.Limits squish = windows.of(Rule.SQUISH_LEAST, Term.SQUISH, rodWords, figures);
        if (!sideValve && assembly.build().aims().containsKey(Term.SQUISH)) {
            squish = squish.and(windows.of(Rule.SQUISH_MOST, Term.SQUISH, rodWords, figures));
        } else {
            squish = squish.and(windows.ifPicked(Rule.SQUISH_MOST, Term.SQUISH, rodWords, figures));
        }
        RuleWindows.Limits ratio = windows.of(Rule.STATIC_RATIO, Term.COMPRESSION_RATIO, rodWords, figures);
        RuleWindows.Limits rodRatio = windows.ifPicked(Rule.ROD_RATIO, Term.ROD_RATIO, rodWords, figures);
        RuleWindows.Limits swept = windows.own(Term.SWEPT_VOLUME);
        RuleWindows.Limits room = windows.own(Term.CLEARANCE_VOLUME);
        Optional<Dim> chamber = head.dim(Term.CHAMBER_VOLUME);
        Optional<Dim> sleeve = ownFigure(Term.SLEEVE_LENGTH).map(Dim::of);
        Quantity aim = assembly.build().aims().get(Term.SQUISH);
        return new StackLimits(
                sizes(Optional.of(deck)),
                sizes(sleeve),
                chamber.map(Dim::value).orElse(Double.NaN),
                chamber.map(Dim::half).orElse(0.0),
                chamber.map(Dim::uncertainty).orElse(0.0),
                window(windows.own(Term.DECK_CLEARANCE)),
                window(squish),
                Math.max(1, ratio.least()),
                ratio.most(),
                rodRatio.least() > 0 && !Double.isInfinite(rodRatio.least()) ? Math.round(rodRatio.least() * 1e6) : 0,
                window(windows.of(Rule.GASKET_OVER_BORE, Term.GASKET_OVER_BORE, rodWords, figures)),
                window(windows.of(Rule.SKIRT_TO_COUNTERWEIGHT, Term.SKIRT_TO_COUNTERWEIGHT, rodWords, figures)),
                window(windows.of(Rule.TOP_RING_IN_BORE, Term.TOP_RING_TO_DECK, rodWords, figures)),
                window(windows.ifPicked(Rule.SKIRT_OUT_OF_SLEEVE, Term.SKIRT_OUT_OF_SLEEVE, rodWords, figures)),
                Math.max(0, swept.least()),
                swept.most(),
                Math.max(0, room.least()),
                ownFigure(Term.WANTED_SPEED).map(Measured::value).orElse(Double.NaN),
                Timing.RING_FLUTTER,
                aim == null ? Sizes.NOT_SAID : Gap.picometres(aim.si()));
    }

    /** The order of preference in words. */
    static String order(FitWish wish) {
        return wish.preferences().stream()
                .map(FitWish.Preference::meaning)
                .collect(java.util.stream.Collectors.joining(", then "));
    }
}
