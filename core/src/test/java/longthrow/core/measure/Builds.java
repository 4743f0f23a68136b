package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.build.OwnRule;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Builds for tests, written as an owner would write them. */
final class Builds {
    private final String name;
    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<String, Instrument> instruments = new LinkedHashMap<>();
    private final Map<Choice, String> choices = new LinkedHashMap<>();
    private final Map<String, String> rules = new LinkedHashMap<>();
    private final List<OwnRule> own = new ArrayList<>();
    private final Map<Term, Quantity> aims = new LinkedHashMap<>();
    private final List<Damage> damage = new ArrayList<>();
    private final List<ExactLength> shims = new ArrayList<>();
    private final List<LiftTable> lifts = new ArrayList<>();

    private Builds(String name) {
        this.name = name;
    }

    static Builds engine(String name) {
        return new Builds(name);
    }

    static Stated stated(Term term, String text) {
        Parsed parsed = QuantityParser.parse(text, term.dimension());
        if (parsed instanceof Parsed.Understood understood) {
            return understood.stated();
        }
        throw new IllegalArgumentException(text + ": " + parsed);
    }

    static Quantity quantity(Term term, String text) {
        return stated(term, text).value();
    }

    private Builds add(Term term, Given entry) {
        given.computeIfAbsent(term, t -> new ArrayList<>()).add(entry);
        return this;
    }

    /** A figure with its typed plus-or-minus. */
    Builds typed(Term term, String text) {
        Stated stated = stated(term, text);
        return add(term, new Given.Typed(stated.value(), stated.expandedDoubt().orElseThrow(), ""));
    }

    Builds readings(Term term, @Nullable String instrument, String... texts) {
        List<Quantity> readings =
                Arrays.stream(texts).map(t -> quantity(term, t)).toList();
        return add(term, new Given.Taken(readings, instrument, null, null, Given.Origin.NOT_SAID, ""));
    }

    Builds readingsAt(Term term, String instrument, String partAt, @Nullable String toolAt, String... texts) {
        List<Quantity> readings =
                Arrays.stream(texts).map(t -> quantity(term, t)).toList();
        return add(
                term,
                new Given.Taken(
                        readings,
                        instrument,
                        temperature(partAt),
                        toolAt == null ? null : temperature(toolAt),
                        Given.Origin.NOT_SAID,
                        ""));
    }

    private static Quantity temperature(String text) {
        return ((Parsed.Understood) QuantityParser.parse(text, longthrow.core.quantity.Dimension.TEMPERATURE))
                .stated()
                .value();
    }

    Builds specified(Term term, String value, @Nullable String tolerance) {
        return specified(term, value, tolerance, "sheet");
    }

    Builds specified(Term term, String value, @Nullable String tolerance, String by) {
        return add(
                term,
                new Given.Specified(
                        quantity(term, value), tolerance == null ? null : quantity(term, tolerance), by, false, ""));
    }

    Builds instrument(String key, InstrumentKind kind, double resolution, double error) {
        instruments.put(key, new Instrument(key, kind, resolution, error, 0, true, ""));
        return this;
    }

    Builds choose(Choice choice, String option) {
        choices.put(choice, option);
        return this;
    }

    Builds rule(String rule, String alternative) {
        rules.put(rule, alternative);
        return this;
    }

    Builds keep(String ruleName, Term term, @Nullable String least, @Nullable String most, @Nullable String guard) {
        own.add(new OwnRule(
                ruleName,
                term,
                least == null ? null : quantity(term, least),
                most == null ? null : quantity(term, most),
                guard == null ? null : quantity(term, guard),
                null,
                "",
                "invented"));
        return this;
    }

    Builds aim(Term term, String text) {
        aims.put(term, quantity(term, text));
        return this;
    }

    Builds seen(Part part, Damage.Kind kind, String where) {
        damage.add(new Damage(part, kind, where));
        return this;
    }

    Builds shims(String... thicknesses) {
        Arrays.stream(thicknesses).map(ExactLength::ofMillimetres).forEach(shims::add);
        return this;
    }

    Builds lifts(LiftTable table) {
        lifts.add(table);
        return this;
    }

    Build build() {
        return new Build(
                name,
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                instruments,
                given,
                choices,
                rules,
                own,
                aims,
                damage,
                shims,
                lifts,
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
    }
}
