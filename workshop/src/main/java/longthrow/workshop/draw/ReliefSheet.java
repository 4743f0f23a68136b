package longthrow.workshop.draw;

import static longthrow.workshop.draw.Svg.n;

import java.util.List;
import java.util.Locale;
import longthrow.core.clear.ReliefCut;
import longthrow.core.clearance.Point;

/** What comes off a part, as a sheet to print at full size and to lay on it: present outline thin, what comes off shaded, a bar to check the printer by. */
public final class ReliefSheet {
    private static final double TENTHS = 1e4; // per metre
    /** Of the part around what comes off [0.1 mm]; layout. */
    private static final double AROUND = 120;
    /** Words need so much [0.1 mm]; layout. */
    private static final int LEAST_WIDTH = 1040;
    /** Nearer to the axis than a rule tells [m]. */
    private static final double ON_AXIS = 0.25e-3;

    private static final double LINE = 46;
    private static final double TEXT = 30;
    private static final double EDGE = 20;
    private static final double BAR = 100; // 10 mm

    private ReliefSheet() {}

    /**
     * A whole SVG file, in millimetres.
     * @param idPrefix begins every id: a letter, then letters, digits, - and _
     */
    public static String of(ReliefCut cut, String idPrefix) {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (List<Point> loop : cut.relief().outlines()) {
            for (Point p : loop) {
                left = Math.min(left, p.x() * TENTHS);
                right = Math.max(right, p.x() * TENTHS);
                low = Math.min(low, p.y() * TENTHS);
                high = Math.max(high, p.y() * TENTHS);
            }
        }
        double middle = (left + right) / 2;
        double width = Math.max(LEAST_WIDTH, right - left + 2 * AROUND);
        double height = high - low + 2 * AROUND;
        Frame frame = new Frame(middle - width / 2, high + AROUND);
        List<String> words = words(cut);
        Svg svg = Svg.toSize(
                idPrefix,
                (int) Math.ceil(width),
                (int) Math.ceil(height + LINE * (words.size() + 1.5)),
                "What comes off the " + cut.part(),
                String.join(" ", words));
        String clip = idPrefix + "-clip"; // cuts off what is beyond
        svg.open("clipPath", "id", clip)
                .add("rect", "x", "0", "y", "0", "width", n(width), "height", n(height))
                .close();
        svg.open("g", "clip-path", "url(#" + clip + ")");
        for (List<Point> loop : cut.edge()) {
            svg.add("path", "d", frame.path(loop), "stroke", "currentColor", "stroke-width", "1.5");
        }
        for (List<Point> loop : cut.relief().outlines()) {
            svg.add(
                    "path",
                    "d",
                    frame.path(loop),
                    "fill",
                    "currentColor",
                    "fill-opacity",
                    "0.25",
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "3");
        }
        double axis = frame.x(0);
        if (axis > 0 && axis < width) {
            svg.add(
                    "path",
                    "d",
                    "M " + n(axis) + " 0 V " + n(height),
                    "stroke",
                    "currentColor",
                    "stroke-width",
                    "1.5",
                    "stroke-dasharray",
                    "40 8 8 8");
        }
        svg.close();
        double y = height + LINE;
        svg.add(
                "path",
                "d",
                "M " + n(EDGE) + " " + n(y - TEXT) + " v " + n(TEXT) + " h " + n(BAR) + " v " + n(-TEXT),
                "stroke",
                "currentColor",
                "stroke-width",
                "3");
        line(svg, EDGE + BAR + EDGE, y, "10 mm: print at 100 % and measure this bar first");
        for (String text : words) {
            y += LINE;
            line(svg, EDGE, y, text);
        }
        return svg.finished();
    }

    private static void line(Svg svg, double x, double y, String text) {
        svg.open("text", "x", n(x), "y", n(y), "font-size", n(TEXT), "fill", "currentColor")
                .characters(text)
                .close();
    }

    private static List<String> words(ReliefCut cut) {
        Point deepest = cut.relief().deepest();
        return List.of(
                cut.part() + ": what comes off where " + cut.passes() + " passes,",
                String.format(
                        Locale.ROOT, "deepest %.2f mm, %s,", 1e3 * cut.relief().depth(), across(deepest.x())),
                String.format(
                        Locale.ROOT,
                        "%.1f mm %s %s; seen along the crankshaft",
                        1e3 * Math.abs(deepest.y()),
                        deepest.y() < 0 ? "below" : "above",
                        cut.isOnPiston() ? "the pin's centre" : "the crank axis"),
                String.format(
                        Locale.ROOT, "leaves %.2f mm cold there, at the best of what is read", 1e3 * cut.wanted()),
                "geometry only: whether the part bears it, its maker says");
    }

    private static String across(double x) {
        String side = x < 0 ? "on the thrust side" : "on the anti-thrust side";
        return Math.abs(x) < ON_AXIS
                ? "on the cylinder's axis"
                : String.format(Locale.ROOT, "%.1f mm from the cylinder's axis %s", 1e3 * Math.abs(x), side);
    }

    /** Where the part's frame lies on the sheet. */
    private record Frame(double left, double top) {
        double x(double metres) {
            return metres * TENTHS - left;
        }

        double y(double metres) {
            return top - metres * TENTHS;
        }

        String path(List<Point> loop) {
            StringBuilder path = new StringBuilder();
            for (Point p : loop) {
                path.append(path.length() == 0 ? "M " : " L ")
                        .append(n(x(p.x())))
                        .append(' ')
                        .append(n(y(p.y())));
            }
            return path.append(" Z").toString();
        }
    }
}
