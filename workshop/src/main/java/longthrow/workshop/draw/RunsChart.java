package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.DynoRuns.Gain;
import longthrow.core.answer.DynoRuns.GainPoint;
import longthrow.core.answer.DynoRuns.Point;
import longthrow.core.answer.DynoRuns.Setup;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;

/**
 * Runs on a dynamometer: the mean of each setup with its band, the runs thin and those that do not count dotted, and below it what the change did, with the band at each speed alone and the one that holds at every speed at once. However
 * many rows a logger wrote, a picture has some hundred points: of a line every so many, its ends always. Of a stretch of speeds it has as many, so that it shows finer what is there.
 */
public final class RunsChart {
    private static final int WIDTH = 360;
    private static final double LEFT = 46;
    private static final double RIGHT = 348;
    private static final double TOP = 30;
    private static final double BOTTOM = 200;
    private static final double GAIN_TOP = 240;
    private static final double GAIN_BOTTOM = 350;
    private static final double LINE = 19;

    /** Of a mean and of its band; layout. */
    private static final int MOST_POINTS = 48;

    /** Of all thin lines together; layout. */
    private static final int MOST_THIN_POINTS = 300;

    /** Runs drawn thin; more only cover each other. */
    private static final int MOST_THIN = 30;

    /** Letters of a name that find room beside its sign. */
    private static final int MOST_LETTERS = 26;

    /** Letters of a line beside its sign. */
    private static final int MOST_NAMED = 44;

    private final DynoRuns runs;
    private final Optional<Gain> gain;
    private final UnitSystem units;
    private final List<Setup> setups;
    private final List<DynoRuns.Run> aside; // they do not count
    private final Speeds shown;
    private final Scale speeds;
    private final Svg svg;
    private final Sketch s;
    private final double bottom;

    /**
     * A stretch of speeds [rad/s].
     * @param high above the lowest
     */
    public record Speeds(double low, double high) {
        /** All there are. */
        public static final Speeds ALL = new Speeds(0, Double.MAX_VALUE);

        public Speeds {
            if (!(high > low)) {
                throw new IllegalArgumentException("speeds from " + low + " to " + high + " rad/s");
            }
        }

        /** As asked, in rpm; an end that is not said is open, and what is no stretch is all. */
        public static Speeds parse(String low, String high) {
            try {
                double from = low.isBlank() ? 0 : Units.RPM.toSi(Double.parseDouble(low.strip()));
                double to = high.isBlank() ? Double.MAX_VALUE : Units.RPM.toSi(Double.parseDouble(high.strip()));
                return to > from && from >= 0 ? new Speeds(from, to) : ALL;
            } catch (NumberFormatException none) {
                return ALL;
            }
        }

        /** What of it lies in another; the other where nothing does. */
        public Speeds within(Speeds all) {
            double from = Math.max(low, all.low);
            double to = Math.min(high, all.high);
            return to - from > LEAST * (all.high - all.low) ? new Speeds(from, to) : all;
        }

        /** Of a line what lies in it, its ends where the line crosses them. */
        private List<Point> of(List<Point> line) {
            List<Point> inside = new ArrayList<>();
            for (int i = 0; i < line.size(); i++) {
                Point p = line.get(i);
                if (i > 0) {
                    cross(line.get(i - 1), p, low).ifPresent(inside::add);
                    cross(line.get(i - 1), p, high).ifPresent(inside::add);
                }
                if (p.speed() >= low && p.speed() <= high) {
                    inside.add(p);
                }
            }
            return inside;
        }

        private static Optional<Point> cross(Point a, Point b, double speed) {
            if (!(a.speed() < speed && b.speed() > speed)) {
                return Optional.empty();
            }
            double share = (speed - a.speed()) / (b.speed() - a.speed());
            return Optional.of(new Point(
                    speed, a.value() + share * (b.value() - a.value()), a.half() + share * (b.half() - a.half())));
        }

        private List<GainPoint> ofGain(List<GainPoint> line) {
            return line.stream()
                    .filter(p -> p.speed() >= low && p.speed() <= high)
                    .toList();
        }

        private Setup of(Setup setup) {
            return new Setup(setup.name(), setup.runs(), of(setup.torque()));
        }
    }

    /** Least stretch of speeds, as a share of all; layout. */
    private static final double LEAST = 0.001;

    /** The speeds that curves reach over; empty where there is none. */
    public static Optional<Speeds> reach(DynoRuns runs) {
        double[] all = Stream.concat(
                        runs.setups().stream().flatMap(one -> one.torque().stream()),
                        runs.runs().stream().flatMap(run -> run.curve().stream()))
                .mapToDouble(Point::speed)
                .toArray();
        double low = Arrays.stream(all).min().orElse(0);
        double high = Arrays.stream(all).max().orElse(0);
        return high > low ? Optional.of(new Speeds(low, high)) : Optional.empty();
    }

    private RunsChart(
            DynoRuns runs, Optional<Gain> gain, Speeds wanted, Speeds all, UnitSystem units, String idPrefix) {
        this.runs = runs;
        this.gain = gain;
        this.units = units;
        this.shown = wanted.within(all);
        this.setups = runs.setups().stream()
                .filter(one -> gain.filter(g ->
                                !one.name().equals(g.setup()) && !one.name().equals(g.baseline()))
                        .isEmpty())
                .map(shown::of)
                .filter(one -> !one.torque().isEmpty())
                .toList();
        double room = shown.equals(all) ? 0.02 * (all.high() - all.low()) : 0;
        this.speeds =
                Scale.between(Dimension.ROTATIONAL_SPEED, units, shown.low() - room, shown.high() + room, LEFT, RIGHT);
        this.aside = some(
                runs.runs().stream()
                        .filter(run -> !run.counts()
                                && isOfThis(run)
                                && !shown.of(run.curve()).isEmpty())
                        .toList(),
                MOST_THIN);
        this.bottom = hasGain() ? GAIN_BOTTOM : BOTTOM;
        int lines = setups.size() + (setups.isEmpty() ? 0 : 2) + (aside.isEmpty() ? 0 : 1) + (hasGain() ? 2 : 0);
        int height = (int) (bottom + 50 + lines * LINE);
        this.svg = new Svg(idPrefix, WIDTH, height, title(), said());
        this.s = new Sketch(svg, WIDTH, height);
    }

    private boolean isOfThis(DynoRuns.Run run) {
        return gain.filter(g -> !run.setup().equals(g.setup()) && !run.setup().equals(g.baseline()))
                .isEmpty();
    }

    private boolean hasGain() {
        return gain.filter(g -> !shown.ofGain(g.points()).isEmpty()).isPresent();
    }

    /**
     * A whole SVG element; empty where no run that belongs to it has a curve.
     * @param gain  one change, shown beside its baseline with what it did below; empty for all setups
     * @param speeds that are shown, as far as there are curves
     */
    public static Optional<String> of(
            DynoRuns runs, Optional<Gain> gain, Speeds speeds, UnitSystem units, String idPrefix) {
        return reach(runs)
                .map(all -> new RunsChart(runs, gain, speeds, all, units, idPrefix))
                .filter(chart -> !chart.setups.isEmpty() || !chart.aside.isEmpty())
                .map(RunsChart::drawn);
    }

    private String drawn() {
        curves();
        if (hasGain()) {
            difference(gain.orElseThrow());
        }
        axis();
        legend();
        return svg.finished();
    }

    // ---- in words

    private String title() {
        return gain.map(g -> g.setup() + " beside " + g.baseline()).orElse("Torque of each run and setup");
    }

    private String said() {
        List<String> said = new ArrayList<>();
        for (Setup one : setups) {
            said.add(one.name() + ": mean of " + one.runs() + (one.runs() == 1 ? " run" : " runs") + ", from "
                    + rpm(one.torque().get(0).speed()) + " to "
                    + rpm(one.torque().get(one.torque().size() - 1).speed()));
        }
        if (!aside.isEmpty()) {
            said.add((aside.size() == 1 ? "one run that does" : aside.size() + " runs that do") + " not count: "
                    + names());
        }
        gain.ifPresent(g -> said.add(g.verdict().label()));
        return String.join(". ", said) + ". What it comes to stands in words beside it.";
    }

    private String names() {
        return aside.stream().map(run -> run.session() + " " + run.name()).collect(Collectors.joining(", "));
    }

    private static String rpm(double speed) {
        return String.format(Locale.ROOT, "%.0f rpm", Units.RPM.fromSi(speed));
    }

    // ---- curves

    private List<DynoRuns.Run> counting(Setup setup) {
        return runs.runs().stream()
                .filter(run -> run.counts()
                        && run.setup().equals(setup.name())
                        && !shown.of(run.curve()).isEmpty())
                .toList();
    }

    private List<DynoRuns.Run> thin() {
        List<DynoRuns.Run> all =
                setups.stream().flatMap(one -> counting(one).stream()).toList();
        return some(all, MOST_THIN);
    }

    /** Every so many of them, the first and the last always. */
    static <T> List<T> some(List<T> all, int most) {
        if (all.size() <= most) {
            return all;
        }
        List<T> some = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            some.add(all.get((int) Math.round(i * (all.size() - 1.0) / (most - 1))));
        }
        return some;
    }

    private void curves() {
        List<DynoRuns.Run> thin = thin();
        double[] all = Stream.concat(
                        setups.stream().flatMap(one -> one.torque().stream()),
                        Stream.concat(thin.stream(), aside.stream()).flatMap(run -> shown.of(run.curve()).stream()))
                .flatMap(p -> Stream.of(p.value(), p.value() - known(p.half()), p.value() + known(p.half())))
                .mapToDouble(Double::doubleValue)
                .toArray();
        double[] means = Stream.concat(
                        setups.stream().flatMap(one -> one.torque().stream()),
                        aside.stream().flatMap(run -> shown.of(run.curve()).stream()))
                .mapToDouble(Point::value)
                .toArray();
        double low = Arrays.stream(all).min().orElse(0);
        double high = Arrays.stream(all).max().orElse(0);
        double most = Arrays.stream(means).max().orElse(high);
        // a band of two runs may be wider than all else: it is cut rather than the curves pressed flat
        Scale scale = Scale.held(Dimension.TORQUE, units, Math.max(low, 0), Math.min(high, 1.5 * most), BOTTOM, TOP);
        panel("torque, " + scale.unit() + ", " + standard(), scale, TOP, BOTTOM);
        int each = Math.max(4, MOST_THIN_POINTS / Math.max(1, thin.size() + aside.size()));
        thin.forEach(run -> thin(line(some(shown.of(run.curve()), each), scale), false));
        aside.forEach(run -> thin(line(some(shown.of(run.curve()), each), scale), true));
        for (int i = 0; i < setups.size(); i++) {
            List<Point> points = some(setups.get(i).torque(), MOST_POINTS);
            List<Edge> band = points.stream()
                    .filter(p -> Double.isFinite(p.half()))
                    .map(p -> new Edge(
                            speeds.at(p.speed()), scale.at(p.value() - p.half()), scale.at(p.value() + p.half())))
                    .toList();
            band(band, isBaseline(setups.get(i)) ? "other" : "band", "0.16");
            mean(i, line(points, scale));
        }
    }

    private Object[] line(List<Point> points, Scale scale) {
        List<Object> line = new ArrayList<>();
        points.forEach(p -> Sketch.add(line, speeds.at(p.speed()), scale.at(p.value())));
        return line.toArray();
    }

    /** Of one run: dotted where it does not count. */
    private void thin(Object[] line, boolean isAside) {
        List<String> attributes = new ArrayList<>(
                List.of("class", isAside ? "thin aside" : "thin", "d", Svg.path(line), "stroke", "currentColor"));
        attributes.addAll(
                isAside
                        ? List.of("stroke-width", "1.2", "stroke-opacity", "0.6", "stroke-dasharray", "1.5 3.5")
                        : List.of("stroke-width", "0.7", "stroke-opacity", "0.55"));
        svg.add("path", attributes.toArray(String[]::new));
    }

    private static double known(double half) {
        return Double.isFinite(half) ? half : 0;
    }

    private boolean isBaseline(Setup setup) {
        return gain.map(g -> setup.name().equals(g.baseline()))
                .orElse(setup.name().equals(setups.get(0).name()));
    }

    /** Solid for the change, dashed for the baseline; further setups have longer dashes, so that colour is never the only sign. */
    private void mean(int which, Object... line) {
        if (isBaseline(setups.get(which))) {
            s.dashed("6 4", line);
        } else if (which <= 1) {
            s.lit(line);
        } else {
            s.dashed((6 * which) + " 3 2 3", line);
        }
    }

    private String standard() {
        return runs.standard().isEmpty() ? "as read" : runs.standard();
    }

    // ---- difference

    /** Lower and upper edge of a band. */
    private record Edge(double x, double low, double high) {}

    private void difference(Gain g) {
        List<GainPoint> points = some(shown.ofGain(g.points()), MOST_POINTS);
        double low = 0;
        double high = 0;
        for (GainPoint p : points) {
            double half = Double.isFinite(p.everySpeed()) ? p.everySpeed() : known(p.pointwise());
            low = Math.min(low, 100 * (p.gain() - half));
            high = Math.max(high, 100 * (p.gain() + half));
        }
        Scale scale = Scale.round(Dimension.RATIO, units, low, high, GAIN_BOTTOM, GAIN_TOP);
        panel("difference, % of " + brief(g.baseline()), scale, GAIN_TOP, GAIN_BOTTOM);
        band(edges(points, scale, true), "every", "0.10");
        band(edges(points, scale, false), "band", "0.26");
        s.quiet("M", LEFT, scale.at(0), "H", RIGHT);
        s.quiet("M", LEFT, scale.at(0) + 0.5, "H", RIGHT);
        List<Object> line = new ArrayList<>();
        points.forEach(p -> Sketch.add(line, speeds.at(p.speed()), scale.at(100 * p.gain())));
        s.lit(line.toArray());
    }

    private List<Edge> edges(List<GainPoint> points, Scale scale, boolean everySpeed) {
        List<Edge> edges = new ArrayList<>();
        for (GainPoint p : points) {
            double half = everySpeed ? p.everySpeed() : p.pointwise();
            if (Double.isFinite(half)) {
                edges.add(new Edge(
                        speeds.at(p.speed()), scale.at(100 * (p.gain() - half)), scale.at(100 * (p.gain() + half))));
            }
        }
        return edges;
    }

    // ---- pieces

    private void panel(String heading, Scale scale, double top, double base) {
        s.words("quiet", heading, 4, top - 12, START, Sketch.SMALL, true);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", RIGHT);
            s.words("quiet", tick.words(), LEFT - 6, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, top, "V", base);
    }

    private void band(List<Edge> edges, String kind, String opacity) {
        if (edges.size() < 2) {
            return;
        }
        List<Object> outline = new ArrayList<>();
        edges.forEach(e -> Sketch.add(outline, e.x(), e.high()));
        List<Edge> back = new ArrayList<>(edges);
        Collections.reverse(back);
        back.forEach(e -> Sketch.add(outline, e.x(), e.low()));
        outline.add("Z");
        s.band(kind, opacity, outline.toArray());
    }

    private void axis() {
        s.ticks(speeds.ticks(48), bottom, WIDTH);
        s.quiet("M", LEFT, bottom, "H", RIGHT);
        s.words("quiet", "crank speed, " + speeds.unit(), RIGHT, bottom + 38, END, Sketch.SMALL, false);
    }

    private static String brief(String name) {
        return brief(name, MOST_LETTERS);
    }

    private static String brief(String name, int letters) {
        return name.length() <= letters ? name : name.substring(0, letters - 1) + "…";
    }

    private void legend() {
        double y = bottom + 44 + LINE - 4;
        for (int i = 0; i < setups.size(); i++, y += LINE) {
            mean(i, "M", 4, y - 4.5, "H", 34);
            Setup one = setups.get(i);
            s.words("quiet", brief(one.name()) + ", mean of " + one.runs(), 42, y, START, Sketch.SMALL, false);
        }
        if (!setups.isEmpty()) {
            int drawn = thin().size();
            long all = setups.stream().mapToLong(one -> counting(one).size()).sum();
            thin(new Object[] {"M", 4, y - 4.5, "H", 34}, false);
            String words = drawn == all ? "each run that counts" : drawn + " of the " + all + " runs that count";
            s.words("quiet", words, 42, y, START, Sketch.SMALL, false);
            y += LINE;
        }
        if (!aside.isEmpty()) {
            thin(new Object[] {"M", 4, y - 4.5, "H", 34}, true);
            s.words("quiet", brief("does not count: " + names(), MOST_NAMED), 42, y, START, Sketch.SMALL, false);
            y += LINE;
        }
        if (!setups.isEmpty()) {
            sample(y, "other", "0.16", "95 in 100, of a mean, by its runs' scatter");
        }
        if (hasGain()) {
            sample(y + LINE, "band", "0.26", "95 in 100, at each speed alone");
            sample(y + 2 * LINE, "every", "0.10", "95 in 100, at every speed at once");
        }
    }

    private void sample(double y, String kind, String opacity, String words) {
        band(List.of(new Edge(4, y, y - 10), new Edge(34, y, y - 10)), kind, opacity);
        s.words("quiet", words, 42, y, START, Sketch.SMALL, false);
    }
}
