package longthrow.buildfile;

import java.util.List;

/** A document in Markdown while it is written. */
final class Markdown {
    private final StringBuilder text = new StringBuilder();

    void heading(int level, String words) {
        text.append('\n').append("#".repeat(level)).append(' ').append(words).append("\n\n");
    }

    /** A line of text as it is. */
    void line(String words) {
        text.append(words).append('\n');
    }

    /** The first row of a table, with the rule below it. */
    void head(String... cells) {
        row(cells);
        line("|" + "---|".repeat(cells.length));
    }

    void row(String... cells) {
        line("| " + String.join(" | ", cells) + " |");
    }

    /** Keys as they are typed: `a`, `b`. */
    static String keys(List<String> keys) {
        return "`" + String.join("`, `", keys) + "`";
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
