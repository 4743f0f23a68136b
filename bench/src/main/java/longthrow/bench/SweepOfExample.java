package longthrow.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Sweep;

/**
 * CPU time of this thread for full sweeps of an engine's pairs, warm, median of many: of those whose gap {@code clear} tells from their outlines, cold and with
 * 0.1 % of growth, and of all that can be drawn, those that overlap seen along the crankshaft among them. Run by hand with the path of a build file.
 */
public final class SweepOfExample {
    private static final int ROUNDS = 60;
    private static final int ANGLES = 720;
    private static final double GROWTH = 0.001;

    private SweepOfExample() {}

    /**
     * Prints.
     * @param arguments path of a build file
     */
    public static void main(String[] arguments) throws IOException {
        Build build = BuildFile.read(Files.readString(Path.of(arguments[0]))).build().orElseThrow();
        Set<String> told = Clear.of(build).clearances().stream()
                .filter(c -> c.cold()
                        .filter(gap -> gap.way() == Clearance.Way.IN_PLANE)
                        .isPresent())
                .map(Clearance::key)
                .collect(Collectors.toUnmodifiableSet());
        List<Drawn> drawn = Drawn.of(build).stream()
                .filter(d -> Pair.of(d.one(), d.other()).sharesDepth())
                .toList();
        time("told in their plane", drawn.stream().filter(d -> told.contains(d.key())).toList());
        time("all that are drawn", drawn);
    }

    private static void time(String what, List<Drawn> drawn) {
        List<Pair> pairs = new ArrayList<>();
        for (Drawn d : drawn) {
            pairs.add(Pair.of(d.one(), d.other()));
            pairs.add(Pair.of(d.one().grown(GROWTH), d.other()));
        }
        double least = median(() -> pairs.forEach(Sweep::least));
        double curves = median(() -> pairs.forEach(p -> Sweep.curve(p, ANGLES)));
        System.out.printf(
                Locale.ROOT,
                "%s: %d pairs in two conditions, least gaps %.2f ms, curves of %d angles %.2f ms (%.2f us a pair and angle)%n",
                what,
                drawn.size(),
                least,
                ANGLES,
                curves,
                1e3 * curves / pairs.size() / ANGLES);
    }

    private static double median(Runnable work) {
        double[] times = new double[ROUNDS];
        for (int k = 0; k < 2 * ROUNDS; k++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            work.run();
            times[k % ROUNDS] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) * 1e-6;
        }
        Arrays.sort(times);
        return times[ROUNDS / 2];
    }
}
