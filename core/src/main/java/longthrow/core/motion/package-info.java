/**
 * How piston and valves move: the exact slider-crank, cam events, lift curves from a table or from the figures of a lobe.
 * <p>Start at {@link longthrow.core.motion.SliderCrank} for the piston (as formulas; {@link longthrow.core.motion.CrankMotion} is its fast
 * twin in plain numbers) and at {@link longthrow.core.motion.Timing} for events as sums of degrees.
 * <p>Units: coherent SI, angles [rad]. Crank angles grow in the direction of rotation. An offset is positive towards the side where the crank
 * pin stands a quarter turn after top dead centre, the anti-thrust side.
 * <p>Not here: what the trade thinks of a figure (see {@code engine}), forces of the valve train and springs (see {@code engine}), and how
 * a table is read and judged (see {@code measure}).
 */
@NullMarked
package longthrow.core.motion;

import org.jspecify.annotations.NullMarked;
