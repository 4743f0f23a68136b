package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Text as a terminal shows it: how wide it is, where it may break, and nothing in it that the terminal would obey. */
public final class PlainText {
    private static final int REPLACEMENT = 0xFFFD;

    private static final String NO_BREAK = "\u00a0";

    /** The spaces of 1.37 ± 0.07 mm: a line does not end there. */
    private static final Pattern INSIDE_A_FIGURE =
            Pattern.compile(" (?=±)|(?<=±) |(?<=[0-9]) (?=[a-zµ%°²³·/]{1,3}(?![a-z]))");

    private static final Pattern SPACES = Pattern.compile(" +");

    private PlainText() {}

    /**
     * The text on one line, with what would move the cursor, colour the screen or turn the reading direction replaced: an
     * engine's name comes from a file that somebody else may have written.
     */
    public static String of(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().map(PlainText::harmless).forEach(plain::appendCodePoint);
        return plain.toString();
    }

    private static int harmless(int point) {
        if (Character.isWhitespace(point)) {
            return ' ';
        }
        boolean turns = (point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069);
        return Character.isISOControl(point) || turns ? REPLACEMENT : point;
    }

    /** Columns the text takes. */
    static int width(String text) {
        return text.codePoints().map(PlainText::width).sum();
    }

    private static int width(int point) {
        return switch (Character.getType(point)) {
            case Character.NON_SPACING_MARK, Character.ENCLOSING_MARK, Character.FORMAT -> 0;
            default -> isWide(point) ? 2 : 1;
        };
    }

    /** The blocks that are wide throughout in Unicode Standard Annex 11, East Asian Width. */
    private static boolean isWide(int point) {
        return (point >= 0x1100 && point <= 0x115F)
                || (point >= 0x2E80 && point <= 0xA4CF)
                || (point >= 0xAC00 && point <= 0xD7A3)
                || (point >= 0xF900 && point <= 0xFAFF)
                || (point >= 0xFE30 && point <= 0xFE6F)
                || (point >= 0xFF00 && point <= 0xFF60)
                || (point >= 0x1F300 && point <= 0x1FAFF)
                || (point >= 0x20000 && point <= 0x3FFFF);
    }

    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - width(text)));
    }

    /**
     * Lines of at most this many columns, the first one shorter where it begins behind other words, broken between words; a word
     * longer than a line is cut. At least one line.
     */
    static List<String> wrap(String text, int firstColumns, int columns) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        int room = firstColumns;
        String bound = INSIDE_A_FIGURE.matcher(of(text).strip()).replaceAll(NO_BREAK);
        for (String word : SPACES.split(bound, -1)) {
            if (line.length() > 0 && width(line.toString()) + 1 + width(word) > room) {
                lines.add(line.toString());
                line.setLength(0);
                room = columns;
            } else if (line.length() == 0 && lines.isEmpty() && width(word) > room && width(word) <= columns) {
                lines.add("");
                room = columns;
            }
            if (line.length() > 0) {
                line.append(' ');
            }
            String rest = word;
            while (width(rest) > room) {
                int end = fitting(rest, room);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
                room = columns;
            }
            line.append(rest);
        }
        lines.add(line.toString());
        return lines.stream().map(l -> l.replace(NO_BREAK, " ")).toList();
    }

    /** The line with a mark that more would follow, within these columns: ended behind a clause, so that no figure is torn. */
    static String cut(String line, int columns) {
        int fits = width(line) + 2 <= columns ? line.length() : fitting(line, columns - 2);
        int end = Stream.of(", ", "; ", ": ")
                .mapToInt(mark -> line.lastIndexOf(mark, fits))
                .max()
                .orElse(0);
        return line.substring(0, end > 0 ? end : fits) + " …";
    }

    /** Characters from the start that take no more than these columns; at least one code point. */
    private static int fitting(String text, int columns) {
        int end = Character.charCount(text.codePointAt(0));
        int taken = width(text.codePointAt(0));
        while (end < text.length() && taken + width(text.codePointAt(end)) <= columns) {
            taken += width(text.codePointAt(end));
            end += Character.charCount(text.codePointAt(end));
        }
        return end;
    }
}
