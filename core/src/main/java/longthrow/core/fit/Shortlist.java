package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Rule;
import longthrow.core.measure.Appraisal;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/**
 * The best combinations that keep every rule. The search knows the rules of the stack; each that it finds is put into the build and held against all of them,
 * best first. What breaks one bars all others with the same parts behind that figure, and the search goes on behind them.
 */
final class Shortlist {
    /** So many are worked out in full. */
    private static final int WANTED = 5;
    /** So many are looked at first; {@link #WIDER} times as many where too few of them keep every rule. */
    private static final int FIRST_LOOK = 60;

    private static final int WIDER = 4;
    /** So many are put into the build and judged at most; if that was not enough it is said. */
    private static final int MOST_JUDGED = 400;

    private final Build build;
    private final Appraisal own;
    private final Set<Term> ruled = EnumSet.noneOf(Term.class);
    private final Set<Term> lookedAt;
    private final Map<Found, Appraisal> appraised = new HashMap<>();
    private final Map<Found, Appraisal> sizes = new HashMap<>();
    private final Barred barred = new Barred();
    private final List<Found> best = new ArrayList<>();
    /** One for each thing that is barred, with the key to its count. */
    private final Map<Found, String> broken = new LinkedHashMap<>();

    private final Hunt hunt;
    private boolean cutShort;

    Shortlist(Assembly assembly) {
        this.build = assembly.build();
        this.own = assembly.own();
        build.ownRules().stream().map(OwnRule::term).forEach(ruled::add);
        this.lookedAt = EnumSet.copyOf(Fit.LOOKED_AT);
        lookedAt.addAll(ruled);
        this.hunt = hunt(assembly);
    }

    private Hunt hunt(Assembly assembly) {
        int most = FIRST_LOOK;
        while (true) {
            barred.recount();
            Hunt search = new Hunt(assembly, barred, most);
            List<Found> found = search.best();
            int barredBefore = broken.size();
            best.clear();
            for (Found one : found) {
                if (best.size() < WANTED && appraised.size() < MOST_JUDGED) {
                    judge(one);
                }
            }
            boolean all = found.size() < most && broken.size() == barredBefore;
            if (best.size() == WANTED || all) {
                return search;
            }
            if (appraised.size() >= MOST_JUDGED) {
                cutShort = true;
                return search;
            }
            most = broken.size() == barredBefore ? most * WIDER : most;
        }
    }

    private void judge(Found found) {
        Optional<Verdict> verdict = brokenVerdict(found);
        if (verdict.isEmpty()) {
            best.add(found);
        } else if (!barred.bars(found, false)) {
            String key = barred.add(
                    found, appraise(found).readingsBehind(verdict.get().term()));
            broken.put(found, key);
        }
    }

    Hunt hunt() {
        return hunt;
    }

    /** Best first, at most five. */
    List<Found> best() {
        return best;
    }

    /** Whether there may be more that keep every rule, behind those that were looked at. */
    boolean isCutShort() {
        return cutShort;
    }

    /** How many were put into the build and held against every rule. */
    int judged() {
        return appraised.size();
    }

    /** By the rule that is broken, with how many combinations it keeps out, most first. */
    List<Rejection> rejections() {
        Map<String, Rejection> byReason = new LinkedHashMap<>();
        broken.forEach((found, key) -> {
            Rejection one = rejection(found, Math.max(1, barred.count(key)));
            byReason.merge(
                    one.why(),
                    one,
                    (a, b) -> new Rejection(a.reason(), a.count() + b.count(), a.example(), a.why(), a.cure()));
        });
        return byReason.values().stream()
                .sorted(Comparator.comparingLong(Rejection::count).reversed())
                .limit(WANTED)
                .toList();
    }

    private Rejection rejection(Found found, long count) {
        Verdict verdict = brokenVerdict(found).orElseThrow();
        return new Rejection(
                Obstacle.RULE.label(),
                count,
                found.title(),
                verdict.why() + " (" + verdict.label() + ")",
                verdict.cure());
    }

    Appraisal appraise(Found found) {
        Appraisal known = appraised.get(found);
        if (known == null) {
            known = Appraisal.of(Fitted.with(build, own, found), lookedAt);
            appraised.put(found, known);
        }
        return known;
    }

    /** The same engine by the sizes alone, where one of them has no tolerance. */
    Appraisal bySizes(Found found) {
        if (!found.isVague()) {
            return appraise(found);
        }
        Appraisal known = sizes.get(found);
        if (known == null) {
            known = Appraisal.of(Fitted.bySizes(build, own, found), lookedAt);
            sizes.put(found, known);
        }
        return known;
    }

    private Optional<Verdict> brokenVerdict(Found found) {
        return Stream.concat(appraise(found).verdicts().stream(), bySizes(found).verdicts().stream())
                .filter(Fit::isFailed)
                .filter(v -> isJudged(v.term()))
                .findFirst();
    }

    /** Figures that hang on no part of the stack are as they were: a matter of {@code measure}. */
    private boolean isJudged(Term term) {
        return Fit.JUDGED.contains(term) || (ruled.contains(term) && Barred.hangsOnTheStack(own.readingsBehind(term)));
    }

    /** Rules that are not judged because a size has no tolerance, with what the sizes alone say. */
    List<Finding> notJudged(Found found) {
        List<Finding> findings = new ArrayList<>(rulesInTheDark(found));
        if (!found.isVague()) {
            return findings;
        }
        List<String> judged = appraise(found).verdicts().stream()
                .filter(v -> v.state() != Verdict.State.UNKNOWN)
                .map(v -> v.rule() + " " + v.term())
                .toList();
        List<Verdict> open = bySizes(found).verdicts().stream()
                .filter(v -> v.chosen() && v.state() != Verdict.State.UNKNOWN)
                .filter(v -> !judged.contains(v.rule() + " " + v.term()))
                .filter(v -> isJudged(v.term()))
                .toList();
        open.stream()
                .filter(v -> v.state() != Verdict.State.MEETS)
                .forEach(v -> findings.add(notJudged(
                        v.label(),
                        "by the sizes alone it is not kept for sure: "
                                + v.why().replaceAll("; kept with a probability of [^;]*", ""))));
        String kept = open.stream()
                .filter(v -> v.state() == Verdict.State.MEETS)
                .map(v -> v.label() + " (" + figure(v, found) + ")")
                .collect(Collectors.joining("; "));
        if (!kept.isEmpty()) {
            findings.add(notJudged("some rules", "by the sizes alone they are kept: " + kept));
        }
        return findings;
    }

    /** The owner's own rules, and those he chose, on figures that cannot be worked out at all. */
    private List<Finding> rulesInTheDark(Found found) {
        List<String> names = new ArrayList<>();
        build.ownRules().stream()
                .filter(r -> bySizes(found).figure(r.term()).isEmpty() && isJudged(r.term()))
                .forEach(r -> names.add(r.name() + " (" + r.term().label() + ")"));
        build.rulesChosen().keySet().stream()
                .flatMap(key -> Rule.at(key).stream())
                .filter(r -> Fit.SHOWN.contains(r.term())
                        && bySizes(found).figure(r.term()).isEmpty())
                .forEach(r -> names.add(r.label() + " (" + r.term().label() + ")"));
        return names.isEmpty()
                ? List.of()
                : List.of(new Finding(
                        Finding.Kind.WARNING,
                        "NOT JUDGED",
                        "the figure is not known, so these rules are not proven kept: " + String.join("; ", names),
                        "read what is missing before you buy"));
    }

    private static Finding notJudged(String what, String how) {
        return new Finding(
                Finding.Kind.WARNING,
                "not judged for want of a tolerance, " + what,
                how,
                "ask for the tolerance, or measure the piece");
    }

    private String figure(Verdict verdict, Found found) {
        return bySizes(found)
                .figure(verdict.term())
                .map(m -> new FigurePrinter(build.units())
                        .print(verdict.term().dimension(), m.value(), Math.max(m.expanded(), 0.01e-3))
                        .first())
                .map(f -> f.value() + " " + f.unit())
                .orElse("");
    }
}
