package longthrow.workshop.web.outline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The outline in a file: of points as it stands, of an SVG drawing its one path. A drawing's own unit is taken where its width and its view box tell it.
 * @param text points or path data
 * @param unit length of one unit of the drawing; empty where the file does not tell it
 * @param trouble why there is none; empty where there is one
 */
record DrawnFile(String text, Optional<String> unit, String trouble) {
    /** Name of a tag among its attributes; no attribute is called so. */
    private static final String NAME = "";

    private static final Pattern WIDTH = Pattern.compile("\\s*([0-9.]+)\\s*(mm|cm|in)\\s*");

    static DrawnFile of(String content) {
        String plain = content.replace("\uFEFF", "");
        return plain.stripLeading().startsWith("<") ? ofSvg(plain) : new DrawnFile(plain, Optional.empty(), "");
    }

    private static DrawnFile refused(String trouble) {
        return new DrawnFile("", Optional.empty(), trouble);
    }

    private static DrawnFile ofSvg(String svg) {
        List<String> paths = new ArrayList<>();
        Optional<String> unit = Optional.empty();
        boolean isMoved = false;
        for (Map<String, String> tag : tags(svg)) {
            isMoved |= tag.containsKey("transform");
            String name = tag.getOrDefault(NAME, "");
            if (name.equals("svg") && unit.isEmpty()) {
                unit = unit(tag.get("width"), tag.get("viewBox"));
            } else if (name.equals("path") && tag.containsKey("d")) {
                paths.add(tag.getOrDefault("d", ""));
            }
        }
        if (paths.size() != 1) {
            return refused("The drawing has " + (paths.isEmpty() ? "no path" : paths.size() + " paths")
                    + "; one is wanted. Make the outline one path, and take everything else out.");
        }
        if (isMoved) {
            return refused(
                    "Something in the drawing is moved or scaled by a transform, so the numbers of its path are not"
                            + " where it is seen. Apply the transform to the path and save it again.");
        }
        return new DrawnFile(paths.get(0).strip(), unit, "");
    }

    /** Opening tags with their attributes, the name under {@link #NAME}; text, comments and what is no tag are passed over. */
    private static List<Map<String, String>> tags(String svg) {
        List<Map<String, String>> tags = new ArrayList<>();
        int at = svg.indexOf('<');
        while (at >= 0) {
            int end;
            if (svg.startsWith("<!--", at)) {
                end = svg.indexOf("-->", at);
            } else {
                Map<String, String> tag = new LinkedHashMap<>();
                end = tag(svg, at + 1, tag);
                if (tag.getOrDefault(NAME, "").matches("[A-Za-z].*")) {
                    tags.add(tag);
                }
            }
            at = end < 0 ? -1 : svg.indexOf('<', Math.max(end, at + 1));
        }
        return tags;
    }

    /** One tag from behind its bracket; where it ends, or -1 where it does not. */
    private static int tag(String svg, int from, Map<String, String> into) {
        int at = from;
        while (at < svg.length() && !Character.isWhitespace(svg.charAt(at)) && "/>".indexOf(svg.charAt(at)) < 0) {
            at++;
        }
        into.put(NAME, svg.substring(from, at));
        while (at < svg.length() && svg.charAt(at) != '>') {
            int start = at;
            while (at < svg.length() && "=>".indexOf(svg.charAt(at)) < 0) {
                at++;
            }
            String key = svg.substring(start, at).replace("/", "").strip();
            if (at < svg.length() && svg.charAt(at) == '=') {
                at++;
                while (at < svg.length() && Character.isWhitespace(svg.charAt(at))) {
                    at++;
                }
                int close = at < svg.length() && "\"'".indexOf(svg.charAt(at)) >= 0
                        ? svg.indexOf(svg.charAt(at), at + 1)
                        : -1;
                if (close < 0) {
                    return -1;
                }
                into.put(key, svg.substring(at + 1, close));
                at = close + 1;
            }
        }
        return at < svg.length() ? at : -1;
    }

    /** Width by the width of the view box. */
    private static Optional<String> unit(@Nullable String width, @Nullable String viewBox) {
        if (width == null || viewBox == null) {
            return Optional.empty();
        }
        Matcher told = WIDTH.matcher(width);
        String[] box = viewBox.strip().split("[\\s,]+", -1);
        if (!told.matches() || box.length != 4) {
            return Optional.empty();
        }
        try {
            double one = Double.parseDouble(told.group(1)) / Double.parseDouble(box[2]);
            return one > 0 && Double.isFinite(one) ? Optional.of(decimal(one) + " " + told.group(2)) : Optional.empty();
        } catch (NumberFormatException notTold) {
            return Optional.empty();
        }
    }

    private static String decimal(double number) {
        String shown = String.format(Locale.ROOT, "%.6f", number);
        return shown.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
