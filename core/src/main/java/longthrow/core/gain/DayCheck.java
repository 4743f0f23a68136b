package longthrow.core.gain;

import java.util.List;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;

/**
 * Whether a dyno shows today what it did on earlier days with the same reference engine. A day is one figure, the mean of its kept and corrected runs.
 * @param standard  by which all days are corrected
 * @param days      earlier ones
 * @param expected  mean of theirs
 * @param halfWidth of the interval in which a further day lies with 95 % (t of days less one, times the days' deviation, times the root of 1 + 1/days)
 * @param today     figure
 * @param chance    how often a day lies as far out or further
 */
public record DayCheck(AirStandard standard, int days, double expected, double halfWidth, double today, double chance) {
    /**
     * Checks today.
     * @return empty with fewer than three earlier days, or where they are alike to the last digit: what a day may differ by is then not known
     */
    public static Optional<DayCheck> of(AirStandard standard, List<Double> earlier, double today) {
        if (earlier.size() <= Comparison.LEAST_FREEDOM) {
            return Optional.empty();
        }
        Sample s = Sample.of(earlier.stream().mapToDouble(Double::doubleValue).toArray());
        double u = s.standardDeviation() * Math.sqrt(1 + 1.0 / s.count());
        double free = s.count() - 1.0;
        return u > 0
                ? Optional.of(new DayCheck(
                        standard,
                        s.count(),
                        s.mean(),
                        StudentT.factor(Measured.COVERAGE, free) * u,
                        today,
                        TwoSamples.twoSided((today - s.mean()) / u, free)))
                : Optional.empty();
    }

    /** Whether today is as earlier days allow. */
    public boolean isInside() {
        return Math.abs(today - expected) <= halfWidth;
    }
}
