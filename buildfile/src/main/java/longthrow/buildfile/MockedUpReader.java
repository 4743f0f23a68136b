package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.MockedUp;
import longthrow.core.build.MockedUp.EndPlay;
import longthrow.core.build.MockedUp.Found;
import longthrow.core.build.MockedUp.Way;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;

/** The section {@code mocked_up:} of a build file. */
final class MockedUpReader {
    /** More was never read of one engine; each entry is held against the drawing of its pair. */
    static final int MOST_ENTRIES = 100;

    /** A gap by angle is laid through a drawn curve, row by row. */
    static final int MOST_ROWS = 60;

    /** No two parts of a small engine that may touch stay so far apart [m]: more is a slip of the unit. */
    private static final double FARTHEST = 0.1;

    private static final double TURNS = 4 * Math.PI;

    /** Said for a gap of nothing. */
    static final String TOUCHES = "touches";

    private static final List<String> FOUND = List.of("gap", "at_least", "rows");

    private final Fields fields;
    private final Faults faults;

    private MockedUpReader(Fields fields, Faults faults) {
        this.fields = fields;
        this.faults = faults;
    }

    static List<MockedUp> read(Fields top, Faults faults) {
        Optional<Node> node = top.node(Layout.MOCKED_UP);
        if (node.isEmpty()) {
            return List.of();
        }
        if (!(node.get() instanceof Sequence list)) {
            Fields.wrongShape(node.get(), Layout.MOCKED_UP, "a list", faults);
            return List.of();
        }
        List<Node> items = list.items();
        if (items.size() > MOST_ENTRIES) {
            faults.add(
                    node.get().place(),
                    Layout.MOCKED_UP,
                    "",
                    "has " + items.size() + " entries",
                    "at most " + MOST_ENTRIES,
                    "take out what is of parts that are no longer in the engine");
            return List.of();
        }
        List<MockedUp> all = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            Fields.of(items.get(i), Layout.MOCKED_UP + "[" + (i + 1) + "]", Layout.MOCKED_UP_KEYS, faults)
                    .flatMap(f -> new MockedUpReader(f, faults).one())
                    .ifPresent(all::add);
        }
        return all;
    }

    /** Key of a size by which the parts of a mock-up are known again. */
    static String key(Term size) {
        return MockedUp.key(size);
    }

    private Optional<MockedUp> one() {
        Optional<MovingPair> pair = fields.required("pair", MovingPair.ROD_BOLTS_TO_CAM_CORE.key())
                .flatMap(t -> fields.word(
                        "pair",
                        Arrays.stream(MovingPair.values()).map(MovingPair::key).toList()))
                .flatMap(MovingPair::at);
        Optional<Way> way = fields.required("way", Way.CLAY.key())
                .flatMap(t -> fields.word("way", Layout.MOCK_UP_WAYS))
                .map(word -> Way.valueOf(word.toUpperCase(Locale.ROOT)));
        Optional<Found> found = found();
        EndPlay endPlay = fields.word("both_ways", List.of("yes", "no", Layout.UNKNOWN))
                .map(word ->
                        word.equals("yes") ? EndPlay.BOTH_WAYS : word.equals("no") ? EndPlay.ONE_WAY : EndPlay.NOT_SAID)
                .orElse(EndPlay.NOT_SAID);
        Map<Term, Quantity> with = new EnumMap<>(Term.class);
        for (Term size : MockedUp.SIZES) {
            String key = key(size);
            if (fields.text(key).filter(t -> !t.strip().equals(Layout.UNKNOWN)).isPresent()) {
                fields.width(key, Dimension.LENGTH).ifPresent(q -> with.put(size, q));
            }
        }
        String note = fields.textOrEmpty(Layout.NOTE);
        if (pair.isEmpty()
                || way.isEmpty()
                || found.isEmpty()
                || !canTell(way.get(), found.get())
                || !canRead(way.get(), pair.get())
                || !isAtOverlap(pair.get(), found.get())) {
            return Optional.empty();
        }
        return Optional.of(new MockedUp(pair.get(), way.get(), found.get(), endPlay, with, note));
    }

    private boolean isAtOverlap(MovingPair pair, Found found) {
        if (!pair.isAtOverlap() || !(found instanceof MockedUp.Curve curve) || !curve.isAboutFiring()) {
            return true;
        }
        faults.add(
                fields.node("rows").orElseThrow().place(),
                fields.at("rows"),
                curve.rows().get(0).angle().written() + " to "
                        + curve.rows().get(curve.rows().size() - 1).angle().written(),
                "stand about firing top dead centre, where both valves are shut",
                "angles counted from firing top dead centre, of which the overlap is at 360°",
                "add 360° to each if they were read at the overlap, counted from top dead centre there; else read them there");
        return false;
    }

    private boolean canRead(Way way, MovingPair pair) {
        if (way.reads(pair)) {
            return true;
        }
        fields.refuse(
                "way",
                way.key(),
                "reads no " + pair.label()
                        + ": soft springs stand in the place of valve springs, and the valve is pressed on"
                        + " until it meets something",
                Arrays.stream(Way.values())
                        .filter(other -> other.reads(pair))
                        .map(Way::key)
                        .collect(Collectors.joining(", ")),
                "write the way in which the gap was read; soft springs are for "
                        + Arrays.stream(MovingPair.values())
                                .filter(way::reads)
                                .map(MovingPair::key)
                                .collect(Collectors.joining(", ")));
        return false;
    }

    private boolean canTell(Way way, Found found) {
        boolean isFigure = found instanceof MockedUp.Read
                || found instanceof MockedUp.Curve
                || (found instanceof MockedUp.Free free && free.atLeast().si() > 0);
        if (way != Way.BLUE || !isFigure) {
            return true;
        }
        fields.refuse(
                "way",
                way.key(),
                "tells whether two parts touch, and not how far they stay apart",
                "'gap: " + TOUCHES + "' where it marked, 'at_least: 0 mm' where it did not",
                "write what the blue showed, or the way in which the gap was read");
        return false;
    }

    // ---- what was found

    private Optional<Found> found() {
        List<String> present = FOUND.stream().filter(fields::has).toList();
        if (present.size() != 1) {
            faults.add(
                    fields.place(),
                    fields.path(),
                    "",
                    present.isEmpty()
                            ? "nothing here says what was found"
                            : String.join(" and ", present) + " stand together",
                    String.join(", ", FOUND),
                    present.isEmpty()
                            ? "write 'gap:' with what was read, 'gap: " + TOUCHES
                                    + "', or 'at_least:' with what passed free"
                            : "write an entry for each");
            return Optional.empty();
        }
        return switch (present.get(0)) {
            case "gap" -> gap(fields.node("gap").orElseThrow());
            case "at_least" ->
                fields.quantity("at_least", Dimension.LENGTH)
                        .filter(q -> isGap(q, fields.node("at_least").orElseThrow(), fields.at("at_least")))
                        .map(MockedUp.Free::new);
            default -> rows(fields.node("rows").orElseThrow());
        };
    }

    private Optional<Found> gap(Node node) {
        if (node instanceof Node.Scalar scalar && scalar.text().strip().equals(TOUCHES)) {
            return Optional.of(new MockedUp.Touching());
        }
        int before = faults.count();
        String path = fields.at("gap");
        if (node instanceof Node.Scalar) {
            Optional<Stated> stated = Fields.stated(node, path, Dimension.LENGTH, faults);
            return stated.filter(s -> isGap(s.value(), node, path))
                    .map(s -> new MockedUp.Read(
                            List.of(s.value()), s.expandedDoubt().orElse(null)));
        }
        List<Quantity> gaps = new ArrayList<>();
        List<Node> items = Fields.items(node, path, faults);
        for (int i = 0; i < items.size(); i++) {
            Node item = items.get(i);
            String at = path + "[" + (i + 1) + "]";
            Fields.quantity(item, at, Dimension.LENGTH, faults)
                    .filter(q -> isGap(q, item, at))
                    .ifPresent(gaps::add);
        }
        if (items.isEmpty() && faults.count() == before) {
            faults.add(node.place(), path, "[]", "is an empty list", "", "write at least one reading");
        }
        return faults.count() == before ? Optional.of(new MockedUp.Read(gaps, null)) : Optional.empty();
    }

    private boolean isGap(Quantity gap, Node node, String path) {
        if (gap.si() >= 0 && gap.si() <= FARTHEST) {
            return true;
        }
        faults.add(
                node.place(),
                path,
                gap.written(),
                gap.si() < 0 ? "is below nothing" : "is no gap of a small engine",
                "0 to 100 mm",
                gap.si() < 0
                        ? "write '" + TOUCHES + "' where they touch, else the gap without a sign"
                        : "check the unit and the point");
        return false;
    }

    private Optional<Found> rows(Node node) {
        int before = faults.count();
        String path = fields.at("rows");
        List<MockedUp.Row> rows = new ArrayList<>();
        Fields.ofAnyKeys(node, path, faults).ifPresent(f -> f.entries().forEach(entry -> row(entry, f, rows)));
        if (faults.count() > before) {
            return Optional.empty();
        }
        if (rows.size() < MockedUp.LEAST_ROWS || rows.size() > MOST_ROWS) {
            faults.add(
                    node.place(),
                    path,
                    "",
                    "has " + rows.size() + " rows",
                    MockedUp.LEAST_ROWS + " to " + MOST_ROWS,
                    rows.size() < MockedUp.LEAST_ROWS
                            ? "read it at more angles, to both sides of where it is least; one gap alone stands behind 'gap:'"
                            : "keep those about where it is least");
            return Optional.empty();
        }
        return Optional.of(new MockedUp.Curve(rows));
    }

    private void row(Entry entry, Fields within, List<MockedUp.Row> rows) {
        String path = within.at(entry.key().text());
        Optional<Quantity> angle = Fields.quantity(entry.key(), path, Dimension.ANGLE, faults);
        Optional<Quantity> gap = Fields.quantity(entry.value(), path, Dimension.LENGTH, faults)
                .filter(q -> isGap(q, entry.value(), path));
        if (angle.isEmpty() || gap.isEmpty()) {
            return;
        }
        if (angle.get().si() < 0 || angle.get().si() > TURNS) {
            faults.add(
                    entry.key().place(),
                    path,
                    angle.get().written(),
                    "is not within two turns",
                    "0° to 720° after firing top dead centre",
                    "count on from firing top dead centre: overlap is at 360°, so 10° before it is 350°");
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
            return;
        }
        rows.add(new MockedUp.Row(angle.get(), gap.get()));
    }
}
