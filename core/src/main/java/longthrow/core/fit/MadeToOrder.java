package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.catalogue.Voucher;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** Rods and gaskets that a shop would make, as rows like any other: their sizes follow from the parts they go between, the clearances from the rules. */
final class MadeToOrder {
    /** Tolerance to ask for between centres [m], on bores, on widths, on a crushed gasket and its hole; common practice, no source. */
    static final double CENTRES = 0.03e-3;

    private static final double BORES = 0.005e-3;
    private static final double WIDTHS = 0.05e-3;
    private static final double CRUSHED = 0.03e-3;
    private static final double HOLE = 0.1e-3;
    /** So many rows are made at most of one offer; a search that would need more says so. */
    static final int MOST_ROWS = 20_000;

    private static final int MOST_THICKNESSES = 400;

    private final Assembly assembly;
    private final RuleWindows windows;
    private final FigurePrinter printer;

    MadeToOrder(Assembly assembly) {
        this.assembly = assembly;
        this.windows = new RuleWindows(assembly.build());
        this.printer = new FigurePrinter(assembly.build().units());
    }

    /**
     * A size to order.
     * @param tolerance to ask for [m]
     */
    record Size(Term term, double value, double tolerance) {}

    // ---- rods

    /** Lengths that bring the squish where it is wanted with any of these parts, in the shop's steps and range; at most {@link #MOST_ROWS}. */
    List<Row> rods(Operation shop, List<Row> cranks, List<Row> pistons, List<Row> gaskets, Dim deck, double squish) {
        Set<Double> thicknesses = new LinkedHashSet<>();
        gaskets.forEach(g -> g.dim(Term.GASKET_THICKNESS).ifPresent(t -> thicknesses.add(t.value())));
        Map<List<Object>, Row> made = new LinkedHashMap<>();
        for (Row crank : cranks) {
            for (Row piston : pistons) {
                Optional<Dim> stroke = crank.dim(Term.STROKE);
                Optional<Dim> height = piston.dim(Term.COMPRESSION_HEIGHT);
                if (stroke.isEmpty() || height.isEmpty()) {
                    continue;
                }
                for (double thickness : thicknesses) {
                    double wanted = deck.value()
                            - stroke.get().value() / 2
                            - height.get().value()
                            + thickness
                            - squish;
                    Optional<Double> length = inSteps(shop, wanted);
                    if (length.isPresent() && made.size() < MOST_ROWS) {
                        List<Size> sizes = rod(length.get(), lengthTolerance(shop, CENTRES), crank, piston);
                        made.computeIfAbsent(List.copyOf(sizes), key -> row(PartKind.CONNECTING_ROD, shop, sizes));
                    }
                }
            }
        }
        return List.copyOf(made.values());
    }

    private static double lengthTolerance(Operation shop, double usual) {
        ExactLength held = shop.tolerance();
        return held == null ? usual : held.metres();
    }

    /** The nearest size the shop makes; empty outside its range. */
    private static Optional<Double> inSteps(Operation shop, double wanted) {
        double least = shop.least().metres();
        ExactLength stated = shop.step();
        double step = stated == null ? Machining.USUAL_STEP : stated.metres();
        double size = least + Math.round((wanted - least) / step) * step;
        return size < least - 1e-12 || size > shop.most().metres() + 1e-12
                ? Optional.empty()
                : Optional.of(Math.round(size * 1e9) / 1e9);
    }

    /** Every dimension of a rod for a crankshaft and a piston; what neither tells, or no rule, is left out. */
    List<Size> rod(double length, double tolerance, Row crank, Row piston) {
        List<Size> sizes = new ArrayList<>();
        sizes.add(new Size(Term.ROD_LENGTH, length, tolerance));
        over(piston, Term.PIN_DIAMETER, Term.SMALL_END_BORE, Rule.PIN_CLEARANCE, BORES)
                .ifPresent(sizes::add);
        over(crank, Term.CRANKPIN_DIAMETER, Term.BIG_END_BORE, Rule.BIG_END_CLEARANCE, BORES)
                .ifPresent(sizes::add);
        between(crank, Term.CRANKPIN_WIDTH, Term.BIG_END_WIDTH, Rule.ROD_SIDE_CLEARANCE)
                .ifPresent(sizes::add);
        between(piston, Term.BOSS_GAP, Term.SMALL_END_WIDTH, Rule.BOSS_CLEARANCE)
                .ifPresent(sizes::add);
        return sizes;
    }

    private Optional<Size> over(Row neighbour, Term inner, Term made, Rule rule, double tolerance) {
        return neighbour
                .dim(inner)
                .flatMap(d -> clearance(rule, d.value(), tolerance)
                        .map(c -> new Size(made, nanometres(d.value() + c), tolerance)));
    }

    private Optional<Size> between(Row neighbour, Term wide, Term made, Rule rule) {
        return neighbour
                .dim(wide)
                .flatMap(d -> clearance(rule, 0, WIDTHS).map(c -> new Size(made, nanometres(d.value() - c), WIDTHS)));
    }

    private static double nanometres(double size) {
        return Math.round(size * 1e9) / 1e9;
    }

    /**
     * What the rules leave: the middle of the stretch that most of the sources share, or so much over its least that the smallest piece keeps it. Where no rule
     * says anything, none is made up.
     * @param reference of a rule that is a factor of a diameter [m]
     */
    private Optional<Double> clearance(Rule rule, double reference, double tolerance) {
        List<RuleWindows.Limits> sources = windows
                .each(rule, rule.term(), assembly.build().choices(), t -> Optional.of(Measured.exact(reference)))
                .stream()
                .filter(l -> !Double.isInfinite(l.least()))
                .toList();
        return sources.stream()
                .map(RuleWindows.Limits::least)
                .distinct()
                .map(least -> shared(least, sources))
                .max(Comparator.comparingLong((RuleWindows.Limits l) -> sources.stream()
                                .filter(s -> s.least() <= l.least() && s.most() >= l.most())
                                .count())
                        .thenComparingDouble(l -> l.most() - l.least()))
                .map(l -> Double.isInfinite(l.most()) ? l.least() + tolerance : (l.least() + l.most()) / 2);
    }

    /** From this least on to where the first of the sources that allow it ends. */
    private static RuleWindows.Limits shared(double least, List<RuleWindows.Limits> sources) {
        double most = sources.stream()
                .filter(s -> s.least() <= least && s.most() > least)
                .mapToDouble(RuleWindows.Limits::most)
                .min()
                .orElse(least);
        return new RuleWindows.Limits(least, most);
    }

    // ---- gaskets

    /** Every thickness the shop makes, for every bore that one of the pistons needs. */
    List<Row> gaskets(Operation shop, List<Row> pistons, Neighbours neighbours) {
        Set<Double> holes = new LinkedHashSet<>();
        for (Row piston : pistons) {
            neighbours
                    .boreFor(piston)
                    .flatMap(bore ->
                            clearance(Rule.GASKET_OVER_BORE, bore.value(), HOLE).map(c -> nanometres(bore.value() + c)))
                    .ifPresent(holes::add);
        }
        List<Row> made = new ArrayList<>();
        for (double thickness : Machining.amounts(shop, MOST_THICKNESSES)) {
            Size crushed = new Size(Term.GASKET_THICKNESS, thickness, lengthTolerance(shop, CRUSHED));
            if (holes.isEmpty()) {
                made.add(row(PartKind.GASKET, shop, List.of(crushed)));
            }
            for (double hole : holes) {
                if (made.size() < MOST_ROWS) {
                    made.add(row(PartKind.GASKET, shop, List.of(crushed, new Size(Term.GASKET_BORE, hole, HOLE))));
                }
            }
        }
        return made;
    }

    // ---- as rows

    /** A row whose price is that of its making. */
    private Row row(PartKind kind, Operation shop, List<Size> sizes) {
        Map<Term, CataloguePart.Figure> figures = new EnumMap<>(Term.class);
        // what is asked for is not yet what the shop holds
        sizes.forEach(s -> figures.put(
                s.term(),
                new CataloguePart.Figure(
                        Fitted.quantity(s.term(), s.value()),
                        shop.tolerance() == null ? null : Fitted.quantity(s.term(), s.tolerance()))));
        CataloguePart part = new CataloguePart(
                kind,
                shop.code(),
                shop.name(),
                shop.invented(),
                figures,
                madeOf(kind),
                Offer.NONE,
                Voucher.CLAIMED,
                words(sizes)
                        + (shop.tolerance() == null
                                ? "; tolerances to ask for: the shop says none, so nothing is sure of it"
                                : ""),
                shop.place());
        Map<Term, Dim> dims = new EnumMap<>(Term.class);
        figures.forEach((term, figure) -> dims.put(term, Dim.of(figure)));
        double main = sizes.get(0).value();
        Row.Cut made = new Row.Cut(shop, main, Machining.text(shop, main));
        return new Row(kind, part, List.of(made), dims, madeOf(kind));
    }

    /** A rod is ordered in the metal that the build names, since its clearances follow from it. */
    private Map<Choice, String> madeOf(PartKind kind) {
        String metal = assembly.build().choices().get(Choice.ROD_METAL);
        return kind == PartKind.CONNECTING_ROD && metal != null ? Map.of(Choice.ROD_METAL, metal) : Map.of();
    }

    /** Each size with the tolerance to ask for. */
    String words(List<Size> sizes) {
        String metal = madeOf(PartKind.CONNECTING_ROD).getOrDefault(Choice.ROD_METAL, "");
        boolean rod = sizes.get(0).term() == Term.ROD_LENGTH;
        String of = !rod
                ? ""
                : Choice.ROD_METAL
                        .option(metal)
                        .map(option -> "; metal " + option.label())
                        .orElse("; metal not said, so clearances as most of the sources that may be meant have them");
        return sizes.stream()
                        .map(s -> s.term().label() + " "
                                + printer.print(Dimension.LENGTH, s.value(), s.tolerance())
                                        .line())
                        .collect(Collectors.joining("; "))
                + of;
    }
}
