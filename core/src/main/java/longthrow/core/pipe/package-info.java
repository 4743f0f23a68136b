/**
 * Gas in pipes that moves: the one-dimensional Euler equations with changing area, wall friction, heat through the wall, and burned gas carried along.
 *
 * <p>Start at {@link longthrow.core.pipe.PipeFlow}: the gas in one pipe, advanced step by step; what happens at its ends is told to it as fluxes.
 * {@link longthrow.core.pipe.PipeShape} is the pipe, {@link longthrow.core.pipe.PipeGases} what may be in it, {@link longthrow.core.pipe.FlowKernel} the sums
 * over its cells, of which there may be a faster twin that gives the same digits.
 *
 * <p>Method: finite volumes, MUSCL-Hancock with the monotonised central limiter in density, velocity, pressure and burned share, HLLC flux (Toro, Riemann Solvers and
 * Numerical Methods for Fluid Dynamics, 3rd ed., 10.4 and 14.4); the area's push by the pressure in the middle of cell and step, so that gas at rest stays so.
 *
 * <p>Units: coherent SI, absolute pressure and temperature; x runs from the left end to the right.
 */
@NullMarked
package longthrow.core.pipe;

import org.jspecify.annotations.NullMarked;
