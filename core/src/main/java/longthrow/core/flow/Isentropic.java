package longthrow.core.flow;

/** Flow without friction or heat, against the gas at rest it came from (Ames Research Staff, NACA Report 1135, 1953, eqs. 43 to 80). */
public final class Isentropic {
    private Isentropic() {}

    /** T / T0. */
    public static double temperature(double gamma, double mach) {
        return 1 / (1 + 0.5 * (gamma - 1) * mach * mach);
    }

    /** p / p0. */
    public static double pressure(double gamma, double mach) {
        return Math.pow(temperature(gamma, mach), gamma / (gamma - 1));
    }

    /** Density over that at rest. */
    public static double density(double gamma, double mach) {
        return Math.pow(temperature(gamma, mach), 1 / (gamma - 1));
    }

    /** Area over the least, at the speed of sound: A / A*. */
    public static double area(double gamma, double mach) {
        return 1 / throat(gamma, mach);
    }

    /** The least area over that here: A* / A; 1 at the speed of sound and less on both sides. */
    public static double throat(double gamma, double mach) {
        double inner = 2 + (gamma - 1) * mach * mach;
        return mach * Math.pow((gamma + 1) / inner, 0.5 * (gamma + 1) / (gamma - 1));
    }

    /** Mass flow times the root of R T0, over area and p0: Heywood (1988), eq. C.8 and C.9. */
    public static double massFlow(double gamma, double mach) {
        return Math.sqrt(gamma) * mach * Math.pow(temperature(gamma, mach), 0.5 * (gamma + 1) / (gamma - 1));
    }

    /**
     * Mass flow times the root of R T0, over area and p0, through a throat with this pressure over p0; not past the speed of sound, which it does not know of.
     * @param ratio p / p0 in the throat, from {@link #criticalPressure} to 1
     */
    public static double throatFlow(double gamma, double ratio) {
        // 1 - r^((g-1)/g) by expm1, so that a small difference keeps its digits
        double cooled = -Math.expm1(Math.log(ratio) * (gamma - 1) / gamma);
        return Math.pow(ratio, 1 / gamma) * Math.sqrt(2 * gamma / (gamma - 1) * Math.max(0, cooled));
    }

    /** p / p0 at the speed of sound. */
    public static double criticalPressure(double gamma) {
        return Math.pow(2 / (gamma + 1), gamma / (gamma - 1));
    }

    /**
     * Mach number, 1 at most, before a throat at the speed of sound.
     * @param share throat's area over that before it, 0 to 1; more counts as 1
     */
    public static double machBefore(double gamma, double share) {
        if (share >= 1) {
            return 1;
        }
        // A*/A bends down all the way to M = 1, so that Newton's steps from below never pass the root. Both starts are
        // below it: the straight line at 0, the parabola at 1.
        double e = 0.5 * (gamma + 1) / (gamma - 1);
        double parabola = 1 - Math.sqrt((1 - share) * 0.5 * (gamma + 1));
        if (1 - share < FLAT) {
            return parabola;
        }
        double mach = Math.max(share * Math.pow(2 / (gamma + 1), e), parabola);
        for (int n = 0; n < STEPS; n++) {
            double inner = 2 + (gamma - 1) * mach * mach;
            double reached = mach * Math.pow((gamma + 1) / inner, e);
            double change = (share - reached) / (reached * (1 / mach - (gamma + 1) * mach / inner));
            if (!(Math.abs(change) > NEAR * mach)) {
                return change > 0 ? Math.min(1, mach + change) : mach; // not a number at 1 itself
            }
            mach = Math.min(1, mach + change);
        }
        return mach;
    }

    /** So near a throat's own width the parabola misses less than the digits of the share leave open. */
    private static final double FLAT = 1e-11;

    private static final int STEPS = 60;

    /** A step so small is the last: what it still misses is its square. */
    private static final double NEAR = 1e-9;
}
