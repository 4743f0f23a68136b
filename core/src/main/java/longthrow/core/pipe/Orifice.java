package longthrow.core.pipe;

import longthrow.core.flow.Isentropic;

/**
 * A throat between two gases that stand still, without a pipe: a breather, a hole between chambers, a leak. Quasi-steady; makes nothing new, of one thread. Below a pressure difference of {@link #FAINT} it lets through in
 * proportion to it, as small holes do by their friction: the root of a difference that is nothing but rounding would else make a draught.
 */
public final class Orifice {
    /** Of the higher pressure. Chosen so that it is felt by nobody, at 1 bar 10 Pa; common practice, no source. */
    public static final double FAINT = 1e-4;

    private final Gas gas;
    private double mass;
    private double energy;
    private double burned;
    private double mach;

    public Orifice(PipeGases gases) {
        gas = new Gas(gases);
    }

    /**
     * From the first to the second.
     * @param area effective [m2], 0 or above
     */
    public void join(
            double area,
            double pressureOne,
            double temperatureOne,
            double burnedOne,
            double pressureTwo,
            double temperatureTwo,
            double burnedTwo) {
        if (!(area >= 0 && pressureOne > 0 && pressureTwo > 0 && temperatureOne > 0 && temperatureTwo > 0)) {
            throw new IllegalArgumentException("a throat of " + area + " m2 between gas of " + pressureOne + " Pa, "
                    + temperatureOne + " K and of " + pressureTwo + " Pa, " + temperatureTwo
                    + " K; the area must be 0 or above, the others above 0");
        }
        if (pressureOne >= pressureTwo) {
            pass(area, pressureOne, temperatureOne, burnedOne, pressureTwo);
        } else {
            pass(area, pressureTwo, temperatureTwo, burnedTwo, pressureOne);
            mass = -mass;
            energy = -energy;
            burned = -burned;
            mach = -mach;
        }
    }

    /** Between two volumes, and tells both. */
    public void join(double area, Volume one, Volume two) {
        join(area, one.pressure(), one.temperature(), one.share(), two.pressure(), two.temperature(), two.share());
        one.give(-mass, -energy, -burned);
        two.give(mass, energy, burned);
    }

    private void pass(double area, double pressure, double temperature, double share, double behind) {
        gas.atTemperature(share, temperature);
        double gamma = gas.gamma;
        double drop = (pressure - behind) / pressure;
        double ratio = Math.max(1 - Math.max(drop, FAINT), Isentropic.criticalPressure(gamma));
        double cooled = Math.pow(ratio, (gamma - 1) / gamma);
        mach = Math.sqrt(2 / (gamma - 1) * (1 / cooled - 1)) * Math.min(1, drop / FAINT);
        mass = area
                * pressure
                / Math.sqrt(gas.gasConstant * temperature)
                * Isentropic.throatFlow(gamma, ratio)
                * Math.min(1, drop / FAINT);
        energy = mass * gas.enthalpy(temperature);
        burned = mass * share;
    }

    /** As what area such a throat counts in {@link Volume#longestStep}: a faint difference drives more through it than through a pipe's end [m2]. */
    public static double counts(double area) {
        return area * Math.sqrt(2 / FAINT);
    }

    /** From the first to the second [kg/s]. */
    public double mass() {
        return mass;
    }

    /** [W]. */
    public double energy() {
        return energy;
    }

    /** [kg/s]. */
    public double burned() {
        return burned;
    }

    /** In the throat. */
    public double mach() {
        return mach;
    }
}
