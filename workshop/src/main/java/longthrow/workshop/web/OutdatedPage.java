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
 */
public record OutdatedPage(
        Frame frame,
        String action,
        String back,
        String mine,
        int based,
        int latest,
        List<Difference.Line> difference,
        List<Field> fields) {
    public OutdatedPage {
        difference = List.copyOf(difference);
        fields = List.copyOf(fields);
    }

    /** A field of the form that was sent. */
    public record Field(String name, String value) {}
}
