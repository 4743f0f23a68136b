package longthrow.core;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The rows of one topic of check values, {@code references/<topic>.csv} among the test resources. One row is one number
 * with its tolerance and source; the id says case and row, {@code DCU-01.3}.
 */
public final class ReferenceRows {
    private static final List<String> COLUMNS =
            List.of("id", "inputs", "quantity", "value", "unit", "tolerance", "source");

    /** "rel 1e-10 for the exact constant", "abs 0.005 (1e6 trials)", "rel 1 %": what follows the number is a remark. */
    private static final Pattern TOLERANCE = Pattern.compile(
            "exact|informational|a scheme of this order should not exceed 1\\.3 x this value|(rel|abs) ([0-9.]+(?:[eE][+-]?[0-9]+)?)( ?%)?"
                    + "(?: \\(abs ([0-9.]+(?:[eE][+-]?[0-9]+)?)\\))?(?: .*|;.*)?");

    private final List<Row> rows;

    private ReferenceRows(List<Row> rows) {
        this.rows = List.copyOf(rows);
    }

    /** One check value. */
    public record Row(
            String id, String inputs, String quantity, double value, String unit, String tolerance, String source) {
        public Row {
            if (!TOLERANCE.matcher(tolerance).matches()) {
                throw new IllegalArgumentException(
                        id + " has the tolerance '" + tolerance
                                + "'; it must be 'exact', 'informational', a remark on schemes, or start like 'rel 1e-9', 'rel 1 %' or 'abs 0.5'");
            }
        }

        /** Largest allowed difference, in the unit of the row. */
        public double allowed() {
            Matcher matcher = TOLERANCE.matcher(tolerance);
            if (!matcher.matches()) {
                throw new IllegalStateException(tolerance);
            }
            if ("informational".equals(tolerance) || tolerance.startsWith("a scheme")) {
                throw new IllegalStateException(id + " is there to be known and has no tolerance to check against");
            }
            if (value == 0 && matcher.group(4) != null) {
                return Double.parseDouble(matcher.group(4)); // a relative difference from nothing says nothing
            }
            if (matcher.group(1) == null) {
                return 0;
            }
            double number = Double.parseDouble(matcher.group(2)) * (matcher.group(3) == null ? 1 : 0.01);
            return "rel".equals(matcher.group(1)) ? number * Math.abs(value) : number;
        }

        /** Fails, with everything needed to judge it, unless the number is the row's within its tolerance. */
        public void check(double got) {
            check(got, allowed());
        }

        /** The same where the row's tolerance says in words what is allowed. */
        public void check(double got, double allowed) {
            double difference = Math.abs(got - value);
            if (!(difference <= allowed)) {
                throw new AssertionError(id + " (" + quantity + "): expected " + value + " " + unit + ", got " + got
                        + ", tolerance " + tolerance + ", difference " + difference + ". Source: " + source
                        + ". Inputs: " + inputs);
            }
        }

        @Override
        public String toString() {
            return id + " " + quantity;
        }
    }

    /** Reads a topic: {@code of("03_displacement_cr_units")}. */
    public static ReferenceRows of(String topic) {
        return parse(text(topic));
    }

    private static String text(String topic) {
        String name = "/references/" + topic + ".csv";
        try (InputStream stream = ReferenceRows.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalArgumentException("no test resource " + name);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /**
     * A grid: the first column is the argument, the others have no tolerance of their own. Each cell becomes a row with the id
     * {@code topic column@argument} and the tolerance and source of the row that names the grid.
     * @param relative of the cell, or of the largest cell of its column where {@code ofLargest}: near a zero of the column the
     *                 relative error of a difference has no bound
     */
    public static List<GridCell> grid(String topic, Row namedBy, double relative, boolean ofLargest) {
        return cells(topic, csvLines(text(topic)), namedBy, relative, ofLargest);
    }

    /** The part of a grid whose first column has this name, without that column; tolerance relative to the largest cell of each column. */
    public static List<GridCell> gridOf(String topic, String name, Row namedBy, double relative) {
        List<List<String>> lines = csvLines(text(topic)).stream()
                .filter(line -> line.get(0).equals(name) || line.get(0).equals("function"))
                .map(line -> line.subList(1, line.size()))
                .toList();
        return cells(topic + " " + name, lines, namedBy, relative, true);
    }

    private static List<GridCell> cells(
            String topic, List<List<String>> lines, Row namedBy, double relative, boolean ofLargest) {
        List<String> header = lines.get(0);
        List<GridCell> cells = new ArrayList<>();
        for (int column = 1; column < header.size(); column++) {
            int at = column;
            double largest = lines.stream()
                    .skip(1)
                    .mapToDouble(line -> Math.abs(number(line.get(at))))
                    .max()
                    .orElseThrow();
            for (List<String> line : lines.subList(1, lines.size())) {
                double value = number(line.get(column));
                double allowed = relative * (ofLargest ? largest : Math.abs(value));
                Row row = new Row(
                        topic + " " + header.get(column) + "@" + line.get(0),
                        namedBy.inputs(),
                        header.get(column),
                        value,
                        "as the column says",
                        "abs " + allowed,
                        namedBy.source());
                cells.add(new GridCell(header.get(column), number(line.get(0)), row));
            }
        }
        return cells;
    }

    /** The part of a grid whose first column has this name, without that column; each cell within a share of itself. */
    public static List<GridCell> gridOfEach(String topic, String name, Row namedBy, double relative) {
        List<List<String>> all = csvLines(text(topic));
        List<List<String>> lines = IntStream.range(0, all.size())
                .filter(i -> i == 0 || all.get(i).get(0).equals(name))
                .mapToObj(i -> all.get(i).subList(1, all.get(i).size()))
                .toList();
        return cells(topic + " " + name, lines, namedBy, relative, false);
    }

    /** One cell of a grid. */
    public record GridCell(String column, double argument, Row row) {
        @Override
        public String toString() {
            return row.id();
        }
    }

    private static double number(String text) {
        return "inf".equals(text) ? Double.POSITIVE_INFINITY : Double.parseDouble(text);
    }

    static ReferenceRows parse(String csv) {
        List<List<String>> lines = csvLines(csv);
        List<String> header = lines.get(0);
        List<Row> rows = new ArrayList<>();
        for (List<String> line : lines.subList(1, lines.size())) {
            if (line.size() != header.size()) {
                throw new IllegalArgumentException(
                        "row has " + line.size() + " fields, not " + header.size() + ": " + line);
            }
            Map<String, String> fields =
                    IntStream.range(0, header.size()).boxed().collect(Collectors.toMap(header::get, line::get));
            List<String> wanted = COLUMNS.stream().map(fields::get).toList();
            rows.add(new Row(
                    wanted.get(0),
                    wanted.get(1),
                    wanted.get(2),
                    Double.parseDouble(wanted.get(3)),
                    wanted.get(4),
                    wanted.get(5),
                    wanted.get(6)));
        }
        return new ReferenceRows(rows);
    }

    public List<Row> all() {
        return rows;
    }

    /** The rows of one case: {@code cases("DCU-01")} has DCU-01.1, DCU-01.2... */
    public List<Row> cases(String... cases) {
        List<Row> found = rows.stream()
                .filter(row -> List.of(cases).contains(row.id().replaceFirst("\\.[0-9]+$", "")))
                .toList();
        if (found.isEmpty()) {
            throw new IllegalArgumentException("no rows of " + List.of(cases));
        }
        return found;
    }

    /** One row: {@code row("DCU-01.1")}. */
    public Row row(String id) {
        return rows.stream()
                .filter(row -> row.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no row " + id));
    }

    /** Fields of RFC 4180: quoted ones may hold commas, line ends and doubled quotes. */
    private static List<List<String>> csvLines(String csv) {
        List<List<String>> lines = new ArrayList<>();
        List<String> line = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < csv.length(); i++) {
            char c = csv.charAt(i);
            if (quoted && c == '"' && i + 1 < csv.length() && csv.charAt(i + 1) == '"') {
                field.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == ',' || c == '\n')) {
                line.add(field.toString());
                field.setLength(0);
                if (c == '\n') {
                    lines.add(List.copyOf(line));
                    line.clear();
                }
            } else if (quoted || c != '\r') {
                field.append(c);
            }
        }
        if (field.length() > 0 || !line.isEmpty()) {
            line.add(field.toString());
            lines.add(List.copyOf(line));
        }
        return lines;
    }
}
