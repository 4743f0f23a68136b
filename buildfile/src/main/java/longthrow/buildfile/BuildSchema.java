package longthrow.buildfile;

import static longthrow.buildfile.Json.object;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.buildfile.Layout.Form;
import longthrow.core.build.Damage;
import longthrow.core.build.FitWish;
import longthrow.core.build.HoursAt;
import longthrow.core.build.MockedUp;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.TaperRate;
import longthrow.core.term.Term;

/**
 * JSON Schema (draft 2020-12) of the build file, generated from the registry of terms, for editors that complete keys and mark slips.
 * It says what {@link BuildFile#read} says of keys and shapes, not all it says of figures: units, instruments named and
 * sizes are judged when the file is read.
 */
public final class BuildSchema {
    /** Starts as a number and ends with something that is not one: its unit. */
    private static final String FIGURE = "^[-+−–(]? ?[.,]?[0-9½¼¾⅓⅔⅛⅜⅝⅞].*[^0-9., ]";

    /** Starts as a number. */
    private static final String BARE_FIGURE = "^[-+−–(]? ?[.,]?[0-9½¼¾⅓⅔⅛⅜⅝⅞]";

    private static final Map<String, Object> TEXT = object("type", "string");

    private BuildSchema() {}

    public static String json() {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put(
                Layout.VERSION,
                object(
                        "description",
                        "format of the file, always its first line",
                        "enum",
                        List.of(Layout.FORMAT_VERSION, String.valueOf(Layout.FORMAT_VERSION))));
        properties.put(Part.WHOLE.key(), section(Part.WHOLE));
        properties.put(Layout.UNITS, words("which units are printed first", List.of("metric", "inch")));
        properties.put(Layout.NOTES, oneOrMany(TEXT));
        properties.put(Layout.INSTRUMENTS, object("type", "object", "additionalProperties", instrument()));
        for (Part part : Part.values()) {
            if (part != Part.WHOLE) {
                properties.put(part.key(), section(part));
            }
        }
        properties.put(Layout.AIMS, aims());
        properties.put(Layout.RULES, rules());
        properties.put(Layout.SEEN, object("type", "array", "items", damage()));
        properties.put(Layout.LIFT_TABLES, object("type", "array", "items", liftTable()));
        properties.put(Layout.FLOW_TABLES, object("type", "array", "items", flowTable()));
        properties.put(Layout.OUTLINES, object("type", "array", "items", outline()));
        properties.put(Layout.MOCKED_UP, object("type", "array", "items", mockedUp()));
        properties.put(Layout.GAS_TRACES, object("type", "array", "items", gasTrace()));
        properties.put(Layout.HOURS_AT, object("type", "array", "maxItems", HoursAt.MOST_STEPS, "items", hoursAt()));
        properties.put(Layout.BENCH, bench());
        properties.put(Layout.FIT, fit());
        properties.put(Layout.TAKEN, taken());
        Map<String, Object> schema = object(
                "$schema",
                "https://json-schema.org/draft/2020-12/schema",
                "title",
                "Longthrow build file",
                "description",
                "Generated from the registry of terms. Every value is text with its unit; see docs/glossary.md.");
        schema.putAll(closed(properties, List.of(Layout.VERSION, Part.WHOLE.key())));
        schema.put("$defs", definitions());
        return Json.write(schema);
    }

    private static Map<String, Object> definitions() {
        Map<String, Object> definitions = new LinkedHashMap<>();
        definitions.put("figure", object("type", "string", "pattern", FIGURE));
        definitions.put("bareFigure", object("type", List.of("string", "number"), "pattern", BARE_FIGURE));
        definitions.put("value", value("figure"));
        definitions.put("bareValue", value("bareFigure"));
        return definitions;
    }

    private static Map<String, Object> value(String figure) {
        Map<String, Object> quantity = reference(figure);
        List<Object> forms = new ArrayList<>();
        forms.add(object("const", Layout.UNKNOWN));
        forms.add(quantity);
        for (Form form : Form.values()) {
            forms.add(form(form, quantity));
        }
        List<Object> all = new ArrayList<>(forms);
        all.add(object("type", "array", "minItems", 1, "items", object("anyOf", forms)));
        return object("anyOf", all);
    }

    private static Map<String, Object> form(Form form, Map<String, Object> quantity) {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (String key : form.keys()) {
            properties.put(
                    key,
                    switch (key) {
                        case "readings" -> oneOrMany(quantity);
                        case "value", "specified", "catalogue", "assumed", "tolerance" -> quantity;
                        case "part_at", "instrument_at" -> reference("figure");
                        default -> TEXT;
                    });
        }
        return closed(properties, form == Form.ASSUMED ? List.of(form.key(), "because") : List.of(form.key()));
    }

    private static Map<String, Object> section(Part part) {
        Map<String, Object> properties = new LinkedHashMap<>();
        if (part == Part.WHOLE) {
            properties.put(Layout.NAME, described("what the engine is called", TEXT));
            properties.put(Layout.INVENTED, yesOrNo("whether the engine is made up"));
        }
        for (Choice choice : Choice.values()) {
            if (choice.part() == part) {
                properties.put(choice.key(), choice(choice));
            }
        }
        for (Term term : Layout.terms(part)) {
            String reference = term.dimension().takesBareNumbers() ? "bareValue" : "value";
            properties.put(term.key(), described(description(term), reference(reference)));
        }
        if (part == Part.ROD) {
            properties.put(
                    Layout.SHIMS, described("shims on each side of the big-end cap", oneOrMany(reference("figure"))));
        }
        Map<String, Object> section = closed(properties, part == Part.WHOLE ? List.of(Layout.NAME) : List.of());
        return described(part.label() + ": " + part.meaning(), section);
    }

    private static String description(Term term) {
        return term.label() + ": " + term.meaning() + (term.sign().isEmpty() ? "" : " (" + term.sign() + ")") + "; in "
                + String.join(", ", term.dimension().fittingUnits());
    }

    private static Map<String, Object> choice(Choice choice) {
        if (choice.isTaper()) {
            return described(
                    choice.meaning(),
                    object("type", "string", "pattern", "^" + Layout.UNKNOWN + "$|" + TaperRate.PATTERN));
        }
        if (choice.options().isEmpty()) {
            return described(choice.meaning(), TEXT);
        }
        List<String> words = new ArrayList<>(
                choice.options().stream().map(Choice.Option::key).toList());
        words.add(Layout.UNKNOWN);
        return words(choice.meaning(), words);
    }

    private static Map<String, Object> instrument() {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put(
                "kind",
                words(
                        "the built-in kind it is one of",
                        Arrays.stream(InstrumentKind.values())
                                .map(InstrumentKind::key)
                                .toList()));
        properties.put("resolution", described("step of the scale", reference("bareFigure")));
        properties.put("error", described("half-width, 95 %, shared by all its readings", reference("bareFigure")));
        properties.put("error_share", described("the same as a share of the reading", reference("bareFigure")));
        properties.put("steel", yesOrNo("whether its scale expands as steel does"));
        properties.put("set_with", described("built-in or own instrument, further up, with which it was set", TEXT));
        properties.put("calibration", described("when and against what it was checked", TEXT));
        return closed(properties, List.of("kind"));
    }

    private static Map<String, Object> aims() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (Term term : Term.values()) {
            properties.put(term.path(), described(term.label(), aim(term)));
        }
        for (Part part : Part.values()) {
            Map<String, Object> terms = new LinkedHashMap<>();
            Arrays.stream(Term.values())
                    .filter(t -> t.part() == part)
                    .forEach(t -> terms.put(t.key(), described(t.label(), aim(t))));
            properties.put(part.key(), closed(terms, List.of()));
        }
        return closed(properties, List.of());
    }

    private static Map<String, Object> aim(Term term) {
        return reference(term.dimension().takesBareNumbers() ? "bareFigure" : "figure");
    }

    private static Map<String, Object> rules() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (String key : Layout.OWN_RULE_KEYS) {
            properties.put(
                    key,
                    switch (key) {
                        case "term" ->
                            words(
                                    "the figure it limits",
                                    Arrays.stream(Term.values()).map(Term::path).toList());
                        case "least", "most", "guard" -> reference("bareFigure");
                        case "temperature" -> reference("figure");
                        default -> TEXT;
                    });
        }
        Map<String, Object> rule = closed(properties, List.of(Layout.NAME, "term"));
        rule.put("anyOf", List.of(object("required", List.of("least")), object("required", List.of("most"))));
        return closed(
                object(
                        "choose",
                        described(
                                "alternative chosen, by rule on which the trade disagrees",
                                closed(choosable(), List.of())),
                        "keep",
                        described("limits of your own or of your class", object("type", "array", "items", rule))),
                List.of());
    }

    private static Map<String, Object> choosable() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (Rule rule : Rule.values()) {
            properties.put(rule.key(), words(rule.label(), Layout.choosable(rule)));
        }
        return properties;
    }

    private static Map<String, Object> damage() {
        return closed(
                object(
                        "part",
                        words(
                                "where",
                                Arrays.stream(Part.values()).map(Part::key).toList()),
                        "damage",
                        words(
                                "what it looks like",
                                Arrays.stream(Damage.Kind.values())
                                        .map(Damage.Kind::key)
                                        .toList()),
                        "where",
                        TEXT),
                List.of("part", "damage"));
    }

    private static Map<String, Object> liftTable() {
        return closed(
                object(
                        "valve",
                        words("which valve", Layout.LIFT_VALVES),
                        "at",
                        words("where the dial stood", Layout.LIFT_AT),
                        "rows",
                        described(
                                "angle: lift, angles rising",
                                object(
                                        "type",
                                        "object",
                                        "propertyNames",
                                        object("pattern", FIGURE),
                                        "additionalProperties",
                                        reference("figure")))),
                Layout.LIFT_TABLE_KEYS);
    }

    private static Map<String, Object> flowTable() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (String key : Layout.FLOW_TABLE_KEYS) {
            properties.put(
                    key,
                    switch (key) {
                        case "valve" -> words("which valve", Layout.LIFT_VALVES);
                        case "direction" -> words("which way the air went", Layout.FLOW_DIRECTIONS);
                        case "coefficient_of" -> words("area that the rows are coefficients of", Layout.FLOW_AREAS);
                        case "joined" -> words("how the port was joined to the room", Layout.FLOW_JOINED);
                        case "within" -> reference("bareFigure");
                        case "rows" ->
                            described(
                                    "lift: volume flow, or coefficient, lifts rising",
                                    object(
                                            "type",
                                            "object",
                                            "propertyNames",
                                            object("pattern", FIGURE),
                                            "additionalProperties",
                                            reference("bareFigure")));
                        case Layout.NOTE -> TEXT;
                        default -> reference("figure");
                    });
        }
        return closed(properties, Layout.FLOW_TABLE_NEEDED);
    }

    private static Map<String, Object> outline() {
        Map<String, Object> point = object(
                "anyOf",
                List.of(
                        TEXT,
                        object(
                                "type",
                                "array",
                                "items",
                                object("type", List.of("string", "number")),
                                "minItems",
                                2,
                                "maxItems",
                                2)));
        Map<String, Object> properties = object(
                "part",
                words("which part was traced", OutlinedPart.keys()),
                "unit",
                described("length of one unit of the drawing", reference("figure")),
                "points",
                described("x and y, y upwards, once around", oneOrMany(point)),
                "svg_path",
                described("a path as in SVG, y downwards", oneOrMany(TEXT)));
        for (String length : List.of("datum_x", "datum_y", "from", "to", "doubt")) {
            properties.put(length, reference("figure"));
        }
        properties.put(
                "mirrored",
                yesOrNo(
                        "whether it was traced from the end where the crankshaft turns anticlockwise; of rocker and retainer, with the rocker's pivot to the right"));
        properties.put(Layout.NOTE, TEXT);
        return closed(properties, List.of("part", "unit"));
    }

    private static Map<String, Object> mockedUp() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (String key : Layout.MOCKED_UP_KEYS) {
            properties.put(
                    key,
                    switch (key) {
                        case "pair" ->
                            words(
                                    "which two parts",
                                    Arrays.stream(MovingPair.values())
                                            .map(MovingPair::key)
                                            .toList());
                        case "way" -> words("how it was read", Layout.MOCK_UP_WAYS);
                        case "gap" -> described("read, or that they touch", oneOrMany(object("type", "string")));
                        case "both_ways" ->
                            object(
                                    "description",
                                    "whether the shafts were pushed both ways of their end play",
                                    "enum",
                                    List.of("yes", "no", Layout.UNKNOWN, true, false));
                        case "rows" ->
                            described(
                                    "crank angle after firing top dead centre: gap, angles rising",
                                    object(
                                            "type",
                                            "object",
                                            "minProperties",
                                            MockedUp.LEAST_ROWS,
                                            "maxProperties",
                                            MockedUpReader.MOST_ROWS,
                                            "propertyNames",
                                            object("pattern", FIGURE),
                                            "additionalProperties",
                                            reference("figure")));
                        case Layout.NOTE -> TEXT;
                        default -> reference("figure");
                    });
        }
        Map<String, Object> entry = closed(properties, List.of("pair", "way"));
        entry.put(
                "oneOf",
                List.of(
                        object("required", List.of("gap")),
                        object("required", List.of("at_least")),
                        object("required", List.of("rows"))));
        return entry;
    }

    private static Map<String, Object> gasTrace() {
        return closed(
                object(
                        "speed",
                        reference("figure"),
                        "pressure",
                        words("what the pressures are above", Layout.GAS_PRESSURES),
                        "air",
                        reference("figure"),
                        "cycles",
                        words("which turns it is of", Layout.GAS_CYCLES),
                        "within",
                        reference("bareFigure"),
                        Layout.NOTE,
                        TEXT,
                        "rows",
                        described(
                                "angle after firing top dead centre: pressure, angles rising",
                                object(
                                        "type",
                                        "object",
                                        "propertyNames",
                                        object("pattern", FIGURE),
                                        "additionalProperties",
                                        reference("figure")))),
                Layout.GAS_TRACE_NEEDED);
    }

    private static Map<String, Object> hoursAt() {
        return closed(
                object(
                        "speed",
                        described("of the crank, each once", reference("figure")),
                        "share",
                        described("of the running time; together 100 %", reference("bareFigure"))),
                Layout.HOURS_AT_KEYS);
    }

    private static Map<String, Object> bench() {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (ReadingKind kind : ReadingKind.values()) {
            String figure = kind.dimension() == Dimension.RATIO || kind.dimension() == Dimension.COUNT
                    ? "bareFigure"
                    : "figure";
            properties.put(
                    kind.key(),
                    described(
                            kind.how(),
                            closed(
                                    object("repeatability", reference(figure), "minutes", reference("bareFigure")),
                                    List.of())));
        }
        return closed(properties, List.of());
    }

    private static Map<String, Object> fit() {
        return closed(
                object(
                        "choose",
                        described(
                                "kinds of part that may be bought",
                                oneOrMany(object(
                                        "enum",
                                        Arrays.stream(PartKind.values())
                                                .map(PartKind::key)
                                                .toList()))),
                        "keep",
                        described("codes that must be among the parts", oneOrMany(TEXT)),
                        "budget",
                        described(
                                "the most to be spent, with its currency", object("type", List.of("string", "number"))),
                        "machining",
                        yesOrNo("whether machine operations of the catalogue may be used"),
                        "order",
                        described(
                                "what counts first among combinations that fit",
                                oneOrMany(object(
                                        "enum",
                                        Arrays.stream(FitWish.Preference.values())
                                                .map(FitWish.Preference::key)
                                                .toList()))),
                        "air_pressure",
                        described("of the place, absolute", reference("figure"))),
                List.of());
    }

    private static Map<String, Object> taken() {
        Map<String, Object> part = closed(
                taken(
                        Layout.TAKEN_PART_KEYS,
                        Arrays.stream(PartKind.values()).map(PartKind::key).toList()),
                List.of("part", "code"));
        Map<String, Object> work = closed(
                taken(
                        Layout.TAKEN_WORK_KEYS,
                        Arrays.stream(Operation.Kind.values())
                                .map(Operation.Kind::key)
                                .toList()),
                List.of("work", "code", "amount"));
        return described(
                "parts and work decided on: a plan, until the size is read",
                object("type", "array", "items", object("anyOf", List.of(part, work))));
    }

    private static Map<String, Object> taken(List<String> keys, List<String> kinds) {
        Map<String, Object> properties = new LinkedHashMap<>();
        for (String key : keys) {
            properties.put(
                    key,
                    switch (key) {
                        case "part", "work" -> words("its kind", kinds);
                        case "amount", "from", "to", "tolerance" -> reference("figure");
                        case "price", "shipping", "lead_days" -> object("type", List.of("string", "number"));
                        default -> TEXT;
                    });
        }
        return properties;
    }

    // ---- pieces of schema

    private static Map<String, Object> closed(Map<String, Object> properties, List<String> required) {
        Map<String, Object> schema = object("type", "object", "properties", properties, "additionalProperties", false);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        return schema;
    }

    private static Map<String, Object> reference(String definition) {
        return object("$ref", "#/$defs/" + definition);
    }

    private static Map<String, Object> oneOrMany(Map<String, Object> one) {
        return object("anyOf", List.of(one, object("type", "array", "items", one)));
    }

    private static Map<String, Object> words(String description, List<String> words) {
        return object("description", description, "enum", words);
    }

    /** An editor may take a bare yes for a truth value. */
    private static Map<String, Object> yesOrNo(String description) {
        return object("description", description, "enum", List.of("yes", "no", true, false));
    }

    private static Map<String, Object> described(String description, Map<String, Object> schema) {
        Map<String, Object> described = object("description", description);
        described.putAll(schema);
        return described;
    }
}
