package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Text to a tree, from the scanner's events rather than its loader: no scalar is ever turned into a number, nothing is
 * expanded, and depth and size are counted while reading, so that no file can exhaust the stack or the memory.
 */
final class TreeReader {
    /** The deepest place of a build file is {@code rules.keep[0].least}, 4; readings in a list of ways, 5. */
    static final int DEEPEST = 12;

    /** Values and keys; a file with every term has under 2000. */
    private static final int MOST_NODES = 20_000;

    /** Where a file cannot be read on. */
    private static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1;

        Unreadable() {
            super("", null, false, false);
        }
    }

    private final String text;
    /** What the file starts with. */
    private final String firstLine;

    private final Faults faults;
    private final Iterator<Event> events;
    /** Character offset by code point index; null where they are the same. */
    private final int @Nullable [] offsets;

    private int nodes;
    private boolean usable = true;

    private TreeReader(String text, String firstLine, Faults faults) {
        this.text = text;
        this.firstLine = firstLine;
        this.faults = faults;
        this.offsets = text.codePointCount(0, text.length()) == text.length() ? null : offsets(text);
        LoadSettings settings = LoadSettings.builder()
                .setUseMarks(true)
                .setCodePointLimit(2 * PlainText.MOST_BYTES)
                .build();
        this.events = new Parse(settings).parseString(text).iterator();
    }

    private static int[] offsets(String text) {
        int[] offsets = new int[text.codePointCount(0, text.length()) + 1];
        for (int at = 0, i = 0; at < text.length(); i++) {
            offsets[i] = at;
            at += Character.charCount(text.codePointAt(at));
        }
        offsets[offsets.length - 1] = text.length();
        return offsets;
    }

    /** The tree of a build file. */
    static Optional<Mapping> read(String text, Faults faults) {
        return read(text, Layout.VERSION + ": " + Layout.FORMAT_VERSION, faults);
    }

    /**
     * The root mapping; empty with the faults added. Faults of keys leave a tree to go on with.
     * @param firstLine with which such a file starts
     */
    static Optional<Mapping> read(String text, String firstLine, Faults faults) {
        TreeReader reader = new TreeReader(text, firstLine, faults);
        try {
            return reader.read();
        } catch (Unreadable stopped) {
            return Optional.empty();
        } catch (MarkedYamlEngineException broken) {
            SyntaxTrouble.report(broken, faults);
            return Optional.empty();
        } catch (YamlEngineException broken) {
            faults.add("the file cannot be read as key: value lines", "", "compare it with the example");
            return Optional.empty();
        }
    }

    private Optional<Mapping> read() throws Unreadable {
        events.next(); // start of the stream
        Event first = events.next();
        if (first.getEventId() == Event.ID.StreamEnd) {
            faults.add("the file is empty", "", "start it with the line '" + firstLine + "'");
            return Optional.empty();
        }
        Node root = node(events.next(), "", 1);
        Event after = events.next(); // end of the document
        if (events.next().getEventId() != Event.ID.StreamEnd) {
            faults.add(
                    place(after.getEndMark()),
                    "",
                    "",
                    "a second document starts here; one file holds one engine",
                    "",
                    "put another engine into its own file");
            return Optional.empty();
        }
        if (root instanceof Mapping map) {
            return usable ? Optional.of(map) : Optional.empty();
        }
        faults.add(
                root.place(),
                "",
                root instanceof Scalar scalar ? scalar.text() : "",
                "stands where lines of key: value are wanted",
                "",
                "start the file with the line '" + firstLine + "'");
        return Optional.empty();
    }

    private Node node(Event event, String path, int depth) throws Unreadable {
        Place place = place(event.getStartMark());
        if (++nodes > MOST_NODES) {
            faults.add(
                    place,
                    path,
                    "",
                    "the file has more than " + MOST_NODES + " keys and values",
                    "",
                    "check that this is the build file");
            throw new Unreadable();
        }
        if (depth > DEEPEST) {
            faults.add(
                    place,
                    path,
                    "",
                    "lists and sections stand more than " + DEEPEST + " deep in one another",
                    "at most 4 are ever needed",
                    "check the brackets and the indentation");
            throw new Unreadable();
        }
        if (event instanceof NodeEvent marked) {
            refuseAnchor(marked, place, path);
        }
        if (event instanceof ScalarEvent scalar) {
            return scalar(scalar, path);
        }
        if (event instanceof CollectionStartEvent start) {
            refuseTag(start.getTag(), place, path);
            return event instanceof MappingStartEvent ? mapping(start, path, depth) : sequence(start, path, depth);
        }
        usable = false; // an alias, refused above
        return new Scalar("", true, place, offset(event.getStartMark()), offset(event.getEndMark()));
    }

    private Scalar scalar(ScalarEvent event, String path) {
        Place place = place(event.getStartMark());
        refuseTag(event.getTag(), place, path);
        String value = event.getValue();
        if (value.length() > PlainText.LONGEST_SCALAR) {
            faults.add(
                    place,
                    path,
                    value,
                    "has " + value.length() + " characters",
                    "at most " + PlainText.LONGEST_SCALAR,
                    "keep long texts in a file beside this one");
            value = "";
            usable = false;
        }
        Optional<String> invisible = value.codePoints()
                .filter(c -> PlainText.isInvisible(c) || c == '\t')
                .mapToObj(c -> String.format(Locale.ROOT, "U+%04X", c))
                .findFirst();
        if (invisible.isPresent()) {
            faults.add(
                    place,
                    path,
                    value,
                    "holds the invisible character " + invisible.get() + ", written as an escape",
                    "plain text",
                    "leave the backslash out or write two of them");
        }
        int start = offset(event.getStartMark());
        int end = offset(event.getEndMark());
        while (end > start && Character.isWhitespace(text.charAt(end - 1))) {
            end--; // a block of text ends with its last line
        }
        return new Scalar(value, event.isPlain(), place, start, end);
    }

    private Mapping mapping(CollectionStartEvent start, String path, int depth) throws Unreadable {
        Map<String, Entry> entries = new LinkedHashMap<>();
        Event event = events.next();
        int end = offset(start.getEndMark());
        while (event.getEventId() != Event.ID.MappingEnd) {
            Node key = node(event, path, depth + 1);
            Scalar name = key instanceof Scalar scalar ? scalar : null;
            String valuePath = name == null ? path : within(path, name.text());
            Node value = node(events.next(), valuePath, depth + 1);
            end = Math.max(end, Math.max(key.end(), value.end()));
            if (name != null && isKey(name, valuePath, value, entries.get(name.text()))) {
                entries.put(name.text(), new Entry(name, value));
            } else if (name == null) {
                faults.add(key.place(), path, "", key.plainName() + " cannot be a key", "", "write key: value");
            }
            event = events.next();
        }
        end = start.isFlow() ? offset(event.getEndMark()) : end;
        return new Mapping(
                List.copyOf(entries.values()),
                start.isFlow(),
                place(start.getStartMark()),
                offset(start.getStartMark()),
                end);
    }

    private boolean isKey(Scalar key, String path, Node value, @Nullable Entry earlier) {
        if (key.text().isBlank()) {
            faults.add(key.place(), path, "", "an empty key stands here", "", "write key: value");
            return false;
        }
        if (key.plain() && key.text().equals("<<")) {
            faults.add(
                    key.place(),
                    path,
                    "<<",
                    "is a merge key, which would fill in values that nobody can see on the page",
                    "",
                    "write the values out");
            return false;
        }
        if (earlier != null) {
            faults.add(
                    key.place(),
                    path,
                    key.text(),
                    "stands twice: here and on line " + earlier.key().place().line(),
                    "each key once",
                    value instanceof Mapping section && !section.entries().isEmpty()
                            ? "put what stands below this one under the other" + settingOf(section, path)
                            : "keep one; if both were measured, write a list: " + Faults.shown(key.text())
                                    + ": [first, second]");
            return false;
        }
        return true;
    }

    /** How to bring the first value of a section that stands twice into the file without looking for its place. */
    private static String settingOf(Mapping section, String path) {
        Entry first = section.entries().get(0);
        String at = within(path, first.key().text());
        if (first.value() instanceof Mapping below && !below.entries().isEmpty()) {
            return settingOf(below, at);
        }
        return first.value() instanceof Scalar scalar && !scalar.isEmpty()
                ? ", or delete this one and call: longthrow set FILE " + Faults.shown(at) + " '"
                        + Faults.shown(scalar.text()) + "'"
                : "";
    }

    private Sequence sequence(CollectionStartEvent start, String path, int depth) throws Unreadable {
        List<Node> items = new ArrayList<>();
        Event event = events.next();
        int end = offset(start.getEndMark());
        while (event.getEventId() != Event.ID.SequenceEnd) {
            Node item = node(event, path + "[" + (items.size() + 1) + "]", depth + 1);
            items.add(item);
            end = Math.max(end, item.end());
            event = events.next();
        }
        end = start.isFlow() ? offset(event.getEndMark()) : end;
        return new Sequence(
                List.copyOf(items), start.isFlow(), place(start.getStartMark()), offset(start.getStartMark()), end);
    }

    private void refuseAnchor(NodeEvent event, Place place, String path) {
        event.getAnchor().ifPresent(anchor -> {
            boolean alias = event instanceof AliasEvent;
            faults.add(
                    place,
                    path,
                    (alias ? "*" : "&") + anchor.getValue(),
                    "is " + (alias ? "a reference to" : "a mark for")
                            + " another place of the file; one reading stands in one place",
                    "",
                    (alias ? "write the value out" : "leave it out")
                            + ", or put the text in quotation marks if it is meant as words");
        });
    }

    private void refuseTag(Optional<String> tag, Place place, String path) {
        tag.ifPresent(name -> faults.add(
                place,
                path,
                name,
                "is a type tag; in a build file everything is text",
                "",
                "leave it out, or put the text in quotation marks if it is meant as words"));
    }

    static String within(String path, String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    private static Place place(Optional<Mark> mark) {
        return mark.map(m -> new Place(m.getLine() + 1, m.getColumn() + 1)).orElse(Place.NOWHERE);
    }

    private int offset(Optional<Mark> mark) {
        int index = mark.map(Mark::getIndex).orElse(0);
        return offsets == null ? index : offsets[Math.min(index, offsets.length - 1)];
    }
}
