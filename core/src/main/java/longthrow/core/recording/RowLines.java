package longthrow.core.recording;

import java.util.Arrays;

/** In which line of its file each row stands: stretches of rows whose lines follow each other. */
public final class RowLines {
    private final int[] firstRows; // of each stretch, rising
    private final int[] firstLines;
    private final int rows;

    private RowLines(int[] firstRows, int[] firstLines, int rows) {
        this.firstRows = firstRows;
        this.firstLines = firstLines;
        this.rows = rows;
    }

    /**
     * Rows that follow each other from a line on.
     * @param rows how many, 0 or more
     * @param firstLine of the first, from 1
     */
    public static RowLines from(int firstLine, int rows) {
        return new RowLines(new int[] {0}, new int[] {firstLine}, rows);
    }

    /**
     * All lines from one on but those that hold no row.
     * @param firstLine from 1
     * @param lines     how many there are
     * @param without   those that are no rows, counted from the first line as 0, rising
     */
    public static RowLines without(int firstLine, int lines, int[] without) {
        int[] firstRows = new int[without.length + 1];
        int[] firstLines = new int[without.length + 1];
        int stretches = 0;
        int next = 0;
        int row = 0;
        for (int i = 0; i <= without.length; i++) {
            int end = i < without.length ? without[i] : lines;
            if (end > next) {
                firstRows[stretches] = row;
                firstLines[stretches++] = firstLine + next;
                row += end - next;
            }
            next = end + 1;
        }
        return new RowLines(Arrays.copyOf(firstRows, stretches), Arrays.copyOf(firstLines, stretches), row);
    }

    /** These lines, rising. */
    static RowLines of(int[] lines) {
        int[] firstRows = new int[lines.length];
        int[] firstLines = new int[lines.length];
        int stretches = 0;
        for (int row = 0; row < lines.length; row++) {
            if (row == 0 || lines[row] != lines[row - 1] + 1) {
                firstRows[stretches] = row;
                firstLines[stretches++] = lines[row];
            }
        }
        return new RowLines(Arrays.copyOf(firstRows, stretches), Arrays.copyOf(firstLines, stretches), lines.length);
    }

    /** How many rows there are. */
    public int rows() {
        return rows;
    }

    /**
     * The line, from 1, in which a row stands.
     * @throws IndexOutOfBoundsException if there is no such row
     */
    public int lineOf(int row) {
        if (row < 0 || row >= rows) {
            throw new IndexOutOfBoundsException("row " + row + " of " + rows);
        }
        int found = Arrays.binarySearch(firstRows, row);
        int stretch = found >= 0 ? found : -found - 2;
        return firstLines[stretch] + row - firstRows[stretch];
    }
}
