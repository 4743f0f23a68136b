package longthrow.workshop.web.measure;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * The build file itself, to be looked at and changed: everything that has no field of its own.
 * @param based  revision that the change was begun on
 * @param text   as it stands, or as it was sent and not taken
 * @param faults of the text
 * @param key    of the edit, for once
 */
public record TextPage(Frame frame, String action, int based, String text, List<String> faults, String key) {
    public TextPage {
        faults = List.copyOf(faults);
    }
}
