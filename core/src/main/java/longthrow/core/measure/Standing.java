package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.engine.Judge;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/** What must not be done with an engine and which rules it breaks, each under a key that stays while only its figures move. */
final class Standing {
    private final Map<String, Finding> broken = new LinkedHashMap<>();

    /** Of readings that no engine comes near. */
    Standing() {
        broken.put(
                Appraisal.NO_ENGINE,
                new Finding(
                        Finding.Kind.WARNING,
                        "the whole sheet",
                        Appraisal.NO_ENGINE + ", so nothing is worked out",
                        "look at the figure, its unit and its decimal point"));
    }

    /**
     * Of an engine.
     * @param agreed figures that hang on nothing in dispute and can be
     */
    Standing(Build build, Contradictions contradictions, Function<Term, Optional<Measured>> agreed) {
        for (Stop stop : contradictions.stops(agreed)) {
            broken.putIfAbsent(
                    withoutFigures(stop.what() + stop.why()),
                    new Finding(Finding.Kind.WARNING, "", stop.what() + ": " + stop.why(), stop.wayRound()));
        }
        for (Verdict v : Judge.failing(build, agreed)) {
            String rule = Rule.of(v).map(Rule::key).orElse(v.rule());
            broken.put(
                    rule + " " + v.term().path(),
                    new Finding(Finding.Kind.WARNING, v.term().path(), v.label() + " fails: " + v.why(), v.cure()));
        }
    }

    private static String withoutFigures(String said) {
        return said.replaceAll("[-\u2212]?\\d+([.,]\\d+)*", "#");
    }

    /** What is broken here and was not there, stops first. */
    List<Finding> since(Standing before) {
        List<Finding> fresh = new ArrayList<>();
        broken.forEach((key, finding) -> {
            if (!before.broken.containsKey(key)) {
                fresh.add(finding);
            }
        });
        return fresh;
    }
}
