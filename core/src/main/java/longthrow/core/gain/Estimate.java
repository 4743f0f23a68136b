package longthrow.core.gain;

import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;

/**
 * A gain with its doubt, as shares of the baseline.
 * @param speedRpm  where; NaN for a figure of the whole run
 * @param baseline  corrected level of the baseline in the middle of the change's runs, on the line of its drift [unit of the figure]
 * @param changed   corrected level with the change [same]
 * @param gain      changed over baseline, less 1
 * @param runs      standard uncertainty from the scatter of runs
 * @param freedom   degrees of freedom behind that
 * @param refit     standard uncertainty from taking off and putting on again, where that is known from earlier campaigns and not in {@code runs}; else 0
 * @param refitFreedom degrees of freedom behind that
 * @param weather   standard uncertainty that the corrections bring to the difference; what sessions share has gone out
 * @param anyDrift  standard uncertainty from not knowing where between the levels of the baselines before and after the engine stood; beyond those levels it is not covered
 * @param everySpeed factor on the standard uncertainty for a band that holds at every speed at once; that of one speed for a figure of the whole run
 */
public record Estimate(
        double speedRpm,
        double baseline,
        double changed,
        double gain,
        double runs,
        double freedom,
        double refit,
        double refitFreedom,
        double weather,
        double anyDrift,
        double everySpeed) {

    private double line() {
        return Math.hypot(Math.hypot(runs, refit), weather);
    }

    private double whole() {
        return Math.hypot(line(), anyDrift);
    }

    /** Welch and Satterthwaite: the scatters are little known, the rest is stated. */
    private double freedomOf(double u) {
        return 1 / (Math.pow(runs / u, 4) / freedom + (refit == 0 ? 0 : Math.pow(refit / u, 4) / refitFreedom));
    }

    private static double factor(double freedom) {
        return Double.isNaN(freedom) ? Double.NaN : StudentT.factor(Measured.COVERAGE, freedom);
    }

    /** Half of the 95 % interval if the drift was a straight line in the order of pulls. */
    public double halfWidth() {
        return factor(freedomOf(line())) * line();
    }

    /** Half of the 95 % interval wherever the engine stood between the levels of the baselines before and after: this one decides. */
    public double halfWidthAnyDrift() {
        return Math.max(halfWidth(), factor(freedomOf(whole())) * whole());
    }

    /** Half of the band that holds at every speed at once with 95 %, if the drift was a straight line. */
    public double halfWidthEverySpeed() {
        return halfWidth() * everySpeed / factor(freedom);
    }

    /** The same wherever it stood between those levels. */
    public double halfWidthEverySpeedAnyDrift() {
        return halfWidthAnyDrift() * everySpeed / factor(freedom);
    }

    /** How often chance alone gives as much, wherever it stood between those levels. */
    public double chance() {
        return Math.max(
                TwoSamples.twoSided(gain / line(), freedomOf(line())),
                TwoSamples.twoSided(gain / whole(), freedomOf(whole())));
    }
}
