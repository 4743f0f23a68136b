package longthrow.core.engine;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** An invented engine put together for one test: words chosen, damage seen, figures given directly. */
final class Engine {
    final Map<Choice, String> choices = new EnumMap<>(Choice.class);
    final Map<String, String> rulesChosen = new LinkedHashMap<>();
    final List<OwnRule> ownRules = new ArrayList<>();
    final List<Damage> damage = new ArrayList<>();
    final List<ExactLength> shims = new ArrayList<>();
    final Map<Term, Quantity> aims = new EnumMap<>(Term.class);
    final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    final Map<Term, Measured> figures = new EnumMap<>(Term.class);

    Engine is(Choice choice, String option) {
        choices.put(choice, option);
        return this;
    }

    Engine choose(String rule, String alternative) {
        rulesChosen.put(rule, alternative);
        return this;
    }

    Engine own(OwnRule rule) {
        ownRules.add(rule);
        return this;
    }

    Engine seen(Part part, Damage.Kind kind, String where) {
        damage.add(new Damage(part, kind, where));
        return this;
    }

    Engine shimsEachSide(String... millimetres) {
        for (String shim : millimetres) {
            shims.add(ExactLength.ofMillimetres(shim));
        }
        return this;
    }

    /** Stated without doubt. */
    Engine mm(Term term, double millimetres) {
        return with(term, Measured.exact(millimetres * 1e-3));
    }

    /** With a 95 % half-width. */
    Engine mm(Term term, double millimetres, double plusMinus) {
        return with(
                term,
                Measured.of(
                        millimetres * 1e-3,
                        List.of(Source.at95(term.path(), Source.Kind.TYPED, term.label(), plusMinus * 1e-3))));
    }

    Engine rpm(Term term, double turnsPerMinute) {
        vouched(term, turnsPerMinute);
        return with(term, Measured.exact(Units.RPM.toSi(turnsPerMinute)));
    }

    /** A rating counts as its maker's word. */
    private void vouched(Term term, double turnsPerMinute) {
        if (Stops.RATINGS.contains(term)) {
            given.put(
                    term,
                    List.of(new Given.Specified(
                            Quantity.of(java.math.BigDecimal.valueOf(turnsPerMinute), Units.RPM),
                            null,
                            "its maker",
                            false,
                            "")));
        }
    }

    /** Typed, without saying whose word it is. */
    Engine nobodysRpm(Term term, double turnsPerMinute) {
        given.put(
                term,
                List.of(new Given.Taken(
                        List.of(Quantity.of(java.math.BigDecimal.valueOf(turnsPerMinute), Units.RPM)),
                        null,
                        null,
                        null,
                        Given.Origin.NOT_SAID,
                        "")));
        return with(term, Measured.exact(Units.RPM.toSi(turnsPerMinute)));
    }

    /** A guess of the owner, with its 95 % half-width. */
    Engine guessRpm(Term term, double turnsPerMinute, double plusMinus) {
        Engine guessed = rpm(term, turnsPerMinute, plusMinus);
        given.put(
                term,
                List.of(new Given.Assumed(
                        Quantity.of(java.math.BigDecimal.valueOf(turnsPerMinute), Units.RPM),
                        Quantity.of(java.math.BigDecimal.valueOf(plusMinus), Units.RPM),
                        "looks strong",
                        "")));
        return guessed;
    }

    /** With a 95 % half-width. */
    Engine rpm(Term term, double turnsPerMinute, double plusMinus) {
        vouched(term, turnsPerMinute);
        return with(
                term,
                Measured.of(
                        Units.RPM.toSi(turnsPerMinute),
                        List.of(Source.at95(term.path(), Source.Kind.TYPED, term.label(), Units.RPM.toSi(plusMinus)))));
    }

    Engine with(Term term, Measured figure) {
        figures.put(term, figure);
        return this;
    }

    Build build() {
        return new Build(
                "invented",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                Map.of(),
                given,
                choices,
                rulesChosen,
                ownRules,
                aims,
                damage,
                shims,
                List.of(),
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
    }

    Function<Term, Optional<Measured>> figures() {
        return term -> Optional.ofNullable(figures.get(term));
    }

    List<Verdict> verdicts() {
        return Judge.verdicts(build(), figures());
    }

    Verdict verdict(String rule) {
        return verdicts().stream()
                .filter(v -> v.rule().equals(rule))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no verdict by " + rule));
    }

    Verdict.State state(String rule) {
        return verdict(rule).state();
    }

    List<Finding> disagreements() {
        return Judge.disagreements(build(), verdicts());
    }

    Finding part(String key) {
        return PartVerdicts.of(build(), verdicts(), figures()).stream()
                .filter(f -> f.where().equals(key))
                .findFirst()
                .orElseThrow();
    }
}
