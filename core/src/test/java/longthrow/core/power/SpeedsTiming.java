package longthrow.core.power;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.NamedKernel;

/**
 * Time on the wall, and of the processor with all that the compiler takes, of a torque curve of twenty speeds on two threads, of the engine of {@link PowerTiming}: the first, as a command meets it, and the median of many after it. Run by hand: its figures are in
 * docs/measurements.md.
 */
final class SpeedsTiming {
    private static final int THREADS = 2;
    private static final int SPEEDS = 20;
    private static final int SLOWEST_RPM = 1500;
    private static final int FASTEST_RPM = 6000;
    private static final int CURVES = 7;

    private SpeedsTiming() {}

    /** With the plain kernel, or with one whose class is named. */
    public static void main(String[] arguments)
            throws ReflectiveOperationException, InterruptedException, ExecutionException {
        String name = NamedKernel.of(arguments).name();
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        double[] wall = new double[CURVES];
        double[] processor = new double[CURVES];
        double[] torques = {};
        for (int k = 0; k < CURVES; k++) {
            long start = System.nanoTime();
            long busy = processor();
            torques = curve(threads, arguments);
            wall[k] = (System.nanoTime() - start) * 1e-9;
            processor[k] = (processor() - busy) * 1e-9;
        }
        threads.shutdown();
        double first = wall[0];
        double firstBusy = processor[0];
        Arrays.sort(wall);
        Arrays.sort(processor);
        System.out.printf(
                Locale.ROOT,
                "%d speeds on %d threads (%s): first %.2f s, %.2f s of the processor; median of %d %.2f s, %.2f s of the processor; highest torque %.12f N m%n",
                SPEEDS,
                THREADS,
                name,
                first,
                firstBusy,
                CURVES,
                wall[CURVES / 2],
                processor[CURVES / 2],
                Arrays.stream(torques).max().orElseThrow());
    }

    /** Of all threads [ns]. */
    private static long processor() {
        return ProcessHandle.current()
                .info()
                .totalCpuDuration()
                .map(Duration::toNanos)
                .orElse(0L);
    }

    private static double[] curve(ExecutorService threads, String... kernel)
            throws InterruptedException, ExecutionException {
        Figures figures = PowerTiming.figures();
        List<Future<Double>> asked = IntStream.range(0, SPEEDS)
                .mapToObj(k -> SLOWEST_RPM + (FASTEST_RPM - SLOWEST_RPM) * k / (SPEEDS - 1.0))
                .map(rpm -> threads.submit(() -> torque(figures, rpm * Math.PI / 30, NamedKernel.of(kernel))))
                .toList();
        double[] torques = new double[SPEEDS];
        for (int k = 0; k < SPEEDS; k++) {
            torques[k] = asked.get(k).get();
        }
        return torques;
    }

    private static double torque(Figures figures, double speed, FlowKernel kernel) {
        return Curve.at(figures, speed, Curve.MESH, () -> kernel, () -> true)
                .orElseThrow()
                .torque();
    }
}
