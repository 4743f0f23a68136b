package longthrow.core.reduce;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.measurement.StudentT;

/**
 * Cover of a run's 95 % band on shapes, scatters, rates and seeds that no constant of the smoothing was set on: so none is to be set on these (docs/decisions/0032). Run by
 * hand: its figures are in docs/measurements.md.
 */
final class LocalFitFresh {
    private static final List<DoubleUnaryOperator> SHAPES = List.of(
            u -> 9 + 6 * u - 7 * u * u * u,
            u -> 11 - 1.2 * Math.exp(-0.5 * Math.pow((u - 0.4) / 0.07, 2)), // a dip
            u -> 8 + 4 * Math.tanh(5 * (u - 0.25)) - 3 * u * u,
            u -> 6 + 5 * u);
    /** Pickup [rad/s]; engine [N m] and how long it lingers [s]; brake's own, lingering [N m] and how long [s]. */
    private static final double[][] SCATTERS = {
        {0.6, 0.7, 0.05, 0.4, 0.3, 0.08}, {0.3, 0.3, 0.005, 0.2, 0.5, 0.3}, {1.5, 0.8, 0.02, 0.8, 0.2, 0.15}
    };

    private static final double LOW = 200;
    private static final double SPAN = 600;
    private static final double INERTIA = 0.11;
    private static final int PLACES = 25;

    private LocalFitFresh() {}

    public static void main(String[] arguments) {
        int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
        for (boolean slope : new boolean[] {true, false}) {
            for (double rate : new double[] {50, 200}) {
                for (int c = 0; c < SCATTERS.length; c++) {
                    StringBuilder line = new StringBuilder();
                    for (int s = 0; s < SHAPES.size(); s++) {
                        double[] covered =
                                covered(SHAPES.get(s), SCATTERS[c], slope, rate, runs, 990_017L + 31L * s + 7L * c);
                        line.append(String.format(
                                Locale.ROOT,
                                "  %.1f (least %.1f)",
                                Arrays.stream(covered).average().orElse(0),
                                Arrays.stream(covered).min().orElse(0)));
                    }
                    System.out.printf(
                            Locale.ROOT, "%s %.0f/s scatter %d:%s%n", slope ? "drum" : "brake", rate, c, line);
                }
            }
        }
    }

    private static double[] covered(
            DoubleUnaryOperator shape, double[] scatter, boolean slope, double rate, int runs, long seed) {
        Random random = new Random(seed);
        double[] places = new double[PLACES];
        for (int k = 0; k < PLACES; k++) {
            places[k] = LOW + SPAN * (0.02 + 0.96 * k / (PLACES - 1));
        }
        double[] covered = new double[PLACES];
        for (int run = 0; run < runs; run++) {
            LocalFit fit = fit(shape, scatter, slope, 1 / rate, random, places);
            double factor = slope ? INERTIA : 1;
            for (int k = 0; k < PLACES; k++) {
                double off = Math.abs(fit.value(k) * factor - shape.applyAsDouble((places[k] - LOW) / SPAN));
                double half = StudentT.factor(0.95, fit.freedom(k)) * fit.standardUncertainty(k) * factor;
                covered[k] += off <= half ? 100.0 / runs : 0;
            }
        }
        return covered;
    }

    private static LocalFit fit(
            DoubleUnaryOperator shape, double[] scatter, boolean slope, double dt, Random random, double[] places) {
        double[] time = new double[20_000];
        double[] speeds = new double[time.length];
        double[] readings = new double[time.length];
        double engineKept = Math.exp(-dt / scatter[2]);
        double brakeKept = Math.exp(-dt / scatter[5]);
        double speed = LOW;
        double engine = 0;
        double brake = 0;
        int n = 0;
        while (speed < LOW + SPAN && n < time.length) {
            double torque = shape.applyAsDouble((speed - LOW) / SPAN);
            engine = engineKept * engine + Math.sqrt(1 - engineKept * engineKept) * scatter[1] * random.nextGaussian();
            brake = brakeKept * brake + Math.sqrt(1 - brakeKept * brakeKept) * scatter[4] * random.nextGaussian();
            time[n] = n * dt;
            speeds[n] = speed + scatter[0] * random.nextGaussian();
            readings[n] = torque + scatter[3] * random.nextGaussian() + brake;
            n++;
            speed += (torque + engine) / INERTIA * dt;
        }
        Thinned points = Thinned.of(0, n, time, speeds, readings);
        return slope
                ? LocalFit.ofSlopes(points.column(0), points.column(1), points.column(1), places)
                : LocalFit.ofValues(points.column(1), points.column(2), places);
    }
}
