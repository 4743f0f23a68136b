package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How the error of a figure is spread, from the contributions of its sources: symmetric about the figure, given by its quantiles
 * (docs/decisions/0006-intervals.md). Three sorts of contribution are told apart:
 * <ul>
 * <li>scatter of a few readings, its size known with fewer than {@link #FEW} degrees of freedom;
 * <li>all other normal errors, known or with the many degrees of freedom of a pooled table;
 * <li>the one or two rectangles that own most.
 * </ul>
 * The spread is t at the Welch-Satterthwaite degrees of freedom (JCGM 100:2008 G.4) while the well-known errors own most of the variance, and the
 * convolution with a scaled t (JCGM 101:2008 6.4.9) when the scatter of a few readings owns most; between, it passes smoothly from one to the other.
 * Each alone misses: Welch-Satterthwaite covers down to 92 % with two degrees of freedom and a small known error beside, the convolution up to 97.6 %.
 */
final class ErrorShape {
    /** Own scatter of up to ten readings counts as few; the pooled table's {@code ReadingKind.POOLED_DEGREES_OF_FREEDOM} does not. */
    private static final double FEW = 10;
    /** A rectangle with a smaller share of the variance is as good as normal. */
    private static final double SMALL_SHARE = 0.02;
    /** Ratio of the variances, scatter of few readings to all the rest, at which the passage from one rule to the other is half done. */
    private static final double PASSAGE_AT = 0.65;
    /** How steep the passage is. Both by computed coverage of one scatter beside one known error, see the decision record. */
    private static final int PASSAGE_POWER = 6;
    /** A scatter of few readings with less than this share of the largest one's variance counts with the well-known errors. */
    private static final double MINOR = 0.3;
    /** The fourth power of a deviation estimated with nu degrees of freedom is too large by (nu + 2) / nu on average; this takes it out. */
    private static final double FOURTH_POWER = 2;

    private final double few; // standard uncertainty of the scatter of a few readings
    private final double fewFreedom;
    private final double steady; // of all other errors but rectangles, as the scale of one t
    private final double steadyFreedom;
    private final double wide; // half-width of the larger rectangle, 0: none
    private final double narrow; // half-width of the smaller one, 0: none
    private final double standard; // of all together
    private final double freedom;

    ErrorShape(Map<Source, Double> contributions) {
        Map<String, double[]> fewEstimates = new HashMap<>(); // variance, degrees of freedom
        Map<String, double[]> otherEstimates = new HashMap<>();
        List<Double> rectangles = new ArrayList<>();
        double variance = 0;
        double known = 0;
        for (Map.Entry<Source, Double> entry : contributions.entrySet()) {
            Source source = entry.getKey();
            double c2 = entry.getValue() * entry.getValue();
            if (c2 == 0) {
                continue;
            }
            variance += c2;
            if (source.kind().isRectangular() && Double.isInfinite(source.degreesOfFreedom())) {
                rectangles.add(c2);
            } else if (Double.isInfinite(source.degreesOfFreedom())) {
                known += c2;
            } else {
                double[] estimate = (source.degreesOfFreedom() < FEW ? fewEstimates : otherEstimates)
                        .computeIfAbsent(
                                source.ensemble().isEmpty() ? source.id() : source.ensemble(), k -> new double[2]);
                estimate[0] += c2;
                estimate[1] = Math.max(estimate[1], source.degreesOfFreedom());
            }
        }
        List<double[]> all = new ArrayList<>(fewEstimates.values());
        all.addAll(otherEstimates.values());
        double fourth = 0;
        for (double[] e : all) {
            fourth += e[0] * e[0] / e[1];
        }
        freedom = fourth > 0 ? variance * variance / fourth : Double.POSITIVE_INFINITY;
        double largest =
                fewEstimates.values().stream().mapToDouble(e -> e[0]).max().orElse(0);
        for (double[] e : fewEstimates.values()) {
            known += e[0] < MINOR * largest ? e[0] : 0;
        }
        fewEstimates.values().removeIf(e -> e[0] < MINOR * largest);
        rectangles.sort((a, b) -> Double.compare(b, a));
        double[] half = new double[2];
        for (int i = 0; i < rectangles.size(); i++) {
            double c2 = rectangles.get(i);
            if (i < half.length && c2 > SMALL_SHARE * variance) {
                half[i] = Math.sqrt(3 * c2);
            } else {
                known += c2;
            }
        }
        wide = half[0];
        narrow = half[1];
        double[] a = together(fewEstimates.values(), FOURTH_POWER);
        few = Math.sqrt(a[0]);
        fewFreedom = a[1];
        double[] b = matched(otherEstimates.values(), known);
        steady = b[0];
        steadyFreedom = b[1];
        standard = Math.sqrt(variance);
    }

    /**
     * The one t whose variance and kurtosis are those of the sum of scaled t's, one for each estimate, and a known normal error: scale and degrees of
     * freedom. A t of nu degrees of freedom has variance nu / (nu - 2) and excess kurtosis 6 / (nu - 4). Exact for one estimate alone.
     */
    private static double[] matched(Collection<double[]> estimates, double known) {
        double variance = known;
        double excess = 0;
        for (double[] e : estimates) {
            double v = e[0] * e[1] / (e[1] - 2);
            variance += v;
            excess += v * v * 6 / (e[1] - 4);
        }
        if (excess == 0) {
            return new double[] {Math.sqrt(variance), Double.POSITIVE_INFINITY};
        }
        double freedom = 4 + 6 * variance * variance / excess;
        return new double[] {Math.sqrt(variance * (freedom - 2) / freedom), freedom};
    }

    /** Variance and effective degrees of freedom of several estimates. */
    private static double[] together(Collection<double[]> estimates, double without) {
        double variance = 0;
        double fourth = 0;
        for (double[] e : estimates) {
            variance += e[0];
            fourth += e[0] * e[0] / (e[1] + without);
        }
        return new double[] {variance, fourth > 0 ? variance * variance / fourth - without : Double.POSITIVE_INFINITY};
    }

    double standardUncertainty() {
        return standard;
    }

    double degreesOfFreedom() {
        return freedom;
    }

    /** How far the truth lies above the figure at most, with this probability. */
    double quantile(double probability) {
        if (standard == 0 || probability == 0.5) {
            return 0;
        }
        if (probability < 0.5) {
            return -quantile(1 - probability);
        }
        double z = StudentT.quantile(probability, Double.POSITIVE_INFINITY);
        double normal =
                steady * StudentT.quantile(probability, steadyFreedom) / z; // the normal error with the same quantile
        double rest2 = normal * normal + (wide * wide + narrow * narrow) / 3;
        double few2 = few * few;
        double total = Math.sqrt(few2 + rest2);
        double welch = total;
        if (wide > 0) {
            double sigma = Math.sqrt(few2 + normal * normal);
            welch = solve(probability, z * total, x -> spread(x, sigma)) / z;
        }
        if (few == 0) {
            return welch * z;
        }
        double part = few2 / (total * total);
        welch *= StudentT.quantile(probability, fewFreedom / (part * part));
        if (rest2 <= 1e-12 * few2) {
            return welch;
        }
        double ratio = few2 / rest2;
        double power = Math.pow(ratio / PASSAGE_AT, PASSAGE_POWER);
        double share = ratio > 10 ? 1 : power / (1 + power);
        return share < 1e-3
                ? welch
                : Math.pow(welch, 1 - share) * Math.pow(convolved(probability, normal, welch), share);
    }

    /** Probability that the truth lies above the figure by this much at most. */
    double atMost(double distance) {
        if (distance < 0) {
            return 1 - atMost(-distance);
        }
        double low = 0.5;
        double high = 1;
        for (int k = 0; k < 40; k++) {
            double middle = 0.5 * (low + high);
            if (middle >= 1) {
                break;
            }
            if (quantile(middle) <= distance) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Quantile of a scaled t for the scatter of a few readings plus all the rest. */
    private double convolved(double probability, double normal, double start) {
        double deviation = 1 / Math.sqrt(2 * fewFreedom); // of a root mean square about 1
        double from = Math.max(0, 1 - 7 * deviation);
        double to = 1 + 7 * deviation;
        double[] sigma = new double[NODES.length];
        double[] weight = new double[NODES.length];
        double sum = 0;
        for (int i = 0; i < NODES.length; i++) {
            double v = from + (to - from) * NODES[i]; // root of chi-squared per degree of freedom
            weight[i] = WEIGHTS[i] * Math.exp((fewFreedom - 1) * Math.log(v) - 0.5 * fewFreedom * (v * v - 1));
            sum += weight[i];
            sigma[i] = Math.sqrt(few * few / (v * v) + normal * normal);
        }
        double total = sum;
        return solve(probability, start, x -> {
            double p = 0;
            for (int i = 0; i < NODES.length; i++) {
                if (weight[i] > 1e-12 * total) {
                    p += weight[i] * spread(x, sigma[i]);
                }
            }
            return p / total;
        });
    }

    /** Probability that a normal error of this deviation and the rectangles add up to at most x. */
    private double spread(double x, double sigma) {
        if (wide == 0) {
            return Normal.atMost(x / sigma);
        }
        double s = Math.max(sigma, 1e-6 * wide);
        if (narrow == 0) {
            return (once(x + wide, s) - once(x - wide, s)) / (2 * wide);
        }
        return (twice(x + wide + narrow, s)
                        - twice(x + wide - narrow, s)
                        - twice(x - wide + narrow, s)
                        + twice(x - wide - narrow, s))
                / (4 * wide * narrow);
    }

    /** Integral of the normal distribution function up to x. */
    private static double once(double x, double sigma) {
        double z = x / sigma;
        return x * Normal.atMost(z) + sigma * Normal.density(z);
    }

    /** Integral of that. */
    private static double twice(double x, double sigma) {
        double z = x / sigma;
        return 0.5 * ((x * x + sigma * sigma) * Normal.atMost(z) + x * sigma * Normal.density(z));
    }

    /** Where a rising function reaches the probability, by secants kept inside a bracket. */
    private static double solve(double probability, double start, java.util.function.DoubleUnaryOperator distribution) {
        double low = 0;
        double fLow = 0.5 - probability;
        double high = start;
        double fHigh = distribution.applyAsDouble(high) - probability;
        while (fHigh < 0) {
            low = high;
            fLow = fHigh;
            high *= 1.25;
            fHigh = distribution.applyAsDouble(high) - probability;
        }
        int side = 0;
        for (int k = 0; k < 60 && high - low > 1e-9 * high; k++) {
            double x = (low * fHigh - high * fLow) / (fHigh - fLow); // false position, Illinois
            double f = distribution.applyAsDouble(x) - probability;
            if (Math.abs(f) < 1e-9 * (1 - probability)) {
                return x;
            }
            if (f < 0) {
                low = x;
                fLow = f;
                fHigh *= side < 0 ? 0.5 : 1;
                side = -1;
            } else {
                high = x;
                fHigh = f;
                fLow *= side > 0 ? 0.5 : 1;
                side = 1;
            }
        }
        return 0.5 * (low + high);
    }

    private static final double[] NODES = new double[24];
    private static final double[] WEIGHTS = new double[24];

    static { // Gauss-Legendre on 0 to 1, roots by Newton from the cosine guess (Abramowitz and Stegun 25.4.29 and
        // 22.16.6)
        int n = NODES.length;
        for (int i = 0; i < n; i++) {
            double x = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
            double slope = 0;
            for (int k = 0; k < 8; k++) {
                double p = 1;
                double before = 0;
                for (int j = 1; j <= n; j++) {
                    double next = ((2 * j - 1) * x * p - (j - 1) * before) / j;
                    before = p;
                    p = next;
                }
                slope = n * (x * p - before) / (x * x - 1);
                x -= p / slope;
            }
            NODES[i] = 0.5 * (1 + x);
            WEIGHTS[i] = 1 / ((1 - x * x) * slope * slope);
        }
    }
}
