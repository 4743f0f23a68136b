package longthrow.core.cycle;

import longthrow.core.gas.Fuel;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;
import longthrow.core.gas.Species;
import longthrow.core.quantity.Require;

/**
 * What fuel from a carburettor does to the air on its way to the cylinder: a share evaporates and takes its heat from the air (Heywood (1988), 7.6; formulas are an enthalpy balance).
 *
 * <p>How much evaporates is hardly measured for small engines. Petrol that is all vapour would cool a stoichiometric mixture by some 20 K, ethanol's by 80 K and methanol's by 120 K, at which alcohols could not be vapour
 * any more: saturation stops pure alcohols at a fifth to a quarter of a stoichiometric charge. The shares here are judgement between that bound and none, with wide spread.
 */
public final class IntakeMixture {
    /** Of the liquids concerned [J/(kg K)]: petrol 2200, alcohols 2400 to 2500, from memory; hardly moves the result. */
    private static final double LIQUID_HEAT_CAPACITY = 2300;

    private static final String JUDGED = "judgement between none and what saturates the air, no source";

    private static final PublishedValue PETROL = new PublishedValue(0.6, 0.4, 0.85, JUDGED);
    private static final PublishedValue ETHANOL = new PublishedValue(0.22, 0.1, 0.35, JUDGED);
    private static final PublishedValue METHANOL = new PublishedValue(0.18, 0.08, 0.3, JUDGED);

    private IntakeMixture() {}

    /**
     * Share of the fuel's mass that evaporates out of the air's heat before the intake valve closes, carburettor, short intake, no heating. Blends lie between petrol and ethanol by the mass of each (judgement).
     */
    public static PublishedValue evaporatedShare(Fuel fuel) {
        if (fuel.atoms().equals(Species.METHANOL.atoms())) {
            return METHANOL;
        }
        if (fuel.latentHeat().value() == 0) {
            return new PublishedValue(1, 1, 1, "a gas as delivered");
        }
        double alcohol = fuel.atoms().oxygen() * Species.ETHANOL.molarMass() / fuel.molarMass();
        double petrol = 1 - alcohol;
        return new PublishedValue(
                alcohol * ETHANOL.value() + petrol * PETROL.value(),
                alcohol * ETHANOL.low() + petrol * PETROL.low(),
                alcohol * ETHANOL.high() + petrol * PETROL.high(),
                JUDGED);
    }

    /**
     * Temperature of air and fuel together once a share has evaporated, without heat from walls [K]; the fuel enters as warm as the air.
     * @param equivalenceRatio fuel over what the air can burn, 0 or above
     * @param airTemperature   [K]
     * @param evaporated       share of the fuel's mass, 0 to 1
     */
    public static double temperature(
            Fuel fuel, MoistAir air, double equivalenceRatio, double airTemperature, double evaporated) {
        Require.notNegative("equivalence ratio", equivalenceRatio);
        Require.within("air temperature [K]", airTemperature, 220, 400);
        Require.within("evaporated share of the fuel", evaporated, 0, 1);
        double fuelByAir = equivalenceRatio / fuel.stoichiometricAirFuel(air);
        double vapour = fuel.heat().cp(airTemperature) / fuel.molarMass();
        double heatCapacity = Mixture.air(air).cp(airTemperature)
                + fuelByAir * (evaporated * vapour + (1 - evaporated) * LIQUID_HEAT_CAPACITY);
        return airTemperature - fuelByAir * evaporated * fuel.latentHeat().value() / heatCapacity;
    }

    /**
     * Temperature at which a gas in which all fuel is vapour holds as much air in a room as air with the evaporated share alone does at its own [K]: droplets take no room, and the gas that is
     * carried through intake and cylinder counts all fuel as vapour. By mole fractions, exact for ideal gases. That the droplets evaporate later, out of heat of charge and walls, is then
     * counted by as much as their vapour's room is worth: of methanol about a quarter of its latent heat.
     * @param equivalenceRatio fuel over what the air can burn, 0 or above
     * @param temperature      of air, vapour and droplets [K]
     * @param evaporated       share of the fuel's mass, 0 to 1
     */
    public static double asAllVapour(
            Fuel fuel, MoistAir air, double equivalenceRatio, double temperature, double evaporated) {
        Require.notNegative("equivalence ratio", equivalenceRatio);
        Require.positive("temperature of the mixture [K]", temperature);
        Require.within("evaporated share of the fuel", evaporated, 0, 1);
        double moles = equivalenceRatio / fuel.stoichiometricAirFuel(air) * air.molarMass() / fuel.molarMass();
        return temperature * (1 + evaporated * moles) / (1 + moles);
    }
}
