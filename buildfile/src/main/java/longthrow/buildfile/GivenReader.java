package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.Layout.Form;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.Given;
import longthrow.core.build.Instrument;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** What stands behind the key of a term. */
final class GivenReader {
    /** So many times beyond what is believable it is a slip of the unit or the point; nearer, the domain questions it. */
    private static final double BEYOND_ANY_ENGINE = 1000;

    /**
     * Entries of one term. Each is held against each of the others, so the time grows with their square; and what was read or
     * looked up more often than this is one set of readings.
     */
    static final int MOST_ENTRIES = 50;

    private static final String HOW_TO_SPLIT = ",\\s+|;\\s*";

    private final Faults faults;
    private final Map<String, Instrument> instruments;

    GivenReader(Map<String, Instrument> instruments, Faults faults) {
        this.instruments = instruments;
        this.faults = faults;
    }

    /** Everything given for a term; empty when it was refused. */
    List<Given> read(Term term, Node node, String path) {
        if (!(node instanceof Sequence list)) {
            return one(term, node, path).map(List::of).orElse(List.of());
        }
        List<Node> items = list.items();
        if (items.isEmpty()) {
            faults.add(node.place(), path, "[]", "is an empty list", "", "write 'unknown' if it has not been measured");
            return List.of();
        }
        if (items.stream().allMatch(GivenReader::isBareFigure)) {
            List<Quantity> readings = readings(term, node, path);
            return readings.isEmpty() ? List.of() : List.of(taken(readings));
        }
        if (items.size() > MOST_ENTRIES) {
            faults.add(
                    node.place(),
                    path,
                    "",
                    "has " + items.size()
                            + " entries, each with a doubt of its own; each would be held against all others",
                    "at most " + MOST_ENTRIES,
                    "put readings of one instrument into one entry: {readings: [first, second], with: its name}");
            return List.of();
        }
        List<Given> all = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            one(term, items.get(i), path + "[" + (i + 1) + "]").ifPresent(all::add);
        }
        return all;
    }

    private static boolean isBareFigure(Node node) {
        return node instanceof Scalar scalar
                && !scalar.text().strip().equals(Layout.UNKNOWN)
                && !scalar.text().matches("(?s).*(±|\\+/?-).*");
    }

    private static Given.Taken taken(List<Quantity> readings) {
        return new Given.Taken(readings, null, null, null, Given.Origin.NOT_SAID, "");
    }

    private Optional<Given> one(Term term, Node node, String path) {
        if (node instanceof Scalar scalar) {
            return shortForm(term, scalar, path);
        }
        return Fields.ofAnyKeys(node, path, faults).flatMap(fields -> longForm(term, fields));
    }

    private Optional<Given> shortForm(Term term, Scalar scalar, String path) {
        if (scalar.isEmpty() || scalar.text().equals("~") || scalar.text().equals("null")) {
            faults.add(
                    scalar.place(),
                    path,
                    scalar.text(),
                    scalar.isEmpty() ? "nothing stands behind the key" : "is not a figure",
                    String.join(", ", term.dimension().fittingUnits()),
                    "write the reading, or 'unknown'");
            return Optional.empty();
        }
        if (scalar.text().strip().equals(Layout.UNKNOWN)) {
            return Optional.of(new Given.NotKnown(""));
        }
        if (scalar.text().split(HOW_TO_SPLIT, -1).length > 1) {
            List<Quantity> readings = readings(term, scalar, path);
            if (readings.size() > 1) { // without brackets it may have been meant as one figure
                faults.note(scalar.place(), path, "taken as " + readings.size() + " readings of one instrument");
            }
            return readings.isEmpty() ? Optional.empty() : Optional.of(taken(readings));
        }
        return stated(term, scalar, path)
                .map(stated -> stated.expandedDoubt()
                        .<Given>map(doubt -> new Given.Typed(stated.value(), doubt, ""))
                        .orElseGet(() -> taken(List.of(stated.value()))));
    }

    private Optional<Given> longForm(Term term, Fields fields) {
        List<String> present = Form.mainKeys().stream().filter(fields::has).toList();
        if (present.size() != 1) {
            // name the slips first: 'reading' for 'readings' is the usual reason that none is found
            Fields.of(
                    new Node.Mapping(fields.entries(), false, fields.place(), 0, 0), fields.path(), allKeys(), faults);
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    present.isEmpty()
                            ? "nothing here says where the figure comes from"
                            : String.join(" and ", present) + " stand together; a figure comes from one of them",
                    String.join(", ", Form.mainKeys()),
                    present.isEmpty()
                            ? "start with 'readings:', 'specified:', 'assumed:' or 'unknown:'"
                            : "write a list of two values, each with a dash in front");
            return Optional.empty();
        }
        Form form = Form.valueOf(present.get(0).toUpperCase(Locale.ROOT));
        Node.Mapping map = new Node.Mapping(fields.entries(), false, fields.place(), 0, 0);
        Optional<Fields> known = Fields.of(map, fields.path(), form.keys(), faults);
        return known.flatMap(f -> switch (form) {
            case READINGS -> readings(term, f);
            case VALUE -> typed(term, f);
            case SPECIFIED, CATALOGUE -> specified(term, f, form);
            case ASSUMED -> assumed(term, f);
            case UNKNOWN -> f.text(form.key()).map(Given.NotKnown::new);
        });
    }

    private static List<String> allKeys() {
        return Arrays.stream(Form.values())
                .flatMap(f -> f.keys().stream())
                .distinct()
                .toList();
    }

    private Optional<Given> readings(Term term, Fields fields) {
        String key = Form.READINGS.key();
        List<Quantity> readings = readings(term, fields.node(key).orElseThrow(), fields.at(key));
        Optional<String> with = fields.text("with").filter(name -> fits(name, term, fields));
        @Nullable Quantity part = Temperatures.ofAPart(fields, "part_at").orElse(null);
        @Nullable
        Quantity instrument = Temperatures.ofAPart(fields, "instrument_at").orElse(null);
        Given.Origin origin =
                new Given.Origin(fields.textOrEmpty("who"), fields.textOrEmpty("when"), fields.textOrEmpty("photo"));
        String note = fields.textOrEmpty(Layout.NOTE);
        return readings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Given.Taken(readings, with.orElse(null), part, instrument, origin, note));
    }

    private boolean fits(String name, Term term, Fields fields) {
        Place place = fields.node("with").orElseThrow().place();
        Instrument instrument = instruments.get(name);
        if (instrument == null) {
            List<String> fitting = instruments.values().stream()
                    .filter(i -> i.kind().dimension() == term.dimension())
                    .map(Instrument::key)
                    .toList();
            faults.add(
                    place,
                    fields.at("with"),
                    name,
                    "is an instrument that is neither built in nor defined in this file",
                    String.join(", ", fitting),
                    Nearest.to(name, instruments.keySet())
                            .map(near -> "did you mean " + near + "?")
                            .orElse("define it under 'instruments:' with its kind, resolution and error"));
            return false;
        }
        if (instrument.kind().dimension() != term.dimension()) {
            faults.add(
                    place,
                    fields.at("with"),
                    name,
                    "reads " + instrument.kind().dimension().withArticle() + ", but " + term.label() + " is "
                            + term.dimension().withArticle(),
                    "",
                    "name the instrument that was used; the usual one is "
                            + term.reading().usualInstrument().key());
            return false;
        }
        return true;
    }

    /** Empty when one of them was refused: half of a set of readings has another mean. */
    private List<Quantity> readings(Term term, Node node, String path) {
        int before = faults.count();
        List<Quantity> readings = new ArrayList<>();
        List<Node> items = Fields.items(node, path, faults);
        for (int i = 0; i < items.size(); i++) {
            String itemPath = items.size() == 1 && items.get(0) == node ? path : path + "[" + (i + 1) + "]";
            if (i + 1 < items.size() && isCutAtItsComma(items.get(i), items.get(i + 1))) {
                refuseDecimalComma((Scalar) items.get(i), (Scalar) items.get(i + 1), itemPath);
                i++; // its other half
                continue;
            }
            readings(term, items.get(i), itemPath, node instanceof Sequence list && list.flow(), readings);
        }
        if (items.isEmpty() && faults.count() == before) {
            faults.add(node.place(), path, "[]", "is an empty list", "", "write at least one reading, or 'unknown'");
        }
        return faults.count() == before ? readings : List.of();
    }

    /** [86,40 mm]: a whole number without unit, and right behind the comma digits with one. */
    private static boolean isCutAtItsComma(Node item, Node next) {
        return item instanceof Scalar whole
                && next instanceof Scalar places
                && next.start() == item.end() + 1
                && whole.text().matches("[-+]?[0-9]+")
                && places.text().matches("[0-9]+ *[^0-9., ].*");
    }

    private void refuseDecimalComma(Scalar whole, Scalar places, String path) {
        faults.add(
                whole.place(),
                path,
                whole.text() + "," + places.text(),
                "is cut in two: in [ ] a comma parts the readings",
                "a decimal point",
                "write " + whole.text() + "." + places.text());
    }

    private void readings(Term term, Node item, String path, boolean inBrackets, List<Quantity> into) {
        int before = faults.count();
        Optional<String> text = Fields.text(item, path, faults);
        if (text.isEmpty()) {
            return;
        }
        for (String piece : text.get().split(HOW_TO_SPLIT, -1)) {
            if (piece.isBlank() && !text.get().isBlank()) {
                faults.add(
                        item.place(),
                        path,
                        text.get(),
                        "has a comma or semicolon, which parts readings, with no reading on one side of it",
                        "one reading on each side",
                        "take it out, or write the reading that is missing");
            } else {
                reading(term, piece, item.place(), path).ifPresent(into::add);
            }
        }
        if (faults.count() > before && inBrackets && text.get().matches("[-+]?[0-9]+")) {
            faults.note(
                    item.place(),
                    path,
                    "in [ ] a comma parts the readings; write a decimal point, as in [16.40 mm, 16.41 mm]");
        }
    }

    private Optional<Quantity> reading(Term term, String piece, Place place, String path) {
        Optional<Stated> stated = stated(term, piece, place, path);
        if (stated.isPresent() && stated.get().expandedDoubt().isPresent()) {
            faults.add(
                    place,
                    path,
                    piece,
                    "has a ±; the doubt of a reading comes from its instrument",
                    "one figure and its unit",
                    "leave out the ±, or write 'value: " + piece + "' instead of readings");
            return Optional.empty();
        }
        return stated.map(Stated::value);
    }

    private Optional<Given> typed(Term term, Fields fields) {
        String key = Form.VALUE.key();
        Node node = fields.node(key).orElseThrow();
        String note = fields.textOrEmpty(Layout.NOTE);
        Optional<Stated> stated = stated(term, node, fields.at(key));
        if (stated.isPresent() && stated.get().expandedDoubt().isEmpty()) {
            faults.add(
                    node.place(),
                    fields.at(key),
                    stated.get().written(),
                    "has no ±, so nothing says how sure it is",
                    "a quantity and its ±",
                    "write '" + stated.get().written() + " ± …', or 'readings:' if it was read on the bench");
            return Optional.empty();
        }
        return stated.map(s -> new Given.Typed(s.value(), s.expandedDoubt().orElseThrow(), note));
    }

    private Optional<Given> specified(Term term, Fields fields, Form form) {
        Node node = fields.node(form.key()).orElseThrow();
        Optional<Stated> stated = stated(term, node, fields.at(form.key()));
        Optional<Quantity> tolerance =
                fields.width("tolerance", term.dimension().ofDifference());
        tolerance.ifPresent(
                t -> checkSize(term, t, fields.node("tolerance").orElseThrow().place(), fields.at("tolerance")));
        String by = fields.textOrEmpty("by");
        String note = fields.textOrEmpty(Layout.NOTE);
        if (stated.isEmpty()) {
            return Optional.empty();
        }
        Optional<Quantity> behind = stated.get().expandedDoubt();
        if (behind.isPresent() && fields.has("tolerance")) {
            faults.add(
                    node.place(),
                    fields.at(form.key()),
                    stated.get().written(),
                    "has a ± and a tolerance too",
                    "one of them",
                    "leave one of them out");
        }
        return Optional.of(new Given.Specified(
                stated.get().value(), behind.or(() -> tolerance).orElse(null), by, form == Form.CATALOGUE, note));
    }

    private Optional<Given> assumed(Term term, Fields fields) {
        String key = Form.ASSUMED.key();
        Node node = fields.node(key).orElseThrow();
        Optional<Stated> stated = stated(term, node, fields.at(key));
        Optional<String> because =
                fields.required("because", "why this is a fair guess").filter(words -> hasReason(words, fields));
        String note = fields.textOrEmpty(Layout.NOTE);
        if (stated.isPresent() && stated.get().expandedDoubt().isEmpty()) {
            faults.add(
                    node.place(),
                    fields.at(key),
                    stated.get().written(),
                    "is assumed without a ±; a guess must say how wide it is",
                    "a quantity and its ±",
                    "write '" + stated.get().written()
                            + " ± …' with half the width you would bet on, 95 times out of 100");
            return Optional.empty();
        }
        return stated.isEmpty() || because.isEmpty()
                ? Optional.empty()
                : Optional.of(new Given.Assumed(
                        stated.get().value(), stated.get().expandedDoubt().orElseThrow(), because.get(), note));
    }

    private boolean hasReason(String words, Fields fields) {
        if (words.isBlank()) {
            faults.add(
                    fields.node("because").orElseThrow().place(),
                    fields.at("because"),
                    "",
                    "the reason is empty",
                    "",
                    "write why this is a fair guess");
        }
        return !words.isBlank();
    }

    /** A figure of the term, perhaps with its ±, of a size that some engine may have. */
    Optional<Stated> stated(Term term, Node node, String path) {
        return Fields.text(node, path, faults).flatMap(text -> stated(term, text, node.place(), path));
    }

    private Optional<Stated> stated(Term term, String text, Place place, String path) {
        Optional<Stated> stated = Fields.stated(text, place, path, term.dimension(), faults);
        if (stated.isEmpty() || !isOfAnEngine(term, stated.get().value(), place, path)) {
            return Optional.empty();
        }
        Optional<Quantity> doubt = stated.get().expandedDoubt();
        boolean good = doubt.isEmpty()
                || (Fields.isWidth(doubt.get(), place, path, faults) && checkSize(term, doubt.get(), place, path));
        return good ? stated : Optional.empty();
    }

    private boolean isOfAnEngine(Term term, Quantity value, Place place, String path) {
        Believable range = term.believable();
        boolean signless = term.sign().isEmpty();
        if (signless && value.si() < 0) {
            refuseSize(term, value, "is negative, which this cannot be", place, path);
            return false;
        }
        if (signless && range.least() > 0 && value.si() < range.least() / BEYOND_ANY_ENGINE) {
            refuseSize(
                    term, value, "is over " + (int) BEYOND_ANY_ENGINE + " times too small for any engine", place, path);
            return false;
        }
        if (term.dimension() == Dimension.RATIO && range.most() <= 1 && value.si() > range.most()) {
            refuseSize(
                    term, value, "is more than the whole: a number without % is a share, so 7 % is 0.07", place, path);
            return false;
        }
        return checkSize(term, value, place, path);
    }

    private boolean checkSize(Term term, Quantity value, Place place, String path) {
        Believable range = term.believable();
        double largest = BEYOND_ANY_ENGINE * Math.max(Math.abs(range.least()), Math.abs(range.most()));
        if (Math.abs(value.si()) <= largest) {
            return true;
        }
        refuseSize(term, value, "is over " + (int) BEYOND_ANY_ENGINE + " times too large for any engine", place, path);
        return false;
    }

    private void refuseSize(Term term, Quantity value, String why, Place place, String path) {
        FigurePrinter printer = new FigurePrinter(UnitSystem.METRIC_FIRST);
        Believable range = term.believable();
        faults.add(
                place,
                path,
                value.written(),
                why,
                "usually "
                        + printer.print(term.dimension(), range.least(), 0)
                                .first()
                                .text() + " to "
                        + printer.print(term.dimension(), range.most(), 0)
                                .first()
                                .text(),
                "check the point, the unit and the sign");
    }
}
