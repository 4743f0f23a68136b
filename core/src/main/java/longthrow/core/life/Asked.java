package longthrow.core.life;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Result;
import longthrow.core.answer.Rung;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * What one sum asks of an engine. Each figure and word that it leans on is asked for here, so that one that is not there makes the whole
 * unknown, and nothing is put in its place in silence: what is taken for granted is taken aloud.
 */
public final class Asked {
    private final Known known;
    private final Map<String, Measured> inputs = new LinkedHashMap<>();
    private final Set<String> hangsOn = new LinkedHashSet<>();
    private final Set<String> from = new LinkedHashSet<>();
    private final List<Result> figures = new ArrayList<>();
    private final List<Rung.Missing> missing = new ArrayList<>();
    private final List<DefaultUsed> taken = new ArrayList<>();

    public Asked(Known known) {
        this.known = known;
    }

    /** The engine that is asked. */
    public Known known() {
        return known;
    }

    /** A figure as input of a formula, by the path of its term. */
    public Expression figure(Term term) {
        if (hangsOn.add(term.path())) {
            known.result(term)
                    .ifPresentOrElse(
                            result -> {
                                inputs.put(term.path(), result.figure());
                                figures.add(result);
                                from.addAll(result.from());
                            },
                            () -> known.missing(term).forEach(this::lacks));
        }
        return Expression.input(term.path());
    }

    /** Several figures together. */
    public Expression sum(Term first, Term... more) {
        Expression sum = figure(first);
        for (Term term : more) {
            sum = sum.plus(figure(term));
        }
        return sum;
    }

    /** A word that was chosen; asked for where it was not. */
    public Optional<String> word(Choice choice) {
        Optional<String> word = known.build().choice(choice);
        if (hangsOn.add(choice.path())) {
            if (word.isPresent()) {
                from.add(choice.path());
            } else {
                lacks(Known.missing(choice));
            }
        }
        return word;
    }

    /** A figure that comes from elsewhere: a table, a curve. */
    public Expression given(String name, Measured figure) {
        inputs.put(name, figure);
        return Expression.input(name);
    }

    /** One that scatters about 1, 95 % within the half-width. */
    public Expression scatter(String name, double halfWidth) {
        Source source = Source.at95(name, Source.Kind.ASSUMED, name, halfWidth);
        return given(name, Measured.of(1, List.of(source)));
    }

    /** Logarithm of one that scatters about 1, 95 % within the half-width. */
    public Expression logarithmSpread(String name, double halfWidth) {
        Source source = Source.at95(name, Source.Kind.ASSUMED, name, halfWidth);
        return given(name, Measured.of(0, List.of(source)));
    }

    /** One that lies evenly about 1, nearly all within the half-width. */
    public Expression spread(String name, double halfWidth) {
        Source source = Source.rectangular(name, Source.Kind.TOLERANCE, name, halfWidth);
        return given(name, Measured.of(1, List.of(source)));
    }

    /** The figure of a term, where there is one. */
    public Optional<Measured> value(Term term) {
        return known.figure(term);
    }

    /** Something that cannot be done without. */
    public void lacks(Rung.Missing what) {
        if (missing.stream()
                .noneMatch(m -> m.where().equals(what.where()) && m.what().equals(what.what()))) {
            missing.add(what);
        }
    }

    /** A place of the build file that it rests on besides figures and words. */
    public void restsOn(String place) {
        hangsOn.add(place);
        from.add(place);
    }

    /** Takes something for granted, aloud. */
    public void takes(String where, String what, String source) {
        taken.add(new DefaultUsed(where, what, source));
    }

    public void takes(List<DefaultUsed> defaults) {
        taken.addAll(defaults);
    }

    /** Whether everything asked for is there. */
    public boolean isWhole() {
        return missing.isEmpty();
    }

    public List<Rung.Missing> missing() {
        return List.copyOf(missing);
    }

    public List<DefaultUsed> taken() {
        return List.copyOf(taken);
    }

    /** That it rests on sizes that are planned, and on which; empty where it does not. */
    public String asPlanned() {
        return AsPlanned.said(known.build(), figures);
    }

    /** Places in the build file that it was asked of. */
    public List<String> hangsOn() {
        return List.copyOf(hangsOn);
    }

    /** Entries that the figures asked for rest on. */
    public List<String> from() {
        return List.copyOf(from);
    }

    /** Inputs by name; only once it is whole. */
    public Function<String, Measured> inputs() {
        if (!isWhole()) {
            throw new IllegalStateException("not all that was asked for is known: " + missing);
        }
        return name -> {
            Measured figure = inputs.get(name);
            if (figure == null) {
                throw new IllegalStateException(name + " was never asked for");
            }
            return figure;
        };
    }

    /** Every figure asked for or given, by its name; only once it is whole. */
    public Map<String, Measured> figures() {
        if (!isWhole()) {
            throw new IllegalStateException("not all that was asked for is known: " + missing);
        }
        return java.util.Collections.unmodifiableMap(inputs);
    }

    /** A figure by its formula, doubt and all; empty while something is missing. */
    public Optional<Measured> told(String name, Expression expression) {
        return isWhole() ? Optional.of(Measured.through(Formula.of(name, expression), inputs())) : Optional.empty();
    }
}
