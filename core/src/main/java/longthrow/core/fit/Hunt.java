package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.Stream;
import longthrow.core.answer.Sureness;
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
    /** Combinations of the plain parts up to which those that do not fit are counted one by one. */
    static final long MOST_COUNTED = 20_000_000L;

    /** So many ways that go together are looked at in all; then the search leaves off and says so. */
    static final long MOST_VISITED = 5_000_000L;

    /** Up to so many combinations, each that does not fit is told by itself. */
    static final long FEW = 24;

    private final Assembly assembly;
    private final Barred barred;
    private final int mostKept;
    private final RuleWindows windows;
    private final Neighbours neighbours;
    private final MadeToOrder made;
    private final Ranking ranking;
    private final Map<String, Found> best = new LinkedHashMap<>();
    private final Map<Obstacle, Long> rejected = new EnumMap<>(Obstacle.class);
    private final Map<Obstacle, Found> examples = new EnumMap<>(Obstacle.class);
    private final Map<Found, Obstacle> rejectedOnes = new LinkedHashMap<>();
    private long fitting;
    private long combinations;
    private long overBudget;
    private @Nullable Found cheapestOver;
    private long visited;
    private long counted;
    private boolean isCounted = true;
    /** Nothing worse need be kept; null while there is room. */
    private @Nullable Found worstKept;

    /**
     * Searches all there is.
     * @param barred what is known to break a rule
     * @param mostKept so many of the best are kept
     */
    Hunt(Assembly assembly, Barred barred, int mostKept) {
        this.assembly = assembly;
        this.barred = barred;
        this.mostKept = mostKept;
        this.windows = new RuleWindows(assembly.build());
        this.neighbours = new Neighbours(assembly, windows);
        this.made = new MadeToOrder(assembly);
        this.ranking = new Ranking(assembly.build());
        search(List.of(), 0);
        List<Operation> cuts = operations(false);
        if (isNothingLikely()) {
            cuts.forEach(one -> search(List.of(one), Machining.MOST_STEPS));
        }
        List<Operation> orders = operations(true);
        if (best.isEmpty()) {
            orders.forEach(one -> search(List.of(one), Machining.MOST_STEPS));
        }
        if (best.isEmpty()) {
            twoTogether(Stream.concat(cuts.stream(), orders.stream()).toList());
        }
    }

    /** Those that change a part, or those that make one where the owner names none that must stay. */
    private List<Operation> operations(boolean made) {
        return assembly.operations().stream()
                .filter(o -> !isByPair(o.kind()) && o.kind().makesAPart() == made)
                .filter(o -> !made || assembly.mayBeMade(o.kind()))
                .toList();
    }

    private boolean isNothingLikely() {
        return best.values().stream().noneMatch(f -> f.combination().sureness().compareTo(Sureness.PROBABLE) <= 0);
    }

    private void twoTogether(List<Operation> operations) {
        for (int a = 0; a < operations.size(); a++) {
            for (int b = a + 1; b < operations.size(); b++) {
                if (operations.get(a).kind() != operations.get(b).kind()) {
                    search(List.of(operations.get(a), operations.get(b)), Machining.MOST_STEPS_OF_TWO);
                }
            }
        }
    }

    /** With every pair that needs it, whatever else is done: see {@link Gap} and {@link Neighbours#boredFor}. */
    static boolean isByPair(Operation.Kind kind) {
        return switch (kind) {
            case SMALL_END_HONE, BIG_END_FACE, BORE_AND_HONE, SLEEVE -> true;
            case DECK_CUT,
                    HEAD_CUT,
                    CROWN_CUT,
                    SKIRT_CUT,
                    COUNTERWEIGHT_TURN,
                    CRANKPIN_OFFSET_GRIND,
                    GASKET_TO_ORDER,
                    ROD_TO_ORDER -> false;
        };
    }

    /** All heads, deck cuts and rod metals with these operations: none, one or two of different kinds. */
    private void search(List<Operation> operations, int steps) {
        List<Row> heads = rows(PartKind.HEAD, operations, steps);
        List<Row.@Nullable Cut> deckCuts = new ArrayList<>();
        operations.stream()
                .filter(o -> o.kind() == Operation.Kind.DECK_CUT)
                .forEach(o -> Machining.amounts(o, steps)
                        .forEach(amount -> deckCuts.add(new Row.Cut(o, amount, Machining.text(o, amount)))));
        if (deckCuts.isEmpty()) {
            deckCuts.add(null);
        }
        List<Row> cranks = rows(PartKind.CRANKSHAFT, operations, steps);
        List<Row> pistons = rows(PartKind.PISTON, operations, steps);
        List<Row> gaskets = rows(PartKind.GASKET, operations, steps);
        List<Row> rods = rodsToOrder(operations)
                .map(shop -> rodsMade(shop, cranks, pistons, gaskets, deckCuts))
                .orElseGet(() -> rows(PartKind.CONNECTING_ROD, operations, steps));
        byMetal(rods).forEach((metal, some) -> {
            Table table = new Table(neighbours, cranks, pistons, some, gaskets);
            for (Row.Cut deckCut : deckCuts) {
                heads.forEach(head -> search(head, deckCut, operations.isEmpty(), table));
            }
        });
    }

    private static Optional<Operation> rodsToOrder(List<Operation> operations) {
        return operations.stream()
                .filter(o -> o.kind() == Operation.Kind.ROD_TO_ORDER)
                .findFirst();
    }

    /** None where neither aim nor rules say which squish is wanted. */
    private List<Row> rodsMade(
            Operation shop, List<Row> cranks, List<Row> pistons, List<Row> gaskets, List<Row.@Nullable Cut> deckCuts) {
        Quantity aim = assembly.build().aims().get(Term.SQUISH);
        RuleWindows.Limits squish = squish(assembly.build().choices(), windows);
        boolean windowKnown = !Double.isInfinite(squish.least()) && !Double.isInfinite(squish.most());
        if (aim == null && !windowKnown) {
            return List.of();
        }
        double wanted = aim != null ? aim.si() : (squish.least() + squish.most()) / 2;
        return deckCuts.stream()
                .flatMap(cut -> made.rods(shop, cranks, pistons, gaskets, deck(cut), wanted).stream())
                .distinct()
                .toList();
    }

    /** Squish limits differ by what the rod is made of. */
    private static Map<Optional<String>, List<Row>> byMetal(List<Row> rods) {
        Map<Optional<String>, List<Row>> byMetal = new LinkedHashMap<>();
        for (Row rod : rods) {
            Optional<String> metal = Optional.ofNullable(rod.words().get(Choice.ROD_METAL));
            // of a rod that may be bought and says nothing the metal is not known; the engine's own is as the build
            // says
            byMetal.computeIfAbsent(rod.isOwn() ? Optional.of(Row.OWN) : metal, m -> new ArrayList<>())
                    .add(rod);
        }
        return byMetal;
    }

    /** As they are, or as the operations make those that they are done on. */
    private List<Row> rows(PartKind kind, List<Operation> operations, int steps) {
        List<Row> rows = assembly.rows(kind);
        for (Operation operation : operations) {
            if (operation.kind() == Operation.Kind.GASKET_TO_ORDER && kind == PartKind.GASKET) {
                rows = made.gaskets(operation, assembly.rows(PartKind.PISTON), neighbours);
            } else if (Machining.on(operation.kind()).filter(k -> k == kind).isPresent()) {
                rows = rows.stream()
                        .flatMap(r -> Machining.of(r, operation, steps))
                        .toList();
            }
        }
        return rows;
    }

    private void search(Row head, Row.@Nullable Cut deckCut, boolean plain, Table table) {
        if (plain) {
            combinations += table.columns().combinations();
        }
        if (isCutShort()) {
            return;
        }
        StackLimits limits = limits(head, deckCut, table.rods().get(0));
        StackSearch search = new StackSearch(table.columns(), limits);
        Together together = new Together(table.columns(), limits);
        search.each(one -> {
            fitting += plain ? 1 : 0;
            visited++;
            take(table, one, head, deckCut, together, plain);
            return visited < MOST_VISITED;
        });
        if (plain) {
            count(table, search, head);
        }
    }

    private void count(Table table, StackSearch search, Row head) {
        long all = table.columns().combinations();
        counted += all;
        if (counted > MOST_COUNTED) {
            isCounted = false;
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

    /** Most of what goes together is dearer or less sure than what is kept: that is seen before anything is made of it. */
    private void take(
            Table table, Combination one, Row head, Row.@Nullable Cut deckCut, Together together, boolean plain) {
        Found found = table.found(one, head, deckCut);
        if (worstKept != null && budgetKept(found) && ranking.compare(found, worstKept) > 0) {
            return;
        }
        take(found, together, plain);
    }

    private boolean budgetKept(Found found) {
        OptionalLong budget = assembly.budget();
        return budget.isEmpty() || found.price() <= budget.getAsLong();
    }

    private void take(Found found, Together together, boolean plain) {
        if (found.isMachined() && !found.combination().bySizes()) {
            return; // metal is cut to a size that fits, not to one that may
        }
        if (barred.bars(found, plain)) {
            return;
        }
        if (!budgetKept(found)) {
            overBudget++;
            if (cheapestOver == null || found.price() < cheapestOver.price()) {
                cheapestOver = found;
            }
            return;
        }
        if (found.combination().sureness() == Sureness.SELECTION
                && together.pieces(found.combination(), boreFor(found.piston())).isEmpty()) {
            if (plain) {
                rejected.merge(Obstacle.SELECTION, 1L, Long::sum);
                examples.putIfAbsent(Obstacle.SELECTION, found);
            }
            return;
        }
        best.merge(found.base(), found, (a, b) -> ranking.compare(a, b) <= 0 ? a : b);
        if (best.size() > 4 * mostKept) {
            List<Found> ordered = ranked().subList(0, 2 * mostKept);
            worstKept = ordered.get(ordered.size() - 1);
            best.clear();
            ordered.forEach(f -> best.put(f.base(), f));
        }
    }

    /** Where the bore must lie for the piston to have its clearance [pm]. */
    private Window boreFor(Row piston) {
        Optional<Dim> diameter = piston.dim(Term.PISTON_DIAMETER);
        if (piston.isOwn()
                || diameter.isEmpty()
                || diameter.get().isVague()
                || neighbours.boredFor(piston).isPresent()) {
            return Window.ANY;
        }
        RuleWindows.Limits clearance = windows.around(piston)
                .of(
                        Rule.PISTON_TO_WALL,
                        Term.PISTON_TO_WALL,
                        piston.words(),
                        t -> ownFigure(t).or(() -> piston.dim(t).map(d -> Measured.exact(d.value()))));
        long low = diameter.get().picometres() - diameter.get().halfPicometres();
        long high = diameter.get().picometres() + diameter.get().halfPicometres();
        return window(new RuleWindows.Limits(clearance.least() + low * 1e-12, clearance.most() + high * 1e-12));
    }

    private List<Found> ranked() {
        return best.values().stream().sorted(ranking).toList();
    }

    /** Best first; of the same parts only the best way to machine them. */
    List<Found> best() {
        return ranked().stream().limit(mostKept).map(neighbours::machining).toList();
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

    /** The cheapest that fits and costs more than the budget; empty when none does. */
    Optional<Found> cheapestOver() {
        return Optional.ofNullable(cheapestOver).map(neighbours::machining);
    }

    /** Whether so much goes together that not all of it was looked at. */
    boolean isCutShort() {
        return visited >= MOST_VISITED;
    }

    /** Whether what does not go together was counted; not where there is too much of it. */
    boolean isCounted() {
        return isCounted;
    }

    long overBudget() {
        return overBudget;
    }

    // ---- limits of the stack

    private Optional<Measured> ownFigure(Term term) {
        return assembly.own().figure(term);
    }

    private static Sizes sizes(Optional<Dim> dim) {
        return dim.map(d -> new Sizes(
                        new long[] {d.picometres()},
                        new long[] {d.isVague() ? Sizes.NOT_SAID : d.halfPicometres()},
                        new double[] {d.uncertaintyPicometres()}))
                .orElse(Sizes.unknown(1));
    }

    /** Limits that exclude each other leave a window that nothing can stand in. */
    private static Window window(RuleWindows.Limits limits) {
        if (limits.least() > limits.most()) {
            return Window.atLeast(Window.NO_MOST - 1);
        }
        return new Window(Gap.picometres(limits.least()), Gap.picometres(limits.most()));
    }

    private Dim deck(Row.@Nullable Cut deckCut) {
        Dim deck = Dim.of(ownFigure(Term.DECK_HEIGHT).orElseThrow());
        if (deckCut == null) {
            return deck;
        }
        return deck.machined(deckCut.amount(), -1, deckCut.operation().tolerance());
    }

    private RuleWindows.Limits squish(Map<Choice, String> rodWords, RuleWindows byWords) {
        Function<Term, Optional<Measured>> figures = this::ownFigure;
        RuleWindows.Limits least = byWords.of(Rule.SQUISH_LEAST, Term.SQUISH, rodWords, figures);
        boolean aimed = assembly.build().aims().containsKey(Term.SQUISH)
                && !assembly.build().chose(Choice.VALVE_LAYOUT, "side");
        return least.and(
                aimed
                        ? byWords.of(Rule.SQUISH_MOST, Term.SQUISH, rodWords, figures)
                        : byWords.ifPicked(Rule.SQUISH_MOST, Term.SQUISH, rodWords, figures));
    }

    private StackLimits limits(Row head, Row.@Nullable Cut deckCut, Row rod) {
        Function<Term, Optional<Measured>> figures = this::ownFigure;
        Map<Choice, String> rodWords = rod.words();
        RuleWindows windows = this.windows.around(rod);
        Dim deck = deck(deckCut);
        RuleWindows.Limits squish = squish(rodWords, windows);
        RuleWindows.Limits ratio = windows.of(Rule.STATIC_RATIO, Term.COMPRESSION_RATIO, rodWords, figures);
        RuleWindows.Limits rodRatio = windows.ifPicked(Rule.ROD_RATIO, Term.ROD_RATIO, rodWords, figures);
        RuleWindows.Limits swept = windows.own(Term.SWEPT_VOLUME);
        RuleWindows.Limits room = windows.own(Term.CLEARANCE_VOLUME);
        Optional<Dim> chamber = head.dim(Term.CHAMBER_VOLUME);
        // read from the deck: a cut takes as much off its upper end
        Optional<Dim> sleeve = ownFigure(Term.SLEEVE_LENGTH)
                .map(Dim::of)
                .map(d -> deckCut == null ? d : d.moved(-deckCut.amount(), 0));
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
                window(
                        sleeve.isPresent()
                                ? windows.of(Rule.SKIRT_OUT_OF_SLEEVE, Term.SKIRT_OUT_OF_SLEEVE, rodWords, figures)
                                : windows.ifPicked(
                                        Rule.SKIRT_OUT_OF_SLEEVE, Term.SKIRT_OUT_OF_SLEEVE, rodWords, figures)),
                Math.max(0, swept.least()),
                swept.most(),
                Math.max(0, room.least()),
                ownFigure(Term.WANTED_SPEED).map(Measured::value).orElse(Double.NaN),
                Timing.RING_FLUTTER,
                aim == null ? Sizes.NOT_SAID : Gap.picometres(aim.si()));
    }
}
