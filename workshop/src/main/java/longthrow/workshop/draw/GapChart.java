package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Clearance;

/** Gap of a pair against the crank angle through two turns, with nothing left, what is wanted, and where it is least. */
public final class GapChart {
    private static final int WIDTH = 520;
    private static final int HEIGHT = 150;
    private static final double LEFT = 58;
    private static final double RIGHT = 510;
    private static final double TOP = 16;
    private static final double BOTTOM = 122;
    private static final int QUARTER = 180;
    private static final int TURNS = 720;
    /** So many times the largest figure of interest is shown of a gap that opens farther; layout. */
    private static final double OPEN = 6;
    /** At least so much is shown [m]; layout. */
    private static final double LEAST_SHOWN = 4e-3;

    private GapChart() {}

    /**
     * The chart, a whole SVG element; its pixels from {@code data-left} to {@code data-right} are the two turns.
     * @throws IllegalArgumentException for a pair without a curve
     */
    public static String of(Clearance pair, String idPrefix) {
        if (pair.curve().isEmpty()) {
            throw new IllegalArgumentException(pair.key() + " has no gap against angle");
        }
        Clearance.Gap least = pair.cold().orElseThrow();
        double wanted = wanted(pair);
        double largest = largest(pair);
        double high = high(pair);
        double warmest = pair.warmCurve().stream()
                .mapToDouble(Clearance.AtAngle::gap)
                .min()
                .orElse(0);
        double low = Math.min(Math.min(0, least.value()), warmest);
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                HEIGHT,
                pair.one() + " to " + pair.other() + ", gap against crank angle",
                "Least " + length(least.value()) + " at " + Math.round(Math.toDegrees(least.angle())) + "° cold"
                        + pair.running()
                                .filter(warm -> !pair.warmCurve().isEmpty())
                                .map(warm -> ", " + length(warm.value()) + " running, dotted")
                                .orElse("")
                        + (largest > high
                                ? "; drawn up to " + Svg.n(1e3 * high) + " mm, it opens to " + length(largest)
                                : "")
                        + ".");
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        double zero = y(0, low, high);
        s.quiet("M", LEFT, TOP, "L", LEFT, BOTTOM);
        for (int degrees = 0; degrees <= TURNS; degrees += QUARTER) {
            double x = x(degrees);
            s.quiet("M", x, BOTTOM, "L", x, BOTTOM + 4);
            s.words("quiet", degrees + "°", x, BOTTOM + 20, degrees == TURNS ? END : MIDDLE, Sketch.SMALL, false);
        }
        svg.add(
                "path",
                "class",
                "part",
                "d",
                Svg.path("M", LEFT, zero, "L", RIGHT, zero),
                "stroke",
                "currentColor",
                "stroke-width",
                "1.6");
        s.words("quiet", "0", LEFT - 6, zero + 5, END, Sketch.SMALL, false);
        boolean isCut = largest > high;
        s.words("quiet", (isCut ? "≥ " : "") + Svg.n(1e3 * high) + " mm", LEFT - 6, TOP + 5, END, Sketch.SMALL, false);
        if (wanted > 0) {
            double at = y(wanted, low, high);
            svg.add(
                    "path",
                    "class",
                    "unknown",
                    "d",
                    Svg.path("M", LEFT, at, "L", RIGHT, at),
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "1.2",
                    "stroke-dasharray",
                    "6 4");
        }
        if (!pair.warmCurve().isEmpty()) {
            beads(svg, curve(pair.warmCurve(), low, high));
            s.words("quiet", "― cold", LEFT + 8, TOP - 3, START, Sketch.SMALL, false);
            beads(svg, "M", LEFT + 72, TOP - 8, "L", LEFT + 96, TOP - 8);
            s.words("quiet", "running, at the best estimates", LEFT + 104, TOP - 3, START, Sketch.SMALL, false);
        }
        svg.add(
                "path",
                "class",
                "lit",
                "d",
                Svg.path(curve(pair.curve(), low, high)),
                "stroke",
                "currentColor",
                "stroke-width",
                "2");
        double x = x(Math.toDegrees(least.angle()));
        svg.add(
                "circle",
                "class",
                "lit",
                "cx",
                Svg.n(x),
                "cy",
                Svg.n(y(least.value(), low, high)),
                "r",
                "4",
                "fill",
                "currentColor");
        svg.add(
                "path",
                "class",
                "here",
                "d",
                Svg.path("M", 0, TOP, "L", 0, BOTTOM),
                "stroke",
                "currentColor",
                "stroke-width",
                "1.5",
                "visibility",
                "hidden");
        return svg.finished();
    }

    private static double wanted(Clearance pair) {
        return pair.limits().stream().mapToDouble(Clearance.Limit::least).max().orElse(0);
    }

    private static double largest(Clearance pair) {
        return Stream.concat(pair.curve().stream(), pair.warmCurve().stream())
                .mapToDouble(Clearance.AtAngle::gap)
                .max()
                .orElse(0);
    }

    /** The largest gap that is drawn [m]. */
    private static double high(Clearance pair) {
        double least = pair.cold().orElseThrow().value();
        double interest = Math.max(LEAST_SHOWN / OPEN, Math.max(wanted(pair), Math.abs(least)));
        return rounded(Math.min(Math.max(largest(pair), interest), OPEN * interest));
    }

    /** That a chart is cut off above, and where, for people; empty where it shows all, or there is none. */
    public static Optional<String> cutAt(Clearance pair) {
        if (pair.curve().isEmpty() || !(largest(pair) > high(pair))) {
            return Optional.empty();
        }
        return Optional.of("The chart ends at " + Svg.n(1e3 * high(pair))
                + " mm; where its line is flat there, the gap is larger: up to " + length(largest(pair)) + ".");
    }

    /** Dots wider than the line of the cold gap, which show where both lie on each other. */
    private static void beads(Svg svg, Object... path) {
        svg.add(
                "path",
                "class",
                "running",
                "d",
                Svg.path(path),
                "stroke",
                "currentColor",
                "stroke-width",
                "5",
                "stroke-linecap",
                "round",
                "stroke-dasharray",
                "0.1 9");
    }

    /** First and last pixel of the two turns, for whoever clicks. */
    public static String span() {
        return LEFT + " " + RIGHT + " " + WIDTH;
    }

    /** Up to a whole millimetre. */
    private static double rounded(double metres) {
        return 1e-3 * Math.ceil(1e3 * metres);
    }

    private static Object[] curve(List<Clearance.AtAngle> curve, double low, double high) {
        List<Object> path = new ArrayList<>();
        for (Clearance.AtAngle at : curve) {
            path.add(path.isEmpty() ? "M" : "L");
            path.add(x(Math.toDegrees(at.angle())));
            path.add(y(Math.min(at.gap(), high), low, high));
        }
        return path.toArray();
    }

    private static double x(double degrees) {
        return LEFT + degrees / TURNS * (RIGHT - LEFT);
    }

    private static double y(double gap, double low, double high) {
        return BOTTOM - (gap - low) / (high - low) * (BOTTOM - TOP);
    }

    private static String length(double metres) {
        return String.format(Locale.ROOT, "%.2f mm", 1e3 * metres + 0.0);
    }
}
