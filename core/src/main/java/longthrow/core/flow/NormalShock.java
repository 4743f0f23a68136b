package longthrow.core.flow;

/** A shock across the flow (NACA Report 1135, eqs. 93 to 99); before it the Mach number is 1 or above. */
public final class NormalShock {
    private NormalShock() {}

    public static double machBehind(double gamma, double mach) {
        double square = mach * mach;
        return Math.sqrt((2 + (gamma - 1) * square) / (2 * gamma * square - (gamma - 1)));
    }

    /** Behind over before. */
    public static double pressure(double gamma, double mach) {
        return 1 + 2 * gamma / (gamma + 1) * (mach * mach - 1);
    }

    /** Behind over before. */
    public static double density(double gamma, double mach) {
        double square = mach * mach;
        return (gamma + 1) * square / (2 + (gamma - 1) * square);
    }

    /** Behind over before. */
    public static double temperature(double gamma, double mach) {
        return pressure(gamma, mach) / density(gamma, mach);
    }

    /** What the gas would have at rest, behind over before. */
    public static double stagnationPressure(double gamma, double mach) {
        return pressure(gamma, mach)
                * Isentropic.pressure(gamma, mach)
                / Isentropic.pressure(gamma, machBehind(gamma, mach));
    }

    /** Mach number of a shock with this pressure behind over before, 1 or above. */
    public static double mach(double gamma, double pressure) {
        return Math.sqrt(1 + (gamma + 1) / (2 * gamma) * (pressure - 1));
    }

    /** Behind over before of the shock that a wall throws back, by that of the one that came on gas at rest (Liepmann and Roshko, Elements of Gasdynamics, 3.). */
    public static double thrownBack(double gamma, double pressure) {
        return ((3 * gamma - 1) * pressure - (gamma - 1)) / ((gamma - 1) * pressure + gamma + 1);
    }
}
