package longthrow.core.cycle;

import longthrow.core.gas.Fuel;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;

/**
 * Share of the fuel's heating value that the fire sets free: what the oxygen allows, times what meets the flame at all. Rich mixtures follow the first: a model of nothing but chemistry agrees with measured engines
 * (Combustion efficiency of spark ignition engines, abstract read: equivalence ratio alone, except near misfire).
 */
public final class CombustionEfficiency {
    /**
     * Share of the charge that burns; the rest hides in crevices and dies at walls. Lean mixtures, where oxygen is no limit, set 0.95 to 0.98 free in Heywood (1988), figure 3-9 (from memory); small engines have more wall and crevice
     * to their volume, for which the low end is set lower (judgement). To be used alone where the burned gas is reckoned by chemistry, so that nothing is taken off twice.
     */
    public static final PublishedValue BURNS = new PublishedValue(
            0.96, 0.93, 0.98, "Heywood (1988), figure 3-9, lean side, from memory; low end for small engines judged");

    private static final double STANDARD_TEMPERATURE = 298.15;

    private CombustionEfficiency() {}

    /**
     * Of the heating value of the vapour.
     * @param equivalenceRatio above 0 to {@link Mixture#RICHEST}; says nothing about whether so lean or rich a mixture still fires
     */
    public static double at(Fuel fuel, MoistAir air, double equivalenceRatio) {
        return BURNS.value() * allowed(fuel, air, equivalenceRatio);
    }

    /**
     * Share that burning to the end of the oxygen sets free, 1 where lean; carbon monoxide and hydrogen left as the water gas reaction has them ({@link Mixture#WATER_GAS}).
     * @param equivalenceRatio above 0 to {@link Mixture#RICHEST}
     */
    public static double allowed(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Mixture fresh = Mixture.fresh(fuel, air, equivalenceRatio);
        Mixture burned = Mixture.burned(fuel, air, equivalenceRatio);
        double fuelByAir = equivalenceRatio / fuel.stoichiometricAirFuel(air);
        double freed = fresh.enthalpy(STANDARD_TEMPERATURE) - burned.enthalpy(STANDARD_TEMPERATURE);
        return freed * (1 + fuelByAir) / (fuelByAir * fuel.vapourHeatingValue());
    }
}
