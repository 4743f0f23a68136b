/**
 * Where the shake goes: forces of the moving parts on the frame, what the counterweight makes of them, and what can be moved where.
 * <p>The question is {@link longthrow.core.shake.Shake}. Of the formulas start at {@link longthrow.core.shake.ShakingForce} (exact, as formulas; {@link longthrow.core.shake.Hodograph} is its fast twin over a
 * turn), at {@link longthrow.core.shake.FirstOrder} for the trade of along against across, and at {@link longthrow.core.shake.BalanceFactor}
 * for bob weights and a new piston. {@link longthrow.core.shake.Drilling} says how deep a hole moves how much.
 * <p>Coherent SI. Angles [rad] from top dead centre; forces are those of the moving parts on the frame, along the cylinder positive towards
 * the head, across it towards the side where the crank pin stands at +90 degrees. Masses of crank and counterweight are reckoned at the crank radius.
 * <p>Sources: Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 2, engine balance; Den Hartog, Mechanical Vibrations,
 * chapters 2 and 5; from memory.
 * <p>Not here: how the rod is weighed (see {@code life.RodMass}) and gas forces, which stay inside the engine but for the torque.
 */
@NullMarked
package longthrow.core.shake;

import org.jspecify.annotations.NullMarked;
