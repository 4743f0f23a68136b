package longthrow.core.quantity;

/** The door of records that hold plain numbers: what is let in. Conditions are written positively, so that NaN stays outside. */
public final class Require {
    private Require() {}

    /**
     * Above 0 and finite.
     * @param what with its unit in brackets, for the message
     * @throws IllegalArgumentException otherwise
     */
    public static double positive(String what, double value) {
        return check(value > 0 && Double.isFinite(value), what, value, "above 0");
    }

    /**
     * 0 or above, and finite.
     * @throws IllegalArgumentException otherwise
     */
    public static double notNegative(String what, double value) {
        return check(value >= 0 && Double.isFinite(value), what, value, "0 or above");
    }

    /**
     * Neither NaN nor infinite.
     * @throws IllegalArgumentException otherwise
     */
    public static double finite(String what, double value) {
        return check(Double.isFinite(value), what, value, "a finite number");
    }

    /**
     * From low to high, both allowed.
     * @throws IllegalArgumentException otherwise
     */
    public static double within(String what, double value, double low, double high) {
        boolean allowed = value >= low && value <= high;
        return check(allowed, what, value, allowed ? "" : "from " + low + " to " + high);
    }

    private static double check(boolean allowed, String what, double value, String range) {
        if (!allowed) {
            throw new IllegalArgumentException(what + " is " + value + "; it must be " + range);
        }
        return value;
    }
}
