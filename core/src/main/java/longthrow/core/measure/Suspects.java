package longthrow.core.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Reconciliation;
import longthrow.core.measurement.Source;

/**
 * Names the readings that are probably wrong, by testing each usual mistake, and pairs of them, against everything that was read.
 * <p>For each hypothesis the likelihood is that of the disagreement left when the reading is mended: chi-squared of the reconciliation, the scatter
 * within each set of readings (scale unknown, prior from the table of pooled repeatability), and whether the figure is believable at all. Bayes' rule
 * then gives each its share. Nothing is corrected: the shares say what to read again first.
 */
final class Suspects {
    /** Alarm when the share of "no mistake" falls below this. */
    static final double ALARM_BELOW = 0.5;
    /** Rounds of giving slack. */
    private static final int ROUNDS = 8;

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
    private final Map<Integer, double[]> columns = new HashMap<>();
    private final Disagreement disagreement;
    private final double noMistake;
    private final List<Suspect> suspects;
    private final List<Suspect> asWell;
    private final List<DefaultUsed> assumed;

    private Suspects(Figures figures) {
        Readings readings = figures.readings();
        entries = readings.entries();
        Set<String> spokenOf = new HashSet<>();
        entries.forEach(e -> spokenOf.addAll(e.observation().formula().inputs()));
        List<Observation> usual = Stream.concat(
                        UsualEngine.of(readings.model()).stream(), UsualEngine.meetings(figures).stream())
                .filter(o -> spokenOf.containsAll(o.formula().inputs()))
                .toList();
        List<Integer> all = checked(entries, usual);
        List<Integer> checked = all.stream().filter(i -> i < entries.size()).toList();
        List<Observation> kept = new ArrayList<>(
                checked.stream().map(i -> byTable(entries.get(i))).toList());
        all.stream().filter(i -> i >= entries.size()).forEach(i -> kept.add(usual.get(i - entries.size())));
        kept.addAll(UsualEngine.levelDeck(kept));
        assumed = UsualEngine.assumed(kept);
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
        Explanations tried = new Explanations(entries, Hypotheses.of(entries), columns, disagreement);
        List<Explanations.Explanation> explanations = tried.likely();
        asWell = tried.asWell();
        noMistake = tried.noMistake(explanations);
        suspects = tried.ranked(explanations);
    }

    /** Single mistakes that would mend it about as well as the likeliest, one for each place; their share is not said. */
    List<Suspect> asWell() {
        return asWell;
    }

    /** Of the figures as they are read. */
    static Suspects of(Figures figures) {
        return new Suspects(figures);
    }

    /** What was taken for granted of any engine to weigh the readings by; nothing of it enters a figure. */
    List<DefaultUsed> assumed() {
        return assumed;
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
        double outside = column == null ? 0 : share * share * error * error * Disagreement.dot(column, column);
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
}
