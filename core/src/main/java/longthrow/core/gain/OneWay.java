package longthrow.core.gain;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Analysis of variance in one way: do groups differ by more than what is within them?
 * @param between         sum of squares between the groups
 * @param betweenFreedom  groups less one
 * @param within          sum of squares within the groups
 * @param withinFreedom   figures less groups
 */
public record OneWay(double between, double betweenFreedom, double within, double withinFreedom) {
    /** Of groups of figures, two groups or more. The scale is that of the figures' differences from their common mean. */
    public static OneWay of(List<double[]> groups) {
        int n = groups.stream().mapToInt(g -> g.length).sum();
        double[] all = groups.stream().flatMapToDouble(java.util.Arrays::stream).toArray();
        double mean = Sample.mean(all);
        double between = 0;
        double within = 0;
        for (double[] group : groups) {
            Sample g =
                    Sample.of(java.util.Arrays.stream(group).map(x -> x - mean).toArray());
            between += group.length * g.mean() * g.mean();
            within += g.sumOfSquares();
        }
        return new OneWay(between, groups.size() - 1, within, n - groups.size());
    }

    /** Mean square between over mean square within. */
    public double f() {
        return between / betweenFreedom / (within / withinFreedom);
    }

    /** How often chance alone gives an F as large. */
    public double probability() {
        double f = f();
        return Double.isNaN(f)
                ? Double.NaN
                : Double.isInfinite(f)
                        ? 0
                        : 1 - new FDistribution(betweenFreedom, withinFreedom).cumulativeProbability(f);
    }

    /** Root of the mean square within. */
    public double residualDeviation() {
        return Math.sqrt(within / withinFreedom);
    }
}
