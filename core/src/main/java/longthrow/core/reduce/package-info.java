/**
 * From what a bench wrote down of one run to the engine's torque by speed, with its doubt.
 *
 * <p>Start at {@link longthrow.core.reduce.DrumRun} (inertia drum), {@link longthrow.core.reduce.BrakeRun} (brake with arm and cell) or
 * {@link longthrow.core.reduce.RoadRun}: arrays of one run and what is known of the bench in, a {@link longthrow.core.reduce.Reduced} out, which is a {@link longthrow.core.reduce.RunCurve}
 * and remarks, or remarks alone. Bad data never throws: it is told in words.
 *
 * <p>Two doubts are kept apart: what the run's own scatter leaves open ({@link longthrow.core.reduce.LocalFit}), and what the bench does to all of its runs alike, source by source
 * ({@link longthrow.core.measurement.Source}); the second cancels when two setups are compared on one bench.
 *
 * <p>Units: coherent SI, speeds in rad/s unless a name ends in {@code Rpm}. Instances that own arrays hand out copies. Not here: the weather and the comparison of setups, see {@code gain}.
 */
@NullMarked
package longthrow.core.reduce;

import org.jspecify.annotations.NullMarked;
