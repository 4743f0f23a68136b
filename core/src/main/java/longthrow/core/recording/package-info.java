/**
 * What a logger wrote: channels, what they mean and how sure that is, and what is wrong with the rows.
 *
 * <p>Start at {@link longthrow.core.recording.Recording}, rows of figures by {@link longthrow.core.recording.Channel}; {@link longthrow.core.recording.RowFaults} finds what is wrong with
 * rows, {@link longthrow.core.recording.Stretches} where runs begin and end.
 *
 * <p>Units: coherent SI, absolute temperatures; pressures as the logger wrote them, absolute or gauge. Time is as the logger counted it. Nothing is dropped or
 * mended here: what is wrong is found and said, and its owner's word decides. Everything is immutable and may be shared between threads.
 *
 * <p>Not here: bytes and text (module buildfile), torque (that is worked out of a recording), the standards of weather correction.
 */
@NullMarked
package longthrow.core.recording;

import org.jspecify.annotations.NullMarked;
