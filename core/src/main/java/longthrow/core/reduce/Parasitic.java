package longthrow.core.reduce;

import java.util.List;
import java.util.Objects;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;

/**
 * Torque that a drum's own bearings and air take, as a parabola of its speed: a part that is always there, a part that grows with speed (grease) and one that grows with
 * its square (air). Held as its torque at three speeds, whose doubts are known together.
 */
public final class Parasitic {
    private static final Formula PARABOLA = Formula.of("parasitic torque", parabola());

    private final double[] speeds;
    private final List<Measured> torques;

    private Parasitic(double[] speeds, List<Measured> torques) {
        this.speeds = speeds.clone();
        this.torques = List.copyOf(torques);
    }

    /**
     * Through three speeds of the drum.
     * @param low    the lowest [rad/s]
     * @param middle between [rad/s]
     * @param high   the highest [rad/s]
     * @param torques that slow it at each, above 0 [N m]
     */
    public static Parasitic through(double low, double middle, double high, List<Measured> torques) {
        if (!(low < middle && middle < high) || torques.size() != 3) {
            throw new IllegalArgumentException("a parabola goes through three rising speeds, not " + low + ", " + middle
                    + ", " + high + " with " + torques.size() + " torques");
        }
        return new Parasitic(new double[] {low, middle, high}, torques);
    }

    private static Expression parabola() {
        Expression[] torque = new Expression[3];
        Expression[] weight = new Expression[3];
        for (int i = 0; i < 3; i++) {
            torque[i] = Expression.input("torque" + i);
            weight[i] = Expression.input("weight" + i);
        }
        return torque[0].times(weight[0]).plus(torque[1].times(weight[1])).plus(torque[2].times(weight[2]));
    }

    /** Weights of the three torques at a speed (Lagrange). */
    private double[] weights(double speed) {
        double[] w = new double[3];
        for (int i = 0; i < 3; i++) {
            w[i] = 1;
            for (int k = 0; k < 3; k++) {
                w[i] *= k == i ? 1 : (speed - speeds[k]) / (speeds[i] - speeds[k]);
            }
        }
        return w;
    }

    /** At a drum speed [rad/s], above 0 where it slows the drum [N m]. */
    public Measured at(double speed) {
        double[] w = weights(speed);
        return Measured.through(PARABOLA, name -> {
            int i = name.charAt(name.length() - 1) - '0';
            return name.startsWith("torque") ? Objects.requireNonNull(torques.get(i)) : Measured.exact(w[i]);
        });
    }

    double value(double speed) {
        double[] w = weights(speed);
        return w[0] * torques.get(0).value()
                + w[1] * torques.get(1).value()
                + w[2] * torques.get(2).value();
    }

    /** Lowest drum speed it was read at [rad/s]. */
    public double lowest() {
        return speeds[0];
    }

    /** Highest drum speed it was read at [rad/s]; beyond, the parabola is a guess. */
    public double highest() {
        return speeds[2];
    }
}
