package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Compression;
import longthrow.core.engine.Rule;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/**
 * When nothing fits: the rod to have made for the parts that are there, every dimension with its tolerance and datum, and what machining on offer would cost
 * instead. Of the fixed parts the first that go together without a rod are taken.
 */
final class ToOrder {
    private final Assembly assembly;
    private final FigurePrinter printer;

    private ToOrder(Assembly assembly) {
        this.assembly = assembly;
        this.printer = new FigurePrinter(assembly.build().units());
    }

    static List<Finding> findings(Assembly assembly, Hunt hunt) {
        ToOrder order = new ToOrder(assembly);
        List<Finding> findings = new ArrayList<>();
        order.rod().ifPresent(findings::add);
        if (hunt.overBudget() == 0) {
            findings.addAll(order.machining());
        }
        String why = hunt.rejected().isEmpty()
                ? ""
                : hunt.rejected().entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .map(e -> "; most often " + e.getKey().label())
                        .orElse("");
        findings.add(
                0,
                new Finding(
                        Finding.Kind.WARNING,
                        "search",
                        (hunt.overBudget() > 0 ? "nothing that fits keeps within the budget" : "nothing on offer fits")
                                + why,
                        assembly.build().fit().machining()
                                        && assembly.operations().isEmpty()
                                        && hunt.overBudget() == 0
                                ? "machining is allowed, but no machine work is on offer: rows of work in a catalogue, such as honing a"
                                        + " small end or cutting a deck, are tried too"
                                : ""));
        return findings;
    }

    private Optional<Finding> rod() {
        Build build = assembly.build();
        Quantity aim = build.aims().get(Term.SQUISH);
        Optional<Row> crank = first(PartKind.CRANKSHAFT, Term.STROKE);
        Neighbours neighbours = new Neighbours(assembly, new RuleWindows(build));
        Optional<Row> piston = assembly.rows(PartKind.PISTON).stream()
                .filter(r -> r.dim(Term.COMPRESSION_HEIGHT).isPresent()
                        && neighbours.piston(r).fits())
                .findFirst();
        Optional<Row> gasket = first(PartKind.GASKET, Term.GASKET_THICKNESS);
        Optional<Measured> deck = assembly.own().figure(Term.DECK_HEIGHT);
        if (aim == null || crank.isEmpty() || piston.isEmpty() || gasket.isEmpty() || deck.isEmpty()) {
            return Optional.empty();
        }
        Dim length = Dim.of(deck.get())
                .plus(-0.5, crank.get().dim(Term.STROKE).orElseThrow())
                .plus(-1, piston.get().dim(Term.COMPRESSION_HEIGHT).orElseThrow())
                .plus(1, gasket.get().dim(Term.GASKET_THICKNESS).orElseThrow())
                .moved(-aim.si(), 0);
        MadeToOrder made = new MadeToOrder(assembly);
        String sizes = made.words(made.rod(length.value(), MadeToOrder.CENTRES, crank.get(), piston.get()));
        String offered = assembly.operations().stream()
                .filter(o -> o.kind() == Operation.Kind.ROD_TO_ORDER)
                .filter(o -> length.value() >= o.least().metres()
                        && length.value() <= o.most().metres())
                .map(o -> o.code() + " makes it for " + price(o))
                .collect(Collectors.joining("; "));
        return Optional.of(new Finding(
                Finding.Kind.NOTE,
                "to order: connecting rod",
                "for " + crank.get().title() + ", " + piston.get().title() + ", "
                        + gasket.get().title()
                        + ": " + sizes
                        + "; what is not named here, and clearances where its maker asks for others, are the rod maker's to say. Datum: axis of the big-end bore, cap torqued; the two bores parallel. What the other parts add up to is known to ± "
                        + printer.print(Dimension.LENGTH, length.half(), 0.01e-3)
                                .first()
                                .value() + " "
                        + printer.print(Dimension.LENGTH, length.half(), 0.01e-3)
                                .first()
                                .unit()
                        + skirt(length.value(), crank.get(), piston.get())
                        + ratio(aim.si(), crank.get(), piston.get(), gasket.get()),
                offered.isEmpty() ? "ask a rod maker; say metal, bolts, speed and what it must carry" : offered));
    }

    /** Nor does it say anything of the ratio. */
    private String ratio(double squish, Row crank, Row piston, Row gasket) {
        Map<String, Optional<Double>> known = Map.of(
                Term.STROKE.path(), value(crank, Term.STROKE),
                Term.GASKET_THICKNESS.path(), value(gasket, Term.GASKET_THICKNESS),
                Term.GASKET_BORE.path(), value(gasket, Term.GASKET_BORE),
                Term.CROWN_VOLUME.path(), value(piston, Term.CROWN_VOLUME),
                Term.BORE.path(), assembly.own().figure(Term.BORE).map(Measured::value),
                Term.CHAMBER_VOLUME.path(),
                        assembly.own().figure(Term.CHAMBER_VOLUME).map(Measured::value));
        Formula ratio = Formula.of("ratio with the rod to order", ratioAt(squish));
        if (ratio.inputs().stream()
                .anyMatch(name -> Objects.requireNonNull(known.get(name), name).isEmpty())) {
            return "; the ratio it gives is not known";
        }
        double then =
                ratio.at(name -> Objects.requireNonNull(known.get(name), name).orElseThrow());
        return then > 1 && Double.isFinite(then)
                ? String.format(Locale.ROOT, "; with the head that is there the ratio is then %.2f", then)
                : "; with the head that is there no room is left over the piston";
    }

    private static Optional<Double> value(Row row, Term term) {
        return row.dim(term).map(Dim::value);
    }

    /** The ratio where gasket and deck clearance make up this squish. */
    private static Expression ratioAt(double squish) {
        Expression bore = Expression.input(Term.BORE.path());
        Expression thickness = Expression.input(Term.GASKET_THICKNESS.path());
        Expression room = Expression.input(Term.CHAMBER_VOLUME.path())
                .plus(Expression.input(Term.CROWN_VOLUME.path()))
                .plus(Compression.gasketVolume(Expression.input(Term.GASKET_BORE.path()), thickness))
                .plus(Compression.deckVolume(bore, Expression.constant(squish).minus(thickness)));
        return Compression.ratio(Compression.sweptVolume(bore, Expression.input(Term.STROKE.path())), room);
    }

    /** A rod that closes the stack may still bring the skirt to the counterweight. */
    private String skirt(double length, Row crank, Row piston) {
        Optional<Dim> below = piston.dim(Term.SKIRT_BELOW_PIN);
        Optional<Dim> weight = crank.dim(Term.COUNTERWEIGHT_RADIUS);
        if (below.isEmpty() || weight.isEmpty()) {
            return "; whether the skirt then clears the counterweight is not known";
        }
        double gap = length
                - crank.dim(Term.STROKE).orElseThrow().value() / 2
                - below.get().value()
                - weight.get().value();
        double least = new RuleWindows(assembly.build())
                .of(
                        Rule.SKIRT_TO_COUNTERWEIGHT,
                        Term.SKIRT_TO_COUNTERWEIGHT,
                        assembly.build().choices(),
                        t -> Optional.empty())
                .least();
        var printed = printer.print(Dimension.LENGTH, gap, 0.1e-3).first();
        return "; it leaves " + printed.value() + " " + printed.unit() + " between skirt and counterweight"
                + (gap < least ? ", LESS than the rule asks: shorten the skirt too, or take another piston" : "");
    }

    private Optional<Row> first(PartKind kind, Term term) {
        return assembly.rows(kind).stream().filter(r -> r.dim(term).isPresent()).findFirst();
    }

    private List<Finding> machining() {
        return assembly.operations().stream()
                .filter(o -> !Hunt.isByPair(o.kind()))
                .map(o -> new Finding(
                        Finding.Kind.NOTE,
                        "machining on offer: " + o.code(),
                        String.format(
                                Locale.ROOT,
                                "%s, %s to %s mm from: %s, for %s; no amount of it, alone or with one other, closes the rest",
                                o.kind().label(),
                                o.least().toMillimetresExact().toPlainString(),
                                o.most().toMillimetresExact().toPlainString(),
                                o.kind().datum(),
                                price(o)),
                        ""))
                .toList();
    }

    private static String price(Operation operation) {
        return operation.offer().price().isPresent()
                ? String.format(
                        Locale.ROOT,
                        operation.offer().shipping().isPresent() ? "%.2f %s with shipping" : "%.2f %s",
                        (operation.offer().price().getAsLong()
                                        + operation.offer().shipping().orElse(0))
                                / 100.0,
                        operation.offer().currency())
                : "a price that is not said";
    }
}
