package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.Shaking.Point;

/** Path of the tip of the shaking force over one turn: along the cylinder upwards, across it to the right, both to one scale. */
public final class HodographChart {
    private static final int SIZE = 320;
    private static final double CENTRE = 160;
    private static final double REACH = 116;
    private static final int QUARTER = 90;
    /** A path that reaches less far has no room for its angles; layout. */
    private static final double ROOM = 45;
    /** So near the upright axis a spot is written above or below; layout [pixels]. */
    private static final double NEAR_AXIS = 8;

    private HodographChart() {}

    /**
     * The chart of one path, a whole SVG element.
     * @param scale words for the force at the edge of the picture, given that force [N]
     * @param title for those who cannot see it
     * @throws IllegalArgumentException for an answer without a path
     */
    public static String of(Shaking shaking, DoubleFunction<String> scale, String title, String idPrefix) {
        return of(shaking.path(), List.of(), largest(shaking.path()), scale, title, idPrefix);
    }

    /**
     * The chart of one path beside another, a whole SVG element.
     * @param other broken line to compare with; empty for none
     * @param reach force that the picture must hold [N]; it reaches farther where a path does
     * @throws IllegalArgumentException where there is no path
     */
    public static String of(
            List<Point> path,
            List<Point> other,
            double reach,
            DoubleFunction<String> scale,
            String title,
            String idPrefix) {
        if (path.isEmpty()) {
            throw new IllegalArgumentException("no force is known, so it has no path to be drawn");
        }
        double most = round(Math.max(reach, Math.max(largest(path), largest(other))));
        Svg svg = new Svg(
                idPrefix,
                SIZE,
                SIZE,
                title,
                "Up is along the cylinder towards the head, right is across it to the side of the crank pin at 90°. The marks on the axes are "
                        + scale.apply(most) + "; the path reaches " + scale.apply(largest(path)) + ".");
        Sketch s = new Sketch(svg, SIZE, SIZE);
        cross(s, scale.apply(most));
        if (!other.isEmpty()) {
            s.unknown(line(other, most));
        }
        s.lit(line(path, most));
        angles(s, path, most);
        return svg.finished();
    }

    /** Largest part along or across [N], 0 for no path. */
    public static double largest(List<Point> path) {
        return path.stream()
                .mapToDouble(p -> Math.max(Math.abs(p.along()), Math.abs(p.across())))
                .max()
                .orElse(0);
    }

    private static void cross(Sketch s, String most) {
        s.axis(CENTRE - REACH - 14, CENTRE, CENTRE + REACH + 14, CENTRE);
        s.axis(CENTRE, CENTRE - REACH - 14, CENTRE, CENTRE + REACH + 14);
        for (double end : new double[] {-REACH, REACH}) {
            s.quiet("M", CENTRE + end, CENTRE - 5, "V", CENTRE + 5);
            s.quiet("M", CENTRE - 5, CENTRE + end, "H", CENTRE + 5);
        }
        s.words("quiet", "along, to the head: " + most, CENTRE, CENTRE - REACH - 20, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "across", SIZE - 4, CENTRE + 22, END, Sketch.SMALL, false);
    }

    private static void angles(Sketch s, List<Point> path, double most) {
        boolean isRoom = largest(path) / most * REACH > ROOM;
        for (int degrees = 0; degrees < 4 * QUARTER; degrees += QUARTER) {
            Point point = nearest(path, Math.toRadians(degrees));
            double px = x(point, most);
            double py = y(point, most);
            s.spot(px, py, isRoom ? 4 : 2);
            if (isRoom) {
                angle(s, degrees + "°", px, py);
            }
        }
    }

    /** Beside the spot, away from the middle; above or below it where it lies on the upright axis. */
    private static void angle(Sketch s, String words, double px, double py) {
        if (Math.abs(px - CENTRE) < NEAR_AXIS) {
            s.words("quiet", words, px + 6, py + (py > CENTRE ? 18 : -8), START, Sketch.SMALL, true);
        } else {
            boolean isRight = px > CENTRE;
            s.words("quiet", words, px + (isRight ? 9 : -9), py + 5, isRight ? START : END, Sketch.SMALL, true);
        }
    }

    private static Object[] line(List<Point> points, double most) {
        List<Object> line = new ArrayList<>();
        for (Point point : points) {
            line.add(line.isEmpty() ? "M" : "L");
            line.add(x(point, most));
            line.add(y(point, most));
        }
        line.add("Z");
        return line.toArray();
    }

    /** Up to one figure and a half. */
    private static double round(double most) {
        if (!(most > 0)) {
            return 1;
        }
        double step = Math.pow(10, Math.floor(Math.log10(most)));
        return Math.ceil(2 * most / step * (1 - 1e-9)) / 2 * step;
    }

    private static Point nearest(List<Point> path, double angle) {
        return path.stream()
                .min((a, b) -> Double.compare(Math.abs(a.angle() - angle), Math.abs(b.angle() - angle)))
                .orElseThrow();
    }

    private static double x(Point point, double most) {
        return CENTRE + point.across() / most * REACH;
    }

    private static double y(Point point, double most) {
        return CENTRE - point.along() / most * REACH;
    }
}
