package longthrow.core.cycle;

import java.util.OptionalDouble;
import longthrow.core.quantity.Require;

/**
 * What an air filter costs: a drop that goes with the square of the flow, rho/2 (Q/A)^2, by one effective area. That is the law of its holes and bends; a clean element alone is nearer to linear, so a drop
 * read near full flow is the one to give.
 * @param area effective [m2]; infinite where there is no filter; empty where nothing was read
 */
public record AirFilter(OptionalDouble area) {
    /** Drop at which filters are called full [Pa], ten inches of water at full flow: common practice, no source. What is not read lies between nothing and this. */
    public static final double FULL = 2490;

    public AirFilter {
        if (area.isPresent() && !(area.getAsDouble() > 0)) {
            throw new IllegalArgumentException(
                    "effective area of the filter is " + area.getAsDouble() + " m2; it must be above 0");
        }
    }

    public static AirFilter none() {
        return new AirFilter(OptionalDouble.of(Double.POSITIVE_INFINITY));
    }

    public static AirFilter unknown() {
        return new AirFilter(OptionalDouble.empty());
    }

    /**
     * As read.
     * @param volumeFlow through it [m3/s]
     * @param drop       there [Pa]
     * @param density    of the air before it [kg/m3]
     */
    public static AirFilter read(double volumeFlow, double drop, double density) {
        Require.positive("flow through the filter [m3/s]", volumeFlow);
        Require.positive("drop over the filter [Pa]", drop);
        Require.positive("density of the air [kg/m3]", density);
        return new AirFilter(OptionalDouble.of(volumeFlow * Math.sqrt(0.5 * density / drop)));
    }

    /** One that costs {@link #FULL} at a mass flow [kg/s]: the bound of what is not known. */
    public static AirFilter full(double massFlow, double density) {
        return read(massFlow / density, FULL, density);
    }

    /**
     * Drop [Pa], against the flow; empty where nothing was read.
     * @param massFlow [kg/s], either way
     * @param density  of the air before it [kg/m3]
     */
    public OptionalDouble drop(double massFlow, double density) {
        if (area.isEmpty()) {
            return OptionalDouble.empty();
        }
        double perArea = massFlow / area.getAsDouble();
        return OptionalDouble.of(0.5 * perArea * Math.abs(perArea) / density);
    }
}
