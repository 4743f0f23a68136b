package longthrow.core.answer;

/**
 * How surely parts with their tolerances go together: for sure at every corner of the box of tolerances; by probability with 95 in 100
 * ({@link Verdict#SURE}); with selection when some pieces within their tolerances would do, so that they must be measured first; as far as is
 * known when a size that decides is not said; else no.
 */
public enum Sureness {
    SURE("for sure"),
    PROBABLE("by probability"),
    SELECTION("only with selection"),
    AS_KNOWN("as far as is known"),
    NO("does not fit");

    private final String label;

    Sureness(String label) {
        this.label = label;
    }

    public String key() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    public String label() {
        return label;
    }

    /** The less sure of two. */
    public static Sureness worse(Sureness a, Sureness b) {
        return a.compareTo(b) >= 0 ? a : b;
    }
}
