package longthrow.buildfile.log;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Any line of a log: its cells one by one, with quotation marks, blanks, words and times; what is no row is noted with why. */
final class LineReader {
    /** What loggers write where they have no value: common practice, no source. */
    private static final Set<String> NO_VALUE = Set.of(
            "nan",
            "null",
            "n/a",
            "na",
            "#n/a",
            "none",
            "nil",
            "-",
            "--",
            "---",
            "----",
            "?",
            "*",
            "***",
            "inf",
            "-inf",
            "+inf",
            "infinity",
            "-infinity",
            "-nan",
            "nan(ind)",
            "-nan(ind)",
            "1.#qnan",
            "-1.#ind",
            "ol",
            "ovf",
            "open",
            "err",
            "error",
            "invalid",
            "no data");

    final Numbers dropped = new Numbers();
    final List<Why> why = new ArrayList<>();
    /** Line and column of each in turn. */
    final Numbers badCells = new Numbers();

    long missing;

    private final Grid grid;
    private final double[][] values;
    private final Labels labels;
    private final Cells cells;

    LineReader(Grid grid, double[][] values, Labels labels) {
        this.grid = grid;
        this.values = values;
        this.labels = labels;
        this.cells = new Cells(grid.delimiter());
    }

    /** Words of columns, numbered as they come. */
    static final class Labels {
        /** More are no labels. */
        private static final int MOST = 10_000;

        private final List<Map<String, Integer>> columns = new ArrayList<>();

        Labels(int columns) {
            for (int i = 0; i < columns; i++) {
                this.columns.add(new LinkedHashMap<>());
            }
        }

        double number(int column, String label) {
            Map<String, Integer> known = columns.get(column);
            Integer number = known.get(label);
            if (number == null) {
                if (known.size() == MOST) {
                    return Double.NaN;
                }
                number = known.size();
                known.put(label, number);
            }
            return number;
        }

        List<List<String>> all() {
            return columns.stream().map(c -> List.copyOf(c.keySet())).toList();
        }
    }

    static boolean isNoValue(String cell) {
        return cell.length() < 12 && NO_VALUE.contains(cell.toLowerCase(Locale.ROOT));
    }

    /** Reads the line that begins here into its place; where the next begins. */
    int read(byte[] bytes, int start, int length, int line) {
        int end = start;
        while (end < length && bytes[end] != grid.lineEnd()) {
            end++;
        }
        int next = Math.min(end + 1, length);
        if (end > start && bytes[end - 1] == '\r') {
            end--;
        }
        Why reason = take(bytes, start, end, line);
        if (reason != null) {
            dropped.add(line);
            why.add(reason);
        }
        return next;
    }

    private @Nullable Why take(byte[] bytes, int start, int end, int line) {
        int from = afterBlanks(bytes, start, end);
        if (from == end) {
            return Why.EMPTY;
        }
        if (isRemark(bytes, from, end)) {
            return Why.COMMENT;
        }
        int found = cells.split(bytes, start, end);
        if (found < 0) {
            return Why.QUOTE;
        }
        if (!grid.header().isEmpty() && isHeader(bytes, start, end)) {
            return Why.HEADER_AGAIN;
        }
        int columns = grid.columns().size();
        if (found == columns + 1 && cells.isEmpty(columns)) {
            found = columns; // a mark behind the last cell
        }
        if (found != columns) {
            return found < columns ? Why.TOO_FEW : Why.TOO_MANY;
        }
        int figures = 0;
        int words = 0;
        int bad = badCells.size();
        long missingBefore = missing;
        for (int c = 0; c < columns; c++) {
            double value = cell(bytes, cells.from(c), cells.to(c), c, line);
            if (grid.asksMark() && Double.isInfinite(value)) {
                badCells.cutTo(bad);
                missing = missingBefore;
                return Why.TWO_WAYS;
            }
            values[c][line] = value;
            boolean isWord = grid.columns().get(c).form() == Form.TEXT;
            figures += Double.isNaN(value) ? 0 : 1;
            words += isWord && !Double.isNaN(value) ? 1 : 0;
        }
        if (figures == words) {
            Why header = headerAgain(bytes);
            if (header != null) {
                badCells.cutTo(bad);
                missing = missingBefore;
                return header;
            }
        }
        if (figures == 0) {
            badCells.cutTo(bad);
            missing = missingBefore;
            return Why.NO_FIGURES;
        }
        return null;
    }

    private boolean isRemark(byte[] bytes, int from, int end) {
        byte first = bytes[from];
        return first == '#'
                || first == '%'
                || (first == ';' && grid.delimiter() != ';')
                || (first == '/' && from + 1 < end && bytes[from + 1] == '/');
    }

    private boolean isHeader(byte[] bytes, int start, int end) {
        return end - start <= 4 * grid.header().length() + 16
                && new String(bytes, start, end - start, StandardCharsets.ISO_8859_1)
                        .strip()
                        .equals(grid.header());
    }

    /** Names or units of columns below rows: those of the header once more, or others; null where it is neither. */
    private @Nullable Why headerAgain(byte[] bytes) {
        List<String> found = new ArrayList<>();
        int known = 0;
        int filled = 0;
        for (int c = 0; c < grid.columns().size(); c++) {
            String cell = new String(bytes, cells.from(c), cells.to(c) - cells.from(c), grid.charset());
            boolean isName =
                    Recogniser.isKnown(cell) || (!cell.isEmpty() && grid.names().contains(cell));
            found.add(cell);
            known += isName ? 1 : 0;
            filled += cell.isEmpty() ? 0 : 1;
        }
        if (found.equals(grid.names()) || found.equals(grid.units())) {
            return Why.HEADER_AGAIN;
        }
        boolean isHeader = known >= 2 && 2 * known >= filled;
        return isHeader || (filled >= 2 && Recogniser.isUnits(found)) ? Why.OTHER_HEADER : null;
    }

    private static int afterBlanks(byte[] bytes, int from, int end) {
        int at = from;
        while (at < end && Cells.isBlank(bytes[at])) {
            at++;
        }
        return at;
    }

    /** NaN where it says nothing or cannot be read; infinite where it can be read in two ways. */
    private double cell(byte[] bytes, int from, int to, int column, int line) {
        if (from == to) {
            missing++;
            return Double.NaN;
        }
        Form form = grid.columns().get(column).form();
        if (form == Form.NUMBER) {
            if (DecimalBytes.isNumber(bytes, from, to, grid.mark())) {
                double value = DecimalBytes.value(bytes, from, to, grid.mark());
                if (!Double.isInfinite(value)) {
                    return value;
                }
            } else if (grid.asksMark()
                    && DecimalBytes.isNumber(bytes, from, to, grid.mark() == '.' ? (byte) ',' : (byte) '.')) {
                return Double.POSITIVE_INFINITY;
            }
        }
        String text = new String(bytes, from, to - from, grid.charset());
        if (isNoValue(text)) {
            missing++;
            return Double.NaN;
        }
        double value = switch (form) {
            case TEXT -> labels.number(column, text);
            case NUMBER -> NumberForms.grouped(text, (char) grid.mark(), (char) grid.grouping());
            default -> TimeForms.seconds(text, form, grid.baseDay());
        };
        if (Double.isNaN(value)) {
            badCells.add(line);
            badCells.add(column);
        }
        return value;
    }
}
