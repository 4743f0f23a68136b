package longthrow.core.power;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.quantity.Units;

/**
 * At which speeds torque is told.
 * @param chosen  of the crankshaft, rising [rad/s]; empty for those from idle to the highest that is wanted
 * @param rows    how many, where none are chosen
 * @param leaned  at how many of them it is reckoned what each figure does to torque
 */
public record Speeds(List<Double> chosen, int rows, int leaned) {
    /** Most that are told. */
    public static final int MOST = 20;

    private static final int LEANED = 3;

    /** Steps between round speeds, times ten and so on [rpm]; layout. */
    private static final double LEAST_STEP = 10;

    private static final int[] STEPS = {1, 2, 5};

    /** A round speed nearer to either end than this share of a step is left out; layout. */
    private static final double APART = 0.25;

    public Speeds {
        chosen = chosen.stream().distinct().sorted().toList();
        if (chosen.size() > MOST || rows < 1 || rows > MOST || leaned < 1) {
            throw new IllegalArgumentException(
                    "torque is told at 1 to " + MOST + " speeds, not at " + (chosen.isEmpty() ? rows : chosen.size())
                            + ", and its doubt reckoned at 1 at least, not at " + leaned);
        }
        for (double speed : chosen) {
            if (!(speed > 0) || Double.isInfinite(speed)) {
                throw new IllegalArgumentException("a speed of " + speed + " rad/s; it must be above 0");
            }
        }
    }

    /** From idle to the highest that is wanted. */
    public static Speeds usual() {
        return new Speeds(List.of(), MOST, LEANED);
    }

    /** These alone [rad/s]. */
    public static Speeds of(List<Double> chosen) {
        return new Speeds(chosen, MOST, LEANED);
    }

    /** From the lowest to the highest by round numbers of revolutions, as many as there is room for [rad/s]; or those chosen. */
    List<Double> between(double lowest, double highest) {
        if (!chosen.isEmpty()) {
            return chosen;
        }
        if (!(highest > lowest) || rows == 1) {
            return List.of(highest);
        }
        List<Double> round = new ArrayList<>();
        round.add(lowest);
        round.addAll(roundBetween(Units.RPM.fromSi(lowest), Units.RPM.fromSi(highest)));
        round.add(highest);
        return round;
    }

    private List<Double> roundBetween(double low, double high) {
        for (double decade = LEAST_STEP; ; decade *= 10) {
            for (int times : STEPS) {
                double step = decade * times;
                List<Double> between = new ArrayList<>();
                for (double k = Math.ceil(low / step + APART);
                        k * step <= high - APART * step && between.size() < rows;
                        k++) {
                    between.add(Units.RPM.toSi(k * step));
                }
                if (between.size() + 2 <= rows) {
                    return between;
                }
            }
        }
    }

    /** Some of them, first and last included, evenly by their number. */
    <T> List<T> leanedOf(List<T> all) {
        if (all.size() <= leaned) {
            return all;
        }
        List<T> some = new ArrayList<>();
        for (int i = 0; i < leaned; i++) {
            int at = leaned == 1 ? all.size() / 2 : (int) Math.round((double) i * (all.size() - 1) / (leaned - 1));
            some.add(all.get(at));
        }
        return some;
    }
}
