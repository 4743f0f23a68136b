package longthrow.core.answer;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * The answer to one question about one build.
 * @param question what was asked: the name of the command and the page
 * @param engine   name of the build
 * @param invented whether the build says that it is made up
 * @param units    which units the owner wants first
 * @param values   figures found, in the order of the terms
 * @param verdicts figures held against rules
 * @param findings what was noticed: suspects first
 * @param stops    what must not be done
 * @param unknowns what cannot be said yet, and why
 * @param defaults every default and assumption used
 * @param next     next best readings, best first
 * @param candidates ways that go together, best first; empty for questions that search nothing
 * @param rejections why others do not
 * @param movements how the valves move; empty where nothing tells
 * @param ladder     what lets go first; empty for questions that do not ask it
 * @param shaking    where the shake goes; empty for questions that do not ask it
 * @param clearances what may touch, the unknown first, then the nearest; empty for questions that do not ask it
 * @param torque     what torque over what speeds; empty for questions that do not ask it
 * @param runs       what runs on a dynamometer came to; empty for questions that do not ask it
 */
public record Answer(
        String question,
        String engine,
        boolean invented,
        UnitSystem units,
        List<Result> values,
        List<Verdict> verdicts,
        List<Finding> findings,
        List<Stop> stops,
        List<Unknown> unknowns,
        List<DefaultUsed> defaults,
        List<NextReading> next,
        List<Candidate> candidates,
        List<Rejection> rejections,
        List<ValveMovement> movements,
        Optional<LimitLadder> ladder,
        Optional<Shaking> shaking,
        List<Clearance> clearances,
        Optional<TorqueCurve> torque,
        Optional<DynoRuns> runs) {
    public Answer {
        values = List.copyOf(values);
        verdicts = List.copyOf(verdicts);
        findings = List.copyOf(findings);
        stops = List.copyOf(stops);
        unknowns = List.copyOf(unknowns);
        defaults = List.copyOf(defaults);
        next = List.copyOf(next);
        candidates = List.copyOf(candidates);
        rejections = List.copyOf(rejections);
        movements = List.copyOf(movements);
        clearances = List.copyOf(clearances);
    }

    /** The answer to a question that searches nothing. */
    public Answer(
            String question,
            String engine,
            boolean invented,
            UnitSystem units,
            List<Result> values,
            List<Verdict> verdicts,
            List<Finding> findings,
            List<Stop> stops,
            List<Unknown> unknowns,
            List<DefaultUsed> defaults,
            List<NextReading> next) {
        this(
                question,
                engine,
                invented,
                units,
                values,
                verdicts,
                findings,
                stops,
                unknowns,
                defaults,
                next,
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** The answer to a question that does not ask how the valves move. */
    public Answer(
            String question,
            String engine,
            boolean invented,
            UnitSystem units,
            List<Result> values,
            List<Verdict> verdicts,
            List<Finding> findings,
            List<Stop> stops,
            List<Unknown> unknowns,
            List<DefaultUsed> defaults,
            List<NextReading> next,
            List<Candidate> candidates,
            List<Rejection> rejections) {
        this(
                question,
                engine,
                invented,
                units,
                values,
                verdicts,
                findings,
                stops,
                unknowns,
                defaults,
                next,
                candidates,
                rejections,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same with how the valves move. */
    public Answer withMovements(List<ValveMovement> other) {
        return copy(findings, stops, other, ladder, shaking, clearances, torque, runs);
    }

    /** The same with what lets go first. */
    public Answer withLadder(LimitLadder other) {
        return copy(findings, stops, movements, Optional.of(other), shaking, clearances, torque, runs);
    }

    /** The same with where the shake goes. */
    public Answer withShaking(Shaking other) {
        return copy(findings, stops, movements, ladder, Optional.of(other), clearances, torque, runs);
    }

    /** The same with what may touch. */
    public Answer withClearances(List<Clearance> other) {
        return copy(findings, stops, movements, ladder, shaking, other, torque, runs);
    }

    /** The same with these stops. */
    public Answer withStops(List<Stop> other) {
        return copy(findings, other, movements, ladder, shaking, clearances, torque, runs);
    }

    /** The same with what torque it makes. */
    public Answer withTorque(TorqueCurve other) {
        return copy(findings, stops, movements, ladder, shaking, clearances, Optional.of(other), runs);
    }

    /** The same with what runs on a dynamometer came to. */
    public Answer withRuns(DynoRuns other) {
        return copy(findings, stops, movements, ladder, shaking, clearances, torque, Optional.of(other));
    }

    /** The same with one more finding, behind the others. */
    public Answer with(Finding finding) {
        return copy(
                Stream.concat(findings.stream(), Stream.of(finding)).toList(),
                stops,
                movements,
                ladder,
                shaking,
                clearances,
                torque,
                runs);
    }

    private Answer copy(
            List<Finding> said,
            List<Stop> stopping,
            List<ValveMovement> moving,
            Optional<LimitLadder> limits,
            Optional<Shaking> shake,
            List<Clearance> gaps,
            Optional<TorqueCurve> curve,
            Optional<DynoRuns> ran) {
        return new Answer(
                question,
                engine,
                invented,
                units,
                values,
                verdicts,
                said,
                stopping,
                unknowns,
                defaults,
                next,
                candidates,
                rejections,
                moving,
                limits,
                shake,
                gaps,
                curve,
                ran);
    }

    /** The figure found for a term, if there is one. */
    public Optional<Result> value(Term term) {
        return values.stream().filter(v -> v.term() == term).findFirst();
    }

    /** Verdicts on a term. */
    public List<Verdict> verdictsOn(Term term) {
        return verdicts.stream().filter(v -> v.term() == term).toList();
    }
}
