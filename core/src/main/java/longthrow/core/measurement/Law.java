package longthrow.core.measurement;

import longthrow.core.formula.SampleSource;

/** How the possible values of a quantity are spread (JCGM 101:2008 6.4). Values in the unit of the quantity. */
public sealed interface Law {
    /** Expected value. */
    double mean();

    /** Standard deviation. */
    double standardDeviation();

    /** Independent draws into out[0] to out[count - 1]. */
    void fill(SampleSource random, double[] out, int count);

    /**
     * Normal (6.4.7).
     * @param standardDeviation &ge; 0
     */
    record Normal(double mean, double standardDeviation) implements Law {
        public Normal {
            finite("mean", mean);
            notNegative("standard deviation", standardDeviation);
        }

        @Override
        public void fill(SampleSource random, double[] out, int count) {
            random.fillNormal(out, 0, count, mean, standardDeviation);
        }
    }

    /** Evenly between two ends (6.4.2). */
    record Rectangular(double lo, double hi) implements Law {
        public Rectangular {
            ordered(lo, hi);
        }

        @Override
        public double mean() {
            return lo / 2 + hi / 2;
        }

        @Override
        public double standardDeviation() {
            return (hi - lo) / Math.sqrt(12);
        }

        @Override
        public void fill(SampleSource random, double[] out, int count) {
            random.fillUniform(out, 0, count, lo, hi);
        }
    }

    /** Swinging like a sine wave between two ends (6.4.6). */
    record ArcSine(double lo, double hi) implements Law {
        public ArcSine {
            ordered(lo, hi);
        }

        @Override
        public double mean() {
            return lo / 2 + hi / 2;
        }

        @Override
        public double standardDeviation() {
            return (hi - lo) / Math.sqrt(8);
        }

        @Override
        public void fill(SampleSource random, double[] out, int count) {
            random.fillArcSine(out, 0, count, lo, hi);
        }
    }

    /**
     * Student's t, moved and stretched (6.4.9): the mean of a few readings.
     * @param degreesOfFreedom &gt; 0, finite
     * @param scale            standard uncertainty of the mean in the sense of JCGM 100, &ge; 0; less than the standard deviation
     */
    record ScaledT(double degreesOfFreedom, double centre, double scale) implements Law {
        public ScaledT {
            if (!(degreesOfFreedom > 0) || Double.isInfinite(degreesOfFreedom)) {
                throw new IllegalArgumentException("degrees of freedom of a law are " + degreesOfFreedom
                        + "; they must be finite and above 0, use a normal law for infinitely many");
            }
            finite("centre", centre);
            notNegative("scale", scale);
        }

        /** The centre; not a number with one degree of freedom or less, where there is no expected value. */
        @Override
        public double mean() {
            return degreesOfFreedom > 1 ? centre : Double.NaN;
        }

        /** Infinite with two degrees of freedom or less. */
        @Override
        public double standardDeviation() {
            return degreesOfFreedom > 2
                    ? scale * Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2))
                    : Double.POSITIVE_INFINITY;
        }

        @Override
        public void fill(SampleSource random, double[] out, int count) {
            random.fillT(out, 0, count, degreesOfFreedom, centre, scale);
        }
    }

    /**
     * Evenly between two ends that are themselves inexact, the middle being exact (6.4.3).
     * @param inexactness of each end either way, &ge; 0, at most half the distance of the ends
     */
    record CurvilinearTrapezoid(double lo, double hi, double inexactness) implements Law {
        public CurvilinearTrapezoid {
            ordered(lo, hi);
            if (!(inexactness >= 0 && inexactness <= (hi - lo) / 2)) {
                throw new IllegalArgumentException("the ends " + lo + " and " + hi + " are said to be inexact by "
                        + inexactness + "; that must be 0 to half their distance, " + (hi - lo) / 2);
            }
        }

        @Override
        public double mean() {
            return lo / 2 + hi / 2;
        }

        @Override
        public double standardDeviation() {
            return Math.sqrt((hi - lo) * (hi - lo) / 12 + inexactness * inexactness / 9);
        }

        @Override
        public void fill(SampleSource random, double[] out, int count) {
            random.fillCurvilinearTrapezoid(out, 0, count, lo, hi, inexactness);
        }
    }

    private static void ordered(double lo, double hi) {
        if (!(lo <= hi) || !Double.isFinite(hi - lo)) {
            throw new IllegalArgumentException(
                    "the ends of a law are " + lo + " and " + hi + "; give two finite numbers, the lower one first");
        }
    }

    private static void finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    "the " + what + " of a law is " + value + "; it must be a finite number");
        }
    }

    private static void notNegative(String what, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "the " + what + " of a law is " + value + "; it must be 0 or more, and finite");
        }
    }
}
