package longthrow.core.fit;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Bound;
import longthrow.core.engine.Condition;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Windows that rules leave [SI], for parts that bring their own words with them. The owner's own rule comes first, with the guard he keeps back; then the
 * alternative in force; where the trade disagrees and nothing is picked, the widest of those that may be meant, so that nothing is counted out that
 * one of the sources would pass: the verdicts on each candidate show the spread.
 */
final class RuleWindows {
    private final Build build;
    /** By rule and words: the same few come again and again. */
    private final Map<List<Object>, List<Alternative>> meant = new HashMap<>();

    /** By the parts that may be bought. */
    private final Map<Set<Part>, RuleWindows> without = new HashMap<>();

    RuleWindows(Build build) {
        this.build = build;
    }

    /** For parts that may be bought: what such a part is made of its own row says, or nobody; what the engine's old one was made of does not count. */
    RuleWindows around(Row... rows) {
        Set<Part> bought = EnumSet.noneOf(Part.class);
        for (Row row : rows) {
            if (!row.isOwn()) {
                bought.add(row.kind().part());
            }
        }
        if (bought.isEmpty()) {
            return this;
        }
        RuleWindows known = without.get(bought);
        if (known == null) {
            Map<Choice, String> words = new EnumMap<>(Choice.class);
            words.putAll(build.choices());
            words.keySet().removeIf(choice -> bought.contains(choice.part()));
            known = new RuleWindows(build.withChoices(words));
            without.put(bought, known);
        }
        return known;
    }

    /**
     * From least to most [SI]; infinite where there is none.
     */
    record Limits(double least, double most) {
        static final Limits NONE = new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

        Limits and(Limits other) {
            return new Limits(Math.max(least, other.least), Math.min(most, other.most));
        }

        boolean isNone() {
            return equals(NONE);
        }
    }

    /** By the owner's own rules on a term. */
    Limits own(Term term) {
        Limits limits = Limits.NONE;
        for (OwnRule rule : build.ownRules()) {
            if (rule.term() == term && !rule.isOnePoint()) { // no part is made to a point
                double guard =
                        Optional.ofNullable(rule.guard()).map(g -> g.si()).orElse(0.0);
                limits = limits.and(new Limits(
                        rule.lower().map(q -> q.si() + guard).orElse(Double.NEGATIVE_INFINITY),
                        rule.upper().map(q -> q.si() - guard).orElse(Double.POSITIVE_INFINITY)));
            }
        }
        return limits;
    }

    /** By the owner's own rules, and by the table on the side on which he has none. */
    Limits of(Rule rule, Term term, Map<Choice, String> words, Function<Term, Optional<Measured>> figures) {
        Limits own = own(term);
        Limits table = table(rule, words, figures);
        if (build.rulesChosen().containsKey(rule.key())) {
            return own.and(table); // he chose the one and wrote the other: both hold
        }
        return new Limits(
                own.least() == Double.NEGATIVE_INFINITY ? table.least() : own.least(),
                own.most() == Double.POSITIVE_INFINITY ? table.most() : own.most());
    }

    /** What each source that may be meant asks, one by one; the owner's own limits are in every one of them. */
    List<Limits> each(Rule rule, Term term, Map<Choice, String> words, Function<Term, Optional<Measured>> figures) {
        Limits own = own(term);
        return meant(rule, words).stream()
                .map(a -> own.and(new Limits(
                        end(a.lower(), figures, Double.NEGATIVE_INFINITY),
                        end(a.upper(), figures, Double.POSITIVE_INFINITY))))
                .toList();
    }

    /** As {@link #of}, the table only where the owner picked one of its alternatives. */
    Limits ifPicked(Rule rule, Term term, Map<Choice, String> words, Function<Term, Optional<Measured>> figures) {
        return build.rulesChosen().containsKey(rule.key()) ? of(rule, term, words, figures) : own(term);
    }

    private Limits table(Rule rule, Map<Choice, String> words, Function<Term, Optional<Measured>> figures) {
        List<Alternative> meant = meant(rule, words);
        if (meant.isEmpty()) {
            return Limits.NONE;
        }
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Alternative a : meant) {
            least = Math.min(least, end(a.lower(), figures, Double.NEGATIVE_INFINITY));
            most = Math.max(most, end(a.upper(), figures, Double.POSITIVE_INFINITY));
        }
        return new Limits(least, most);
    }

    /** Whether every alternative hangs on words that are not said, so that perhaps none is meant; never for one that the owner picked. */
    boolean mayNotApply(Rule rule, Map<Choice, String> words) {
        if (build.rulesChosen().containsKey(rule.key())) {
            return false;
        }
        Map<Choice, String> said = new EnumMap<>(Choice.class);
        said.putAll(build.choices());
        said.putAll(words);
        Build with = build.withChoices(said);
        List<Alternative> meant = meant(rule, words);
        return !meant.isEmpty() && meant.stream().allMatch(a -> a.condition().in(with) == Condition.Holds.NOT_SAID);
    }

    /** The alternative in force, else all that may be meant. */
    private List<Alternative> meant(Rule rule, Map<Choice, String> words) {
        List<Object> key = List.of(rule, Map.copyOf(words));
        List<Alternative> known = meant.get(key);
        if (known == null) {
            Map<Choice, String> said = new EnumMap<>(Choice.class);
            said.putAll(build.choices());
            said.putAll(words);
            Build with = build.withChoices(said);
            known = rule.inForce(with).map(List::of).orElseGet(() -> rule.applicable(with));
            meant.put(key, known);
        }
        return known;
    }

    private static double end(Optional<Bound> bound, Function<Term, Optional<Measured>> figures, double none) {
        return bound.flatMap(b -> b.value(figures)).orElse(none);
    }
}
