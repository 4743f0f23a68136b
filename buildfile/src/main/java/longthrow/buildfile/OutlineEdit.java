package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Sequence;
import longthrow.core.build.Build;
import longthrow.core.build.TracedOutline;
import longthrow.core.term.OutlinedPart;

/**
 * The outline of one part put in, changed or taken out, all else left as it stands. Afterwards the text is read again, and only if it gives the same build with
 * nothing but that outline different is it handed out.
 */
final class OutlineEdit {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String mark;
    private final String original;
    private final OutlinedPart part;
    private final Optional<TracedOutline> wanted;

    OutlineEdit(String text, OutlinedPart part, Optional<TracedOutline> wanted) {
        this.mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
        this.original = text.substring(mark.length());
        this.part = part;
        this.wanted = wanted;
    }

    Edited result() {
        ReadBuild read = BuildFile.read(original);
        if (read.build().isEmpty()) {
            return new Edited(Optional.empty(), read.faults());
        }
        Build before = read.build().get();
        List<TracedOutline> after = new ArrayList<>(before.outlines());
        int at = before.outline(part).map(before.outlines()::indexOf).orElse(-1);
        if (at < 0 && wanted.isEmpty()) {
            return new Edited(Optional.of(mark + original), List.of());
        }
        if (at < 0) {
            after.add(wanted.orElseThrow());
        } else if (wanted.isPresent()) {
            after.set(at, wanted.get());
        } else {
            after.remove(at);
        }
        if (after.equals(before.outlines())) {
            return new Edited(Optional.of(mark + original), List.of());
        }
        Optional<String> changed = changed(original, at, after);
        if (changed.isEmpty()) {
            return refused("has remarks in it, which would be lost");
        }
        ReadBuild again = BuildFile.read(changed.get());
        if (!again.faults().isEmpty()) {
            return new Edited(
                    Optional.empty(),
                    again.faults().stream().map(Surgery::withoutLine).toList());
        }
        boolean clean = again.build().filter(before.withOutlines(after)::equals).isPresent()
                && remarks(original) == remarks(changed.get());
        return clean
                ? new Edited(changed.map(mark::concat), List.of(), Optional.of(again))
                : refused("cannot be changed without touching something else");
    }

    private Optional<String> changed(String text, int at, List<TracedOutline> after) {
        Optional<Entry> entry = entry(text);
        if (entry.isEmpty()) {
            String placed = BuildFile.edit(text, Layout.OUTLINES, "[]").text().orElse(text);
            return entry(placed).map(there -> whole(placed, there, after));
        }
        boolean isBlock = entry.get().value() instanceof Sequence list
                && !list.flow()
                && !list.items().isEmpty()
                && entry.get().key().place().column() == 1;
        if (!isBlock || after.isEmpty()) {
            return hasRemark(text, entry.get().key().start(), entry.get().value())
                    ? Optional.empty()
                    : Optional.of(whole(text, entry.get(), after));
        }
        List<Node> items = ((Sequence) entry.get().value()).items();
        if (at < 0) {
            int end = Surgery.lineEnd(text, items.get(items.size() - 1).end());
            return Optional.of(text.substring(0, end)
                    + Surgery.lineBreak(text)
                    + item(text, items.get(0), after.get(after.size() - 1))
                    + text.substring(end));
        }
        Node item = items.get(at);
        if (hasRemark(text, item.start(), item)) {
            return Optional.empty();
        }
        int from = Surgery.lineStart(text, item.start());
        int end = Surgery.lineEnd(text, item.end());
        if (wanted.isPresent()) {
            return Optional.of(text.substring(0, from) + item(text, item, wanted.get()) + text.substring(end));
        }
        return Optional.of(text.substring(0, from) + text.substring(nextLine(text, end)));
    }

    private static Optional<Entry> entry(String text) {
        return TreeReader.read(text, new Faults())
                .flatMap(root -> root.entries().stream()
                        .filter(e -> e.key().text().equals(Layout.OUTLINES))
                        .findFirst());
    }

    /** The whole section anew; nothing of it where no outline is left. */
    private static String whole(String text, Entry entry, List<TracedOutline> after) {
        int from = Surgery.lineStart(text, entry.key().start());
        int end =
                Surgery.lineEnd(text, Math.max(entry.value().end(), entry.key().end()));
        if (after.isEmpty()) {
            return text.substring(0, from) + text.substring(nextLine(text, end));
        }
        StringBuilder section = new StringBuilder(Layout.OUTLINES + ":\n");
        after.forEach(outline -> section.append(BuildWriter.outline(outline)));
        return text.substring(0, from) + lines(text, section.toString(), 0) + text.substring(end);
    }

    /** An item indented as another one of the list. */
    private static String item(String text, Node like, TracedOutline outline) {
        int dash = text.substring(Surgery.lineStart(text, like.start()), like.start())
                .indexOf('-');
        return lines(text, BuildWriter.outline(outline), dash - 2);
    }

    /** With the line ends of the text, without the last, so much farther in. */
    private static String lines(String text, String block, int farther) {
        List<String> lines = block.lines()
                .map(line -> farther >= 0
                        ? " ".repeat(farther) + line
                        : line.substring(Math.min(
                                -farther, line.length() - line.stripLeading().length())))
                .toList();
        return String.join(Surgery.lineBreak(text), lines);
    }

    private static int nextLine(String text, int end) {
        return end + (text.startsWith("\r\n", end) ? 2 : end < text.length() ? 1 : 0);
    }

    private static boolean hasRemark(String text, int from, Node until) {
        return text.substring(from, Surgery.lineEnd(text, until.end())).indexOf('#') >= 0;
    }

    private static long remarks(String text) {
        return text.chars().filter(c -> c == '#').count();
    }

    private Edited refused(String why) {
        Faults faults = new Faults();
        faults.add(Place.NOWHERE, Layout.OUTLINES, part.key(), why, "", "change it in the text of the build");
        return new Edited(Optional.empty(), faults.all());
    }
}
