package longthrow.core.life;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Stops;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.ValveLift;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/** One engine as its readings tell it, for sums that ask for a figure or a word and must hear when there is none. */
public final class Known {
    private final Build build;
    private final Appraisal appraisal;
    private final Map<Term, Result> results = new EnumMap<>(Term.class);

    /** Of an appraisal that looked for slips. */
    public Known(Appraisal appraisal) {
        this.build = appraisal.build();
        this.appraisal = appraisal;
        appraisal.values().stream().filter(r -> !r.figure().isUnknown()).forEach(r -> results.put(r.term(), r));
    }

    /** Its figures held against the rules of the trade and its owner's own. */
    List<Verdict> verdicts() {
        return appraisal.verdicts();
    }

    public Build build() {
        return build;
    }

    /** Readings that are probably wrong, by their places. */
    public List<Finding> suspects() {
        return appraisal.suspects();
    }

    /** The figure of a term, if it is known with its doubt and nothing contradicts it. */
    public Optional<Measured> figure(Term term) {
        return result(term).map(Result::figure);
    }

    /** The figure with what it rests on. */
    public Optional<Result> result(Term term) {
        return Optional.ofNullable(results.get(term));
    }

    /** How one valve moves; empty where nothing tells. With more tables than one of a valve, the one that is hardest on the spring. */
    public Optional<ValveLift> lift(Part valve) {
        return appraisal.lifts().stream()
                .filter(l -> l.valve() == valve)
                .min(java.util.Comparator.comparingDouble(l -> l.nose().value()));
    }

    /** Whether a figure rests on a guess. */
    boolean isGuessed(Term term) {
        Set<Term> behind = term.isRead() ? Set.of(term) : appraisal.readingsBehind(term);
        return behind.stream().anyMatch(t -> build.of(t).stream().anyMatch(Given.Assumed.class::isInstance));
    }

    /** What would have to be read for a figure that is not known. */
    public List<Rung.Missing> missing(Term term) {
        if (term.isRead()) {
            return List.of(toRead(term));
        }
        Set<Term> behind = appraisal.readingsBehind(term);
        List<Rung.Missing> missing = behind.stream()
                .filter(t -> t.isRead() && figure(t).isEmpty())
                .map(this::toRead)
                .toList();
        return missing.isEmpty()
                ? List.of(new Rung.Missing(
                        term.path(), term.label(), "the readings behind it disagree or say too little: see measure", 0))
                : missing;
    }

    private Rung.Missing toRead(Term term) {
        ReadingKind kind = term.reading();
        boolean isWritten = build.has(term);
        return new Rung.Missing(
                term.path(),
                term.label(),
                (isWritten ? "written, but its doubt is not known or it is in dispute: " : "")
                        + term.meaning()
                        + (Stops.RATINGS.contains(term) ? "" : "; " + kind.how()), // a rating is asked for, never tried
                build.minutes(kind));
    }

    /** What an owner has to say for a word that he has not chosen. */
    public static Rung.Missing missing(Choice choice) {
        String options = choice.options().isEmpty()
                ? ""
                : ": "
                        + String.join(
                                ", ",
                                choice.options().stream()
                                        .map(Choice.Option::key)
                                        .toList());
        return new Rung.Missing(choice.path(), choice.meaning(), "say which" + options, 0);
    }
}
