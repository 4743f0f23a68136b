/**
 * The gas in the cylinder and what burns, cools, rubs and knocks.
 *
 * <p>Closed formulas, each with its source: {@link longthrow.core.cycle.BurnCurve} share burned by angle, {@link longthrow.core.cycle.BurnAngles} how many degrees it takes, from
 * {@link longthrow.core.cycle.FlameSpeed} and {@link longthrow.core.cycle.Chamber}; {@link longthrow.core.cycle.WallHeat} heat into the walls; {@link longthrow.core.cycle.Knock} octane wanted;
 * {@link longthrow.core.cycle.Friction} rubbing by component; {@link longthrow.core.cycle.IntakeMixture} and {@link longthrow.core.cycle.CombustionEfficiency} what evaporates and what burns.
 *
 * <p>Breathing: {@link longthrow.core.cycle.ValveFlow} effective area of valves by lift, {@link longthrow.core.cycle.ValveLift} lift by angle, {@link longthrow.core.cycle.Carburettor} and
 * {@link longthrow.core.cycle.JetChange} fuel, {@link longthrow.core.cycle.AirFilter}, {@link longthrow.core.cycle.Throttle} and {@link longthrow.core.cycle.Governor} what holds the air back,
 * {@link longthrow.core.cycle.CrankcasePumping} what is lost under the piston.
 *
 * <p>Units: coherent SI, absolute pressure and temperature, crank angle in radians from firing top centre.
 */
@NullMarked
package longthrow.core.cycle;

import org.jspecify.annotations.NullMarked;
