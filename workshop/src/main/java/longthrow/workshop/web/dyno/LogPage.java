package longthrow.workshop.web.dyno;

import java.util.List;
import longthrow.core.answer.DynoRuns;
import longthrow.workshop.web.Frame;

/**
 * The rows of one log over time.
 * @param file    its name
 * @param sheet   that is looked at; empty where none is
 * @param back    address of the page Dyno
 * @param rows    how many of its lines are rows; why it cannot be read, where it cannot
 * @param seen    what is seen of it
 * @param columns as they are taken
 * @param listed  what was found in it
 * @param more    how many others there are
 * @param asks    what is asked of its columns
 */
public record LogPage(
        Frame frame,
        String file,
        String sheet,
        String back,
        String rows,
        LogSight seen,
        List<DynoRuns.Column> columns,
        List<String> listed,
        int more,
        LogAsks asks) {
    public LogPage {
        columns = List.copyOf(columns);
        listed = List.copyOf(listed);
    }
}
