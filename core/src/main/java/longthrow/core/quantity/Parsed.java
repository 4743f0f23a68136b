package longthrow.core.quantity;

/** What became of a text: understood, or refused with the reason and the cure. */
public sealed interface Parsed {
    /** The text could mean one thing only, and this is it. */
    record Understood(Stated stated) implements Parsed {}

    /**
     * The text was not taken. Fragments, not sentences, so that a file or a form can put its own place before them.
     *
     * @param found the text, shortened when long, control characters made visible
     * @param why what is wrong with it
     * @param allowed what fits here
     * @param mend what to write instead
     */
    record Refused(String found, String why, String allowed, String mend) implements Parsed {
        /** All of it in one line. */
        public String message() {
            return "'" + found + "' " + why + ": " + mend + (allowed.isEmpty() ? "" : " (allowed: " + allowed + ")");
        }
    }
}
