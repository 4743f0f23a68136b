package longthrow.core.flow;

import longthrow.core.quantity.Require;

/**
 * One reading of a flow bench: air drawn from a room through what is tried.
 * @param volumeFlow  of air as it is in the room [m3/s], above 0
 * @param depression  pressure of the room less that behind what is tried [Pa], above 0 and below the room's
 * @param room        pressure [Pa]
 * @param temperature of the room [K]
 * @param gasConstant of its air [J/(kg K)]
 * @param gamma       of its air, above 1
 */
public record FlowBench(
        double volumeFlow, double depression, double room, double temperature, double gasConstant, double gamma) {
    public FlowBench {
        Require.positive("volume flow [m3/s]", volumeFlow);
        Require.positive("depression [Pa]", depression);
        Require.positive("gas constant [J/(kg K)]", gasConstant);
        Require.positive("temperature of the room [K]", temperature);
        Require.positive("ratio of specific heats less 1", gamma - 1);
        Require.positive("pressure of the room less the depression [Pa]", room - depression);
    }

    /** The flow at another depression as benches say it: by the root of the depressions, as if air were not compressed. Any units, both of a kind. Common practice, no source (Bernoulli). */
    public static double at(double otherDepression, double flow, double depression) {
        Require.positive("depression", depression);
        Require.notNegative("depression asked about", otherDepression);
        return flow * Math.sqrt(otherDepression / depression);
    }

    /** What throat without loss would let as much through [m2]: reference area by discharge coefficient, compression reckoned with (Heywood, 1988, eqs. C.8 and C.9). */
    public double effectiveArea() {
        return density() * volumeFlow / new Nozzle(room, temperature, gasConstant, gamma).flow(room - depression);
    }

    /** The same as if air were not compressed, as many tables of coefficients are made [m2]. */
    public double effectiveAreaUncompressed() {
        return volumeFlow / Math.sqrt(2 * depression / density());
    }

    private double density() {
        return room / (gasConstant * temperature);
    }
}
