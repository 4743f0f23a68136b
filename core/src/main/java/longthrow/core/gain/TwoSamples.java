package longthrow.core.gain;

import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;

/**
 * A difference of means with its t.
 * @param difference         first less second
 * @param standardError      of the difference
 * @param t                  difference over its standard error
 * @param degreesOfFreedom   of the standard error
 * @param probability        two-sided: how often chance alone gives as much
 */
public record TwoSamples(
        double difference, double standardError, double t, double degreesOfFreedom, double probability) {
    /** Scatters not taken to be alike (B. L. Welch, Biometrika 34 (1947) 28). Two or more of each. */
    public static TwoSamples welch(double[] first, double[] second) {
        Sample a = Sample.of(first);
        Sample b = Sample.of(second);
        double va = a.variance() / a.count();
        double vb = b.variance() / b.count();
        double freedom = (va + vb) * (va + vb) / (va * va / (a.count() - 1) + vb * vb / (b.count() - 1));
        return of(a.mean() - b.mean(), Math.sqrt(va + vb), freedom);
    }

    /** Pairs in order (Student, 1908). Two or more. */
    public static TwoSamples paired(double[] first, double[] second) {
        if (first.length != second.length) {
            throw new IllegalArgumentException("pairs of " + first.length + " and " + second.length
                    + " figures; give as many of one as of the other");
        }
        double[] differences = new double[first.length];
        for (int i = 0; i < first.length; i++) {
            differences[i] = first[i] - second[i];
        }
        Sample d = Sample.of(differences);
        return of(d.mean(), d.standardDeviation() / Math.sqrt(d.count()), d.count() - 1);
    }

    static TwoSamples of(double difference, double standardError, double degreesOfFreedom) {
        double t = difference / standardError;
        return new TwoSamples(difference, standardError, t, degreesOfFreedom, twoSided(t, degreesOfFreedom));
    }

    static double twoSided(double t, double degreesOfFreedom) {
        return Double.isNaN(t) ? Double.NaN : 2 * StudentT.atMost(-Math.abs(t), degreesOfFreedom);
    }

    /** Half of the 95 % interval. */
    public double halfWidth() {
        return StudentT.factor(Measured.COVERAGE, degreesOfFreedom) * standardError;
    }
}
