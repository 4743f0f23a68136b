package longthrow.core.life;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.quantity.Require;

/**
 * How the hours are spent: shares of running time at speeds, and the damage they add up to. Palmgren and Miner: every swing uses up its share of the life
 * it would have alone; broken at 1. Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. (6-57). Tests break between 0.3 and 3 (common
 * practice, no source), so hours are an order, not a promise.
 * @param steps shares that add up to 1
 */
public record Duty(List<Step> steps) {
    /**
     * Part of the time at one speed.
     * @param speed of the crank [rad/s], &gt; 0
     * @param share of the running time, &gt; 0
     */
    public record Step(double speed, double share) {
        public Step {
            Require.positive("speed of a duty [rad/s]", speed);
            Require.positive("share of the running time", share);
        }
    }

    public Duty {
        steps = List.copyOf(steps);
        double sum = steps.stream().mapToDouble(Step::share).sum();
        if (!(Math.abs(sum - 1) < 1e-6)) {
            throw new IllegalArgumentException("shares of a duty add up to " + sum + "; they must add up to 1");
        }
    }

    /**
     * Miner's sum.
     * @param swings done at each level
     * @param lives  swings each level would last alone, infinite where it harms nothing
     */
    public static double damage(List<Double> swings, List<Double> lives) {
        if (swings.size() != lives.size()) {
            throw new IllegalArgumentException(
                    swings.size() + " counts of swings for " + lives.size() + " lives; each level needs both");
        }
        double sum = 0;
        for (int k = 0; k < swings.size(); k++) {
            sum += swings.get(k) / lives.get(k);
        }
        return sum;
    }

    /**
     * Running time until the damage is 1 [s]; infinite when nothing harms. One swing a turn: the inertia of piston and rod comes round every turn, the
     * gas every other, and the larger swing is taken for all.
     * @param life swings the part lasts at a speed of the crank [rad/s]
     */
    public double timeToBreak(DoubleUnaryOperator life) {
        double perSecond = 0;
        for (Step step : steps) {
            perSecond += step.share * step.speed / (2 * Math.PI) / life.applyAsDouble(step.speed);
        }
        return 1 / perSecond;
    }
}
