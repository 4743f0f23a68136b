package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.reduce.RunRows.Column;

/**
 * A free run-down: how fast speed falls, as a parabola of speed, with the doubt of the three figures of that parabola together. Of a drum [rad/s and rad/s2] or of a
 * vehicle [m/s and m/s2].
 */
public final class CoastDown {
    private static final Formula TORQUE = Formula.of(
            "drag of a coast-down", Rotation.torque(Expression.input("inertia"), Expression.input("deceleration")));
    private static final Formula ADDED = Formula.of("inertia by an added one", byAdded());

    private final double[] speeds;
    private final List<Measured> decelerations;

    private CoastDown(double[] speeds, List<Measured> decelerations) {
        this.speeds = speeds;
        this.decelerations = List.copyOf(decelerations);
    }

    /**
     * What came of reading a run-down.
     * @param coastDown empty where a remark says why
     * @param remarks   what to know
     */
    public record Read(Optional<CoastDown> coastDown, List<Remark> remarks) {
        public Read {
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * Reads a run-down of a drum: time and drum speed. The drum runs free of engine, chain and brake.
     * @param name of this run-down, unlike any other's of the bench: it names the sources of doubt
     */
    public static Read ofDrum(RunRows rows, String name) {
        return read(rows, Column.DRUM_SPEED, name);
    }

    /** The same of a vehicle rolling out of gear: time and road speed. */
    public static Read ofVehicle(RunRows rows, String name) {
        return read(rows, Column.ROAD_SPEED, name);
    }

    private static Read refused(String why) {
        return new Read(Optional.empty(), List.of(new Remark(Remark.Weight.NO_CURVE, why)));
    }

    private static Read read(RunRows rows, Column column, String name) {
        if (!rows.has(Column.TIME) || !rows.has(column)) {
            return refused("A run-down needs a column of time and one of " + column.words() + ". Name them");
        }
        Thinned points = rows.thinned(Column.TIME, column);
        if (points.points() < Thinned.FEWEST) {
            return refused("The run-down has " + points.points() + " rows with time and speed; at least "
                    + Thinned.FEWEST + " are needed. Log more rows per second, or a longer run-down");
        }
        double[] time = points.column(0);
        double[] speed = points.column(1);
        for (int i = 1; i < time.length; i++) {
            if (!(time[i] > time[i - 1])) {
                return refused(String.format(
                        Locale.ROOT, "Time does not run forward in the run-down at %.4g s. Mend those rows", time[i]));
            }
        }
        double low = Arrays.stream(speed).min().orElse(0);
        double high = Arrays.stream(speed).max().orElse(0);
        if (!(low > 0 && high > low * SPAN)) {
            return refused(String.format(
                    Locale.ROOT,
                    "The run-down goes from %.4g to %.4g; it must fall by a quarter at least, and not to a stand",
                    high,
                    low));
        }
        return fitted(time, speed, low, high, name);
    }

    /** Least ratio of highest to lowest speed of a run-down: below, what grows with speed cannot be told from what does not. Judgement. */
    private static final double SPAN = 4.0 / 3;

    private static Read fitted(double[] time, double[] speed, double low, double high, String name) {
        double[] at = {low, 0.5 * (low + high), high};
        LocalFit fit = LocalFit.parabolaOfSlopes(time, speed, speed, at);
        if (!fit.isDrawn()) {
            return refused("In this run-down " + LocalFit.TOO_FEW);
        }
        double[][] covariance = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                double difference = fit.ofDifference(i, 1, k, 1);
                double own = fit.standardUncertainty(i);
                double other = fit.standardUncertainty(k);
                covariance[i][k] = 0.5 * (own * own + other * other - difference * difference);
            }
        }
        double[] values = new double[3];
        for (int i = 0; i < 3; i++) {
            values[i] = -fit.value(i);
        }
        CoastDown made = new CoastDown(at, correlated(values, covariance, fit.freedom(1), name));
        List<Remark> remarks = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            if (!(made.decelerations.get(i).value() > 0)) {
                return refused(String.format(
                        Locale.ROOT,
                        "Speed does not fall at %.4g in this run-down: something drives it, or it is not a run-down",
                        at[i]));
            }
        }
        return new Read(Optional.of(made), remarks);
    }

    /** Figures whose doubts are known together, each from sources that act on it and the ones after it (Cholesky). */
    static List<Measured> correlated(double[] values, double[][] covariance, double freedom, String name) {
        int n = values.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                double sum = covariance[i][k];
                for (int m = 0; m < k; m++) {
                    sum -= l[i][m] * l[k][m];
                }
                // rounding may leave a little below nought where three figures hang together wholly
                l[i][k] = i == k ? Math.sqrt(Math.max(0, sum)) : l[k][k] > 0 ? sum / l[k][k] : 0;
            }
        }
        List<Measured> all = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Map<Source, Double> contributions = new LinkedHashMap<>();
            for (int k = 0; k <= i; k++) {
                if (l[i][k] != 0) {
                    contributions.put(
                            new Source(name + " #" + k, Source.Kind.SCATTER, name, 1, freedom, 1, name), l[i][k]);
                }
            }
            all.add(Measured.withContributions(values[i], contributions));
        }
        return all;
    }

    /** Torque that slows a drum of this inertia, at any speed. */
    public Parasitic of(Measured inertia) {
        List<Measured> torques = new ArrayList<>();
        for (Measured deceleration : decelerations) {
            torques.add(Measured.through(TORQUE, name -> name.equals("inertia") ? inertia : deceleration));
        }
        return Parasitic.through(speeds[0], speeds[1], speeds[2], torques);
    }

    /** How fast speed falls at a speed, above 0. */
    Measured at(double speed) {
        return Parasitic.through(speeds[0], speeds[1], speeds[2], decelerations).at(speed);
    }

    double lowest() {
        return speeds[0];
    }

    double highest() {
        return speeds[2];
    }

    private static Expression byAdded() {
        Expression bare = Expression.input("bare");
        Expression with = Expression.input("with");
        return Expression.input("added").times(with).dividedBy(bare.minus(with));
    }

    /**
     * Inertia by two run-downs, one with a known inertia more: the same torque slows both, I d1 = (I + added) d2, so I = added d2 / (d1 - d2). What was added must take no
     * torque of its own: a plain disc in the open takes some air.
     * @param with the run-down with the added inertia, over some of the speeds of this one
     * @return empty where they share too few speeds, or where the added inertia does not show
     */
    public Optional<Measured> inertiaByAdded(CoastDown with, Measured added) {
        double low = Math.max(lowest(), with.lowest());
        double high = Math.min(highest(), with.highest());
        double middle = 0.5 * (low + high);
        if (!(low < high)) {
            return Optional.empty();
        }
        Map<String, Measured> inputs =
                Map.of("added", added, "bare", mean(low, middle, high), "with", with.mean(low, middle, high));
        double fall = at(middle).value() - with.at(middle).value();
        if (!(fall > 0)) {
            return Optional.empty();
        }
        return Optional.of(Measured.through(ADDED, name -> Objects.requireNonNull(inputs.get(name))));
    }

    /** Mean over a stretch of speeds, exact for a parabola (Simpson). */
    private Measured mean(double low, double middle, double high) {
        Map<String, Measured> inputs = Map.of("low", at(low), "middle", at(middle), "high", at(high));
        Expression mean = Expression.input("low")
                .plus(Expression.input("middle").times(4))
                .plus(Expression.input("high"))
                .dividedBy(6);
        return Measured.through(
                Formula.of("mean deceleration", mean), name -> Objects.requireNonNull(inputs.get(name)));
    }
}
