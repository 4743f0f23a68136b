package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Reconciliation;
import longthrow.core.measurement.Source;
import longthrow.core.term.Term;

/**
 * Names the readings that are probably wrong, by testing each usual mistake, and pairs of them, against everything that was read.
 * <p>For each hypothesis the likelihood is that of the disagreement left when the reading is mended: chi-squared of the reconciliation, the scatter
 * within each set of readings (scale unknown, prior from the table of pooled repeatability), and whether the figure is believable at all. Bayes' rule
 * then gives each its share. Nothing is corrected: the shares say what to read again first.
 */
final class Suspects {
    /** [m]. */
    private static final double INCH = 25.4e-3;
    /** Share of engines whose readings hold no mistake; a judgement, common practice, no source. */
    static final double NO_MISTAKE = 0.7;
    /** Alarm when the share of "no mistake" falls below this. */
    static final double ALARM_BELOW = 0.5;
    /** A figure outside its believable range is this much less likely to be right (natural logarithm). */
    private static final double UNBELIEVABLE = 12;
    /** Rounds of giving slack. */
    private static final int ROUNDS = 8;
    /** Usual difference across the pin axis, rock of the piston included, standard deviation [m]; common practice, no source. */
    private static final double USUAL_ROCK = 0.15e-3;
    /** Usual difference along the pin axis, standard deviation [m]; common practice, no source. */
    private static final double USUAL_TILT = 0.05e-3;
    /** A second mistake is held against its reading when the rest is three times as likely with it (logarithm); Jeffreys, Theory of
     * Probability, 1961, appendix B, where evidence becomes substantial: half a power of ten; from memory. */
    private static final double SPEAKS = 0.5 * Math.log(10);
    /** A mistake fits as well as another when the readings are no more than twenty times less likely with it (logarithm); a judgement. */
    private static final double AS_WELL = Math.log(20);
    /** So many single mistakes are looked at again for a second one beside them. */
    private static final int PAIRED = 6;
    /** Deck clearance of an engine that runs, 95 times in 100 [m]: the usual range widened by a third; common practice, no source. */
    private static final double MOST_PROUD = -1.1e-3;

    private static final double MOST_BELOW = 3.6e-3;
    /** Middle of the usual rod lengths, in strokes; common practice, no source. */
    private static final double ROD_STROKES = 1.75;
    /** Rods stand this near to that, 95 times in 100 [m]: 1.2 to 2.3 strokes of 80 mm; common practice, no source. */
    private static final double ROD_WITHIN = 45e-3;

    private static final String USUAL = " usual";
    private static final String ROD_BY_STROKE = Term.ROD_RATIO.path() + USUAL;

    /**
     * A mistake at a place with its posterior share.
     * @param mistake what happened
     * @param entry   where
     * @param reading index of the one reading of a set; -1 for all
     * @param move    what mends it [SI]
     * @param share   posterior, 0 to 1
     */
    record Suspect(Mistake mistake, Readings.Entry entry, int reading, double move, double share) {}

    private final List<Readings.Entry> entries;
    private final List<Hypothesis> hypotheses;
    private final Map<Integer, double[]> columns = new HashMap<>();
    private final Disagreement disagreement;
    /** Of each entry. */
    private final List<Scatter> scatter;

    private final double noMistake;
    private final List<Suspect> suspects;
    private final List<Suspect> asWell;
    private final List<DefaultUsed> assumed;

    /**
     * One explanation of the readings: no, one or two mistakes.
     * @param needed   whether each mistake is needed for it
     * @param logPrior of the first mistake
     */
    private record Explanation(
            List<Hypothesis> mistakes, List<Double> moves, double score, List<Boolean> needed, double logPrior) {}

    private Suspects(Readings readings) {
        entries = readings.entries();
        hypotheses = Hypotheses.of(entries);
        Set<String> spokenOf = new HashSet<>();
        entries.forEach(e -> spokenOf.addAll(e.observation().formula().inputs()));
        List<Observation> usual = usualEngine(readings.model()).stream()
                .filter(o -> spokenOf.containsAll(o.formula().inputs()))
                .toList();
        List<Integer> all = checked(entries, usual);
        List<Integer> checked = all.stream().filter(i -> i < entries.size()).toList();
        List<Observation> kept = new ArrayList<>(
                checked.stream().map(i -> byTable(entries.get(i))).toList());
        all.stream().filter(i -> i >= entries.size()).forEach(i -> kept.add(usual.get(i - entries.size())));
        kept.addAll(levelDeck(kept));
        assumed = assumed(kept);
        if (kept.isEmpty()) {
            disagreement = new Disagreement(new double[0]);
        } else {
            Set<String> names = new LinkedHashSet<>();
            kept.forEach(o -> names.addAll(o.formula().inputs()));
            List<Reconciliation.Sought> sought = readings.sought(List.of()).stream()
                    .filter(s -> names.contains(s.name()))
                    .toList();
            Reconciliation fit = Reconciliation.linearisedAt(kept, sought, steady(kept, sought));
            disagreement = new Disagreement(fit.whitenedResidual());
            for (int k = 0; k < checked.size(); k++) {
                columns.put(checked.get(k), fit.residualPerUnitOf(k));
            }
        }
        scatter = entries.stream().map(Scatter::of).toList();
        List<Explanation> explanations = explain();
        asWell = asWell(explanations);
        double best =
                explanations.stream().mapToDouble(Explanation::score).max().orElse(0);
        double total = 0;
        double none = 0;
        Map<Hypothesis.Place, Suspect> byPlace = new LinkedHashMap<>();
        for (Explanation e : explanations) {
            double weight = Math.exp(e.score() - best);
            total += weight;
            if (e.mistakes().isEmpty()) {
                none = weight;
            }
            for (int k = 0; k < e.mistakes().size(); k++) {
                if (!e.needed().get(k)) {
                    continue;
                }
                Hypothesis h = e.mistakes().get(k);
                Suspect suspect = new Suspect(
                        h.mistake(),
                        entries.get(h.entry()),
                        h.reading(),
                        e.moves().get(k),
                        weight);
                byPlace.merge(h.place(), suspect, Suspects::together);
            }
        }
        noMistake = none / total;
        double sum = total;
        suspects = byPlace.values().stream()
                .map(s -> new Suspect(s.mistake(), s.entry(), s.reading(), s.move(), s.share() / sum))
                .sorted(Comparator.comparingDouble(Suspect::share).reversed())
                .toList();
    }

    /** The best single mistake at each place by how well it fits alone, however often such a mistake is met: those that fit about as well as the best. */
    private List<Suspect> asWell(List<Explanation> explanations) {
        List<Explanation> single = explanations.stream()
                .filter(e -> e.mistakes().size() == 1 && e.mistakes().get(0).mistake() != Mistake.OTHER)
                .sorted(Comparator.comparingDouble((Explanation e) -> e.score() - e.logPrior())
                        .reversed())
                .toList();
        double best =
                single.isEmpty() ? 0 : single.get(0).score() - single.get(0).logPrior();
        Map<Integer, Suspect> byEntry = new LinkedHashMap<>();
        for (Explanation e : single) {
            Hypothesis h = e.mistakes().get(0);
            if (e.score() - e.logPrior() >= best - AS_WELL) {
                byEntry.putIfAbsent(
                        h.entry(),
                        new Suspect(
                                h.mistake(),
                                entries.get(h.entry()),
                                h.reading(),
                                e.moves().get(0),
                                0));
            }
        }
        return List.copyOf(byEntry.values());
    }

    /** Single mistakes that would mend it about as well as the likeliest, one for each place; their share is not said. */
    List<Suspect> asWell() {
        return asWell;
    }

    private static Suspect together(Suspect a, Suspect b) {
        Suspect larger = a.share() >= b.share() ? a : b;
        return new Suspect(larger.mistake(), larger.entry(), larger.reading(), larger.move(), a.share() + b.share());
    }

    static Suspects of(Readings readings) {
        return new Suspects(readings);
    }

    /** What was taken for granted of any engine to weigh the readings by; nothing of it enters a figure. */
    List<DefaultUsed> assumed() {
        return assumed;
    }

    private static List<DefaultUsed> assumed(List<Observation> kept) {
        List<DefaultUsed> assumed = new ArrayList<>();
        for (Observation o : kept) {
            if (o.id().equals(Term.DECK_CLEARANCE.path() + USUAL)) {
                assumed.add(taken(String.format(
                        Locale.ROOT,
                        "an engine that runs has its piston %.1f mm (%.3f in) proud of the deck to %.1f mm (%.3f in) below it",
                        -1e3 * MOST_PROUD,
                        -MOST_PROUD / INCH,
                        1e3 * MOST_BELOW,
                        MOST_BELOW / INCH)));
            } else if (o.id().equals(ROD_BY_STROKE)) {
                assumed.add(taken(String.format(
                        Locale.ROOT,
                        "an engine that runs has a rod within %.0f mm (%.2f in) of %.2f times its stroke",
                        1e3 * ROD_WITHIN,
                        ROD_WITHIN / INCH,
                        ROD_STROKES)));
            } else if (o.id().equals(EngineModel.TILT_SIDES + USUAL)) {
                assumed.add(level("across the pin", USUAL_ROCK));
            } else if (o.id().equals(EngineModel.TILT_ENDS + USUAL)) {
                assumed.add(level("along the pin", USUAL_TILT));
            }
        }
        return assumed;
    }

    private static DefaultUsed level(String way, double standard) {
        double most = Source.NORMAL_95 * standard;
        return taken(String.format(
                Locale.ROOT, "deck and crown stand level %s within %.2f mm (%.3f in)", way, 1e3 * most, most / INCH));
    }

    private static DefaultUsed taken(String what) {
        return new DefaultUsed(
                "what the readings are weighed by",
                what + ", 95 times in 100; no figure is worked out from it",
                "common practice, no source");
    }

    /** Posterior share of "nothing is wrong". */
    double noMistake() {
        return noMistake;
    }

    /** Whether the owner should be told. */
    boolean alarm() {
        return noMistake < ALARM_BELOW;
    }

    /**
     * How far an error in a reading stands out of everything that checks it, in standard uncertainties; a slip in one reading of a set also stands out
     * of the set.
     * @param entry   index
     * @param reading any index of the set for a slip in one reading; -1 for an error in all
     * @param error   [SI]
     */
    double standardUncertaintiesOf(int entry, int reading, double error) {
        double[] column = columns.get(entry);
        ReadingSet set = entries.get(entry).set();
        boolean one = reading >= 0 && set != null && set.count() > 1;
        double share = one ? 1.0 / java.util.Objects.requireNonNull(set).count() : 1;
        double outside = column == null ? 0 : share * share * error * error * square(column);
        double inside = one
                ? error
                        * error
                        * (1 - share)
                        / (java.util.Objects.requireNonNull(set).pooled() * set.pooled())
                : 0;
        return Math.sqrt(outside + inside);
    }

    /**
     * Probability that the one reading of two is the wrong one, by all that checks them from outside.
     * @param place   of two readings
     * @param reading 0 or 1
     */
    double wrongOfTwo(String place, int reading) {
        double wrong = 0.5;
        for (int i = 0; i < entries.size(); i++) {
            ReadingSet set = entries.get(i).set();
            double[] column = columns.get(i);
            if (entries.get(i).place().equals(place) && set != null && set.count() == 2 && column != null) {
                double apart = set.values().get(1) - set.values().get(0);
                double firstWrong = fitMoved(column, apart / 2);
                double secondWrong = fitMoved(column, -apart / 2);
                double first = 1 / (1 + Math.exp(secondWrong - firstWrong));
                wrong = reading == 0 ? first : 1 - first;
            }
        }
        return wrong;
    }

    /** Log-likelihood of the disagreement left when one entry is moved. */
    private double fitMoved(double[] column, double move) {
        return -0.5 * disagreement.moved(column, move).squares;
    }

    /** Most probable first; shares of different places may add to more than one when two mistakes are likely together. */
    List<Suspect> ranked() {
        return suspects;
    }

    /**
     * Indices of the entries that something else checks. A figure sought that only one entry depends on takes up whatever that entry says, so the entry
     * is free of any check and leaves; that may free others.
     */
    private static List<Integer> checked(List<Readings.Entry> entries, List<Observation> usual) {
        List<Formula> formulas = new ArrayList<>();
        entries.forEach(e -> formulas.add(e.observation().formula()));
        usual.forEach(o -> formulas.add(o.formula()));
        Set<Integer> left = new LinkedHashSet<>();
        for (int i = 0; i < formulas.size(); i++) {
            left.add(i);
        }
        boolean changed = true;
        while (changed) {
            Map<String, Integer> uses = new HashMap<>();
            for (int i : left) {
                formulas.get(i).inputs().forEach(name -> uses.merge(name, 1, Integer::sum));
            }
            Set<Integer> free = new HashSet<>();
            for (int i : left) {
                if (formulas.get(i).inputs().stream().anyMatch(name -> uses.getOrDefault(name, 0) == 1)) {
                    free.add(i);
                }
            }
            changed = left.removeAll(free);
        }
        return List.copyOf(left);
    }

    /**
     * What an engine that runs shows, so that a slip nothing else checks still stands out when it leads to no engine at all: deck clearance from 1.1 mm
     * proud to 3.6 mm below, the usual range widened by a third, and a rod of about 1.75 strokes; common practice, no source.
     */
    private static List<Observation> usualEngine(EngineModel model) {
        return List.of(usual(model, Term.DECK_CLEARANCE, MOST_PROUD, MOST_BELOW), rodByStroke());
    }

    /** Rod against stroke, as a difference: a ratio is no straight line where the stroke is out by half or by double. */
    private static Observation rodByStroke() {
        Source source = Source.at95(ROD_BY_STROKE, Source.Kind.ASSUMED, Term.ROD_RATIO.label(), ROD_WITHIN);
        Expression over = Expression.input(Term.ROD_LENGTH.path())
                .minus(Expression.input(Term.STROKE.path()).times(ROD_STROKES));
        return new Observation(ROD_BY_STROKE, Formula.of(ROD_BY_STROKE, over), 0, Map.of(source, 1.0));
    }

    /** Within the range 95 times in 100. */
    private static Observation usual(EngineModel model, Term term, double least, double most) {
        Source source = Source.at95(term.path() + USUAL, Source.Kind.ASSUMED, term.label(), 0.5 * (most - least));
        return new Observation(
                term.path() + USUAL, model.formula(term).orElseThrow(), 0.5 * (least + most), Map.of(source, 1.0));
    }

    /** A deck and a piston that stand level within what a bench shows, so that a slip at one end of a pair is told from one at the other. */
    private static List<Observation> levelDeck(List<Observation> kept) {
        List<Observation> level = new ArrayList<>();
        for (String tilt : List.of(EngineModel.TILT_SIDES, EngineModel.TILT_ENDS)) {
            if (kept.stream().anyMatch(o -> o.formula().inputs().contains(tilt))) {
                double usual = tilt.equals(EngineModel.TILT_SIDES) ? USUAL_ROCK : USUAL_TILT;
                Source source = Source.known(tilt + USUAL, Source.Kind.ASSUMED, tilt, usual);
                level.add(new Observation(
                        tilt + USUAL, Formula.of(tilt, Expression.input(tilt)), 0, Map.of(source, 1.0)));
            }
        }
        return level;
    }

    /**
     * Figures that most readings agree on, however wild a few are: readings are given slack by as much as they stand out, again and again
     * (iteratively reweighted least squares; Huber and Ronchetti, Robust Statistics, 2009, section 7.8, from memory).
     */
    private static Map<String, Double> steady(List<Observation> kept, List<Reconciliation.Sought> sought) {
        List<Observation> loose = new ArrayList<>(kept);
        Map<String, Double> point = new HashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            Reconciliation fit;
            try {
                fit = Reconciliation.of(loose, sought);
            } catch (NotConvergedException e) {
                return point; // the last place that held
            }
            sought.forEach(s -> point.put(s.name(), fit.figure(s.name()).value()));
            for (int i = 0; i < loose.size(); i++) {
                Observation o = kept.get(i);
                double out = Math.abs(o.value() - o.formula().at(name -> point.getOrDefault(name, 0.0)));
                Map<Source, Double> errors = new LinkedHashMap<>(o.errors());
                errors.put(Source.known(o.id() + " slack", Source.Kind.ASSUMED, o.id(), out), 1.0);
                loose.set(i, new Observation(o.id(), o.formula(), o.value(), errors));
            }
        }
        return point;
    }

    /** The observation weighed by the table alone: a slip within a set must not hide by making the whole set look vague. */
    private static Observation byTable(Readings.Entry entry) {
        ReadingSet set = entry.set();
        if (set == null) {
            return entry.observation();
        }
        Map<Source, Double> errors = new LinkedHashMap<>();
        entry.observation().errors().forEach((source, factor) -> {
            if (source.kind() == Source.Kind.SCATTER) {
                double u = set.pooled() / Math.sqrt(set.count());
                errors.put(
                        new Source(source.id(), source.kind(), source.label(), u, source.degreesOfFreedom(), u),
                        factor);
            } else {
                errors.put(source, factor);
            }
        });
        Observation o = entry.observation();
        return new Observation(o.id(), o.formula(), o.value(), errors);
    }

    private List<Explanation> explain() {
        double[] logPrior = Arrays.stream(priors()).map(Math::log).toArray();
        List<Explanation> all = new ArrayList<>();
        double base = base();
        double none = Math.log(NO_MISTAKE) + base;
        all.add(new Explanation(List.of(), List.of(), none, List.of(), Math.log(NO_MISTAKE)));
        List<Explanation> singles = new ArrayList<>();
        double[] alone = new double[hypotheses.size()];
        for (int h = 0; h < hypotheses.size(); h++) {
            Explanation single = single(hypotheses.get(h), logPrior[h], base);
            alone[h] = single.score();
            singles.add(single);
        }
        singles.sort(Comparator.comparingDouble(Explanation::score).reversed());
        all.addAll(singles);
        Set<Hypothesis.Place> places = new HashSet<>();
        for (Explanation first : singles) {
            Hypothesis one = first.mistakes().get(0);
            if (places.size() >= PAIRED) {
                break;
            }
            if (!places.add(one.place())) {
                continue;
            }
            Disagreement mended = without(one, first.moves().get(0));
            for (int h = 0; h < hypotheses.size(); h++) {
                Hypothesis two = hypotheses.get(h);
                if (two.entry() != one.entry()) {
                    all.add(pair(first, mended, two, new Odds(first.logPrior(), logPrior[h], alone[h])));
                }
            }
        }
        return all;
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
        for (Scatter each : scatter) {
            log += each.asItStands();
        }
        return log;
    }

    private Explanation single(Hypothesis h, double logPrior, double base) {
        Mended mended = mend(disagreement, h);
        return new Explanation(
                List.of(h),
                List.of(mended.move()),
                logPrior + base + 0.5 * disagreement.squares + mended.log() + ownChange(h, mended.move()),
                List.of(true),
                logPrior);
    }

    /**
     * What is known of the two of a pair before they are put together.
     * @param priorOfOne logarithm
     * @param priorOfTwo logarithm
     * @param twoAlone   score of the second as the only mistake
     */
    private record Odds(double priorOfOne, double priorOfTwo, double twoAlone) {}

    /** The disagreement left when one mistake is mended. */
    private Disagreement without(Hypothesis one, double move) {
        double[] column = columns.get(one.entry());
        return column == null ? disagreement : disagreement.moved(column, move / divisor(one));
    }

    /**
     * Two mistakes together; one that hardly adds to what the other explains is not held against its reading.
     * @param after the disagreement left when the first is mended
     */
    private Explanation pair(Explanation first, Disagreement after, Hypothesis two, Odds odds) {
        Mended mended = mend(after, two);
        double gain = mended.log() + 0.5 * after.squares + ownChange(two, mended.move());
        double score = first.score() + odds.priorOfTwo() - Math.log(NO_MISTAKE) + gain;
        double gainOfOne = score - odds.twoAlone() - odds.priorOfOne() + Math.log(NO_MISTAKE);
        boolean needsOne = gainOfOne >= SPEAKS || gainOfOne >= gain;
        return new Explanation(
                List.of(first.mistakes().get(0), two),
                List.of(first.moves().get(0), mended.move()),
                score,
                List.of(needsOne, gain >= SPEAKS),
                first.logPrior());
    }

    /**
     * What is left when a mistake is mended.
     * @param move best move of the reading itself [SI]
     * @param log  log-likelihood of the disagreement left, the vagueness of the move integrated out
     */
    private record Mended(double move, double log) {}

    private Mended mend(Disagreement all, Hypothesis h) {
        double[] column = columns.get(h.entry());
        if (column == null) {
            return withinOnly(all, h);
        }
        double[] r = all.residual;
        double scale = 1 / divisor(h);
        double left = 0;
        double a = 0;
        double b = 0;
        for (int k = 0; k < r.length; k++) {
            double c = scale * column[k];
            double moved = r[k] + h.move() * c;
            left += moved * moved;
            a += c * c;
            b -= c * moved;
        }
        if (h.spread() == 0) {
            return new Mended(h.move(), -0.5 * left);
        }
        double weight = 1 / (h.spread() * h.spread());
        double mendedLeft = left - b * b / (a + weight);
        return new Mended(h.move() + b / (a + weight), -0.5 * mendedLeft - 0.5 * Math.log(1 + a / weight));
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
        Scatter own = scatter.get(h.entry());
        return own.moved(h.reading(), move) - own.asItStands() + believed;
    }

    private static boolean believable(Readings.Entry entry, double value) {
        return !entry.term().isRead() || entry.term().believable().holds(value);
    }

    /**
     * The scatter within a set, its true size unknown about the table's: what does not change while mistakes are tried.
     * @param squares about the mean, of the readings as they stand [SI]
     * @param least   of such squares, by the step of the instrument [SI]
     * @param table   what the table of pooled repeatability weighs [SI]
     * @param weight  of the logarithm
     */
    private record Scatter(
            List<Double> values, double mean, double squares, double least, double table, double weight) {
        /** None: nothing scatters. */
        private static final Scatter NONE = new Scatter(List.of(), 0, 0, 0, 1, 0);

        static Scatter of(Readings.Entry entry) {
            ReadingSet set = entry.set();
            if (set == null || set.count() < 2) {
                return NONE;
            }
            double step = set.instrument().resolution();
            return new Scatter(
                    set.values(),
                    set.mean(),
                    set.squares(),
                    (set.count() - 1) * step * step / 12,
                    set.pooledFreedom() * set.pooled() * set.pooled(),
                    -0.5 * (set.pooledFreedom() + set.count() - 1));
        }

        /** Log-likelihood of the readings as they stand. */
        double asItStands() {
            return weighed(squares);
        }

        /** Log-likelihood when one is moved; -1 for all, which changes nothing between them. */
        double moved(int reading, double move) {
            int n = values.size();
            if (reading < 0 || n == 0) {
                return asItStands();
            }
            double distance = values.get(reading) - mean;
            return weighed(squares + 2 * move * distance + move * move * (n - 1) / n);
        }

        /** Not log1p, ten times slower: to a sum of such terms the digits it keeps for small arguments are nothing. */
        private double weighed(double squaresNow) {
            return weight == 0 ? 0 : weight * Math.log(1 + Math.max(squaresNow, least) / table);
        }
    }

    /** How far the readings are from each other, whitened. */
    private static final class Disagreement {
        final double[] residual;
        final double squares;

        Disagreement(double[] residual) {
            this.residual = residual;
            this.squares = square(residual);
        }

        /** What is left when a reading is moved. */
        Disagreement moved(double[] column, double move) {
            double[] after = residual.clone();
            for (int k = 0; k < after.length; k++) {
                after[k] += move * column[k];
            }
            return new Disagreement(after);
        }
    }

    private static double square(double[] r) {
        double sum = 0;
        for (double x : r) {
            sum += x * x;
        }
        return sum;
    }
}
