package longthrow.workshop.web.dyno;

import java.util.List;
import java.util.Optional;
import longthrow.workshop.web.Frame;

/**
 * Was the gain real.
 * @param sheets  that are kept
 * @param logs    other files that are kept
 * @param chosen  the sheet that is shown; empty where none is kept
 * @param largest how much may be sent at once, in words
 */
public record DynoPage(Frame frame, List<Kept> sheets, List<Kept> logs, Optional<DynoAnswer> chosen, String largest) {
    public DynoPage {
        sheets = List.copyOf(sheets);
        logs = List.copyOf(logs);
    }

    /**
     * A file.
     * @param address where it is shown or fetched
     * @param about   its size, and since when it is kept
     * @param here    whether it is shown
     */
    public record Kept(String name, String address, String about, boolean here) {}
}
