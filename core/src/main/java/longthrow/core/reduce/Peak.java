package longthrow.core.reduce;

import longthrow.core.measurement.Measured;

/**
 * The highest place of a curve.
 * @param standing   whether it is a peak
 * @param speed      where the curve is highest [rad/s]
 * @param lowSpeed   the highest place lies, with 95 %, between this
 * @param highSpeed  and this speed; ends of the run where the curve does not tell
 * @param value      how high, with the doubt of bench and run [N m or W]
 * @param ownDoubt   standard uncertainty that is the run's own
 */
public record Peak(
        Standing standing, double speed, double lowSpeed, double highSpeed, Measured value, double ownDoubt) {
    /** Whether the highest place is a peak. */
    public enum Standing {
        /** The curve is lower on both sides by more than its doubt. */
        SHOWN,
        /** It may lie at, or below, the lowest speed of the run: nothing shows that the curve rises to it. */
        MAY_LIE_BELOW,
        /** It may lie at, or beyond, the highest speed of the run: nothing shows that the curve falls after it. */
        MAY_LIE_ABOVE,
        /** The curve is flat within its doubt. */
        NOT_SHOWN
    }
}
