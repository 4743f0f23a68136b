package longthrow.core.pipe;

import java.util.Arrays;
import java.util.Locale;
import longthrow.core.CpuTime;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;

/**
 * Cells advanced in a second of CPU time of this thread, warm, median of many: a shock tube of 100 cells whose area changes, with friction, heat and burned gas carried along. Run by hand: its figure is
 * in docs/measurements.md.
 */
final class PipeTiming {
    private static final int ROUNDS = 15;
    private static final long NANOSECONDS = 400_000_000;
    private static final int CELLS = 100;

    private PipeTiming() {}

    /** By the plain kernel, or by one whose class is named. */
    public static void main(String[] arguments) throws ReflectiveOperationException {
        FlowKernel kernel = NamedKernel.of(arguments);
        PipeGases gases = new PipeGases(new PipeGas(1, 2.5, 0.05), new PipeGas(1, 2.6, 0.06));
        PipeShape shape = PipeShape.of(1, CELLS, x -> Math.sqrt((1 + 0.3 * Math.sin(3 * x)) * 4 / Math.PI));
        PipeFlow flow = new PipeFlow(shape, gases, kernel);
        for (int k = 0; k < CELLS; k++) {
            flow.wall(k, 0.4, 0.4, 1.2);
        }
        for (int round = 0; round < ROUNDS; round++) {
            rate(flow);
        }
        double[] rates = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            rates[round] = rate(flow);
        }
        Arrays.sort(rates);
        System.out.printf(
                Locale.ROOT,
                "%s: %.1f million cells a second (%.1f to %.1f)%n",
                kernel.name(),
                rates[ROUNDS / 2],
                rates[0],
                rates[ROUNDS - 1]);
    }

    private static double rate(PipeFlow flow) {
        long began = CpuTime.now();
        long cells = 0;
        while (CpuTime.now() - began < NANOSECONDS) {
            flow.fill(x -> x < 0.5 ? 1 : 0.1, x -> x < 0.5 ? 1 : 0.8, x -> 0, x -> x < 0.5 ? 1 : 0);
            double now = 0;
            while (now < 0.2) {
                double dt = Math.min(flow.longestStep(), 0.2 - now);
                flow.predict(dt);
                flow.open(Side.LEFT);
                flow.open(Side.RIGHT);
                flow.finish(dt);
                now += dt;
                cells += CELLS;
            }
        }
        return cells * 1e3 / (CpuTime.now() - began);
    }
}
