package longthrow.core.cycle;

import longthrow.core.gas.BurnedState;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeGases;
import longthrow.core.quantity.Require;

/**
 * One charge, as the cylinder knows it and as the pipes do, and how the energies of the two are told in one another. A pipe counts from 0 K of its own gas law, the cylinder
 * from the elements: between them stands a constant for each of the two gases, so that energy is kept whichever way gas flows. The laws meet where the constant is taken.
 */
public final class WorkingGases {
    /** Where the laws of the fresh charge meet [K]: it comes through the valve a little warmer than the air. */
    private static final double FRESH_MEETS = 330;

    /** Where the laws of the burned gas meet [K]: it leaves through the valve at 800 to 1500 K. */
    private static final double BURNED_MEETS = 1100;

    /** Fresh charge in a pipe is not met hotter [K]; its law is fitted up to there. */
    private static final double HOTTEST_FRESH = 800;

    private final Fuel fuel;
    private final MoistAir air;
    private final double equivalenceRatio;
    private final MixedCharge charge;
    private final PipeGases pipe;
    private final double freshZero;
    private final double burnedZero;
    private final double released;

    private WorkingGases(Fuel fuel, MoistAir air, double equivalenceRatio) {
        this.fuel = fuel;
        this.air = air;
        this.equivalenceRatio = equivalenceRatio;
        Mixture fresh = Mixture.fresh(fuel, air, equivalenceRatio);
        Mixture burned = Mixture.burned(fuel, air, equivalenceRatio);
        this.charge = MixedCharge.of(fuel, air, equivalenceRatio);
        this.pipe = new PipeGases(PipeGas.of(fresh, HOTTEST_FRESH), PipeGas.of(burned));
        BurnedState state = new BurnedState();
        charge.fresh(FRESH_MEETS, state);
        this.freshZero = state.internalEnergy - pipe.fresh().energy(FRESH_MEETS);
        charge.burned(BURNED_MEETS, 1e5, state);
        this.burnedZero = state.internalEnergy - pipe.burned().energy(BURNED_MEETS);
        this.released = fresh.internalEnergy(ROOM) - burned.internalEnergy(ROOM);
    }

    private static final double ROOM = 298.15;

    /**
     * Works out both.
     * @param equivalenceRatio fuel to air over that of exact burning, 0.5 to 2
     */
    public static WorkingGases of(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Require.within("equivalence ratio", equivalenceRatio, 0.5, 2);
        return new WorkingGases(fuel, air, equivalenceRatio);
    }

    public Fuel fuel() {
        return fuel;
    }

    public MoistAir air() {
        return air;
    }

    public double equivalenceRatio() {
        return equivalenceRatio;
    }

    /** Share of fuel in the mass of the charge. */
    public double fuelShare() {
        return equivalenceRatio / (equivalenceRatio + fuel.stoichiometricAirFuel(air));
    }

    /** As the cylinder knows them. */
    public ChargeGases charge() {
        return charge;
    }

    /** As the pipes do. */
    public PipeGases pipe() {
        return pipe;
    }

    /** What is added to a pipe's energy to count as the cylinder does, for each kilogram of charge [J/kg]. */
    double freshZero() {
        return freshZero;
    }

    /** The same for each kilogram of burned gas [J/kg]. */
    double burnedZero() {
        return burnedZero;
    }

    /** What a kilogram of charge sets free when it burns at constant volume as far as its oxygen goes, water staying vapour [J/kg]. */
    public double released() {
        return released;
    }
}
