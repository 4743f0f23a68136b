package longthrow.buildfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import longthrow.buildfile.Node.Place;
import longthrow.core.quantity.Parsed;

/** Collects what is wrong and what was understood while one file is read. */
final class Faults {
    /** More than anybody mends in one go; the rest is counted. */
    private static final int MOST = 100;
    /** Longest piece of the file that is said back. */
    private static final int MOST_SHOWN = 40;

    private final List<Fault> faults = new ArrayList<>();
    private final List<Note> notes = new ArrayList<>();
    private int leftOut;

    void add(Place place, String path, String found, String why, String allowed, String mend) {
        if (faults.size() < MOST) {
            faults.add(new Fault(place.line(), place.column(), shown(path, 120), shown(found), why, allowed, mend));
        } else {
            leftOut++;
        }
    }

    /** Whether a further fault would only be counted, so that no cure need be sought for it. */
    boolean isFull() {
        return faults.size() >= MOST;
    }

    /** Of the whole file. */
    void add(String why, String allowed, String mend) {
        add(Place.NOWHERE, "", "", why, allowed, mend);
    }

    void add(Place place, String path, Parsed.Refused refused) {
        add(place, path, refused.found(), refused.why(), refused.allowed(), refused.mend());
    }

    void note(Place place, String path, String text) {
        if (notes.size() < MOST) {
            notes.add(new Note(place.line(), shown(path, 120), text));
        }
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    int count() {
        return faults.size() + leftOut;
    }

    /** In the order of the file. */
    List<Fault> all() {
        List<Fault> all = new ArrayList<>(faults);
        all.sort(Comparator.comparingInt(Fault::line).thenComparingInt(Fault::column));
        if (leftOut > 0) {
            all.add(new Fault(0, 0, "", "", leftOut + " more faults were found", "", "mend the ones above first"));
        }
        return all;
    }

    List<Note> notes() {
        return notes;
    }

    static String shown(String text) {
        return shown(text, MOST_SHOWN);
    }

    /** Shortened, control characters made visible. */
    private static String shown(String text, int most) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().limit(most).forEach(c -> {
            if (PlainText.isInvisible(c) || c == '\n' || c == '\t') {
                shown.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                shown.appendCodePoint(c);
            }
        });
        return text.codePointCount(0, text.length()) > most ? shown + "…" : shown.toString();
    }
}
