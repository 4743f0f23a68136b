package longthrow.buildfile.log;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Unit;

/**
 * How the lines of figures are written.
 * @param delimiter parts the cells; a blank stands for any run of blanks and tabs
 * @param mark      the decimal mark
 * @param grouping  stands between thousands; 0 where nothing does
 * @param lineEnd   the byte that ends a line: line feed, or carriage return where the file has no line feed
 * @param start     the byte at which the first line of figures begins
 * @param firstLine its number in the file, from 1
 * @param asksMark  whether the decimal mark cannot be told, so that a cell with a comma can be read in two ways
 * @param header    the line that names the columns, stripped; empty where there is none
 * @param names    the cells of that line; empty where there is none
 * @param units    the cells of the line of units; empty where there is none
 * @param baseDay   the day from which times with a date are counted [days since 1970]
 * @param charset   of words
 * @param columns   how the cells of each are written, and the unit that brings them to SI, if it is known
 */
record Grid(
        byte delimiter,
        byte mark,
        byte grouping,
        byte lineEnd,
        long start,
        int firstLine,
        boolean asksMark,
        String header,
        List<String> names,
        List<String> units,
        long baseDay,
        Charset charset,
        List<Column> columns) {
    /** One column. */
    record Column(Form form, Optional<Unit> unit) {}

    boolean isPlain() {
        return columns.stream().allMatch(c -> c.form() == Form.NUMBER);
    }

    boolean hasText() {
        return columns.stream().anyMatch(c -> c.form() == Form.TEXT);
    }
}
