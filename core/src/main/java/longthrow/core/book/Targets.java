package longthrow.core.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.book.Book.Limit;
import longthrow.core.book.Book.Target;
import longthrow.core.book.Book.Torque;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.clear.PairsOf;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Fastener;
import longthrow.core.engine.MockUp;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;

/** Gaps and clearances to set and to keep: the owner's rules first, then the trade's for this engine, then those of the mock-up. */
final class Targets {
    private final Build build;
    private final Answer measure;
    private final Words words;
    private final MockedGaps mockedUp;
    private final Function<Term, Optional<Measured>> figures;

    Targets(Build build, Answers answers, Words words) {
        this.build = build;
        this.measure = answers.measure();
        this.words = words;
        this.mockedUp = new MockedGaps(build, answers.clear(), words);
        this.figures =
                term -> measure.value(term).filter(r -> !r.contradicted()).map(Result::figure);
    }

    List<Target> all() {
        List<Target> targets = new ArrayList<>();
        build.ownRules().forEach(o -> targets.add(own(o)));
        for (Rule rule : Rule.values()) {
            if (rule.kind() != Rule.Kind.GUIDE) {
                for (Term term : rule.terms()) {
                    byTable(rule, term).ifPresent(targets::add);
                }
            }
        }
        for (MockUp gap : MockUp.values()) {
            mockUp(gap).ifPresent(targets::add);
        }
        return byPart(targets);
    }

    /** Those of a part together, parts in the order in which they come up. */
    private static List<Target> byPart(List<Target> targets) {
        Map<String, List<Target>> byPart = new LinkedHashMap<>();
        targets.forEach(
                t -> byPart.computeIfAbsent(t.part(), p -> new ArrayList<>()).add(t));
        return byPart.values().stream().flatMap(List::stream).toList();
    }

    /** What is set stands there though nothing is read; a limit of wear says something of what was read alone. */
    private Optional<Target> byTable(Rule rule, Term term) {
        boolean known = measure.value(term).isPresent();
        Set<MovingPair> pair = known ? Set.of() : PairsOf.figure(term).stream().collect(Collectors.toUnmodifiableSet());
        boolean isMockedUp = !mockedUp.brief(pair).isEmpty();
        boolean shown = known || isMockedUp || (rule.kind() == Rule.Kind.AIM && term == rule.term());
        List<Limit> limits = rule.applicable(build).stream()
                .map(a -> isMockedUp
                        ? limit(rule, term, a, mockedUp.state(pair, rule.key(a), a))
                        : limit(rule, term, a, Verdict.State.UNKNOWN))
                .toList();
        return !shown || limits.isEmpty()
                ? Optional.empty()
                : Optional.of(new Target(
                        rule.part().label(),
                        rule.terms().size() > 1 ? term.label() + ": " + rule.label() : rule.label(),
                        term.isRead() ? term.reading().how() : "",
                        limits,
                        measure.value(term).map(words::brief).orElseGet(() -> mockedUp.brief(pair)),
                        measure.value(term).map(words::line).orElseGet(() -> mockedUp.line(pair)),
                        rule.kind() == Rule.Kind.LIMIT,
                        isBehindOwn(rule, term)
                                ? Target.Whose.BEHIND_OWNERS
                                : isRating(rule) ? Target.Whose.MAKERS : Target.Whose.TRADES));
    }

    /** Whether every source of it is a share of what a maker rates. */
    private boolean isRating(Rule rule) {
        return rule.applicable(build).stream()
                .allMatch(a -> Stream.concat(a.lower().stream(), a.upper().stream())
                        .anyMatch(b ->
                                b.reference().filter(Stops.RATINGS::contains).isPresent()));
    }

    /** Whether the owner limits the same figure on a side on which this rule does. */
    private boolean isBehindOwn(Rule rule, Term term) {
        List<Alternative> meant = rule.applicable(build);
        return build.ownRules().stream()
                .filter(o -> o.term() == term)
                .anyMatch(o -> meant.stream()
                        .anyMatch(a -> (o.lower().isPresent() && a.lower().isPresent())
                                || (o.upper().isPresent() && a.upper().isPresent())));
    }

    /** @param otherwise how the engine stands to it where no figure is held against it */
    private Limit limit(Rule rule, Term term, Alternative alternative, Verdict.State otherwise) {
        Optional<Verdict> verdict = measure.verdicts().stream()
                .filter(v -> v.term() == term && v.rule().equals(rule.key(alternative)))
                .findFirst();
        boolean inForce = verdict.map(Verdict::chosen)
                .orElse(rule.inForce(build).filter(alternative::equals).isPresent());
        return new Limit(
                alternative.label(),
                window(term, alternative),
                by(alternative),
                alternative.source(),
                inForce,
                verdict.map(Verdict::state)
                        .filter(state -> state != Verdict.State.UNKNOWN)
                        .orElse(otherwise));
    }

    /** What a limit was worked out by; empty for one that is stated. */
    private static String by(Alternative alternative) {
        boolean workedOut = Stream.concat(alternative.lower().stream(), alternative.upper().stream())
                .anyMatch(b -> b.reference().isPresent());
        return workedOut ? alternative.limits() : "";
    }

    private String window(Term term, Alternative alternative) {
        Optional<String> least = alternative.lower().map(b -> words.limit(b, term, figures));
        Optional<String> most = alternative.upper().map(b -> words.limit(b, term, figures));
        return window(least, most);
    }

    private static String window(Optional<String> least, Optional<String> most) {
        return least.isPresent() && most.isPresent()
                ? least.get() + " to " + most.get()
                : least.map(l -> "least " + l)
                        .or(() -> most.map(m -> "most " + m))
                        .orElse("");
    }

    private Target own(OwnRule rule) {
        Verdict.State state = measure.verdictsOn(rule.term()).stream()
                .filter(v -> Rule.of(v).isEmpty() && v.label().equals(rule.name()))
                .map(Verdict::state)
                .findFirst()
                .orElse(Verdict.State.UNKNOWN);
        Quantity guard = rule.guard();
        String window = window(rule.lower().map(Quantity::written), rule.upper().map(Quantity::written))
                + (guard == null ? "" : ", " + guard.written() + " kept back");
        return new Target(
                rule.term().part().label(),
                rule.name() + ": " + rule.term().label(),
                rule.procedure(),
                List.of(new Limit(
                        "your own rule",
                        window,
                        "",
                        rule.reference().isEmpty() ? "your own rule" : "your own rule: " + rule.reference(),
                        true,
                        state)),
                measure.value(rule.term()).map(words::brief).orElse(""),
                measure.value(rule.term()).map(words::line).orElse(""),
                true,
                Target.Whose.OWNERS);
    }

    private Optional<Target> mockUp(MockUp gap) {
        List<Alternative> meant = gap.applicable(build);
        Set<MovingPair> pairs = PairsOf.gap(gap);
        return meant.isEmpty()
                ? Optional.empty()
                : Optional.of(new Target(
                        "mock-up",
                        gap.label(),
                        gap.how(),
                        meant.stream()
                                .map(a -> new Limit(
                                        a.label(),
                                        gap.limits(a, build),
                                        "",
                                        a.source(),
                                        meant.size() == 1,
                                        mockedUp.state(pairs, gap.key(a), a)))
                                .toList(),
                        mockedUp.brief(pairs),
                        mockedUp.line(pairs),
                        false,
                        Target.Whose.TRADES));
    }

    /** Each joint as its owner wrote it down, and whose word that is; no torque and no lubricant is made up. */
    List<Torque> torques() {
        return Fastener.all().stream()
                .map(f -> new Torque(
                        f.label(),
                        f.torque().flatMap(this::torque).orElse(Fastener.UNKNOWN),
                        f.lubricant().flatMap(this::lubricant).orElse(Fastener.UNKNOWN),
                        f.how(),
                        f.source()))
                .toList();
    }

    private Optional<String> torque(Term term) {
        List<Given> written = build.of(term);
        boolean isMakers = !written.isEmpty() && written.stream().allMatch(g -> g.isMakersWord(term));
        return measure.value(term)
                .map(r -> words.line(r)
                        + (isMakers ? ", by its maker" : ", as written; hold it against its maker's sheet"));
    }

    private Optional<String> lubricant(Choice choice) {
        return build.choice(choice)
                .map(word -> choice.option(word).map(Choice.Option::label).orElse(word));
    }
}
