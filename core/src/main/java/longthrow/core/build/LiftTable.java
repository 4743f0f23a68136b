package longthrow.core.build;

import java.util.List;
import longthrow.core.quantity.Quantity;

/**
 * Lift against angle as read with degree wheel and dial.
 * @param valve {@code intake} or {@code exhaust}
 * @param at    {@code lobe} or {@code valve}: where the dial stood
 * @param rows  in order of angle
 */
public record LiftTable(String valve, String at, List<Row> rows) {
    public LiftTable {
        rows = List.copyOf(rows);
    }

    /** One line. */
    public record Row(Quantity angle, Quantity lift) {}
}
