package longthrow.workshop.web.builds;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * Every revision of a build, newest first.
 * @param base of the build's addresses
 * @param key  of a change made here, for once
 * @param undo whether there is something to take back
 * @param damaged whether the newest revision cannot be read as it was saved, so that nothing is compared with it
 */
public record HistoryPage(
        Frame frame, String base, String key, boolean undo, boolean isAway, boolean damaged, List<Row> rows) {
    public HistoryPage {
        rows = List.copyOf(rows);
    }

    /**
     * A revision.
     * @param before  number of the one before; 0 for the first, or where that cannot be read
     * @param damaged whether it cannot be read as it was saved
     */
    public record Row(int number, int before, String what, String saved, boolean latest, boolean damaged) {}
}
