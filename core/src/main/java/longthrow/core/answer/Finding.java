package longthrow.core.answer;

/**
 * Something noticed.
 * @param kind    how much it weighs
 * @param where   place in the build file, or the part
 * @param message what was found, against what
 * @param mend    what to do about it
 */
public record Finding(Kind kind, String where, String message, String mend) {
    /** Weight of a finding. */
    public enum Kind {
        /** A reading that is probably wrong. */
        SUSPECT,
        /** Something to act on. */
        WARNING,
        /** A verdict on a part: keep, machine, replace, walk away. */
        PART,
        /** Something to know. */
        NOTE;

        public String label() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }
}
