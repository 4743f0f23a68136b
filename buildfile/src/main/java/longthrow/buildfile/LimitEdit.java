package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Scalar;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.term.Term;

/**
 * One limit under {@code rules: keep:} added, changed or taken out, all else left as it stands. As in {@link Surgery} the text is read again
 * afterwards, and only if nothing but that limit differs is it handed out.
 */
final class LimitEdit {
    private static final String PATH = Layout.RULES + ".keep";
    private static final String TERM = "term";
    private static final String LEAST = "least";
    private static final String MOST = "most";

    private final String original;
    private final String name;
    private final Term term;
    private final String least;
    private final String most;

    LimitEdit(String text, String name, Term term, String least, String most) {
        this.original = text;
        this.name = name;
        this.term = term;
        this.least = least;
        this.most = most;
    }

    Edited result() {
        Faults faults = new Faults();
        Optional<String> text = PlainText.check(original, faults);
        Optional<Mapping> before = text.flatMap(t -> TreeReader.read(t, faults));
        if (before.isEmpty() || text.isEmpty() || !faults.isEmpty()) {
            return new Edited(Optional.empty(), faults.all());
        }
        Optional<Sequence> list = child(before.get(), Layout.RULES)
                .filter(Mapping.class::isInstance)
                .flatMap(rules -> child((Mapping) rules, "keep"))
                .filter(Sequence.class::isInstance)
                .map(Sequence.class::cast);
        int at = list.map(this::place).orElse(-1);
        boolean out = least.isEmpty() && most.isEmpty();
        if (out && at < 0) {
            return new Edited(Optional.of(original), List.of());
        }
        if (list.isEmpty() || list.get().items().isEmpty()) {
            return BuildFile.edit(original, PATH, "[" + item() + "]");
        }
        if (out && list.get().items().size() == 1) {
            return hasRemark(text.get(), list.get())
                    ? refused("has remarks in it, which would be lost")
                    : BuildFile.edit(original, PATH, "[]");
        }
        String changed = at < 0
                ? added(text.get(), list.get())
                : out ? takenOut(text.get(), list.get(), at) : changed(text.get(), list.get(), at);
        return proven(text.get(), changed, before.get(), at, out);
    }

    private static Optional<Node> child(Mapping map, String key) {
        return map.entries().stream()
                .filter(e -> e.key().text().equals(key))
                .map(Entry::value)
                .findFirst();
    }

    /** Which of the list is meant; -1 for none. */
    private int place(Sequence list) {
        for (int i = 0; i < list.items().size(); i++) {
            if (list.items().get(i) instanceof Mapping rule
                    && says(rule, Layout.NAME, name)
                    && says(rule, TERM, term.path())) {
                return i;
            }
        }
        return -1;
    }

    private static boolean says(Mapping rule, String key, String text) {
        return child(rule, key)
                .filter(n -> n instanceof Scalar scalar && scalar.text().strip().equals(text))
                .isPresent();
    }

    private String item() {
        return "{" + Layout.NAME + ": " + Scalars.write(name, true) + ", " + TERM + ": " + term.path()
                + (least.isEmpty() ? "" : ", " + LEAST + ": " + Scalars.write(least, true))
                + (most.isEmpty() ? "" : ", " + MOST + ": " + Scalars.write(most, true))
                + "}";
    }

    // ---- the three cuts

    private String added(String text, Sequence list) {
        Node last = list.items().get(list.items().size() - 1);
        if (list.flow()) {
            return text.substring(0, last.end()) + ", " + item() + text.substring(last.end());
        }
        int end = Surgery.lineEnd(text, last.end());
        return text.substring(0, end) + Surgery.lineBreak(text) + dash(text, last) + item() + text.substring(end);
    }

    /** What stands before an item on its line: room, the dash, room. */
    private static String dash(String text, Node item) {
        return text.substring(Surgery.lineStart(text, item.start()), item.start());
    }

    private String takenOut(String text, Sequence list, int at) {
        Node item = list.items().get(at);
        if (list.flow()) {
            boolean first = at == 0;
            int from = first ? item.start() : list.items().get(at - 1).end();
            int to = first ? list.items().get(1).start() : item.end();
            return text.substring(0, from) + text.substring(to);
        }
        int from = Surgery.lineStart(text, item.start());
        int to = Surgery.lineEnd(text, item.end());
        int next = to + (text.startsWith("\r\n", to) ? 2 : to < text.length() ? 1 : 0);
        return text.substring(0, from) + text.substring(next);
    }

    private String changed(String text, Sequence list, int at) {
        Mapping rule = (Mapping) list.items().get(at);
        String both = bound(text, rule, MOST, most);
        // the least stands before the most wherever both are there, or they are put there in that order
        return bound(both, again(both, at).orElse(rule), LEAST, least);
    }

    private static Optional<Mapping> again(String text, int at) {
        return TreeReader.read(text, new Faults())
                .flatMap(root -> child(root, Layout.RULES))
                .flatMap(rules -> child((Mapping) rules, "keep"))
                .map(list -> (Mapping) ((Sequence) list).items().get(at));
    }

    /** One of the two set, added or taken out of a rule. */
    private static String bound(String text, Mapping rule, String key, String wanted) {
        Optional<Entry> there =
                rule.entries().stream().filter(e -> e.key().text().equals(key)).findFirst();
        if (there.isPresent() && !wanted.isEmpty()) {
            Node old = there.get().value();
            return old instanceof Scalar same && same.text().strip().equals(wanted)
                    ? text
                    : text.substring(0, old.start()) + Scalars.write(wanted, true) + text.substring(old.end());
        }
        if (there.isPresent()) {
            int place = rule.entries().indexOf(there.get());
            int from = place == 0
                    ? there.get().key().start()
                    : rule.entries().get(place - 1).value().end();
            int to = place == 0
                    ? rule.entries().get(1).key().start()
                    : there.get().value().end();
            return text.substring(0, from) + text.substring(to);
        }
        if (wanted.isEmpty()) {
            return text;
        }
        Node behind = rule.entries().stream()
                .filter(e -> e.key().text().equals(TERM))
                .map(Entry::value)
                .findFirst()
                .orElseThrow();
        String pair = key + ": " + Scalars.write(wanted, true);
        if (rule.flow()) {
            return text.substring(0, behind.end()) + ", " + pair + text.substring(behind.end());
        }
        int end = Surgery.lineEnd(text, behind.end());
        return text.substring(0, end)
                + Surgery.lineBreak(text)
                + " ".repeat(rule.place().column() - 1)
                + pair
                + text.substring(end);
    }

    // ---- proof

    private Edited proven(String text, String changed, Mapping before, int at, boolean out) {
        List<Fault> left = BuildFile.read(changed).faults();
        if (!left.isEmpty()) {
            return new Edited(
                    Optional.empty(), left.stream().map(Surgery::withoutLine).toList());
        }
        boolean clean = remarks(text) == remarks(changed)
                && TreeReader.read(changed, new Faults())
                        .filter(after -> others(before, at).equals(others(after, out ? -1 : at < 0 ? last(after) : at)))
                        .isPresent();
        if (!clean) {
            return refused("cannot be changed without touching something else");
        }
        String mark = original.substring(0, original.length() - text.length()); // a byte order mark stays
        return new Edited(Optional.of(mark + changed), List.of());
    }

    private static int last(Mapping root) {
        return child(root, Layout.RULES)
                .flatMap(rules -> child((Mapping) rules, "keep"))
                .map(list -> ((Sequence) list).items().size() - 1)
                .orElse(-1);
    }

    /** Every leaf but the two bounds of the limit meant, and but the whole limit where it is new or goes; the place in the list does not count. */
    private List<String> others(Mapping root, int at) {
        List<String> all = new ArrayList<>();
        for (String leaf : Surgery.flat(root, "", new ArrayList<>())) {
            boolean here = at >= 0 && leaf.startsWith(PATH + "[" + at + "]");
            if (!here) {
                all.add(leaf.startsWith(PATH + "[") ? PATH + leaf.substring(leaf.indexOf(']')) : leaf);
            } else if (!isOfThis(leaf)) {
                all.add(PATH + leaf.substring(leaf.indexOf(']')));
            }
        }
        return all;
    }

    private static boolean isOfThis(String leaf) {
        String key = leaf.substring(leaf.indexOf(']') + 1, leaf.indexOf('\n'));
        return List.of("." + Layout.NAME, "." + TERM, "." + LEAST, "." + MOST).contains(key);
    }

    private static long remarks(String text) {
        return text.chars().filter(c -> c == '#').count();
    }

    private static boolean hasRemark(String text, Node node) {
        int end = Surgery.lineEnd(text, node.end());
        return text.substring(node.start(), end).indexOf('#') >= 0;
    }

    private Edited refused(String why) {
        Faults faults = new Faults();
        faults.add(Place.NOWHERE, PATH, name, why, "", "change it in the text of the build");
        return new Edited(Optional.empty(), faults.all());
    }
}
