package longthrow.buildfile;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import longthrow.core.build.FlowTable;
import longthrow.core.build.GasReading;
import longthrow.core.build.MockedUp;
import longthrow.core.build.TracedOutline;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * The names and the order of a build file, one home for reader, writer, edit, blank sheet and schema.
 * <pre>
 * longthrow: 1                         # format, always the first line
 * engine:                              # name, invented: yes or no, choices and terms of the whole engine
 * units: metric                        # or inch: which is printed first
 * notes: [...]
 * instruments: {name: {kind, resolution, error, error_share, steel, set_with, calibration}}
 * SECTION: {key: VALUE}                # one per Part, keys of Choice and Term; connecting_rod also shims_each_side
 * aims: {section.key: quantity}
 * rules: {choose: {rule: alternative}, keep: [{name, term, least, most, guard, temperature, procedure, reference}]}
 * seen: [{part, damage, where}]
 * lift_tables: [{valve, at, rows: {angle: lift}}]
 * flow_tables: [{valve, direction, coefficient_of, depression, joined, temperature, air, within, note, rows: {lift: flow}}]
 * outlines: [{part, unit, points: [x, y] or svg_path, datum_x, datum_y, mirrored, from, to, doubt, note}]
 * mocked_up: [{pair, way, gap or at_least or rows: {angle: gap}, both_ways, with_stroke, with_rod_length, with_intake_lift,
 *              with_compression_height, with_gasket, note}]
 * gas_traces: [{speed, pressure, air, cycles, within, note, rows: {angle: pressure}}]
 * hours_at: [{speed, share}]
 * bench: {reading kind: {repeatability, minutes}}
 * fit: {choose: [kind], keep: [code], budget, machining, order: [preference], air_pressure}
 * taken: [{part: kind, code, name, vendor, price, shipping, lead_days},
 *         {work: kind, code, name, vendor, price, shipping, lead_days, amount, from, to, tolerance, note}]
 * </pre>
 * A VALUE is a quantity; a quantity with its ±; {@code unknown}; one of the forms in {@link Form}; or a list of these.
 */
final class Layout {
    static final int FORMAT_VERSION = 1;

    static final String VERSION = "longthrow";
    static final String UNITS = "units";
    static final String NOTES = "notes";
    static final String INSTRUMENTS = "instruments";
    static final String AIMS = "aims";
    static final String RULES = "rules";
    static final String SEEN = "seen";
    static final String LIFT_TABLES = "lift_tables";
    static final String FLOW_TABLES = "flow_tables";
    static final String OUTLINES = "outlines";
    static final String MOCKED_UP = "mocked_up";
    static final String GAS_TRACES = "gas_traces";
    static final String HOURS_AT = "hours_at";
    static final String BENCH = "bench";
    static final String FIT = "fit";
    static final String TAKEN = "taken";

    static final String NAME = "name";
    static final String INVENTED = "invented";
    static final String SHIMS = "shims_each_side";
    static final String UNKNOWN = "unknown";
    static final String NOTE = "note";

    static final List<String> TOP_LEVEL = Stream.of(
                    Stream.of(VERSION, Part.WHOLE.key(), UNITS, NOTES, INSTRUMENTS),
                    Arrays.stream(Part.values()).filter(p -> p != Part.WHOLE).map(Part::key),
                    Stream.of(
                            AIMS,
                            RULES,
                            SEEN,
                            LIFT_TABLES,
                            FLOW_TABLES,
                            OUTLINES,
                            MOCKED_UP,
                            GAS_TRACES,
                            HOURS_AT,
                            BENCH,
                            FIT,
                            TAKEN))
            .flatMap(s -> s)
            .toList();

    static final List<String> INSTRUMENT_KEYS =
            List.of("kind", "resolution", "error", "error_share", "steel", "set_with", "calibration");
    static final List<String> RULES_KEYS = List.of("choose", "keep");
    static final List<String> OWN_RULE_KEYS =
            List.of(NAME, "term", "least", "most", "guard", "temperature", "procedure", "reference");
    static final List<String> DAMAGE_KEYS = List.of("part", "damage", "where");
    static final List<String> LIFT_TABLE_KEYS = List.of("valve", "at", "rows");
    /** As in {@link longthrow.core.build.FlowTable}. */
    static final List<String> FLOW_TABLE_KEYS = List.of(
            "valve",
            "direction",
            "coefficient_of",
            "depression",
            "joined",
            "temperature",
            "air",
            "within",
            NOTE,
            "rows");

    /** What no table of any sort can do without; what else a table of its sort needs is asked for where it counts. */
    static final List<String> FLOW_TABLE_NEEDED = List.of("valve", "rows");

    static final String FLOW_TABLES_EXAMPLE =
            "flow_tables: [{valve: intake, direction: into_cylinder, depression: 28 inH2O, joined: radiused, temperature: 21 °C,"
                    + " air: 99.8 kPa, within: 3 %, rows: {2 mm: 9.6 l/s, 4 mm: 17.9 l/s, 6 mm: 23.1 l/s}}]";

    /** As in {@link longthrow.core.build.TracedOutline}. */
    static final List<String> OUTLINE_KEYS = List.of(
            "part",
            "unit",
            TracedOutline.Form.POINTS.key(),
            TracedOutline.Form.SVG_PATH.key(),
            "datum_x",
            "datum_y",
            "mirrored",
            "from",
            "to",
            "doubt",
            NOTE);

    static final String OUTLINE_EXAMPLE =
            "outlines: [{part: dipper, unit: 1 mm, points: [[-3, -10], [3, -10], [1, -40], [-1, -40]], doubt: 0.3 mm}]";

    /** As in {@link longthrow.core.build.MockedUp}. */
    static final List<String> MOCKED_UP_KEYS = Stream.of(
                    Stream.of("pair", "way", "gap", "at_least", "rows", "both_ways"),
                    MockedUp.SIZES.stream().map(MockedUpReader::key),
                    Stream.of(NOTE))
            .flatMap(s -> s)
            .toList();

    static final List<String> MOCK_UP_WAYS =
            Arrays.stream(MockedUp.Way.values()).map(MockedUp.Way::key).toList();

    static final String MOCKED_UP_EXAMPLE =
            "mocked_up: [{pair: rod_bolts_to_cam_core, way: clay, gap: [1.9 mm, 2.0 mm], both_ways: yes, with_stroke: 56.5 mm},"
                    + " {pair: intake_valve_to_piston, way: soft_spring, rows: {365°: 3.4 mm, 370°: 3.1 mm, 375°: 3.3 mm}}]";

    static final List<String> GAS_TRACE_KEYS = List.of("speed", "pressure", "air", "cycles", "within", NOTE, "rows");
    static final List<String> GAS_TRACE_NEEDED = List.of("speed", "pressure", "cycles", "within", "rows");
    /** As in {@link longthrow.core.build.HoursAt}. */
    static final List<String> HOURS_AT_KEYS = List.of("speed", "share");

    static final String HOURS_AT_EXAMPLE = "hours_at: [{speed: 3000 rpm, share: 70 %}, {speed: 5200 rpm, share: 30 %}]";

    static final List<String> BENCH_KEYS = List.of("repeatability", "minutes");

    /** As in {@link longthrow.core.build.FitWish}. */
    static final List<String> FIT_KEYS = List.of("choose", "keep", "budget", "machining", "order", "air_pressure");

    static final String FIT_EXAMPLE =
            "fit: {choose: [connecting_rod], budget: 330 EUR, machining: yes, order: [certainty, price]}";

    /** Keys of what is taken, as in {@link longthrow.core.build.Decided}: of any of it, of a part, of work. */
    static final List<String> OFFER_KEYS = List.of("code", NAME, "vendor", "price", "shipping", "lead_days");

    static final List<String> TAKEN_PART_KEYS =
            Stream.concat(Stream.of("part"), OFFER_KEYS.stream()).toList();
    static final List<String> TAKEN_WORK_KEYS = Stream.of(
                    Stream.of("work"), OFFER_KEYS.stream(), Stream.of("amount", "from", "to", "tolerance", NOTE))
            .flatMap(s -> s)
            .toList();

    static final String TAKEN_EXAMPLE =
            "taken: [{part: connecting_rod, code: R3, vendor: the maker, price: 95 EUR}, {work: small_end_hone, code: HONE,"
                    + " price: 14 EUR, amount: 0.010 mm, from: 17.01 mm, to: 17.02 mm, tolerance: 0.002 mm}]";

    static final List<String> GAS_PRESSURES = Arrays.stream(GasReading.Reference.values())
            .map(GasReading.Reference::key)
            .toList();
    static final List<String> GAS_CYCLES = Arrays.stream(GasReading.Cycles.values())
            .map(GasReading.Cycles::key)
            .toList();

    static final List<String> FLOW_DIRECTIONS = Arrays.stream(FlowTable.Direction.values())
            .map(FlowTable.Direction::key)
            .toList();
    static final List<String> FLOW_AREAS =
            Arrays.stream(FlowTable.Area.values()).map(FlowTable.Area::key).toList();
    static final List<String> FLOW_JOINED =
            Arrays.stream(FlowTable.Joined.values()).map(FlowTable.Joined::key).toList();

    static final List<String> LIFT_VALVES = List.of("intake", "exhaust");
    static final List<String> LIFT_AT = List.of("lobe", "valve");

    /** Rules on which the trade disagrees; the owner picks one of the alternatives. */
    static final List<String> RULE_KEYS =
            Arrays.stream(Rule.values()).map(Rule::key).toList();

    /** The forms a value may have when it is written as keys; the first key says which. */
    enum Form {
        /** Read on the bench. */
        READINGS("with", "part_at", "instrument_at", "who", "when", "photo", NOTE),
        /** Typed with its ±, and a note. */
        VALUE(NOTE),
        /** From the maker's sheet. */
        SPECIFIED("tolerance", "by", NOTE),
        /** From a catalogue. */
        CATALOGUE("tolerance", "by", NOTE),
        /** Assumed, with the reason. */
        ASSUMED("because", NOTE),
        /** Not known, with a note. */
        UNKNOWN();

        @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
        private final List<String> others;

        Form(String... others) {
            this.others = List.of(others);
        }

        String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        List<String> keys() {
            return Stream.concat(Stream.of(key()), others.stream()).toList();
        }

        static List<String> mainKeys() {
            return Arrays.stream(values()).map(Form::key).toList();
        }
    }

    private Layout() {}

    /** Keys of a part's section, in order. */
    static List<String> keys(Part part) {
        Stream<String> head = part == Part.WHOLE ? Stream.of(NAME, INVENTED) : Stream.of();
        Stream<String> shims = part == Part.ROD ? Stream.of(SHIMS) : Stream.of();
        return Stream.of(
                        head,
                        Arrays.stream(Choice.values())
                                .filter(c -> c.part() == part)
                                .map(Choice::key),
                        terms(part).stream().map(Term::key),
                        shims)
                .flatMap(s -> s)
                .toList();
    }

    /** Terms of a part that may be entered, in order of stripping. */
    static List<Term> terms(Part part) {
        return Term.read().stream().filter(t -> t.part() == part).toList();
    }

    static String word(UnitSystem units) {
        return units == UnitSystem.METRIC_FIRST ? "metric" : "inch";
    }

    static List<String> alternatives(Rule rule) {
        return rule.alternatives().stream().map(Alternative::key).toList();
    }

    /** What may stand behind a rule: an alternative, or that none is chosen. */
    static List<String> choosable(Rule rule) {
        return Stream.concat(alternatives(rule).stream(), Stream.of(UNKNOWN)).toList();
    }

    /** Order of the keys at a path, for adding one at its place; empty where any order will do. */
    static List<String> order(String path) {
        if (path.isEmpty()) {
            return TOP_LEVEL;
        }
        return switch (path) {
            case RULES -> RULES_KEYS;
            case FIT -> FIT_KEYS;
            case INSTRUMENTS, AIMS, BENCH -> List.of();
            default -> orderWithin(path);
        };
    }

    private static List<String> orderWithin(String path) {
        if (path.startsWith(INSTRUMENTS + ".")) {
            return INSTRUMENT_KEYS;
        }
        if (path.startsWith(BENCH + ".")) {
            return BENCH_KEYS;
        }
        return Arrays.stream(Part.values())
                .filter(p -> p.key().equals(path))
                .findFirst()
                .map(Layout::keys)
                .orElse(List.of());
    }
}
