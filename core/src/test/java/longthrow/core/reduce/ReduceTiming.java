package longthrow.core.reduce;

import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import longthrow.core.CpuTime;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Units;
import longthrow.core.reduce.RunRows.Column;

/** CPU time, warm, of an hour's log at 1000 rows a second: 3.6 million rows, 360 pulls, each brought to a curve with band and peaks. Run by hand: its figures are in docs/measurements.md. */
final class ReduceTiming {
    private static final int ROWS = 3_600_000;
    private static final int PULL = 10_000;
    private static final int ROUNDS = 15;

    private static double sink;

    private ReduceTiming() {}

    public static void main(String[] arguments) {
        double[] time = new double[ROWS];
        double[] speed = new double[ROWS];
        Random random = new Random(3);
        for (int i = 0; i < ROWS; i++) {
            time[i] = i * 1e-3;
            double left = 1 - time[i] % 10 / 10;
            speed[i] = Units.RPM.toSi(2000 + 6000 * (1 - left * left) + 8 * random.nextGaussian());
        }
        DrumBench bench = new DrumBench(
                Measured.exact(0.35),
                Optional.of(Measured.exact(0)),
                Optional.of(Measured.exact(1)),
                Optional.empty(),
                Optional.empty());
        print("thinned", CpuTime.median(ROUNDS, () -> {
            for (int from = 0; from < ROWS; from += PULL) {
                sink += Thinned.of(from, from + PULL, time, speed).column(1)[0];
            }
        }));
        print("360 pulls to curves with band and peaks", CpuTime.median(ROUNDS, () -> {
            for (int from = 0; from < ROWS; from += PULL) {
                RunRows rows = RunRows.between(from, from + PULL)
                        .with(Column.TIME, time)
                        .with(Column.DRUM_SPEED, speed);
                sink += DrumRun.reduce(rows, bench, Optional.empty())
                        .curve()
                        .orElseThrow()
                        .at(5)
                        .torque()
                        .value();
            }
        }));
        if (!(sink > 0)) {
            throw new IllegalStateException("nothing was reckoned");
        }
    }

    private static void print(String what, double milliseconds) {
        System.out.printf(Locale.ROOT, "%s: %.1f ms%n", what, milliseconds);
    }
}
