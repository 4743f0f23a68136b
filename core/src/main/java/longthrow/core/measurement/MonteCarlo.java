package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import longthrow.core.formula.Formula;
import longthrow.core.formula.Interval;
import longthrow.core.formula.SampleSource;
import longthrow.core.formula.SampleSummary;

/**
 * Propagation of distributions (JCGM 101:2008) through a formula that bends. Measured inputs: every source is drawn once per trial,
 * rectangular, normal or, with few degrees of freedom, scaled t (6.4.9), so that inputs sharing a source move together. Inputs by their
 * laws: each is drawn by itself.
 */
public final class MonteCarlo {
    /** Trials; a 95 % interval end then scatters by about half a per cent of the standard uncertainty. */
    public static final int TRIALS = 100_000;

    private static final double NEGLIGIBLE = 1e-6;
    /** Share of an input's errors taken as practically none. */
    private static final double TAIL = 1e-6;

    private static final int QUANTILES = 2001;
    private static final long SEED = 20_261_125L;

    private MonteCarlo() {}

    /**
     * As {@link Measured#through}, for a formula that bends: probabilities from samples, drawn when first asked for, and the interval from the pieces of
     * the formula ({@link Bend}) or, where it has none, from the samples too. Value and contributions stay those of the first order.
     */
    public static Measured through(Formula formula, Function<String, Measured> inputs) {
        Measured first = Measured.through(formula, inputs);
        if (first.isUnknown() || first.contributions().isEmpty()) {
            return first;
        }
        Measured shaped = first.shapedBy(() -> drawn(formula, inputs), () -> ends(formula, inputs));
        return Bend.of(formula, first, inputs).map(shaped::bending).orElse(shaped);
    }

    /**
     * Quantiles drawn of late. The draws hang on nothing but the formula and what is known of its inputs, and an engine that is asked about again, or thought of
     * with another part in it, has most of them in common.
     */
    private static final Map<List<Object>, double[]> LATELY =
            Collections.synchronizedMap(new LinkedHashMap<>(128, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<List<Object>, double[]> eldest) {
                    return size() > MOST_REMEMBERED;
                }
            });

    /** Some fifty kilobytes each; enough for what a dozen engines, asked about in turns, have in common. */
    private static final int MOST_REMEMBERED = 400;

    private static double[] drawn(Formula formula, Function<String, Measured> inputs) {
        List<Object> key = new ArrayList<>();
        key.add(formula.sums());
        for (String name : formula.inputs()) {
            Measured input = inputs.apply(name);
            key.add(input.value());
            key.add(input.contributions());
        }
        double[] known = LATELY.get(key);
        if (known == null) {
            known = quantiles(formula.sampled(TRIALS, new BySources(formula, inputs)));
            LATELY.put(key, known);
        }
        return known;
    }

    /** The formula over every input as far out as one in a million lies, whatever moves together. */
    private static Interval ends(Formula formula, Function<String, Measured> inputs) {
        Interval[] box = formula.inputs().stream()
                .map(inputs)
                .map(m -> Interval.around(m.value(), m.standardUncertainty() == 0 ? 0 : m.halfWidth(1 - TAIL)))
                .toArray(Interval[]::new);
        return formula.over(box);
    }

    /**
     * What the trials say of a formula of measured figures.
     * @param trials      how many; a million for two or three digits of the interval (JCGM 101:2008 7.2)
     * @param probability coverage of the intervals, 0 to 1, both excluded
     * @throws IllegalArgumentException if the result leans on something of which nothing is known
     */
    public static SampleSummary summary(
            Formula formula, Function<String, Measured> inputs, int trials, double probability) {
        if (Measured.through(formula, inputs).isUnknown()) {
            throw new IllegalArgumentException(
                    "trials of " + formula.name() + " say nothing: an input that matters is unknown; enter it first");
        }
        return SampleSummary.of(formula.sampled(trials, new BySources(formula, inputs)), probability);
    }

    /** As {@link #summary}, for independent inputs of known laws. */
    public static SampleSummary ofLaws(Formula formula, Function<String, Law> laws, int trials, double probability) {
        List<Law> inOrder = formula.inputs().stream().map(laws).toList();
        SampleSource random = SampleSource.of(SEED);
        double[] results = formula.sampled(trials, (columns, count) -> {
            for (int i = 0; i < columns.length; i++) {
                inOrder.get(i).fill(random, columns[i], count);
            }
        });
        return SampleSummary.of(results, probability);
    }

    /** Measured figures: value plus the errors of their sources; which source moves which column by how much is laid out once. */
    private static final class BySources implements Formula.InputBlock {
        private final double[] values;
        private final Source[] sources;
        private final int[][] columnsOf; // [source][n]: columns it moves
        private final double[][] factorsOf; // [source][n]: by how much
        private final SourceSampler sampler = new SourceSampler(SampleSource.of(SEED));
        private final double[] draw = new double[Formula.Workspace.BLOCK];

        BySources(Formula formula, Function<String, Measured> inputs) {
            List<Measured> given = formula.inputs().stream().map(inputs).toList();
            values = given.stream().mapToDouble(Measured::value).toArray();
            Set<Source> all = new LinkedHashSet<>();
            given.forEach(input -> all.addAll(input.contributions().keySet()));
            sources = all.toArray(Source[]::new);
            columnsOf = new int[sources.length][];
            factorsOf = new double[sources.length][];
            for (int s = 0; s < sources.length; s++) {
                Source source = sources[s];
                columnsOf[s] = IntStream.range(0, values.length)
                        .filter(i -> matters(given.get(i), source))
                        .toArray();
                factorsOf[s] = IntStream.of(columnsOf[s])
                        .mapToDouble(i -> given.get(i).contributions().getOrDefault(source, 0.0))
                        .toArray();
            }
        }

        /** Whether the source moves the figure by more than a millionth of its doubt; what moves it less cannot be seen among the trials. */
        private static boolean matters(Measured figure, Source source) {
            double c = figure.contributions().getOrDefault(source, 0.0);
            return Math.abs(c) > NEGLIGIBLE * figure.standardUncertainty();
        }

        @Override
        public void fill(double[][] columns, int count) {
            for (int i = 0; i < columns.length; i++) {
                Arrays.fill(columns[i], 0, count, values[i]);
            }
            sampler.nextBlock();
            for (int s = 0; s < sources.length; s++) {
                if (columnsOf[s].length > 0) {
                    sampler.fill(sources[s], draw, count);
                    for (int n = 0; n < columnsOf[s].length; n++) {
                        add(factorsOf[s][n], draw, columns[columnsOf[s][n]], count);
                    }
                }
            }
        }

        private static void add(double factor, double[] draw, double[] column, int count) {
            for (int k = 0; k < count; k++) {
                column[k] += factor * draw[k];
            }
        }
    }

    private static double[] quantiles(double[] y) {
        Arrays.sort(y);
        double[] quantiles = new double[QUANTILES];
        for (int k = 0; k < QUANTILES; k++) {
            quantiles[k] = y[(int) ((long) k * (y.length - 1) / (QUANTILES - 1))];
        }
        return quantiles;
    }
}
