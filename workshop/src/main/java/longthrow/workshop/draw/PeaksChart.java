package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.DynoRuns.Peak;
import longthrow.core.answer.DynoRuns.Run;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.UnitSystem;

/**
 * Runs that are a peak alone, in their order: a round point counts, an open square does not; the line joins the means of the baseline's sessions, so that a change is seen above or below where the baseline
 * stood at that time. One that is not corrected does not stand among those that are.
 */
public final class PeaksChart {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 330;
    private static final double LEFT = 46;
    private static final double RIGHT = 348;
    private static final double TOP = 52;
    private static final double BOTTOM = 232;
    private static final double SPOT = 3.6;

    /** Dots that find room beside each other. */
    private static final int MOST = 120;

    private final DynoRuns runs;
    private final List<Run> told;
    private final String baseline;
    private final Scale scale;
    private final Svg svg;
    private final Sketch s;

    private PeaksChart(DynoRuns runs, List<Run> told, String baseline, UnitSystem units, String idPrefix) {
        this.runs = runs;
        this.told = told;
        this.baseline = baseline;
        this.scale = Scale.held(
                runs.figure(),
                units,
                told.stream().mapToDouble(this::value).min().orElseThrow(),
                told.stream().mapToDouble(this::value).max().orElseThrow(),
                BOTTOM,
                TOP);
        this.svg = new Svg(idPrefix, WIDTH, HEIGHT, "Peaks of runs in their order", said());
        this.s = new Sketch(svg, WIDTH, HEIGHT);
    }

    /**
     * The chart, a whole SVG element; empty where no run has a peak.
     * @param baseline setup that others are held against
     */
    public static Optional<String> of(DynoRuns runs, String baseline, UnitSystem units, String idPrefix) {
        List<Run> told = RunsChart.some(
                runs.runs().stream()
                        .filter(run -> peak(run, runs.figure()).isPresent())
                        .filter(run -> runs.standard().isEmpty() || run.factor().isPresent())
                        .toList(),
                MOST);
        return told.isEmpty()
                ? Optional.empty()
                : Optional.of(new PeaksChart(runs, told, baseline, units, idPrefix).drawn());
    }

    private static Optional<Peak> peak(Run run, Dimension figure) {
        return figure == Dimension.POWER ? run.power() : run.torque();
    }

    private double value(Run run) {
        return peak(run, runs.figure()).orElseThrow().figure().value();
    }

    private String said() {
        long counting = told.stream().filter(Run::counts).count();
        return counting + " of " + told.size() + " runs count. Every run stands in the list of runs.";
    }

    private double x(int at) {
        double room = (RIGHT - LEFT) / told.size();
        return LEFT + room * (at + 0.5);
    }

    private String drawn() {
        String what = runs.figure() == Dimension.POWER ? "peak power" : "peak torque";
        s.words(
                "quiet",
                what + ", " + scale.unit() + ", " + (runs.standard().isEmpty() ? "as read" : runs.standard()),
                4,
                16,
                START,
                Sketch.SMALL,
                true);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", RIGHT);
            s.words("quiet", tick.words(), LEFT - 6, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, TOP, "V", BOTTOM, "H", RIGHT);
        sessions();
        joined();
        for (int i = 0; i < told.size(); i++) {
            point(told.get(i).counts(), x(i), scale.at(value(told.get(i))));
        }
        s.words("quiet", "runs in their order", RIGHT, BOTTOM + 20, END, Sketch.SMALL, false);
        legend();
        return svg.finished();
    }

    /** Runs next to each other of one session, by their numbers. */
    private record Stretch(Run first, int from, int to) {}

    private List<Stretch> stretches() {
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0, from = 0; i < told.size(); i++) {
            boolean ends = i + 1 == told.size()
                    || !told.get(i + 1).session().equals(told.get(i).session());
            if (ends) {
                stretches.add(new Stretch(told.get(i), from, i));
                from = i + 1;
            }
        }
        return stretches;
    }

    private void sessions() {
        double free = 0;
        for (Stretch one : stretches()) {
            double left = x(one.from()) - (RIGHT - LEFT) / told.size() / 2;
            double right = x(one.to()) + (RIGHT - LEFT) / told.size() / 2;
            if (one.from() > 0) {
                s.quiet("M", left, TOP, "V", BOTTOM);
            }
            String words = brief(one.first().session(), (int) ((right - left) / (0.6 * Sketch.SMALL)));
            if (left >= free && !words.isEmpty()) {
                s.words("quiet", words, (left + right) / 2, TOP - 10, MIDDLE, Sketch.SMALL, false);
                free = right;
            }
        }
    }

    private static String brief(String name, int letters) {
        return name.length() <= letters ? name : letters < 2 ? "" : name.substring(0, letters - 1) + "…";
    }

    private void joined() {
        List<Object> line = new ArrayList<>();
        for (Stretch one : stretches()) {
            List<Run> counting = told.subList(one.from(), one.to() + 1).stream()
                    .filter(Run::counts)
                    .toList();
            if (one.first().setup().equals(baseline) && !counting.isEmpty()) {
                Sketch.add(
                        line,
                        (x(one.from()) + x(one.to())) / 2,
                        scale.at(counting.stream()
                                .mapToDouble(this::value)
                                .average()
                                .orElseThrow()));
            }
        }
        if (line.size() == 3) { // one session alone: level
            line = new ArrayList<>(List.of("M", LEFT, line.get(2), "L", RIGHT, line.get(2)));
        }
        if (!line.isEmpty()) {
            s.dashed("6 4", line.toArray());
        }
    }

    private void point(boolean counts, double x, double y) {
        if (counts) {
            s.spot(x, y, SPOT);
            return;
        }
        s.open(x, y, SPOT);
    }

    private void legend() {
        point(true, 12, BOTTOM + 45);
        s.words("quiet", "counts", 42, BOTTOM + 49, START, Sketch.SMALL, false);
        point(false, 130, BOTTOM + 45);
        s.words("quiet", "does not count", 142, BOTTOM + 49, START, Sketch.SMALL, false);
        s.dashed("6 4", "M", 4, BOTTOM + 66, "H", 34);
        s.words(
                "quiet",
                "means of sessions with " + brief(baseline, 22) + ", joined",
                42,
                BOTTOM + 70,
                START,
                Sketch.SMALL,
                false);
    }
}
