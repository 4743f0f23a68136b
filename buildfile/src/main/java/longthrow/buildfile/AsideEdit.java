package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.Node.Entry;
import longthrow.buildfile.Node.Mapping;
import longthrow.buildfile.Node.Place;
import longthrow.buildfile.Node.Sequence;

/**
 * A run of a sheet set aside, or counted again; all else is left as it stands, remarks too. Afterwards the text is read again, and only if nothing but that
 * word differs is it handed out.
 */
final class AsideEdit {
    private static final String KEY = "aside";

    private final String original;
    private final int session;
    private final int run;
    private final String why;
    private final Faults faults = new Faults();

    AsideEdit(String text, int session, int run, String why) {
        this.original = text;
        this.session = session;
        this.run = run;
        this.why = why.strip();
    }

    Edited result() {
        Optional<String> text = PlainText.check(original, faults);
        Optional<Mapping> before = text.flatMap(t -> DynoSheetFile.tree(t, faults));
        Optional<Mapping> item = before.flatMap(this::item);
        if (why.chars().anyMatch(Character::isISOControl)) {
            refuse("is not one line of text", "write it on one line, without tabs");
        } else if (why.length() > PlainText.LONGEST_SCALAR || why.codePoints().anyMatch(PlainText::isInvisible)) {
            refuse("holds signs that cannot be seen, or too many", "write it in a few plain words");
        } else if (faults.isEmpty() && item.isEmpty()) {
            refuse("is written of a run that is not in the sheet", "load the page again");
        }
        if (!faults.isEmpty()) {
            return new Edited(Optional.empty(), faults.all());
        }
        String changed = changed(text.orElseThrow(), item.orElseThrow());
        ReadDynoSheet read = DynoSheetFile.read(changed);
        Optional<Mapping> after = DynoSheetFile.tree(changed, new Faults());
        boolean isClean = read.faults().isEmpty()
                && after.filter(a -> differsOnlyHere(before.orElseThrow(), a)).isPresent();
        if (!isClean) {
            refuse("cannot be put there without touching something else", "edit the sheet and send it again");
            return new Edited(Optional.empty(), faults.all());
        }
        String mark = original.substring(0, original.length() - text.get().length()); // a byte order mark stays
        return new Edited(Optional.of(mark + changed), List.of());
    }

    private void refuse(String what, String mend) {
        faults.add(Place.NOWHERE, path(), why, what, "", mend);
    }

    private String path() {
        return "sessions[" + session + "].runs[" + run + "]." + KEY;
    }

    private Optional<Mapping> item(Mapping root) {
        return value(root, "sessions")
                .flatMap(list -> at(list, session))
                .flatMap(s -> value(s, "runs"))
                .flatMap(list -> at(list, run))
                .filter(Mapping.class::isInstance)
                .map(Mapping.class::cast)
                .filter(m -> !m.entries().isEmpty());
    }

    private static Optional<Node> value(Node of, String key) {
        return of instanceof Mapping map
                ? map.entries().stream()
                        .filter(e -> e.key().text().equals(key))
                        .map(Entry::value)
                        .findFirst()
                : Optional.empty();
    }

    private static Optional<Node> at(Node list, int place) {
        return list instanceof Sequence items
                        && place >= 0
                        && place < items.items().size()
                ? Optional.of(items.items().get(place))
                : Optional.empty();
    }

    private String changed(String text, Mapping item) {
        Optional<Entry> there =
                item.entries().stream().filter(e -> e.key().text().equals(KEY)).findFirst();
        if (there.isPresent()) {
            return why.isEmpty() ? without(text, item, there.get()) : replaced(text, there.get(), item.flow());
        }
        if (why.isEmpty()) {
            return text;
        }
        String words = KEY + ": " + Scalars.write(why, item.flow());
        Entry first = item.entries().get(0);
        int start = first.key().start();
        if (item.flow()) {
            int end = item.entries().get(item.entries().size() - 1).value().end();
            return text.substring(0, end) + ", " + words + text.substring(end);
        }
        String indent = " ".repeat(first.key().place().column() - 1);
        return text.substring(0, start) + words + Surgery.lineBreak(text) + indent + text.substring(start);
    }

    private String replaced(String text, Entry entry, boolean inBraces) {
        String words = Scalars.write(why, inBraces);
        Node old = entry.value();
        int from = text.indexOf(':', entry.key().end()) + 1;
        return text.substring(0, from) + " " + words + text.substring(Math.max(from, old.end()));
    }

    /** Taken out where it stands alone; else left empty, which says the same and loses no remark. */
    private static String without(String text, Mapping item, Entry entry) {
        int at = item.entries().indexOf(entry);
        boolean isFirst = at == 0;
        boolean isLast = at == item.entries().size() - 1;
        int end = Math.max(entry.key().end(), entry.value().end());
        String cut;
        if (isFirst && isLast) {
            return emptied(text, entry);
        }
        if (isFirst) {
            int next = item.entries().get(1).key().start();
            cut = text.substring(0, entry.key().start()) + text.substring(next);
            return text.substring(end, next).indexOf('#') >= 0 ? emptied(text, entry) : cut;
        }
        int before = item.entries().get(at - 1).value().end();
        int from = item.flow() ? before : Surgery.lineStart(text, entry.key().start());
        int to = item.flow() ? end : Surgery.lineEnd(text, end);
        boolean losesARemark = text.substring(from, entry.key().start()).indexOf('#') >= 0
                || text.substring(end, to).indexOf('#') >= 0;
        if (losesARemark) {
            return emptied(text, entry);
        }
        int behind = item.flow() ? to : to + (text.startsWith("\r\n", to) ? 2 : to < text.length() ? 1 : 0);
        return text.substring(0, from) + text.substring(behind);
    }

    private static String emptied(String text, Entry entry) {
        int from = text.indexOf(':', entry.key().end()) + 1;
        return text.substring(0, from) + " \"\""
                + text.substring(Math.max(from, entry.value().end()));
    }

    private boolean differsOnlyHere(Mapping before, Mapping after) {
        List<String> was = Surgery.flat(before, "", new ArrayList<>());
        List<String> is = Surgery.flat(after, "", new ArrayList<>());
        String here = path() + "\n";
        List<String> now = is.stream().filter(line -> line.startsWith(here)).toList();
        was.removeIf(line -> line.startsWith(here));
        is.removeIf(line -> line.startsWith(here));
        boolean says =
                why.isEmpty() ? now.stream().allMatch(line -> line.equals(here)) : now.equals(List.of(here + why));
        return says && is.equals(was);
    }
}
