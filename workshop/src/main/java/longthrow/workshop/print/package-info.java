/**
 * An answer laid out as text for a terminal of 60 columns or more.
 *
 * <p>Start at {@link longthrow.workshop.print.AnswerText}; {@link longthrow.workshop.print.Page} wraps and indents.
 *
 * <p>Not here: any sum, and no rounding of a figure or of its doubt: every figure comes from {@code
 * core.quantity.FigurePrinter}.
 */
@NullMarked
package longthrow.workshop.print;

import org.jspecify.annotations.NullMarked;
