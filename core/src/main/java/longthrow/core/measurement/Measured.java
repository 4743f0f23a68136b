package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import longthrow.core.formula.Formula;
import longthrow.core.formula.Interval;
import org.jspecify.annotations.Nullable;

/**
 * A figure that owns its doubt: a value and the signed contribution of each {@link Source} to its error [unit of the value].
 * Because the sources are kept, doubt shared by two figures is not counted twice when they meet again in a formula.
 * <p>The 95 % interval is value &plusmn; t u at the Welch-Satterthwaite degrees of freedom (JCGM 100:2008 G.4) while normal errors that are well known
 * own most of the doubt; where a rectangle or the scatter of a few readings does, it follows the shape of the errors ({@link ErrorShape}), and where the
 * formula bends, its pieces ({@link Bend}). Tested against simulated truth: docs/decisions/0006-intervals.md.
 */
public final class Measured {
    /** Coverage probability of every interval that is printed. */
    public static final double COVERAGE = 0.95;
    /** Share of the variance that unknown sources may hold before the figure itself counts as unknown. */
    private static final double UNKNOWN_SHARE = 1e-4;

    private final double value;
    private final Map<Source, Double> contributions;
    private final @Nullable Supplier<double[]> samples;
    /** Ends that no sample worth counting lies beyond; null where none are known. */
    private final @Nullable Supplier<Interval> ends;

    private final @Nullable Bend bend;
    // quantiles of the samples, drawn when first asked for; two threads would draw the same
    private double @Nullable [] quantiles;
    private final double standardUncertainty;
    private @Nullable ErrorShape shape; // made when first asked for; two threads would make the same
    private double halfWidth = Double.NaN; // found when first asked for; two threads would find the same

    private Measured(
            double value,
            Map<Source, Double> contributions,
            @Nullable Supplier<double[]> samples,
            @Nullable Supplier<Interval> ends,
            @Nullable Bend bend) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a measured value must be a finite number, not " + value);
        }
        this.value = value;
        this.contributions = contributions;
        this.samples = samples;
        this.ends = ends;
        this.bend = bend;
        double variance = 0;
        for (double c : contributions.values()) {
            variance += c * c;
        }
        this.standardUncertainty = Math.sqrt(variance);
    }

    /** A figure without doubt. */
    public static Measured exact(double value) {
        return new Measured(value, Map.of(), null, null, null);
    }

    /** A figure with sources that act on it directly: each contributes its own standard uncertainty. */
    public static Measured of(double value, Collection<Source> sources) {
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (Source source : sources) {
            contributions.merge(source, source.standardUncertainty(), Double::sum);
        }
        return new Measured(value, contributions, null, null, null);
    }

    /** A figure with signed contributions [unit of the value]. */
    public static Measured withContributions(double value, Map<Source, Double> contributions) {
        return new Measured(value, new LinkedHashMap<>(contributions), null, null, null);
    }

    /**
     * Doubt carried through a formula by its exact gradient (JCGM 100:2008 5.1.2), shared sources added with their signs.
     * @param inputs the measured figure for each input name of the formula
     */
    public static Measured through(Formula formula, Function<String, Measured> inputs) {
        List<String> names = formula.inputs();
        double[] x = new double[names.size()];
        Measured[] given = new Measured[names.size()];
        for (int i = 0; i < x.length; i++) {
            given[i] = inputs.apply(names.get(i));
            x[i] = given[i].value;
        }
        double[] slope = new double[x.length];
        double y = formula.gradient(x, slope);
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int i = 0; i < x.length; i++) {
            double factor = slope[i];
            given[i].contributions.forEach((source, c) -> contributions.merge(source, factor * c, Double::sum));
        }
        return new Measured(y, contributions, null, null, null);
    }

    /**
     * The same figure with the shape of its doubt known from samples.
     * @param ascendingQuantiles at even steps of probability
     * @param ends               beyond which practically none of them lies: a limit out there needs no samples
     */
    Measured shapedBy(Supplier<double[]> ascendingQuantiles, Supplier<Interval> ends) {
        return new Measured(value, contributions, ascendingQuantiles, ends, bend);
    }

    /** The same figure with the pieces it bends between, which then give its intervals. */
    Measured bending(Bend pieces) {
        return new Measured(value, contributions, samples, ends, pieces);
    }

    public double value() {
        return value;
    }

    /** Combined standard uncertainty, first order. */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /** Effective degrees of freedom after Welch and Satterthwaite (JCGM 100:2008 eq. G.2b); infinite without doubt. */
    public double degreesOfFreedom() {
        return shape().degreesOfFreedom();
    }

    /** Whether the interval comes from samples because the formula bends. */
    public boolean isSampled() {
        return samples != null;
    }

    /** 95 % expanded uncertainty; half the width of the interval. */
    public double expanded() {
        return 0.5 * (high() - low());
    }

    /** Lower end of the 95 % interval. */
    public double low() {
        if (bend != null) {
            return bend.interval(COVERAGE).lo();
        }
        return samples != null ? quantileOfSamples(0.5 - COVERAGE / 2) : value - halfWidth();
    }

    /** Upper end of the 95 % interval. */
    public double high() {
        if (bend != null) {
            return bend.interval(COVERAGE).hi();
        }
        return samples != null ? quantileOfSamples(0.5 + COVERAGE / 2) : value + halfWidth();
    }

    /**
     * Half the width of the interval of another coverage, by the same rule.
     * @param probability 0 to 1, both excluded
     */
    public double expanded(double probability) {
        if (bend != null) {
            Interval interval = bend.interval(probability);
            return 0.5 * (interval.hi() - interval.lo());
        }
        if (samples != null) {
            return 0.5 * (quantileOfSamples(0.5 + probability / 2) - quantileOfSamples(0.5 - probability / 2));
        }
        return shape().quantile(0.5 + probability / 2);
    }

    /**
     * As the Guide tabulates it: t u with the effective degrees of freedom cut to the next lower whole number (JCGM 100:2008 G.4.1). Below
     * one they are kept as they are, since nothing whole is left.
     * @param probability 0 to 1, both excluded
     */
    public double expandedTruncated(double probability) {
        double freedom = degreesOfFreedom();
        return expandedWith(probability, freedom < 1 ? freedom : Math.floor(freedom));
    }

    private double expandedWith(double probability, double freedom) {
        return standardUncertainty == 0 ? 0 : StudentT.factor(probability, freedom) * standardUncertainty;
    }

    /** First-order covariance with another figure [product of both units]: what their shared sources do to both (JCGM 100:2008 F.1.2.3). */
    public double covarianceWith(Measured other) {
        double sum = 0;
        for (Map.Entry<Source, Double> entry : contributions.entrySet()) {
            Double there = other.contributions.get(entry.getKey());
            if (there != null) {
                sum += entry.getValue() * there;
            }
        }
        return sum;
    }

    /** Correlation coefficient with another figure, -1 to 1; 0 where either has no doubt. */
    public double correlationWith(Measured other) {
        double scale = standardUncertainty * other.standardUncertainty;
        return scale == 0 ? 0 : Math.max(-1, Math.min(1, covarianceWith(other) / scale));
    }

    /** The 95 % interval. */
    public Interval interval() {
        return new Interval(low(), high());
    }

    private ErrorShape shape() {
        ErrorShape made = shape;
        if (made == null) {
            made = new ErrorShape(contributions);
            shape = made;
        }
        return made;
    }

    private double halfWidth() {
        double width = halfWidth;
        if (Double.isNaN(width)) {
            width = shape().quantile(0.5 + COVERAGE / 2);
            halfWidth = width;
        }
        return width;
    }

    private double quantileOfSamples(double probability) {
        double[] q = quantiles();
        double at = probability * (q.length - 1);
        int i = Math.min((int) at, q.length - 2);
        return q[i] + (at - i) * (q[i + 1] - q[i]);
    }

    private double[] quantiles() {
        double[] drawn = quantiles;
        if (drawn == null) {
            drawn = java.util.Objects.requireNonNull(samples).get();
            quantiles = drawn;
        }
        return drawn;
    }

    /** Half the width of the interval of a figure that does not bend. */
    double halfWidth(double probability) {
        return shape().quantile(0.5 + probability / 2);
    }

    /** Probability that the true value is at most the limit, limit included. Without doubt it is 0 or 1. */
    public double probabilityAtMost(double limit) {
        if (standardUncertainty == 0) {
            return value <= limit ? 1 : 0;
        }
        if (samples == null) {
            return shape().atMost(limit - value);
        }
        if (quantiles == null && ends != null) {
            Interval all = ends.get();
            if (limit >= all.hi() || limit < all.lo()) {
                return limit >= all.hi() ? 1 : 0;
            }
        }
        double[] drawn = quantiles();
        int low = 0;
        int high = drawn.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (drawn[middle] <= limit) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return Math.min(1, low / (double) drawn.length);
    }

    /** Probability that the true value is at least the limit, limit included. */
    public double probabilityAtLeast(double limit) {
        return standardUncertainty == 0 ? (value >= limit ? 1 : 0) : 1 - probabilityAtMost(limit);
    }

    /** Signed contribution of each source [unit of the value]. */
    public Map<Source, Double> contributions() {
        return java.util.Collections.unmodifiableMap(contributions);
    }

    /** Whether a source of no knowledge holds a share of the doubt: then the figure must be printed as unknown. */
    public boolean isUnknown() {
        double unknown = 0;
        for (Map.Entry<Source, Double> entry : contributions.entrySet()) {
            if (entry.getKey().kind() == Source.Kind.UNKNOWN) {
                unknown += entry.getValue() * entry.getValue();
            }
        }
        return unknown > UNKNOWN_SHARE * standardUncertainty * standardUncertainty;
    }

    /** Share of each owner in the variance, largest first; owners are the labels of the sources. Sums to 1 when there is doubt. */
    public List<Share> shares() {
        Map<String, Double> byOwner = new LinkedHashMap<>();
        double variance = standardUncertainty * standardUncertainty;
        if (variance == 0) {
            return List.of();
        }
        contributions.forEach((source, c) -> byOwner.merge(source.label(), c * c / variance, Double::sum));
        List<Share> shares = new ArrayList<>();
        byOwner.forEach((owner, share) -> shares.add(new Share(owner, share)));
        shares.sort(Comparator.comparingDouble(Share::share).reversed());
        return shares;
    }

    /**
     * A share of the doubt.
     * @param owner whose doubt
     * @param share of the variance, 0 to 1
     */
    public record Share(String owner, double share) {}

    @Override
    public String toString() {
        return value + " ± " + expanded();
    }
}
