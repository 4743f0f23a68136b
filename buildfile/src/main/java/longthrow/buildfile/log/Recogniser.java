package longthrow.buildfile.log;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.buildfile.log.LogLayout.About;
import longthrow.buildfile.log.LogLayout.Question;
import longthrow.core.recording.Channel;
import longthrow.core.recording.LoggedUnits;
import longthrow.core.recording.Sureness;

/** Recognises the layout of a log by a sample of its lines. */
final class Recogniser {
    /** Lines above the figures among which header and units are sought. */
    private static final int ABOVE = 6;

    private static final int MOST_SAMPLED = 300;
    /** More columns no logger writes. */
    static final int MOST_COLUMNS = 1000;

    private final Sample sample;
    private final Unpacked.Plain plain;
    private final LogTold told;
    private final List<Question> questions = new ArrayList<>();

    private Recogniser(Sample sample, Unpacked.Plain plain, LogTold told) {
        this.sample = sample;
        this.plain = plain;
        this.told = told;
    }

    /**
     * What was recognised.
     * @param layout for the owner
     * @param grid   for reading
     */
    record Recognised(LogLayout layout, Grid grid) {}

    /** How many columns there are where they are too many; 0 where they are not. */
    static int tooManyColumns(Sample sample) {
        int columns = Delimiter.of(sample).columns();
        return columns > MOST_COLUMNS ? columns : 0;
    }

    /** Empty where no line of figures is found, or too many columns. */
    static Optional<Recognised> of(Sample sample, Unpacked.Plain plain, LogTold told) {
        return new Recogniser(sample, plain, told).recognise();
    }

    private Optional<Recognised> recognise() {
        Delimiter delimiter = Delimiter.of(sample);
        if (delimiter.columns() == 0 || delimiter.columns() > MOST_COLUMNS) {
            return Optional.empty();
        }
        delimiter = whereACommaMayBeTheMark(delimiter);
        int first = firstFigures(delimiter);
        if (first < 0) {
            return Optional.empty();
        }
        Above above = above(delimiter, first);
        List<List<String>> rows = rows(delimiter, first);
        List<String> all = new ArrayList<>();
        rows.forEach(all::addAll);
        Marks marks = Marks.of(all, told.mark());
        if (marks.asks()) {
            questions.add(new Question(
                    About.MARK,
                    -1,
                    "'" + marks.example()
                            + "' can be read in two ways: is the comma or the point the decimal mark? Lines with such"
                            + " a figure are listed, not read",
                    List.of(".", ",")));
        }
        return Optional.of(recognised(delimiter, first, above, rows, marks));
    }

    private Recognised recognised(Delimiter delimiter, int first, Above above, List<List<String>> rows, Marks marks) {
        int n = delimiter.columns();
        List<LogLayout.Column> columns = new ArrayList<>();
        for (int c = 0; c < n; c++) {
            columns.add(column(c, above, rows, marks));
        }
        askTwice(columns);
        askThousands(columns, rows, marks);
        boolean hasTime = columns.stream()
                .anyMatch(c -> c.channel() == Channel.TIME
                        && c.sureness() != Sureness.OPEN
                        && c.unit().isPresent());
        boolean asksTime = questions.stream()
                .anyMatch(q -> q.column() >= 0 && columns.get(q.column()).channel() == Channel.TIME);
        if (!hasTime && !asksTime && told.rateHertz() == 0) {
            questions.add(new Question(
                    About.RATE, -1, "no column is time. How many rows a second did the logger write?", List.of()));
        }
        List<Grid.Column> cells = columns.stream()
                .map(c -> new Grid.Column(c.form(), c.sureness() == Sureness.OPEN ? Optional.empty() : c.unit()))
                .toList();
        Grid grid = new Grid(
                delimiter.sign(),
                (byte) marks.mark(),
                (byte) marks.grouping(),
                sample.lineEnd(),
                sample.head().get(first).at(),
                first + 1,
                marks.asks(),
                above.headerLine() == 0 ? "" : latin(sample.head().get(above.headerLine() - 1)),
                above.names(),
                above.units(),
                baseDay(columns, rows),
                sample.charset(),
                cells);
        LogLayout layout = new LogLayout(
                plain.encoding().isEmpty() ? sample.charset().name() : plain.encoding(),
                plain.isPacked(),
                sample.lineEnd() == '\r' ? "CR" : sample.isReturned() ? "CRLF" : "LF",
                delimiter.words(),
                marks.mark(),
                marks.grouping(),
                above.headerLine(),
                above.unitsLine(),
                first + 1,
                columns,
                questions,
                fingerprint(delimiter, above),
                above.headerLine() == 0);
        return new Recognised(layout, grid);
    }

    private static String latin(Sample.Line line) {
        return new String(line.bytes(), StandardCharsets.ISO_8859_1).strip();
    }

    /** A comma between two whole numbers may be the decimal mark of one column. */
    private Delimiter whereACommaMayBeTheMark(Delimiter found) {
        if (found.sign() != ',') {
            return found;
        }
        int first = firstFigures(found);
        int names = 0;
        for (int i = Math.max(0, first - ABOVE); i < first; i++) {
            List<String> cells = sample.cells(sample.head().get(i), (byte) ',');
            if (!cells.isEmpty() && !sample.head().get(i).isBlank()) {
                names = Channel.answeringTo(cells.get(0)).isPresent() || cells.size() > 1 ? cells.size() : names;
            }
        }
        boolean wholeOnly = rows(found, Math.max(0, first)).stream()
                .allMatch(r -> r.stream().allMatch(c -> c.matches("[+-]?[0-9]+")));
        if (!wholeOnly || found.columns() % 2 != 0 || names == found.columns()) {
            return found;
        }
        if (found.columns() == 2 && (names == 1 || told.mark() == ',')) {
            return new Delimiter(Delimiter.NONE, 1);
        }
        questions.add(new Question(
                About.DELIMITER,
                -1,
                "a comma may part two columns here or be the decimal mark of one: both give whole numbers. Write the"
                        + " log with another mark between its columns, or with a point",
                List.of()));
        return found;
    }

    /** The first line of figures in the head; -1 where there is none. */
    private int firstFigures(Delimiter delimiter) {
        List<Sample.Line> head = sample.head();
        int lone = -1;
        for (int i = 0; i < head.size(); i++) {
            if (!isFigures(head.get(i), delimiter)) {
                continue;
            }
            lone = lone < 0 ? i : lone;
            for (int next = i + 1; next < Math.min(head.size(), i + 4); next++) {
                if (isFigures(head.get(next), delimiter)) {
                    return i;
                }
            }
        }
        return lone;
    }

    private boolean isFigures(Sample.Line line, Delimiter delimiter) {
        List<String> cells = sample.cells(line, delimiter.sign());
        return hasWidth(cells, delimiter.columns()) && Delimiter.figures(cells) > 0 && !isRemark(line, delimiter);
    }

    private static boolean isRemark(Sample.Line line, Delimiter delimiter) {
        String text = latin(line);
        return text.startsWith("#")
                || text.startsWith("%")
                || text.startsWith("//")
                || (text.startsWith(";") && delimiter.sign() != ';');
    }

    private static boolean hasWidth(List<String> cells, int columns) {
        return cells.size() == columns
                || (cells.size() == columns + 1 && cells.get(columns).isEmpty());
    }

    /** What stands above the figures: line numbers from 1, 0 where there is none. */
    private record Above(int headerLine, List<String> names, int unitsLine, List<String> units) {}

    private Above above(Delimiter delimiter, int first) {
        int n = delimiter.columns();
        int unitsLine = 0;
        List<String> units = List.of();
        int headerLine = 0;
        List<String> names = List.of();
        int best = -1;
        for (int i = first - 1; i >= Math.max(0, first - ABOVE); i--) {
            List<String> cells = headerCells(sample.head().get(i), delimiter);
            if (!hasWidth(cells, n) || cells.stream().allMatch(String::isEmpty)) {
                continue;
            }
            if (unitsLine == 0 && isUnits(cells) && i > 0 && headerLine == 0 && hasHeaderAbove(delimiter, i)) {
                unitsLine = i + 1;
                units = cells;
                continue;
            }
            int known = (int) cells.stream().filter(Recogniser::isKnown).count();
            boolean words = cells.stream().anyMatch(c -> Look.of(c) == Look.WORDS);
            if (words && known > best) {
                best = known;
                headerLine = i + 1;
                names = cells;
            }
        }
        return new Above(headerLine, names, unitsLine, units);
    }

    private boolean hasHeaderAbove(Delimiter delimiter, int units) {
        for (int i = units - 1; i >= Math.max(0, units - ABOVE); i--) {
            List<String> cells = headerCells(sample.head().get(i), delimiter);
            if (hasWidth(cells, delimiter.columns()) && cells.stream().anyMatch(c -> Look.of(c) == Look.WORDS)) {
                return true;
            }
        }
        return false;
    }

    /** Without the mark of a remark; names that hold blanks are parted by two where blanks part cells. */
    private List<String> headerCells(Sample.Line line, Delimiter delimiter) {
        byte[] bytes = line.bytes();
        int from = 0;
        while (from < bytes.length && (bytes[from] == '#' || bytes[from] == '%' || Cells.isBlank(bytes[from]))) {
            from++;
        }
        boolean remark = isRemark(line, delimiter);
        byte[] text = remark ? Arrays.copyOfRange(bytes, from, bytes.length) : bytes;
        List<String> cells = sample.cells(new Sample.Line(text, line.at()), delimiter.sign());
        if (delimiter.sign() == ' ' && cells.size() != delimiter.columns()) {
            String whole = new String(text, sample.charset()).strip();
            List<String> wide = List.of(whole.split("\\s{2,}|\\t", -1));
            return wide.size() == delimiter.columns() ? wide : cells;
        }
        return cells;
    }

    static boolean isUnits(List<String> cells) {
        int units = 0;
        int others = 0;
        for (String cell : cells) {
            String inside = cell.replaceAll("^[\\[({<]\\s*|\\s*[\\])}>]$", "").strip();
            if (inside.isEmpty()) {
                continue;
            }
            boolean bracketed = inside.length() < cell.length();
            boolean unit = bracketed || LoggedUnits.isUnit(inside);
            units += unit ? 1 : 0;
            others += unit ? 0 : 1;
        }
        return units > 0 && others <= units / 4;
    }

    static boolean isKnown(String cell) {
        return Channel.answeringTo(cell.replaceAll("[\\[({<].*", "")).isPresent();
    }

    private List<List<String>> rows(Delimiter delimiter, int first) {
        List<List<String>> rows = new ArrayList<>();
        List<Sample.Line> lines = new ArrayList<>(sample.head()
                .subList(Math.min(first, sample.head().size()), sample.head().size()));
        List<Sample.Line> some = new ArrayList<>(lines.subList(0, Math.min(lines.size(), MOST_SAMPLED)));
        some.addAll(sample.others().subList(0, Math.min(sample.others().size(), MOST_SAMPLED)));
        for (Sample.Line line : some) {
            List<String> cells = sample.cells(line, delimiter.sign());
            if (hasWidth(cells, delimiter.columns()) && !line.isBlank() && !isRemark(line, delimiter)) {
                rows.add(cells.subList(0, delimiter.columns()));
            }
        }
        return rows;
    }

    private LogLayout.Column column(int c, Above above, List<List<String>> rows, Marks marks) {
        String header = above.headerLine() == 0 ? "" : above.names().get(c);
        String unit = above.unitsLine() == 0 ? "" : above.units().get(c);
        List<String> cells = rows.stream().map(r -> r.get(c)).toList();
        Form form = form(cells, c);
        List<Double> figures = new ArrayList<>();
        if (form == Form.NUMBER) {
            for (String cell : cells) {
                byte[] bytes = cell.getBytes(StandardCharsets.ISO_8859_1);
                double value = DecimalBytes.isNumber(bytes, 0, bytes.length, (byte) marks.mark())
                        ? DecimalBytes.value(bytes, 0, bytes.length, (byte) marks.mark())
                        : NumberForms.grouped(cell, marks.mark(), marks.grouping());
                if (!Double.isNaN(value)) {
                    figures.add(value);
                }
            }
        }
        LogTold.Column said = told.columns().get(c);
        if (said != null) {
            Form read = form == Form.TEXT && said.unit().isPresent() ? Form.NUMBER : form;
            return new LogLayout.Column(header, said.channel(), read, said.unit(), Sureness.TOLD, "you said so");
        }
        return new Meaning(c, header, unit, form, figures, questions).column();
    }

    private Form form(List<String> cells, int c) {
        int[] counts = new int[Look.values().length];
        for (String cell : cells) {
            counts[looks().indexOf(Look.of(cell))]++;
        }
        Look most = Look.NUMBER;
        for (Look look : looks()) {
            boolean counted = look != Look.EMPTY && look != Look.NO_VALUE;
            most = counted && counts[looks().indexOf(look)] > counts[looks().indexOf(most)] ? look : most;
        }
        return switch (most) {
            case CLOCK -> Form.CLOCK;
            case MINUTES -> minutes(cells, c);
            case DATE -> date(cells, c);
            case WORDS -> Form.TEXT;
            case NUMBER, EMPTY, NO_VALUE -> Form.NUMBER;
        };
    }

    private static List<Look> looks() {
        return List.of(Look.values());
    }

    private Form minutes(List<String> cells, int c) {
        boolean fraction = cells.stream().anyMatch(t -> t.matches("[0-9]+:[0-9]{2}[.,][0-9]+"));
        if (!fraction && told.dates().isEmpty()) {
            questions.add(new Question(
                    About.DATES,
                    c,
                    "column " + (c + 1) + " holds times like " + Shown.of(cells.get(0))
                            + ", read as minutes and seconds; hours and minutes would be too coarse for a run. Is that"
                            + " so?",
                    List.of(Form.MINUTES.name())));
        }
        return Form.MINUTES;
    }

    private Form date(List<String> cells, int c) {
        List<String> dates = cells.stream().filter(t -> Look.of(t) == Look.DATE).toList();
        boolean yearFirst = dates.stream().allMatch(t -> isDate(t, Form.DATE_YEAR_FIRST) && t.matches("[0-9]{3,4}.*"));
        if (yearFirst) {
            return Form.DATE_YEAR_FIRST;
        }
        if (told.dates().isPresent()) {
            return told.dates().get();
        }
        boolean day = dates.stream().allMatch(t -> isDate(t, Form.DATE_DAY_FIRST));
        boolean month = dates.stream().allMatch(t -> isDate(t, Form.DATE_MONTH_FIRST));
        boolean oneDay =
                dates.stream().map(t -> t.split("[T ]", 2)[0]).distinct().count() == 1;
        boolean points = dates.stream().allMatch(t -> t.indexOf('.') > 0 && t.indexOf('/') < 0 && t.indexOf('.') < 4);
        if (day && month && !oneDay && !points) {
            questions.add(new Question(
                    About.DATES,
                    c,
                    "column " + (c + 1) + " holds dates like " + Shown.of(dates.get(0))
                            + ": does the day or the month come first?",
                    List.of(Form.DATE_DAY_FIRST.name(), Form.DATE_MONTH_FIRST.name())));
        }
        return day ? Form.DATE_DAY_FIRST : Form.DATE_MONTH_FIRST;
    }

    private static boolean isDate(String cell, Form form) {
        return TimeForms.day(cell, form) != null;
    }

    private static long baseDay(List<LogLayout.Column> columns, List<List<String>> rows) {
        for (int c = 0; c < columns.size(); c++) {
            for (List<String> row : rows) {
                Long day = TimeForms.day(row.get(c), columns.get(c).form());
                if (day != null) {
                    return day;
                }
            }
        }
        return 0;
    }

    /** The second column that says the same is asked about. */
    private void askTwice(List<LogLayout.Column> columns) {
        Set<Channel> seen = new HashSet<>();
        for (int c = 0; c < columns.size(); c++) {
            LogLayout.Column one = columns.get(c);
            boolean again = one.channel() != Channel.UNKNOWN
                    && one.channel() != Channel.MARKER
                    && one.sureness() != Sureness.OPEN
                    && !seen.add(one.channel());
            if (again && one.sureness() != Sureness.TOLD) {
                questions.add(new Question(
                        About.CHANNEL,
                        c,
                        "column " + (c + 1) + " '" + Shown.of(one.header()) + "' says "
                                + one.channel().label()
                                + " as an earlier column does; the earlier one is used. What is this one?",
                        List.of(one.channel().key(), Channel.UNKNOWN.key())));
                columns.set(c, one.open("an earlier column says the same"));
            }
        }
    }

    /** Where figures such as 2.203 stand beside such as 733 in one column, the mark may part thousands, there and in the others that have it only so. */
    private void askThousands(List<LogLayout.Column> columns, List<List<String>> rows, Marks marks) {
        List<Grouped> all = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            all.add(Grouped.of(rows, c, marks.mark()));
        }
        if (all.stream().noneMatch(Grouped::isMixed)) {
            return;
        }
        for (int c = 0; c < columns.size(); c++) {
            LogLayout.Column one = columns.get(c);
            Grouped cells = all.get(c);
            if (cells.example().isEmpty() || one.form() != Form.NUMBER || one.sureness() == Sureness.TOLD) {
                continue;
            }
            String header = one.header().isEmpty() ? "" : " '" + Shown.of(one.header()) + "'";
            questions.add(new Question(
                    About.MARK,
                    c,
                    "column " + (c + 1) + header + " holds " + cells.example()
                            + (cells.isMixed() ? " beside " + cells.whole() : "")
                            + ": does the mark part thousands there, or does it begin decimals?",
                    List.of()));
            columns.set(c, one.open("its mark may part thousands"));
        }
    }

    /**
     * Cells of a column whose mark may part thousands.
     * @param example one of them; empty where another figure shows that the mark begins decimals, or none has it
     * @param whole   a whole number without mark, such as stands below a thousand; empty where there is none
     */
    private record Grouped(String example, String whole) {
        /** Whole numbers that are smaller tell nothing: decimals stand beside them as well. Judgement. */
        private static final int LARGE = 100;

        static Grouped of(List<List<String>> rows, int column, char mark) {
            String example = "";
            String whole = "";
            for (List<String> row : rows) {
                String cell = row.get(column);
                if (Look.isTwoWays(cell)) {
                    example = cell;
                } else if (cell.indexOf(mark) >= 0) {
                    return new Grouped("", "");
                } else if (cell.matches("[+-]?[0-9]{3}") && Math.abs(Integer.parseInt(cell)) > LARGE) {
                    whole = cell;
                }
            }
            return new Grouped(example, whole);
        }

        boolean isMixed() {
            return !example.isEmpty() && !whole.isEmpty();
        }
    }

    private static String fingerprint(Delimiter delimiter, Above above) {
        String said = String.join(
                "\u0001",
                delimiter.words(),
                Integer.toString(delimiter.columns()),
                String.join("\u0002", above.names()),
                String.join("\u0002", above.units()));
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(said.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 12);
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("every Java has SHA-256", never);
        }
    }

    /** What a line above the figures is. */
    static Why whyAbove(Sample sample, LogLayout layout, int line) {
        if (line == layout.headerLine()) {
            return Why.HEADER;
        }
        if (line == layout.unitsLine()) {
            return Why.UNITS;
        }
        Sample.Line text = sample.head().get(line - 1);
        String latin = latin(text);
        return text.isBlank()
                ? Why.EMPTY
                : latin.startsWith("#") || latin.startsWith("%") || latin.startsWith("//") ? Why.COMMENT : Why.PREAMBLE;
    }
}
