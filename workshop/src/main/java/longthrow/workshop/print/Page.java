package longthrow.workshop.print;

import java.util.List;

/** Text under construction for a terminal: wraps to the width, indents, leaves no spaces at the ends of lines. */
final class Page {
    private static final int LEAST_WIDTH = AnswerText.LEAST_WIDTH;

    /** Layout: the longest leading word that text may hang behind, and how far in it stands below a longer one. */
    private static final int LONGEST_HANG = 12;

    private static final int HANG_OF_LONG = 3;

    private final int width;
    private final boolean colour;
    private final StringBuilder text = new StringBuilder();

    Page(int width, boolean colour) {
        if (width < LEAST_WIDTH) {
            throw new IllegalArgumentException("width is " + width + " columns; a page needs at least " + LEAST_WIDTH);
        }
        this.width = width;
        this.colour = colour;
    }

    int width() {
        return width;
    }

    String ink(Ink ink, String words) {
        return ink.on(words, colour);
    }

    void blankLine() {
        text.append('\n');
    }

    /** A line that is known to fit, inked already. */
    void line(String inked) {
        text.append(inked.stripTrailing()).append('\n');
    }

    /** A heading with a line's distance, and what it means behind it. */
    void heading(Ink ink, String words, String meaning) {
        blankLine();
        hanging(0, ink, words + (meaning.isEmpty() ? "" : " –"), Ink.QUIET, meaning);
    }

    void paragraph(int indent, String words) {
        hanging(indent, Ink.PLAIN, "", Ink.PLAIN, words);
    }

    /**
     * A leading word, then words wrapped: their lines stand below each other behind a short leading word, and a little in from
     * where a long one begins.
     */
    void hanging(int indent, Ink leadInk, String lead, Ink ink, String words) {
        String start = PlainText.of(lead);
        int behind = indent + (start.isEmpty() ? 0 : PlainText.width(start) + 1);
        int further = behind - indent <= LONGEST_HANG ? behind : indent + HANG_OF_LONG;
        List<String> lines = PlainText.wrap(words, width - behind, width - further);
        line(" ".repeat(indent) + ink(leadInk, start) + (start.isEmpty() ? "" : " ") + ink(ink, lines.get(0)));
        lines.stream().skip(1).forEach(line -> line(" ".repeat(further) + ink(ink, line)));
    }

    /** Words whose further lines stand a little in; what goes beyond the most lines is cut off, and shows it. */
    void item(int indent, String words, int mostLines) {
        List<String> lines = PlainText.wrap(words, width - indent, width - indent - HANG_OF_LONG);
        for (int i = 0; i < Math.min(lines.size(), mostLines); i++) {
            boolean cut = i + 1 == mostLines && lines.size() > mostLines;
            String before = " ".repeat(i == 0 ? indent : indent + HANG_OF_LONG);
            line(before + (cut ? PlainText.cut(lines.get(i), width - before.length()) : lines.get(i)));
        }
    }

    /** The same where there is something to say, nothing where there is not. */
    void ifAny(int indent, String lead, String words) {
        if (!words.isBlank()) {
            hanging(indent, Ink.QUIET, lead, Ink.PLAIN, words);
        }
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
