package longthrow.workshop.web.dyno;

import java.util.List;
import java.util.Optional;
import longthrow.workshop.web.Frame;

/**
 * Was the gain real.
 * @param sheets  that are kept
 * @param logs    other files that are kept
 * @param versions of the sheet that is shown, without the one that counts, the newest first
 * @param chosen  the sheet that is shown; empty where none is kept
 * @param largest how much may be sent at once, in words
 * @param cautions before an engine runs on any bench
 */
public record DynoPage(
        Frame frame,
        List<Kept> sheets,
        List<Log> logs,
        List<Kept> versions,
        Optional<DynoAnswer> chosen,
        String largest,
        List<String> cautions) {
    public DynoPage {
        sheets = List.copyOf(sheets);
        logs = List.copyOf(logs);
        versions = List.copyOf(versions);
        cautions = List.copyOf(cautions);
    }

    /**
     * A file that is no sheet.
     * @param rows    address of its rows over time
     * @param unnamed whether no run of any sheet names it
     */
    public record Log(Kept file, String rows, boolean unnamed) {}

    /**
     * A file.
     * @param address where it is shown or fetched
     * @param about   its size, and since when it is kept
     * @param here    whether it is shown
     * @param version hash of its content
     */
    public record Kept(String name, String address, String about, boolean here, String version) {}
}
