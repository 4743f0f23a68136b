package longthrow.core.cycle;

import longthrow.core.gas.NasaPolynomial;
import longthrow.core.quantity.Require;

/**
 * How far the unburned gas has come on its way to self-ignition: the integral of dt / tau (J. C. Livengood and P. C. Wu, 5th Symp. (Int.) on Combustion (1955) 347), where it
 * reaches 1 it knocks. Delay tau = 17.68 (ON / 100)^3.402 p^-1.7 exp(3800 / T) ms, p in atmospheres (A. M. Douaud and P. Eyzat, SAE 780080 (1978); constants from memory).
 *
 * <p>The octane number stands before the integral as a factor, so one sum serves for all of them and the number wanted follows without search. Feed it the unburned gas
 * from intake closing until {@link #BURNED} has burned. One engine's or thread's own; allocates nothing.
 *
 * <p>Holds for primary reference fuels of 80 to 100 octane, for which the delay was fitted; a pump petrol lies between its motor and research numbers, nearer to the motor number where the
 * charge is hot (Heywood (1988) 9.6.2). For alcohols the sum is outside its fit.
 */
public final class Knock {
    /** Octane numbers of the reference fuels of the fit. */
    public static final double LOWEST_FITTED = 80;

    public static final double HIGHEST_FITTED = 100;

    /**
     * What ignites of itself after so much has burned is not heard and does no harm: too little is left. Knock is counted where 5 to 15 % and more is left (P. Franzke (1981) and those who follow him count it up to a fixed
     * share of the burning; from memory, the middle of 0.85 to 0.95).
     */
    public static final double BURNED = 0.90;

    /**
     * Standard uncertainty of the octane number wanted: one-zone delay integrals tell measured requirements within some 3 to 5 numbers (judgement, no source), and from one end of the range of {@link #BURNED} to the other it
     * moves by 4 to 10, which is up to 3 as a rectangle.
     */
    public static final double DOUBT = 5;

    private static final double MILLISECOND = 1e-3;
    private static final double FACTOR = 17.68 * MILLISECOND;
    private static final double OCTANE_POWER = 3.402;
    private static final double PRESSURE_POWER = 1.7;
    private static final double ACTIVATION = 3800;

    private double sum;
    private double rate;

    /**
     * Delay of self-ignition [s].
     * @param octane      octane number, above 0
     * @param pressure    [Pa]
     * @param temperature of the unburned gas [K]
     */
    public static double delay(double octane, double pressure, double temperature) {
        Require.positive("octane number", octane);
        Require.positive("pressure [Pa]", pressure);
        Require.positive("temperature of the unburned gas [K]", temperature);
        return Math.pow(octane / 100, OCTANE_POWER) / rateAtHundred(pressure, temperature);
    }

    /** [1/s]. */
    private static double rateAtHundred(double pressure, double temperature) {
        double p = pressure / NasaPolynomial.STANDARD_PRESSURE;
        return Math.exp(PRESSURE_POWER * Math.log(p) - ACTIVATION / temperature) / FACTOR;
    }

    /** Starts anew from this state: pressure [Pa] and temperature of the unburned gas [K], both above 0. */
    public void begin(double pressure, double temperature) {
        sum = 0;
        rate = rateAtHundred(pressure, temperature);
    }

    /**
     * Goes on to the next state, by trapezoids.
     * @param time        since the last state [s], 0 or above
     * @param pressure    now [Pa]
     * @param temperature of the unburned gas now [K]
     */
    public void add(double time, double pressure, double temperature) {
        double now = rateAtHundred(pressure, temperature);
        sum += 0.5 * time * (rate + now);
        rate = now;
    }

    /** The integral for a fuel of this octane number: above 1 it has knocked. */
    public double integral(double octane) {
        return sum * Math.pow(100 / octane, OCTANE_POWER);
    }

    /** Octane number with which the integral is just 1: less knocks. 0 before anything was added. */
    public double octaneWanted() {
        return 100 * Math.pow(sum, 1 / OCTANE_POWER);
    }

    /** Whether the number wanted is one of the reference fuels the delay was fitted to. */
    public boolean fitted() {
        double wanted = octaneWanted();
        return wanted >= LOWEST_FITTED && wanted <= HIGHEST_FITTED;
    }
}
