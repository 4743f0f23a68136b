package longthrow.core.cycle;

import java.util.OptionalDouble;
import longthrow.core.measurement.NotConvergedException;
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

    /**
     * How an engine of one cylinder breathes through a filter.
     * @param volumeFlow mean over the cycle [m3/s]
     * @param room       between filter and carburettor [m3]
     * @param speed      of the crank [rad/s]
     * @param pressure   of the air before it [Pa]
     * @param density    there [kg/m3]
     */
    public record Breathing(double volumeFlow, double room, double speed, double pressure, double density) {
        public Breathing {
            Require.positive("flow through the filter [m3/s]", volumeFlow);
            Require.positive("room behind the filter [m3]", room);
            Require.positive("speed of the crank [rad/s]", speed);
            Require.positive("pressure of the air [Pa]", pressure);
            Require.positive("density of the air [kg/m3]", density);
        }

        /**
         * Mean drop over that of an even flow: 1 behind a large room; the mean square of a half sine over its squared mean, pi2 / 8 over the open share, where there is none. The room as one volume that fills and empties
         * without heat, the engine drawing half a sine while its valve is open; backward steps.
         */
        double pulsing(double area) {
            return meanDrop(area) / steady(area);
        }

        private double steady(double area) {
            return 0.5 * density * (volumeFlow / area) * (volumeFlow / area);
        }

        /** Over a filter of an effective area [m2], mean over the cycle [Pa]. */
        public double meanDrop(double area) {
            double steady = steady(area);
            double time = 4 * Math.PI / speed / STEPS;
            double stiffness = GAMMA * pressure / room * time;
            double b = stiffness * area * Math.sqrt(2 / density);
            double top = volumeFlow / OPEN * 0.5 * Math.PI;
            double drop = steady;
            double mean = steady;
            double last = 0;
            for (int turn = 0; turn < MOST_TURNS && Math.abs(mean - last) > SETTLED * steady; turn++) {
                last = mean;
                mean = 0;
                for (int i = 1; i <= STEPS; i++) {
                    double place = (double) i / STEPS / OPEN;
                    double drawn = place < 1 ? top * Math.sin(Math.PI * place) : 0;
                    // drop + b root(drop) = c, with the sign of c
                    double c = drop + stiffness * drawn;
                    double root = 0.5 * (Math.sqrt(b * b + 4 * Math.abs(c)) - b);
                    drop = Math.copySign(root * root, c);
                    mean += drop / STEPS;
                }
            }
            return mean;
        }
    }

    private static final double GAMMA = AirNozzle.GAMMA;

    /** Share of the cycle in which nearly all is drawn: 200 degrees of 720. With it the hole is found again within 5 % of its diameter from the flow that the engine's own sums have at the valve (2 to 10 displacements of room, 3000 rpm). */
    private static final double OPEN = 200.0 / 720;

    private static final int STEPS = 1440;
    private static final int MOST_TURNS = 2000;
    private static final double SETTLED = 1e-10;
    private static final int MOST_ROUNDS = 200;

    /**
     * As read on an engine that breathes by pulses: the area whose mean drop is the one read.
     * @param drop mean over the cycle, as a water tube shows [Pa]
     */
    public static AirFilter read(Breathing breathing, double drop) {
        double even = read(breathing.volumeFlow, drop, breathing.density).area.orElseThrow();
        double area = even;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double next = even * Math.sqrt(breathing.pulsing(area));
            boolean isSettled = Math.abs(next - area) <= SETTLED * area;
            area = next;
            if (isSettled) {
                return new AirFilter(OptionalDouble.of(area));
            }
        }
        throw new NotConvergedException("area of the air filter", MOST_ROUNDS, area, SETTLED);
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
