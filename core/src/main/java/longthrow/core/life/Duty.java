package longthrow.core.life;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import longthrow.core.build.HoursAt;
import longthrow.core.formula.Expression;
import longthrow.core.quantity.Require;

/**
 * How the hours are spent: shares of running time at speeds, and the damage they add up to. Palmgren and Miner: every swing uses up its share of the life
 * it would have alone; broken at 1. Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. (6-57). Tests break between {@link #LEAST_AT_BREAK} and
 * {@link #MOST_AT_BREAK}, so hours are an order, not a promise.
 * @param steps shares that add up to 1; one at least
 */
public record Duty(List<Step> steps) {
    /** Least and most of Miner's sums at which tests with swings of several sizes broke; common practice, no source. */
    public static final double LEAST_AT_BREAK = 0.3;

    public static final double MOST_AT_BREAK = 3;

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

        /** Swings in a second of running, one a turn: the inertia of piston and rod comes round every turn, the gas every other, and the larger swing is taken for all. */
        double swings() {
            return share * speed / (2 * Math.PI);
        }
    }

    public Duty {
        steps = List.copyOf(steps);
        double sum = steps.stream().mapToDouble(Step::share).sum();
        if (!(Math.abs(sum - 1) < 1e-6)) {
            throw new IllegalArgumentException("shares of a duty add up to " + sum + "; they must add up to 1");
        }
    }

    /** As it was stated, shares in round figures taken as parts of what they add up to. */
    static Duty of(List<HoursAt> stated) {
        double whole = HoursAt.whole(stated);
        return new Duty(stated.stream()
                .map(s -> new Step(s.speed().si(), s.part() / whole))
                .toList());
    }

    /** Its fastest step, which is the hardest on what inertia pulls at. */
    public Step fastest() {
        return steps.stream().max(Comparator.comparingDouble(Step::speed)).orElseThrow();
    }

    /** Its slowest step. */
    Step slowest() {
        return steps.stream().min(Comparator.comparingDouble(Step::speed)).orElseThrow();
    }

    /** Speeds that are the same but for doubles [1]. */
    private static final double ROUNDING = 1e-9;

    /** Part of the running time at a speed and above it. */
    private double partFrom(double speed) {
        return steps.stream()
                .filter(s -> s.speed() >= speed * (1 - ROUNDING))
                .mapToDouble(Step::share)
                .sum();
    }

    /**
     * Why it does not go with the speed asked about.
     * @param what is wrong
     * @param mend what to do
     */
    record Trouble(String what, String mend) {}

    /**
     * What keeps it from telling of a speed: it is never run there, or faster than anything lets the engine run. Empty where it tells.
     * @param asked   speed asked about [rad/s]
     * @param limiter speed at which one cuts [rad/s]; empty where none is known
     * @param printed a speed in words
     */
    Optional<Trouble> against(double asked, OptionalDouble limiter, DoubleFunction<String> printed) {
        double most = limiter.orElse(asked);
        double fastest = fastest().speed();
        if (fastest > most * (1 + ROUNDING)) {
            return Optional.of(
                    new Trouble(
                            "a duty that can be run: its step at " + printed.apply(fastest) + " is above "
                                    + (limiter.isPresent()
                                            ? "the " + printed.apply(most) + " at which the limiter cuts"
                                            : "the " + printed.apply(most)
                                                    + " that is wanted, and no limiter is known"),
                            "take that step out or make it slower, or ask about that speed with a limiter that lets it run so"));
        }
        if (fastest < asked * (1 - ROUNDING)) {
            return Optional.of(new Trouble(
                    "hours at " + printed.apply(asked) + ", which the stated duty does not reach: its fastest step is "
                            + printed.apply(fastest),
                    "state how much of the time is run that fast, or ask about a lower speed"));
        }
        return partFrom(asked) >= HoursAt.LEAST_AT_SPEED - ROUNDING
                ? Optional.empty()
                : Optional.of(new Trouble(
                        String.format(
                                Locale.ROOT,
                                "hours at %s, at which the stated duty spends less than %.0f %% of the time",
                                printed.apply(asked),
                                100 * HoursAt.LEAST_AT_SPEED),
                        String.format(
                                Locale.ROOT,
                                "state %.0f %% of the time at that speed, or more, or ask about a lower speed",
                                100 * HoursAt.LEAST_AT_SPEED)));
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

    /** Half the width in which the logarithm of the sum at breaking lies about that of 1: the larger of the two sides. */
    static double spreadAtBreak() {
        return Math.max(-Math.log(LEAST_AT_BREAK), Math.log(MOST_AT_BREAK));
    }

    /**
     * Logarithm of the running time [s] until Miner's sum is 1. Lives lie decades apart, so that theirs are what is worked with, each against that of the fastest step.
     * @param life logarithm of the swings the part lasts at a speed of the crank [rad/s]
     */
    public Expression logarithmOfTime(DoubleFunction<Expression> life) {
        Expression shortest = life.apply(fastest().speed());
        Expression harm = steps.stream()
                .map(step ->
                        shortest.minus(life.apply(step.speed())).exponential().times(step.swings()))
                .reduce(Expression::plus)
                .orElseThrow(); // a second's, times the swings of the fastest step's life
        return shortest.minus(harm.logarithm());
    }
}
