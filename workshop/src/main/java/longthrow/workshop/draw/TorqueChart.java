package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;

/**
 * Torque, and power below it, over one axis of speed: with the band that holds them in 95 of 100, a round point where the speed is approved and an open square where it is not, hatched where no power is
 * told. What was measured lies over it, dashed and each with marks of its own shape, with bars for its doubt; a peak alone is a dashed level.
 */
public final class TorqueChart {
    /** Key of the row's figure. */
    public static final String TORQUE = "torque";

    /** Key of the row's figure. */
    public static final String POWER = "power";

    private static final int WIDTH = 360;
    private static final int HEIGHT = 412;
    /** Room for words over the panels, and for a line of the legend, where some speed tells no power. */
    private static final double FOR_ZONES = 28;

    private static final double LEFT = 46;
    private static final double RIGHT = 348;
    private static final double HEADING = 96;
    private static final double HATCH = 8;
    private static final double ZONE_WORDS = 14;
    private static final double LINE = 16;
    private static final double TORQUE_TOP = 34;
    private static final double TORQUE_BOTTOM = 178;
    private static final double POWER_TOP = 214;
    private static final double POWER_BOTTOM = 344;
    private static final double SPOT = 3.6;

    /** Measured curves and levels that are drawn; the others are counted. Layout. */
    private static final int MOST_MEASURED = 6;

    /** Marks of one measured curve, so that bars stand apart; layout. */
    private static final int MOST_MARKS = 13;

    private static final String[] DASHES = {"6 3", "2 3", "9 3 2 3", "1 4", "12 4", "4 2 1 2"};

    /** Letters of a name in the legend; layout. */
    private static final int MOST_LETTERS = 34;

    private final TorqueCurve curve;
    private final FigurePrinter printer;
    private final UnitSystem units;
    private final Scale speeds;
    private final Svg svg;
    private final Sketch s;
    private final double height;
    private final double torqueTop;
    private final double torqueBottom;
    private final double powerTop;
    private final double powerBottom;

    private TorqueChart(TorqueCurve curve, UnitSystem units, String idPrefix) {
        this.curve = curve;
        this.units = units;
        this.printer = new FigurePrinter(units);
        double[] ran = measured().stream()
                .flatMap(held -> held.points().stream())
                .mapToDouble(Overlay.At::speed)
                .filter(speed -> !Double.isNaN(speed))
                .sorted()
                .toArray();
        double first = Math.min(curve.rows().get(0).speed(), ran.length == 0 ? Double.POSITIVE_INFINITY : ran[0]);
        double last =
                Math.max(curve.rows().get(curve.rows().size() - 1).speed(), ran.length == 0 ? 0 : ran[ran.length - 1]);
        double room = first == last ? 0.1 * first : 0.02 * (last - first);
        this.speeds = Scale.between(Dimension.ROTATIONAL_SPEED, units, first - room, last + room, LEFT, RIGHT);
        boolean hasZones = curve.rows().stream().anyMatch(row -> !row.standing().isTold());
        double down = hasZones ? FOR_ZONES : 0;
        this.torqueTop = TORQUE_TOP + down;
        this.torqueBottom = TORQUE_BOTTOM + down;
        this.powerTop = POWER_TOP + down;
        this.powerBottom = POWER_BOTTOM + down;
        int lines = measured().isEmpty() ? 0 : measured().size() + (all().size() > MOST_MEASURED ? 2 : 1);
        this.height = HEIGHT + (hasZones ? 2 : 0) * FOR_ZONES + lines * LINE;
        this.svg = new Svg(idPrefix, WIDTH, (int) height, "Torque and power over crank speed", said());
        this.s = new Sketch(svg, WIDTH, height);
    }

    /**
     * The chart, a whole SVG element.
     * @throws IllegalArgumentException for a curve without rows
     */
    public static String of(TorqueCurve curve, UnitSystem units, String idPrefix) {
        if (curve.rows().isEmpty()) {
            throw new IllegalArgumentException("torque is told at no speed, so it has no curve to be drawn");
        }
        TorqueChart chart = new TorqueChart(curve, units, idPrefix);
        chart.zones();
        chart.panel(TORQUE, chart.torqueTop, chart.torqueBottom);
        chart.panel(POWER, chart.powerTop, chart.powerBottom);
        chart.axis();
        chart.legend();
        return chart.svg.finished();
    }

    // ---- what was measured

    private List<Overlay.Held> all() {
        return curve.overlays().stream().flatMap(o -> o.held().stream()).toList();
    }

    /** Those that are drawn. */
    private List<Overlay.Held> measured() {
        return all().stream()
                .filter(held -> !held.points().isEmpty())
                .limit(MOST_MEASURED)
                .toList();
    }

    /** In the panel of a figure: measured curves stand in both, a peak in that of its own. */
    private static double value(Overlay.Held held, Overlay.At at, String key) {
        boolean isPower = key.equals(POWER);
        if (!held.isCurve()) {
            return isPower == (held.figure() == Dimension.POWER) ? at.measured() : Double.NaN;
        }
        return isPower ? at.measured() * at.speed() : at.measured();
    }

    private static double half(Overlay.Held held, Overlay.At at, String key) {
        double half = held.isCurve() && key.equals(POWER) ? at.measuredHalf() * at.speed() : at.measuredHalf();
        return Double.isNaN(half) ? 0 : half;
    }

    private void measured(String key, Scale scale, WordRoom room) {
        for (int i = 0; i < measured().size(); i++) {
            Overlay.Held held = measured().get(i);
            List<Object> line = new ArrayList<>();
            for (Overlay.At at : RunsChart.some(held.points(), MOST_MARKS)) {
                double value = value(held, at, key);
                if (Double.isNaN(value)) {
                    continue;
                }
                double y = scale.at(value);
                if (!held.isCurve()) {
                    s.dashed(DASHES[i], "M", LEFT, y, "H", RIGHT);
                    room.curve(LEFT, y, RIGHT, y);
                    continue;
                }
                double x = speeds.at(at.speed());
                double half = half(held, at, key);
                if (half > 0) {
                    s.quiet("M", x, scale.at(value - half), "V", scale.at(value + half));
                }
                room.curve(x - SPOT, y, x + SPOT, y);
                Sketch.add(line, x, y);
                mark(i, x, y);
            }
            if (line.size() > 3) {
                s.dashed(DASHES[i], line.toArray());
            }
        }
    }

    /** Shapes in turn: cross, upright cross, triangle; so that colour is never the only sign. */
    private void mark(int which, double x, double y) {
        double r = SPOT + 0.6;
        Object[] shape = switch (which % 3) {
            case 0 -> new Object[] {"M", x - r, y - r, "L", x + r, y + r, "M", x - r, y + r, "L", x + r, y - r};
            case 1 -> new Object[] {"M", x - r, y, "H", x + r, "M", x, y - r, "V", y + r};
            default -> new Object[] {"M", x - r, y + r, "H", x + r, "L", x, y - r, "Z"};
        };
        svg.add(
                "path",
                "class",
                "measured",
                "d",
                Svg.path(shape),
                "fill",
                "none",
                "stroke",
                "currentColor",
                "stroke-width",
                "1.6");
    }

    private void measuredLegend(double from) {
        double y = from;
        for (int i = 0; i < measured().size(); i++, y += LINE) {
            Overlay.Held held = measured().get(i);
            s.dashed(DASHES[i], "M", 4, y - 4.5, "H", 34);
            if (held.isCurve()) {
                mark(i, 19, y - 4.5);
            }
            String words = "measured: " + held.name() + (held.isCurve() ? "" : ", peak");
            s.words(
                    "quiet",
                    words.length() <= MOST_LETTERS ? words : words.substring(0, MOST_LETTERS - 1) + "…",
                    42,
                    y,
                    START,
                    Sketch.SMALL,
                    false);
        }
        if (all().size() > measured().size()) {
            s.words(
                    "quiet",
                    "and " + (all().size() - measured().size()) + " more, in words below",
                    42,
                    y,
                    START,
                    Sketch.SMALL,
                    false);
        }
    }

    // ---- in words

    private String said() {
        List<String> said = new ArrayList<>();
        most(TORQUE).ifPresent(said::add);
        most(POWER).ifPresent(said::add);
        for (Run run : runs()) {
            said.add(range(run) + ": " + run.standing().label()
                    + (run.standing().isTold() ? ", told at " + run.count() : ", no power told"));
        }
        for (Overlay.Held held : measured()) {
            said.add("Measured over it: " + held.name() + ", " + held.of() + ", "
                    + held.verdict().label());
        }
        return String.join(". ", said) + ". Every figure stands in the table of speeds.";
    }

    private Optional<String> most(String key) {
        return curve.most(key)
                .map(row -> "Most " + key + " " + words(row.figure(key).orElseThrow()) + " at " + speed(row.speed()));
    }

    private String words(Shaking.Figure figure) {
        Measured value = figure.figure();
        return (value.isUnknown()
                        ? printer.printDoubtUnknown(figure.dimension(), value.value())
                        : printer.print(figure.dimension(), value.value(), value.expanded()))
                .first()
                .text();
    }

    private String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, speed, 0).first().text();
    }

    private String range(Run run) {
        double from = curve.rows().get(run.from()).speed();
        double to = curve.rows().get(run.to()).speed();
        return run.from() == run.to() ? speed(from) : speed(from) + " to " + speed(to);
    }

    // ---- speeds that stand alike

    /** Rows next to each other that stand alike, by their numbers. */
    private record Run(Standing standing, int from, int to) {
        private int count() {
            return to - from + 1;
        }
    }

    private List<Run> runs() {
        List<Run> runs = new ArrayList<>();
        List<Row> rows = curve.rows();
        for (int i = 0, from = 0; i < rows.size(); i++) {
            boolean ends = i + 1 == rows.size()
                    || rows.get(i + 1).standing() != rows.get(i).standing();
            if (ends) {
                runs.add(new Run(rows.get(i).standing(), from, i));
                from = i + 1;
            }
        }
        return runs;
    }

    private double left(Run run) {
        return run.from() == 0 ? LEFT : end(run.from(), run.from() - 1);
    }

    private double right(Run run) {
        return run.to() + 1 == curve.rows().size() ? RIGHT : end(run.to(), run.to() + 1);
    }

    /** Where a zone ends towards the next row: half way where that tells no power either, else where it stands. */
    private double end(int row, int next) {
        Row beside = curve.rows().get(next);
        return speeds.at(
                beside.standing().isTold()
                        ? beside.speed()
                        : (beside.speed() + curve.rows().get(row).speed()) / 2);
    }

    /** Between a speed that is told and one that is not nobody knows where it ends: that is hatched too. */
    private void zones() {
        double free = LEFT;
        double line = ZONE_WORDS;
        for (Run run : runs()) {
            if (run.standing().isTold()) {
                continue;
            }
            double left = left(run);
            double right = right(run);
            s.doubt(left, torqueTop, right - left, torqueBottom - torqueTop);
            s.doubt(left, powerTop, right - left, powerBottom - powerTop);
            String words = run.standing().label();
            double half = words.length() * Sketch.SMALL * 0.56 / 2;
            double middle = Math.max(half + 2, Math.min(WIDTH - half - 2, (left + right) / 2));
            line = middle - half < free + 6 && free > LEFT
                    ? (line == ZONE_WORDS ? ZONE_WORDS + LINE : ZONE_WORDS)
                    : ZONE_WORDS;
            free = middle + half;
            s.words("quiet", words, middle, line, MIDDLE, Sketch.SMALL, true);
            if ((left + right) / 2 > HEADING) { // left of it the words of the panel stand in the way
                s.quiet("M", (left + right) / 2, line + 3, "V", torqueTop);
            }
        }
    }

    // ---- a panel

    private static double low(Measured figure) {
        return figure.isUnknown() ? figure.value() : Math.min(figure.low(), figure.value());
    }

    private static double high(Measured figure) {
        return figure.isUnknown() ? figure.value() : Math.max(figure.high(), figure.value());
    }

    private void panel(String key, double top, double bottom) {
        List<Measured> told = curve.rows().stream()
                .flatMap(row -> row.figure(key).stream())
                .map(Shaking.Figure::figure)
                .toList();
        if (told.isEmpty()) {
            s.words("quiet", key, 4, top - 12, START, Sketch.SMALL, true);
            s.quiet("M", LEFT, top, "V", bottom, "H", RIGHT);
            return;
        }
        Dimension dimension = key.equals(TORQUE) ? Dimension.TORQUE : Dimension.POWER;
        Scale scale = Scale.round(
                dimension,
                units,
                told.stream().mapToDouble(TorqueChart::low).min().orElse(0),
                Math.max(
                        told.stream().mapToDouble(TorqueChart::high).max().orElse(0),
                        measured().stream()
                                .flatMapToDouble(held -> held.points().stream()
                                        .mapToDouble(at -> value(held, at, key) + half(held, at, key)))
                                .filter(value -> !Double.isNaN(value))
                                .max()
                                .orElse(0)),
                bottom,
                top);
        s.words("quiet", key + ", " + scale.unit(), 4, top - 12, START, Sketch.SMALL, true);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", RIGHT);
            s.words("quiet", tick.words(), LEFT - 6, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, top, "V", bottom);
        s.quiet("M", LEFT, scale.at(0), "H", RIGHT);
        WordRoom room = new WordRoom(WIDTH, bottom, Sketch.SMALL);
        for (Run run : runs()) {
            for (double y = top; !run.standing().isTold() && y < bottom; y += HATCH) {
                room.curve(left(run), y, right(run), y);
            }
        }
        List<Row> line = new ArrayList<>();
        for (Row row : curve.rows()) {
            if (row.figure(key).isPresent()) {
                line.add(row);
            } else {
                stretch(line, key, scale, room);
                line.clear();
            }
        }
        stretch(line, key, scale, room);
        measured(key, scale, room);
        curve.most(key).ifPresent(row -> {
            Shaking.Figure figure = row.figure(key).orElseThrow();
            String words = words(figure);
            WordRoom.Box box = room.beside(
                    words, speeds.at(row.speed()), scale.at(figure.figure().value()));
            s.words("quiet", words, box.middle(), box.base(), MIDDLE, Sketch.SMALL, true);
        });
    }

    private static Measured figure(Row row, String key) {
        return row.figure(key).orElseThrow().figure();
    }

    /** Rows next to each other that all tell it. */
    private void stretch(List<Row> rows, String key, Scale scale, WordRoom room) {
        if (rows.isEmpty()) {
            return;
        }
        List<Object> band = new ArrayList<>();
        List<Object> line = new ArrayList<>();
        List<Row> back = new ArrayList<>(rows);
        Collections.reverse(back);
        for (Row row : rows) {
            Sketch.add(band, speeds.at(row.speed()), scale.at(high(figure(row, key))));
            Sketch.add(line, speeds.at(row.speed()), scale.at(figure(row, key).value()));
        }
        for (Row row : back) {
            Sketch.add(band, speeds.at(row.speed()), scale.at(low(figure(row, key))));
        }
        band.add("Z");
        s.band("band", "0.14", band.toArray());
        if (rows.size() > 1) {
            s.lit(line.toArray());
        }
        for (int i = 0; i < rows.size(); i++) {
            double x = speeds.at(rows.get(i).speed());
            double y = scale.at(figure(rows.get(i), key).value());
            if (i > 0) {
                room.curve(
                        speeds.at(rows.get(i - 1).speed()),
                        scale.at(figure(rows.get(i - 1), key).value()),
                        x,
                        y);
            }
            point(rows.get(i).standing(), x, y);
        }
    }

    private void point(Standing standing, double x, double y) {
        if (standing == Standing.APPROVED) {
            s.spot(x, y, SPOT);
            return;
        }
        s.open(x, y, SPOT);
    }

    private void axis() {
        for (Scale.Tick tick : speeds.ticks(48)) {
            s.quiet("M", tick.at(), torqueBottom, "v", 5);
        }
        s.ticks(speeds.ticks(48), powerBottom, WIDTH);
        s.words("quiet", "crank speed, " + speeds.unit(), RIGHT, powerBottom + 38, END, Sketch.SMALL, false);
    }

    private boolean stands(Standing standing) {
        return curve.rows().stream().anyMatch(row -> row.standing() == standing);
    }

    private void legend() {
        double y = powerBottom + 60;
        double x = 10;
        for (Standing standing : Standing.values()) {
            if (standing.isTold() && stands(standing)) {
                point(standing, x, y - 4.5);
                s.words("quiet", standing.label(), x + 10, y, START, Sketch.SMALL, false);
                x += 110;
            }
        }
        if (curve.rows().stream().anyMatch(row -> row.standing().isTold())) {
            svg.add(
                    "path",
                    "class",
                    "band",
                    "d",
                    Svg.path(Sketch.box(x - 6, y - 11, 18, 12)),
                    "fill",
                    "currentColor",
                    "fill-opacity",
                    "0.14",
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "0.8",
                    "stroke-opacity",
                    "0.6");
            s.words("quiet", "95 in 100", x + 18, y, START, Sketch.SMALL, false);
        }
        if (curve.rows().stream().anyMatch(row -> !row.standing().isTold())) {
            s.doubt(4, y + 13, 18, 12);
            s.words("quiet", "no power is told", 28, y + 24, START, Sketch.SMALL, false);
            y += FOR_ZONES;
        }
        measuredLegend(y + LINE + 4);
    }
}
