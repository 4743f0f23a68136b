package longthrow.core.reduce;

/**
 * Something to know about a run that was brought to a curve, or why it was not.
 * @param weight how much it matters
 * @param text   what was found, what it means, how to mend it; units included
 */
public record Remark(Weight weight, String text) {
    /** How much a remark matters. */
    public enum Weight {
        /** Good to know. */
        NOTE,
        /** The curve may be wrong by it, or lacks something. */
        WARNING,
        /** There is no curve because of it. */
        NO_CURVE
    }

    static Remark note(String text) {
        return new Remark(Weight.NOTE, text);
    }

    static Remark warning(String text) {
        return new Remark(Weight.WARNING, text);
    }
}
