package longthrow.core.book;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Result;
import longthrow.core.engine.Bound;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/** Figures in the units of the owner's bench and of the other. */
final class Words {
    /** A size on a drawing is said to a half thousandth of a millimetre [m]. */
    private static final double DRAWN_TO = 0.5e-6;
    /** A plan is said to a thousandth of a millimetre, or in its own unit alike [SI]. */
    private static final double PLANNED_TO = 10e-6;
    /** A gap at its worst is said to a hundredth of a millimetre, which is all that is promised of it [m]. */
    private static final double GAP_TO = 0.05e-3;
    /** A limit that was worked out is a rule of thumb times a figure: so many digits, and no noughts behind them. */
    private static final MathContext LIMIT_DIGITS = new MathContext(3);

    /** Small beside the last of those digits, so that rounding is done once. */
    private static final double LIMIT_DOUBT = 1e-4;

    private final FigurePrinter printer;

    Words(UnitSystem units) {
        printer = new FigurePrinter(units);
    }

    PrintedFigures printed(Result result) {
        return result.term() == Term.LEAK_DOWN && !result.figure().isUnknown()
                ? printer.print(
                        BenchUnits.alone(Units.PERCENT),
                        result.figure().value(),
                        result.figure().expanded())
                : result.printed(printer);
    }

    /** Value and doubt in both units. */
    String line(Result result) {
        return printed(result).line() + (result.contradicted() ? ", IN DISPUTE" : "");
    }

    /** Value and doubt in the units that come first. */
    String brief(Result result) {
        return printed(result).first().text() + (result.contradicted() ? ", IN DISPUTE" : "");
    }

    /** Value and doubt in both units. */
    String line(Dimension dimension, Measured figure) {
        return printer.print(dimension, figure.value(), figure.expanded()).line();
    }

    /** The same, said where its doubt is not known. */
    String told(Dimension dimension, Measured figure) {
        return told(
                dimension,
                figure.value(),
                figure.isUnknown() || figure.expanded() == 0 ? Double.NaN : figure.expanded());
    }

    /**
     * Likewise.
     * @param half 95 % half-width; NaN where it is not known
     */
    String told(Dimension dimension, double value, double half) {
        return (Double.isFinite(half)
                        ? printer.print(dimension, value, half)
                        : printer.printDoubtUnknown(dimension, value))
                .line();
    }

    /** What has no doubt, in both units [SI]. */
    String exact(Dimension dimension, double si) {
        return printer.print(dimension, si, 0).line();
    }

    /** A gap with its 95 % interval, by the wider side; below 0 how deep one lies inside the other. */
    String gap(Clearance.Gap gap) {
        double half = Math.max(gap.high() - gap.value(), gap.value() - gap.low());
        String line =
                printer.print(Dimension.LENGTH, Math.abs(gap.value()), half).line();
        String said = gap.value() < 0 ? "overlap, " + line + " deep" : line;
        return switch (gap.way()) {
            case MOCKED_UP -> (gap.value() == 0 ? "touching" : said) + ", as mocked up";
            case AT_LEAST ->
                (gap.value() == 0 ? "free of each other, by how much not read" : "at least " + said) + ", as mocked up";
            case READ -> said + ", as read";
            case IN_PLANE, BESIDE, TRAVEL -> said;
        };
    }

    /** A gap without doubt [m]; below 0 how deep one lies inside the other. */
    String gap(double metres) {
        String size = bare(printer.print(Dimension.LENGTH, Math.abs(metres), GAP_TO));
        return metres < 0 ? "overlap, " + size + " deep" : size;
    }

    /** A size on a drawing [m]. */
    String size(Term term, double si) {
        return bare(printer.print(term.dimension(), si, DRAWN_TO));
    }

    /** A size that is planned, as it is said to a shop [m]; in the units that come first. */
    String planned(Term term, double si) {
        Figure planned = printer.print(term.dimension(), si, PLANNED_TO).first();
        return planned.value() + " " + planned.unit();
    }

    /** A limit, as stated, or worked out for this engine where its reference is known. */
    String limit(Bound bound, Term term, Function<Term, Optional<Measured>> figures) {
        if (bound.reference().isEmpty()) {
            return bound.text();
        }
        return bound.value(figures).map(si -> roughly(term, si)).orElse(bound.text());
    }

    private String roughly(Term term, double si) {
        PrintedFigures exact = printer.print(term.dimension(), si, Math.abs(si) * LIMIT_DOUBT);
        return bare(new PrintedFigures(shortened(exact.first()), exact.second().map(Words::shortened)));
    }

    private static Figure shortened(Figure figure) {
        BigDecimal number;
        try {
            number = new BigDecimal(figure.value());
        } catch (NumberFormatException isNoPlainNumber) {
            return figure;
        }
        BigDecimal cut = number.round(LIMIT_DIGITS).stripTrailingZeros();
        return new Figure((cut.scale() < 0 ? cut.setScale(0) : cut).toPlainString(), "", figure.unit());
    }

    private static String bare(PrintedFigures printed) {
        return bare(printed.first())
                + printed.second().map(f -> " (" + bare(f) + ")").orElse("");
    }

    private static String bare(Figure figure) {
        return new Figure(figure.value(), "", figure.unit()).text();
    }

    /** Money: whole hundredths of a currency. */
    static String money(long hundredths, String currency) {
        return (BigDecimal.valueOf(hundredths, 2).toPlainString() + " " + currency).strip();
    }

    static String price(OptionalLong hundredths, String currency) {
        return hundredths.isPresent() ? money(hundredths.getAsLong(), currency) : "no price said";
    }
}
