package longthrow.core.fit;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
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
        double first = 0;
        long from = 0;
        long answer = 0;
        int front = 0;
        for (int n = 0; n < rounds; n++) {
            long before = SYSTEM.getProcessCpuTime();
            StackSearch search = new StackSearch(question.columns(), question.limits());
            answer = search.cheapest(100).get(99).price();
            front = search.front().size();
            long after = SYSTEM.getProcessCpuTime();
            first = n == 0 ? (after - before) / 1e6 : first;
            from = n == rounds / 2 - 1 ? after : from;
        }
        double warm = (SYSTEM.getProcessCpuTime() - from) / 1e6 / (rounds - rounds / 2);
        System.out.printf(
                Locale.ROOT,
                "lists x%d, %.3g combinations: first %.1f ms CPU, warm mean %.2f ms; hundredth %d, front %d%n",
                times,
                (double) question.columns().combinations(),
                first,
                warm,
                answer,
                front);
    }
}
