/**
 * What the gases in an engine are: their heat, what fuels and air are made of, what they burn to.
 *
 * <p>Start at {@link longthrow.core.gas.Fuel} and {@link longthrow.core.gas.MoistAir}; {@link longthrow.core.gas.Mixture} is a gas of fixed composition
 * (charge, or burned gas that has cooled), {@link longthrow.core.gas.Equilibrium} burned gas that is hot, {@link longthrow.core.gas.BurnedGas} the same as
 * a fast table for a cylinder, {@link longthrow.core.gas.PipeGas} a simple law for pipes.
 *
 * <p>Units: coherent SI, absolute temperature and pressure, energies above the elements at 298.15 K (so that burning needs no heat of reaction),
 * entropies at one atmosphere. Everything is an ideal gas. Everything is immutable and may be shared between threads, but for
 * {@link longthrow.core.gas.BurnedState}, which is its caller's.
 *
 * <p>Not here: how fast it burns, how it flows, corrections for weather, soot, nitrogen oxides that lag behind equilibrium, water that condenses.
 */
@NullMarked
package longthrow.core.gas;

import org.jspecify.annotations.NullMarked;
