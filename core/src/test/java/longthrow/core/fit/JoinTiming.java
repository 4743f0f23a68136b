package longthrow.core.fit;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.Locale;

/**
 * CPU time of the question of 144 million combinations: first call after start, and warm; columns built, cheapest 100 and front. All threads of the process
 * count, the compiler's too. Arguments: how many times as long the lists are (1, 10, 100), rounds.
 */
public final class JoinTiming {
    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private JoinTiming() {}

    /** Prints one line. */
    public static void main(String[] args) {
        int times = args.length > 0 ? Integer.parseInt(args[0]) : 1;
        int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 200;
        JoinQuestion question = times == 1 ? JoinQuestion.tables() : JoinQuestion.larger(times);
        double[] ms = new double[rounds];
        long answer = 0;
        int front = 0;
        for (int n = 0; n < rounds; n++) {
            long before = SYSTEM.getProcessCpuTime();
            StackSearch search = new StackSearch(question.columns(), question.limits());
            answer = search.cheapest(100).get(99).price();
            front = search.front().size();
            ms[n] = (SYSTEM.getProcessCpuTime() - before) / 1e6;
        }
        double first = ms[0];
        double[] warm = Arrays.copyOfRange(ms, rounds / 2, rounds);
        Arrays.sort(warm);
        System.out.printf(
                Locale.ROOT,
                "lists x%d, %.3g combinations: first %.1f ms CPU, warm median %.2f ms (%.2f to %.2f); hundredth %d, front %d%n",
                times,
                (double) question.columns().combinations(),
                first,
                warm[warm.length / 2],
                warm[0],
                warm[warm.length - 1],
                answer,
                front);
    }
}
