package longthrow.core.measurement;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Student's t with real degrees of freedom (JCGM 100:2008 annex G). Infinite degrees of freedom give the normal. */
public final class StudentT {
    /** Above this many degrees of freedom the normal differs by less than 1e-6 of the factor. */
    private static final double AS_GOOD_AS_NORMAL = 1e6;

    private static final NormalDistribution NORMAL = new NormalDistribution();
    /** Upper end of a 95 % interval, asked for far more often than any other. */
    private static final double USUAL = 0.5 + 0.95 / 2;

    private static final double USUAL_NORMAL = NORMAL.inverseCumulativeProbability(USUAL);

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
        if (degreesOfFreedom > AS_GOOD_AS_NORMAL) {
            return probability == USUAL ? USUAL_NORMAL : NORMAL.inverseCumulativeProbability(probability);
        }
        if (probability < 0.5) {
            return -quantile(1 - probability, degreesOfFreedom);
        }
        TDistribution t = new TDistribution(degreesOfFreedom);
        if (degreesOfFreedom < 2 || probability > 1 - 1e-8) {
            return t.inverseCumulativeProbability(probability);
        }
        double x = approximately(2 * (1 - probability), degreesOfFreedom);
        for (int k = 0; k < 4; k++) { // Newton; the guess is good to five digits, so two steps mend it
            double step = (t.cumulativeProbability(x) - probability) / t.density(x);
            x -= step;
            if (Math.abs(step) < 1e-7 * x) {
                break;
            }
        }
        return x;
    }

    /** Hill (1970), algorithm 396, Student's t-quantiles; from memory. Two-tail probability in, two to infinite degrees of freedom. */
    private static double approximately(double twoTail, double n) {
        double a = 1 / (n - 0.5);
        double b = 48 / (a * a);
        double c = ((20700 * a / b - 98) * a - 16) * a + 96.36;
        double d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt(a * Math.PI / 2) * n;
        double y = Math.pow(d * twoTail, 2 / n);
        if (y > 0.05 + a) {
            double x = -quantile(1 - twoTail / 2, Double.POSITIVE_INFINITY);
            y = x * x;
            if (n < 5) {
                c += 0.3 * (n - 4.5) * (x + 0.6);
            }
            c += (((0.05 * d * x - 5) * x - 7) * x - 2) * x + b;
            y = (((((0.4 * y + 6.3) * y + 36) * y + 94.5) / c - y - 3) / b + 1) * x;
            y = Math.expm1(a * y * y);
        } else {
            y = ((1 / (((n + 6) / (n * y) - 0.089 * d - 0.822) * (n + 2) * 3) + 0.5 / (n + 4)) * y - 1)
                            * (n + 1)
                            / (n + 2)
                    + 1 / y;
        }
        return Math.sqrt(n * y);
    }

    /** Probability that a t variable is at most x. */
    public static double atMost(double x, double degreesOfFreedom) {
        return degreesOfFreedom > AS_GOOD_AS_NORMAL
                ? NORMAL.cumulativeProbability(x)
                : new TDistribution(degreesOfFreedom).cumulativeProbability(x);
    }
}
