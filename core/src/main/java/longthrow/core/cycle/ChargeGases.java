package longthrow.core.cycle;

import longthrow.core.gas.BurnedState;

/**
 * The two gases of a cylinder: charge that has not burned and gas that has. Both count their energy from one zero, so that what burning sets free is the
 * difference of the two. Immutable; a call allocates nothing.
 */
public interface ChargeGases {
    /** Charge by its temperature [K]; what goes by the pressure is 0. */
    void fresh(double temperature, BurnedState into);

    /** Burned gas by temperature [K] and pressure [Pa]. */
    void burned(double temperature, double pressure, BurnedState into);
}
