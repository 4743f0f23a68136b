package longthrow.core.quantity;

/**
 * One figure ready to print, in pieces for a table.
 *
 * @param value digits cut to what the doubt supports
 * @param doubt the ± to the same place; {@link #UNKNOWN}; or empty where the value is exact or stated without a doubt
 * @param unit symbol, empty for a bare number
 */
public record Figure(String value, String doubt, String unit) {
    /** Stands where the doubt of a value has not been established. */
    public static final String UNKNOWN = "unknown";

    /** In one line: "1.37 ± 0.07 mm", "1.37 mm, doubt unknown". */
    public String text() {
        if (doubt.isEmpty()) {
            return withoutDoubt();
        }
        return doubt.equals(UNKNOWN) ? withoutDoubt() + ", doubt unknown" : value + " ± " + doubt + behind();
    }

    /** Value and unit alone. */
    String withoutDoubt() {
        return value + behind();
    }

    private String behind() {
        return unit.isEmpty() || unit.startsWith(":") ? unit : " " + unit;
    }
}
