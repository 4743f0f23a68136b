package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Extremes;
import longthrow.core.recording.FaultKind;
import longthrow.core.recording.Recording;
import longthrow.core.recording.RowFault;
import longthrow.core.recording.RunningTime;

/**
 * What a logger wrote, over time: each channel in a strip of its own, as it stands in the file, with its faults marked above it, the rows that are set aside shaded, and where runs begin and end. Of a column of pixels
 * least and greatest figure are drawn, so that the picture is as large however many rows lie behind it and no spike is lost.
 */
public final class LogChart {
    private static final int NARROW = 360;
    private static final int WIDE = 660;
    private static final double LEFT = 50;
    private static final double MARGIN = 12;
    private static final double STRIP = 62;
    private static final double BETWEEN = 32;
    private static final double TOP = 54;
    private static final double LINE = 19;

    /** Columns of one strip: two in each pixel of the narrow picture, as a phone's screen is finer than its pixels; one in the wide. Layout. */
    private static final int TENTHS_NARROW = 5;

    private static final int TENTHS_WIDE = 10;

    private static final int TENTHS = 10;

    /** Strips that are seen at once; layout. */
    public static final int MOST_STRIPS = 6;

    /** Marks nearer to each other run into one [pixels]; layout. */
    private static final double NEAR = 2.5;

    /** Runs that are marked; more than these are too near each other to be told apart. Layout. */
    private static final int MOST_RUNS = 40;

    private final Log log;
    private final double from;
    private final double to;
    private final List<Integer> strips;
    private final int width;
    private final double right;
    private final double bottom;
    private final Scale times;
    private final Svg svg;
    private final Sketch s;

    /**
     * What is drawn.
     * @param keeps faults whose rows their owner keeps all the same
     * @param runs  in the order of the rows
     */
    public record Log(
            String name,
            Recording recording,
            RunningTime time,
            List<RowFault> faults,
            Set<FaultKind> keeps,
            List<Run> runs) {
        public Log {
            faults = List.copyOf(faults);
            keeps = Set.copyOf(keeps);
            runs = List.copyOf(runs);
        }

        /** Whether the rows of a fault are set aside. */
        public boolean isAside(RowFault fault) {
            return fault.kind().setsAside() && !keeps.contains(fault.kind());
        }
    }

    /**
     * A stretch of rows.
     * @param name short, as it stands above it
     * @param from the first row
     * @param to   the last
     */
    public record Run(String name, int from, int to) {}

    private LogChart(Log log, double from, double to, List<Integer> strips, boolean wide, String idPrefix) {
        this.log = log;
        this.from = from;
        this.to = to;
        this.strips = List.copyOf(strips.subList(0, Math.min(MOST_STRIPS, strips.size())));
        this.width = wide ? WIDE : NARROW;
        this.right = width - MARGIN;
        this.bottom = TOP + Math.max(1, this.strips.size()) * (STRIP + BETWEEN) - BETWEEN;
        this.times = Scale.plain(log.time().isCounted() ? Units.BARE_COUNT : Units.SECOND, from, to, LEFT, right);
        int height = (int) (bottom + 50 + 3 * LINE);
        this.svg = new Svg(idPrefix, width, height, "What " + log.name() + " holds over time", said());
        this.s = new Sketch(svg, width, height);
    }

    /**
     * The picture, a whole SVG element.
     * @param from   left edge [s, or rows]
     * @param to     right edge, behind it
     * @param strips columns of the recording, from 0; no more than {@link #MOST_STRIPS} are drawn
     * @param wide   whether it is for a wide screen
     */
    public static String of(Log log, double from, double to, List<Integer> strips, boolean wide, String idPrefix) {
        return new LogChart(log, from, to, strips, wide, idPrefix).drawn();
    }

    /** Where the strips lie in the picture: left edge, right edge, width of the whole. */
    public static String plot(boolean wide) {
        int whole = wide ? WIDE : NARROW;
        return String.format(Locale.ROOT, "%.0f %.0f %d", LEFT, whole - MARGIN, whole);
    }

    /** Columns that are drawn where nobody chose: those of which it is known what they are, but time and marks; else all. */
    public static List<Integer> usual(Recording recording) {
        List<Integer> usable = new ArrayList<>();
        List<Integer> others = new ArrayList<>();
        for (int c = 0; c < recording.columns().size(); c++) {
            Recording.Column column = recording.columns().get(c);
            if (column.channel() != Channel.TIME) {
                (column.isUsable() && column.channel() != Channel.MARKER ? usable : others).add(c);
            }
        }
        List<Integer> chosen = usable.isEmpty() ? others : usable;
        return List.copyOf(chosen.subList(0, Math.min(MOST_STRIPS, chosen.size())));
    }

    private String said() {
        long aside =
                log.faults().stream().filter(log::isAside).filter(this::isSeen).count();
        return strips.size() + " channels from " + words(from) + " to " + words(to) + "; "
                + log.runs().size()
                + " runs are found in the whole log, and rows are set aside in " + aside
                + " places of this stretch. What was found stands in words beside it.";
    }

    private String words(double place) {
        return log.time().isCounted()
                ? String.format(Locale.ROOT, "row %.0f", place + 1)
                : String.format(Locale.ROOT, "%.2f s", place);
    }

    private boolean isSeen(RowFault fault) {
        return log.time().at(fault.to()) >= from && log.time().at(fault.from()) <= to;
    }

    private String drawn() {
        aside();
        for (int k = 0; k < strips.size(); k++) {
            strip(strips.get(k), TOP + k * (STRIP + BETWEEN));
        }
        runs();
        axis();
        legend();
        return svg.finished();
    }

    // ---- one channel

    private void strip(int c, double top) {
        Recording.Column column = log.recording().columns().get(c);
        double base = top + STRIP;
        s.words("quiet", heading(c, column), 4, top - 9, START, Sketch.SMALL, true);
        int each = width == WIDE ? TENTHS_WIDE : TENTHS_NARROW;
        int columns = (int) Math.round((right - LEFT) * TENTHS / each);
        Extremes extremes = Extremes.of(log.time(), log.recording().values(c), from, to, columns);
        double least = Double.POSITIVE_INFINITY;
        double greatest = Double.NEGATIVE_INFINITY;
        for (int p = 0; p < columns; p++) {
            if (!extremes.isEmpty(p)) {
                least = Math.min(least, extremes.least(p));
                greatest = Math.max(greatest, extremes.greatest(p));
            }
        }
        s.quiet("M", LEFT, top, "V", base, "H", right);
        if (!(least <= greatest)) {
            s.words("quiet", "no figure here", (LEFT + right) / 2, base - STRIP / 2, MIDDLE, Sketch.SMALL, false);
            return;
        }
        Optional<Unit> unit = column.unit();
        Scale scale = Scale.held(
                unit.orElse(Units.BARE_RATIO),
                unit.isPresent() ? unit.get().fromSi(least) : least,
                unit.isPresent() ? unit.get().fromSi(greatest) : greatest,
                base,
                top);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", right);
            s.words("quiet", tick.words(), LEFT - 5, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        boolean isSparse = log.time().firstFrom(to) - log.time().firstFrom(from) <= columns / 2;
        String path = isSparse ? rows(c, scale) : pixels(extremes, scale, each);
        if (!path.isEmpty()) {
            svg.add("path", "class", "trace", "d", path, "stroke", "currentColor", "stroke-width", "1.1");
        }
        marks(c, top);
    }

    private String heading(int c, Recording.Column column) {
        String header = column.header().isEmpty() ? "column " + (c + 1) : column.header();
        String meaning = column.channel() == Channel.UNKNOWN
                ? "not known what it is"
                : column.channel().label();
        String unit = column.unit().map(Unit::symbol).orElse("");
        String bare = header.replaceFirst("\\s*[\\[(].*", ""); // without the unit in brackets
        String whole = Channel.plain(bare).equals(Channel.plain(meaning)) ? meaning : bare + ": " + meaning;
        int most = (int) ((width - 8) / (0.56 * Sketch.SMALL)) - unit.length() - 2;
        return (whole.length() <= most ? whole : whole.substring(0, most - 1) + "…")
                + (unit.isEmpty() ? "" : ", " + unit);
    }

    /**
     * From one column of pixels to the next, in each up or down over all that is in it. Each step is told from the last in whole tenths of a pixel, which is short and sums up without a rest.
     * @param each tenths of a pixel from one column to the next
     */
    private static String pixels(Extremes extremes, Scale scale, int each) {
        StringBuilder path = new StringBuilder();
        int atX = 0;
        int atY = 0;
        for (int p = 0; p < extremes.pixels(); p++) {
            if (extremes.isEmpty(p)) {
                continue; // a row seldom falls into every one; the line goes over it to the next
            }
            int x = (int) Math.round(LEFT * TENTHS) + p * each + each / 2;
            int low = (int) Math.round(scale.at(extremes.least(p)) * TENTHS);
            int high = (int) Math.round(scale.at(extremes.greatest(p)) * TENTHS);
            int first = extremes.falls(p) ? high : low;
            int last = extremes.falls(p) ? low : high;
            if (path.isEmpty()) {
                path.append('M').append(tenths(x)).append(' ').append(tenths(first));
            } else if (x - atX == each) {
                step(path, 'h', each);
                step(path, 'v', first - atY);
            } else {
                path.append('l').append(tenths(x - atX)).append(' ').append(tenths(first - atY));
            }
            step(path, 'v', last - first);
            atX = x;
            atY = last;
        }
        return path.toString();
    }

    private static void step(StringBuilder path, char letter, int tenths) {
        if (tenths != 0) {
            path.append(letter).append(tenths(tenths));
        }
    }

    /** A number of tenths, as short as it can be written. */
    private static String tenths(int tenths) {
        int whole = Math.abs(tenths) / TENTHS;
        int rest = Math.abs(tenths) % TENTHS;
        return (tenths < 0 ? "-" : "") + (whole > 0 || rest == 0 ? whole : "") + (rest > 0 ? "." + rest : "");
    }

    /** Row by row, where few are seen; a row without a figure parts the line. */
    private String rows(int c, Scale scale) {
        double[] values = log.recording().values(c);
        StringBuilder path = new StringBuilder();
        boolean isOpen = false;
        for (int row = log.time().firstFrom(from);
                row < values.length && log.time().at(row) <= to;
                row++) {
            if (Double.isNaN(values[row])) {
                isOpen = false;
                continue;
            }
            path.append(isOpen ? 'L' : 'M')
                    .append(Svg.n(times.at(log.time().at(row))))
                    .append(' ')
                    .append(Svg.n(scale.at(values[row])));
            isOpen = true;
        }
        return path.toString();
    }

    // ---- faults

    /** Stretches of pixels, those near each other as one. */
    private List<double[]> merged(List<RowFault> faults) {
        List<double[]> merged = new ArrayList<>();
        for (RowFault fault : faults) {
            double x1 = times.at(log.time().at(fault.from()));
            double x2 = times.at(log.time().at(fault.to()));
            double[] last =
                    merged.isEmpty() ? new double[] {0, Double.NEGATIVE_INFINITY} : merged.get(merged.size() - 1);
            if (x1 - last[1] < NEAR) {
                last[1] = Math.max(last[1], x2);
            } else {
                merged.add(new double[] {x1, x2});
            }
        }
        return merged;
    }

    private List<RowFault> seen(java.util.function.Predicate<RowFault> which) {
        return log.faults().stream().filter(this::isSeen).filter(which).toList();
    }

    /** Shades the rows that are set aside, over all strips. */
    private void aside() {
        StringBuilder boxes = new StringBuilder();
        for (double[] one : merged(seen(log::isAside))) {
            double x = Math.max(LEFT, one[0] - 0.6);
            double across = Math.min(right, one[1] + 0.6) - x;
            boxes.append('M')
                    .append(Svg.n(x))
                    .append(' ')
                    .append(Svg.n(TOP))
                    .append('h')
                    .append(Svg.n(across));
            boxes.append('V')
                    .append(Svg.n(bottom))
                    .append('h')
                    .append(Svg.n(-across))
                    .append('z');
        }
        if (!boxes.isEmpty()) {
            svg.add("path", "class", "aside", "d", boxes.toString(), "fill", "currentColor", "fill-opacity", "0.22");
        }
    }

    /** A bar above the rows of a fault, filled where they are set aside, open where they are not. */
    private void marks(int c, double top) {
        bars(merged(seen(f -> f.column() == c && log.isAside(f))), top, true);
        bars(merged(seen(f -> f.column() == c && !log.isAside(f))), top, false);
        if (c == strips.get(0)) { // what is wrong with time, and with what is not drawn
            bars(merged(seen(f -> !strips.contains(f.column()) && log.isAside(f))), top, true);
            bars(merged(seen(f -> !strips.contains(f.column()) && !log.isAside(f))), top, false);
        }
    }

    private void bars(List<double[]> stretches, double top, boolean filled) {
        StringBuilder bars = new StringBuilder();
        for (double[] one : stretches) {
            double middle = (one[0] + one[1]) / 2;
            double half = Math.max(2, (one[1] - one[0]) / 2);
            double x = Math.max(LEFT, middle - half);
            double across = Math.min(right, middle + half) - x;
            bars.append('M')
                    .append(Svg.n(x))
                    .append(' ')
                    .append(Svg.n(top - 4))
                    .append('h')
                    .append(Svg.n(across));
            bars.append("v4h").append(Svg.n(-across)).append('z');
        }
        if (!bars.isEmpty()) {
            mark(bars.toString(), filled);
        }
    }

    private void mark(String path, boolean filled) {
        svg.add(
                "path",
                "class",
                filled ? "fault" : "told",
                "d",
                path,
                "stroke",
                "currentColor",
                "stroke-width",
                "1",
                "fill",
                filled ? "currentColor" : "none");
    }

    // ---- runs and axis

    private void runs() {
        double free = 0;
        int drawn = 0;
        for (Run run : log.runs()) {
            double start = log.time().at(run.from());
            double end = log.time().at(run.to());
            if (end < from || start > to || drawn++ >= MOST_RUNS) {
                continue;
            }
            for (double edge : new double[] {start, end}) {
                if (edge >= from && edge <= to) {
                    edge("M", times.at(edge), TOP - 26, "V", bottom);
                }
            }
            double x1 = times.at(start);
            double x2 = times.at(end);
            double half = 0.29 * Sketch.SMALL * run.name().length();
            double middle = Math.min(right - half, Math.max(LEFT + half, (x1 + x2) / 2));
            if (middle - half >= free) {
                s.words("quiet", run.name(), middle, TOP - 32, MIDDLE, Sketch.SMALL, false);
                free = middle + half + 4;
            }
        }
    }

    private void axis() {
        s.ticks(times.ticks(56), bottom, width);
        s.words(
                "quiet",
                log.time().isCounted() ? "rows, from 0: there is no time" : "time since the first row, s",
                right,
                bottom + 38,
                END,
                Sketch.SMALL,
                false);
    }

    /** Where a run begins or ends. */
    private void edge(Object... line) {
        svg.add(
                "path",
                "class",
                "run",
                "d",
                Svg.path(line),
                "stroke",
                "currentColor",
                "stroke-width",
                "1",
                "stroke-dasharray",
                "3 3");
    }

    private void legend() {
        double y = bottom + 44 + LINE - 4;
        mark("M4 " + Svg.n(y - 8) + "h12v4h-12z", true);
        svg.add(
                "path",
                "class",
                "aside",
                "d",
                Svg.path(Sketch.box(20, y - 11, 14, 12)),
                "fill",
                "currentColor",
                "fill-opacity",
                "0.22");
        s.words("quiet", "wrong, and its rows set aside", 42, y, START, Sketch.SMALL, false);
        y += LINE;
        mark("M12 " + Svg.n(y - 8) + "h14v4h-14z", false);
        s.words("quiet", "told, its rows kept", 42, y, START, Sketch.SMALL, false);
        y += LINE;
        edge("M", 4, y - 4.5, "H", 34);
        s.words("quiet", "where a run begins and ends", 42, y, START, Sketch.SMALL, false);
    }
}
