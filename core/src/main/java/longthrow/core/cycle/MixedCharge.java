package longthrow.core.cycle;

import longthrow.core.gas.BurnedSlice;
import longthrow.core.gas.BurnedState;
import longthrow.core.gas.Equilibrium;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;

/**
 * Air with fuel vapour of one equivalence ratio, and what it burns to in equilibrium. Beyond the temperatures that the equilibrium is told of, burned gas goes on with the
 * heat capacity of the last one; beyond its pressures it is that of the last one. An engine passes neither but for a moment of its first cycles.
 */
public final class MixedCharge implements ChargeGases {
    private final Mixture fresh;
    private final BurnedSlice burned;

    private MixedCharge(Mixture fresh, BurnedSlice burned) {
        this.fresh = fresh;
        this.burned = burned;
    }

    /**
     * Works out the table of burned gas.
     * @param equivalenceRatio fuel to air over that of exact burning, as {@link Equilibrium} bears
     */
    public static MixedCharge of(Fuel fuel, MoistAir air, double equivalenceRatio) {
        return new MixedCharge(
                Mixture.fresh(fuel, air, equivalenceRatio),
                BurnedSlice.of(Equilibrium.of(fuel, air, equivalenceRatio)));
    }

    @Override
    public void fresh(double temperature, BurnedState into) {
        double cp = fresh.cp(temperature);
        double gas = fresh.gasConstant();
        into.internalEnergy = fresh.enthalpy(temperature) - gas * temperature;
        into.energyByTemperature = cp - gas;
        into.energyByLogPressure = 0;
        into.gasConstant = gas;
        into.gasConstantByTemperature = 0;
        into.gasConstantByLogPressure = 0;
    }

    @Override
    public void burned(double temperature, double pressure, BurnedState into) {
        double told = Math.min(Equilibrium.HOTTEST, Math.max(Equilibrium.COLDEST, temperature));
        double bounded = Math.min(Equilibrium.HIGHEST_PRESSURE, Math.max(Equilibrium.LOWEST_PRESSURE, pressure));
        burned.at(told, bounded, into);
        if (told != temperature) {
            into.internalEnergy += into.energyByTemperature * (temperature - told);
            into.gasConstantByTemperature = 0;
        }
        if (bounded != pressure) {
            into.energyByLogPressure = 0;
            into.gasConstantByLogPressure = 0;
        }
    }
}
