package longthrow.core.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.NextReading;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * Which reading is worth taking next: for each reading that could be taken, and each instrument at hand, the doubt that a figure may be expected to have
 * after it, per minute. The expectation is exact under the model: the reading is added to the rest as it would be if it came out as foretold.
 */
final class NextReadings {
    /** Numbers of readings to take in one go that are weighed against each other. */
    private static final int[] AT_ONCE = {1, 3, 5};
    /** Several readings at once are only weighed for the terms that promise most by one. */
    private static final int PROMISING = 6;
    /** Middles of five equal chances. */
    private static final double[] CHANCES = {0.1, 0.3, 0.5, 0.7, 0.9};
    /** A reading that cuts less than this share of the doubt is not worth naming. */
    private static final double WORTH_WHILE = 0.05;
    /**
     * A reading that could explain less than this share of a figure's variance is not weighed: it would cut half of that of its doubt, a tenth of
     * what is worth naming; the rest is left to what the shape of the doubt may change.
     */
    private static final double LEAST_EXPLAINED = 0.01;

    private static final Map<Dimension, Unit> COHERENT = coherent();

    private static Map<Dimension, Unit> coherent() {
        Map<Dimension, Unit> first = new EnumMap<>(Dimension.class);
        for (Unit unit : Units.all()) {
            if (unit.toSi(1) == 1 && unit.toSi(0) == 0) {
                first.putIfAbsent(unit.dimension(), unit);
            }
        }
        return Collections.unmodifiableMap(first);
    }

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
    private final Set<Term> targets;
    /** Of engines of which one more term was read. */
    private final Map<Term, EngineModel> models = new EnumMap<>(Term.class);
    /** What every figure would be, by what was done; empty where no engine comes near. */
    private final Map<Foretold, Optional<Figures>> foretold = new HashMap<>();

    private record Foretold(Candidate candidate, double scatterShare) {}

    /**
     * Nothing weighed yet.
     * @param targets every figure that will be asked for: one sum serves them all
     */
    NextReadings(Figures figures, Set<Term> targets) {
        this.figures = figures;
        this.build = figures.build();
        this.targets = targets;
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
        for (Expected expected : ranked(target, now, worthTrying(target, candidates(formula.get())))) {
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

    /** What to begin with where no single reading brings a figure yet; empty for what is known already. */
    Optional<NextReading> toBeginWith(Term term) {
        if (figures.figure(term).isPresent()) {
            return Optional.empty();
        }
        Instrument instrument = instruments(term).get(0);
        Expected expected = expected(term, new Candidate(term, instrument, 1, -1));
        return Optional.of(new NextReading(
                term,
                instrument.key(),
                term.reading().how(),
                term,
                Double.POSITIVE_INFINITY,
                expected.after(),
                expected.minutes(),
                "to begin with: displacement, ratio and squish hang on it"));
    }

    /** Every candidate with what it may be expected to do, best doubt cut per minute first. */
    List<Expected> ranked(Term target, double now) {
        return ranked(target, now, candidates(figures.model().formula(target).orElseThrow()));
    }

    /**
     * Those candidates that could cut the doubt of a known figure worth while. A reading tells of what its term and the errors of its instrument
     * have to do with the figure, and no more: were all of that known to the last digit, the rest of the figure's variance would stay.
     */
    List<Candidate> worthTrying(Term target, List<Candidate> all) {
        Optional<Measured> known = figures.figure(target);
        if (known.isEmpty() || figures.model().formula(target).orElseThrow().hasKink()) {
            return all;
        }
        Map<Source, Double> ofTarget = known.get().contributions();
        Map<Term, Measured> ofTerms = new EnumMap<>(Term.class);
        List<Candidate> worth = new ArrayList<>();
        for (Candidate candidate : all) {
            Formula formula = figures.model().formula(candidate.term()).orElseThrow();
            Measured term = ofTerms.computeIfAbsent(
                    candidate.term(),
                    t -> Measured.through(formula, figures.reconciliation().figures()));
            // with the first reading of what was unknown comes what is assumed beside it: that may tell more
            boolean open = formula.hasKink() || term.isUnknown();
            if (open || explained(ofTarget, term.contributions(), candidate.instrument()) >= LEAST_EXPLAINED) {
                worth.add(candidate);
            }
        }
        return worth;
    }

    /** Share of a figure's variance that is explained by a term and by the errors of an instrument together. */
    private static double explained(Map<Source, Double> target, Map<Source, Double> term, Instrument instrument) {
        Set<Source> tools = new LinkedHashSet<>();
        for (Instrument tool = instrument; tool != null; tool = tool.setWith()) {
            tools.add(Readings.statedError(tool));
            tools.add(Readings.gain(tool));
        }
        double whole = 0;
        double byTools = 0;
        double together = 0;
        for (Map.Entry<Source, Double> e : target.entrySet()) {
            double square = e.getValue() * e.getValue();
            whole += square;
            if (tools.contains(e.getKey())) {
                byTools += square;
            } else {
                together += e.getValue() * term.getOrDefault(e.getKey(), 0.0);
            }
        }
        double own = 0; // of the term, without the tools
        for (Map.Entry<Source, Double> e : term.entrySet()) {
            own += tools.contains(e.getKey()) ? 0 : e.getValue() * e.getValue();
        }
        double byTerm = own > 0 ? together * together / own : 0;
        return whole > 0 ? (byTools + byTerm) / whole : 0;
    }

    private List<Expected> ranked(Term target, double now, List<Candidate> candidates) {
        List<Expected> all = new ArrayList<>();
        for (Candidate candidate : candidates) {
            if (candidate.count() == 1) {
                all.add(expected(target, candidate));
            }
        }
        Comparator<Expected> best = Double.isInfinite(now)
                ? Comparator.comparingDouble((Expected e) -> Double.isInfinite(e.after()) ? 1 : 0)
                        .thenComparingDouble(Expected::minutes)
                        .thenComparingDouble(Expected::after)
                : Comparator.comparingDouble((Expected e) -> -(now - e.after()) / e.minutes());
        all.sort(best);
        Set<Term> promising = new LinkedHashSet<>();
        all.stream().limit(PROMISING).forEach(e -> promising.add(e.candidate().term()));
        for (Candidate candidate : candidates) {
            if (candidate.count() > 1 && (promising.contains(candidate.term()) || isPair(candidate))) {
                all.add(expected(target, candidate));
            }
        }
        all.sort(best);
        return all;
    }

    private Expected expected(Term target, Candidate candidate) {
        double minutes = candidate.count() * build.minutes(candidate.term().reading());
        return new Expected(candidate, after(target, candidate), minutes);
    }

    /** Whether it joins two readings: a third alone may tell less than two more, because from then on their own scatter counts. */
    private boolean isPair(Candidate candidate) {
        return candidate.joins() >= 0 && set(candidate.joins()).count() == ReadingSet.OWN_SCATTER_FROM - 1;
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
            if (term.isWish() || read.isEmpty() || read.get().inputs().stream().noneMatch(reach::contains)) {
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

    /**
     * 95 % doubt of the figure that may be expected with the candidate added; infinite when it stays unknown. Where the new scatter will be judged by
     * the readings alone it is a matter of luck, so the mean is taken over the scatters that may come out.
     */
    double after(Term target, Candidate candidate) {
        int joined = candidate.joins() < 0 ? 0 : set(candidate.joins()).count();
        int count = joined + candidate.count();
        if (count < ReadingSet.OWN_SCATTER_FROM) {
            return after(target, candidate, 1);
        }
        double sum = 0;
        for (double share : scatterShares(count - 1)) {
            sum += after(target, candidate, share) / CHANCES.length;
        }
        return sum;
    }

    private ReadingSet set(int entry) {
        return java.util.Objects.requireNonNull(
                figures.readings().entries().get(entry).set());
    }

    private double after(Term target, Candidate candidate, double scatterShare) {
        return foretold.computeIfAbsent(new Foretold(candidate, scatterShare), this::again)
                .flatMap(f -> f.figure(target))
                .map(Measured::expanded)
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** The sum done again, by the same rules, with the candidate's readings written into the build and the same readings set aside. */
    private Optional<Figures> again(Foretold what) {
        Term term = what.candidate().term();
        Build other = with(what.candidate(), what.scatterShare());
        EngineModel model =
                build.has(term) ? figures.model() : models.computeIfAbsent(term, t -> new EngineModel(other));
        try {
            return Optional.of(figures.again(other, term, model, targets));
        } catch (NotConvergedException e) {
            return Optional.empty(); // a reading foretold so far off is no advice
        }
    }

    /** The build with the candidate's readings as foretold. */
    private Build with(Candidate candidate, double scatterShare) {
        Term term = candidate.term();
        List<Given> entries = new ArrayList<>(figures.readings().left(term));
        Given.Taken taken;
        if (candidate.joins() >= 0) {
            ReadingSet was = set(candidate.joins());
            Given.Taken old = old(entries, term, candidate.instrument());
            entries.remove(old);
            double written =
                    old.readings().stream().mapToDouble(Quantity::si).average().orElseThrow();
            double warmth = was.mean() == 0 ? 1 : written / was.mean(); // nothing is as large warm as cold
            List<Quantity> readings =
                    foretold(was, was.count() + candidate.count(), was.mean(), scatterShare).values().stream()
                            .map(v -> quantity(term, v * warmth))
                            .toList();
            taken = new Given.Taken(
                    readings,
                    old.instrument(),
                    old.partTemperature(),
                    old.instrumentTemperature(),
                    old.origin(),
                    old.note());
        } else {
            Formula formula = figures.model().formula(term).orElseThrow();
            double value = foretold(formula, term);
            ReadingSet fresh = new ReadingSet(
                    term,
                    term.path(),
                    List.of(value),
                    candidate.instrument(),
                    build.repeatability(term.reading()),
                    ReadingKind.POOLED_DEGREES_OF_FREEDOM);
            List<Quantity> readings = foretold(fresh, candidate.count(), value, scatterShare).values().stream()
                    .map(v -> quantity(term, v))
                    .toList();
            taken = new Given.Taken(readings, candidate.instrument().key(), null, null, Given.Origin.NOT_SAID, "");
        }
        entries.add(taken);
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        given.putAll(build.given());
        given.put(term, entries);
        return build.withGiven(given);
    }

    /** The entry that was taken with this instrument; no name means the usual one. */
    private static Given.Taken old(List<Given> entries, Term term, Instrument instrument) {
        for (Given entry : entries) {
            if (entry instanceof Given.Taken taken) {
                String key = taken.instrument() == null
                        ? term.reading().usualInstrument().key()
                        : taken.instrument();
                if (instrument.key().equals(key)) {
                    return taken;
                }
            }
        }
        throw new IllegalStateException("no readings with " + instrument.key() + " to join");
    }

    /** A figure as the owner would have written it, in the coherent unit of its dimension. */
    private static Quantity quantity(Term term, double si) {
        Unit unit = COHERENT.get(term.dimension());
        if (unit == null) {
            throw new IllegalStateException(
                    "no coherent unit for a " + term.dimension().plainName());
        }
        return Quantity.of(new BigDecimal(si).setScale(15, RoundingMode.HALF_EVEN), unit);
    }

    /**
     * What the reading will say if nothing is wrong: the figure where it is known, what is assumed where nothing is read (a level deck, a crevice), else the middle of the
     * believable range.
     */
    private double foretold(Formula formula, Term term) {
        return figures.figure(term)
                .map(Measured::value)
                .orElseGet(() -> formula.inputs().stream()
                                .allMatch(name ->
                                        isKnown(name) || Readings.usual(name).isPresent())
                        ? formula.at(name -> isKnown(name)
                                ? figures.reconciliation().figure(name).value()
                                : Readings.usual(name).orElseThrow())
                        : term.believable().middle());
    }

    private boolean isKnown(String name) {
        return figures.reconciliation().sought().stream().anyMatch(s -> s.name().equals(name))
                && !figures.reconciliation().figure(name).isUnknown();
    }

    /** A set of so many readings about a mean, with this share of the scatter that is to be expected. */
    private static ReadingSet foretold(ReadingSet of, int count, double mean, double scatterShare) {
        double scatter = of.bestScatter() * scatterShare;
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

    /** Scatters that may come out, as shares of the true one: quantiles of chi over the root of its degrees of freedom. */
    private static double[] scatterShares(int freedom) {
        ChiSquaredDistribution chi = new ChiSquaredDistribution(freedom);
        double[] shares = new double[CHANCES.length];
        for (int k = 0; k < shares.length; k++) {
            shares[k] = Math.sqrt(chi.inverseCumulativeProbability(CHANCES[k]) / freedom);
        }
        return shares;
    }
}
