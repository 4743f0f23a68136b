package longthrow.core.flow;

/** A pipe of one width with friction and no heat, against where it reaches the speed of sound (Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, 1953, chapter 6). */
public final class Fanno {
    private Fanno() {}

    /** T / T*. */
    public static double temperature(double gamma, double mach) {
        return 0.5 * (gamma + 1) * Isentropic.temperature(gamma, mach);
    }

    /** p / p*. */
    public static double pressure(double gamma, double mach) {
        return Math.sqrt(temperature(gamma, mach)) / mach;
    }

    /** p0 / p0*. */
    public static double stagnationPressure(double gamma, double mach) {
        return Isentropic.area(gamma, mach);
    }

    /** 4 f L* / D: Fanning's factor by length to the speed of sound, in diameters. */
    public static double length(double gamma, double mach) {
        double square = mach * mach;
        return (1 - square) / (gamma * square)
                + 0.5 * (gamma + 1) / gamma * Math.log(square * temperature(gamma, mach));
    }
}
