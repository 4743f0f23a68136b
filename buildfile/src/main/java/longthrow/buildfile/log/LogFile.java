package longthrow.buildfile.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFaults;
import longthrow.core.recording.RowLines;
import longthrow.core.recording.Sureness;

/** A log of a bench, opened: its layout is known, its rows are read when asked for. */
public final class LogFile implements LogOpened {
    /** Lines of the longest log: five hours at 1 kHz. */
    public static final int MOST_LINES = 20_000_000;
    /** Cells of the largest log, 320 MB of figures. An hour of six columns at 1 kHz is 21.6 million. */
    public static final int MOST_CELLS = 40_000_000;

    private static final String ALLOWED =
            "text of lines, parted by comma, semicolon, tab, | or blanks, at least one line of figures; it may be"
                    + " packed by gzip";

    private final Unpacked.Plain plain;
    private final Sample sample;
    private final Recogniser.Recognised recognised;
    private final LogTold told;

    private LogFile(Unpacked.Plain plain, Sample sample, Recogniser.Recognised recognised, LogTold told) {
        this.plain = plain;
        this.sample = sample;
        this.recognised = recognised;
        this.told = told;
    }

    /**
     * Recognises the layout of a log. To use what was said before of logs like it: open it with {@link LogTold#NOTHING}, look up what was said by the
     * layout's fingerprint, and open it again with that.
     * @param source its bytes, only read
     * @param told   what its owner said
     */
    public static LogOpened open(LogSource source, LogTold told) {
        if (source.size() == 0) {
            return new LogRefusal("the log is empty", ALLOWED, "write it from the logger again");
        }
        Unpacked.Plain plain;
        try {
            plain = Unpacked.of(source);
        } catch (Unpacked.TooLarge large) {
            return new LogRefusal(
                    "the log " + large.getMessage() + " and was not looked into",
                    "at most " + (Unpacked.MOST >> 20) + " MiB unpacked; a log in plain UTF-8 may be larger",
                    "unpack it, or cut it into shorter ones");
        }
        byte[] head = Unpacked.head(plain.source(), 4096);
        Optional<String> kind = noText(head);
        if (kind.isPresent()) {
            return new LogRefusal("the log " + kind.get(), ALLOWED, "export it from the logger as text (CSV)");
        }
        if (plain.source().size() <= plain.start()) {
            return new LogRefusal("the log holds no text", ALLOWED, "write it from the logger again");
        }
        Sample sample = Sample.of(plain.source(), plain.start());
        Optional<Recogniser.Recognised> recognised = Recogniser.of(sample, plain, told);
        int tooMany = recognised.isEmpty() ? Recogniser.tooManyColumns(sample) : 0;
        if (tooMany > 0) {
            return new LogRefusal(
                    "the log has " + tooMany + " columns",
                    "at most " + Recogniser.MOST_COLUMNS + " columns",
                    "write the log again with the columns that are needed");
        }
        if (recognised.isEmpty()) {
            return new LogRefusal(
                    "no line of figures was found in the first " + (Sample.HEAD >> 10) + " kB of the log",
                    ALLOWED,
                    "check that this is the log, and that its cells are parted by one mark throughout");
        }
        return new LogFile(plain, sample, recognised.get(), told);
    }

    private static Optional<String> noText(byte[] head) {
        if (head.length > 3 && head[0] == 'P' && head[1] == 'K' && head[2] < 9 && head[3] < 9) {
            return Optional.of("is a spreadsheet or an archive, not text");
        }
        int control = 0;
        for (byte b : head) {
            control += b >= 0 && b < 32 && b != '\t' && b != '\n' && b != '\r' && b != '\f' ? 1 : 0;
        }
        return control > head.length / 20 + 2
                ? Optional.of("is not text: it holds bytes that no text has")
                : Optional.empty();
    }

    /** What it was recognised to be. */
    public LogLayout layout() {
        return recognised.layout();
    }

    /** What its owner said. */
    public LogTold told() {
        return told;
    }

    /** One way a reading can end: read, or too much to be read, with why. */
    public sealed interface Outcome permits Done, Refused {}

    /**
     * It was read.
     * @param read what
     */
    public record Done(LogRead read) implements Outcome {}

    /**
     * It was not.
     * @param refusal why
     */
    public record Refused(LogRefusal refusal) implements Outcome {}

    /**
     * Reads all its lines.
     * @param threads how many may work at once, at least 1; the figures are the same for any number
     */
    public Outcome read(int threads) {
        Grid grid = recognised.grid();
        try {
            GridReader reader = new GridReader(plain.source(), grid, threads);
            int columns = grid.columns().size();
            GridReader.Blocks blocks = reader.count(Math.min(MOST_LINES, MOST_CELLS / columns));
            GridReader.Read read = reader.read(blocks);
            int other = read.why().indexOf(Why.OTHER_HEADER);
            return other < 0
                    ? new Done(done(read, blocks.allLines()))
                    : new Refused(anotherHeader(layout().firstLine() + read.droppedLines()[other]));
        } catch (GridReader.TooMuch much) {
            return new Refused(new LogRefusal(
                    "the log " + much.getMessage(),
                    String.format(
                            Locale.ROOT,
                            "at most %,d lines and %,d cells, no line over %,d bytes",
                            MOST_LINES,
                            MOST_CELLS,
                            GridReader.LONGEST_LINE),
                    "cut it into shorter ones, a session each"));
        }
    }

    private LogRefusal anotherHeader(int line) {
        return new LogRefusal(
                "line " + line + " names the columns otherwise than "
                        + (layout().headerLine() == 0 ? "the rows above it" : "line " + layout().headerLine())
                        + ": other names, another order or other units, so that what stands below it is not what"
                        + " stands above",
                "one header and its rows; the same header may stand there again",
                "cut it into two files, the second from line " + line + " on, and write a run for each");
    }

    private LogRead done(GridReader.Read read, int lines) {
        LogLayout layout = layout();
        int above = layout.firstLine() - 1;
        int[] gone = read.droppedLines();
        int[] listed = new int[above + gone.length];
        List<Why> why = new ArrayList<>();
        for (int i = 0; i < above; i++) {
            listed[i] = i + 1;
            why.add(Recogniser.whyAbove(sample, layout, i + 1));
        }
        for (int i = 0; i < gone.length; i++) {
            listed[above + i] = layout.firstLine() + gone[i];
        }
        why.addAll(read.why());
        List<LogRead.BadCell> bad = new ArrayList<>();
        Numbers cells = read.badCells();
        for (int i = 0; i + 1 < cells.size() && bad.size() < LogRead.MOST_BAD_CELLS; i += 2) {
            bad.add(new LogRead.BadCell(layout.firstLine() + cells.get(i), cells.get(i + 1)));
        }
        ListedLines list = new ListedLines(listed, why);
        List<String> notes = notes(list);
        notes.addAll(overMidnight(read, lines));
        return new LogRead(
                layout, recording(read, lines), list, above + lines, bad, cells.size() / 2, read.missing(), notes);
    }

    /** A clock begins anew at midnight, and time goes on: the day is added from there. */
    private List<String> overMidnight(GridReader.Read read, int lines) {
        List<String> notes = new ArrayList<>();
        for (int c = 0; c < layout().columns().size(); c++) {
            LogLayout.Column column = layout().columns().get(c);
            if (column.channel() != Channel.TIME || column.unit().isEmpty() || column.sureness() == Sureness.OPEN) {
                continue;
            }
            double[] time = read.values()[c];
            RowLines where = RowLines.without(layout().firstLine(), lines, read.droppedLines());
            double days = 0;
            for (int row = 1; row < time.length; row++) {
                double step = time[row] + days - time[row - 1];
                if (step < -DAY / 2
                        && step + DAY >= 0
                        && step + DAY <= Math.max(MIDNIGHT_STEPS * RowFaults.usualStep(time), CLOCK_STEP)) {
                    days += DAY;
                    notes.add("line " + where.lineOf(row)
                            + ": the clock begins anew, and fits the row before by a day of 86400 s: midnight, time"
                            + " goes on");
                }
                time[row] += days;
            }
        }
        return notes;
    }

    private static final double DAY = 86_400;

    /** Usual steps that may lie between the rows before and behind midnight, as for a gap; or seconds, where a clock writes whole ones. Judgement. */
    private static final double MIDNIGHT_STEPS = 3;

    private static final double CLOCK_STEP = 2;

    private Recording recording(GridReader.Read read, int lines) {
        List<Recording.Column> columns = new ArrayList<>();
        for (int c = 0; c < layout().columns().size(); c++) {
            LogLayout.Column one = layout().columns().get(c);
            columns.add(new Recording.Column(
                    one.header(),
                    one.channel(),
                    one.sureness() == Sureness.OPEN ? Optional.empty() : one.unit(),
                    one.sureness(),
                    one.why(),
                    read.labels().get(c)));
        }
        RowLines where = RowLines.without(layout().firstLine(), lines, read.droppedLines());
        Recording recording = new Recording(columns, read.values(), where);
        boolean hasTime = recording.find(Channel.TIME).isPresent();
        return told.rateHertz() > 0 && !hasTime ? recording.with(time(), times(read, lines)) : recording;
    }

    private static Recording.Column time() {
        return new Recording.Column(
                "",
                Channel.TIME,
                Optional.of(Units.SECOND),
                Sureness.TOLD,
                "counted by rows at the rate you said",
                List.of());
    }

    /** A line that cannot be read took its time as well; a remark took none. */
    private double[] times(GridReader.Read read, int lines) {
        int[] gone = read.droppedLines();
        double[] times = new double[lines - gone.length];
        int next = 0;
        int row = 0;
        int ticks = 0;
        for (int line = 0; line < lines; line++) {
            boolean listed = next < gone.length && gone[next] == line;
            if (!listed) {
                times[row++] = ticks++ / told.rateHertz();
            } else {
                ticks += read.why().get(next++).isFault() ? 1 : 0;
            }
        }
        return times;
    }

    private List<String> notes(ListedLines listed) {
        List<String> notes = new ArrayList<>();
        if (!plain.note().isEmpty()) {
            notes.add(plain.note());
        }
        byte[] last = new byte[1];
        plain.source().read(plain.source().size() - 1, last, 0, 1);
        if (last[0] != sample.lineEnd()) {
            notes.add("the last line has no end: the logger may have been cut off, and its last figure with it");
        }
        int again = listed.count(Why.HEADER_AGAIN);
        if (again > 0) {
            notes.add("the header stands there " + (again + 1)
                    + " times: perhaps as many runs were written into one log");
        }
        return notes;
    }
}
