package longthrow.buildfile;

/**
 * One thing wrong with a file. Fragments, so that a page can lay them out; {@link #message} is all of it in one line.
 * @param line    from 1; 0 when the file as a whole is meant
 * @param column  from 1, in characters; 0 when a line or the whole file is meant
 * @param path    key path, such as {@code cylinder.bore.readings[2]}; empty when the file as a whole is meant
 * @param found   what stands there, shortened
 * @param why     what is wrong with it
 * @param allowed what fits there; empty when {@code mend} says it all
 * @param mend    what to write instead
 */
public record Fault(int line, int column, String path, String found, String why, String allowed, String mend) {
    /** {@code line 12, column 9, cylinder.bore: '66' has no unit; write 66 mm or 66 in (allowed: mm, in)}. */
    public String message() {
        return place()
                + (found.isEmpty() ? "" : "'" + found + "' ")
                + why
                + (mend.isEmpty() ? "" : "; " + mend)
                + (allowed.isEmpty() ? "" : " (allowed: " + allowed + ")");
    }

    private String place() {
        String at = line == 0 ? "" : "line " + line + (column == 0 ? "" : ", column " + column);
        String both = at.isEmpty() || path.isEmpty() ? at + path : at + ", " + path;
        return both.isEmpty() ? "" : both + ": ";
    }
}
