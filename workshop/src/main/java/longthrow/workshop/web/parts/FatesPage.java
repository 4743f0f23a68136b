package longthrow.workshop.web.parts;

import java.util.List;
import longthrow.workshop.web.Frame;

/**
 * Every row of what was sent with its fate, before any of it counts.
 * @param pending  name of what was sent, to be kept or left; empty where it is kept already
 * @param faults   of files as a whole
 * @param notes    how anything unusual was understood
 * @param from     number of the first row that is shown, from 1
 * @param all      how many rows there are
 * @param earlier  address of the rows before; empty for none
 * @param later    address of the rows behind; empty for none
 */
public record FatesPage(
        Frame frame,
        String pending,
        String files,
        String counts,
        boolean keepable,
        List<String> faults,
        List<String> notes,
        List<Row> rows,
        int from,
        int all,
        String earlier,
        String later) {
    public FatesPage {
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
        rows = List.copyOf(rows);
    }

    /**
     * A row.
     * @param kind for the style sheet
     * @param why  reasons and remarks, each a line
     */
    public record Row(String place, String code, String kind, String fate, List<String> why) {
        public Row {
            why = List.copyOf(why);
        }
    }
}
