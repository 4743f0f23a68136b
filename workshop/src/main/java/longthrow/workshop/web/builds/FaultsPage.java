package longthrow.workshop.web.builds;

import java.util.List;
import longthrow.workshop.web.Frame;

/** A file that was not taken, with all that is wrong with it. */
public record FaultsPage(Frame frame, String file, List<String> faults) {
    public FaultsPage {
        faults = List.copyOf(faults);
    }
}
