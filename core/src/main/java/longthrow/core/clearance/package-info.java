/**
 * Does anything touch, through two turns? Plane outlines that move with the crank, and the gap between two of them.
 * <p>Start at {@link longthrow.core.clearance.Outline} for a shape, {@link longthrow.core.clearance.Body} for a shape that moves,
 * {@link longthrow.core.clearance.Pair} for two of them and {@link longthrow.core.clearance.Sweep} for the least gap over 720 degrees.
 * {@link longthrow.core.clearance.ClearanceDoubt} says how sure it is, {@link longthrow.core.clearance.Relief} what has to come off, and
 * {@link longthrow.core.clearance.GapFit} what readings by soft spring or clay say against it.
 * <p>Frame: crank axis at the origin, y along the cylinder towards the head, x towards the side where the crank pin stands a quarter turn after
 * the throw points along the cylinder. Angles [rad] run from +y towards +x, the crank's direction of rotation, as in {@code motion}; 0 is firing top
 * dead centre with the throw along the cylinder, and everything repeats after two turns. Lengths [m]. All public types are immutable.
 * <p>Bodies are rigid, motion is plane; along the crank axis each body has an interval, and bodies that never share any of it cannot touch. A shape
 * whose section changes along the axis is entered as several bodies. Geometry alone: no source needed but Euclid, except where a class names one.
 * <p>Not here: what gap the trade wants (see {@code engine}) and which bodies an engine has.
 */
@NullMarked
package longthrow.core.clearance;

import org.jspecify.annotations.NullMarked;
