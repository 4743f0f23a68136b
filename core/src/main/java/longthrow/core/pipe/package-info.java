/**
 * Gas in pipes that moves: the one-dimensional Euler equations with changing area, wall friction, heat through the wall, and burned gas carried along.
 *
 * <p>Start at {@link longthrow.core.pipe.PipeFlow}: the gas in one pipe, advanced step by step; what happens at its ends is told to it as fluxes.
 * {@link longthrow.core.pipe.PipeShape} is the pipe, {@link longthrow.core.pipe.PipeGases} what may be in it, {@link longthrow.core.pipe.FlowKernel} the sums
 * over its cells, of which there may be a faster twin that gives the same digits.
 *
 * <p>What a pipe ends in: {@link longthrow.core.pipe.Throat} to gas that stands still (a valve, an open end with its {@link longthrow.core.pipe.Mouth}, a {@link longthrow.core.pipe.Volume}),
 * {@link longthrow.core.pipe.Joint} to another pipe (throttle, plate, step), {@link longthrow.core.pipe.Junction} of several, closed, or going on. {@link longthrow.core.pipe.Orifice} joins
 * volumes without a pipe; {@link longthrow.core.pipe.PipeWall} sets friction and heat. A pipe that sounds longer than it is, is made longer by its {@link longthrow.core.flow.EndCorrection}.
 *
 * <p>Method: finite volumes, MUSCL-Hancock with the monotonised central limiter in density, velocity, pressure and burned share, HLLC flux (Toro, Riemann Solvers and
 * Numerical Methods for Fluid Dynamics, 3rd ed., 10.4 and 14.4); the area's push by the pressure in the middle of cell and step, so that gas at rest stays so.
 *
 * <p>Units: coherent SI, absolute pressure and temperature; x runs from the left end to the right.
 */
@NullMarked
package longthrow.core.pipe;

import org.jspecify.annotations.NullMarked;
