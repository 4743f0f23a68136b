package longthrow.core.power;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import longthrow.core.gas.PublishedValue;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/** A figure that is worked out from others by a formula, with the doubt of all of them. */
final class Worked {
    /** Step of a slope, in standard uncertainties. */
    private static final double STEP = 1e-3;

    private Worked() {}

    /** By slopes at the values: doubt that two of them share is not counted twice. */
    static Measured of(List<Measured> from, ToDoubleFunction<double[]> formula) {
        double[] at = from.stream().mapToDouble(Measured::value).toArray();
        double value = formula.applyAsDouble(at);
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int i = 0; i < at.length; i++) {
            double step = STEP * from.get(i).standardUncertainty();
            if (step > 0) {
                double[] moved = at.clone();
                moved[i] += step;
                double slope = (formula.applyAsDouble(moved) - value) / step;
                from.get(i).contributions().forEach((source, c) -> contributions.merge(source, slope * c, Double::sum));
            }
        }
        return Measured.withContributions(value, contributions);
    }

    /** Somewhere in a range, all of it alike. */
    static Measured within(String id, String label, double low, double high) {
        return Measured.of(
                0.5 * (low + high), List.of(Source.rectangular(id, Source.Kind.ASSUMED, label, 0.5 * (high - low))));
    }

    /** Somewhere in the range that is published for it. */
    static Measured within(String id, String label, PublishedValue published) {
        return within(id, label, published.low(), published.high());
    }
}
