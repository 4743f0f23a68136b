/**
 * Steady flow of a gas in closed forms: nozzles and throats, shocks, pipes with friction or heat, sudden enlargements, the way through a poppet valve, a flow bench, and what sounds in pipes. Formulas alone,
 * each once; flow that changes with time is in {@code pipe}.
 *
 * <p>Start at {@link longthrow.core.flow.Nozzle} for what goes through a valve or a jet of air, at {@link longthrow.core.flow.Isentropic} for the rest.
 *
 * <p>Holds for a perfect gas, whose ratio of specific heats (gamma, above 1) does not change on the way. Units: coherent SI, absolute pressure and temperature. Arguments are not checked where a formula is
 * called a million times: what is not a number comes out as none.
 */
@NullMarked
package longthrow.core.flow;

import org.jspecify.annotations.NullMarked;
