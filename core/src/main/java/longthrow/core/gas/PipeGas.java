package longthrow.core.gas;

import longthrow.core.quantity.Require;

/**
 * A gas for pipes, where a flow asks for a temperature in every cell at every step: heat capacity at constant volume a + b T, so that energy a T + b T2/2
 * gives the temperature by a root. Energies count from 0 K of the law itself, not from the elements. Two of them mix in proportion to their mass.
 *
 * <p>Fitted from {@link #COLDEST} to {@link #HOTTEST}; how far it is off there: {@link #misfit}. At worst, of seven fuels and equivalence ratios 0.8 to 1.5: burned gas 2.4 %
 * in heat capacity, 0.6 % in energy, 0.25 % in sound speed, 0.3 % in temperature; fresh mixture 4.9, 2.6, 0.54 and 0.85 %, but 0.7 % in energy and 0.3 % in
 * sound speed if it is fitted, and met, up to 800 K only. Outside it is a straight line all the same.
 * @param gasConstant [J/(kg K)]
 * @param a           [J/(kg K)], above 0
 * @param b           [J/(kg K2)], 0 or above
 */
public record PipeGas(double gasConstant, double a, double b) {
    /** Range of the fit [K]. */
    public static final double COLDEST = 250;

    public static final double HOTTEST = 1500;

    /** Where energies of law and gas are set equal to compare them [K]: between charge and outside air, which most of a pipe is near. */
    private static final double COMPARED = 300;

    private static final double STEP = 5;

    public PipeGas {
        Require.positive("gas constant [J/(kg K)]", gasConstant);
        Require.positive("heat capacity at 0 K [J/(kg K)]", a);
        Require.notNegative("slope of the heat capacity [J/(kg K2)]", b);
    }

    /**
     * How far a law is off a gas over the whole range, at worst and each over the true one.
     * @param heatCapacity at constant volume
     * @param energy       above 300 K; where that is less than 100 K's worth, over 100 K's worth
     * @param gamma        ratio of specific heats
     * @param soundSpeed   at the same temperature
     * @param temperature  from the same energy above 300 K
     */
    public record Misfit(double heatCapacity, double energy, double gamma, double soundSpeed, double temperature) {}

    /** Over the whole range. */
    public static PipeGas of(Mixture gas) {
        return of(gas, HOTTEST);
    }

    /**
     * Least squares of the relative error of the heat capacity, every temperature alike.
     * @param hottest where the fit ends [K], 500 to 3000: fresh mixture, whose fuel bends the heat capacity most, is nearer where it is met if that is lower
     */
    public static PipeGas of(Mixture gas, double hottest) {
        Require.within("hottest gas in the pipe [K]", hottest, 500, 3000);
        double s00 = 0;
        double s01 = 0;
        double s11 = 0;
        double r0 = 0;
        double r1 = 0;
        for (double t = COLDEST; t <= hottest; t += STEP) {
            double one = 1 / gas.cv(t);
            double slope = t * one;
            s00 += one * one;
            s01 += one * slope;
            s11 += slope * slope;
            r0 += one;
            r1 += slope;
        }
        double determinant = s00 * s11 - s01 * s01;
        return new PipeGas(gas.gasConstant(), (r0 * s11 - r1 * s01) / determinant, (r1 * s00 - r0 * s01) / determinant);
    }

    /**
     * This gas with another.
     * @param share of this one in the mass, 0 to 1
     */
    public PipeGas with(PipeGas other, double share) {
        Require.within("share of the mass", share, 0, 1);
        double rest = 1 - share;
        return new PipeGas(
                share * gasConstant + rest * other.gasConstant, share * a + rest * other.a, share * b + rest * other.b);
    }

    /** [J/(kg K)]. */
    public double cv(double temperature) {
        return a + b * temperature;
    }

    /** From 0 K of the law [J/kg]. */
    public double energy(double temperature) {
        return temperature * (a + 0.5 * b * temperature);
    }

    /** Where the energy is this [K]; 0 and above. Written so that it holds without slope too: 2 e over a plus the root of a2 + 2 b e. */
    public double temperature(double energy) {
        return 2 * energy / (a + Math.sqrt(a * a + 2 * b * energy));
    }

    public double gamma(double temperature) {
        return 1 + gasConstant / cv(temperature);
    }

    /** [m/s]. */
    public double soundSpeed(double temperature) {
        return Math.sqrt(gamma(temperature) * gasConstant * temperature);
    }

    /** Against the gas it stands for, over the whole range. */
    public Misfit misfit(Mixture gas) {
        return misfit(gas, HOTTEST);
    }

    /** The same up to a temperature [K]. */
    public Misfit misfit(Mixture gas, double hottest) {
        double capacity = 0;
        double energy = 0;
        double gamma = 0;
        double sound = 0;
        double hotter = 0;
        for (double t = COLDEST; t <= hottest; t += STEP) {
            double trueRise = gas.internalEnergy(t) - gas.internalEnergy(COMPARED);
            double rise = energy(t) - energy(COMPARED);
            double least = 100 * gas.cv(COMPARED);
            capacity = Math.max(capacity, Math.abs(cv(t) / gas.cv(t) - 1));
            energy = Math.max(energy, Math.abs(rise - trueRise) / Math.max(Math.abs(trueRise), least));
            gamma = Math.max(gamma, Math.abs(gamma(t) / gas.gamma(t) - 1));
            sound = Math.max(sound, Math.abs(soundSpeed(t) / gas.soundSpeed(t) - 1));
            hotter = Math.max(hotter, Math.abs(temperature(energy(COMPARED) + trueRise) / t - 1));
        }
        return new Misfit(capacity, energy, gamma, sound, hotter);
    }
}
