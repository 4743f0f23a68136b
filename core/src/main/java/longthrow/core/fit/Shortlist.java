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
import longthrow.core.answer.Sureness;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Judge;
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
    /** So many that keep every rule are held against each other before the best are named: the cheapest are not always those that all sources pass. */
    private static final int HELD_TOGETHER = 3 * WANTED;
    /** So many are looked at first; {@link #WIDER} times as many where too few of them keep every rule. */
    private static final int FIRST_LOOK = 60;

    private static final int WIDER = 4;
    /** So many are put into the build and judged at most; if that was not enough it is said. */
    private static final int MOST_JUDGED = 400;

    private final Build build;
    private final Appraisal own;
    private final RuleWindows windows;
    private final Set<Term> ruled = EnumSet.noneOf(Term.class);
    private final Set<Term> lookedAt;
    private final Set<Term> judgedTerms = EnumSet.copyOf(Fit.JUDGED);
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
        this.windows = new RuleWindows(build);
        build.ownRules().stream().map(OwnRule::term).forEach(ruled::add);
        this.lookedAt = EnumSet.copyOf(Fit.LOOKED_AT);
        lookedAt.addAll(ruled);
        ruled.stream()
                .filter(term -> Barred.hangsOnTheStack(own.readingsBehind(term)))
                .forEach(judgedTerms::add);
        this.hunt = hunt(assembly);
        putInOrder();
    }

    private void putInOrder() {
        Map<Found, Ranking.Standing> standing = new HashMap<>();
        best.forEach(found -> standing.put(
                found,
                new Ranking.Standing(
                        sureness(found),
                        MildestSource.refusals(build, appraise(found).verdicts()),
                        new NotKnown(build, appraise(found), bySizes(found))
                                .figures()
                                .size())));
        Comparator<Found> takenFirst =
                Comparator.comparing(found -> build.taken().isEmpty() || !Fitted.isAsItIs(found) ? 1 : 0);
        List<Found> ordered = best.stream()
                .sorted(takenFirst.thenComparing(new Ranking(build, standing::get)))
                .limit(WANTED)
                .toList();
        best.clear();
        best.addAll(ordered);
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
                if (best.size() < HELD_TOGETHER && appraised.size() < MOST_JUDGED) {
                    judge(one);
                }
            }
            boolean all = found.size() < most && broken.size() == barredBefore;
            if (best.size() >= WANTED || all || (search.isCutShort() && !best.isEmpty())) {
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
                .findFirst()
                .or(() -> everySourceFails(found))
                .or(() -> insideAGuard(found));
    }

    /** Where sources disagree and none is picked, what not one of them passes is no fit; guides say what is usual, not what goes. */
    private Optional<Verdict> everySourceFails(Found found) {
        Map<Rule, List<Verdict>> byRule = new LinkedHashMap<>();
        for (Verdict verdict : bySizes(found).verdicts()) {
            Rule.of(verdict)
                    .filter(r -> r.kind() == Rule.Kind.LIMIT && isJudged(verdict.term()))
                    .ifPresent(r ->
                            byRule.computeIfAbsent(r, k -> new ArrayList<>()).add(verdict));
        }
        return byRule.values().stream()
                .filter(all -> all.stream().allMatch(v -> v.state() == Verdict.State.FAILS && !v.isPerhapsNotMeant()))
                .map(all -> all.get(0))
                .findFirst();
    }

    /** A figure within the rule, and within what the owner keeps back from it. */
    private Optional<Verdict> insideAGuard(Found found) {
        return bySizes(found).verdicts().stream()
                .filter(v -> v.rule().startsWith(Judge.OWN) && isJudged(v.term()))
                .filter(v -> {
                    RuleWindows.Limits kept = windows.own(v.term());
                    return bySizes(found)
                            .figure(v.term())
                            .filter(m -> m.value() < kept.least() || m.value() > kept.most())
                            .isPresent();
                })
                .map(v -> v.withCure(v.cure().isEmpty() ? "keep clear of the limit by what you keep back" : v.cure()))
                .findFirst();
    }

    /** Terms whose windows the search holds at the corners of the box. */
    private static final Set<Term> SEARCHED = EnumSet.of(
            Term.SQUISH,
            Term.DECK_CLEARANCE,
            Term.COMPRESSION_RATIO,
            Term.CLEARANCE_VOLUME,
            Term.SWEPT_VOLUME,
            Term.ROD_RATIO,
            Term.GASKET_OVER_BORE,
            Term.SKIRT_TO_COUNTERWEIGHT,
            Term.TOP_RING_TO_DECK,
            Term.SKIRT_OUT_OF_SLEEVE,
            Term.PIN_CLEARANCE,
            Term.PIN_BOSS_CLEARANCE,
            Term.PIN_FLOAT,
            Term.BIG_END_CLEARANCE,
            Term.ROD_SIDE_CLEARANCE,
            Term.BOSS_CLEARANCE,
            Term.PISTON_TO_WALL);

    /** A rule kept with less than this probability is not kept for sure. */
    private static final double PRACTICALLY_SURE = 0.9995;

    /** How surely it fits: as the search says, and no surer than the rules that only the engine as a whole can be held against. */
    Sureness sureness(Found found) {
        Sureness sureness = found.sureness();
        for (Verdict verdict : appraise(found).verdicts()) {
            boolean counts = verdict.chosen() && isJudged(verdict.term()) && !SEARCHED.contains(verdict.term());
            if (counts && verdict.state() == Verdict.State.NEAR) {
                sureness = Sureness.worse(sureness, Sureness.SELECTION);
            } else if (counts && verdict.probability() < PRACTICALLY_SURE) {
                sureness = Sureness.worse(sureness, Sureness.PROBABLE);
            }
        }
        return isOpen(found) ? Sureness.worse(sureness, Sureness.AS_KNOWN) : sureness;
    }

    /** Whether something that decides is not known: a size, a rule that cannot be judged, or what a crown that rises does in the chamber. */
    boolean isOpen(Found found) {
        return found.isPartlyUnknown()
                || Consequences.rises(found)
                || Consequences.chamberPastGasket(found, own).isPresent()
                || !rulesInTheDark(found).isEmpty()
                || (found.isVague() && !openRules(found).isEmpty());
    }

    /** Figures that hang on no part of the stack are as they were: a matter of {@code measure}. */
    private boolean isJudged(Term term) {
        return judgedTerms.contains(term);
    }

    /** Rules that are not judged because a size has no tolerance, with what the sizes alone say. */
    List<Finding> notJudged(Found found) {
        List<Finding> findings = new ArrayList<>(rulesInTheDark(found));
        if (!found.isVague()) {
            return findings;
        }
        List<Verdict> open = openRules(found);
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

    /** Rules that the sizes alone decide, because one of them has no tolerance. */
    private List<Verdict> openRules(Found found) {
        List<String> judged = appraise(found).verdicts().stream()
                .filter(v -> v.state() != Verdict.State.UNKNOWN)
                .map(v -> v.rule() + " " + v.term())
                .toList();
        return bySizes(found).verdicts().stream()
                .filter(v -> v.chosen() && v.state() != Verdict.State.UNKNOWN)
                .filter(v -> !judged.contains(v.rule() + " " + v.term()))
                .filter(v -> isJudged(v.term()))
                .toList();
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
