package longthrow.core.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Judge;
import longthrow.core.engine.Rule;

/**
 * Where the sources of a rule differ about a candidate and the owner chose none, the widest of them decides ({@link RuleWindows}); this
 * is what is said of it, so that nobody takes a pass by one source for a pass by all.
 */
final class MildestSource {
    private MildestSource() {}

    /** Sources that refuse though another of the same rule passes, where the owner chose none; guides say what is usual, not what goes. */
    static int refusals(Build build, List<Verdict> verdicts) {
        List<Verdict> judged =
                verdicts.stream().filter(v -> Fit.SHOWN.contains(v.term())).toList();
        return splits(build, judged).stream()
                .filter(s -> Rule.at(s.rule())
                        .filter(r -> r.kind() != Rule.Kind.GUIDE)
                        .isPresent())
                .mapToInt(s -> s.refuse().size())
                .sum();
    }

    static List<Candidate.Split> splits(Build build, List<Verdict> verdicts) {
        Map<String, List<Verdict>> byRule = new LinkedHashMap<>();
        for (Verdict verdict : verdicts) {
            Rule.of(verdict)
                    .filter(rule -> verdict.state() != Verdict.State.UNKNOWN)
                    .ifPresent(rule -> byRule.computeIfAbsent(
                                    rule.key() + " " + verdict.term().path(), k -> new ArrayList<>())
                            .add(verdict));
        }
        List<Candidate.Split> splits = new ArrayList<>();
        byRule.values().forEach(spread -> split(build, spread).ifPresent(splits::add));
        return splits;
    }

    private static Optional<Candidate.Split> split(Build build, List<Verdict> spread) {
        Rule rule = Rule.of(spread.get(0)).orElseThrow();
        boolean settled = spread.stream().anyMatch(v -> v.chosen() || Judge.isOverruled(build, v));
        List<String> refuse = spread.stream()
                .filter(v -> v.state() == Verdict.State.FAILS)
                .map(v -> words(rule, v))
                .toList();
        if (settled || refuse.isEmpty() || refuse.size() == spread.size()) {
            return Optional.empty();
        }
        long pass = count(spread, Verdict.State.MEETS);
        long near = count(spread, Verdict.State.NEAR);
        String said = (pass == 1 ? "passed by the mildest of " : "passed by " + pass + " of ")
                + spread.size() + " sources"
                + (pass == 1 ? " only" : "")
                + (near == 0 ? "" : ", " + near + " cannot tell")
                + "; " + refuse.size()
                + (rule.kind() == Rule.Kind.GUIDE ? " would not advise it: " : " would refuse it: ")
                + String.join("; ", refuse);
        return Optional.of(
                new Candidate.Split(rule.key(), spread.get(0).term(), rule.label(), spread.size(), refuse, said));
    }

    private static long count(List<Verdict> spread, Verdict.State state) {
        return spread.stream().filter(v -> v.state() == state).count();
    }

    private static String words(Rule rule, Verdict verdict) {
        Alternative alternative = rule.alternative(
                        verdict.rule().substring(rule.key().length() + 1))
                .orElseThrow();
        return alternative.label() + " (" + alternative.limits()
                + (verdict.isPerhapsNotMeant()
                        ? "; meant where " + alternative.condition().text() + Verdict.PERHAPS_NOT_MEANT
                        : "")
                + ")";
    }
}
