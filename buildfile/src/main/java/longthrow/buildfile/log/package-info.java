/**
 * Logs of benches, any delimited text: what its layout is, and its lines to a {@link longthrow.core.recording.Recording}.
 *
 * <p>Start at {@link longthrow.buildfile.log.LogFile}. The bytes come through {@link longthrow.buildfile.log.LogSource} and are only ever read. Every line is kept as a
 * row or listed with why ({@link longthrow.buildfile.log.Why}); what can be read in two ways is asked, not guessed (docs/decisions/0031).
 *
 * <p>Not here: files and their names (workshop), what is wrong with the figures (core.recording).
 */
@NullMarked
package longthrow.buildfile.log;

import org.jspecify.annotations.NullMarked;
