package longthrow.workshop.web.builds;

import java.util.List;
import longthrow.workshop.web.Difference;
import longthrow.workshop.web.Frame;

/**
 * What is different between two revisions of a build.
 * @param moved in quantities and answers
 * @param lines of the text
 */
public record ComparePage(
        Frame frame,
        String base,
        String key,
        int from,
        int to,
        String fromSaved,
        String toSaved,
        Moved moved,
        List<Difference.Line> lines) {
    public ComparePage {
        lines = List.copyOf(lines);
    }
}
