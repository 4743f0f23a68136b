package longthrow.workshop.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.regex.Pattern;

/** Writes one SVG drawing: text escaped, numbers short, elements closed, with a title and a description for those who cannot see it. */
final class Svg {
    /** Pixels to this place; finer is not seen. */
    private static final int PLACES = 1;

    private static final Pattern PREFIX = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*");

    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();

    /**
     * Begins a drawing.
     * @param idPrefix begins every id, so that many drawings stand on one page: a letter, then letters, digits, - and _
     * @throws IllegalArgumentException for another prefix, or for a size below 1
     */
    Svg(String idPrefix, int width, int height, String title, String description) {
        this(idPrefix, width, height, "", title, description);
    }

    /**
     * Begins a drawing that is printed to size: its coordinates are tenths of a millimetre, so that a place is told to a hundredth.
     * @throws IllegalArgumentException for another prefix, or for a size below 1
     */
    static Svg toSize(String idPrefix, int tenthsWide, int tenthsHigh, String title, String description) {
        return new Svg(idPrefix, tenthsWide, tenthsHigh, "mm", title, description);
    }

    private Svg(String idPrefix, int width, int height, String unit, String title, String description) {
        if (!PREFIX.matcher(idPrefix).matches()) {
            throw new IllegalArgumentException("id prefix is '" + idPrefix
                    + "'; it must begin with a letter and go on with letters, digits, - and _");
        }
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException(
                    "size is " + width + " by " + height + " pixels; both must be 1 or more");
        }
        open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "class",
                "drawing",
                "width",
                unit.isEmpty() ? Integer.toString(width) : n(width / 10.0) + unit,
                "height",
                unit.isEmpty() ? Integer.toString(height) : n(height / 10.0) + unit,
                "viewBox",
                "0 0 " + width + " " + height,
                "role",
                "img",
                "aria-labelledby",
                idPrefix + "-title " + idPrefix + "-desc",
                "font-family",
                "sans-serif",
                "fill",
                "none",
                "stroke-linejoin",
                "round");
        open("title", "id", idPrefix + "-title");
        characters(title);
        close();
        open("desc", "id", idPrefix + "-desc");
        characters(description);
        close();
    }

    /** Opens an element. Attributes come as name, value, name, value. */
    Svg open(String element, String... attributes) {
        begin(element, attributes);
        out.append('>');
        open.push(element);
        return this;
    }

    /** An element without content. */
    Svg add(String element, String... attributes) {
        begin(element, attributes);
        out.append("/>");
        return this;
    }

    private void begin(String element, String... attributes) {
        if (attributes.length % 2 != 0) {
            throw new IllegalArgumentException("<" + element + "> has an attribute without a value");
        }
        if (!element.equals("tspan")) {
            out.append(open.isEmpty() ? "" : "\n");
        }
        out.append('<').append(element);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            characters(attributes[i + 1]);
            out.append('"');
        }
    }

    /** Text between the tags, escaped. */
    Svg characters(String text) {
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(isXml(c) ? c : '\uFFFD');
            }
        });
        return this;
    }

    /** XML 1.0, production 2: other characters stand in no document, escaped or not. */
    private static boolean isXml(int c) {
        boolean blank = c == '\t' || c == '\n' || c == '\r';
        boolean plain = (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD);
        return blank || plain || c >= 0x10000;
    }

    Svg close() {
        out.append("</").append(open.pop()).append('>');
        return this;
    }

    /**
     * The drawing.
     * @throws IllegalStateException when an element other than the drawing itself was left open
     */
    String finished() {
        if (open.size() != 1) {
            throw new IllegalStateException("open elements: " + open);
        }
        close();
        return out.append('\n').toString();
    }

    /**
     * A number for an attribute: at most one decimal, a point on every machine.
     * @throws IllegalArgumentException when it is not finite
     */
    static String n(double number) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("coordinate is " + number + "; only a finite number can be drawn");
        }
        BigDecimal shown = rounded(number).stripTrailingZeros();
        return shown.signum() == 0 ? "0" : shown.toPlainString();
    }

    /** The number as {@link #n} writes it, for what must agree with it to the last digit. */
    static double shown(double number) {
        return rounded(number).doubleValue();
    }

    private static BigDecimal rounded(double number) {
        return BigDecimal.valueOf(number).setScale(PLACES, RoundingMode.HALF_UP);
    }

    /** Path data from letters and numbers; {@code path("M", 1, 2, "L", 3, 4)}. */
    static String path(Object... pieces) {
        StringBuilder path = new StringBuilder();
        for (Object piece : pieces) {
            if (path.length() > 0) {
                path.append(' ');
            }
            path.append(piece instanceof Number number ? n(number.doubleValue()) : piece);
        }
        return path.toString();
    }
}
