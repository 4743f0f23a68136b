package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * What may have happened at the bench, each with how likely the readings are under it: no mistake, each usual mistake alone, the likeliest with a
 * second one.
 * <p>Thousands are tried for every figure typed, so what an entry's column says of a disagreement is worked out once for all its mistakes.
 */
final class Explanations {
    /** Share of engines whose readings hold no mistake; a judgement, common practice, no source. */
    static final double NO_MISTAKE = 0.7;
    /** A figure outside its believable range is this much less likely to be right (natural logarithm). */
    private static final double UNBELIEVABLE = 12;
    /** A second mistake is held against its reading when the rest is three times as likely with it (logarithm); Jeffreys, Theory of
     * Probability, 1961, appendix B, where evidence becomes substantial: half a power of ten; from memory. */
    private static final double SPEAKS = 0.5 * Math.log(10);
    /** A mistake fits as well as another when the readings are no more than twenty times less likely with it (logarithm); a judgement. */
    private static final double AS_WELL = Math.log(20);
    /** So many single mistakes are looked at again for a second one beside them. */
    private static final int PAIRED = 6;
    /** An explanation this much less likely than another (logarithm) weighs nothing beside it, thousands of such neither: 1e-13. */
    private static final double NOTHING = 30;
    /** A square left that is so small a share of what was there is summed anew, not found by difference. */
    private static final double LOSES_DIGITS = 1e-6;

    /** In the place of the column of an entry that nothing checks. */
    private static final double[] UNCHECKED = {};

    /** In the place of a mistake where there is none. */
    static final int NONE = -1;

    /**
     * One explanation of the readings: no, one or two mistakes.
     * @param first        index of a hypothesis, or {@link #NONE}
     * @param second       index of a hypothesis, or {@link #NONE}
     * @param moveOfSecond what mends the second beside the first [SI]; the first is mended as if it were alone
     * @param score        logarithm of prior and likelihood, but for what all explanations share
     * @param needsFirst   whether the first is needed for it
     * @param needsSecond  whether the second is
     */
    record Explanation(
            int first, int second, double moveOfSecond, double score, boolean needsFirst, boolean needsSecond) {}

    private final List<Readings.Entry> entries;
    private final List<Hypothesis> hypotheses;
    private final double[][] columns; // of each entry
    private final Disagreement disagreement;
    private final double[] columnSquares; // of each entry, 0 where nothing checks it
    private final List<Scatter> scatter; // of each entry
    private final double[] scattered; // log-likelihood of it as it stands
    private final double[] logPrior; // of each hypothesis
    private final double[] alone; // score of each hypothesis as the only mistake
    private final double[] move; // what mends each [SI]
    private final double none;

    /**
     * Tries each mistake alone.
     * @param columns      of each entry that something checks, by index: how the disagreement moves with it [1/SI]
     * @param disagreement of the readings as they stand
     */
    Explanations(
            List<Readings.Entry> entries,
            List<Hypothesis> hypotheses,
            Map<Integer, double[]> columns,
            Disagreement disagreement) {
        this.entries = entries;
        this.hypotheses = hypotheses;
        this.columns = new double[entries.size()][];
        Arrays.fill(this.columns, UNCHECKED);
        columns.forEach((entry, column) -> this.columns[entry] = column);
        this.disagreement = disagreement;
        columnSquares = new double[entries.size()];
        columns.forEach((entry, column) -> columnSquares[entry] = Disagreement.dot(column, column));
        scatter = entries.stream().map(Scatter::of).toList();
        scattered = scatter.stream().mapToDouble(Scatter::asItStands).toArray();
        logPrior = Arrays.stream(priors()).map(Math::log).toArray();
        double base = base();
        none = Math.log(NO_MISTAKE) + base;
        alone = new double[hypotheses.size()];
        move = new double[hypotheses.size()];
        Residual asRead = new Residual(disagreement);
        for (int h = 0; h < alone.length; h++) {
            Hypothesis one = hypotheses.get(h);
            Mended mended = asRead.mend(one);
            move[h] = mended.move();
            alone[h] = logPrior[h] + base + 0.5 * disagreement.squares + mended.log() + ownChange(one, move[h]);
        }
    }

    /** Those that are not far less likely than the likeliest: first none, then single mistakes, most probable first, then pairs. */
    List<Explanation> likely() {
        double likeliest = Math.max(none, Arrays.stream(alone).max().orElse(none));
        List<Explanation> all = new ArrayList<>();
        all.add(new Explanation(NONE, NONE, 0, none, false, false));
        for (int h = 0; h < alone.length; h++) {
            if (alone[h] > likeliest - NOTHING) {
                all.add(new Explanation(h, NONE, 0, alone[h], true, false));
            }
        }
        all.subList(1, all.size())
                .sort(Comparator.comparingDouble(Explanation::score).reversed());
        for (int one : firsts()) {
            likeliest = addPairs(all, one, likeliest);
        }
        return all;
    }

    /** Adds the pairs with this first mistake; returns the score of the likeliest explanation by now. */
    private double addPairs(List<Explanation> all, int one, double likeliestSoFar) {
        double likeliest = likeliestSoFar;
        Hypothesis first = hypotheses.get(one);
        Residual after = new Residual(without(first, move[one]));
        for (int two = 0; two < alone.length; two++) {
            Hypothesis second = hypotheses.get(two);
            if (second.entry() == first.entry()) {
                continue;
            }
            Mended mended = after.mend(second);
            double gain = mended.log() + 0.5 * after.squares + ownChange(second, mended.move());
            double score = alone[one] + logPrior[two] - Math.log(NO_MISTAKE) + gain;
            if (score > likeliest - NOTHING) {
                likeliest = Math.max(likeliest, score);
                double gainOfOne = score - alone[two] - logPrior[one] + Math.log(NO_MISTAKE);
                // one that hardly adds to what the other explains is not held against its reading
                boolean needsOne = gainOfOne >= SPEAKS || gainOfOne >= gain;
                all.add(new Explanation(one, two, mended.move(), score, needsOne, gain >= SPEAKS));
            }
        }
        return likeliest;
    }

    /**
     * The best single mistake at each place by how well it fits alone, however often such a mistake is met: those that fit about as well as the
     * best.
     */
    List<Suspects.Suspect> asWell() {
        int[] named = IntStream.range(0, alone.length)
                .filter(h -> hypotheses.get(h).mistake() != Mistake.OTHER)
                .toArray();
        double best = Arrays.stream(named).mapToDouble(this::fit).max().orElse(0);
        Set<Integer> seen = new LinkedHashSet<>();
        return Arrays.stream(named)
                .filter(h -> fit(h) >= best - AS_WELL)
                .boxed()
                .sorted(Comparator.comparingDouble(this::fit)
                        .thenComparingDouble(h -> alone[h])
                        .reversed())
                .filter(h -> seen.add(hypotheses.get(h).entry()))
                .map(h -> suspect(h, move[h], 0))
                .toList();
    }

    /** Of the explanations, those with the same mistake at the same place together; most probable first. */
    List<Suspects.Suspect> ranked(List<Explanation> explanations) {
        double best = best(explanations);
        double total = total(explanations);
        Map<Hypothesis.Place, Weighed> byPlace = new LinkedHashMap<>();
        for (Explanation e : explanations) {
            double share = Math.exp(e.score() - best) / total;
            if (e.needsFirst()) {
                weigh(byPlace, e.first(), move[e.first()], share);
            }
            if (e.needsSecond()) {
                weigh(byPlace, e.second(), e.moveOfSecond(), share);
            }
        }
        return byPlace.values().stream()
                .map(w -> suspect(w.hypothesis, w.move, w.share))
                .sorted(Comparator.comparingDouble(Suspects.Suspect::share).reversed())
                .toList();
    }

    /** Posterior share of no mistake at all. */
    double noMistake(List<Explanation> explanations) {
        return Math.exp(none - best(explanations)) / total(explanations);
    }

    private static double best(List<Explanation> explanations) {
        return explanations.stream().mapToDouble(Explanation::score).max().orElse(0);
    }

    private static double total(List<Explanation> explanations) {
        double best = best(explanations);
        return explanations.stream()
                .mapToDouble(e -> Math.exp(e.score() - best))
                .sum();
    }

    /** What a mistake at a place weighs so far, and the likeliest way it happened by the weight it had when it came on top. */
    private static final class Weighed {
        private int hypothesis;
        private double move;
        private double share;
    }

    private void weigh(Map<Hypothesis.Place, Weighed> byPlace, int hypothesis, double mend, double share) {
        Weighed w = byPlace.computeIfAbsent(hypotheses.get(hypothesis).place(), p -> new Weighed());
        if (share > w.share) {
            w.hypothesis = hypothesis;
            w.move = mend;
        }
        w.share += share;
    }

    private Suspects.Suspect suspect(int hypothesis, double mend, double share) {
        Hypothesis h = hypotheses.get(hypothesis);
        return new Suspects.Suspect(h.mistake(), entries.get(h.entry()), h.reading(), mend, share);
    }

    private double fit(int hypothesis) {
        return alone[hypothesis] - logPrior[hypothesis];
    }

    /** The likeliest single mistakes, one for each place, most probable first; by index. */
    private List<Integer> firsts() {
        List<Integer> firsts = new ArrayList<>();
        Set<Hypothesis.Place> places = new HashSet<>();
        while (firsts.size() < PAIRED) {
            int next = -1;
            for (int h = 0; h < hypotheses.size(); h++) {
                boolean better = next < 0 || alone[h] > alone[next];
                if (better && !places.contains(hypotheses.get(h).place())) {
                    next = h;
                }
            }
            if (next < 0) {
                return firsts;
            }
            firsts.add(next);
            places.add(hypotheses.get(next).place());
        }
        return firsts;
    }

    /** Prior of each hypothesis: the mistakes by weight, each shared evenly among the places where it could have happened. */
    private double[] priors() {
        Map<Mistake, Double> places = new HashMap<>();
        Map<Mistake, Set<Integer>> at = new HashMap<>();
        for (Hypothesis h : hypotheses) {
            if (at.computeIfAbsent(h.mistake(), m -> new HashSet<>()).add(h.entry())) {
                places.merge(h.mistake(), 1.0, Double::sum);
            }
        }
        double weights = places.keySet().stream().mapToDouble(Mistake::weight).sum();
        double[] prior = new double[hypotheses.size()];
        for (int h = 0; h < prior.length; h++) {
            Hypothesis one = hypotheses.get(h);
            prior[h] = (1 - NO_MISTAKE)
                    * one.mistake().weight()
                    / weights
                    / places.getOrDefault(one.mistake(), 1.0)
                    * one.share();
        }
        return prior;
    }

    /** Log-likelihood of the readings as they stand. */
    private double base() {
        double log = -0.5 * disagreement.squares;
        for (Readings.Entry entry : entries) {
            log -= believable(entry, entry.observation().value()) ? 0 : UNBELIEVABLE;
        }
        for (double each : scattered) {
            log += each;
        }
        return log;
    }

    /** The disagreement left when one mistake is mended. */
    private Disagreement without(Hypothesis one, double move) {
        double[] column = columns[one.entry()];
        return column.length == 0 ? disagreement : disagreement.moved(column, move / divisor(one));
    }

    /**
     * What is left when a mistake is mended.
     * @param move best move of the reading itself [SI]
     * @param log  log-likelihood of the disagreement left, the vagueness of the move integrated out
     */
    private record Mended(double move, double log) {}

    /** A disagreement made ready for many mistakes: what each entry's column says of it is worked out once. */
    private final class Residual {
        private final Disagreement all;
        final double squares;
        private final double[] along; // of each entry, its column times the residual

        Residual(Disagreement all) {
            this.all = all;
            squares = all.squares;
            along = new double[entries.size()];
            for (int entry = 0; entry < along.length; entry++) {
                along[entry] = columns[entry].length == 0 ? 0 : Disagreement.dot(columns[entry], all.residual);
            }
        }

        Mended mend(Hypothesis h) {
            double[] column = columns[h.entry()];
            if (column.length == 0) {
                return withinOnly(all, h);
            }
            double scale = 1 / divisor(h);
            double a = scale * scale * columnSquares[h.entry()];
            double left = squares + h.move() * (2 * scale * along[h.entry()] + h.move() * a);
            if (left < LOSES_DIGITS * squares) {
                left = all.moved(column, scale * h.move()).squares;
            }
            if (h.spread() == 0) {
                return new Mended(h.move(), -0.5 * left);
            }
            double b = -scale * along[h.entry()] - h.move() * a;
            double weight = 1 / (h.spread() * h.spread());
            double mendedLeft = left - b * b / (a + weight);
            return new Mended(h.move() + b / (a + weight), -0.5 * mendedLeft - 0.5 * Math.log(1 + a / weight));
        }
    }

    /** A slip that only the other readings of its own set can show. */
    private Mended withinOnly(Disagreement all, Hypothesis h) {
        double log = -0.5 * all.squares;
        ReadingSet set = entries.get(h.entry()).set();
        if (h.spread() == 0 || h.reading() < 0 || set == null) {
            return new Mended(h.move(), log);
        }
        double others = (set.mean() * set.count() - set.values().get(h.reading())) / (set.count() - 1);
        double move = others - set.values().get(h.reading());
        double narrowing = set.pooled() / h.spread();
        return new Mended(move, log + Math.log(Math.min(1, narrowing)) - 0.5 * move * move / (h.spread() * h.spread()));
    }

    /** A slip in one reading of a set moves the mean by its share only. */
    private double divisor(Hypothesis h) {
        ReadingSet set = entries.get(h.entry()).set();
        return h.reading() < 0 || set == null ? 1 : set.count();
    }

    /** How mending changes the likelihood of the entry by itself: its scatter, and whether it can be believed. */
    private double ownChange(Hypothesis h, double move) {
        Readings.Entry entry = entries.get(h.entry());
        double before = entry.observation().value();
        double after = before + move / divisor(h);
        double believed =
                (believable(entry, after) ? UNBELIEVABLE : 0) - (believable(entry, before) ? UNBELIEVABLE : 0);
        double scatters = h.reading() < 0 ? 0 : scatter.get(h.entry()).moved(h.reading(), move) - scattered[h.entry()];
        return scatters + believed;
    }

    private static boolean believable(Readings.Entry entry, double value) {
        return !entry.term().isRead() || entry.term().believable().holds(value);
    }
}
