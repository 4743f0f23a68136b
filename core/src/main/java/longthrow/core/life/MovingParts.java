package longthrow.core.life;

import longthrow.core.quantity.Require;

/**
 * Masses of piston, rod and crank in plain numbers, for sweeps [kg].
 * @param piston        piston, pin, rings and clips, &gt; 0
 * @param smallEnd      of the rod, &ge; 0, see {@link RodMass}
 * @param bigEnd        of the rod, &ge; 0
 * @param inertiaExcess of the two masses over the rod [kg m2], see {@link RodMass#inertiaExcess}; 0 takes the rod as its two masses
 * @param crank         what of the crank turns off its axis, mass times radius on the crankpin's side [kg m]; below 0 with a counterweight
 */
public record MovingParts(double piston, double smallEnd, double bigEnd, double inertiaExcess, double crank) {
    public MovingParts {
        Require.positive("mass of the piston assembly [kg]", piston);
        Require.notNegative("mass of the rod's small end [kg]", smallEnd);
        Require.notNegative("mass of the rod's big end [kg]", bigEnd);
        Require.finite("inertia of the two masses over the rod's [kg m2]", inertiaExcess);
        Require.finite("off-axis moment of the crank [kg m]", crank);
    }

    /** Piston assembly and small end. */
    public double reciprocating() {
        return piston + smallEnd;
    }
}
