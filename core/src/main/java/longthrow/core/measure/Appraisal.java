package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.engine.Judge;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/**
 * What an engine is by what is written of it, without looking for slips or next readings: for engines that are only thought of, part by part.
 * @param build    that was appraised
 * @param values   figures
 * @param verdicts by rule
 * @param stops    what must not be done
 * @param defaults used
 * @param suspects readings that do not agree, with what hangs on them left out of the values
 * @param lifts    how the valves are moved, of those that something tells of
 */
public record Appraisal(
        Build build,
        List<Result> values,
        List<Verdict> verdicts,
        List<Stop> stops,
        List<DefaultUsed> defaults,
        List<Finding> suspects,
        List<ValveLift> lifts) {
    /** Said where the readings lie so far apart that none of them can be trusted. */
    public static final String NO_ENGINE = "no engine comes near all of these readings";

    static final int MOST_SUSPECTS = 3;
    static final double NAMED_FROM = 0.1;

    public Appraisal {
        values = List.copyOf(values);
        verdicts = List.copyOf(verdicts);
        stops = List.copyOf(stops);
        defaults = List.copyOf(defaults);
        suspects = List.copyOf(suspects);
        lifts = List.copyOf(lifts);
    }

    /**
     * Appraises a build.
     * @param wanted figures to keep; verdicts and stops look at whatever they need
     * @throws longthrow.core.measurement.NotConvergedException when no engine comes near what is written
     */
    public static Appraisal of(Build build, Collection<Term> wanted) {
        Figures figures = Figures.of(build);
        Impossible impossible = new Impossible(figures);
        Function<Term, Optional<Measured>> sound =
                term -> impossible.spoils(term) ? Optional.empty() : figures.figure(term);
        List<Verdict> verdicts = Judge.verdicts(build, sound);
        List<Result> values = new ArrayList<>();
        for (Term term : figures.model().terms()) {
            if (wanted.contains(term)) {
                figures.figure(term).ifPresent(figure -> values.add(figures.result(term, figure)));
            }
        }
        return new Appraisal(
                build,
                values,
                verdicts,
                Stops.of(build, sound),
                figures.readings().defaults(),
                List.of(),
                List.of());
    }

    /**
     * As {@link #of}, looking for slips too: what hangs on a reading that is probably wrong is left out, and said.
     * @throws longthrow.core.measurement.NotConvergedException when no engine comes near what is written
     */
    public static Appraisal sound(Build build) {
        Figures all = Figures.of(build);
        Contradictions contradictions = Contradictions.of(all);
        Figures settled = contradictions.settled();
        Impossible impossible = new Impossible(settled);
        StrangeTogether strange = new StrangeTogether(settled);
        Predicate<Term> disputed =
                term -> contradictions.touches(term) || impossible.spoils(term) || strange.spoils(term);
        Function<Term, Optional<Measured>> sound =
                term -> disputed.test(term) ? Optional.empty() : settled.figure(term);
        List<Finding> suspects = new ArrayList<>(new SuspectWords(contradictions).findings(MOST_SUSPECTS, NAMED_FROM));
        suspects.addAll(strange.findings());
        return new Appraisal(
                build,
                settled.results().stream().filter(r -> !disputed.test(r.term())).toList(),
                Judge.verdicts(build, sound).stream()
                        .map(strange::withoutBuying)
                        .toList(),
                contradictions.stops(sound),
                settled.readings().defaults(),
                suspects,
                ValveLifts.of(build, settled.readings().tables(), sound));
    }

    /** The readings of which a figure of this engine comes; the term itself where it is read and follows from no others. */
    public Set<Term> readingsBehind(Term term) {
        Set<Term> readings = EnumSet.noneOf(Term.class);
        new EngineModel(build)
                .formula(term)
                .ifPresent(formula -> formula.inputs().stream()
                        .flatMap(path -> Term.at(path).stream())
                        .forEach(readings::add));
        if (readings.isEmpty()) {
            readings.add(term);
        }
        return readings;
    }

    /** The figure of a term, if there is one. */
    public Optional<Measured> figure(Term term) {
        return values.stream().filter(v -> v.term() == term).map(Result::figure).findFirst();
    }

    /**
     * The answer to a question that is asked of the engine as it was appraised, without what only that question tells.
     * @param shown  figures to show with it
     * @param stops  what must not be done, those of the engine among them
     * @param taken  all that was taken for granted
     */
    public Answer answer(
            String question, Set<Term> shown, List<Finding> findings, List<Stop> stops, List<DefaultUsed> taken) {
        return plain(
                question,
                build,
                values.stream().filter(r -> shown.contains(r.term())).toList(),
                findings,
                stops,
                taken);
    }

    /**
     * The answer where no engine comes near what is written.
     * @param stops what must not be done for not knowing
     */
    public static Answer untangled(String question, Build build, List<Stop> stops) {
        return plain(
                question,
                build,
                List.of(),
                List.of(new Finding(
                        Finding.Kind.SUSPECT,
                        "the whole sheet",
                        NO_ENGINE + ", so nothing was worked out",
                        "ask measure, which says where to look")),
                stops,
                List.of());
    }

    private static Answer plain(
            String question,
            Build build,
            List<Result> values,
            List<Finding> findings,
            List<Stop> stops,
            List<DefaultUsed> taken) {
        return new Answer(
                question,
                build.name(),
                build.invented(),
                build.units(),
                values,
                List.of(),
                findings,
                stops,
                List.of(),
                taken,
                List.of());
    }
}
