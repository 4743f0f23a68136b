package longthrow.core.measure;

import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;

/**
 * The figures of an engine and the readings that do not agree, without verdicts, stops and next readings: for figures that are still being typed.
 * They are those of {@link Appraisal#sound}, in half the time.
 * @param values   that hang on no reading in dispute
 * @param suspects readings that do not agree
 */
public record Glimpse(List<Result> values, List<Finding> suspects) {
    public Glimpse {
        values = List.copyOf(values);
        suspects = List.copyOf(suspects);
    }

    /**
     * Looks at a build.
     * @throws longthrow.core.measurement.NotConvergedException when no engine comes near what is written
     */
    public static Glimpse of(Build build) {
        Contradictions contradictions = Contradictions.of(Figures.of(build));
        Figures settled = contradictions.settled();
        Impossible impossible = new Impossible(settled);
        return new Glimpse(
                settled.results().stream()
                        .filter(r -> !contradictions.touches(r.term()) && !impossible.spoils(r.term()))
                        .toList(),
                new SuspectWords(contradictions).findings(Appraisal.MOST_SUSPECTS, Appraisal.NAMED_FROM));
    }
}
