package longthrow.buildfile;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Decided;
import longthrow.core.build.FitWish;
import longthrow.core.build.FlowTable;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.HoursAt;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.build.MockedUp;
import longthrow.core.build.OwnRule;
import longthrow.core.build.TracedOutline;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** Builds that nobody would write, from a seed: every form, every odd text. */
final class RandomBuilds {
    private static final String[] WORDS = {
        "plain",
        "two words",
        "it's",
        "a: b",
        "a #b",
        "#a",
        "- a",
        "[a]",
        "{a}",
        "a, b",
        "\"quoted\"",
        "'",
        "\\",
        "&a",
        "*a",
        "!a",
        "%a",
        "@a",
        "`a",
        "|",
        ">",
        "?",
        ":",
        "a:",
        "null",
        "~",
        "yes",
        "1.10",
        "12E4",
        "0x1F",
        "---",
        "...",
        "<<",
        "line one\nline two",
        "°±Δ≤⌀",
        "𝛑 and 😀",
        " lead",
        "trail ",
        "=",
        "unknown ways",
        "-",
        "--",
        ".5",
        "+1",
        "a:b",
        "a#b",
        "½",
        "readings"
    };

    private final SplittableRandom random;
    private final Map<String, Instrument> instruments = new LinkedHashMap<>();

    private RandomBuilds(long seed) {
        this.random = new SplittableRandom(seed);
    }

    static Build build(long seed) {
        return new RandomBuilds(seed).build();
    }

    private Build build() {
        for (int i = random.nextInt(4); i > 0; i--) {
            instrument("tool_" + i);
        }
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        for (Term term : Term.read()) {
            if (random.nextInt(3) == 0) {
                List<Given> all = new ArrayList<>();
                for (int i = random.nextInt(5) == 0 ? random.nextInt(2, 4) : 1; i > 0; i--) {
                    all.add(given(term));
                }
                given.put(term, all);
            }
        }
        return new Build(
                words(),
                random.nextBoolean(),
                random.nextBoolean() ? UnitSystem.METRIC_FIRST : UnitSystem.INCH_FIRST,
                many(this::words),
                instruments,
                given,
                choices(),
                rules(),
                many(this::rule),
                aims(),
                many(() -> damage(one(Part.values()), one(Damage.Kind.values()), wordsOrNone())),
                many(() -> ExactLength.ofMillimetres("0." + random.nextInt(1, 1000))),
                many(this::lifts),
                outlines(),
                bench(),
                random.nextBoolean() ? FitWish.NONE : fit(),
                many(this::decided),
                many(this::mockedUp),
                many(this::gas),
                hoursAt(),
                many(this::flows));
    }

    /** No duty, or one whose shares are the whole and whose speeds differ. */
    private List<HoursAt> hoursAt() {
        List<HoursAt> steps = new ArrayList<>();
        int speed = random.nextInt(200, 2000);
        for (int left = random.nextInt(3) == 0 ? 100 : 0; left > 0; ) {
            int part = random.nextInt(1, left + 1);
            left -= part;
            speed += random.nextInt(1, 300);
            if (steps.size() == HoursAt.MOST_STEPS - 1) {
                part += left;
                left = 0;
            }
            steps.add(new HoursAt(
                    quantity(speed + " rpm", Dimension.ROTATIONAL_SPEED),
                    random.nextBoolean()
                            ? quantity(part + " %", Dimension.RATIO)
                            : quantity(BigDecimal.valueOf(part, 2).toPlainString(), Dimension.RATIO)));
        }
        return steps;
    }

    private MockedUp mockedUp() {
        MovingPair pair = one(MovingPair.values());
        MockedUp.Way any = one(MockedUp.Way.values());
        MockedUp.Way way = any.reads(pair) ? any : MockedUp.Way.WIRE;
        boolean isBlue = way == MockedUp.Way.BLUE;
        MockedUp.Found found = switch (random.nextInt(isBlue ? 2 : 5)) {
            case 0 -> new MockedUp.Touching();
            case 1 ->
                new MockedUp.Free(isBlue ? quantity("0 mm", Dimension.LENGTH) : figure(Dimension.LENGTH, 1e-4, 1e-2));
            case 2 -> new MockedUp.Read(List.of(gap(), gap()), null);
            case 3 -> new MockedUp.Read(List.of(gap()), random.nextBoolean() ? gap() : null);
            default ->
                new MockedUp.Curve(List.of(
                        new MockedUp.Row(quantity("355°", Dimension.ANGLE), gap()),
                        new MockedUp.Row(quantity("360.5 deg", Dimension.ANGLE), gap()),
                        new MockedUp.Row(quantity("371°", Dimension.ANGLE), gap())));
        };
        Map<Term, Quantity> with = new EnumMap<>(Term.class);
        MockedUp.SIZES.stream().filter(size -> random.nextBoolean()).forEach(size -> with.put(size, gap()));
        return new MockedUp(pair, way, found, one(MockedUp.EndPlay.values()), with, wordsOrNone());
    }

    private Quantity gap() {
        return figure(Dimension.LENGTH, 1e-4, 1e-2);
    }

    /** Any trace that may be: compression and expansion about a peak that moves a little. */
    private GasReading gas() {
        int peak = random.nextInt(0, 30);
        List<GasReading.Row> rows = new ArrayList<>();
        for (int angle = -180; angle <= 180; angle += 5) {
            double share = Math.exp(-Math.pow((angle - peak) / 40.0, 2));
            rows.add(new GasReading.Row(
                    Quantity.of(angle + "", Units.DEGREE),
                    Quantity.of(String.valueOf(100 + Math.round(3000 * share)), Units.KILOPASCAL)));
        }
        boolean isGauge = random.nextBoolean();
        return new GasReading(
                Quantity.of(String.valueOf(random.nextInt(1000, 6000)), Units.RPM),
                isGauge ? GasReading.Reference.GAUGE : GasReading.Reference.ABSOLUTE,
                isGauge ? Quantity.of("20", Units.KILOPASCAL) : null,
                random.nextBoolean() ? GasReading.Cycles.MEAN : GasReading.Cycles.STRONGEST,
                Quantity.of(String.valueOf(random.nextInt(1, 20)), Units.PERCENT),
                wordsOrNone(),
                rows);
    }

    private void instrument(String key) {
        InstrumentKind kind = one(InstrumentKind.values());
        Dimension step = kind.dimension().ofDifference();
        double resolution = figure(step, 1e-6, 1e-2).si();
        double error = random.nextBoolean() ? 0 : figure(step, 1e-6, 1e-2).si();
        double share = random.nextInt(3) == 0 ? random.nextDouble() : 0;
        List<Instrument> standards = new ArrayList<>(instruments.values());
        standards.add(Instrument.builtIn(InstrumentKind.MICROMETER));
        standards.removeIf(i -> random.nextBoolean() || i.kind().dimension() != kind.dimension());
        Instrument standard = standards.isEmpty() ? null : standards.get(0);
        instruments.put(
                key,
                new Instrument(key, kind, resolution, error, share, random.nextBoolean(), wordsOrNone(), standard));
    }

    private Given given(Term term) {
        Quantity value = value(term);
        return switch (random.nextInt(6)) {
            case 0 -> new Given.Typed(value, width(value), wordsOrNone());
            case 1 ->
                new Given.Specified(
                        value,
                        random.nextBoolean() ? width(value) : null,
                        wordsOrNone(),
                        random.nextBoolean(),
                        wordsOrNone());
            case 2 -> new Given.Assumed(value, width(value), words() + ".", wordsOrNone());
            case 3 -> new Given.NotKnown(wordsOrNone());
            case 4 -> new Given.Taken(List.of(value), null, null, null, Given.Origin.NOT_SAID, "");
            default -> taken(term);
        };
    }

    private Given taken(Term term) {
        List<Quantity> readings = new ArrayList<>();
        for (int i = random.nextInt(1, 5); i > 0; i--) {
            readings.add(value(term));
        }
        List<String> fitting = new ArrayList<>();
        instruments.values().stream()
                .filter(i -> i.kind().dimension() == term.dimension())
                .forEach(i -> fitting.add(i.key()));
        fitting.add(term.reading().usualInstrument().key());
        String with = random.nextBoolean() ? fitting.get(random.nextInt(fitting.size())) : null;
        Given.Origin origin = random.nextBoolean()
                ? Given.Origin.NOT_SAID
                : new Given.Origin(wordsOrNone(), wordsOrNone(), wordsOrNone());
        return new Given.Taken(readings, with, temperature(), temperature(), origin, wordsOrNone());
    }

    private @Nullable Quantity temperature() {
        return random.nextInt(3) > 0
                ? null
                : quantity(random.nextInt(-40, 200) + (random.nextBoolean() ? " °C" : " °F"), Dimension.TEMPERATURE);
    }

    private Quantity value(Term term) {
        double least = term.believable().least();
        double most = term.believable().most();
        double lower = term.sign().isEmpty() ? Math.max(least, most / 100) : least;
        return figure(term.dimension(), lower, most);
    }

    /** A tenth of the value, in its own unit. */
    private Quantity width(Quantity value) {
        if (value.dimension() == Dimension.COUNT) {
            return quantity("1", Dimension.COUNT);
        }
        BigDecimal tenth = value.value().toDecimal().abs().movePointLeft(1).stripTrailingZeros();
        tenth = tenth.signum() == 0
                ? new BigDecimal("0.1")
                : tenth.setScale(Math.min(Math.max(tenth.scale(), 0), 7), RoundingMode.UP);
        return quantity(
                tenth.toPlainString() + " " + value.unit().symbol(),
                value.dimension().ofDifference());
    }

    /** As somebody may write it: in any fitting unit, with a few digits, now and then with a comma. */
    private Quantity figure(Dimension dimension, double least, double most) {
        if (dimension == Dimension.TEMPERATURE) { // its scales begin elsewhere
            BigDecimal kelvins = BigDecimal.valueOf(least + random.nextDouble() * (most - least))
                    .setScale(random.nextInt(3), RoundingMode.HALF_EVEN);
            return quantity(
                    random.nextBoolean()
                            ? kelvins.toPlainString() + " K"
                            : kelvins.subtract(new BigDecimal(273)).toPlainString() + " °C",
                    dimension);
        }
        List<String> units = dimension.fittingUnits().stream()
                .filter(u -> !u.startsWith("a bare") && !u.equals(":1"))
                .toList();
        String unit =
                dimension.takesBareNumbers() || units.isEmpty() ? "" : " " + units.get(random.nextInt(units.size()));
        double inUnit = 1
                / ((Parsed.Understood) QuantityParser.parse("1" + unit, dimension))
                        .stated()
                        .value()
                        .si();
        BigDecimal number = BigDecimal.valueOf((least + random.nextDouble() * (most - least)) * inUnit)
                .round(new MathContext(random.nextInt(2, 5)));
        if (dimension == Dimension.LENGTH && number.scale() > 5) {
            number = number.setScale(5, RoundingMode.UP); // no finer than a picometre in any unit
        }
        if (dimension == Dimension.COUNT) {
            number = BigDecimal.ONE;
        }
        boolean comma = random.nextInt(8) == 0 && number.scale() > 0 && number.scale() != 3;
        return quantity((comma ? number.toPlainString().replace('.', ',') : number.toPlainString()) + unit, dimension);
    }

    private static Quantity quantity(String text, Dimension dimension) {
        Parsed parsed = QuantityParser.parse(text.strip(), dimension);
        if (parsed instanceof Parsed.Refused refused) {
            throw new IllegalStateException(refused.message());
        }
        return ((Parsed.Understood) parsed).stated().value();
    }

    private Map<Choice, String> choices() {
        Map<Choice, String> choices = new LinkedHashMap<>();
        for (Choice choice : Choice.values()) {
            if (random.nextBoolean()) {
                choices.put(
                        choice,
                        choice.isTaper()
                                ? "1:" + random.nextInt(1, 1000)
                                : choice.options().isEmpty()
                                        ? words()
                                        : choice.options()
                                                .get(random.nextInt(
                                                        choice.options().size()))
                                                .key());
            }
        }
        return choices;
    }

    private Map<String, String> rules() {
        Map<String, String> rules = new LinkedHashMap<>();
        for (Rule rule : Rule.values()) {
            if (random.nextInt(6) == 0) {
                rules.put(
                        rule.key(),
                        one(rule.alternatives().toArray(Alternative[]::new)).key());
            }
        }
        return rules;
    }

    private OwnRule rule() {
        Term term = one(Term.read().toArray(Term[]::new));
        Quantity one = value(term);
        Quantity other = value(term);
        boolean swap = one.compareTo(other) > 0;
        int which = random.nextInt(3);
        return new OwnRule(
                words(),
                term,
                which == 0 ? null : swap ? other : one,
                which == 1 ? null : swap ? one : other,
                random.nextBoolean() ? null : width(one),
                temperature(),
                wordsOrNone(),
                wordsOrNone());
    }

    private Map<Term, Quantity> aims() {
        Map<Term, Quantity> aims = new LinkedHashMap<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            Term term = one(Term.read().toArray(Term[]::new));
            aims.put(term, value(term));
        }
        return aims;
    }

    /** Flows or coefficients, with or without what they need to count. */
    private FlowTable flows() {
        boolean isFlow = random.nextBoolean();
        List<FlowTable.Row> rows = new ArrayList<>();
        for (int i = 0, lift = 0; i < random.nextInt(1, 8); i++) {
            lift += random.nextInt(1, 3000);
            rows.add(new FlowTable.Row(
                    quantity(BigDecimal.valueOf(lift, 3).toPlainString() + " mm", Dimension.LENGTH),
                    isFlow
                            ? quantity(random.nextInt(0, 90) + " l/s", Dimension.VOLUME_FLOW)
                            : quantity("0." + random.nextInt(1, 99), Dimension.RATIO)));
        }
        return new FlowTable(
                one("intake", "exhaust"),
                maybe(() -> one(FlowTable.Direction.values())),
                isFlow ? Optional.empty() : maybe(() -> one(FlowTable.Area.values())),
                maybe(() -> quantity(random.nextInt(1, 60) + " inH2O", Dimension.PRESSURE)),
                maybe(() -> one(FlowTable.Joined.values())),
                maybe(() -> quantity(random.nextInt(0, 40) + " °C", Dimension.TEMPERATURE)),
                maybe(() -> quantity(random.nextInt(60, 105) + " kPa", Dimension.PRESSURE)),
                maybe(() -> quantity(random.nextInt(1, 20) + " %", Dimension.RATIO)),
                wordsOrNone(),
                rows);
    }

    private <T> Optional<T> maybe(Supplier<T> made) {
        return random.nextBoolean() ? Optional.of(made.get()) : Optional.empty();
    }

    private LiftTable lifts() {
        List<LiftTable.Row> rows = new ArrayList<>();
        for (int i = 0, angle = -90; i < random.nextInt(1, 8); i++) {
            angle += random.nextInt(1, 20);
            rows.add(new LiftTable.Row(quantity(angle + "°", Dimension.ANGLE), figure(Dimension.LENGTH, 1e-4, 1e-2)));
        }
        return new LiftTable(one("intake", "exhaust"), one("lobe", "valve"), rows);
    }

    private List<TracedOutline> outlines() {
        List<TracedOutline> all = new ArrayList<>();
        for (OutlinedPart part : OutlinedPart.values()) {
            if (random.nextInt(4) == 0) {
                boolean isPath = random.nextBoolean();
                boolean isPlaced = part.along().isTold() && random.nextBoolean();
                int size = random.nextInt(5, 60);
                all.add(new TracedOutline(
                        part,
                        quantity("1 mm", Dimension.LENGTH),
                        isPath ? TracedOutline.Form.SVG_PATH : TracedOutline.Form.POINTS,
                        isPath
                                ? List.of("M -" + size + " -9", "H " + size + " V 11.5", "H -" + size + " Z")
                                : List.of("-" + size + ", -3", size + ", -4", size + ".5, " + size),
                        random.nextBoolean() ? null : quantity("0.5 mm", Dimension.LENGTH),
                        random.nextBoolean() ? null : quantity("-0.25 mm", Dimension.LENGTH),
                        random.nextBoolean(),
                        isPlaced ? quantity(random.nextInt(0, 9) + " mm", Dimension.LENGTH) : null,
                        isPlaced ? quantity(random.nextInt(10, 40) + " mm", Dimension.LENGTH) : null,
                        random.nextBoolean() ? null : figure(Dimension.LENGTH, 1e-5, 1e-3),
                        wordsOrNone()));
            }
        }
        return all;
    }

    private Map<ReadingKind, Build.Bench> bench() {
        Map<ReadingKind, Build.Bench> bench = new EnumMap<>(ReadingKind.class);
        for (ReadingKind kind : ReadingKind.values()) {
            if (random.nextInt(8) == 0) {
                double repeatability = random.nextBoolean()
                        ? Double.NaN
                        : figure(kind.dimension().ofDifference(), 1e-6, 1e-3).si();
                bench.put(
                        kind,
                        new Build.Bench(repeatability, random.nextBoolean() ? Double.NaN : random.nextDouble(0.1, 60)));
            }
        }
        return bench;
    }

    private FitWish fit() {
        boolean budget = random.nextBoolean();
        return new FitWish(
                List.copyOf(new LinkedHashSet<>(many(() -> one(PartKind.values())))),
                List.copyOf(new LinkedHashSet<>(many(this::words))),
                budget ? OptionalLong.of(random.nextInt(100_000)) : OptionalLong.empty(),
                budget ? one("", "EUR", "NOK", "CHF") : "",
                random.nextBoolean(),
                List.copyOf(new LinkedHashSet<>(many(() -> one(FitWish.Preference.values())))),
                random.nextBoolean() ? null : figure(Dimension.PRESSURE, 60_000, 105_000));
    }

    private Decided decided() {
        if (random.nextBoolean()) {
            return new Decided.Bought(one(PartKind.values()), words(), wordsOrNone(), offer());
        }
        Operation.Kind kind = one(Operation.Kind.values());
        return new Decided.Work(
                kind,
                words(),
                wordsOrNone(),
                offer(),
                figure(Dimension.LENGTH, 1e-5, 1e-2),
                random.nextBoolean() ? null : value(kind.changes()),
                random.nextBoolean() ? null : value(kind.changes()),
                random.nextBoolean() ? null : figure(Dimension.LENGTH, 1e-5, 1e-3),
                wordsOrNone());
    }

    private Offer offer() {
        OptionalLong price = random.nextBoolean() ? OptionalLong.empty() : OptionalLong.of(random.nextInt(100_000));
        OptionalLong shipping = random.nextBoolean() ? OptionalLong.empty() : OptionalLong.of(random.nextInt(1000));
        return new Offer(
                price,
                shipping,
                price.isPresent() || shipping.isPresent() ? one("", "EUR", "NOK", "crowns") : "",
                wordsOrNone(),
                random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(random.nextInt(100)));
    }

    private String words() {
        return one(WORDS);
    }

    private String wordsOrNone() {
        return random.nextBoolean() ? "" : words();
    }

    @SafeVarargs
    private <T> T one(T... all) {
        return all[random.nextInt(all.length)];
    }

    private <T> List<T> many(Supplier<T> one) {
        List<T> many = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            many.add(one.get());
        }
        return many;
    }

    /** Texts of all quantities, which equality of quantities does not look at. */
    static String written(Build build) {
        return Arrays.toString(build.given().values().toArray()) + build.taken();
    }

    /** Of a part found sound, nothing is said that speaks of something found: no build file may. */
    private static Damage damage(Part part, Damage.Kind kind, String where) {
        boolean isRefused = kind == Damage.Kind.NONE && Damage.foundIn(where).isPresent();
        return new Damage(part, kind, isRefused ? "" : where);
    }
}
