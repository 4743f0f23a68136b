package longthrow.workshop.draw;

import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * The figures of an answer as a drawing needs them: a value to draw by, a doubt to hatch, and the words beside it.
 * @param answer where they come from
 * @param units  which unit is written
 */
record AnswerFigures(Answer answer, UnitSystem units) {
    /** Said of a figure that nobody gave. */
    static final String UNKNOWN = "not known";

    private static final String DISPUTED = ", in dispute";

    /** Value [SI]; none where the answer has none. */
    Optional<Double> value(Term term) {
        return answer.value(term).map(r -> r.figure().value());
    }

    /** Half width of the 95 % interval [SI]; 0 where it is exact, not known or unbounded. */
    double doubt(Term term) {
        double half = answer.value(term)
                .filter(r -> !r.figure().isUnknown())
                .map(r -> r.figure().expanded())
                .orElse(0.0);
        return Double.isFinite(half) ? half : 0;
    }

    /** The figure with its ± and unit; {@link #UNKNOWN} where there is none. */
    String text(Term term) {
        return answer.value(term).map(this::text).orElse(UNKNOWN);
    }

    /** Whether readings behind it disagree. */
    boolean isDisputed(Term term) {
        return answer.value(term).filter(Result::contradicted).isPresent();
    }

    /** A name, and behind it that the figure is in dispute where it is. */
    String named(Term term, String name) {
        return name + (isDisputed(term) ? DISPUTED : "");
    }

    /** Name and figure in one breath. */
    String said(Term term) {
        return named(term, term.label()) + " " + text(term);
    }

    private String text(Result result) {
        FigurePrinter printer = new FigurePrinter(units);
        Measured figure = result.figure();
        PrintedFigures printed = figure.isUnknown()
                ? printer.printDoubtUnknown(result.term().dimension(), figure.value())
                : printer.print(result.term().dimension(), figure.value(), figure.expanded());
        return printed.first().text();
    }

    /** Title of a drawing of this answer, which says when the engine is invented. */
    String titled(String what) {
        return what + ": " + answer.engine() + (answer.invented() ? " (invented)" : "");
    }
}
