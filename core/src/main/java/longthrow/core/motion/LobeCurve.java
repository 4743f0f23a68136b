package longthrow.core.motion;

/**
 * A lobe of which only duration at a checking lift, peak lift and centre are known. The curve between is assumed: the 3-4-5-6 polynomial, rise and
 * fall in one (Norton, Design of Machinery, single-dwell functions; from memory), whose lift, velocity and acceleration are continuous everywhere. Real lobes
 * with the same three figures have fuller or leaner flanks, so area, seat velocity and spring wants from this curve are guesses.
 * @param peakLift [m]
 * @param halfWidth from the centre to where the lift is nothing [rad]
 * @param centre   angle of the peak [rad]
 */
public record LobeCurve(double peakLift, double halfWidth, double centre) {
    /** What an answer that leans on this curve must say. */
    public static final String ASSUMED =
            "only duration, peak lift and centre are known: the flanks are assumed, a 3-4-5-6 polynomial; read a lift table to know them";

    public LobeCurve {
        if (!(peakLift > 0) || !(halfWidth > 0) || !Double.isFinite(centre)) {
            throw new IllegalArgumentException(
                    "a lobe needs a peak lift and a width above 0, not " + peakLift + " m and " + halfWidth + " rad");
        }
    }

    /**
     * From the figures of a cam card.
     * @param checkingLift below the peak lift, 0 or more [m]
     * @param duration     at the checking lift [rad]
     */
    public static LobeCurve of(double peakLift, double checkingLift, double duration, double centre) {
        if (!(checkingLift >= 0 && checkingLift < peakLift)) {
            throw new IllegalArgumentException("checking lift is " + checkingLift
                    + " m; it must be 0 or more and below the peak lift, " + peakLift + " m");
        }
        double share = Math.cbrt(checkingLift / peakLift);
        return new LobeCurve(peakLift, duration / 2 / Math.sqrt(1 - share), centre);
    }

    /** Half the duration at a lift [rad], by the inverse of the lift. */
    public double halfDuration(double lift) {
        if (!(lift >= 0 && lift <= peakLift)) {
            throw new IllegalArgumentException(
                    "lift is " + lift + " m; it must be 0 to the peak lift, " + peakLift + " m");
        }
        return halfWidth * Math.sqrt(1 - Math.cbrt(lift / peakLift));
    }

    /** Steepest slope, where the second derivative is nothing: u2 = 1/5 [m/rad]. */
    public double steepest() {
        return Math.abs(slope(centre + halfWidth / Math.sqrt(5)));
    }

    /** Most negative second derivative, at the peak [m/rad2]. */
    public double sharpest() {
        return bend(centre);
    }

    private double u(double angle) {
        return (angle - centre) / halfWidth;
    }

    /** Lift [m]. */
    public double at(double angle) {
        double u = u(angle);
        double left = Math.max(0, 1 - u * u);
        return peakLift * left * left * left;
    }

    /** Slope [m/rad]. */
    public double slope(double angle) {
        double u = u(angle);
        double left = Math.max(0, 1 - u * u);
        return -6 * peakLift * u * left * left / halfWidth;
    }

    /** Second derivative [m/rad2]. */
    public double bend(double angle) {
        double u = u(angle);
        double left = Math.max(0, 1 - u * u);
        return -6 * peakLift * left * (1 - 5 * u * u) / (halfWidth * halfWidth);
    }
}
