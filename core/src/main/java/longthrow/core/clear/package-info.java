/**
 * The question {@code clear}: does anything touch, cold and running, through two turns?
 * <p>Start at {@link longthrow.core.clear.Clear}; {@code Pairs} lists the pairs of an engine, {@code Crankwork}, {@code Camwork}, {@code Valves} and {@code Rockerwork} draw the bodies from
 * its figures, {@code Running} says what warmth, speed and slack do, {@code Sourced} carries the doubt, {@code Telling} makes of a pair what is told.
 * <p>A pair is said only where every figure it hangs on is known with its doubt; otherwise it is unknown until mocked up. What is not measured of a
 * shape is drawn larger than it can be, never smaller, and said. The sums are in {@code clearance}.
 * <p>Frame and signs as in {@code clearance}: crank axis at 0, y along the cylinder, x towards the anti-thrust side. Coherent SI. All public types are immutable.
 */
@NullMarked
package longthrow.core.clear;

import org.jspecify.annotations.NullMarked;
