package longthrow.core.gas;

import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.core.quantity.Require;

/**
 * Air as mole fractions, which add up to 1.
 *
 * <p>Dry air is that of CIPM-2007 (A. Picard and others, Metrologia 45 (2008) 149: O2 0.209390, Ar 0.009332, CO2 0.00040, quoted from memory) with the
 * rest, traces included, as N2: its molar mass 28.9661 g/mol agrees with the formula's 28.9655 within 2e-5. Moisture displaces all of it alike.
 * Density as of an ideal gas, which is 0.04 % low at one atmosphere.
 * @param oxygen        O2
 * @param nitrogen      N2
 * @param argon         Ar
 * @param carbonDioxide CO2
 * @param water         H2O, as vapour
 */
public record MoistAir(double oxygen, double nitrogen, double argon, double carbonDioxide, double water) {
    /** Dry, see above. */
    public static final MoistAir DRY = new MoistAir(0.209390, 1 - 0.209390 - 0.009332 - 0.00040, 0.009332, 0.00040, 0);

    /** O2 + 3.76 N2: the plain air of textbooks. */
    public static final MoistAir PLAIN = new MoistAir(1 / 4.76, 3.76 / 4.76, 0, 0, 0);

    /** 21 % O2, 79 % N2. */
    public static final MoistAir TWENTY_ONE = new MoistAir(0.21, 0.79, 0, 0, 0);

    public MoistAir {
        if (!(oxygen > 0)) {
            throw new IllegalArgumentException(
                    "air without oxygen (mole fraction " + oxygen + ") burns nothing; give more than 0");
        }
        Require.notNegative("nitrogen [mole fraction]", nitrogen);
        Require.notNegative("argon [mole fraction]", argon);
        Require.notNegative("carbon dioxide [mole fraction]", carbonDioxide);
        Require.notNegative("water [mole fraction]", water);
        double sum = oxygen + nitrogen + argon + carbonDioxide + water;
        if (!(Math.abs(sum - 1) < 1e-9)) {
            throw new IllegalArgumentException(
                    "the mole fractions of air add up to " + sum + "; they must add up to 1");
        }
    }

    /**
     * Dry air with the moisture that a hygrometer tells.
     * @param relativeHumidity vapour's pressure over that of saturated vapour, 0 to 1
     * @param temperature      of the air where the humidity was read [K]
     * @param pressure         there, absolute [Pa]
     */
    public static MoistAir of(double relativeHumidity, double temperature, double pressure) {
        return DRY.moist(vapourFraction(relativeHumidity, temperature, pressure));
    }

    /**
     * Mole fraction of vapour: relative humidity times the pressure of saturated vapour times the enhancement by the air above it (CIPM-2007,
     * annex A1.2), over the pressure.
     */
    public static double vapourFraction(double relativeHumidity, double temperature, double pressure) {
        Require.within("relative humidity", relativeHumidity, 0, 1);
        Require.positive("air pressure [Pa]", pressure);
        double saturated = VapourPressure.CIPM_2007.at(temperature);
        double celsius = temperature - VapourPressure.ICE_POINT;
        double enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius * celsius;
        double fraction = relativeHumidity * enhancement * saturated / pressure;
        if (!(fraction < 0.5)) {
            throw new IllegalArgumentException(
                    "at " + temperature + " K and " + pressure + " Pa air of relative humidity " + relativeHumidity
                            + " would be half vapour or more; is the pressure in pascal?");
        }
        return fraction;
    }

    /** The same dry air with vapour of this mole fraction. */
    public MoistAir moist(double vapour) {
        Require.within("vapour [mole fraction]", vapour, 0, 1);
        double dry = (1 - vapour) / (1 - water);
        return new MoistAir(oxygen * dry, nitrogen * dry, argon * dry, carbonDioxide * dry, vapour);
    }

    /** [kg/mol]. */
    public double molarMass() {
        return atoms().mass();
    }

    /** [J/(kg K)]. */
    public double gasConstant() {
        return NasaPolynomial.MOLAR_GAS_CONSTANT / molarMass();
    }

    /** Density of the ideal gas [kg/m3]. */
    public double density(double temperature, double pressure) {
        Require.positive("temperature [K]", temperature);
        Require.positive("pressure [Pa]", pressure);
        return pressure / (gasConstant() * temperature);
    }

    /** Mass of vapour over mass of dry air. */
    public double humidityRatio() {
        double vapour = water * Species.H2O.molarMass();
        return vapour / (molarMass() - vapour);
    }

    /** Atoms in one mole of it. */
    Atoms atoms() {
        return new Atoms(carbonDioxide, 2 * water, 2 * oxygen + 2 * carbonDioxide + water, 2 * nitrogen, argon);
    }

    /** Amount of each gas in so many moles of it. */
    Map<Substance, Double> moles(double amount) {
        Map<Substance, Double> moles = new LinkedHashMap<>();
        moles.put(Species.N2, amount * nitrogen);
        moles.put(Species.O2, amount * oxygen);
        moles.put(Species.AR, amount * argon);
        moles.put(Species.CO2, amount * carbonDioxide);
        moles.put(Species.H2O, amount * water);
        return moles;
    }
}
