package longthrow.buildfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import longthrow.core.build.GasReading;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;

/**
 * Rows of a gas trace as a logger writes them: crank angle in degrees and pressure, a line each, parted by a semicolon, a tab, a comma or spaces. A decimal comma is
 * read where the comma does not part the two. One line of words on top is passed over.
 */
public final class GasTraceText {
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d{1,7})(\\.\\d{1,9})?");

    /** More than two turns at a tenth of a degree; a judgement. */
    private static final int MOST_ROWS = 7300;

    /** Rows farther apart than this are all kept; of closer ones the highest pressure stands for them [deg]: a peak is not lost, and the file stays small. */
    private static final double KEPT_APART = 1;

    private GasTraceText() {}

    /**
     * What was read.
     * @param faults by line; none where there are rows
     */
    public record Rows(List<GasReading.Row> rows, List<String> faults) {
        public Rows {
            rows = List.copyOf(rows);
            faults = List.copyOf(faults);
        }
    }

    /**
     * Reads it. Never throws, whatever the text.
     * @param unit of the pressures
     */
    public static Rows read(String text, Unit unit) {
        List<GasReading.Row> rows = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int k = 0; k < lines.size() && faults.isEmpty(); k++) {
            String line = lines.get(k).strip();
            if (line.isEmpty() || (rows.isEmpty() && k == 0 && line.matches("[^0-9]*"))) {
                continue;
            }
            String[] cells = cells(line);
            if (cells.length != 2
                    || !NUMBER.matcher(cells[0]).matches()
                    || !NUMBER.matcher(cells[1]).matches()) {
                String shown = line.length() > 40 ? line.substring(0, 40) + "…" : line;
                faults.add("line " + (k + 1) + ": '" + shown
                        + "' is not an angle and a pressure; write two numbers such as -15;1250, without units");
            } else if (rows.size() == MOST_ROWS) {
                faults.add(String.format(
                        Locale.ROOT, "line %d: more than %d rows; every degree is enough", k + 1, MOST_ROWS));
            } else {
                rows.add(new GasReading.Row(
                        Quantity.of(cells[0].replace("+", ""), Units.DEGREE),
                        Quantity.of(cells[1].replace("+", ""), unit)));
            }
        }
        if (faults.isEmpty() && rows.isEmpty()) {
            faults.add("no rows: paste angle and pressure, a line each");
        }
        return faults.isEmpty() ? new Rows(thinned(rows), List.of()) : new Rows(List.of(), faults);
    }

    private static String[] cells(String line) {
        String plain = line.replace('−', '-');
        for (String by : List.of(";", "\t")) {
            if (plain.contains(by)) {
                String[] cells = plain.split(by, -1);
                for (int k = 0; k < cells.length; k++) {
                    cells[k] = cells[k].strip().replace(',', '.');
                }
                return cells;
            }
        }
        String[] spaced = plain.split("\\s+", -1);
        if (spaced.length == 2 && !spaced[0].endsWith(",")) {
            return new String[] {spaced[0].replace(',', '.'), spaced[1].replace(',', '.')};
        }
        String[] cells = plain.split(",", -1);
        for (int k = 0; k < cells.length; k++) {
            cells[k] = cells[k].strip();
        }
        return cells;
    }

    private static List<GasReading.Row> thinned(List<GasReading.Row> rows) {
        List<GasReading.Row> kept = new ArrayList<>();
        double from = Double.NEGATIVE_INFINITY;
        for (GasReading.Row row : rows) {
            double degrees = Math.toDegrees(row.angle().si());
            boolean isNext = kept.isEmpty() || degrees - from >= KEPT_APART - 1e-9 || degrees <= from;
            if (isNext) {
                kept.add(row);
                from = degrees;
            } else if (row.pressure().compareTo(kept.get(kept.size() - 1).pressure()) > 0) {
                kept.set(kept.size() - 1, row);
            }
        }
        return kept;
    }
}
