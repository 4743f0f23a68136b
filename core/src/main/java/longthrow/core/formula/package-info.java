/**
 * Formulas written once and evaluated four ways: as a number, as an exact gradient, as a guaranteed interval, and on
 * blocks of samples (decision 0003); and what a Monte Carlo run needs around them: draws and their summary.
 *
 * <p>Start at {@link longthrow.core.formula.Expression} to write a formula and at
 * {@link longthrow.core.formula.Formula} to use it. {@link longthrow.core.formula.SampleSource} draws inputs,
 * {@link longthrow.core.formula.SampleSummary} condenses results.
 *
 * <p>Expressions, formulas, intervals and summaries never change and may be shared. A {@code SampleSource} and a
 * {@code Formula.Workspace} belong to one thread. Numbers carry no unit here: a formula is as coherent as its writer,
 * who stays with SI.
 *
 * <p>Not here: what the inputs mean, their doubt and their owner.
 */
@NullMarked
package longthrow.core.formula;

import org.jspecify.annotations.NullMarked;
