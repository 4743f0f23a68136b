package longthrow.core.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToIntFunction;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Material;
import longthrow.core.formula.Formula;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Fraction;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * What is read on a simulated engine, with what and how often. The readings come from the true engine through the true instruments: their own error,
 * the hand's scatter, the step of the scale.
 */
final class BenchDesign {
    private static final Map<Dimension, Unit> SI = new EnumMap<>(Map.ofEntries(
            Map.entry(Dimension.LENGTH, Units.METRE),
            Map.entry(Dimension.AREA, Units.SQUARE_METRE),
            Map.entry(Dimension.VOLUME, Units.CUBIC_METRE),
            Map.entry(Dimension.ANGLE, Units.DEGREE),
            Map.entry(Dimension.MASS, Units.KILOGRAM),
            Map.entry(Dimension.FORCE, Units.NEWTON),
            Map.entry(Dimension.PRESSURE, Units.PASCAL),
            Map.entry(Dimension.ROTATIONAL_SPEED, Units.RADIAN_PER_SECOND),
            Map.entry(Dimension.INERTIA, Units.KILOGRAM_METRE_SQUARED),
            Map.entry(Dimension.RATIO, Units.BARE_RATIO)));

    /** One line of the reading sheet. */
    private record Line(
            Term term, @Nullable String tool, ToIntFunction<SplittableRandom> count, double tolerance, double warmer) {}

    private final String name;
    private final List<Line> lines = new ArrayList<>();
    private final Map<String, Instrument> tools = new LinkedHashMap<>();
    private final Map<Choice, String> choices = new LinkedHashMap<>();
    private ToIntFunction<SplittableRandom> count = r -> 1;
    private double warmer = Double.NaN;
    private final Map<Part, Material> metals = new ConcurrentHashMap<>();
    private @Nullable Map<Term, Formula> formulas;

    BenchDesign(String name) {
        this.name = name;
    }

    String name() {
        return name;
    }

    /** From here on every term is read so many times. */
    BenchDesign times(int n) {
        count = r -> n;
        return this;
    }

    /** From here on every term is read one to {@code most} times, anew for each. */
    BenchDesign timesUpTo(int most) {
        count = r -> 1 + r.nextInt(most);
        return this;
    }

    /** From here on parts are about so many kelvin above 20 °C, and the instruments half as many; both written down. */
    BenchDesign warmerBy(double kelvin) {
        warmer = kelvin;
        return this;
    }

    BenchDesign choose(Choice choice, String option) {
        choices.put(choice, option);
        return this;
    }

    /** An instrument of the owner's own, set with the built-in one of another kind, whose error its readings then share. */
    BenchDesign toolSetWith(String key, InstrumentKind kind, InstrumentKind standard) {
        tools.put(
                key,
                new Instrument(
                        key,
                        kind,
                        kind.resolution(),
                        kind.statedError(),
                        kind.relativeError(),
                        true,
                        "invented",
                        Instrument.builtIn(standard)));
        return this;
    }

    BenchDesign read(Term... terms) {
        return readWith(null, terms);
    }

    BenchDesign readWith(@Nullable String tool, Term... terms) {
        for (Term term : terms) {
            lines.add(new Line(term, tool, count, 0, warmer));
        }
        return this;
    }

    /** From a maker's sheet that is right within this tolerance. */
    BenchDesign sheet(Term term, double tolerance) {
        lines.add(new Line(term, null, count, tolerance, Double.NaN));
        return this;
    }

    /** The formula of each term under this design; the same for all engines. */
    Map<Term, Formula> formulas() {
        if (formulas == null) {
            Map<Term, List<Given>> given = new EnumMap<>(Term.class);
            for (Line line : lines) {
                Quantity any = quantity(1, 1, line.term().dimension());
                given.put(
                        line.term(),
                        List.of(new Given.Taken(List.of(any), null, null, null, Given.Origin.NOT_SAID, "")));
            }
            EngineModel model = new EngineModel(build(given));
            Map<Term, Formula> all = new EnumMap<>(Term.class);
            for (Term term : model.terms()) {
                all.put(term, model.formula(term).orElseThrow());
            }
            formulas = all;
        }
        return formulas;
    }

    double truth(SimulatedEngine engine, Term term) {
        return Objects.requireNonNull(formulas().get(term), term.path()).at(engine::at);
    }

    /** What the owner of this engine writes down. */
    Build readings(SimulatedEngine engine) {
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        for (Line line : lines) {
            given.computeIfAbsent(line.term(), t -> new ArrayList<>())
                    .add(line.tolerance() > 0 ? sheet(engine, line) : taken(engine, line));
        }
        return build(given);
    }

    private Build build(Map<Term, List<Given>> given) {
        OwnRule least = new OwnRule(
                "least volume",
                Term.CLEARANCE_VOLUME,
                quantity(20, 1e-6, Dimension.VOLUME),
                null,
                null,
                null,
                "",
                "invented");
        return new Build(
                name,
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                tools,
                given,
                choices,
                Map.of(),
                List.of(least),
                Map.of(Term.SQUISH, quantity(1, 1.27e-3, Dimension.LENGTH)),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
    }

    private Given sheet(SimulatedEngine engine, Line line) {
        double off = line.tolerance() * (2 * engine.random().nextDouble() - 1);
        Dimension dimension = line.term().dimension();
        return new Given.Specified(
                quantity(Math.round((truth(engine, line.term()) - off) / 1e-9), 1e-9, dimension),
                quantity(Math.round(line.tolerance() / 1e-9), 1e-9, dimension),
                "invented sheet",
                false,
                "");
    }

    private Given taken(SimulatedEngine engine, Line line) {
        Term term = line.term();
        Instrument tool = instrument(line);
        double added = 0;
        double share = 0;
        for (Instrument at = tool; at != null; at = at.setWith()) {
            added += engine.instrument(at.kind(), at.key())[0];
            share += engine.instrument(at.kind(), at.key())[1];
        }
        double expected = truth(engine, term);
        Quantity partAt = null;
        Quantity toolAt = null;
        if (!Double.isNaN(line.warmer())) {
            double part = line.warmer() * engine.between(0.7, 1.3);
            double scale = part / 2;
            Material metal = metals.computeIfAbsent(
                    term.part(), p -> Material.of(build(Map.of()), p).orElseThrow());
            expected *= (1 + engine.expansion(metal) * part) / (1 + engine.expansion(Material.STEEL) * scale);
            double doubt = Readings.TEMPERATURE_DOUBT / SimulatedEngine.STATED;
            partAt = celsius(20 + part + doubt * engine.normal());
            toolAt = celsius(20 + scale + doubt * engine.normal());
        }
        expected += Readings.directionOf(term) * added + expected * share;
        double hand = engine.hand(term.reading());
        double step = tool.resolution();
        int n = line.count().applyAsInt(engine.random());
        List<Quantity> readings = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            readings.add(quantity(Math.round((expected + hand * engine.normal()) / step), step, term.dimension()));
        }
        // a bare speed is a wish or a plate's; one that was read names what it was read with
        String with = Readings.STATED.contains(term) ? tool.key() : line.tool();
        return new Given.Taken(readings, with, partAt, toolAt, Given.Origin.NOT_SAID, "");
    }

    private Instrument instrument(Line line) {
        String key = line.tool();
        if (key == null) {
            return Instrument.builtIn(line.term().reading().usualInstrument());
        }
        Instrument own = tools.get(key);
        return own != null
                ? own
                : Arrays.stream(InstrumentKind.values())
                        .filter(kind -> kind.key().equals(key))
                        .map(Instrument::builtIn)
                        .findFirst()
                        .orElseThrow();
    }

    private static Quantity celsius(double degrees) {
        return Quantity.of("°C", Fraction.of(Math.round(degrees * 100), 100), Units.CELSIUS);
    }

    /** So many steps, in the unit that the dimension is read in. */
    private static Quantity quantity(long steps, double step, Dimension dimension) {
        Unit unit = SI.get(dimension);
        if (unit == null) {
            throw new IllegalArgumentException("no unit for " + dimension);
        }
        double inUnit = dimension == Dimension.ANGLE ? Math.toDegrees(step) : step;
        Fraction exact = Fraction.of(BigDecimal.valueOf(inUnit).round(new MathContext(12)));
        return Quantity.of("simulated", exact.times(Fraction.of(steps)), unit);
    }
}
