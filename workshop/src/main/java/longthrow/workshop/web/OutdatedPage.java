package longthrow.workshop.web;

import java.util.List;

/**
 * An edit that was made on a build which has moved on since: what came in between, and the choice.
 * @param action where to send the edit once more
 * @param back   where what stands now is seen
 * @param mine   what the edit says, in words
 * @param based  the revision it was made on
 * @param latest the newest one
 * @param fields of the edit, to be sent once more
 * @param way    what sending it once more does to what came in between
 * @param both   of a whole text that goes together with what came in between: what is different from the newest with both in it; else empty
 */
public record OutdatedPage(
        Frame frame,
        String action,
        String back,
        String mine,
        int based,
        int latest,
        List<Difference.Line> difference,
        List<Field> fields,
        Way way,
        List<Difference.Line> both) {
    public OutdatedPage {
        difference = List.copyOf(difference);
        fields = List.copyOf(fields);
        both = List.copyOf(both);
    }

    /** What sending an edit once more does. */
    public enum Way {
        /** The edit changes its own place, and the rest stays as it came. */
        ON_TOP,
        /** A whole text in which both edits stand. */
        BOTH,
        /** A whole text that takes away what came in between. */
        OVERWRITE
    }

    /** A field of the form that was sent. */
    public record Field(String name, String value) {}
}
