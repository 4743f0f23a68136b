package longthrow.workshop.draw;

import static longthrow.workshop.draw.Svg.n;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;
import longthrow.core.term.OutlinedPart;

/** The outline of a part to scale in its frame: as traced in a full line, by its readings in a broken one, over a grid with the datum in it. */
public final class OutlineDrawing {
    private static final int WIDTH = 440;
    private static final double MARGIN = 34;
    /** Tallest to width; layout. */
    private static final double TALLEST = 1.5;

    private static final double CHORDS = 20e-6;
    /** Drawings are of this size at least to each side of the datum [m]; layout. */
    private static final double LEAST = 12e-3;
    /** Walls and slabs by readings reach all across; of these no more is shown than so far beyond the rest [m]. */
    private static final double BEYOND = 8e-3;

    private static final double[] GRIDS = {1e-3, 2e-3, 5e-3, 10e-3, 20e-3, 50e-3};
    private static final int MOST_LINES = 16;
    private static final double TEXT = 13;

    private final OutlinedPart part;
    private double left = -LEAST;
    private double right = LEAST;
    private double low = -LEAST;
    private double high = LEAST;

    private OutlineDrawing(OutlinedPart part) {
        this.part = part;
    }

    /**
     * What was traced beside what the readings make of the part, a whole SVG element.
     * @param traced   in the frame of the part; of a case the hollow
     * @param readings the same part by its readings; none where they are missing
     */
    public static String of(OutlinedPart part, Optional<Outline> traced, List<Outline> readings, String idPrefix) {
        OutlineDrawing drawing = new OutlineDrawing(part);
        traced.ifPresent(outline -> drawing.hold(outline, 1));
        double farthest = traced.map(Outline::farthest).orElse(FARTHEST);
        readings.forEach(outline -> drawing.hold(outline, Math.min(FARTHEST, ROOM * farthest)));
        return drawing.drawn(
                traced,
                readings,
                idPrefix,
                "Outline of the " + part.label(),
                (traced.isPresent() ? "As traced in a full line" : "Nothing is traced yet")
                        + (readings.isEmpty() ? "" : ", by its readings in a broken line") + ", to scale.");
    }

    /** Room is made for what the readings make of a part as far as this [m], and as far as this share of what was traced. Layout. */
    private static final double FARTHEST = 0.12;

    private static final double ROOM = 1.3;

    /** How a part is to be drawn: an invented one, with its datum and the two directions. */
    public static String guide(OutlinedPart part, String idPrefix) {
        OutlineDrawing drawing = new OutlineDrawing(part);
        List<Outline> sample = sample(part);
        sample.forEach(outline -> drawing.hold(outline, 1));
        return drawing.drawn(
                Optional.empty(),
                sample,
                idPrefix,
                "How the " + part.label() + " is to be drawn",
                "(0, 0) is " + part.datum() + "; y points " + part.upwards() + "; x to the right, " + part.rightwards()
                        + ".");
    }

    private void hold(Outline outline, double most) {
        left = Math.min(left, -Math.min(most, outline.reach(-Math.PI / 2)));
        right = Math.max(right, Math.min(most, outline.reach(Math.PI / 2)));
        low = Math.min(low, -Math.min(most, outline.reach(Math.PI)));
        high = Math.max(high, Math.min(most, outline.reach(0)));
    }

    private String drawn(
            Optional<Outline> traced, List<Outline> broken, String idPrefix, String title, String description) {
        double wide = right - left + 2 * BEYOND;
        double tall = high - low + 2 * BEYOND;
        double scale = Math.min((WIDTH - 2 * MARGIN) / wide, (TALLEST * WIDTH - 2 * MARGIN) / tall); // pixels per metre
        double inWidth = wide * scale;
        double inHeight = tall * scale;
        double x0 = (WIDTH - inWidth) / 2;
        int height = (int) Math.ceil(inHeight + 2 * MARGIN + 1.5 * TEXT);
        Svg svg = new Svg(idPrefix, WIDTH, height, title, description);
        Frame frame = new Frame(x0 + (BEYOND - left) * scale, MARGIN + (high + BEYOND) * scale, scale);
        String clip = idPrefix + "-clip";
        svg.open("clipPath", "id", clip)
                .add("rect", "x", n(x0), "y", n(MARGIN), "width", n(inWidth), "height", n(inHeight))
                .close();
        svg.open("g", "clip-path", "url(#" + clip + ")");
        double grid = grid(Math.max(wide, tall));
        grid(svg, frame, grid, x0, inWidth, inHeight);
        broken.forEach(outline -> shape(svg, frame, outline, "1.6", "7 4", "0.03"));
        traced.ifPresent(outline -> shape(svg, frame, outline, "2.4", "", "0.14"));
        svg.close();
        datum(svg, frame, x0, inWidth);
        svg.open("text", "x", n(x0), "y", n(height - 6), "font-size", n(TEXT), "fill", "currentColor")
                .characters(String.format(Locale.ROOT, "grid %.0f mm", 1e3 * grid))
                .close();
        return svg.finished();
    }

    private static double grid(double across) {
        for (double grid : GRIDS) {
            if (across / grid <= MOST_LINES) {
                return grid;
            }
        }
        return GRIDS[GRIDS.length - 1];
    }

    private static void grid(Svg svg, Frame frame, double grid, double x0, double wide, double tall) {
        List<String> lines = new ArrayList<>();
        for (double x = frame.x(0) - Math.ceil((frame.x(0) - x0) / (grid * frame.scale)) * grid * frame.scale;
                x <= x0 + wide;
                x += grid * frame.scale) {
            lines.add("M " + n(x) + " " + n(MARGIN) + " v " + n(tall));
        }
        for (double y = frame.y(0) - Math.ceil((frame.y(0) - MARGIN) / (grid * frame.scale)) * grid * frame.scale;
                y <= MARGIN + tall;
                y += grid * frame.scale) {
            lines.add("M " + n(x0) + " " + n(y) + " h " + n(wide));
        }
        svg.add(
                "path",
                "d",
                String.join(" ", lines),
                "stroke",
                "currentColor",
                "stroke-width",
                "0.7",
                "stroke-opacity",
                "0.22");
    }

    private static void shape(Svg svg, Frame frame, Outline outline, String width, String dashes, String fill) {
        StringBuilder path = new StringBuilder();
        for (List<Point> loop : outline.drawn(CHORDS)) {
            char letter = 'M';
            for (Point p : loop) {
                path.append(letter)
                        .append(n(frame.x(p.x())))
                        .append(' ')
                        .append(n(frame.y(p.y())))
                        .append(' ');
                letter = 'L';
            }
            path.append("Z ");
        }
        List<String> attributes = new ArrayList<>(List.of(
                "d",
                path.toString().strip(),
                "stroke",
                "currentColor",
                "stroke-width",
                width,
                "fill",
                "currentColor",
                "fill-opacity",
                fill,
                "fill-rule",
                "evenodd"));
        if (!dashes.isEmpty()) {
            attributes.addAll(List.of("stroke-dasharray", dashes));
        }
        svg.add("path", attributes.toArray(String[]::new));
    }

    /** A cross with a circle, and the two directions. */
    private void datum(Svg svg, Frame frame, double x0, double wide) {
        double x = frame.x(0);
        double y = frame.y(0);
        svg.add(
                "path",
                "d",
                "M " + n(x - 12) + " " + n(y) + " H " + n(x + 26) + " m -6 -4 l 6 4 l -6 4 M " + n(x) + " " + n(y + 12)
                        + " V " + n(y - 26) + " m -4 6 l 4 -6 l 4 6",
                "stroke",
                "currentColor",
                "stroke-width",
                "1.6");
        svg.add("circle", "cx", n(x), "cy", n(y), "r", "4.5", "stroke", "currentColor", "stroke-width", "1.6");
        word(svg, x + 29, y + 4.5, "start", "x");
        word(svg, x + 7, y - 24, "start", "y");
        word(svg, (2 * x0 + wide) / 2, MARGIN - 18, "middle", "y " + brief(part.upwards()));
        word(
                svg,
                (2 * x0 + wide) / 2,
                MARGIN - 4,
                "middle",
                part.along() == OutlinedPart.Along.OWN_PLANE
                        ? "seen along the rocker's axis, its pivot to the left"
                        : "seen where the crankshaft turns clockwise ↻");
    }

    private static String brief(String upwards) {
        return upwards.split("[;,]", 2)[0];
    }

    private static void word(Svg svg, double x, double y, String anchor, String text) {
        svg.open("text", "x", n(x), "y", n(y), "font-size", n(TEXT), "text-anchor", anchor, "fill", "currentColor")
                .characters(text)
                .close();
    }

    /** Where the part's frame lies on the drawing. */
    private record Frame(double left, double top, double scale) {
        double x(double metres) {
            return left + metres * scale;
        }

        double y(double metres) {
            return top - metres * scale;
        }
    }

    private static Point mm(double x, double y) {
        return new Point(x / 1e3, y / 1e3);
    }

    private static Outline polygon(double... millimetres) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < millimetres.length; i += 2) {
            corners.add(mm(millimetres[i], millimetres[i + 1]));
        }
        return Outline.polygon(corners);
    }

    /** Shapes that show what is meant; every size is invented. */
    private static List<Outline> sample(OutlinedPart part) {
        return switch (part) {
            case COUNTERWEIGHT -> List.of(Outline.counterweight(0.015, 0.036, Math.PI, 2.3));
            case ROD ->
                List.of(polygon(
                        -22, -20, -16, -24, 16, -24, 22, -20, 22, 12, 14, 18, 7, 60, 11, 78, 8, 88, -8, 88, -11, 78, -7,
                        60, -14, 18, -22, 12));
            case DIPPER -> List.of(polygon(-5, -20, 5, -20, 3, -38, 0, -42, -3, -38));
            case PISTON_SKIRT ->
                List.of(polygon(-30, 24, 30, 24, 30, -18, 22, -18, 17, -10, -17, -10, -22, -18, -30, -18));
            case PIN_BOSS -> List.of(polygon(-12, 8, 12, 8, 12, -4, 8, -11, -8, -11, -12, -4));
            case CASE ->
                List.of(polygon(
                        -52, -50, -40, -66, 45, -66, 64, -48, 64, 30, 36, 46, 36, 80, -36, 80, -36, 46, -52, 34));
            case INTAKE_LOBE, EXHAUST_LOBE ->
                List.of(polygon(
                        0, -11, 6, -9.2, 10, -4.6, 11, 0, 10, 5, 7.4, 11, 4, 15.6, 0, 17, -4, 15.6, -7.4, 11, -10, 5,
                        -11, 0, -10, -4.6, -6, -9.2));
            case RELEASE -> List.of(Outline.ringSector(mm(0, 0), 0.008, 0.019, 2.4, 1.6));
            case ROCKER ->
                List.of(polygon(
                        -34, -8, -26, -8, -20, -2, -10, 2.5, -3, 1, 0, 0, 2.5, 0.6, 6, 4, 6, 9, -4, 12, -22, 9, -34,
                        3));
            case RETAINER ->
                List.of(polygon(
                        -6, -9, 6, -9, 6, -5, 11, -5, 11, -2.5, 4, -2.5, 4, -4, -4, -4, -4, -2.5, -11, -2.5, -11, -5,
                        -6, -5));
        };
    }
}
