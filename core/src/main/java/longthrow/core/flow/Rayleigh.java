package longthrow.core.flow;

/** A pipe of one width with heat and no friction, against where it reaches the speed of sound (Shapiro, vol. 1, 1953, chapter 7). */
public final class Rayleigh {
    private Rayleigh() {}

    /** p / p*. */
    public static double pressure(double gamma, double mach) {
        return (gamma + 1) / (1 + gamma * mach * mach);
    }

    /** T / T*. */
    public static double temperature(double gamma, double mach) {
        double push = mach * pressure(gamma, mach);
        return push * push;
    }

    /** T0 / T0*. */
    public static double stagnationTemperature(double gamma, double mach) {
        return temperature(gamma, mach) * Isentropic.temperature(gamma, 1) / Isentropic.temperature(gamma, mach);
    }

    /** p0 / p0*. */
    public static double stagnationPressure(double gamma, double mach) {
        return pressure(gamma, mach) * Isentropic.pressure(gamma, 1) / Isentropic.pressure(gamma, mach);
    }
}
