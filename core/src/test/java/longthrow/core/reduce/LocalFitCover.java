package longthrow.core.reduce;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import longthrow.core.measurement.StudentT;
import longthrow.core.reduce.Simulated.Scatter;
import longthrow.core.reduce.Simulated.Shape;

/** How often the 95 % band of a run covers the truth, by shape, scatter and rows a second. Run by hand: its figures are in docs/measurements.md. */
final class LocalFitCover {
    private static final int PLACES = 25;

    private LocalFitCover() {}

    public static void main(String[] arguments) {
        int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        for (boolean slope : new boolean[] {true, false}) {
            for (double rate : new double[] {1000, 100, 20}) {
                for (Scatter scatter : Scatter.ALL) {
                    StringBuilder line = new StringBuilder();
                    for (Shape shape : Shape.values()) {
                        double[] covered = covered(shape, scatter, slope, rate, runs);
                        line.append(String.format(
                                Locale.ROOT,
                                "  %s %.1f (least %.1f)",
                                shape,
                                100 * mean(covered),
                                100 * Arrays.stream(covered).min().orElse(0)));
                    }
                    System.out.printf(Locale.ROOT, "%s %.0f/s %s:%s%n", slope ? "drum" : "brake", rate, scatter, line);
                }
            }
        }
    }

    static double mean(double[] covered) {
        return Arrays.stream(covered).average().orElse(0);
    }

    /** Share of runs whose band covers the truth, at each of 25 speeds. */
    static double[] covered(Shape shape, Scatter scatter, boolean slope, double rate, int runs) {
        double inertia = 0.14;
        double[] places = new double[PLACES];
        for (int k = 0; k < PLACES; k++) {
            places[k] = Simulated.LOW + (Simulated.HIGH - Simulated.LOW) * (0.02 + 0.96 * k / (PLACES - 1));
        }
        double[] covered = new double[PLACES];
        Random random = new Random(20_261_127L);
        for (int run = 0; run < runs; run++) {
            LocalFit fit = Simulated.pull(shape, scatter, inertia, rate, random).drawn(slope, places);
            for (int k = 0; k < PLACES; k++) {
                double factor = slope ? inertia : 1;
                double off = Math.abs(fit.value(k) * factor - shape.torque(places[k]));
                double half = StudentT.factor(0.95, fit.freedom(k)) * fit.standardUncertainty(k) * factor;
                covered[k] += off <= half ? 1.0 / runs : 0;
            }
        }
        return covered;
    }
}
