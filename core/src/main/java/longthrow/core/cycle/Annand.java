package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * Heat flux a k / B Re^0.7 (T - Tw) + c sigma (T^4 - Tw^4), Re by bore and mean piston speed: W. J. D. Annand, Proc. IMechE 177 (1963) 973, form from memory. a is 0.35 to 0.8 as the gas moves less or
 * more, c is 0.075 with spark while burning and expanding, 0 otherwise. What the gas conducts is no part of the source: viscosity 4.702e-7 T^0.645 kg/(m s), heat capacity 1105.5 J/(kg K), Prandtl number
 * 0.7, gas constant 287 J/(kg K) as in reference rows CYC-10 and CYC-11.
 */
public final class Annand implements WallHeat {
    /** Least and most of a in the source, and what is taken where it is not told: usual for four-strokes, from memory. */
    public static final double CALM = 0.35;

    public static final double STIRRED = 0.8;
    public static final double USUAL = 0.49;

    /** c in burning and expansion with spark. */
    private static final double RADIATION = 0.075;

    /** Stefan's and Boltzmann's constant [W/(m2 K4)]: exact since the 2019 SI, CODATA 2018. */
    private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    private static final double POWER = 0.7;
    private static final double HEAT_CAPACITY = 1105.5;
    private static final double PRANDTL = 0.7;
    private static final double GAS_CONSTANT = 287;

    private final double convection;
    private final double bore;
    private final double pistonSpeed;

    /**
     * At one speed of one engine.
     * @param a           0.35 to 0.8
     * @param bore        [m], above 0
     * @param pistonSpeed mean, [m/s], above 0
     */
    public Annand(double a, double bore, double pistonSpeed) {
        Require.within("Annand's factor a", a, CALM, STIRRED);
        this.bore = Require.positive("bore [m]", bore);
        this.pistonSpeed = Require.positive("mean piston speed [m/s]", pistonSpeed);
        this.convection = a * HEAT_CAPACITY / (PRANDTL * bore);
    }

    /** Of the gas in the cylinder [kg/(m s)], the fit of the reference rows. */
    static double viscosity(double temperature) {
        return 4.702e-7 * Math.pow(temperature, 0.645);
    }

    /** Of the unburned gas [m2/s], as of an ideal gas of 287 J/(kg K). */
    static double kinematicViscosity(double temperature, double pressure) {
        return viscosity(temperature) * GAS_CONSTANT * temperature / pressure;
    }

    public double reynolds(GasAtWall gas) {
        return pistonSpeed * bore / kinematicViscosity(gas.temperature, gas.pressure);
    }

    @Override
    public double coefficient(GasAtWall gas) {
        double mu = viscosity(gas.temperature);
        double re = gas.pressure * pistonSpeed * bore / (GAS_CONSTANT * gas.temperature * mu);
        double convected = convection * mu * Math.pow(re, POWER);
        if (gas.phase != GasAtWall.Phase.BURNING) {
            return convected;
        }
        double wall = gas.wallTemperature;
        double t = gas.temperature;
        return convected + RADIATION * STEFAN_BOLTZMANN * (t * t + wall * wall) * (t + wall);
    }
}
