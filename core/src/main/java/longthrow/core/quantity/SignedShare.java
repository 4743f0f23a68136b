package longthrow.core.quantity;

import java.util.Locale;

/** A gain or difference as a share of what it is held against, for people: with its sign, in per cent, and with its ± or that none is known. */
public final class SignedShare {
    /** A ± below this is told to a hundredth of a per cent; layout. */
    private static final double FINE = 0.005;

    private static final double HUNDRED = 100;

    private SignedShare() {}

    /**
     * "+2.0 ± 0.6 %".
     * @param share of one; NaN where it cannot be told
     * @param half  95 % half-width, a share too; NaN where it is not known
     */
    public static String text(double share, double half) {
        if (!Double.isFinite(share)) {
            return "cannot be told";
        }
        return !Double.isFinite(half)
                ? String.format(Locale.ROOT, "%+.1f %%, ± not known", HUNDRED * share)
                : String.format(Locale.ROOT, with(half, "%+.", "f ± %.", "f %%"), HUNDRED * share, HUNDRED * half);
    }

    /**
     * A second ± of the same share, told as finely as the first: "± 0.8 %".
     * @param first half-width that the share was told with
     * @param half  the other
     */
    public static String beside(double first, double half) {
        return String.format(Locale.ROOT, first < FINE ? "± %.2f %%" : "± %.1f %%", HUNDRED * half);
    }

    private static String with(double half, String before, String between, String after) {
        int digits = half < FINE ? 2 : 1;
        return before + digits + between + digits + after;
    }
}
