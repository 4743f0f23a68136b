package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.term.Part;

/**
 * One value of a text changed, all else left as it stands. The places of the tree's nodes say where to cut; afterwards the
 * text is read again, and only if nothing but that value differs is it handed out.
 */
final class Surgery {
    private final String path;
    private final String newValue;
    private final Faults faults = new Faults();
    private final String original;
    private final String lineBreak;

    /**
     * Where the search for the path ended.
     * @param rest keys still to be added; empty when the entry is there
     */
    private record Spot(Mapping within, String withinPath, Optional<Entry> entry, String rest) {}

    Surgery(String text, String path, String newValue) {
        this.original = text;
        this.path = path;
        this.newValue = newValue.strip();
        this.lineBreak = text.contains("\r\n") ? "\r\n" : "\n";
    }

    Edited result() {
        Optional<String> text = PlainText.check(original, faults);
        Optional<Mapping> before = text.flatMap(t -> TreeReader.read(t, faults));
        Optional<Node> value = value();
        refuseKeyWithoutSection();
        if (!faults.isEmpty() || before.isEmpty() || value.isEmpty() || text.isEmpty()) {
            return new Edited(Optional.empty(), faults.all());
        }
        String changed = changed(text.get(), before.get(), value.get());
        if (!faults.isEmpty()) {
            return new Edited(Optional.empty(), faults.all());
        }
        Faults ofChanged = new Faults();
        Optional<Mapping> tree =
                PlainText.check(changed, ofChanged).flatMap(plain -> TreeReader.read(plain, ofChanged));
        ReadBuild read = BuildFile.read(ofChanged, tree);
        if (!read.faults().isEmpty()) {
            return new Edited(
                    Optional.empty(),
                    read.faults().stream().map(Surgery::withoutLine).toList());
        }
        boolean clean = tree.filter(after -> differsOnlyHere(before.get(), after, path, value.get()))
                .isPresent();
        if (!clean) {
            faults.add(
                    Place.NOWHERE,
                    path,
                    newValue,
                    "cannot be put there without touching something else",
                    "",
                    "edit the file by hand");
            return new Edited(Optional.empty(), faults.all());
        }
        String mark = original.substring(0, original.length() - text.get().length()); // a byte order mark stays
        return new Edited(Optional.of(mark + changed), List.of(), Optional.of(read));
    }

    /** Its line counts in the changed text, which nobody gets to see. */
    static Fault withoutLine(Fault fault) {
        return new Fault(0, 0, fault.path(), fault.found(), fault.why(), fault.allowed(), fault.mend());
    }

    /** A key without its section would be added on the top level, where it is refused with a cure for a file. */
    private void refuseKeyWithoutSection() {
        List<String> full = Arrays.stream(Part.values())
                .filter(part -> Layout.keys(part).contains(path))
                .map(part -> TreeReader.within(part.key(), path))
                .toList();
        if (!Layout.TOP_LEVEL.contains(path) && !full.isEmpty()) {
            faults.add(
                    Place.NOWHERE,
                    path,
                    "",
                    "says no section",
                    String.join(", ", full),
                    "write " + String.join(" or ", full));
        }
    }

    /** The new value as a node of its own. */
    private Optional<Node> value() {
        String line = "value: " + newValue;
        if (newValue.isEmpty() || newValue.indexOf('\n') >= 0 || newValue.indexOf('\r') >= 0) {
            faults.add(
                    Place.NOWHERE,
                    path,
                    newValue,
                    "is not one line of text",
                    "",
                    "write 'unknown' to take a figure out");
            return Optional.empty();
        }
        Faults own = new Faults();
        Optional<Node> node = PlainText.check(line, own)
                .flatMap(t -> TreeReader.read(t, own))
                .filter(map -> map.entries().size() == 1)
                .map(map -> map.entries().get(0).value())
                .filter(n -> n.end() == line.length());
        if (node.isEmpty()) {
            String why = own.all().stream().findFirst().map(Fault::why).orElse("is not one value");
            faults.add(Place.NOWHERE, path, newValue, why, "", "put words that hold : # [ ] { } in quotation marks");
        }
        return node;
    }

    private String changed(String text, Mapping root, Node value) {
        Spot spot = find(root, "", path);
        if (spot.entry().isPresent() && spot.rest().isEmpty()) {
            return replaced(text, spot.entry().get(), spot.within().flow() ? inFlow(value) : newValue);
        }
        if (spot.entry().isPresent()) {
            return addedBelow(text, spot.entry().get(), spot.rest());
        }
        return spot.within().flow() ? addedInBraces(text, spot, inFlow(value)) : addedAsLine(text, spot);
    }

    /** Goes down as far as keys are there. Keys may hold points themselves, as those of aims do. */
    private static Spot find(Mapping map, String mapPath, String rest) {
        for (Entry entry : map.entries()) {
            String key = entry.key().text();
            if (rest.equals(key)) {
                return new Spot(map, mapPath, Optional.of(entry), "");
            }
            if (rest.startsWith(key + ".")) {
                String below = rest.substring(key.length() + 1);
                return entry.value() instanceof Mapping section
                        ? find(section, TreeReader.within(mapPath, key), below)
                        : new Spot(map, mapPath, Optional.of(entry), below);
            }
        }
        return new Spot(map, mapPath, Optional.empty(), rest);
    }

    /** In braces a comma would end a plain text. */
    private String inFlow(Node value) {
        return value instanceof Scalar scalar && scalar.plain() ? Scalars.write(scalar.text(), true) : newValue;
    }

    // ---- a value that is there

    private static String replaced(String text, Entry entry, String with) {
        Node old = entry.value();
        int keyLineEnd = lineEnd(text, entry.key().end());
        if (old instanceof Scalar scalar && scalar.isEmpty()) {
            int colon = text.indexOf(':', entry.key().end());
            return text.substring(0, colon + 1) + " " + with + text.substring(colon + 1);
        }
        if (old.start() <= keyLineEnd) {
            String remarks = remarks(text, old, lineStart(text, entry.key().start()), old.start());
            int end = lineEnd(text, old.end());
            return text.substring(0, old.start())
                    + with
                    + withoutLineToWriteOn(text.substring(old.end(), end))
                    + remarks
                    + text.substring(end);
        }
        int colon = text.indexOf(':', entry.key().end());
        String remarks = remarks(text, old, keyLineEnd, keyLineEnd);
        int end = lineEnd(text, old.end());
        String behind = text.substring(old.end(), end); // a remark behind the last line of the old value
        String last =
                behind.isBlank() ? "" : lineBreak(text) + " ".repeat(old.place().column() - 1) + behind.strip();
        return text.substring(0, colon + 1) + " " + with + text.substring(colon + 1, keyLineEnd) + remarks + last
                + text.substring(end);
    }

    /** The empty line of a printed sheet, with or without its unit, says nothing once the value stands there. */
    private static String withoutLineToWriteOn(String behind) {
        return behind.matches(" *# _{4,}( [^ ]+)? *") ? "" : behind;
    }

    /** Remarks inside the old value, each on a line of its own, so that none is lost. */
    private static String remarks(String text, Node old, int from, int countFrom) {
        StringBuilder remarks = new StringBuilder();
        List<Scalar> leaves = leaves(old, new ArrayList<>());
        int at = Math.max(from, 0);
        while (at < old.end()) {
            int end = lineEnd(text, at);
            int hash = remarkOn(text, at, end, leaves);
            if (hash >= countFrom && hash < old.end()) {
                remarks.append(lineBreak(text))
                        .append(" ".repeat(Math.max(old.place().column() - 1, 0)))
                        .append(text, hash, end);
            }
            at = end + (text.startsWith("\r\n", end) ? 2 : 1);
        }
        return remarks.toString();
    }

    /** Where the remark of a line starts; -1 when it has none. */
    private static int remarkOn(String text, int start, int end, List<Scalar> leaves) {
        for (int at = start; at < end; at++) {
            boolean opens = text.charAt(at) == '#' && (at == start || text.charAt(at - 1) == ' ');
            int here = at;
            if (opens && leaves.stream().noneMatch(leaf -> leaf.start() <= here && here < leaf.end())) {
                return at;
            }
        }
        return -1;
    }

    private static List<Scalar> leaves(Node node, List<Scalar> into) {
        if (node instanceof Scalar scalar) {
            into.add(scalar);
        } else if (node instanceof Sequence list) {
            list.items().forEach(item -> leaves(item, into));
        } else {
            ((Mapping) node).entries().forEach(entry -> {
                into.add(entry.key());
                leaves(entry.value(), into);
            });
        }
        return into;
    }

    // ---- a key that is not there yet

    /** Under a key behind which nothing stands. */
    private String addedBelow(String text, Entry entry, String rest) {
        if (!(entry.value() instanceof Scalar scalar) || !scalar.isEmpty()) {
            faults.add(
                    entry.value().place(),
                    path,
                    "",
                    "'" + entry.key().text() + "' holds " + entry.value().plainName()
                            + ", so nothing can be added below it",
                    "",
                    "edit the file by hand");
            return text;
        }
        int end = lineEnd(text, entry.key().end());
        return insertLine(text, end, lines(rest, entry.key().place().column() + 1, ""));
    }

    private String addedAsLine(String text, Spot spot) {
        Mapping map = spot.within();
        int indent = map.entries().get(0).key().place().column() - 1;
        Optional<Entry> before = predecessor(spot);
        String lines = lines(spot.rest(), indent, spot.withinPath());
        if (before.isEmpty()) {
            int start = lineStart(text, map.entries().get(0).key().start());
            return text.substring(0, start) + lines + lineBreak + text.substring(start);
        }
        Entry entry = before.get();
        int end = lineEnd(text, Math.max(entry.key().end(), entry.value().end()));
        return insertLine(text, spot.withinPath().isEmpty() ? behindRemarksOfSection(text, end) : end, lines);
    }

    /** The entry after which the new key stands: the last of those that come before it in the order of the format. */
    private static Optional<Entry> predecessor(Spot spot) {
        List<Entry> entries = spot.within().entries();
        List<String> order = Layout.order(spot.withinPath());
        int place = order.indexOf(firstKey(spot.rest(), spot.withinPath()));
        if (place < 0) {
            return Optional.of(entries.get(entries.size() - 1));
        }
        return entries.stream()
                .filter(e -> order.indexOf(e.key().text()) < place)
                .reduce((a, b) ->
                        order.indexOf(a.key().text()) > order.indexOf(b.key().text()) ? a : b);
    }

    /** Indented remarks behind the last line of a section belong to it. */
    private static int behindRemarksOfSection(String text, int lineEnd) {
        int end = lineEnd;
        while (end < text.length()) {
            int start = end + (text.startsWith("\r\n", end) ? 2 : 1);
            if (start >= text.length() || text.charAt(start) != ' ') {
                return end;
            }
            int next = lineEnd(text, start);
            if (!text.substring(start, next).strip().startsWith("#")) {
                return end;
            }
            end = next;
        }
        return end;
    }

    private String addedInBraces(String text, Spot spot, String value) {
        Mapping map = spot.within();
        String[] keys = keys(spot.rest(), spot.withinPath());
        StringBuilder pair = new StringBuilder();
        for (int i = 0; i < keys.length; i++) {
            pair.append(i == 0 ? "" : "{").append(keys[i]).append(": ");
        }
        pair.append(value).append("}".repeat(keys.length - 1));
        if (map.entries().isEmpty()) {
            return text.substring(0, map.start() + 1) + pair + text.substring(map.start() + 1);
        }
        int end = map.entries().get(map.entries().size() - 1).value().end();
        return text.substring(0, end) + ", " + pair + text.substring(end);
    }

    private String lines(String rest, int indent, String withinPath) {
        String[] keys = keys(rest, withinPath);
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < keys.length; i++) {
            lines.append(" ".repeat(indent + 2 * i)).append(keys[i]).append(':');
            lines.append(i == keys.length - 1 ? " " + newValue : lineBreak);
        }
        return lines.toString();
    }

    private static String firstKey(String rest, String withinPath) {
        return keys(rest, withinPath)[0];
    }

    /** The keys of aims hold a point; all others part at it. */
    private static String[] keys(String rest, String withinPath) {
        if (withinPath.equals(Layout.AIMS)) {
            return new String[] {rest};
        }
        return rest.startsWith(Layout.AIMS + ".")
                ? new String[] {Layout.AIMS, rest.substring(Layout.AIMS.length() + 1)}
                : rest.split("\\.", -1);
    }

    private String insertLine(String text, int at, String lines) {
        return text.substring(0, at) + lineBreak + lines + text.substring(at);
    }

    static String lineBreak(String text) {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    static int lineEnd(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return end;
    }

    static int lineStart(String text, int from) {
        int start = from;
        while (start > 0 && text.charAt(start - 1) != '\n' && text.charAt(start - 1) != '\r') {
            start--;
        }
        return start;
    }

    // ---- proof

    /** Whether the second tree is the first with the value at the path, and nothing else added, lost or moved. */
    private static boolean differsOnlyHere(Mapping before, Mapping after, String path, Node value) {
        List<String> was = flat(before, "", new ArrayList<>());
        List<String> is = flat(after, "", new ArrayList<>());
        List<String> wanted = flat(value, path, new ArrayList<>());
        was.removeIf(line -> isAt(line, path));
        List<String> here = new ArrayList<>(is);
        here.removeIf(line -> !isAt(line, path));
        is.removeIf(line -> isAt(line, path));
        return here.equals(wanted) && is.equals(was);
    }

    private static boolean isAt(String line, String path) {
        return line.startsWith(path + "\n") || line.startsWith(path + ".") || line.startsWith(path + "[");
    }

    /** Every leaf as its path, a line break, its text; an empty section that gets its first key is no difference. */
    static List<String> flat(Node node, String path, List<String> into) {
        if (node instanceof Scalar scalar) {
            if (!scalar.isEmpty()) {
                into.add(path + "\n" + scalar.text());
            }
        } else if (node instanceof Sequence list) {
            List<Node> items = list.items();
            for (int i = 0; i < items.size(); i++) {
                flat(items.get(i), path + "[" + i + "]", into);
            }
        } else {
            ((Mapping) node)
                    .entries()
                    .forEach(
                            e -> flat(e.value(), TreeReader.within(path, e.key().text()), into));
        }
        return into;
    }
}
