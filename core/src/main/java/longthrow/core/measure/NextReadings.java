package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.NextReading;
import longthrow.core.build.Build;
import longthrow.core.build.Instrument;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Reconciliation;
import longthrow.core.measurement.Source;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * Which reading is worth taking next: for each reading that could be taken, and each instrument at hand, the doubt that a figure may be expected to have
 * after it, per minute. The expectation is exact under the model: the reading is added to the rest as it would be if it came out as foretold.
 */
final class NextReadings {
    /** Numbers of readings to take in one go that are weighed against each other. */
    private static final int[] AT_ONCE = {1, 3, 5};
    /** A reading that cuts less than this share of the doubt is not worth naming. */
    private static final double WORTH_WHILE = 0.01;

    /**
     * One thing that could be done.
     * @param term       to read
     * @param instrument to read it with
     * @param count      how many times
     * @param joins      index of the entry whose set the readings join; -1 for a new set
     */
    record Candidate(Term term, Instrument instrument, int count, int joins) {}

    /** What a candidate may be expected to do: 95 % doubt after it [SI], infinite when the figure stays unknown, and the minutes it takes. */
    record Expected(Candidate candidate, double after, double minutes) {}

    private final Build build;
    private final Figures figures;

    NextReadings(Figures figures) {
        this.figures = figures;
        this.build = figures.build();
    }

    /** Readings for a figure, best first; empty when no reading would help. */
    List<NextReading> forTerm(Term target, int most) {
        Optional<Formula> formula = figures.model().formula(target);
        if (formula.isEmpty()) {
            return List.of();
        }
        double now = figures.figure(target).map(Measured::expanded).orElse(Double.POSITIVE_INFINITY);
        List<NextReading> next = new ArrayList<>();
        Set<Term> named = new LinkedHashSet<>();
        for (Expected expected : ranked(target, now)) {
            Candidate c = expected.candidate();
            boolean helps = Double.isInfinite(now)
                    ? !Double.isInfinite(expected.after())
                    : now - expected.after() > WORTH_WHILE * now;
            if (helps && named.add(c.term()) && next.size() < most) {
                String times = c.count() == 1 ? "" : c.count() + " times, ";
                next.add(new NextReading(
                        c.term(),
                        c.instrument().key(),
                        times + c.term().reading().how(),
                        target,
                        now,
                        expected.after(),
                        expected.minutes(),
                        c.joins() >= 0
                                ? "again, beside what was read"
                                : build.has(c.term()) ? "by another way than before" : "never read"));
            }
        }
        return next;
    }

    /** Every candidate with what it may be expected to do, best doubt cut per minute first. */
    List<Expected> ranked(Term target, double now) {
        Formula formula = figures.model().formula(target).orElseThrow();
        List<Expected> all = new ArrayList<>();
        for (Candidate candidate : candidates(formula)) {
            double minutes = candidate.count() * build.minutes(candidate.term().reading());
            all.add(new Expected(candidate, after(formula, candidate), minutes));
        }
        Comparator<Expected> best = Double.isInfinite(now)
                ? Comparator.comparingDouble((Expected e) -> Double.isInfinite(e.after()) ? 1 : 0)
                        .thenComparingDouble(Expected::minutes)
                        .thenComparingDouble(Expected::after)
                : Comparator.comparingDouble((Expected e) -> -(now - e.after()) / e.minutes());
        all.sort(best);
        return all;
    }

    /** Terms whose reading shares a figure with the formula, directly or through what was read, each with the instruments that suit it. */
    private List<Candidate> candidates(Formula formula) {
        Set<String> reach = new LinkedHashSet<>(formula.inputs());
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Readings.Entry entry : figures.readings().entries()) {
                List<String> inputs = entry.observation().formula().inputs();
                if (inputs.stream().anyMatch(reach::contains)) {
                    grown |= reach.addAll(inputs);
                }
            }
        }
        List<Candidate> candidates = new ArrayList<>();
        for (Term term : Term.read()) {
            Optional<Formula> read = figures.model().formula(term);
            if (read.isEmpty() || read.get().inputs().stream().noneMatch(reach::contains)) {
                continue;
            }
            for (Instrument instrument : instruments(term)) {
                int joins = joins(term, instrument);
                for (int count : AT_ONCE) {
                    candidates.add(new Candidate(term, instrument, count, joins));
                }
            }
        }
        return candidates;
    }

    /** The set that further readings of this term with this instrument would join; -1 for none. */
    private int joins(Term term, Instrument instrument) {
        List<Readings.Entry> entries = figures.readings().entries();
        for (int i = 0; i < entries.size(); i++) {
            ReadingSet set = entries.get(i).set();
            if (set != null
                    && entries.get(i).term() == term
                    && set.instrument().key().equals(instrument.key())) {
                return i;
            }
        }
        return -1;
    }

    /** The usual instrument, the owner's own of that kind, and whatever it was read with before. */
    private List<Instrument> instruments(Term term) {
        Map<String, Instrument> suitable = new LinkedHashMap<>();
        ReadingKind kind = term.reading();
        build.instruments().values().stream()
                .filter(own -> own.kind() == kind.usualInstrument())
                .forEach(own -> suitable.put(own.key(), own));
        if (suitable.isEmpty()) {
            Instrument usual = Instrument.builtIn(kind.usualInstrument());
            suitable.put(usual.key(), usual);
        }
        for (Readings.Entry entry : figures.readings().entries()) {
            ReadingSet set = entry.set();
            if (set != null && entry.term() == term) {
                suitable.putIfAbsent(set.instrument().key(), set.instrument());
            }
        }
        return List.copyOf(suitable.values());
    }

    /** 95 % doubt of the figure with the candidate added as foretold; infinite when it stays unknown. */
    double after(Formula target, Candidate candidate) {
        List<Observation> observations = new ArrayList<>(figures.readings().observations());
        Term term = candidate.term();
        Formula formula = figures.model().formula(term).orElseThrow();
        ReadingSet set;
        Map<Source, Double> more = new LinkedHashMap<>();
        if (candidate.joins() >= 0) {
            Readings.Entry old = figures.readings().entries().get(candidate.joins());
            ReadingSet was = java.util.Objects.requireNonNull(old.set());
            set = foretold(was, was.count() + candidate.count(), was.mean());
            old.observation().errors().forEach((source, factor) -> {
                if (source.kind() == Source.Kind.TEMPERATURE) {
                    more.put(source, factor);
                }
            });
            observations.remove(candidate.joins());
        } else {
            double value = foretold(formula, term);
            ReadingSet fresh = new ReadingSet(
                    term,
                    term.path() + " to come",
                    List.of(value),
                    candidate.instrument(),
                    build.repeatability(term.reading()),
                    ReadingKind.POOLED_DEGREES_OF_FREEDOM);
            set = foretold(fresh, candidate.count(), value);
        }
        Map<Source, Double> errors = Readings.errors(set);
        errors.putAll(more);
        observations.add(new Observation(set.place(), formula, set.mean(), errors));
        Reconciliation then = Reconciliation.of(observations, figures.readings().sought(List.of(target, formula)));
        Measured figure = target.hasKink()
                ? longthrow.core.measurement.MonteCarlo.through(target, then.figures())
                : Measured.through(target, then.figures());
        return figure.isUnknown() ? Double.POSITIVE_INFINITY : figure.expanded();
    }

    /** What the reading will say if nothing is wrong: the figure where it is known, else the middle of its believable range. */
    private double foretold(Formula formula, Term term) {
        Optional<Measured> known = figures.figure(term);
        return known.map(Measured::value)
                .orElseGet(() -> formula.inputs().stream().allMatch(this::isKnown)
                        ? formula.at(
                                name -> figures.reconciliation().figure(name).value())
                        : term.believable().middle());
    }

    private boolean isKnown(String name) {
        return figures.reconciliation().sought().stream().anyMatch(s -> s.name().equals(name))
                && !figures.reconciliation().figure(name).isUnknown();
    }

    /** A set of so many readings about a mean with the scatter that is to be expected. */
    private static ReadingSet foretold(ReadingSet of, int count, double mean) {
        double scatter = of.bestScatter() * (count >= ReadingSet.OWN_SCATTER_FROM ? expectedShare(count) : 1);
        List<Double> values = new ArrayList<>();
        if (count % 2 == 1) {
            values.add(mean);
        }
        double off = count % 2 == 1 ? scatter : scatter * Math.sqrt((count - 1.0) / count);
        while (values.size() < count) {
            values.add(mean + off);
            values.add(mean - off);
        }
        return new ReadingSet(of.term(), of.place(), values, of.instrument(), of.pooled(), of.pooledFreedom());
    }

    /** Mean of a sample's standard deviation over the true one (c4 of control-chart tables), by its asymptotic series, good to 0.5 % from three readings. */
    private static double expectedShare(int count) {
        double n = count - 1;
        return 1 - 1 / (4 * n) + 1 / (32 * n * n);
    }
}
