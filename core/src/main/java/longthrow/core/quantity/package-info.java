/**
 * What a person or a catalogue writes with a unit, read without guessing, kept exactly, and printed for both benches.
 *
 * <p>Start at {@link longthrow.core.quantity.QuantityParser} (text in) and {@link longthrow.core.quantity.FigurePrinter}
 * (text out). {@link longthrow.core.quantity.Units} is the one table of units with their exact factors and sources;
 * {@link longthrow.core.quantity.ExactLength} is what a stated length becomes.
 *
 * <p>Units: a double without a suffix is coherent SI. All classes are immutable and safe for any thread.
 *
 * <p>Not here: where a number came from and how sure it is as a reading; that is {@code measurement}.
 */
@NullMarked
package longthrow.core.quantity;

import org.jspecify.annotations.NullMarked;
