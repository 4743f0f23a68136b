package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.TaperRate;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** A file's tree to a build; goes on after a fault, so that all of them are found at once. */
final class BuildReader {
    /** Names of instruments and rules: what can stand as a key without quotation marks. */
    private static final String NAME_OF_KEY = "[a-z][a-z0-9_]*";

    private final Fields top;
    private final Faults faults;
    private final Map<String, Instrument> own = new LinkedHashMap<>();
    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<Choice, String> choices = new LinkedHashMap<>();

    private BuildReader(Fields top, Faults faults) {
        this.top = top;
        this.faults = faults;
    }

    /** The build as far as it could be read; it counts only when no fault was added. */
    static Optional<Build> read(Mapping root, Faults faults) {
        if (!VersionLine.isReadable(root, Layout.VERSION, Layout.FORMAT_VERSION, faults)) {
            return Optional.empty();
        }
        return Fields.of(root, "", Layout.TOP_LEVEL, BuildReader::sectionOf, faults)
                .flatMap(top -> new BuildReader(top, faults).read());
    }

    private Optional<Build> read() {
        readInstruments();
        for (Part part : Part.values()) {
            readSection(part);
        }
        Optional<Fields> engine = top.node(Part.WHOLE.key())
                .filter(Mapping.class::isInstance) // else it was refused as a section
                .flatMap(n -> Fields.ofAnyKeys(n, Part.WHOLE.key(), faults));
        if (!top.has(Part.WHOLE.key())) {
            faults.add(
                    top.place(),
                    "",
                    "",
                    "the section 'engine:' is missing",
                    "",
                    "add the line 'engine: {name: any name}'");
        }
        Optional<String> name = engine.flatMap(e -> e.required(Layout.NAME, "any name"));
        boolean invented = engine.flatMap(e -> e.yesOrNo(Layout.INVENTED)).orElse(false);
        UnitSystem units = top.word(Layout.UNITS, List.of("metric", "inch"))
                .map(word -> word.equals("inch") ? UnitSystem.INCH_FIRST : UnitSystem.METRIC_FIRST)
                .orElse(UnitSystem.METRIC_FIRST);
        Build build = new Build(
                name.orElse(""),
                invented,
                units,
                notes(),
                own,
                given,
                choices,
                rulesChosen(),
                ownRules(),
                aims(),
                damage(),
                shims(),
                liftTables(),
                OutlineReader.read(top, faults),
                bench(),
                FitReader.read(top, faults),
                DecidedReader.read(top, faults),
                MockedUpReader.read(top, faults),
                gasTraces(),
                HoursAtReader.read(top, faults),
                FlowTableReader.read(top, faults));
        return faults.isEmpty() ? Optional.of(build) : Optional.empty();
    }

    // ---- sections of parts

    /** For a key on the top level that belongs into a section. */
    private static String sectionOf(String key) {
        String sections = Arrays.stream(Part.values())
                .filter(part -> Layout.keys(part).contains(key))
                .map(part -> "'" + part.key() + ":'")
                .collect(Collectors.joining(" or "));
        return sections.isEmpty() ? "" : "put it under " + sections + " with two spaces in front";
    }

    private void readSection(Part part) {
        String section = part.key();
        Optional<Fields> fields = top.node(section)
                .flatMap(n -> Fields.of(n, section, Layout.keys(part), key -> elsewhere(part, key), faults));
        if (fields.isEmpty()) {
            return;
        }
        GivenReader reader = new GivenReader(knownInstruments(), faults);
        for (Entry entry : fields.get().entries()) {
            String path = TreeReader.within(section, entry.key().text());
            Choice.at(path).ifPresent(choice -> readChoice(choice, entry.value()));
            Term.at(path).filter(Term::isRead).ifPresent(term -> {
                List<Given> read = reader.read(term, entry.value(), path);
                if (!read.isEmpty()) {
                    given.put(term, read);
                }
            });
        }
    }

    private void readChoice(Choice choice, Node node) {
        if (choice.options().isEmpty()) {
            Fields.text(node, choice.path(), faults)
                    .filter(t -> !t.equals(Layout.UNKNOWN))
                    .filter(t -> !choice.isTaper() || isRate(t, choice, node))
                    .ifPresent(t -> choices.put(choice, t));
            return;
        }
        List<String> allowed = new ArrayList<>(
                choice.options().stream().map(Choice.Option::key).toList());
        allowed.add(Layout.UNKNOWN);
        Fields.word(node, choice.path(), allowed, faults)
                .filter(w -> !w.equals(Layout.UNKNOWN))
                .ifPresent(w -> choices.put(choice, w));
    }

    private boolean isRate(String taper, Choice choice, Node node) {
        if (TaperRate.isRate(taper)) {
            return true;
        }
        faults.add(
                node.place(),
                choice.path(),
                taper,
                "is no rate of taper",
                TaperRate.ALLOWED + ", " + Layout.UNKNOWN,
                TaperRate.mend(taper));
        return false;
    }

    /** For a key that is not of this section: where it belongs, or that it is never entered. */
    private static String elsewhere(Part part, String key) {
        Optional<Term> here = Term.at(part.key() + "." + key);
        if (here.isPresent()) {
            return "it is worked out from the readings"
                    + TradeWords.readInstead(here.get().path())
                            .map(read -> " (" + read + ")")
                            .orElse("")
                    + "; to aim at a figure put it under 'aims:', to limit it under 'rules:'";
        }
        List<String> sections = Arrays.stream(Part.values())
                .filter(p -> Layout.keys(p).contains(key))
                .map(Part::key)
                .toList();
        boolean slipIsNearer = Nearest.to(key, Layout.keys(part)).isPresent() && sections.isEmpty();
        return sections.isEmpty() || slipIsNearer ? "" : "it belongs under " + String.join(" or ", sections);
    }

    // ---- notes, instruments, bench

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        top.node(Layout.NOTES).ifPresent(node -> {
            List<Node> items = Fields.items(node, Layout.NOTES, faults);
            for (int i = 0; i < items.size(); i++) {
                Fields.text(items.get(i), Layout.NOTES + "[" + (i + 1) + "]", faults)
                        .ifPresent(notes::add);
            }
        });
        return notes;
    }

    private void readInstruments() {
        for (Entry entry : entries(Layout.INSTRUMENTS)) {
            String key = entry.key().text();
            String path = TreeReader.within(Layout.INSTRUMENTS, key);
            if (!isName(entry, path)) {
                continue;
            }
            Fields.of(entry.value(), path, Layout.INSTRUMENT_KEYS, faults)
                    .flatMap(f -> instrument(key, f))
                    .ifPresent(i -> own.put(key, i));
        }
    }

    private boolean isName(Entry entry, String path) {
        if (entry.key().text().matches(NAME_OF_KEY)) {
            return true;
        }
        faults.add(
                entry.key().place(),
                path,
                entry.key().text(),
                "cannot be a name here",
                "lower-case letters, digits and _",
                "write it like bore_gauge or wheel_2");
        return false;
    }

    private Optional<Instrument> instrument(String key, Fields fields) {
        Optional<InstrumentKind> kind = fields.required("kind", "caliper")
                .flatMap(word -> fields.word(
                        "kind",
                        Arrays.stream(InstrumentKind.values())
                                .map(InstrumentKind::key)
                                .toList()))
                .flatMap(BuildReader::kindOfInstrument);
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        Dimension step = kind.get().dimension().ofDifference();
        Optional<Quantity> resolution = fields.width("resolution", step);
        Optional<Quantity> error = fields.quantity("error", step).filter(q -> isNotNegative(q, fields, "error"));
        Optional<Quantity> share =
                fields.quantity("error_share", Dimension.RATIO).filter(q -> isNotNegative(q, fields, "error_share"));
        boolean steel = fields.yesOrNo("steel").orElse(true);
        String calibration = fields.textOrEmpty("calibration");
        boolean own = fields.has("error") || fields.has("error_share");
        if (!fields.has("resolution")) {
            faults.note(fields.place(), fields.path(), "resolution not said: that of the built-in kind is taken");
        }
        if (!own) {
            faults.note(fields.place(), fields.path(), "error not said: that of the built-in kind is taken");
        }
        return Optional.of(new Instrument(
                key,
                kind.get(),
                resolution.map(Quantity::si).orElse(kind.get().resolution()),
                error.map(Quantity::si).orElse(own ? 0 : kind.get().statedError()),
                share.map(Quantity::si).orElse(own ? 0 : kind.get().relativeError()),
                steel,
                calibration,
                standard(fields, kind.get())));
    }

    private boolean isNotNegative(Quantity quantity, Fields fields, String key) {
        if (quantity.si() >= 0) {
            return true;
        }
        faults.add(
                fields.node(key).orElseThrow().place(),
                fields.at(key),
                quantity.written(),
                "is negative",
                "0 or more",
                "write half the width of the range the instrument keeps within");
        return false;
    }

    /** A standard is built in, or stands further up in the file, so that no instrument can be set with itself. */
    private @Nullable Instrument standard(Fields fields, InstrumentKind kind) {
        Optional<String> name = fields.text("set_with");
        if (name.isEmpty()) {
            return null;
        }
        Instrument standard = Optional.ofNullable(own.get(name.get()))
                .or(() -> kindOfInstrument(name.get()).map(Instrument::builtIn))
                .orElse(null);
        if (standard == null || standard.kind().dimension() != kind.dimension()) {
            List<String> fitting = knownInstruments().values().stream()
                    .filter(i -> i.kind().dimension() == kind.dimension())
                    .map(Instrument::key)
                    .toList();
            faults.add(
                    fields.node("set_with").orElseThrow().place(),
                    fields.at("set_with"),
                    name.get(),
                    standard == null
                            ? "is neither built in nor defined further up"
                            : "reads " + standard.kind().dimension().withArticle() + ", so a " + kind.label()
                                    + " cannot be set with it",
                    String.join(", ", fitting),
                    Nearest.to(name.get(), fitting)
                            .map(near -> "did you mean " + near + "?")
                            .orElse("define the standard above it"));
            return null;
        }
        return standard;
    }

    private Map<String, Instrument> knownInstruments() {
        Map<String, Instrument> known = new LinkedHashMap<>();
        Arrays.stream(InstrumentKind.values()).map(Instrument::builtIn).forEach(i -> known.put(i.key(), i));
        known.putAll(own);
        return known;
    }

    private static Optional<InstrumentKind> kindOfInstrument(String key) {
        return Arrays.stream(InstrumentKind.values())
                .filter(k -> k.key().equals(key))
                .findFirst();
    }

    private Map<ReadingKind, Build.Bench> bench() {
        Map<ReadingKind, Build.Bench> bench = new EnumMap<>(ReadingKind.class);
        List<String> known =
                Arrays.stream(ReadingKind.values()).map(ReadingKind::key).toList();
        top.node(Layout.BENCH)
                .ifPresent(node -> Fields.of(node, Layout.BENCH, known, faults)
                        .ifPresent(fields -> Arrays.stream(ReadingKind.values())
                                .filter(kind -> fields.has(kind.key()))
                                .forEach(kind -> Fields.of(
                                                fields.node(kind.key()).orElseThrow(),
                                                fields.at(kind.key()),
                                                Layout.BENCH_KEYS,
                                                faults)
                                        .ifPresent(f -> bench.put(kind, bench(kind, f))))));
        return bench;
    }

    private Build.Bench bench(ReadingKind kind, Fields fields) {
        double repeatability = fields.width("repeatability", kind.dimension().ofDifference())
                .map(Quantity::si)
                .orElse(Double.NaN);
        double minutes =
                fields.text("minutes").flatMap(text -> minutes(text, fields)).orElse(Double.NaN);
        return new Build.Bench(repeatability, minutes);
    }

    private Optional<Double> minutes(String text, Fields fields) {
        boolean bare = text.matches("[0-9.]+");
        Node node = fields.node("minutes").orElseThrow();
        Optional<Double> minutes = bare
                ? Fields.quantity(node, fields.at("minutes"), Dimension.RATIO, faults)
                        .map(Quantity::si)
                : Fields.quantity(node, fields.at("minutes"), Dimension.TIME, faults)
                        .map(q -> q.si() / 60);
        if (minutes.isPresent() && !(minutes.get() > 0 && minutes.get() <= 24 * 60)) {
            faults.add(
                    node.place(),
                    fields.at("minutes"),
                    text,
                    "is no time for one reading",
                    "above 0, at most a day",
                    "write the minutes one more reading takes");
        }
        return minutes;
    }

    // ---- aims and rules

    private Map<Term, Quantity> aims() {
        Map<Term, Quantity> aims = new LinkedHashMap<>();
        top.node(Layout.AIMS)
                .ifPresent(node -> TermMap.read(node, Layout.AIMS, faults, (term, value, path) -> {
                    if (!isUnknown(value)) {
                        Fields.quantity(value, path, term.dimension(), faults)
                                .filter(q -> canBe(term, q, value, path))
                                .ifPresent(q -> aims.put(term, q));
                    }
                }));
        return aims;
    }

    /** An aim that was let go: its line stays, so that it can be taken up again. */
    private static boolean isUnknown(Node value) {
        return value instanceof Node.Scalar scalar && scalar.text().strip().equals(Layout.UNKNOWN);
    }

    /** An aim that no engine at all can have is a slip of the pen. */
    private boolean canBe(Term term, Quantity aim, Node at, String path) {
        boolean neverNegative = term.sign().isEmpty() && term.dimension() != Dimension.ANGLE;
        boolean isStaticRatio = term == Term.COMPRESSION_RATIO || term == Term.COMPRESSION_RATIO_WITH_CREVICE;
        if (neverNegative && aim.si() < 0) {
            faults.add(at.place(), path, aim.written(), "is below nothing", "nothing or more", "check the sign");
            return false;
        }
        if (isStaticRatio && aim.si() <= 1) {
            faults.add(
                    at.place(),
                    path,
                    aim.written(),
                    "is no compression ratio: swept and clearance volume over clearance volume is more than 1",
                    "more than 1, such as 8.5",
                    "write the ratio the mixture is squeezed by");
            return false;
        }
        return true;
    }

    private Optional<Fields> rules() {
        return top.node(Layout.RULES).flatMap(n -> Fields.ofAnyKeys(n, Layout.RULES, faults));
    }

    private Map<String, String> rulesChosen() {
        top.node(Layout.RULES).ifPresent(n -> {
            if (n instanceof Mapping) {
                Fields.of(n, Layout.RULES, Layout.RULES_KEYS, faults);
            }
        });
        Map<String, String> chosen = new LinkedHashMap<>();
        String path = Layout.RULES + ".choose";
        rules().flatMap(f -> f.node("choose"))
                .flatMap(n -> Fields.of(n, path, Layout.RULE_KEYS, faults))
                .ifPresent(f -> f.entries()
                        .forEach(e -> Rule.at(e.key().text())
                                .flatMap(rule -> f.word(rule.key(), Layout.choosable(rule)))
                                .filter(word -> !word.equals(Layout.UNKNOWN))
                                .ifPresent(word -> chosen.put(e.key().text(), word))));
        return chosen;
    }

    private List<OwnRule> ownRules() {
        List<OwnRule> rules = new ArrayList<>();
        String path = Layout.RULES + ".keep";
        if (top.node(Layout.RULES).filter(Mapping.class::isInstance).isPresent()) {
            rules().flatMap(f -> f.node("keep"))
                    .ifPresent(n -> eachMapping(n, path, Layout.OWN_RULE_KEYS)
                            .forEach(f -> ownRule(f).ifPresent(rules::add)));
        }
        return rules;
    }

    private Optional<OwnRule> ownRule(Fields fields) {
        Optional<String> name = fields.required(Layout.NAME, "what to call it");
        Optional<Term> term = fields.required("term", "engine.clearance_volume")
                .flatMap(t -> TermMap.term(t, fields.node("term").orElseThrow(), fields.at("term"), faults));
        String procedure = fields.textOrEmpty("procedure");
        String reference = fields.textOrEmpty("reference");
        Optional<Quantity> temperature = Temperatures.ofAPart(fields, "temperature");
        if (!fields.has("least") && !fields.has("most")) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    "the rule has neither 'least' nor 'most'",
                    "",
                    "add one of them, or both");
            return Optional.empty();
        }
        if (term.isEmpty()) {
            return Optional.empty();
        }
        Dimension dimension = term.get().dimension();
        Optional<Quantity> least = fields.quantity("least", dimension);
        Optional<Quantity> most = fields.quantity("most", dimension);
        Optional<Quantity> guard =
                fields.quantity("guard", dimension.ofDifference()).filter(q -> isNotNegative(q, fields, "guard"));
        if (least.isPresent() && most.isPresent() && least.get().compareTo(most.get()) > 0) {
            faults.add(
                    fields.node("least").orElseThrow().place(),
                    fields.at("least"),
                    least.get().written(),
                    "is more than 'most', " + most.get().written(),
                    "",
                    "swap them, or check the figures");
        }
        return name.isEmpty() || (least.isEmpty() && most.isEmpty())
                ? Optional.empty()
                : Optional.of(new OwnRule(
                        name.get(),
                        term.get(),
                        least.orElse(null),
                        most.orElse(null),
                        guard.orElse(null),
                        temperature.orElse(null),
                        procedure,
                        reference));
    }

    // ---- damage, shims, lift tables

    private List<Damage> damage() {
        List<Damage> seen = new ArrayList<>();
        top.node(Layout.SEEN)
                .ifPresent(n -> eachMapping(n, Layout.SEEN, Layout.DAMAGE_KEYS).forEach(fields -> {
                    Optional<Part> part = fields.required("part", "flywheel")
                            .flatMap(t -> fields.word(
                                    "part",
                                    Arrays.stream(Part.values()).map(Part::key).toList()))
                            .flatMap(key -> Arrays.stream(Part.values())
                                    .filter(p -> p.key().equals(key))
                                    .findFirst());
                    Optional<Damage.Kind> kind = fields.required("damage", "crack")
                            .flatMap(t -> fields.word(
                                    "damage",
                                    Arrays.stream(Damage.Kind.values())
                                            .map(Damage.Kind::key)
                                            .toList()))
                            .flatMap(key -> Arrays.stream(Damage.Kind.values())
                                    .filter(k -> k.key().equals(key))
                                    .findFirst());
                    String where = fields.textOrEmpty("where");
                    kind.filter(Damage.Kind.NONE::equals)
                            .flatMap(none -> Damage.foundIn(where))
                            .ifPresent(
                                    word -> fields.refuse(
                                            "where",
                                            where,
                                            "speaks of something found or not looked at ('" + word
                                                    + "'), and 'damage: none' says that it is sound",
                                            "how it was looked over and where: " + Damage.How.accepted(),
                                            "write the damage itself, such as 'damage: crack'; or, if it is sound, how you looked without that word"));
                    if (part.isPresent() && kind.isPresent()) {
                        seen.add(new Damage(part.get(), kind.get(), where));
                    }
                }));
        return seen;
    }

    private List<ExactLength> shims() {
        List<ExactLength> shims = new ArrayList<>();
        String path = TreeReader.within(Part.ROD.key(), Layout.SHIMS);
        top.node(Part.ROD.key())
                .filter(Mapping.class::isInstance)
                .flatMap(n -> Fields.ofAnyKeys(n, Part.ROD.key(), faults))
                .flatMap(rod -> rod.node(Layout.SHIMS))
                .ifPresent(node -> {
                    List<Node> items = Fields.items(node, path, faults);
                    for (int i = 0; i < items.size(); i++) {
                        Node item = items.get(i);
                        String at = path + "[" + (i + 1) + "]";
                        Fields.quantity(item, at, Dimension.LENGTH, faults)
                                .filter(q -> Fields.isWidth(q, item.place(), at, faults))
                                .flatMap(Quantity::exactLength)
                                .ifPresent(shims::add);
                    }
                });
        return shims;
    }

    private List<LiftTable> liftTables() {
        List<LiftTable> tables = new ArrayList<>();
        top.node(Layout.LIFT_TABLES)
                .ifPresent(n -> eachMapping(n, Layout.LIFT_TABLES, Layout.LIFT_TABLE_KEYS)
                        .forEach(fields -> liftTable(fields).ifPresent(tables::add)));
        return tables;
    }

    private Optional<LiftTable> liftTable(Fields fields) {
        Optional<String> valve =
                fields.required("valve", "intake").flatMap(t -> fields.word("valve", Layout.LIFT_VALVES));
        Optional<String> at = fields.required("at", "valve").flatMap(t -> fields.word("at", Layout.LIFT_AT));
        List<LiftTable.Row> rows = new ArrayList<>();
        fields.eachRow("'20°: 7.71 mm' below 'rows:'", (entry, path) -> liftRow(entry, path, rows));
        return valve.isEmpty() || at.isEmpty()
                ? Optional.empty()
                : Optional.of(new LiftTable(valve.get(), at.get(), rows));
    }

    private List<GasReading> gasTraces() {
        List<GasReading> traces = new ArrayList<>();
        top.node(Layout.GAS_TRACES)
                .ifPresent(n -> eachMapping(n, Layout.GAS_TRACES, Layout.GAS_TRACE_KEYS)
                        .forEach(fields -> GasTraceReader.read(fields, faults).ifPresent(traces::add)));
        return traces;
    }

    private void liftRow(Entry entry, String path, List<LiftTable.Row> rows) {
        Optional<Quantity> angle = Fields.quantity(entry.key(), path, Dimension.ANGLE, faults);
        Optional<Quantity> lift = Fields.quantity(entry.value(), path, Dimension.LENGTH, faults);
        if (angle.isEmpty() || lift.isEmpty()) {
            return;
        }
        if (!rows.isEmpty() && angle.get().compareTo(rows.get(rows.size() - 1).angle()) <= 0) {
            faults.add(
                    entry.key().place(),
                    path,
                    angle.get().written(),
                    "does not come after " + rows.get(rows.size() - 1).angle().written(),
                    "angles that rise from line to line",
                    "sort the lines by angle, each angle once");
        }
        rows.add(new LiftTable.Row(angle.get(), lift.get()));
    }

    // ---- shapes

    private List<Entry> entries(String key) {
        return top.node(key)
                .flatMap(n -> Fields.ofAnyKeys(n, key, faults))
                .map(Fields::entries)
                .orElse(List.of());
    }

    /** The items of a list of mappings. */
    private List<Fields> eachMapping(Node node, String path, List<String> keys) {
        return eachMapping(node, path, keys, faults);
    }

    static List<Fields> eachMapping(Node node, String path, List<String> keys, Faults faults) {
        if (!(node instanceof Sequence list)) {
            Fields.wrongShape(node, path, "a list", faults);
            return List.of();
        }
        List<Fields> all = new ArrayList<>();
        List<Node> items = list.items();
        for (int i = 0; i < items.size(); i++) {
            Fields.of(items.get(i), path + "[" + (i + 1) + "]", keys, faults).ifPresent(all::add);
        }
        return all;
    }
}
