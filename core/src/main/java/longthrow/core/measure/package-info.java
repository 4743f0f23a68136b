/**
 * The question {@code measure}: what have I really got, how sure, what is missing or contradictory, what to read next.
 * <p>Start at {@link longthrow.core.measure.Measure}. {@code Readings} turns what was entered into observations,
 * {@code Suspects} names mistakes by their size, {@code NextReadings} ranks what to read next.
 * <p>Not here: formulas and rules, see {@code core.engine}.
 */
@NullMarked
package longthrow.core.measure;

import org.jspecify.annotations.NullMarked;
