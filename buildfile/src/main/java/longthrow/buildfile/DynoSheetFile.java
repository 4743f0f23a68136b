package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.dyno.BenchFigure;
import longthrow.core.dyno.BenchKind;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.gain.AirStandard;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.recording.FaultKind;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;

/**
 * A sheet of runs on a dynamometer. Its layout, one home for reader and words:
 * <pre>
 * longthrow_dyno: 1                    # format, always the first line
 * name: ...                            # what was tried
 * invented: yes                        # where it is made up
 * units: metric                        # or inch
 * notes: [...]
 * engine: my-engine.yaml               # the build it belongs to
 * standard: iso_1585                   # corrected to; 'none' for as read
 * bench: {kind, name, FIGURES, calibration: {load: shown}, coast_down: file,
 *         falling_mass: [{mass, height, time, stops_after}], added_disc: {inertia or mass, diameter, bore; coast_down: file}}
 * baseline: setup
 * speeds: {from, to}                   # that are used
 * sessions:
 *   - {name, setup, date, who, dyno, check, air: {pressure, temperature, humidity},
 *      runs: [{name, peak: figure} or {rows: {speed: figure}} or {log: file, columns: {column: meaning}, rate, keep: [fault]}
 *             and aside: why it does not count, air: {...}]}
 * </pre>
 */
public final class DynoSheetFile {
    public static final int FORMAT_VERSION = 1;

    static final String VERSION = "longthrow_dyno";

    /** Stands where runs stay as read. */
    private static final String NO_STANDARD = "none";

    static final List<String> KEYS = List.of(
            VERSION,
            Layout.NAME,
            Layout.INVENTED,
            Layout.UNITS,
            Layout.NOTES,
            "engine",
            "standard",
            "bench",
            "baseline",
            "speeds",
            "sessions");
    /** Masses that fell on a cord around the drum. */
    private static final String FALLS = "falling_mass";

    /** A disc of known inertia put on the drum for a run-down. */
    private static final String DISC = "added_disc";

    private static final List<String> FALL_KEYS = List.of("mass", "height", "time", "stops_after");
    private static final List<String> DISC_KEYS = List.of("inertia", "mass", "diameter", "bore", "coast_down");
    private static final int MOST_FALLS = 2;
    static final List<String> BENCH_KEYS = Stream.concat(
                    Stream.of("kind", Layout.NAME, "calibration", "coast_down", FALLS, DISC),
                    Arrays.stream(BenchFigure.values()).map(BenchFigure::key))
            .toList();
    static final List<String> SESSION_KEYS =
            List.of(Layout.NAME, "setup", "date", "who", "dyno", "check", "air", "runs");
    static final List<String> RUN_KEYS =
            List.of(Layout.NAME, "peak", "rows", "log", "columns", "rate", "keep", "aside", "air");
    /** A run is set aside for something. */
    private static final Set<String> NO_REASON = Set.of("yes", "no", "true", "false");

    private static final List<String> AIR_KEYS = List.of("pressure", "temperature", "humidity");
    private static final List<String> EVIDENCE = List.of("peak", "rows", "log");

    /** More runs than a season has are a mistake, and would be slow. */
    private static final int MOST_RUNS = 2000;

    private final Fields top;
    private final Faults faults;

    private DynoSheetFile(Fields top, Faults faults) {
        this.top = top;
        this.faults = faults;
    }

    /** Reads a sheet as it lies on the disk. Never throws, whatever the bytes. */
    public static ReadDynoSheet read(byte[] utf8) {
        Faults faults = new Faults();
        if (FileKind.isNoLines(utf8, faults)) {
            return new ReadDynoSheet(Optional.empty(), faults.all(), faults.notes());
        }
        return read(PlainText.decode(utf8, faults), faults);
    }

    /** Reads a sheet's text. Never throws, whatever the text. */
    public static ReadDynoSheet read(String text) {
        Faults faults = new Faults();
        return read(PlainText.check(text, faults), faults);
    }

    /** Whether a text says that it is such a sheet. */
    public static boolean isOne(String text) {
        return text.lines()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .findFirst()
                .filter(line -> line.startsWith(VERSION + ":"))
                .isPresent();
    }

    /** An empty sheet to begin with, with remarks that say what is written where. */
    public static String blank() {
        return BlankDynoSheet.TEXT;
    }

    /**
     * A sheet's text with one run set aside or counted again; all else stays as it stands, remarks too.
     * @param session counted from 0, in the order of the sheet
     * @param run     of that session, counted from 0
     * @param why     it is set aside, one line; empty where it counts again
     * @return no text but a fault where that cannot be done without touching something else
     */
    public static Edited aside(String text, int session, int run, String why) {
        return new AsideEdit(text, session, run, why).result();
    }

    /** The tree of a text, where it has one. */
    static Optional<Node.Mapping> tree(String plain, Faults faults) {
        return TreeReader.read(plain, VERSION + ": " + FORMAT_VERSION, faults);
    }

    private static ReadDynoSheet read(Optional<String> text, Faults faults) {
        Optional<DynoSheet> sheet = text.flatMap(plain -> tree(plain, faults))
                .filter(root -> VersionLine.isReadable(root, VERSION, FORMAT_VERSION, faults))
                .flatMap(root -> Fields.of(root, "", KEYS, faults))
                .map(top -> new DynoSheetFile(top, faults).sheet());
        return new ReadDynoSheet(faults.isEmpty() ? sheet : Optional.empty(), faults.all(), faults.notes());
    }

    private DynoSheet sheet() {
        String name = top.required(Layout.NAME, "what was tried").orElse("");
        boolean invented = top.yesOrNo(Layout.INVENTED).orElse(false);
        UnitSystem units = top.word(Layout.UNITS, List.of("metric", "inch"))
                .map(word -> word.equals("inch") ? UnitSystem.INCH_FIRST : UnitSystem.METRIC_FIRST)
                .orElse(UnitSystem.METRIC_FIRST);
        DynoSheet.Bench bench = bench();
        List<DynoSheet.Session> sessions = sessions();
        Optional<String> baseline = top.text("baseline").map(String::strip);
        Set<String> setups = sessions.stream()
                .map(DynoSheet.Session::setup)
                .filter(s -> !s.isEmpty())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        baseline.filter(b -> !setups.isEmpty() && !setups.contains(b))
                .ifPresent(b -> top.refuse(
                        "baseline", b, "is no setup of a session", String.join(", ", setups), "write one of them"));
        Optional<Fields> speeds =
                top.node("speeds").flatMap(n -> Fields.of(n, "speeds", List.of("from", "to"), faults));
        Optional<Quantity> from = speeds.flatMap(f -> speed(f, "from"));
        Optional<Quantity> to = speeds.flatMap(f -> speed(f, "to"));
        if (from.isPresent() && to.isPresent() && from.get().compareTo(to.get()) >= 0) {
            speeds.orElseThrow()
                    .refuse(
                            "to",
                            to.get().written(),
                            "is not above 'from', " + from.get().written(),
                            "above it",
                            "change the two");
        }
        return new DynoSheet(
                name,
                invented,
                units,
                notes(),
                top.text("engine").map(String::strip),
                standard(),
                bench,
                baseline,
                from,
                to,
                sessions);
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        top.node(Layout.NOTES)
                .ifPresent(n -> Fields.items(n, Layout.NOTES, faults)
                        .forEach(item -> Fields.text(item, Layout.NOTES, faults).ifPresent(notes::add)));
        return notes;
    }

    private Optional<AirStandard> standard() {
        List<String> words = Stream.concat(
                        Arrays.stream(AirStandard.values()).map(AirStandard::key), Stream.of(NO_STANDARD))
                .toList();
        if (!top.has("standard")) {
            faults.add(
                    top.place(),
                    "",
                    "",
                    "'standard' is missing, and a figure without its standard is held against nothing",
                    String.join(", ", words),
                    "add the line 'standard: " + words.get(0) + "', or 'standard: none' for figures as read");
        }
        return top.word("standard", words).flatMap(word -> byKey(AirStandard.values(), AirStandard::key, word));
    }

    private static <E extends Enum<E>> Optional<E> byKey(E[] all, Function<E, String> key, String word) {
        return Arrays.stream(all).filter(e -> key.apply(e).equals(word)).findFirst();
    }

    private Optional<Quantity> speed(Fields fields, String key) {
        Optional<Quantity> speed = fields.quantity(key, Dimension.ROTATIONAL_SPEED);
        speed.filter(s -> !(s.si() > 0))
                .ifPresent(s -> fields.refuse(key, s.written(), "is not above 0", "above 0", "write it in rpm"));
        return speed;
    }

    // ---- bench

    private DynoSheet.Bench bench() {
        Optional<Fields> fields = top.node("bench").flatMap(n -> Fields.of(n, "bench", BENCH_KEYS, faults));
        List<String> kinds =
                Arrays.stream(BenchKind.values()).map(BenchKind::key).toList();
        if (!top.has("bench")) {
            faults.add(
                    top.place(),
                    "",
                    "",
                    "'bench' is missing",
                    "",
                    "add the line 'bench: {kind: " + BenchKind.TABLE.key() + "}', or one of "
                            + String.join(", ", kinds));
        }
        Optional<BenchKind> kind = fields.flatMap(f -> f.required("kind", BenchKind.TABLE.key())
                .flatMap(t -> f.word("kind", kinds))
                .flatMap(word -> byKey(BenchKind.values(), BenchKind::key, word)));
        Map<BenchFigure, Stated> figures = new EnumMap<>(BenchFigure.class);
        fields.ifPresent(f -> {
            for (BenchFigure figure : BenchFigure.values()) {
                figure(f, figure, kind).ifPresent(stated -> figures.put(figure, stated));
            }
        });
        fields.filter(f -> kind.isPresent() && kind.get() != BenchKind.BRAKE && f.has("calibration"))
                .ifPresent(f -> f.refuse(
                        "calibration", "", "has no place at " + kind.get().meaning(), "at a brake", "leave it out"));
        return new DynoSheet.Bench(
                kind.orElse(BenchKind.TABLE),
                fields.map(f -> f.textOrEmpty(Layout.NAME)).orElse(""),
                figures,
                fields.map(this::calibration).orElse(List.of()),
                fields.flatMap(f -> beside(f, "coast_down")),
                fields.map(f -> falls(f, kind)).orElse(List.of()),
                fields.flatMap(f -> disc(f, kind)));
    }

    // ---- the drum's inertia found

    private static boolean isOfADrum(Fields bench, String key, Optional<BenchKind> kind) {
        boolean isElsewhere =
                bench.has(key) && kind.filter(k -> k != BenchKind.INERTIA_DRUM).isPresent();
        if (isElsewhere) {
            bench.refuse(
                    key,
                    "",
                    "has no place at " + kind.orElseThrow().meaning(),
                    "at an inertia drum",
                    "leave it out, or write another 'kind'");
        }
        return bench.has(key) && !isElsewhere;
    }

    private List<DynoSheet.Fall> falls(Fields bench, Optional<BenchKind> kind) {
        List<DynoSheet.Fall> falls = new ArrayList<>();
        if (!isOfADrum(bench, FALLS, kind)) {
            return falls;
        }
        if (!(bench.node(FALLS).orElseThrow() instanceof Sequence list)) {
            Fields.wrongShape(bench.node(FALLS).orElseThrow(), bench.at(FALLS), "a list", faults);
            return falls;
        }
        int count = list.items().size();
        if (count < 1 || count > MOST_FALLS) {
            bench.refuse(
                    FALLS,
                    count + " falls",
                    "are not what an inertia is found by",
                    "one fall with 'stops_after', or two with different masses",
                    "write the mean time of falls that were repeated");
        }
        if (!bench.has(BenchFigure.CORD_RADIUS.key())) {
            bench.refuse(
                    FALLS,
                    "",
                    "tells nothing without the radius that the cord pulls at",
                    "",
                    "add 'cord_radius: 155 mm ± 1 mm': half of what the cord is wound on, and half the cord");
        }
        for (int i = 0; i < count; i++) {
            Fields.of(list.items().get(i), bench.at(FALLS) + "[" + (i + 1) + "]", FALL_KEYS, faults)
                    .flatMap(f -> fall(f, count == 1))
                    .ifPresent(falls::add);
        }
        if (falls.size() == MOST_FALLS
                && falls.get(0).mass().value().compareTo(falls.get(1).mass().value()) == 0) {
            bench.refuse(
                    FALLS,
                    falls.get(0).mass().written() + " twice",
                    "are alike, and friction drops out only between two masses",
                    "two masses, the one about twice the other",
                    "let another mass fall, or write one fall with 'stops_after'");
        }
        return falls;
    }

    private Optional<DynoSheet.Fall> fall(Fields fields, boolean isAlone) {
        Optional<Stated> mass = above(fields, "mass", Dimension.MASS, true, "10 kg");
        Optional<Stated> height = above(fields, "height", Dimension.LENGTH, true, "1.80 m");
        Optional<Stated> time = above(fields, "time", Dimension.TIME, true, "3.4 s");
        Optional<Stated> stops = above(fields, "stops_after", Dimension.TIME, false, "");
        if (isAlone && !fields.has("stops_after")) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    "the drum's friction is in the time of one fall alone",
                    "'stops_after', or a second fall with another mass",
                    "add 'stops_after: 40 s', the time from where the mass landed until the drum stood, its cord off");
        }
        return mass.flatMap(m -> height.flatMap(h -> time.map(t -> new DynoSheet.Fall(m, h, t, stops))));
    }

    private Optional<DynoSheet.Added> disc(Fields bench, Optional<BenchKind> kind) {
        if (!isOfADrum(bench, DISC, kind)) {
            return Optional.empty();
        }
        if (!bench.has("coast_down")) {
            bench.refuse(
                    DISC,
                    "",
                    "tells nothing without a run-down of the bare drum",
                    "'coast_down' in the bench beside it",
                    "add 'coast_down: bare.csv', a log of the drum running out without the disc");
        }
        return bench.node(DISC)
                .flatMap(n -> Fields.of(n, bench.at(DISC), DISC_KEYS, faults))
                .flatMap(this::disc);
    }

    private Optional<DynoSheet.Added> disc(Fields fields) {
        Optional<Stated> inertia = above(fields, "inertia", Dimension.INERTIA, false, "");
        boolean isByShape = !fields.has("inertia");
        Optional<Stated> mass = above(fields, "mass", Dimension.MASS, isByShape, "12 kg, or 'inertia: 0.14 kg·m²'");
        Optional<Stated> diameter = above(fields, "diameter", Dimension.LENGTH, isByShape, "300 mm");
        Optional<Stated> bore = above(fields, "bore", Dimension.LENGTH, false, "");
        if (!isByShape) {
            Stream.of("mass", "diameter", "bore")
                    .filter(fields::has)
                    .forEach(key -> fields.refuse(
                            key,
                            "",
                            "has no place beside 'inertia'",
                            "inertia, or mass, diameter and bore",
                            "leave one of the two out"));
        }
        if (bore.isPresent()
                && diameter.isPresent()
                && bore.get().value().compareTo(diameter.get().value()) >= 0) {
            fields.refuse(
                    "bore",
                    bore.get().written(),
                    "is not below the diameter, " + diameter.get().written(),
                    "below it",
                    "read both again");
        }
        Optional<String> file =
                fields.required("coast_down", "with-disc.csv").flatMap(t -> beside(fields, "coast_down"));
        return file.map(f -> new DynoSheet.Added(inertia, mass, diameter, bore, f));
    }

    /** A figure above 0. */
    private Optional<Stated> above(Fields fields, String key, Dimension dimension, boolean isAsked, String example) {
        if (isAsked && !fields.has(key)) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    "'" + key + "' is missing",
                    "",
                    "add '" + key + ": " + example + (example.endsWith("'") ? "" : "'"));
        }
        Optional<Stated> stated = stated(fields, key, dimension);
        stated.filter(s -> !(s.value().si() > 0))
                .ifPresent(s -> fields.refuse(
                        key, s.written(), "is not above 0", "above 0", "write what was read, or leave it out"));
        return stated.filter(s -> s.value().si() > 0);
    }

    /** Name of a file in the sheet's folder, and of none elsewhere. */
    /** Control characters, and those that turn the direction of writing or join letters unseen. */
    private static boolean isUnseen(int c) {
        return Character.isISOControl(c) || Character.getType(c) == Character.FORMAT;
    }

    private static Optional<String> beside(Fields fields, String key) {
        Optional<String> file = fields.text(key).map(String::strip);
        file.filter(name -> name.contains("..") || name.contains("/") || name.contains("\\"))
                .ifPresent(name -> fields.refuse(
                        key,
                        name,
                        "does not lie beside the sheet",
                        "the name of a file in the sheet's folder",
                        "put the file there and write its name alone"));
        file.filter(name -> name.codePoints().anyMatch(DynoSheetFile::isUnseen))
                .ifPresent(name -> fields.refuse(
                        key,
                        name.codePoints()
                                .mapToObj(c ->
                                        isUnseen(c) ? String.format(Locale.ROOT, "\\u%04X", c) : Character.toString(c))
                                .collect(Collectors.joining()),
                        "holds a character that is not seen, by which a name reads as another",
                        "letters, digits, marks and blanks",
                        "rename the file, and write its name again by hand"));
        return file;
    }

    private Optional<Stated> figure(Fields fields, BenchFigure figure, Optional<BenchKind> kind) {
        Optional<Stated> stated = fields.node(figure.key())
                .flatMap(n -> Fields.stated(n, fields.at(figure.key()), figure.dimension(), faults));
        if (stated.isPresent() && kind.isPresent() && !figure.isOf(kind.get())) {
            fields.refuse(
                    figure.key(),
                    stated.get().written(),
                    "has no place at " + kind.get().meaning(),
                    Arrays.stream(BenchFigure.values())
                            .filter(f -> f.isOf(kind.get()))
                            .map(BenchFigure::key)
                            .collect(Collectors.joining(", ")),
                    "leave it out, or write another 'kind'");
        }
        boolean mayBeNegative = figure == BenchFigure.SLOPE || figure == BenchFigure.WIND;
        stated.filter(s -> !mayBeNegative && !(s.value().si() > 0))
                .ifPresent(s -> fields.refuse(
                        figure.key(),
                        s.written(),
                        "is not above 0",
                        "above 0",
                        "write what was read, or leave it out"));
        stated.filter(s -> figure == BenchFigure.DRIVE_EFFICIENCY && s.value().si() > 1)
                .ifPresent(s -> fields.refuse(
                        figure.key(), s.written(), "is more than all", "up to 1", "write a share, such as 0.96"));
        return stated;
    }

    private List<DynoSheet.Hung> calibration(Fields bench) {
        List<DynoSheet.Hung> hung = new ArrayList<>();
        bench.node("calibration")
                .flatMap(n -> Fields.ofAnyKeys(n, bench.at("calibration"), faults))
                .ifPresent(rows -> {
                    for (Entry entry : rows.entries()) {
                        String path = rows.at(entry.key().text());
                        Optional<Quantity> load = Fields.quantity(
                                entry.key(), path, dimensionOf(entry.key(), Dimension.MASS, Dimension.FORCE), faults);
                        Optional<Quantity> shown = Fields.quantity(
                                entry.value(),
                                path,
                                dimensionOf(entry.value(), Dimension.RATIO, Dimension.FORCE, Dimension.MASS),
                                faults);
                        if (load.isPresent() && shown.isPresent()) {
                            hung.add(new DynoSheet.Hung(load.get(), shown.get()));
                        }
                    }
                });
        return hung;
    }

    /** The first of them that the text can be; else the first, so that the message names its units. */
    private static Dimension dimensionOf(Node node, Dimension first, Dimension... others) {
        Optional<String> text = Fields.text(node, "", new Faults());
        return Stream.concat(Stream.of(first), Arrays.stream(others))
                .filter(d -> text.filter(t -> QuantityParser.parse(t, d) instanceof Parsed.Understood)
                        .isPresent())
                .findFirst()
                .orElse(first);
    }

    // ---- sessions

    private List<DynoSheet.Session> sessions() {
        List<DynoSheet.Session> sessions = new ArrayList<>();
        Optional<Node> node = top.node("sessions");
        if (node.isEmpty()) {
            faults.add(
                    top.place(),
                    "",
                    "",
                    "'sessions' is missing",
                    "",
                    "add 'sessions:' and below it a dash for each time that the engine was on the dyno with one setup");
            return sessions;
        }
        if (!(node.get() instanceof Sequence list)) {
            Fields.wrongShape(node.get(), "sessions", "a list", faults);
            return sessions;
        }
        Set<String> names = new LinkedHashSet<>();
        int runs = 0;
        for (int i = 0; i < list.items().size(); i++) {
            Optional<DynoSheet.Session> session = Fields.of(
                            list.items().get(i), "sessions[" + (i + 1) + "]", SESSION_KEYS, faults)
                    .map(f -> session(f, names));
            session.ifPresent(sessions::add);
            runs += session.map(s -> s.pulls().size()).orElse(0);
        }
        if (runs > MOST_RUNS) {
            faults.add(
                    node.get().place(),
                    "sessions",
                    String.valueOf(runs) + " runs",
                    "are more than one sheet holds",
                    "up to " + MOST_RUNS,
                    "write a sheet for each thing that was tried");
        }
        return sessions;
    }

    private DynoSheet.Session session(Fields fields, Set<String> names) {
        String name = fields.required(Layout.NAME, "A1").map(String::strip).orElse("");
        if (!name.isEmpty() && !names.add(name)) {
            fields.refuse(Layout.NAME, name, "names two sessions", "each name once", "number them: A1, B, A2");
        }
        String setup = fields.required("setup", "what was on the engine")
                .map(String::strip)
                .orElse("");
        DynoSheet.Air air =
                fields.node("air").map(n -> air(n, fields.at("air"))).orElse(DynoSheet.Air.unknown());
        return new DynoSheet.Session(
                name,
                setup,
                date(fields),
                fields.textOrEmpty("who"),
                fields.textOrEmpty("dyno").strip(),
                fields.yesOrNo("check").orElse(false),
                air,
                pulls(fields));
    }

    private String date(Fields fields) {
        String date = fields.textOrEmpty("date").strip();
        if (!date.isEmpty() && !isDate(date)) {
            fields.refuse("date", date, "is no date", "year-month-day", "write it as 2026-05-02");
            return "";
        }
        return date;
    }

    private static boolean isDate(String text) {
        try {
            return java.time.LocalDate.parse(text).getYear() > 1800;
        } catch (java.time.format.DateTimeParseException none) {
            return false;
        }
    }

    private DynoSheet.Air air(Node node, String path) {
        Optional<Fields> fields = Fields.of(node, path, AIR_KEYS, faults);
        Optional<Stated> pressure = fields.flatMap(f -> stated(f, "pressure", Dimension.PRESSURE));
        Optional<Stated> temperature = fields.flatMap(f -> stated(f, "temperature", Dimension.TEMPERATURE));
        Optional<Stated> humidity = fields.flatMap(f -> stated(f, "humidity", Dimension.RATIO));
        pressure.ifPresent(p -> believable(
                fields.orElseThrow(),
                "pressure",
                p,
                Term.AIR_PRESSURE,
                "is not what a barometer shows anywhere",
                "write it with its own unit, absolute and at the place; a weather report's figure is brought to sea level"
                        + " and must not be used"));
        temperature.ifPresent(t -> believable(
                fields.orElseThrow(),
                "temperature",
                t,
                Term.AIR_TEMPERATURE,
                "is no air that an engine runs in",
                "write it with its own unit, of the air where the engine draws it"));
        humidity.ifPresent(h -> believable(
                fields.orElseThrow(), "humidity", h, Term.HUMIDITY, "is no relative humidity", "write 46 %, or 0.46"));
        return new DynoSheet.Air(pressure, temperature, humidity);
    }

    /** Within the range of the same reading of a build. */
    private static void believable(Fields fields, String key, Stated stated, Term term, String why, String mend) {
        Believable range = term.believable();
        if (!range.holds(stated.value().si())) {
            FigurePrinter printer = new FigurePrinter(UnitSystem.METRIC_FIRST);
            fields.refuse(
                    key,
                    stated.written(),
                    why,
                    printer.print(term.dimension(), range.least(), 0).first().text() + " to "
                            + printer.print(term.dimension(), range.most(), 0)
                                    .first()
                                    .text(),
                    mend);
        }
    }

    private Optional<Stated> stated(Fields fields, String key, Dimension dimension) {
        return fields.node(key).flatMap(n -> Fields.stated(n, fields.at(key), dimension, faults));
    }

    private List<DynoSheet.Pull> pulls(Fields session) {
        List<DynoSheet.Pull> pulls = new ArrayList<>();
        Optional<Node> node = session.node("runs");
        if (node.isEmpty()) {
            faults.add(
                    session.place(),
                    session.path(),
                    "",
                    "'runs' is missing",
                    "",
                    "add 'runs:' and below it a dash for each run, such as '- {peak: 9.4 kW}'");
        } else if (!(node.get() instanceof Sequence list)) {
            Fields.wrongShape(node.get(), session.at("runs"), "a list", faults);
        } else {
            Set<String> names = new LinkedHashSet<>();
            for (int i = 0; i < list.items().size(); i++) {
                String number = String.valueOf(i + 1); // the name of a run that has none
                Fields.of(list.items().get(i), session.at("runs") + "[" + number + "]", RUN_KEYS, faults)
                        .flatMap(f -> named(f, number, names))
                        .ifPresent(pulls::add);
            }
        }
        return pulls;
    }

    /** A run whose name no other of its session has, so that what is said of one is not taken for another's. */
    private Optional<DynoSheet.Pull> named(Fields fields, String number, Set<String> names) {
        String name = fields.textOrEmpty(Layout.NAME).strip();
        if (!names.add(name.isEmpty() ? number : name)) {
            fields.refuse(
                    Layout.NAME,
                    name.isEmpty() ? number : name,
                    "names two runs of one session",
                    "each name once; a run without a name is called by its number",
                    "write another name, or none");
        }
        return pull(fields);
    }

    private Optional<DynoSheet.Pull> pull(Fields fields) {
        List<String> said = EVIDENCE.stream().filter(fields::has).toList();
        if (said.size() != 1) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    String.join(", ", said),
                    said.isEmpty() ? "nothing says what the run read" : "one run has more than one sort of figures",
                    "one of " + String.join(", ", EVIDENCE),
                    "write 'peak: 9.4 kW', or 'rows:' with '3000 rpm: 13.1 N·m' below it, or 'log: run-3.csv'");
            return Optional.empty();
        }
        for (String key : List.of("columns", "rate", "keep")) {
            if (fields.has(key) && !fields.has("log")) {
                fields.refuse(key, "", "has no place without 'log'", "", "leave it out");
            }
        }
        Optional<? extends DynoSheet.Evidence> evidence = switch (said.get(0)) {
            case "peak" ->
                fields.node("peak").flatMap(n -> figure(n, fields.at("peak"))).map(DynoSheet.Peak::new);
            case "rows" -> rows(fields);
            default -> log(fields);
        };
        Optional<DynoSheet.Air> air = fields.node("air").map(n -> air(n, fields.at("air")));
        String aside = fields.textOrEmpty("aside").strip();
        if (NO_REASON.contains(aside.toLowerCase(Locale.ROOT))) {
            fields.refuse(
                    "aside",
                    aside,
                    "is no reason",
                    "words",
                    "write what went wrong with the run, such as 'chain came off'; a run that counts has no 'aside'");
        }
        return evidence.map(
                e -> new DynoSheet.Pull(fields.textOrEmpty(Layout.NAME).strip(), e, aside, air));
    }

    /** Power or torque, whichever its unit says; above 0. */
    private Optional<Stated> figure(Node node, String path) {
        return Fields.stated(node, path, dimensionOf(node, Dimension.POWER, Dimension.TORQUE), faults)
                .filter(s -> {
                    boolean isPositive = s.value().si() > 0;
                    if (!isPositive) {
                        faults.add(
                                node.place(),
                                path,
                                s.written(),
                                "is not above 0",
                                "above 0",
                                "write what the dynamometer showed; a run that failed has no figure");
                    }
                    return isPositive;
                });
    }

    private Optional<DynoSheet.Table> rows(Fields fields) {
        List<DynoSheet.Row> rows = new ArrayList<>();
        fields.eachRow("'3000 rpm: 13.1 N·m' below 'rows:'", (entry, path) -> row(entry, path, rows));
        return rows.isEmpty() ? Optional.empty() : Optional.of(new DynoSheet.Table(rows));
    }

    private void row(Entry entry, String path, List<DynoSheet.Row> rows) {
        Optional<Quantity> speed = Fields.quantity(entry.key(), path, Dimension.ROTATIONAL_SPEED, faults);
        Optional<Stated> figure = figure(entry.value(), path);
        if (speed.isEmpty() || figure.isEmpty()) {
            return;
        }
        if (speed.get().si() > FASTEST) {
            faults.add(
                    entry.key().place(),
                    path,
                    speed.get().written(),
                    "is faster than such an engine turns",
                    "up to 30,000 rpm",
                    "write the engine's speed in rpm");
        }
        if (!(speed.get().si() > 0)) {
            faults.add(
                    entry.key().place(), path, speed.get().written(), "is not above 0", "above 0", "write it in rpm");
        }
        if (!rows.isEmpty()) {
            DynoSheet.Row before = rows.get(rows.size() - 1);
            if (speed.get().compareTo(before.speed()) <= 0) {
                faults.add(
                        entry.key().place(),
                        path,
                        speed.get().written(),
                        "does not come after " + before.speed().written(),
                        "speeds that rise from line to line",
                        "sort the lines by speed, each speed once");
            }
            if (figure.get().value().dimension() != before.figure().value().dimension()) {
                faults.add(
                        entry.value().place(),
                        path,
                        figure.get().written(),
                        "is not of the kind of " + before.figure().written(),
                        "torque in all lines, or power in all lines",
                        "write all lines alike");
            }
        }
        rows.add(new DynoSheet.Row(speed.get(), figure.get()));
    }

    /** No single-cylinder four-stroke is faster: 30,000 rpm; judgement, no source. */
    private static final double FASTEST = longthrow.core.quantity.Units.RPM.toSi(30_000);

    private Optional<DynoSheet.Log> log(Fields fields) {
        Optional<String> file = beside(fields, "log");
        Map<String, String> columns = new LinkedHashMap<>();
        fields.node("columns")
                .flatMap(n -> Fields.ofAnyKeys(n, fields.at("columns"), faults))
                .ifPresent(f -> f.entries()
                        .forEach(e -> Fields.text(e.value(), f.at(e.key().text()), faults)
                                .ifPresent(t -> columns.put(e.key().text(), t.strip()))));
        Optional<Quantity> rate = rate(fields);
        rate.filter(r -> !(r.si() > 0 && r.si() <= MOST_ROWS_A_SECOND))
                .ifPresent(r -> fields.refuse(
                        "rate",
                        r.written(),
                        "is no rate of rows",
                        "above 0, up to " + (long) MOST_ROWS_A_SECOND,
                        "write how many rows were written in a second: 50, 50 Hz or 50/s"));
        Set<FaultKind> keep = EnumSet.noneOf(FaultKind.class);
        List<String> kinds =
                Arrays.stream(FaultKind.values()).map(DynoSheetFile::key).toList();
        fields.node("keep")
                .ifPresent(n -> Fields.items(n, fields.at("keep"), faults)
                        .forEach(item -> Fields.word(item, fields.at("keep"), kinds, faults)
                                .flatMap(word -> byKey(FaultKind.values(), DynoSheetFile::key, word))
                                .ifPresent(keep::add)));
        return file.map(name -> new DynoSheet.Log(name, columns, rate, keep));
    }

    /** Rows a second: the bare number, or with Hz or /s behind it. */
    private Optional<Quantity> rate(Fields fields) {
        return fields.text("rate")
                .map(text -> A_SECOND.matcher(text.strip()).replaceFirst(""))
                .flatMap(text -> fields.node("rate")
                        .flatMap(n -> Fields.stated(text, n.place(), fields.at("rate"), Dimension.RATIO, faults)))
                .map(Stated::value);
    }

    private static final Pattern A_SECOND = Pattern.compile(
            "\\s*(hz|1/s|/\\s*s(ec(ond)?)?|(rows\\s*)?(a|per)\\s+second|rows/s)$", Pattern.CASE_INSENSITIVE);

    private static String key(FaultKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    /** No logger of a workshop is faster; common practice, no source. */
    private static final double MOST_ROWS_A_SECOND = 1e6;
}
