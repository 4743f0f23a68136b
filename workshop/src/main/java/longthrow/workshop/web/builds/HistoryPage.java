package longthrow.workshop.web.builds;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * Every revision of a build, newest first.
 * @param base of the build's addresses
 * @param key  of a change made here, for once
 * @param undo whether there is something to take back
 */
public record HistoryPage(Frame frame, String base, String key, boolean undo, boolean isAway, List<Row> rows) {
    public HistoryPage {
        rows = List.copyOf(rows);
    }

    /**
     * A revision.
     * @param before number of the one before; 0 for the first
     */
    public record Row(int number, int before, String what, String saved, boolean latest) {}
}
