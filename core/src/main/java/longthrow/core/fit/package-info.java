/**
 * Which parts go together: the search of a catalogue for every combination that closes the stack and fits, why the others do not, and what machining
 * would close the rest.
 * <p>Start at {@link longthrow.core.fit.Fit}, the question; {@link longthrow.core.fit.StackSearch} is the search itself, on columns of whole picometres.
 * <p>Units: lengths [pm] in {@code long}, sums of the stack in half picometres so that half a stroke stays whole; volumes [m3], money in whole hundredths.
 * <p>Not here: figures with their doubt and verdicts by rule, see {@code measure} and {@code engine}; reading catalogues, see the module buildfile.
 */
@NullMarked
package longthrow.core.fit;

import org.jspecify.annotations.NullMarked;
