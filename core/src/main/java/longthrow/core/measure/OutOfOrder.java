package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Finding;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/**
 * Two readings of one body that cannot both be: the inside wider than the outside, the lower end above the upper one. Each can be believed by itself, so nothing else
 * finds it; a sign that slipped draws a part where it is not. All are geometry. No figure rests on either until one of them is mended.
 */
final class OutOfOrder {
    /**
     * What is larger in every body of its kind.
     * @param larger  reading that must be the larger one
     * @param smaller reading that it is held against
     * @param share   of the smaller one that it must exceed: -1 where it is measured the other way, 0.5 of a diameter
     * @param means   what the two would mean
     */
    private record Order(Term larger, Term smaller, double share, String means) {}

    private static final List<Order> ORDERS = List.of(
            new Order(
                    Term.BOLT_UP,
                    Term.BOLT_DOWN,
                    -1,
                    "the lower end of the bolt would stand above its upper end: has one the wrong sign?"),
            new Order(
                    Term.BOLT_OUT,
                    Term.BIG_END_BORE,
                    0.5,
                    "the whole bolt would stand inside the big-end bore: from the middle of the rod or across both bolts?"),
            new Order(
                    Term.BIG_END_REACH,
                    Term.BIG_END_BORE,
                    0.5,
                    "the big end would end inside its own bore: from the middle of the crankpin?"),
            new Order(
                    Term.BIG_END_REACH,
                    Term.CAP_BELOW,
                    1,
                    "the cap would reach farther than the outermost point of the big end, of which it is part"),
            new Order(
                    Term.CAP_BELOW,
                    Term.BIG_END_BORE,
                    0.5,
                    "the cap would end inside the big-end bore: from the middle of the crankpin?"),
            new Order(
                    Term.BEAM_THICKNESS, Term.BEAM_WEB, 1, "the web would be thicker than the beam that it is part of"),
            new Order(Term.BEAM_WIDTH, Term.BEAM_FLANGE, 2, "both flanges together would be wider than the beam"),
            new Order(Term.PIN_DIAMETER, Term.PIN_INSIDE, 1, "the pin would be wider inside than outside"),
            new Order(
                    Term.BOSS_BELOW_PIN,
                    Term.PIN_DIAMETER,
                    0.5,
                    "the boss would end inside the hole of its pin: from the middle of the pin?"),
            new Order(Term.INTAKE_HEAD, Term.INTAKE_STEM, 1, "the valve's head would be no wider than its stem"),
            new Order(Term.EXHAUST_HEAD, Term.EXHAUST_STEM, 1, "the valve's head would be no wider than its stem"),
            new Order(Term.FLYWHEEL_DIAMETER, Term.RIM_INSIDE, 1, "the rim would be wider inside than outside"),
            new Order(
                    Term.PUSHROD_OUTSIDE,
                    Term.PUSHROD_WALL,
                    2,
                    "both walls together would be thicker than the pushrod"),
            new Order(Term.TUBE_INSIDE, Term.PUSHROD_OUTSIDE, 1, "the pushrod would not go into its tube"),
            new Order(Term.TUBE_TO, Term.TUBE_FROM, 1, "the tube would end below where it begins"),
            new Order(Term.PUSHROD_LENGTH, Term.TUBE_TO, 1, "the tube would reach higher than the pushrod in it"),
            new Order(Term.SPRING_OUTSIDE, Term.SPRING_WIRE, 2, "there would be no hole through the spring's coils"));

    /** Off by so many standard uncertainties one of the two is surely wrong: 97.7 % one-sided; a judgement. */
    private static final double SURELY = 2;

    private final Figures figures;
    private final List<Order> broken = new ArrayList<>();
    private final Set<Term> spoiled = new LinkedHashSet<>();

    OutOfOrder(Figures figures) {
        this.figures = figures;
        for (Order order : ORDERS) {
            if (isBroken(order)) {
                broken.add(order);
                spoiled.add(order.larger());
                spoiled.add(order.smaller());
            }
        }
        // one that is added to them: the dipper hangs on the cap, the weight stands off the camshaft; 0 is none
        reachesOut(
                Term.DIPPER_REACH,
                Term.CAP_BELOW,
                1,
                "the dipper would end above the bottom of the cap: it would never reach the oil");
        reachesOut(
                Term.RELEASE_REACH,
                Term.CAM_CORE,
                0.5,
                "the compression release would end inside the camshaft: from the middle of the shaft?");
    }

    private void reachesOut(Term reach, Term from, double share, String means) {
        Order order = new Order(reach, from, share, means);
        if (figures.figure(reach).filter(r -> !NoSuchPart.isSaidBy(r)).isPresent() && isBroken(order)) {
            broken.add(order);
            spoiled.add(reach);
            spoiled.add(from);
        }
    }

    private boolean isBroken(Order order) {
        Optional<Measured> larger = figures.figure(order.larger()).filter(f -> !f.isUnknown());
        Optional<Measured> smaller = figures.figure(order.smaller()).filter(f -> !f.isUnknown());
        return larger.isPresent() && smaller.isPresent() && surely(larger.get(), smaller.get(), order.share());
    }

    /** Whether the one is less than that share of the other by more than their doubt together: both are taken as independent. */
    private static boolean surely(Measured larger, Measured smaller, double share) {
        double over = larger.value() - share * smaller.value();
        double doubt = Math.hypot(larger.standardUncertainty(), share * smaller.standardUncertainty());
        return over < -SURELY * doubt && over < 0;
    }

    /** One for each pair, naming both. */
    List<Finding> findings() {
        return broken.stream()
                .map(order -> new Finding(
                        Finding.Kind.SUSPECT,
                        place(order.larger()) + ", " + place(order.smaller()),
                        said(order.larger()) + " and " + said(order.smaller()) + ": " + order.means()
                                + (order.means().endsWith("?") ? "" : ".")
                                + " One of the two is read or written wrong; nothing is told from either",
                        "read both again, and look at the sign, the unit and where each is read from"))
                .toList();
    }

    private String place(Term term) {
        Measured figure = figures.figure(term).orElseThrow();
        List<String> from = figures.result(term, figure).from();
        return from.isEmpty() ? term.path() : String.join(", ", from);
    }

    private String said(Term term) {
        Measured figure = figures.figure(term).orElseThrow();
        return term.label() + " " + Measure.words(figures.build(), term, figure.value(), figure.expanded());
    }

    /** Whether a figure is one of two that cannot both be, or is worked out from one. */
    boolean spoils(Term term) {
        return spoiled.contains(term)
                || (!spoiled.isEmpty()
                        && figures.model().formula(term).stream()
                                .flatMap(formula -> formula.inputs().stream())
                                .flatMap(path -> Term.at(path).stream())
                                .anyMatch(input -> spoiled.contains(input) && input != term));
    }
}
