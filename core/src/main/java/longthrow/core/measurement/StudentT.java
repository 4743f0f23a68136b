package longthrow.core.measurement;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Student's t with real degrees of freedom (JCGM 100:2008 annex G). Infinite degrees of freedom give the normal. */
public final class StudentT {
    /** Above this many degrees of freedom the normal differs by less than 1e-6 of the factor. */
    private static final double AS_GOOD_AS_NORMAL = 1e6;

    private static final NormalDistribution NORMAL = new NormalDistribution();

    private StudentT() {}

    /**
     * Two-sided factor t_p.
     * @param probability      0 to 1, both excluded
     * @param degreesOfFreedom &gt; 0
     */
    public static double factor(double probability, double degreesOfFreedom) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("probability is " + probability + "; it must lie between 0 and 1");
        }
        return quantile(0.5 + probability / 2, degreesOfFreedom);
    }

    /** The value below which a t variable lies with this probability. */
    public static double quantile(double probability, double degreesOfFreedom) {
        return degreesOfFreedom > AS_GOOD_AS_NORMAL
                ? NORMAL.inverseCumulativeProbability(probability)
                : new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /** Probability that a t variable is at most x. */
    public static double atMost(double x, double degreesOfFreedom) {
        return degreesOfFreedom > AS_GOOD_AS_NORMAL
                ? NORMAL.cumulativeProbability(x)
                : new TDistribution(degreesOfFreedom).cumulativeProbability(x);
    }
}
