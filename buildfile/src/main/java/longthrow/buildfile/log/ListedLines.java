package longthrow.buildfile.log;

import java.util.List;

/** The lines of a log that are no rows, each with why, in the order of the file. */
public final class ListedLines {
    private final int[] lines;
    private final Why[] why;

    ListedLines(int[] lines, List<Why> why) {
        this.lines = lines;
        this.why = why.toArray(new Why[0]);
    }

    /** How many there are. */
    public int size() {
        return lines.length;
    }

    /**
     * The number of a line in the file, from 1.
     * @param at which of them, from 0
     */
    public int line(int at) {
        return lines[at];
    }

    /**
     * Why it is no row.
     * @param at which of them, from 0
     */
    public Why why(int at) {
        return why[at];
    }

    /** How many are listed for this reason. */
    public int count(Why reason) {
        int count = 0;
        for (int i = 0; i < lines.length; i++) {
            count += why(i) == reason ? 1 : 0;
        }
        return count;
    }

    /**
     * In the reader's words.
     * @param at which of them, from 0
     */
    public String words(int at) {
        return "line " + line(at) + " " + why(at).words();
    }
}
