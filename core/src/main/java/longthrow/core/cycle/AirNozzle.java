package longthrow.core.cycle;

import longthrow.core.flow.Isentropic;

/**
 * Steady flow through a nozzle without loss, from rest, of a gas of constant gamma (Heywood 1988, appendix C; NACA Report 1135). The one place in which the breathing parts use this formula: an effective
 * area is by definition what multiplies it.
 */
final class AirNozzle {
    /** Of air. */
    static final double GAMMA = 1.4;

    private static final double CRITICAL = Isentropic.criticalPressure(GAMMA);

    /** Of air at its most: 0.6847. */
    static final double CHOKED = subsonic(CRITICAL);

    private static final double SETTLED = 1e-14;
    private static final int MOST_STEPS = 60;

    private AirNozzle() {}

    /**
     * Mass flow per area, over p0 / sqrt(R T0) of the gas at rest before it.
     * @param ratio pressure behind over that at rest before, 0 to 1
     */
    static double flow(double ratio) {
        return ratio > CRITICAL ? subsonic(ratio) : CHOKED;
    }

    private static double subsonic(double ratio) {
        return Isentropic.throatFlow(GAMMA, ratio);
    }

    /** Mass flow [kg/s] through an effective area [m2] from one state of rest to another pressure, at most the former's. */
    static double mass(double area, double pressure, double temperature, double gasConstant, double behind) {
        return area * pressure / Math.sqrt(gasConstant * temperature) * flow(behind / pressure);
    }

    /**
     * Pressure drop over that at rest before it which brings this flow, by the side slower than sound.
     * @param flow as {@link #flow} tells it, 0 or above
     * @return drop, 0 to 1 - 0.5283; that at the speed of sound where the flow is more than passes
     */
    static double drop(double flow) {
        if (flow >= CHOKED) {
            return 1 - CRITICAL;
        }
        // Newton on the square of the flow, which near rest is 2 x drop; from below it never overshoots as the square
        // is concave
        double wanted = flow * flow;
        double drop = 0.5 * wanted;
        for (int n = 0; n < MOST_STEPS; n++) {
            double ratio = 1 - drop;
            double reached = subsonic(ratio);
            double slope = squareSlope(ratio);
            double step = (wanted - reached * reached) / slope;
            drop = Math.min(drop + step, 1 - CRITICAL);
            if (Math.abs(step) <= SETTLED * drop) {
                break;
            }
        }
        return drop;
    }

    /** How the square of the flow grows with the drop. */
    private static double squareSlope(double ratio) {
        double g = GAMMA;
        return -2 * g / (g - 1) * (2 / g * Math.pow(ratio, 2 / g - 1) - (g + 1) / g * Math.pow(ratio, 1 / g));
    }
}
