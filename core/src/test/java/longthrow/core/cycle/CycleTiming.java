package longthrow.core.cycle;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;
import longthrow.core.CpuTime;
import longthrow.core.pipe.Cells;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.NamedKernel;

/**
 * CPU time of an operating point of the invented engines, warm, median of many, and how much of it goes into the sums over cells; torque with all its digits, so that two states of the program can
 * be held against each other. Run by hand: its figures are in docs/measurements.md.
 */
final class CycleTiming {
    private static final int ROUNDS = 15;

    /** So that nothing is left out as unused. */
    private static double sum;

    private CycleTiming() {}

    /** With the plain kernel, or with one whose class is named. */
    public static void main(String[] arguments) throws ReflectiveOperationException {
        Clock clock = new Clock(NamedKernel.of(arguments));
        String[] names = {"open pipes", "silenced", "swinging"};
        Engine[] engines = {
            InventedEngine.open(Double.POSITIVE_INFINITY), InventedEngine.silenced(), InventedEngine.open(0.01)
        };
        for (int i = 0; i < engines.length; i++) {
            for (double rpm : new double[] {2000, 3600, 6000}) {
                say(names[i], engines[i], rpm, clock);
            }
        }
    }

    private static void say(String name, Engine engine, double rpm, Clock clock) {
        FlowKernel alone = clock.kernel;
        double time = CpuTime.median(
                ROUNDS, () -> sum += run(engine, rpm, () -> alone).work().net());
        long[] inCells = new long[ROUNDS];
        OperatingPoint point = run(engine, rpm, () -> clock);
        for (int k = 0; k < ROUNDS; k++) {
            clock.begin();
            point = run(engine, rpm, () -> clock);
            inCells[k] = clock.spent();
        }
        Arrays.sort(inCells);
        double cells = inCells[0] * 1e-6; // the least: by the clock on the wall others count too
        OperatingPoint.Effort effort = point.effort();
        System.out.printf(
                Locale.ROOT,
                "%s, %.0f rpm: %.1f ms, %.0f %% of it in cells (%s); %d cycles, %d steps in the last, %.2f us a step, %d cells; torque %.12f N m, balance of energy %.1e%n",
                name,
                rpm,
                time,
                100 * cells / time,
                alone.name(),
                effort.cycles(),
                effort.steps(),
                1e3 * time / effort.cycles() / effort.steps(),
                effort.cells(),
                point.work().torque(),
                point.balance().energy());
    }

    private static OperatingPoint run(Engine engine, double rpm, Supplier<FlowKernel> kernels) {
        Setting setting = InventedEngine.at(rpm);
        return OperatingPoint.run(engine, setting, InventedEngine.GASES, InventedEngine.MESH, kernels, () -> true)
                .orElseThrow();
    }

    /** A kernel whose time is taken, less what the taking takes. */
    private static final class Clock implements FlowKernel {
        private final FlowKernel kernel;
        private long began;
        private long time;
        private long calls;

        Clock(FlowKernel kernel) {
            this.kernel = kernel;
        }

        void begin() {
            time = 0;
            calls = 0;
        }

        /** [ns]. */
        long spent() {
            long start = System.nanoTime();
            for (int k = 0; k < TAKEN; k++) {
                start();
                sum += began;
            }
            return time - calls * (System.nanoTime() - start) / TAKEN;
        }

        private static final int TAKEN = 100_000;

        private void start() {
            began = System.nanoTime();
        }

        private void stop() {
            time += System.nanoTime() - began;
            calls++;
        }

        @Override
        public String name() {
            return kernel.name();
        }

        @Override
        public void derive(Cells cells) {
            start();
            kernel.derive(cells);
            stop();
        }

        @Override
        public void reconstruct(Cells cells, double dt) {
            start();
            kernel.reconstruct(cells, dt);
            stop();
        }

        @Override
        public void flatten(Cells cells) {
            kernel.flatten(cells);
        }

        @Override
        public void flow(Cells cells) {
            start();
            kernel.flow(cells);
            stop();
        }

        @Override
        public void advance(Cells cells, double dt) {
            start();
            kernel.advance(cells, dt);
            stop();
        }

        @Override
        public double fastest(Cells cells) {
            start();
            double fastest = kernel.fastest(cells);
            stop();
            return fastest;
        }
    }
}
