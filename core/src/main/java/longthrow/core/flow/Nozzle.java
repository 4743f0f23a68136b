package longthrow.core.flow;

import longthrow.core.quantity.Require;

/**
 * Gas at rest through a throat into gas of lower pressure, at the speed of sound at most (Heywood, Internal Combustion Engine Fundamentals, 1988, 6.3.2 and eqs. C.8 and C.9). What a valve, an orifice
 * or a jet of air lets through is this by its effective area: reference area by discharge coefficient.
 * @param pressure    of the gas at rest [Pa]
 * @param temperature of it [K]
 * @param gasConstant [J/(kg K)]
 * @param gamma       ratio of specific heats, above 1
 */
public record Nozzle(double pressure, double temperature, double gasConstant, double gamma) {
    public Nozzle {
        Require.positive("pressure before the throat [Pa]", pressure);
        Require.positive("temperature before the throat [K]", temperature);
        Require.positive("gas constant [J/(kg K)]", gasConstant);
        Require.positive("ratio of specific heats less 1", gamma - 1);
    }

    /** Mach number in the throat; 1 from the critical pressure down. */
    public double mach(double behind) {
        double cooled = Math.pow(ratio(behind), (gamma - 1) / gamma);
        return Math.sqrt(Math.max(0, 2 / (gamma - 1) * (1 / cooled - 1)));
    }

    /** In the throat over that at rest. */
    private double ratio(double behind) {
        Require.within("pressure behind the throat [Pa]", behind, 0, pressure);
        return Math.max(behind / pressure, Isentropic.criticalPressure(gamma));
    }

    /** Per effective area [kg/(s m2)]. */
    public double flow(double behind) {
        return pressure / Math.sqrt(gasConstant * temperature) * Isentropic.throatFlow(gamma, ratio(behind));
    }

    /** In the throat [K]. */
    public double throatTemperature(double behind) {
        return temperature * Isentropic.temperature(gamma, mach(behind));
    }

    /** In the throat [m/s]. */
    public double throatSpeed(double behind) {
        return mach(behind) * Math.sqrt(gamma * gasConstant * throatTemperature(behind));
    }
}
