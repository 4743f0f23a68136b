package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;
import longthrow.core.measurement.NotConvergedException;
import org.jspecify.annotations.Nullable;

/**
 * The figures of an engine and the readings that do not agree, without next readings: for figures that are still being typed. Stops and
 * rules are looked at only where it is asked what an edit breaks. The figures are those of {@link Appraisal#sound}, in half the time, and {@link Measure} can go on from them.
 */
public final class Glimpse {
    private final Build build;
    private final Optional<Contradictions> contradictions;
    private final List<Result> values;
    private final List<Finding> suspects;
    private @Nullable Standing standing; // when first asked for

    private Glimpse(Build build, Optional<Contradictions> contradictions, List<Result> values, List<Finding> suspects) {
        this.build = build;
        this.contradictions = contradictions;
        this.values = List.copyOf(values);
        this.suspects = List.copyOf(suspects);
    }

    /** Looks at a build. Nothing is seen where no engine comes near what is written. */
    public static Glimpse of(Build build) {
        Figures written;
        try {
            written = Figures.of(build);
        } catch (NotConvergedException nothingNear) {
            return new Glimpse(build, Optional.empty(), List.of(), List.of());
        }
        Contradictions contradictions = Contradictions.of(written);
        Figures settled = contradictions.settled();
        Impossible impossible = new Impossible(settled);
        StrangeTogether strange = new StrangeTogether(settled);
        List<Finding> suspects = new ArrayList<>(
                new SuspectWords(contradictions).findings(Appraisal.MOST_SUSPECTS, Appraisal.NAMED_FROM));
        suspects.addAll(strange.findings());
        return new Glimpse(
                build,
                Optional.of(contradictions),
                settled.results().stream()
                        .filter(r -> !contradictions.touches(r.term())
                                && !impossible.spoils(r.term())
                                && !strange.spoils(r.term()))
                        .toList(),
                suspects);
    }

    /** What was looked at. */
    Build build() {
        return build;
    }

    /** Empty where no engine comes near what is written. */
    Optional<Contradictions> contradictions() {
        return contradictions;
    }

    /** Figures that hang on no reading in dispute. */
    public List<Result> values() {
        return values;
    }

    /** Readings that do not agree. */
    public List<Finding> suspects() {
        return suspects;
    }

    /** What must not be done, and rules that are broken, with these figures and were not before: stops first. */
    public List<Finding> brokenSince(Glimpse before) {
        return standing().since(before.standing());
    }

    private synchronized Standing standing() {
        Standing known = standing;
        if (known == null) {
            known = contradictions.map(this::standing).orElseGet(Standing::new);
            standing = known;
        }
        return known;
    }

    private Standing standing(Contradictions found) {
        Impossible impossible = new Impossible(found.settled());
        return new Standing(
                build,
                found,
                term -> found.touches(term) || impossible.spoils(term)
                        ? Optional.empty()
                        : found.settled().figure(term));
    }
}
