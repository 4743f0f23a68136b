package longthrow.core.life;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Units;

/**
 * The speed at which a part is used up: where a share, load over what it bears, reaches 1. Found by halving; its doubt by the exact gradient of the same formula
 * at that speed: a figure that raises the share by so much lowers the speed by as much over the slope (implicit functions; JCGM 100:2008 5.1.2 with F.1.1).
 */
final class SpeedSought {
    /** Name of the crank's speed in a share [rad/s]. */
    static final String SPEED = "speed";

    /** Slower than anything is let run [rad/s]: 10 rpm. */
    private static final double SLOWEST = Units.RPM.toSi(10);

    /** Faster than any engine of this kind turns [rad/s]: 30 000 rpm. */
    static final double FASTEST = Units.RPM.toSi(30_000);

    /** Of the speed found, as a share of itself. */
    private static final double PRECISION = 1e-12;

    private SpeedSought() {}

    static Expression speed() {
        return Expression.input(SPEED);
    }

    /**
     * What was found.
     * @param speed        empty when the share reaches 1 at no speed looked at
     * @param atStandstill whether it is above 1 from the slowest on
     */
    record Found(Optional<Measured> speed, boolean atStandstill) {}

    /**
     * Finds it.
     * @param share  of {@link #speed()} and the inputs; rises with speed where it is near 1
     * @param inputs all others
     */
    static Found of(String name, Expression share, Function<String, Measured> inputs) {
        Formula formula = Formula.of(name, share);
        List<String> names = formula.inputs();
        int own = names.indexOf(SPEED);
        double[] x = new double[names.size()];
        for (int k = 0; k < x.length; k++) {
            x[k] = k == own ? SLOWEST : inputs.apply(names.get(k)).value();
        }
        if (own < 0) {
            throw new IllegalArgumentException(name + " does not ask for the speed");
        }
        if (isUsedUp(formula, x, own, SLOWEST)) {
            return new Found(Optional.empty(), true);
        }
        if (!isUsedUp(formula, x, own, FASTEST)) {
            return new Found(Optional.empty(), false);
        }
        double low = SLOWEST;
        double high = FASTEST;
        while (high - low > PRECISION * high) {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high) {
                break;
            }
            if (!isUsedUp(formula, x, own, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new Found(Optional.of(withDoubt(formula, x, own, low, inputs)), false);
    }

    /** From 1 on; and where the sum is no number or has turned over below 0, as a quotient does past its pole. */
    private static boolean isUsedUp(Formula formula, double[] x, int own, double speed) {
        double share = at(formula, x, own, speed);
        return !(share >= 0 && share < 1);
    }

    private static double at(Formula formula, double[] x, int own, double speed) {
        x[own] = speed;
        return formula.at(x);
    }

    private static Measured withDoubt(
            Formula formula, double[] x, int own, double speed, Function<String, Measured> inputs) {
        x[own] = speed;
        double[] slope = new double[x.length];
        formula.gradient(x, slope);
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int k = 0; k < x.length; k++) {
            if (k != own) {
                double factor = -slope[k] / slope[own];
                inputs.apply(formula.inputs().get(k))
                        .contributions()
                        .forEach((source, c) -> contributions.merge(source, factor * c, Double::sum));
            }
        }
        return Measured.withContributions(speed, contributions);
    }
}
