package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Donor;
import longthrow.core.engine.Judge;
import longthrow.core.engine.PartVerdicts;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/** The question {@code measure}: a pure function from a build to its answer. */
public final class Measure {
    /** A reading is named as a suspect from this share on. */
    private static final double NAMED_FROM = 0.05;
    /** At most so many suspects are named. */
    private static final int MOST_SUSPECTS = 5;
    /** At most so many next readings are named. */
    private static final int MOST_NEXT = 3;

    /** What displacement, squish and ratio hang on, in the order in which an engine comes apart far enough; common practice, no source. */
    private static final List<Term> TO_BEGIN_WITH = List.of(
            Term.BORE,
            Term.STROKE,
            Term.DECK_HEIGHT,
            Term.ROD_LENGTH,
            Term.COMPRESSION_HEIGHT,
            Term.GASKET_THICKNESS,
            Term.CHAMBER_VOLUME,
            Term.CROWN_VOLUME,
            Term.GASKET_BORE);

    private Measure() {}

    /**
     * What the engine really is, how sure, what is wrong, what to measure next.
     * @param donors versions of engines to tell this one from; may be empty
     * @throws IllegalArgumentException when a reading names an instrument that the build does not have and that is not built in
     */
    public static Answer of(Build build, List<Donor> donors) {
        return of(build, donors, List.of());
    }

    /**
     * As the other, with the events at more lifts.
     * @param lifts of the valves, each above 0
     */
    public static Answer of(Build build, List<Donor> donors, List<Quantity> lifts) {
        for (Quantity lift : lifts) {
            if (lift.dimension() != Dimension.LENGTH || !(lift.si() > 0)) {
                throw new IllegalArgumentException(
                        "lift asked for is " + lift.written() + "; it must be a length above 0");
            }
        }
        return of(Glimpse.of(build), donors, lifts);
    }

    /** As the first, of a build that was looked at already. */
    public static Answer of(Glimpse glimpse) {
        return of(glimpse, List.of(), List.of());
    }

    private static Answer of(Glimpse glimpse, List<Donor> donors, List<Quantity> lifts) {
        return glimpse.contradictions()
                .map(contradictions -> told(glimpse.build(), contradictions, donors, lifts))
                .orElseGet(() -> untangled(glimpse.build()));
    }

    private static Answer told(Build build, Contradictions contradictions, List<Donor> donors, List<Quantity> lifts) {
        SuspectWords words = new SuspectWords(contradictions);
        Figures figures = contradictions.settled();
        Impossible impossible = new Impossible(figures);
        StrangeTogether strange = new StrangeTogether(figures);
        Predicate<Term> disputed =
                term -> contradictions.touches(term) || impossible.spoils(term) || strange.spoils(term);
        Function<Term, Optional<Measured>> agreed =
                term -> disputed.test(term) ? Optional.empty() : figures.figure(term);
        List<Result> values = values(contradictions, disputed);
        List<Verdict> verdicts = AsPlanned.told(
                build,
                new Degreeing(build, figures.readings(), agreed)
                        .told(Judge.verdicts(build, agreed)).stream()
                                .map(v -> strange.withoutBuying(inDispute(v, values)))
                                .toList(),
                values);
        LiftCurves curves = new LiftCurves(build, figures.readings().tables());
        List<Finding> findings = new ArrayList<>(words.findings(MOST_SUSPECTS, NAMED_FROM));
        findings.addAll(strange.findings());
        findings.addAll(AsPlanned.findings(build));
        findings.addAll(figures.readings().findings());
        findings.addAll(Judge.disagreements(build, verdicts));
        findings.addAll(Aims.findings(build, agreed));
        findings.addAll(LiftTables.findings(build));
        findings.addAll(curves.findings());
        findings.addAll(PressureTests.findings(build));
        findings.addAll(DonorMatch.findings(figures, donors));
        findings.addAll(PartVerdicts.of(build, verdicts, agreed));
        findings.addAll(Stops.cautions(build));
        List<DefaultUsed> defaults = new ArrayList<>(figures.readings().defaults());
        defaults.addAll(contradictions.suspects().assumed());
        defaults.addAll(curves.defaults());
        return new Answer(
                        "measure",
                        build.name(),
                        build.invented(),
                        build.units(),
                        values,
                        verdicts,
                        findings,
                        contradictions.stops(agreed),
                        contradictions.unknowns(),
                        defaults,
                        next(figures, contradictions, words, verdicts))
                .withMovements(ValveMovements.of(build, figures.readings().tables(), agreed, lifts));
    }

    /** A figure that is shown as in dispute is not said to be unknown. */
    private static Verdict inDispute(Verdict v, List<Result> values) {
        if (v.state() != Verdict.State.UNKNOWN) {
            return v;
        }
        String why = v.why();
        for (Result r : values) {
            if (r.contradicted()) {
                String label = r.term().label();
                why = why.replace(label + " is not known", label + " is in dispute")
                        .replace("the " + label + ", which is not known", "the " + label + ", which is in dispute");
            }
        }
        return new Verdict(
                v.rule(),
                v.label(),
                v.term(),
                v.least(),
                v.most(),
                v.probability(),
                v.state(),
                v.chosen(),
                why,
                why.equals(v.why()) ? v.cure() : "", // what to read again stands with the suspects
                v.source());
    }

    private static List<Result> values(Contradictions contradictions, Predicate<Term> disputed) {
        List<Result> values = new ArrayList<>();
        Figures figures = contradictions.settled();
        for (Term term : figures.model().terms()) {
            contradictions.shown(term).ifPresent(figure -> {
                boolean asSettled = figures.figure(term).isPresent();
                Result r = (asSettled ? figures : contradictions.written()).result(term, figure);
                values.add(new Result(term, figure, r.provenance(), r.from(), disputed.test(term)));
            });
        }
        return values;
    }

    /** When the readings are so far from any engine that no figures can be found that come near them all. */
    private static Answer untangled(Build build) {
        Finding finding = new Finding(
                Finding.Kind.SUSPECT,
                "the whole sheet",
                "no engine comes near all of these readings, so nothing was worked out",
                "look for a figure that is far out, an instrument with an error of millimetres, or a unit mixed up; leave out what you doubt and try again");
        return new Answer(
                "measure",
                build.name(),
                build.invented(),
                build.units(),
                List.of(),
                List.of(),
                untangledFindings(build, finding),
                Stops.ofEach(build, Candidates.asWritten(build)),
                List.of(),
                List.of(),
                List.of());
    }

    private static List<Finding> untangledFindings(Build build, Finding first) {
        List<Finding> findings = new ArrayList<>();
        findings.add(first);
        findings.addAll(Stops.cautions(build));
        return findings;
    }

    /** First what is contradicted, then the verdict that is least certain, then the ratio. */
    private static List<NextReading> next(
            Figures figures, Contradictions contradictions, SuspectWords words, List<Verdict> verdicts) {
        List<NextReading> next = new ArrayList<>(words.next());
        Set<Term> targets = new LinkedHashSet<>();
        verdicts.stream()
                .filter(v -> v.chosen() && v.state() == Verdict.State.NEAR)
                .sorted(Comparator.comparingDouble(v -> Math.abs(v.probability() - 0.5)))
                .forEach(v -> targets.add(v.term()));
        verdicts.stream()
                .filter(v -> v.chosen() && v.state() == Verdict.State.UNKNOWN && !contradictions.touches(v.term()))
                .forEach(v -> targets.add(v.term()));
        targets.add(Term.COMPRESSION_RATIO);
        targets.add(Term.SQUISH);
        NextReadings readings = new NextReadings(figures, targets);
        Set<Term> named = new LinkedHashSet<>();
        next.forEach(n -> named.add(n.read()));
        Map<Term, List<NextReading>> ranked = new EnumMap<>(Term.class);
        for (int round = 0; round < MOST_NEXT; round++) { // the best for each figure before the second best for one
            for (Term target : targets) {
                if (next.size() >= MOST_NEXT) {
                    return next;
                }
                List<NextReading> forOne = ranked.computeIfAbsent(target, t -> readings.forTerm(t, MOST_NEXT));
                if (round < forOne.size() && named.add(forOne.get(round).read())) {
                    next.add(forOne.get(round));
                }
            }
        }
        return next.isEmpty()
                ? TO_BEGIN_WITH.stream()
                        .flatMap(t -> readings.toBeginWith(t).stream())
                        .limit(MOST_NEXT)
                        .toList()
                : next;
    }

    /** A figure in words, both unit systems, its digits cut to what its doubt supports. */
    static String words(Build build, Term term, double si, double doubt) {
        PrintedFigures printed = new FigurePrinter(build.units()).print(term.dimension(), si, doubt);
        String second = printed.second()
                .map(f -> " (" + f.value() + " " + f.unit() + ")")
                .orElse("");
        return (printed.first().value() + " " + printed.first().unit()).strip() + second;
    }

    /** A share in words. */
    static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
