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
        String behind = unit.isEmpty() || unit.startsWith(":") ? unit : " " + unit;
        if (doubt.isEmpty()) {
            return value + behind;
        }
        return doubt.equals(UNKNOWN) ? value + behind + ", doubt unknown" : value + " ± " + doubt + behind;
    }
}
