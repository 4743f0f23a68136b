package longthrow.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import longthrow.core.formula.Formula;
import longthrow.core.formula.SampleSource;
import longthrow.core.formula.SampleSummary;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.MonteCarlo;
import longthrow.core.measurement.Source;

/**
 * One million Monte Carlo samples of a compression ratio with 30 normal inputs: draws, formula, mean, standard deviation
 * and coverage intervals. CPU time of this thread, median of 11 runs after warming up. Run with -XX:-UseSuperWord for
 * the same without vector instructions.
 */
public final class MonteCarloBench {
    private static final int SAMPLES = 1_000_000;
    private static final int WARM = 5;
    private static final int RUNS = 11;
    private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

    private final Formula formula = StackToRatio.formula();
    private final int inputs = formula.inputs().size();
    private final double[] means = new double[inputs];
    private final double[] deviations = new double[inputs];
    private final Map<String, Measured> measured = new HashMap<>();
    private final double[][] drawn = new double[inputs][Formula.Workspace.BLOCK];
    private final double[] block = new double[Formula.Workspace.BLOCK];
    private double[] ratios = new double[0];
    private final Formula.Workspace workspace = new Formula.Workspace();

    private MonteCarloBench() {
        List<String> names = formula.inputs();
        for (int i = 0; i < inputs; i++) {
            means[i] = StackToRatio.value(names.get(i));
            deviations[i] = StackToRatio.uncertainty(names.get(i));
            Source source = Source.known(names.get(i), Source.Kind.TYPED, names.get(i), deviations[i]);
            measured.put(names.get(i), Measured.of(means[i], List.of(source)));
        }
    }

    public static void main(String[] arguments) {
        MonteCarloBench bench = new MonteCarloBench();
        print("%s%n", bench.formula);
        print("%.6f from the formula, %.6f by hand%n", bench.formula.at(bench.means), bench.byHand());
        bench.sampleAll();
        print("draws, formula and summary  %6.1f ms%n", bench.median(bench::everything));
        print("  draws alone               %6.1f ms%n", bench.median(bench::drawsAlone));
        print("  formula alone             %6.1f ms%n", bench.median(bench::formulaAlone));
        print("  summary alone             %6.1f ms%n", bench.median(bench::summaryAlone));
        print("one sample at a time        %6.1f ms%n", bench.median(bench::oneAtATime));
        print("%s%n", bench.summary());
    }

    private static void print(String format, Object... values) {
        System.out.printf(Locale.ROOT, format, values);
    }

    private double byHand() {
        return StackToRatio.byHand(means, formula.inputs());
    }

    private double median(Runnable work) {
        double[] times = new double[RUNS];
        for (int run = -WARM; run < RUNS; run++) {
            long start = CLOCK.getCurrentThreadCpuTime();
            work.run();
            if (run >= 0) {
                times[run] = (CLOCK.getCurrentThreadCpuTime() - start) * 1e-6;
            }
        }
        Arrays.sort(times);
        return times[RUNS / 2];
    }

    /** As the command does it: measured figures with one source each, through {@link MonteCarlo#summary}. */
    private void everything() {
        if (!(MonteCarlo.summary(formula, measured::get, SAMPLES, 0.95).standardDeviation() > 0)) {
            throw new IllegalStateException("no spread");
        }
    }

    private void sampleAll() {
        SampleSource source = SampleSource.of(1);
        ratios = formula.sampled(SAMPLES, (block, size) -> draw(source, block, size));
    }

    private void draw(SampleSource source, double[][] drawn, int size) {
        for (int i = 0; i < inputs; i++) {
            source.fillNormal(drawn[i], 0, size, means[i], deviations[i]);
        }
    }

    private void drawsAlone() {
        SampleSource source = SampleSource.of(1);
        for (int done = 0; done < SAMPLES; done += block.length) {
            draw(source, drawn, Math.min(block.length, SAMPLES - done));
        }
    }

    private void formulaAlone() {
        for (int done = 0; done < SAMPLES; done += block.length) {
            formula.samples(drawn, 0, Math.min(block.length, SAMPLES - done), block, workspace);
        }
    }

    private void summaryAlone() {
        if (!(summary().standardDeviation() > 0)) {
            throw new IllegalStateException("no spread");
        }
    }

    private SampleSummary summary() {
        return SampleSummary.of(ratios, 0.95);
    }

    /** The plain way: one sample after the other through the number evaluation. */
    private void oneAtATime() {
        SampleSource source = SampleSource.of(1);
        double[] one = new double[inputs];
        for (int k = 0; k < SAMPLES; k++) {
            for (int i = 0; i < inputs; i++) {
                one[i] = means[i] + deviations[i] * source.nextNormal();
            }
            ratios[k] = formula.at(one);
        }
        summaryAlone();
    }
}
