package longthrow.core.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Percent;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;

/**
 * Holds the figures of an engine against the trade's rules and the owner's own (JCGM 106:2012): one verdict for every alternative that may
 * be meant for it. A limit is kept by the figure that stands on it. The limits of a verdict are NaN where what they are a factor of is
 * not known.
 */
public final class Judge {
    /** What stands before the name of an own rule in the key of its verdict. */
    public static final String OWN = "own:";

    private static final String READ_AGAIN = "read it again, more often or with a finer instrument";

    private final Build build;
    private final Function<Term, Optional<Measured>> figures;
    private final Wording wording;

    private Judge(Build build, Function<Term, Optional<Measured>> figures) {
        this.build = build;
        this.figures = figures;
        this.wording = new Wording(build);
    }

    /**
     * Verdicts by every rule on whose figure something is known or aimed at, in the order of the table, then by the owner's own rules.
     * @param figures of the engine; empty for what is not known
     */
    public static List<Verdict> verdicts(Build build, Function<Term, Optional<Measured>> figures) {
        Judge judge = new Judge(build, figures);
        List<Verdict> verdicts = new ArrayList<>();
        for (Rule rule : Rule.values()) {
            for (Term term : rule.terms()) {
                if (figures.apply(term).isPresent() || build.aims().containsKey(term)) {
                    rule.applicable(build).stream()
                            .filter(a -> !rule.isForOthers(a, build))
                            .forEach(a -> verdicts.add(judge.byTable(rule, term, a)));
                }
            }
        }
        for (OwnRule own : build.ownRules()) {
            for (Term term : sameGap(own.term())) {
                if (term == own.term() || figures.apply(term).isPresent()) {
                    verdicts.add(judge.byOwn(own, term));
                }
            }
        }
        return List.copyOf(verdicts);
    }

    /**
     * Rules that surely fail, one verdict for each figure and rule: that of the rule that counts, or one of all where every source says so, whichever is
     * meant. For figures that are still being typed: only those that stand outside a limit are judged, since the chances take most of the time. So a
     * figure inside its limits whose doubt alone is too wide for them is not among these.
     * @param figures of the engine; empty for what is not known
     */
    public static List<Verdict> failing(Build build, Function<Term, Optional<Measured>> figures) {
        Judge judge = new Judge(build, figures);
        List<Verdict> failing = new ArrayList<>();
        for (Rule rule : Rule.values()) {
            for (Term term : rule.terms()) {
                List<Alternative> meant = figures.apply(term).isEmpty()
                        ? List.of()
                        : rule.applicable(build).stream()
                                .filter(a -> !rule.isForOthers(a, build))
                                .toList();
                List<Verdict> outside = meant.stream()
                        .filter(a -> judge.isOutside(term, a))
                        .map(a -> judge.byTable(rule, term, a))
                        .filter(v -> v.state() == Verdict.State.FAILS)
                        .toList();
                outside.stream()
                        .filter(v -> v.chosen() || outside.size() == meant.size())
                        .findFirst()
                        .ifPresent(failing::add);
            }
        }
        for (OwnRule own : build.ownRules()) {
            for (Term term : sameGap(own.term())) {
                if (figures.apply(term).isPresent()) {
                    failing.add(judge.byOwn(own, term));
                }
            }
        }
        failing.removeIf(v -> v.state() != Verdict.State.FAILS);
        return List.copyOf(failing);
    }

    private boolean isOutside(Term term, Alternative alternative) {
        double value = figures.apply(term).map(Measured::value).orElse(Double.NaN);
        return alternative
                        .lower()
                        .flatMap(b -> b.value(figures))
                        .filter(l -> value < l)
                        .isPresent()
                || alternative
                        .upper()
                        .flatMap(b -> b.value(figures))
                        .filter(m -> value > m)
                        .isPresent();
    }

    /** The term and those that are the same gap read in another way or after a cut: an own rule speaks of them all. */
    private static List<Term> sameGap(Term term) {
        return switch (term) {
            case SQUISH -> List.of(term, Term.SQUISH_SMALLER_END);
            case VALVE_TO_HEAD -> List.of(term, Term.VALVE_TO_HEAD_AFTER_CUT);
            case COMPRESSION_RATIO -> List.of(term, Term.RATIO_AFTER_CUT);
            case ROD_SIDE_CLEARANCE -> List.of(term, Term.SIDE_CLEARANCE_BY_WIDTH);
            default -> List.of(term);
        };
    }

    private Verdict byTable(Rule rule, Term term, Alternative alternative) {
        Optional<OwnRule> own = ownBefore(build, term, alternative);
        boolean chosen =
                own.isEmpty() && rule.inForce(build).filter(alternative::equals).isPresent();
        String aside = aside(rule, alternative)
                + own.map(o -> "; your own rule '" + o.name() + "' stands before it")
                        .orElse("");
        String label = rule.label() + ": " + alternative.label();
        return verdict(
                new Asked(rule.key(alternative), label, term, chosen, aside, alternative.source()),
                alternative.lower(),
                alternative.upper(),
                rule.whenLow(),
                rule.whenHigh());
    }

    private static Optional<OwnRule> ownBefore(Build build, Term term, Alternative alternative) {
        return build.ownRules().stream()
                .filter(o -> sameGap(o.term()).contains(term))
                .filter(o -> (o.lower().isPresent() && alternative.lower().isPresent())
                        || (o.upper().isPresent() && alternative.upper().isPresent()))
                .findFirst();
    }

    /** Whether a rule of the owner on the same side of the same figure stands before this verdict of the table. */
    public static boolean isOverruled(Build build, Verdict verdict) {
        return Rule.of(verdict)
                .flatMap(r -> ownBefore(build, verdict.term(), alternative(r, verdict)))
                .isPresent();
    }

    private String aside(Rule rule, Alternative alternative) {
        return switch (alternative.condition().in(build)) {
            case YES -> "";
            case NOT_SAID -> "; meant where " + alternative.condition().text() + Verdict.PERHAPS_NOT_MEANT;
            case NO ->
                "; picked by you, although " + rule.key() + " " + alternative.key() + " is meant where "
                        + alternative.condition().text();
        };
    }

    private Verdict byOwn(OwnRule own, Term term) {
        String source = "your own rule"
                + (own.reference().isEmpty() ? "" : ": " + own.reference())
                + (own.procedure().isEmpty() ? "" : "; measured: " + own.procedure())
                + (own.temperature() == null ? "" : "; at " + wording.stated(own.temperature()));
        RuleTemperature temperature = new RuleTemperature(build, own, term);
        String aside = temperature.aside(wording, own) + guard(own, temperature);
        Asked asked = new Asked(OWN + own.name(), own.name(), term, true, aside, source);
        if (temperature.isMissingMetal()) {
            return undecided(asked, own, temperature.cure(term));
        }
        Optional<String> never = neverKept(own);
        if (never.isPresent()) {
            Asked absurd =
                    new Asked(asked.rule(), asked.label(), term, true, aside + "; " + never.get(), asked.source());
            return undecided(absurd, own, "check the limit's figure, unit and sign");
        }
        if (own.isOnePoint()
                && figures.apply(term).filter(m -> m.standardUncertainty() == 0).isEmpty()) {
            Asked point = new Asked(
                    asked.rule(),
                    asked.label(),
                    term,
                    true,
                    aside + "; its least and its most are the same, and nothing that is measured can keep that",
                    asked.source());
            return undecided(point, own, "give the limit a range: a least and a most with room between them");
        }
        Verdict verdict = verdict(
                asked,
                own.lower().map(temperature::bring),
                own.upper().map(temperature::bring),
                mend(term, true),
                mend(term, false));
        Quantity kept = own.guard();
        return kept == null || verdict.cure().isEmpty()
                ? verdict
                : verdict.withCure(verdict.cure() + "; and " + wording.stated(kept) + " more, which you keep back");
    }

    /** A limit at a temperature from which it cannot be brought to that of the figures decides nothing. */
    private Verdict undecided(Asked asked, OwnRule own, String cure) {
        Optional<Measured> figure = figures.apply(asked.term()).filter(m -> !m.isUnknown());
        String found = figure.map(m -> asked.term().label() + " " + wording.figure(asked.term(), m) + " at 20 °C")
                .orElse(asked.term().label() + " is not known");
        return new Verdict(
                asked.rule(),
                asked.label(),
                asked.term(),
                own.lower().map(Quantity::si).orElse(Double.NEGATIVE_INFINITY),
                own.upper().map(Quantity::si).orElse(Double.POSITIVE_INFINITY),
                Double.NaN,
                Verdict.State.UNKNOWN,
                true,
                found + asked.aside(),
                cure,
                asked.source());
    }

    /** Why no engine of this kind can keep the rule; empty when one can, or when nothing tells. */
    private Optional<String> neverKept(OwnRule own) {
        if (!own.term().isRead()) {
            return Optional.empty();
        }
        Believable range = own.term().believable();
        Optional<Quantity> absurd = own.upper()
                .filter(most -> most.si() < range.least())
                .or(() -> own.lower().filter(least -> least.si() > range.most()));
        return absurd.map(limit -> "no 80 to 500 cc single keeps a limit of " + wording.stated(limit) + ": "
                + own.term().label() + " is " + wording.amount(own.term(), range.least(), 0) + " to "
                + wording.amount(own.term(), range.most(), 0) + " (common practice, no source)");
    }

    private String guard(OwnRule own, RuleTemperature temperature) {
        Quantity guard = own.guard();
        if (guard == null) {
            return "";
        }
        double kept = guard.si();
        String least = own.lower()
                .map(l -> ", so work down to no less than "
                        + wording.amount(own.term(), temperature.bringSi(l) + kept, 0))
                .orElse("");
        String most = own.upper()
                .map(m ->
                        ", so work up to no more than " + wording.amount(own.term(), temperature.bringSi(m) - kept, 0))
                .orElse("");
        return "; " + wording.stated(guard) + " is kept back from the limit" + least + most;
    }

    /** How the table mends this figure; own rules are mended likewise. */
    private static Mend mend(Term term, boolean low) {
        for (Rule rule : Rule.values()) {
            Mend mend = low ? rule.whenLow() : rule.whenHigh();
            if (rule.terms().contains(term) && !mend.equals(Mend.NONE)) {
                return mend;
            }
        }
        if (term == Term.BORE) {
            return low
                    ? Mend.machine("bore it out by " + Mend.AMOUNT)
                    : Mend.replace("a sleeve or another cylinder, smaller by " + Mend.AMOUNT);
        }
        return Mend.machine((low ? "raise" : "lower") + " the " + term.label() + " by " + Mend.AMOUNT);
    }

    /** A question to be answered by a verdict. */
    private record Asked(String rule, String label, Term term, boolean chosen, String aside, String source) {}

    private Verdict verdict(Asked asked, Optional<Bound> lower, Optional<Bound> upper, Mend whenLow, Mend whenHigh) {
        Term term = asked.term();
        Optional<Measured> figure = figures.apply(term).filter(m -> !m.isUnknown());
        Optional<Margin> low = lower.flatMap(b -> figure.flatMap(m -> Margin.of(term, m, b, true, figures)));
        Optional<Margin> high = upper.flatMap(b -> figure.flatMap(m -> Margin.of(term, m, b, false, figures)));
        boolean known =
                figure.isPresent() && low.isPresent() == lower.isPresent() && high.isPresent() == upper.isPresent();
        double probability = known ? both(low, high) : Double.NaN;
        Verdict.State state = Verdict.State.of(probability);
        String why;
        String cure = "";
        if (known) {
            boolean lowIsNearer = high.isEmpty()
                    || (low.isPresent() && low.get().distance() <= high.get().distance());
            Margin nearer = (lowIsNearer ? low : high).orElseThrow();
            Bound bound = (lowIsNearer ? lower : upper).orElseThrow();
            why = why(term, figure.orElseThrow(), nearer, bound, lowIsNearer, probability);
            if (state != Verdict.State.MEETS) {
                cure = shims(term, low, high) + cure(term, nearer, lowIsNearer ? whenLow : whenHigh, state);
            }
        } else {
            why = unknown(term, figure.isPresent(), lower, upper);
            cure = figure.isPresent() ? "" : "find the " + term.label();
        }
        return new Verdict(
                asked.rule(),
                asked.label(),
                term,
                lower.map(b -> b.value(figures).orElse(Double.NaN)).orElse(Double.NEGATIVE_INFINITY),
                upper.map(b -> b.value(figures).orElse(Double.NaN)).orElse(Double.POSITIVE_INFINITY),
                probability,
                state,
                asked.chosen(),
                why + asked.aside(),
                cure,
                asked.source());
    }

    /** A figure cannot be under the least and over the most at once, so the chances of the two add up. */
    private static double both(Optional<Margin> low, Optional<Margin> high) {
        double tooLow = low.map(m -> 1 - m.probability()).orElse(0.0);
        double tooHigh = high.map(m -> 1 - m.probability()).orElse(0.0);
        return Math.max(0, 1 - tooLow - tooHigh);
    }

    private String why(Term term, Measured figure, Margin margin, Bound bound, boolean least, double probability) {
        String limit = (least ? "the least, " : "the most, ")
                + wording.limit(term, bound, margin.limit(), bound.reference().isPresent() ? margin.expanded() : 0);
        boolean above = margin.distance() > 0 == least;
        boolean exactlyOn = margin.distance() == 0;
        String where = exactlyOn || wording.vanishes(term, margin.distance(), margin.expanded())
                ? (exactlyOn ? "exactly on " : "on ") + limit
                : wording.difference(term, Math.abs(margin.distance()), margin.expanded())
                        + (above ? " above " : " below ")
                        + limit;
        String sure = margin.standardUncertainty() == 0
                ? ""
                : "; kept with a probability of " + Percent.ofProbability(probability);
        return term.label() + " " + wording.figure(term, figure) + " is " + where + sure;
    }

    private String cure(Term term, Margin margin, Mend mend, Verdict.State state) {
        if (margin.distance() >= 0 || wording.vanishes(term, margin.distance(), margin.expanded())) {
            return READ_AGAIN; // nothing is known to be wrong: only the doubt is too wide
        }
        boolean near = state == Verdict.State.NEAR;
        if (mend.how().isEmpty()) {
            return near ? READ_AGAIN : "";
        }
        String over = wording.difference(term, -margin.distance(), margin.expanded());
        String sure = wording.difference(term, margin.toBeSure(), margin.expanded());
        String amount = margin.standardUncertainty() == 0 ? over : over + ", or " + sure + " to be sure";
        return mend.with(amount, over) + (near ? "; or " + READ_AGAIN + " first" : "");
    }

    /** What the shims at hand would do for a loose big end. */
    private String shims(Term term, Optional<Margin> low, Optional<Margin> high) {
        Optional<Measured> clearance = figures.apply(term);
        if (term != Term.BIG_END_CLEARANCE
                || build.shims().isEmpty()
                || clearance.isEmpty()
                || low.isEmpty()
                || high.isEmpty()
                || high.get().distance() >= 0) {
            return "";
        }
        double least = low.get().limit();
        double most = high.get().limit();
        return Shims.options(build, clearance.get().value()).stream()
                .map(o -> o.text() + " leaves "
                        + wording.amount(term, o.left(), high.get().expanded())
                        + (o.left() < least ? ", too tight" : o.left() > most ? ", still loose" : ", within"))
                .collect(Collectors.joining("; ", "take shims out on each side: ", "; else "));
    }

    private String unknown(Term term, boolean figureKnown, Optional<Bound> lower, Optional<Bound> upper) {
        if (!figureKnown) {
            return term.label() + " is not known";
        }
        return List.of(lower, upper).stream()
                .flatMap(Optional::stream)
                .filter(b -> b.value(figures).isEmpty())
                .flatMap(b -> b.reference().stream())
                .distinct()
                .map(t -> "the limit is a factor of the " + t.label() + ", which is not known")
                .collect(Collectors.joining("; "));
    }

    /**
     * Where the verdict hangs on which source one follows, and words under {@code rules: choose} that the table does not have.
     * @param verdicts of this build
     */
    public static List<Finding> disagreements(Build build, List<Verdict> verdicts) {
        List<Finding> findings = new ArrayList<>();
        build.rulesChosen()
                .forEach((key, alternative) -> strange(key, alternative).ifPresent(findings::add));
        Map<String, List<Verdict>> byRule = new LinkedHashMap<>();
        for (Verdict verdict : verdicts) {
            Rule.of(verdict)
                    .ifPresent(r -> byRule.computeIfAbsent(
                                    r.key() + " " + verdict.term().path(), k -> new ArrayList<>())
                            .add(verdict));
        }
        for (List<Verdict> spread : byRule.values()) {
            if (spread.stream().map(Verdict::state).distinct().count() > 1) {
                findings.add(disagreement(build, spread));
            }
        }
        return List.copyOf(findings);
    }

    private static Finding disagreement(Build build, List<Verdict> spread) {
        Rule rule = Rule.of(spread.get(0)).orElseThrow();
        String sides = spread.stream()
                .map(v -> alternative(rule, v))
                .map(a -> a.label() + " (" + a.limits() + ") " + state(rule, a, spread))
                .collect(Collectors.joining("; "));
        String because = rule.dispute().isEmpty() ? "it hangs on what is not said yet" : rule.dispute();
        boolean own =
                spread.stream().noneMatch(Verdict::chosen) && spread.stream().anyMatch(v -> isOverruled(build, v));
        Optional<Alternative> inForce = rule.inForce(build);
        String standing = own
                ? ". Your own rule decides"
                : inForce.map(a -> ". In force: " + a.label()).orElse(". None is in force");
        String keys = spread.stream().map(v -> alternative(rule, v).key()).collect(Collectors.joining(" or "));
        return new Finding(
                Finding.Kind.NOTE,
                spread.get(0).term().path(),
                rule.label() + ": sources disagree: " + sides + ". Why: " + because + standing,
                own || inForce.isPresent() ? "" : "choose with rules: choose: " + rule.key() + ": " + keys);
    }

    private static Alternative alternative(Rule rule, Verdict verdict) {
        return rule.alternative(verdict.rule().substring(rule.key().length() + 1))
                .orElseThrow();
    }

    private static String state(Rule rule, Alternative alternative, List<Verdict> spread) {
        return spread.stream()
                .filter(v -> v.rule().equals(rule.key(alternative)))
                .map(v -> v.state().label())
                .findFirst()
                .orElseThrow();
    }

    private static Optional<Finding> strange(String key, String alternative) {
        Optional<Rule> rule = Rule.at(key);
        if (rule.isPresent() && rule.get().alternative(alternative).isPresent()) {
            return Optional.empty();
        }
        String allowed = rule.isPresent()
                ? rule.get().alternatives().stream().map(Alternative::key).collect(Collectors.joining(", "))
                : Arrays.stream(Rule.values()).map(Rule::key).collect(Collectors.joining(", "));
        return Optional.of(new Finding(
                Finding.Kind.WARNING,
                "rules.choose." + key,
                rule.isPresent()
                        ? key + " has no alternative '" + alternative + "'; nothing is chosen"
                        : "no rule is called '" + key + "'; nothing is chosen",
                "write one of: " + allowed));
    }
}
