package longthrow.core.cycle;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Require;

/**
 * A carburettor at full throttle: the venturi's depression draws fuel through the main jet (the elementary carburettor, Heywood 1988, section 7.3), with air let into the fuel before the nozzle where it
 * has an air jet (section 7.4, air bleed; the two taken to mix at once and to flow as one). Quasi-steady: {@link #fuelFlow} of each moment's air flow, added up, is the least that air draws that pulses; how
 * much more by the fuel's inertia, and by air that swings back, {@link Pulses} says.
 *
 * <p>Not in it: a level in the emulsion tube that falls with the flow and uncovers holes, needles and slides, idle and pilot jets, power jets, how thick cold fuel is. So the mixture's course over the
 * air flow is that of the elementary instrument; makers drill emulsion tubes to level it.
 * @param venturi  narrowest diameter [m]
 * @param main     the main jet
 * @param lip      height of the nozzle's lip over the float's level [m]
 * @param emulsion empty where no air goes into the fuel, or none is known
 */
public record Carburettor(double venturi, JetSize main, double lip, Optional<Emulsion> emulsion) {
    /** Coefficient of a small venturi, 0.92 to 0.98 (Heywood 1988, section 7.3, from memory). */
    public static final double VENTURI_COEFFICIENT = 0.95;

    private static final double VENTURI_DOUBT = 0.03 / VENTURI_COEFFICIENT / Math.sqrt(3);

    /** Coefficient of air jet and nozzle, as of short holes; the mixture hangs little on it. */
    private static final double HOLE_COEFFICIENT = 0.75;

    /**
     * Relative standard uncertainty of the fuel for what the model leaves out: a spray tube does not feel the pressure of the throat to better than a tenth, which the root halves, and the emulsion tube levels
     * the mixture. A judgement.
     */
    public static final double SIGNAL_DOUBT = 0.07;

    private static final double GRAVITY = 9.80665;

    /** Mass of air to fuel at full load with a carburettor, petrol: 11.5 to 13.5, from memory. */
    public static final double RICHEST_AIR_FUEL = 11.5;

    public static final double LEANEST_AIR_FUEL = 13.5;

    /** Other fuels than petrol have no such range; petrol's equivalence ratio is taken with so many times its spread: a judgement. */
    private static final double OTHER_FUELS = 2;

    public Carburettor {
        Require.within("diameter of the venturi [m]", venturi, 3e-3, 0.1);
        Require.within("height of the nozzle over the float's level [m]", lip, 0, 0.05);
    }

    /**
     * Air let into the fuel.
     * @param airJet diameter [m]
     * @param nozzle diameter of the hole both leave by [m]
     */
    public record Emulsion(double airJet, double nozzle) {
        public Emulsion {
            Require.within("diameter of the air jet [m]", airJet, 0.1e-3, 10e-3);
            Require.within("diameter of the nozzle [m]", nozzle, 0.3e-3, 20e-3);
        }
    }

    /**
     * Air as it comes to the venturi, behind filter and before throttle.
     * @param pressure    at rest [Pa]
     * @param temperature [K]
     * @param gasConstant [J/(kg K)]
     */
    public record Incoming(double pressure, double temperature, double gasConstant) {
        public Incoming {
            Require.positive("pressure before the venturi [Pa]", pressure);
            Require.positive("temperature before the venturi [K]", temperature);
            Require.positive("gas constant [J/(kg K)]", gasConstant);
        }

        /** [kg/m3]. */
        public double density() {
            return pressure / (gasConstant * temperature);
        }
    }

    /** Effective area of the venturi for the gas that flows through [m2]. */
    public double airArea() {
        return VENTURI_COEFFICIENT * circle(venturi);
    }

    private static double circle(double diameter) {
        return 0.25 * Math.PI * diameter * diameter;
    }

    /**
     * Depression in the throat [Pa], below the pressure at rest before it. At the speed of sound, and beyond what can flow, that of the speed of sound.
     * @param airFlow [kg/s], either way
     */
    public double signal(double airFlow, Incoming air) {
        double flow = Math.abs(airFlow) * Math.sqrt(air.gasConstant * air.temperature) / (airArea() * air.pressure);
        return air.pressure * AirNozzle.drop(flow);
    }

    /** Most air that passes the venturi [kg/s], where it flows at the speed of sound. */
    public double mostAir(Incoming air) {
        return AirNozzle.CHOKED * airArea() * air.pressure / Math.sqrt(air.gasConstant * air.temperature);
    }

    /**
     * Fuel that is drawn [kg/s]; empty where the jet's size is not known.
     * @param airFlow      [kg/s], either way
     * @param bowlRise     pressure in the float bowl over that at rest before the venturi [Pa]: the filter's drop where the bowl is vented to the open, 0 where it is vented before the venturi
     * @param fuelDensity  of the liquid [kg/m3]
     */
    public OptionalDouble fuelFlow(double airFlow, Incoming air, double bowlRise, double fuelDensity) {
        Optional<JetSize.Hole> hole = main.hole();
        if (hole.isEmpty()) {
            return OptionalDouble.empty();
        }
        double signal = signal(airFlow, air) + bowlRise;
        return OptionalDouble.of(fuel(hole.get().area(), signal, air, bowlRise, fuelDensity));
    }

    private double fuel(double jet, double signal, Incoming air, double bowlRise, double fuelDensity) {
        if (emulsion.isEmpty()) {
            return jet * Math.sqrt(2 * fuelDensity * Math.max(0, signal - fuelDensity * GRAVITY * lip));
        }
        // fuel and air come into the well by one drop x, and leave it together by what is left of the signal
        double airDensity = air.density() * (air.pressure + bowlRise) / air.pressure;
        double bleed = HOLE_COEFFICIENT * circle(emulsion.get().airJet);
        double nozzle = HOLE_COEFFICIENT * circle(emulsion.get().nozzle);
        double fuelShare = jet * Math.sqrt(fuelDensity);
        double airShare = bleed * Math.sqrt(airDensity);
        double inflow = fuelShare + airShare;
        double density = inflow / (fuelShare / fuelDensity + airShare / airDensity);
        double left = Math.max(0, signal - density * GRAVITY * lip);
        double out = nozzle * nozzle * density;
        double drop = left * out / (inflow * inflow + out);
        return fuelShare * Math.sqrt(2 * drop);
    }

    /**
     * Equivalence ratio that the jet delivers to a steady flow of air, with its doubt; empty where the jet's size, or the liquid's density, is not known.
     * @param airFlow dry or moist, above 0 [kg/s]
     * @param moist   the air's composition, whose oxygen counts
     */
    public Optional<Measured> mixture(double airFlow, Incoming air, double bowlRise, Fuel fuel, MoistAir moist) {
        Require.positive("air flow [kg/s]", airFlow);
        if (fuel.density().isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble flow =
                fuelFlow(airFlow, air, bowlRise, fuel.density().get().value());
        return flow.isEmpty()
                ? Optional.empty()
                : Optional.of(doubted(flow.getAsDouble() / airFlow * fuel.stoichiometricAirFuel(moist)));
    }

    /** An equivalence ratio with the doubt that jet, venturi and model bring to it. */
    public Measured doubted(double ratio) {
        return Measured.of(
                ratio,
                List.of(
                        known(
                                "carburettor.jet",
                                "coefficient of the main jet",
                                ratio * main.hole().orElseThrow().doubt()),
                        known("carburettor.venturi", "coefficient of the venturi", ratio * VENTURI_DOUBT),
                        known("carburettor.signal", "model of the carburettor", ratio * SIGNAL_DOUBT)));
    }

    /**
     * How air comes and goes.
     * @param back  of what flows backwards so much does through the venturi, 0 to 1: pipe and box between it and the valve take up the rest
     * @param even  how far the fuel's inertia and the well evens out the depression, 0 to 1: at 0 fuel follows each moment's air and goes with it, at 1 it flows by the mean of a depression that goes with the square of the
     *              air, all cycle long, which for the pulses of a single is about twice as much
     */
    public record Pulses(double back, double even) {
        public Pulses {
            Require.within("share of what flows backwards", back, 0, 1);
            Require.within("how even the depression is", even, 0, 1);
        }
    }

    /**
     * The same without doubt, of air whose flow comes and goes: what is drawn in a cycle over what has gone in at its end. What swings back draws fuel again. Pressure in the bowl over that before the venturi counts while air
     * flows.
     * @param airFlows    at even times over a cycle [kg/s]
     * @param fuelDensity of the liquid [kg/m3]
     * @return equivalence ratio; empty where the jet's size is not known or nothing has gone in at the end
     */
    public OptionalDouble mixture(
            double[] airFlows,
            Pulses pulses,
            Incoming air,
            double bowlRise,
            double fuelDensity,
            double stoichiometric) {
        if (main.hole().isEmpty()) {
            return OptionalDouble.empty();
        }
        double jet = main.hole().get().area();
        double drawn = 0;
        double net = 0;
        double mean = 0;
        for (double flow : airFlows) {
            double weight = flow < 0 ? pulses.back : 1;
            double signal = signal(flow, air);
            drawn += weight * fuel(jet, flow == 0 ? 0 : signal + bowlRise, air, bowlRise, fuelDensity);
            mean += (weight * signal + bowlRise) / airFlows.length;
            net += weight * flow;
        }
        double evenly = airFlows.length * fuel(jet, mean, air, bowlRise, fuelDensity);
        double all = (1 - pulses.even) * drawn + pulses.even * evenly;
        return net > 0 ? OptionalDouble.of(all / net * stoichiometric) : OptionalDouble.empty();
    }

    private static Source known(String id, String label, double uncertainty) {
        return Source.known(id, Source.Kind.ASSUMED, label, uncertainty);
    }

    /**
     * Equivalence ratio at full load where no jet is known: air to fuel of petrol in the middle between {@link #RICHEST_AIR_FUEL} and {@link #LEANEST_AIR_FUEL}, rectangular.
     */
    public static Measured usualMixture(Fuel fuel) {
        Fuel petrol = Fuel.petrol();
        double middle = 0.5 * (RICHEST_AIR_FUEL + LEANEST_AIR_FUEL);
        double ratio = petrol.stoichiometricAirFuel(MoistAir.DRY) / middle;
        double reach = ratio * 0.5 * (LEANEST_AIR_FUEL - RICHEST_AIR_FUEL) / middle;
        boolean known = fuel.label().equals(petrol.label());
        return Measured.of(
                ratio,
                List.of(Source.rectangular(
                        "carburettor.mixture",
                        Source.Kind.ASSUMED,
                        "mixture at full load",
                        known ? reach : OTHER_FUELS * reach)));
    }
}
