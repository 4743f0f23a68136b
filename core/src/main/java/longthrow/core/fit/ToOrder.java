package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Rule;
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
    /** Tolerance a good shop holds between centres, and on bores [m]; common practice, no source. */
    private static final double CENTRES = 0.03e-3;

    private static final double BORES = 0.005e-3;
    private static final double WIDTHS = 0.05e-3;

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
        findings.addAll(order.machining());
        String why = hunt.rejected().isEmpty()
                ? ""
                : hunt.rejected().entrySet().stream()
                        .max(java.util.Map.Entry.comparingByValue())
                        .map(e -> "; most often " + e.getKey().label())
                        .orElse("");
        findings.add(0, new Finding(Finding.Kind.WARNING, "search", "nothing on offer fits" + why, ""));
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
        List<String> sizes = new ArrayList<>();
        sizes.add("centre to centre " + size(length.value(), CENTRES));
        piston.get()
                .dim(Term.PIN_DIAMETER)
                .ifPresent(pin -> sizes.add(
                        fitted("small end bore", "pin", pin.value(), Rule.PIN_CLEARANCE, pin.value(), 1, BORES)));
        crank.get()
                .dim(Term.CRANKPIN_DIAMETER)
                .ifPresent(pin -> sizes.add(fitted(
                        "big end bore", "crankpin", pin.value(), Rule.BIG_END_CLEARANCE, pin.value(), 1, BORES)));
        crank.get()
                .dim(Term.CRANKPIN_WIDTH)
                .ifPresent(width -> sizes.add(fitted(
                        "big end width", "crankpin width", width.value(), Rule.ROD_SIDE_CLEARANCE, 0, -1, WIDTHS)));
        piston.get()
                .dim(Term.BOSS_GAP)
                .ifPresent(gap -> sizes.add(
                        fitted("small end width", "boss gap", gap.value(), Rule.BOSS_CLEARANCE, 0, -1, WIDTHS)));
        sizes.add("clearances by the rules that hold here; the rod maker's own stand above them");
        String made = assembly.operations().stream()
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
                        + ": " + String.join("; ", sizes)
                        + ". Datum: axis of the big-end bore, cap torqued; the two bores parallel. What the other parts add up to is known to ± "
                        + printer.print(Dimension.LENGTH, length.half(), 0.01e-3)
                                .first()
                                .value() + " "
                        + printer.print(Dimension.LENGTH, length.half(), 0.01e-3)
                                .first()
                                .unit()
                        + skirt(length.value(), crank.get(), piston.get()),
                made.isEmpty() ? "ask a rod maker; say metal, bolts, speed and what it must carry" : made));
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

    /**
     * A size that goes into or over its neighbour with the clearance that the rules leave: their middle, or so much over their least that the smallest piece
     * keeps it. Where no rule says anything, none is made up.
     * @param reference of a rule that is a factor of a diameter [m]
     * @param sign      +1 for what goes over its neighbour, -1 for what goes between
     */
    private String fitted(
            String what, String neighbour, double size, Rule rule, double reference, int sign, double tolerance) {
        RuleWindows.Limits limits = new RuleWindows(assembly.build())
                .of(rule, rule.term(), assembly.build().choices(), t -> Optional.of(Measured.exact(reference)));
        if (Double.isInfinite(limits.least())) {
            return what + ": " + neighbour + " " + size(size, tolerance) + " and the clearance its maker asks for";
        }
        double clearance =
                Double.isInfinite(limits.most()) ? limits.least() + tolerance : (limits.least() + limits.most()) / 2;
        return what + " " + size(size + sign * clearance, tolerance);
    }

    private Optional<Row> first(PartKind kind, Term term) {
        return assembly.rows(kind).stream().filter(r -> r.dim(term).isPresent()).findFirst();
    }

    private String size(double value, double tolerance) {
        return printer.print(Dimension.LENGTH, value, tolerance).line();
    }

    private List<Finding> machining() {
        return assembly.operations().stream()
                .map(o -> new Finding(
                        Finding.Kind.NOTE,
                        "machining on offer: " + o.code(),
                        String.format(
                                Locale.ROOT,
                                "%s, %s to %s mm from: %s, for %s; no amount of it alone closes the rest",
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
