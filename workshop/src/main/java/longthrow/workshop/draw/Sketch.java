package longthrow.workshop.draw;

import static longthrow.workshop.draw.Svg.n;
import static longthrow.workshop.draw.Svg.path;

import java.util.ArrayList;
import java.util.List;

/**
 * What every drawing is made of: parts, the hatched datum, axes, dimensions with arrows, labels with leaders. Coordinates are pixels, x to the
 * right, y down. Nothing is turned or shifted by a transform, so each mark stands where its numbers say.
 */
class Sketch {
    static final double TEXT = 15;
    static final double SMALL = 13;

    /** Where a label hangs on its point. */
    enum Anchor {
        START,
        MIDDLE,
        END;

        private String key() {
            return switch (this) {
                case START -> "start";
                case MIDDLE -> "middle";
                case END -> "end";
            };
        }
    }

    private static final double ARROW = 9;
    private static final double HATCH = 7;
    /** A dimension shorter than this has its arrows outside, pointing at it. */
    private static final double SHORT = 26;

    private static final int LABEL_CHARACTERS = 22;
    /** Mean width of a bold letter to its size, about; sans-serif faces differ. */
    private static final double BOLD_WIDTH = 0.55;

    private static final double PLAIN_WIDTH = 0.52;
    /** Of a figure, of the size of letters. */
    private static final double FIGURE_WIDTH = 0.56;

    private static final double LINE = 1.15;
    /** Share of the width reckoned that the words surely fill; a line that begins there touches them. */
    private static final double SURE = 0.94;

    private final Svg svg;
    private final double width;
    private final double height;
    private final boolean solid;
    private final List<Runnable> held = new ArrayList<>();

    /** A sketch on a drawing of this size; what lies behind shows through. */
    Sketch(Svg svg, double width, double height) {
        this(svg, width, height, false);
    }

    /**
     * A sketch on a drawing of this size.
     * @param solid whether bodies hide what lies behind them and words stand on top, each with a rim of the ground's colour; such a drawing ends
     *     with {@link #setWords()}. Only for the browser: print libraries know no {@code paint-order}
     */
    Sketch(Svg svg, double width, double height, boolean solid) {
        this.svg = svg;
        this.width = width;
        this.height = height;
        this.solid = solid;
    }

    /** Writes the words that were held back to stand on top. */
    void setWords() {
        held.forEach(Runnable::run);
        held.clear();
    }

    private Sketch write(Runnable words) {
        if (solid) {
            held.add(words);
        } else {
            words.run();
        }
        return this;
    }

    /** Attributes of a text: those given, with the rim where there is one. */
    private String[] text(String... attributes) {
        List<String> all = new ArrayList<>(List.of(attributes));
        if (solid) {
            all.addAll(List.of("paint-order", "stroke", "stroke", "Canvas", "stroke-width", "4"));
            all.addAll(List.of("stroke-linejoin", "round"));
        }
        return all.toArray(String[]::new);
    }

    /** The ground again, over what was drawn. */
    private void ground(Object... outline) {
        if (solid) {
            svg.add("path", "class", "ground", "d", path(outline), "fill", "Canvas");
        }
    }

    Svg svg() {
        return svg;
    }

    // ---- lines and faces

    private Sketch marks(String kind, String data, double width, String... more) {
        List<String> attributes =
                new ArrayList<>(List.of("class", kind, "d", data, "stroke", "currentColor", "stroke-width", n(width)));
        attributes.addAll(List.of(more));
        svg.add("path", attributes.toArray(String[]::new));
        return this;
    }

    /** A body of metal, by its outline. */
    Sketch part(Object... outline) {
        ground(outline);
        return marks("part", path(outline), 1.6, "fill", "currentColor", "fill-opacity", solid ? "0.18" : "0.1");
    }

    /** An opening in a body, by its outline: the ground is seen in it. */
    Sketch hole(Object... outline) {
        ground(outline);
        return marks("hole", path(outline), 1.6);
    }

    Sketch holeBox(double x, double y, double width, double height) {
        return hole(box(x, y, width, height));
    }

    Sketch holeRound(double x, double y, double radius) {
        return hole(round(x, y, radius));
    }

    Sketch partBox(double x, double y, double width, double height) {
        return part(box(x, y, width, height));
    }

    Sketch partRound(double x, double y, double radius) {
        return part(round(x, y, radius));
    }

    /** An instrument, by its outline: darker than a part. */
    Sketch tool(Object... outline) {
        ground(outline);
        return marks("tool", path(outline), 1.6, "fill", "currentColor", "fill-opacity", solid ? "0.42" : "0.35");
    }

    Sketch toolBox(double x, double y, double width, double height) {
        return tool(box(x, y, width, height));
    }

    Sketch toolRound(double x, double y, double radius) {
        return tool(round(x, y, radius));
    }

    /** A line of an instrument that encloses nothing. */
    Sketch toolLine(double width, Object... data) {
        return marks("tool", path(data), width);
    }

    /** A line that helps to see and is not measured. */
    Sketch quiet(Object... data) {
        return marks("quiet", path(data), 1, "stroke-opacity", "0.7");
    }

    Sketch quietRound(double x, double y, double radius) {
        return quiet(round(x, y, radius));
    }

    /** An outline whose size is not known. */
    Sketch unknown(Object... data) {
        return marks("unknown", path(data), 1.6, "stroke-dasharray", "5 4");
    }

    /** Something that stands out: the thing read. */
    Sketch lit(Object... data) {
        return marks("lit", path(data), 2.6);
    }

    /** A line across a picture at a tick of its scale. */
    Sketch grid(Object... data) {
        return marks("grid", path(data), 1, "stroke-opacity", "0.22");
    }

    /** What a band of doubt covers, by its outline. */
    Sketch band(String kind, String opacity, Object... outline) {
        return marks(
                kind, path(outline), 0.8, "fill", "currentColor", "fill-opacity", opacity, "stroke-opacity", "0.6");
    }

    /** A curve in dashes, so that colour is never the only sign. */
    Sketch dashed(String dashes, Object... data) {
        return marks("mean", path(data), 2.2, "stroke-dasharray", dashes);
    }

    /** A square left open: a place that does not count as the filled spots do. */
    Sketch open(double x, double y, double half) {
        return marks("open", path(box(x - half, y - half, 2 * half, 2 * half)), 1.6, "fill", "Canvas");
    }

    /** One more point of a line. */
    static void add(List<Object> line, double x, double y) {
        line.add(line.isEmpty() ? "M" : "L");
        line.add(x);
        line.add(y);
    }

    /** A filled spot: the place read. */
    Sketch spot(double x, double y, double radius) {
        svg.add("circle", "class", "lit", "cx", n(x), "cy", n(y), "r", n(radius), "fill", "currentColor");
        return this;
    }

    Sketch axis(double x1, double y1, double x2, double y2) {
        return marks("quiet", path("M", x1, y1, "L", x2, y2), 1, "stroke-dasharray", "12 3 3 3");
    }

    /** The face measured from: thick, hatched to the right of the way from 1 to 2; going right on the page that is below. */
    Sketch datumFace(double x1, double y1, double x2, double y2) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        StringBuilder ticks = new StringBuilder();
        for (double at = HATCH; at <= length; at += HATCH) {
            double x = x1 + ux * at;
            double y = y1 + uy * at;
            ticks.append(path("M", x, y, "L", x - HATCH * (ux + uy), y + HATCH * (ux - uy)))
                    .append(' ');
        }
        marks("datum", ticks.toString().strip(), 1.2);
        return marks("datum", path("M", x1, y1, "L", x2, y2), 3.2);
    }

    /**
     * Part of a round face measured from, hatched like {@link #datumFace}.
     * @param from   where it begins, clockwise from the right [deg]
     * @param to     where it ends, more than {@code from} and less than half a turn on [deg]
     * @param inward whether the metal is inside, as in a shaft; outside round a hole
     */
    Sketch datumArc(double x, double y, double radius, double from, double to, boolean inward) {
        double other = inward ? radius - HATCH : radius + HATCH;
        double step = Math.toDegrees(HATCH / radius);
        StringBuilder ticks = new StringBuilder();
        for (double at = from; at + step <= to + 1e-9; at += step) {
            double a = Math.toRadians(at);
            double b = Math.toRadians(at + step);
            ticks.append(path(
                            "M",
                            x + radius * Math.cos(a),
                            y + radius * Math.sin(a),
                            "L",
                            x + other * Math.cos(b),
                            y + other * Math.sin(b)))
                    .append(' ');
        }
        marks("datum", ticks.toString().strip(), 1.2);
        double a = Math.toRadians(from);
        double b = Math.toRadians(to);
        return marks(
                "datum",
                path(
                        "M",
                        x + radius * Math.cos(a),
                        y + radius * Math.sin(a),
                        "A",
                        radius,
                        radius,
                        "0 0 1",
                        x + radius * Math.cos(b),
                        y + radius * Math.sin(b)),
                3.2);
    }

    /** The axis measured from. */
    Sketch datumAxis(double x1, double y1, double x2, double y2) {
        return marks("datum", path("M", x1, y1, "L", x2, y2), 2.6, "stroke-dasharray", "16 4 4 4");
    }

    /** Strokes at 45 degrees over a box: doubt. */
    Sketch doubt(double x, double y, double width, double height) {
        StringBuilder strokes = new StringBuilder();
        for (double at = 5; at < width + height; at += 5) {
            double fromX = Math.min(at, width);
            double fromY = at - fromX;
            double toY = Math.min(at, height);
            strokes.append(path("M", x + fromX, y + fromY, "L", x + at - toY, y + toY))
                    .append(' ');
        }
        if (strokes.length() > 0) {
            marks("doubt", strokes.toString().strip(), 1);
        }
        return marks("doubt", path(box(x, y, width, height)), 0.8);
    }

    static Object[] box(double x, double y, double width, double height) {
        return new Object[] {"M", x, y, "h", width, "v", height, "h", -width, "Z"};
    }

    /** A circle as two halves. Their chord is twice the radius as written: a chord cut short by rounding makes an egg of them. */
    static Object[] round(double x, double y, double radius) {
        double written = Svg.shown(radius);
        return new Object[] {
            "M",
            Svg.shown(x) - written,
            y,
            "a",
            written,
            written,
            "0 1 0",
            2 * written,
            "0",
            "a",
            written,
            written,
            "0 1 0",
            -2 * written,
            "0",
            "Z"
        };
    }

    // ---- dimensions

    /** A dimension up and down at x. */
    Sketch upright(double x, double y1, double y2) {
        return dimension(x, y1, x, y2);
    }

    /** A dimension across at y. */
    Sketch level(double x1, double x2, double y) {
        return dimension(x1, y, x2, y);
    }

    /** A dimension up and down at x of a thing that ends at ofX: lines lead from the thing to the arrows. */
    Sketch uprightOff(double x, double y1, double y2, double ofX) {
        double past = x + Math.signum(x - ofX) * 6;
        quiet("M", ofX, y1, "H", past, "M", ofX, y2, "H", past);
        return upright(x, y1, y2);
    }

    /** A dimension across at y of a thing that ends at ofY: lines lead from the thing to the arrows. */
    Sketch levelOff(double x1, double x2, double y, double ofY) {
        double past = y + Math.signum(y - ofY) * 6;
        quiet("M", x1, ofY, "V", past, "M", x2, ofY, "V", past);
        return level(x1, x2, y);
    }

    /** A line with an arrow at both ends; arrows from outside where there is no room between. */
    Sketch dimension(double x1, double y1, double x2, double y2) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        boolean outside = length < SHORT;
        double over = outside ? 2.2 * ARROW : 0;
        marks("lit", path("M", x1 - ux * over, y1 - uy * over, "L", x2 + ux * over, y2 + uy * over), 1.8);
        head(x1, y1, outside ? ux : -ux, outside ? uy : -uy);
        head(x2, y2, outside ? -ux : ux, outside ? -uy : uy);
        return this;
    }

    /** An arrow whose tip is at (x, y), pointing along (ux, uy). */
    Sketch head(double x, double y, double ux, double uy) {
        double wing = ARROW * 0.36;
        svg.add(
                "path",
                "class",
                "lit",
                "fill",
                "currentColor",
                "d",
                path(
                        "M",
                        x,
                        y,
                        "L",
                        x - ux * ARROW - uy * wing,
                        y - uy * ARROW + ux * wing,
                        "L",
                        x - ux * ARROW + uy * wing,
                        y - uy * ARROW - ux * wing,
                        "Z"));
        return this;
    }

    /** A symbol as the registry writes it, the letters behind _ set lower. */
    Sketch symbol(String symbol, double x, double y, Anchor anchor) {
        return write(() -> writeSymbol(symbol, x, y, anchor));
    }

    private void writeSymbol(String symbol, double x, double y, Anchor anchor) {
        int low = symbol.indexOf('_');
        svg.open(
                "text",
                text(
                        "class",
                        "lit",
                        "x",
                        n(x),
                        "y",
                        n(y),
                        "text-anchor",
                        anchor.key(),
                        "font-size",
                        "18",
                        "font-weight",
                        "bold",
                        "fill",
                        "currentColor"));
        if (low < 0) {
            svg.characters(symbol);
        } else {
            svg.characters(symbol.substring(0, low));
            svg.open("tspan", "dy", "5", "font-size", "13")
                    .characters(symbol.substring(low + 1))
                    .close();
        }
        svg.close();
    }

    // ---- words

    /**
     * Marks below an axis with their figures, the last of them kept inside the picture.
     * @param width of the picture
     */
    void ticks(List<Scale.Tick> ticks, double bottom, double width) {
        for (Scale.Tick tick : ticks) {
            quiet("M", tick.at(), bottom, "v", 5);
            double half = tick.words().length() * SMALL * FIGURE_WIDTH / 2;
            words(
                    "quiet",
                    tick.words(),
                    Math.min(tick.at(), width - half - 1),
                    bottom + 20,
                    Anchor.MIDDLE,
                    SMALL,
                    false);
        }
    }

    Sketch words(String kind, String text, double x, double y, Anchor anchor, double size, boolean bold) {
        String[] attributes = text(
                "class",
                kind,
                "x",
                n(x),
                "y",
                n(y),
                "text-anchor",
                anchor.key(),
                "font-size",
                n(size),
                "font-weight",
                bold ? "bold" : "normal",
                "fill",
                "currentColor");
        return write(() -> svg.open("text", attributes).characters(text).close());
    }

    /** A few quiet words; long ones take several lines. */
    Sketch note(String text, double x, double y, Anchor anchor) {
        Block block = block(lines(text), x, y, anchor, SMALL, PLAIN_WIDTH);
        for (int i = 0; i < block.lines().size(); i++) {
            words("quiet", block.lines().get(i), block.x(), block.y() + i * SMALL * LINE, anchor, SMALL, false);
        }
        return this;
    }

    /** Words with a line to what they name; long ones take several lines. */
    Sketch label(String kind, String text, double x, double y, Anchor anchor, double toX, double toY) {
        Block block = block(lines(text), x, y, anchor, TEXT, BOLD_WIDTH);
        for (int i = 0; i < block.lines().size(); i++) {
            words(kind, block.lines().get(i), block.x(), block.y() + i * TEXT * LINE, anchor, TEXT, true);
        }
        // The line begins at the edge of the words nearest to what they name.
        double left = block.left() - 4;
        double right = block.left() + block.width() * SURE + 4;
        double top = block.y() - TEXT;
        double bottom = block.bottom() + 5;
        double fromX = Math.min(Math.max(toX, left), right);
        double fromY = Math.min(Math.max(toY, top), bottom);
        if (fromX > left && fromX < right) {
            fromY = toY < block.y() ? top : bottom;
        }
        marks(kind, path("M", fromX, fromY, "L", toX, toY), 1);
        svg.add("circle", "class", kind, "cx", n(toX), "cy", n(toY), "r", "2.8", "fill", "currentColor");
        return this;
    }

    /** Lines of text where they stand: anchor point of the first, left edge, width, base of the last. */
    private record Block(List<String> lines, double x, double y, double left, double width, double bottom) {}

    /** Where the lines go, moved into the drawing when they would stand over its edge. */
    private Block block(List<String> lines, double x, double y, Anchor anchor, double size, double letter) {
        double wide = lines.stream().mapToInt(String::length).max().orElse(0) * size * letter;
        double before = anchor == Anchor.START ? 0 : anchor == Anchor.END ? wide : wide / 2;
        double left = Math.max(2, Math.min(x - before, width - wide - 2));
        double tall = (lines.size() - 1) * size * LINE;
        double first = Math.min(y, height - tall - size * 0.35);
        return new Block(lines, left + before, first, left, wide, first + tall);
    }

    private static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            if (line.length() > 0 && line.length() + 1 + word.length() > LABEL_CHARACTERS) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
