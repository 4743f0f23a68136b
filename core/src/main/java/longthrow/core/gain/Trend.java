package longthrow.core.gain;

import java.util.List;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;

/**
 * Whether an engine gains or loses over dates, on one dyno by one standard. A date is one figure; a straight line through them.
 * @param engine    which
 * @param dates     how many
 * @param perDay    slope as a share of the mean figure a day
 * @param halfWidth 95 % of the slope, same
 * @param span      days from first to last
 */
public record Trend(String engine, int dates, double perDay, double halfWidth, double span) {
    /**
     * A date's figure.
     * @param day    counted from any day
     * @param figure mean of its kept and corrected runs
     */
    public record Dated(double day, double figure) {}

    /**
     * Fits the line.
     * @return empty with fewer than four dates, all on one day, or all on one line to the last digit: how sure it would be is then not known
     */
    public static Optional<Trend> of(String engine, List<Dated> dated) {
        double[] days = dated.stream().mapToDouble(Dated::day).toArray();
        double[] figures = dated.stream().mapToDouble(Dated::figure).toArray();
        double span = dated.stream().mapToDouble(Dated::day).max().orElse(0)
                - dated.stream().mapToDouble(Dated::day).min().orElse(0);
        if (days.length < 2 + Comparison.LEAST_FREEDOM || !(span > 0)) {
            return Optional.empty();
        }
        LinearFit line = LinearFit.line(days, figures);
        double mean = Sample.mean(figures);
        if (!(line.standardErrors().get(1) * span > ROUNDING * mean)) {
            return Optional.empty();
        }
        return Optional.of(new Trend(
                engine,
                days.length,
                line.coefficients().get(1) / mean,
                StudentT.factor(Measured.COVERAGE, line.freedom())
                        * line.standardErrors().get(1)
                        / mean,
                span));
    }

    /** What sums of such figures are rounded by, with room. */
    private static final double ROUNDING = 1e-12;

    /** Whether the slope stands out of its doubt. */
    public boolean isShown() {
        return Math.abs(perDay) > halfWidth;
    }
}
