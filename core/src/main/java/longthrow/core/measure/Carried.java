package longthrow.core.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/** Doubt carried through sums that are no {@link longthrow.core.formula.Formula}: shared sources keep their signs. */
public final class Carried {
    /** Step of the difference quotient, as a share of the doubt; the error of the quotient goes with its square. */
    private static final double STEP = 0.01;

    private Carried() {}

    /** a times one plus b times other, plus a constant. */
    static Measured sum(double a, Measured one, double b, Measured other, double constant) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        add(errors, one, a);
        add(errors, other, b);
        return Measured.withContributions(a * one.value() + b * other.value() + constant, errors);
    }

    static Measured times(double factor, Measured figure) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        add(errors, figure, factor);
        return Measured.withContributions(factor * figure.value(), errors);
    }

    static void add(Map<Source, Double> to, Measured figure, double factor) {
        figure.contributions().forEach((source, c) -> to.merge(source, factor * c, Double::sum));
    }

    /** Through any smooth function, by central differences (JCGM 100:2008 5.1.3 note 2). */
    public static Measured through(ToDoubleFunction<double[]> function, List<Measured> inputs) {
        double[] x = inputs.stream().mapToDouble(Measured::value).toArray();
        Map<Source, Double> errors = new LinkedHashMap<>();
        for (int k = 0; k < x.length; k++) {
            double step = STEP * inputs.get(k).standardUncertainty();
            if (step > 0) {
                double[] up = x.clone();
                double[] down = x.clone();
                up[k] += step;
                down[k] -= step;
                double slope = (function.applyAsDouble(up) - function.applyAsDouble(down)) / (2 * step);
                add(errors, inputs.get(k), slope);
            }
        }
        return Measured.withContributions(function.applyAsDouble(x), errors);
    }
}
