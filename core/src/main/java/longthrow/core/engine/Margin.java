package longthrow.core.engine;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Verdict;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import longthrow.core.term.Term;

/**
 * How far a figure stands from one limit. [SI]
 * @param limit               of this engine
 * @param distance            positive on the right side, zero on the limit itself, which is kept
 * @param standardUncertainty of the distance: what figure and limit share cancels
 * @param degreesOfFreedom    of it
 * @param probability         that the limit is kept
 */
record Margin(double limit, double distance, double standardUncertainty, double degreesOfFreedom, double probability) {
    /** A limit's own doubt under this share of the figure's changes the doubt of the distance by less than one in two hundred. */
    private static final double NEGLIGIBLE = 0.1;

    static Optional<Margin> of(
            Term term, Measured figure, Bound bound, boolean least, Function<Term, Optional<Measured>> figures) {
        Optional<BigDecimal> limit = bound.decimal(figures);
        if (figure.isUnknown() || limit.isEmpty()) {
            return Optional.empty();
        }
        double referenceDoubt = bound.reference()
                .flatMap(figures)
                .map(m -> bound.factor().doubleValue() * m.standardUncertainty())
                .orElse(0.0);
        double limitDoubt = Math.hypot(referenceDoubt, bound.spread() / Source.NORMAL_95);
        if (figure.standardUncertainty() == 0 && limitDoubt == 0) {
            return Optional.of(exact(Bound.asStated(figure.value(), term.dimension()), limit.get(), least));
        }
        boolean limitIsFirm =
                limitDoubt == 0 || (figure.isSampled() && limitDoubt < NEGLIGIBLE * figure.standardUncertainty());
        Measured difference = limitIsFirm ? figure : difference(term, figure, bound, figures);
        double against = limitIsFirm ? limit.get().doubleValue() : 0;
        double above = difference.value() - against;
        return Optional.of(new Margin(
                limit.get().doubleValue(),
                least ? above : -above,
                difference.standardUncertainty(),
                difference.degreesOfFreedom(),
                least ? difference.probabilityAtLeast(against) : difference.probabilityAtMost(against)));
    }

    private static Margin exact(BigDecimal figure, BigDecimal limit, boolean least) {
        BigDecimal distance = least ? figure.subtract(limit) : limit.subtract(figure);
        return new Margin(
                limit.doubleValue(),
                distance.doubleValue(),
                0,
                Double.POSITIVE_INFINITY,
                distance.signum() >= 0 ? 1 : 0);
    }

    private static Measured difference(
            Term term, Measured figure, Bound bound, Function<Term, Optional<Measured>> figures) {
        Formula above =
                Formula.of("above the limit", Expression.input(term.path()).minus(bound.expression()));
        Measured difference = Measured.through(
                above,
                path -> path.equals(term.path())
                        ? figure
                        : Term.at(path).flatMap(figures).orElseThrow());
        if (bound.spread() == 0) {
            return difference;
        }
        Source own = Source.at95("limit", Source.Kind.TEMPERATURE, "the limit at 20 °C", bound.spread());
        Map<Source, Double> contributions = new LinkedHashMap<>(difference.contributions());
        contributions.put(own, own.standardUncertainty());
        return Measured.withContributions(difference.value(), contributions);
    }

    /** 95 % half-width of the distance. */
    double expanded() {
        return standardUncertainty == 0
                ? 0
                : StudentT.factor(Measured.COVERAGE, degreesOfFreedom) * standardUncertainty;
    }

    /** By how much the figure must move for the limit to be surely kept; negative or zero when it is. */
    double toBeSure() {
        return standardUncertainty == 0
                ? -distance
                : StudentT.quantile(Verdict.SURE, degreesOfFreedom) * standardUncertainty - distance;
    }
}
