/**
 * Was the gain real? Runs on a dyno corrected for the weather by a named standard, setups compared over sessions with the engine's drift taken out, and the
 * verdict: real, not shown, or how many more runs would tell.
 *
 * <p>Start at {@link longthrow.core.gain.AirStandard} for the correction, at {@link longthrow.core.gain.Campaign} and
 * {@link longthrow.core.gain.Comparison} for the change; {@link longthrow.core.gain.GainSentences} is the one home of the words.
 * {@link longthrow.core.gain.LevelFactor}, {@link longthrow.core.gain.DayCheck} and {@link longthrow.core.gain.Trend} compare dynos, days and dates.
 *
 * <p>The run, not the sample, is what is repeated: scatter is that between runs. Gains, doubts and limits are shares of the baseline (0.02 is 2 %).
 * Units otherwise: coherent SI; speeds in revolutions per minute, as they are read, where the name says so. Everything is immutable. Where numbers are drawn
 * (the band that holds at every speed at once) the seed is a constant. Decided in docs/decisions/0033.
 *
 * <p>Not here: how a run's curve comes from what a logger wrote.
 */
@NullMarked
package longthrow.core.gain;

import org.jspecify.annotations.NullMarked;
