package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.formula.Formula;
import org.jspecify.annotations.Nullable;

/**
 * The terms of next order that the law of propagation leaves out (JCGM 100:2008, note to 5.1.2): for each pair of sources, half the squared
 * second derivative and first times third derivative. They tell how far a formula bends within the doubt of its inputs.
 *
 * <p>Holds for independent sources with symmetric, about normal errors; the fourth moment of other laws is not asked for. Derivatives are
 * symmetric differences of the exact gradient, {@value #STEP} standard uncertainties to either side; not to be used across a kink.
 */
public final class SecondOrder {
    /**
     * Share of a standard uncertainty. Differences twice taken lose four digits of a double to rounding; curvature of higher order spoils
     * them by about one part in 1e4 of its own size.
     */
    private static final double STEP = 0.01;

    private final double firstOrder;
    private final List<Term> terms;

    private SecondOrder(double firstOrder, List<Term> terms) {
        this.firstOrder = firstOrder;
        this.terms = List.copyOf(terms);
    }

    /**
     * What two sources (or one with itself) add to the variance.
     * @param variance [unit of the result, squared]; may be negative where the third derivative works against the first
     */
    public record Term(Source first, Source second, double variance) {}

    /**
     * The terms of a formula at its inputs.
     * @param inputs the measured figure for each input name of the formula
     */
    public static SecondOrder of(Formula formula, Function<String, Measured> inputs) {
        List<Measured> given = formula.inputs().stream().map(inputs).toList();
        Set<Source> all = new LinkedHashSet<>();
        given.forEach(figure -> all.addAll(figure.contributions().keySet()));
        List<Source> sources = List.copyOf(all);
        double[][] reach = reach(given, sources);
        int n = sources.size();
        double[] slope = slopes(formula, given, reach, null, 0);
        double[][] bend = new double[n][n]; // bend[j][i]: second derivative by sources j and i
        double[][] third = new double[n][n]; // third[j][i]: third derivative, twice by source j, once by i
        for (int j = 0; j < n; j++) {
            double[] above = slopes(formula, given, reach, reach[j], STEP);
            double[] below = slopes(formula, given, reach, reach[j], -STEP);
            for (int i = 0; i < n; i++) {
                bend[j][i] = (above[i] - below[i]) / (2 * STEP);
                third[j][i] = (above[i] - 2 * slope[i] + below[i]) / (STEP * STEP);
            }
        }
        double firstOrder = 0;
        List<Term> terms = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            firstOrder += slope[i] * slope[i];
            terms.add(new Term(sources.get(i), sources.get(i), 0.5 * bend[i][i] * bend[i][i] + slope[i] * third[i][i]));
            for (int j = 0; j < i; j++) {
                double product = bend[i][j] * bend[j][i] + slope[i] * third[j][i] + slope[j] * third[i][j];
                terms.add(new Term(sources.get(j), sources.get(i), product));
            }
        }
        return new SecondOrder(firstOrder, terms);
    }

    /** reach[source][input]: how far one standard uncertainty of the source moves the input. */
    private static double[][] reach(List<Measured> given, List<Source> sources) {
        double[][] reach = new double[sources.size()][given.size()];
        for (int j = 0; j < reach.length; j++) {
            for (int i = 0; i < given.size(); i++) {
                reach[j][i] = given.get(i).contributions().getOrDefault(sources.get(j), 0.0);
            }
        }
        return reach;
    }

    /** Derivatives by the sources, each in units of its standard uncertainty, at a place moved along one of them. */
    private static double[] slopes(
            Formula formula, List<Measured> given, double[][] reach, double @Nullable [] along, double step) {
        double[] x = new double[given.size()];
        for (int i = 0; i < x.length; i++) {
            x[i] = given.get(i).value() + (along == null ? 0 : step * along[i]);
        }
        double[] gradient = new double[x.length];
        formula.gradient(x, gradient);
        double[] slopes = new double[reach.length];
        for (int j = 0; j < slopes.length; j++) {
            for (int i = 0; i < x.length; i++) {
                slopes[j] += gradient[i] * reach[j][i];
            }
        }
        return slopes;
    }

    /** Each pair of sources once, with what it adds. */
    public List<Term> terms() {
        return terms;
    }

    /** What the terms add to the variance of the first order [unit squared]. */
    public double added() {
        return terms.stream().mapToDouble(Term::variance).sum();
    }

    /** First and second order together [unit squared]; negative where the series does not hold. */
    public double variance() {
        return firstOrder + added();
    }

    /**
     * Standard uncertainty with the terms of second order.
     * @throws IllegalStateException where they outweigh the first order with the wrong sign: the formula bends too much for a series
     */
    public double standardUncertainty() {
        double variance = variance();
        if (variance < 0) {
            throw new IllegalStateException("terms of second order make the variance " + variance
                    + "; the formula bends too much within its doubt for a series, use trials instead");
        }
        return Math.sqrt(variance);
    }
}
