package longthrow.core;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;

/** CPU time of this thread, for classes that are run by hand and whose figures are in docs/measurements.md. */
public final class CpuTime {
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    private CpuTime() {}

    /** Since this thread began [ns]. */
    public static long now() {
        return CLOCK.getCurrentThreadCpuTime();
    }

    /**
     * Median of many, after as many that are not counted [ms].
     * @param rounds that are counted
     */
    public static double median(int rounds, Runnable work) {
        double[] times = new double[rounds];
        for (int k = 0; k < 2 * rounds; k++) {
            long start = now();
            work.run();
            times[k % rounds] = (now() - start) * 1e-6;
        }
        Arrays.sort(times);
        return times[rounds / 2];
    }
}
