package longthrow.core.engine;

import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/** Figures in sentences, in the units of the owner's bench and of the other. */
final class Wording {
    private final FigurePrinter printer;

    Wording(Build build) {
        printer = new FigurePrinter(build.units());
    }

    /** With its doubt. */
    String figure(Term term, Measured figure) {
        return printer.print(units(term, figure.value()), figure.value(), figure.expanded())
                .line();
    }

    /** A length of metal, a difference, a limit: digits cut to the doubt beside it, which is not printed. */
    String amount(Term term, double amount, double doubt) {
        return amount(units(term, amount), amount, doubt);
    }

    /** How far two figures of a term are apart: of temperatures that is none. */
    String difference(Term term, double amount, double doubt) {
        return term.dimension() == Dimension.TEMPERATURE
                ? amount(BenchUnits.of(Dimension.TEMPERATURE_DIFFERENCE, amount), amount, doubt)
                : amount(term, amount, doubt);
    }

    /** Whether nothing but zeros would be printed of it in one of the units. */
    boolean vanishes(Term term, double amount, double doubt) {
        PrintedFigures printed = printer.print(units(term, amount), amount, doubt);
        return isZero(printed.first())
                || printed.second().filter(Wording::isZero).isPresent();
    }

    private static boolean isZero(Figure figure) {
        return figure.value().chars().noneMatch(c -> c >= '1' && c <= '9');
    }

    String amount(Dimension dimension, double amount) {
        return amount(BenchUnits.of(dimension, amount), amount, 0);
    }

    private String amount(BenchUnits units, double amount, double doubt) {
        PrintedFigures printed = printer.print(units, amount, doubt);
        return new PrintedFigures(bare(printed.first()), printed.second().map(Wording::bare)).line();
    }

    /** As it was written, and in the other bench's unit. */
    String stated(Quantity quantity) {
        return printer.print(quantity).line();
    }

    /** A limit: as stated, or worked out for this engine, with how. */
    String limit(Term term, Bound bound, double value, double doubt) {
        Optional<Term> reference = bound.reference();
        Quantity stated = bound.stated();
        return reference.isEmpty() && stated != null
                ? stated(stated)
                : amount(term, value, doubt) + " by " + bound.text();
    }

    private static Figure bare(Figure figure) {
        return new Figure(figure.value(), "", figure.unit());
    }

    private static BenchUnits units(Term term, double value) {
        return term == Term.LEAK_DOWN ? BenchUnits.alone(Units.PERCENT) : BenchUnits.of(term.dimension(), value);
    }
}
