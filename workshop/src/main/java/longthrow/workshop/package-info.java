/**
 * The command line: reads arguments, asks {@code core}, renders the answer.
 *
 * <p>Start at {@link longthrow.workshop.Longthrow}, where the commands are listed; {@link longthrow.workshop.ExitCode}
 * holds every way a call can end.
 *
 * <p>Not here: sums of any kind, see {@code longthrow.core}; the build file's text, see {@code longthrow.buildfile}.
 */
@NullMarked
package longthrow.workshop;

import org.jspecify.annotations.NullMarked;
