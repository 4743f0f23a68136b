package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Units;

/**
 * One limit as a bar over the speeds of the crank: its 95 % band hatched, its best estimate a thick stroke, the speed wanted a broken line. All bars of a
 * ladder have one scale; so wide that what is written at the scale can be read on a phone.
 */
public final class RungBar {
    private static final int WIDTH = 320;
    private static final int HEIGHT = 26;
    private static final int SCALE_HEIGHT = 40;
    private static final double LEFT = 4;
    private static final double RIGHT = 316;
    private static final double MIDDLE = 13;
    private static final double HALF = 7;
    private static final double LEAST_WIDTH = 2;
    /** So many times the speed wanted is shown; a limit far above it is of no interest. Layout. */
    private static final double FARTHEST = 2.5;
    /** The speed wanted is shown with so much beyond it at least; layout. */
    private static final double BEYOND = 1.1;
    /** The scale ends at a round figure. */
    private static final double STEP = Units.RPM.toSi(500);

    private final double most;
    private final OptionalDouble asked;

    private RungBar(double most, OptionalDouble asked) {
        this.most = most;
        this.asked = asked;
    }

    /** Bars of a ladder, to one scale. */
    public static RungBar of(LimitLadder ladder) {
        List<Measured> speeds =
                ladder.rungs().stream().flatMap(r -> r.speed().stream()).toList();
        OptionalDouble asked = ladder.approval().asked();
        double largest = speeds.stream().mapToDouble(Measured::high).max().orElse(STEP);
        double shown = asked.isPresent()
                ? Math.max(Math.min(largest, FARTHEST * asked.getAsDouble()), BEYOND * asked.getAsDouble())
                : largest;
        return new RungBar(Math.ceil(shown / STEP * (1 - 1e-9)) * STEP, asked);
    }

    /** Highest speed shown [rad/s]. */
    public double most() {
        return most;
    }

    /**
     * The scale above the bars, a whole SVG element.
     * @param words for a speed [rad/s]
     */
    public String scale(DoubleFunction<String> words, String idPrefix) {
        String end = words.apply(most);
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                SCALE_HEIGHT,
                "Scale of the bars",
                "From standing still to " + end + "."
                        + (asked.isPresent()
                                ? " The broken line is the speed wanted, " + words.apply(asked.getAsDouble()) + "."
                                : ""));
        Sketch s = new Sketch(svg, WIDTH, SCALE_HEIGHT);
        double base = SCALE_HEIGHT - 2;
        s.quiet("M", LEFT, base, "H", RIGHT, "M", LEFT, base, "V", base - 6, "M", RIGHT, base, "V", base - 6);
        boolean isRoom = asked.isEmpty() || x(asked.getAsDouble()) < WIDTH - 110;
        s.words("quiet", "0", LEFT, base - 9, START, Sketch.SMALL, false);
        if (isRoom) {
            s.words("quiet", end, RIGHT, base - 9, END, Sketch.SMALL, false);
        }
        asked.ifPresent(speed -> {
            double at = x(speed);
            boolean isRight = at > WIDTH / 2.0;
            s.words(
                    "wanted",
                    "wanted: " + words.apply(speed),
                    at + (isRight ? -5 : 5),
                    13,
                    isRight ? END : START,
                    Sketch.SMALL,
                    true);
            wanted(svg, at, 2, base);
        });
        return svg.finished();
    }

    /**
     * The bar, a whole SVG element.
     * @param words that say the same for those who cannot see it
     * @throws IllegalArgumentException for a rung without a speed
     */
    public String bar(Rung rung, String words, String idPrefix) {
        Measured speed = rung.speed()
                .orElseThrow(() -> new IllegalArgumentException(rung.key() + " has no speed to be drawn at"));
        Svg svg = new Svg(idPrefix, WIDTH, HEIGHT, rung.label(), words);
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        s.quiet("M", LEFT, MIDDLE, "H", RIGHT);
        asked.ifPresent(wanted -> wanted(svg, x(wanted), 0, HEIGHT));
        if (speed.standardUncertainty() > 0 && speed.low() < most) {
            double from = x(speed.low());
            s.doubt(from, MIDDLE - HALF, Math.max(x(speed.high()) - from, LEAST_WIDTH), 2 * HALF);
        }
        if (speed.value() <= most) {
            double at = x(speed.value());
            s.lit("M", at, MIDDLE - HALF - 4, "V", MIDDLE + HALF + 4);
        } else {
            s.head(RIGHT, MIDDLE, 1, 0);
        }
        return svg.finished();
    }

    private static void wanted(Svg svg, double at, double from, double to) {
        svg.add(
                "path",
                "class",
                "wanted",
                "d",
                Svg.path("M", at, from, "V", to),
                "stroke",
                "currentColor",
                "stroke-width",
                "2",
                "stroke-dasharray",
                "5 3");
    }

    private double x(double speed) {
        return LEFT + Math.max(0, Math.min(1, speed / most)) * (RIGHT - LEFT);
    }
}
