/**
 * The question {@code power}: what torque over what speeds, how sure, and what bounds it.
 *
 * <p>{@link longthrow.core.power.Needed} lists what has to be known, {@link longthrow.core.power.Usual} has what is taken where nothing was read, {@link longthrow.core.power.Figures} holds both for one
 * engine, and {@link longthrow.core.power.Model} makes of them the engine whose cycle {@code longthrow.core.cycle} runs.
 *
 * <p>{@link longthrow.core.power.Prediction} answers: {@code Asking} takes the figures from a build, {@code SpeedStanding} says which speeds are told, {@link longthrow.core.power.Run} is one sum, to be
 * done on any thread, and {@code Leaning} says how sure a row is and what bounds it.
 */
@NullMarked
package longthrow.core.power;

import org.jspecify.annotations.NullMarked;
