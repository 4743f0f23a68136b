package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.Shaking.Point;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;

/**
 * Path of the tip of the shaking force over one turn: along the cylinder upwards, across it to the right, both to one scale, which is a bar of its own.
 * The greatest force either way is written where the path has it. Page and Book draw it alike.
 */
public final class HodographChart {
    /** Steps of the speeds that can be chosen [rpm]; layout. */
    public static final int STEP_RPM = 50;

    /** The picture holds what shakes at so much more than the speed of the build; layout. */
    private static final double BEYOND = 1.25;

    /** Share to which a force is said; layout. */
    private static final double SAID = 0.02;

    private static final int SIZE = 320;
    private static final double CENTRE = 160;
    private static final double REACH = 116;
    private static final double SCALE_LEFT = 12;
    private static final double SCALE_HIGH = SIZE - 12;
    private static final int QUARTER = 90;
    /** A path that reaches less far has no room for its angles; layout. */
    private static final double ROOM = 45;
    /** Spots nearer than this are one, with the words of both; layout [pixels]. */
    private static final double ONE_SPOT = 10;

    /** A spot on the path with what is written beside it; nothing where there is no room. */
    private record Spot(double x, double y, List<String> words) {
        private Spot {
            words = List.copyOf(words);
        }

        private boolean isNear(double otherX, double otherY) {
            return Math.hypot(x - otherX, y - otherY) < ONE_SPOT;
        }

        private Spot with(String more) {
            return new Spot(x, y, Stream.concat(words.stream(), Stream.of(more)).toList());
        }
    }

    private HodographChart() {}

    /** Up to here a picture of a build of this speed [rad/s] has room for what shakes [rpm]. */
    public static int farthestRpm(double speed) {
        return (int) Math.ceil(BEYOND * Units.RPM.fromSi(speed) / STEP_RPM) * STEP_RPM;
    }

    /** Force that a picture of this build holds [N]: what shakes at {@link #farthestRpm}, for forces grow with the square of the speed; 0 for no path. */
    public static double reach(Shaking own) {
        return own.path().isEmpty()
                ? 0
                : largest(own.path()) * Math.pow(Units.RPM.toSi(farthestRpm(own.speed())) / own.speed(), 2);
    }

    /** A force in one unit, to the place that {@link #SAID} of it leaves. */
    public static DoubleFunction<String> words(FigurePrinter printer) {
        return newtons -> {
            var figure = printer.print(Dimension.FORCE, newtons, SAID * newtons).first();
            return figure.value() + " " + figure.unit();
        };
    }

    /**
     * The chart of one path, a whole SVG element.
     * @param words for a force [N]
     * @param title for those who cannot see it
     * @throws IllegalArgumentException for an answer without a path
     */
    public static String of(Shaking shaking, DoubleFunction<String> words, String title, String idPrefix) {
        return of(shaking.path(), List.of(), reach(shaking), words, title, idPrefix);
    }

    /**
     * The chart of one path beside another, a whole SVG element.
     * @param other broken line to compare with; empty for none
     * @param reach force that the picture must hold [N]; it reaches farther where a path does
     * @param words for a force [N]
     * @throws IllegalArgumentException where there is no path
     */
    public static String of(
            List<Point> path,
            List<Point> other,
            double reach,
            DoubleFunction<String> words,
            String title,
            String idPrefix) {
        if (path.isEmpty()) {
            throw new IllegalArgumentException("no force is known, so it has no path to be drawn");
        }
        double largest = Math.max(reach, Math.max(largest(path), largest(other)));
        double most = largest > 0 ? largest : 1;
        String along = words.apply(Math.abs(greatest(path, Point::along).along())) + " along";
        String across = words.apply(Math.abs(greatest(path, Point::across).across())) + " across";
        String scale = "scale: " + words.apply(bar(most));
        Svg svg = new Svg(
                idPrefix,
                SIZE,
                SIZE,
                title,
                "Up is along the cylinder towards the head, right is across it to the side of the crank pin at 90°. The greatest force is "
                        + along + " and " + across + ". The bar in the corner is the " + scale + ".");
        Sketch s = new Sketch(svg, SIZE, SIZE);
        WordRoom room = new WordRoom(SIZE, SIZE, Sketch.SMALL);
        cross(s, room);
        scale(s, room, scale, bar(most) / most * REACH);
        if (!other.isEmpty()) {
            s.unknown(line(other, most, room));
        }
        s.lit(line(path, most, room));
        List<Spot> spots = spots(path, most);
        join(spots, greatest(path, Point::along), along, most);
        join(spots, greatest(path, Point::across), across, most);
        double radius = hasRoom(path, most) ? 4 : 2;
        for (Spot spot : spots) {
            s.spot(spot.x(), spot.y(), radius);
        }
        for (Spot spot : spots) {
            for (String one : spot.words()) {
                WordRoom.Box box = room.beside(one, spot.x(), spot.y());
                s.words("quiet", one, box.middle(), box.base(), MIDDLE, Sketch.SMALL, true);
            }
        }
        return svg.finished();
    }

    /** Largest part along or across [N], 0 for no path. */
    public static double largest(List<Point> path) {
        return path.stream()
                .mapToDouble(p -> Math.max(Math.abs(p.along()), Math.abs(p.across())))
                .max()
                .orElse(0);
    }

    private static void cross(Sketch s, WordRoom room) {
        double out = REACH + 14;
        s.axis(CENTRE - out, CENTRE, CENTRE + out, CENTRE);
        s.axis(CENTRE, CENTRE - out, CENTRE, CENTRE + out);
        room.axis(CENTRE - out, CENTRE, CENTRE + out, CENTRE);
        room.axis(CENTRE, CENTRE - out, CENTRE, CENTRE + out);
        String along = "along, to the head";
        s.words("quiet", along, CENTRE, CENTRE - REACH - 20, MIDDLE, Sketch.SMALL, false);
        room.words(along, CENTRE - room.wide(along) / 2, CENTRE - REACH - 20);
        String across = "across";
        s.words("quiet", across, SIZE - 4, CENTRE + 22, END, Sketch.SMALL, false);
        room.words(across, SIZE - 4 - room.wide(across), CENTRE + 22);
    }

    /** By itself in the corner, so that nobody takes it for the force. */
    private static void scale(Sketch s, WordRoom room, String words, double length) {
        double right = SCALE_LEFT + length;
        s.quiet(
                "M",
                SCALE_LEFT,
                SCALE_HIGH - 4,
                "V",
                SCALE_HIGH + 4,
                "M",
                right,
                SCALE_HIGH - 4,
                "V",
                SCALE_HIGH + 4,
                "M",
                SCALE_LEFT,
                SCALE_HIGH,
                "H",
                right);
        s.words("quiet", words, SCALE_LEFT, SCALE_HIGH - 9, START, Sketch.SMALL, false);
        room.words(words, SCALE_LEFT, SCALE_HIGH - 9);
        room.curve(SCALE_LEFT, SCALE_HIGH, right, SCALE_HIGH);
    }

    /** A round force of less than half the picture's reach. */
    private static double bar(double most) {
        double step = Math.pow(10, Math.floor(Math.log10(most / 2)));
        double times = most / 2 / step * (1 + 1e-9);
        return (times >= 5 ? 5 : times >= 2 ? 2 : 1) * step;
    }

    private static boolean hasRoom(List<Point> path, double most) {
        return largest(path) / most * REACH > ROOM;
    }

    /** Where the crank is at the quarters of a turn. */
    private static List<Spot> spots(List<Point> path, double most) {
        List<Spot> spots = new ArrayList<>();
        for (int degrees = 0; degrees < 4 * QUARTER; degrees += QUARTER) {
            Point point = nearest(path, Math.toRadians(degrees));
            spots.add(
                    new Spot(x(point, most), y(point, most), hasRoom(path, most) ? List.of(degrees + "°") : List.of()));
        }
        return spots;
    }

    private static void join(List<Spot> spots, Point point, String words, double most) {
        double px = x(point, most);
        double py = y(point, most);
        for (int k = 0; k < spots.size(); k++) {
            if (spots.get(k).isNear(px, py)) {
                spots.set(k, spots.get(k).with(words));
                return;
            }
        }
        spots.add(new Spot(px, py, List.of(words)));
    }

    private static Object[] line(List<Point> points, double most, WordRoom room) {
        List<Object> line = new ArrayList<>();
        Point before = points.get(points.size() - 1);
        for (Point point : points) {
            line.add(line.isEmpty() ? "M" : "L");
            line.add(x(point, most));
            line.add(y(point, most));
            room.curve(x(before, most), y(before, most), x(point, most), y(point, most));
            before = point;
        }
        line.add("Z");
        return line.toArray();
    }

    private static Point greatest(List<Point> path, ToDoubleFunction<Point> part) {
        return path.stream()
                .max(Comparator.comparingDouble(p -> Math.abs(part.applyAsDouble(p))))
                .orElseThrow();
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
