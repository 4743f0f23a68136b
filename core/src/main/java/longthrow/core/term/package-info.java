/**
 * The words of the trade, each with one meaning: what can be read or worked out, on which part, how it is taken.
 * <p>Start at {@link longthrow.core.term.Term}. Glossary, build-file schema, JSON keys and labels are generated from it
 * (docs/decisions/0002).
 * <p>Units: coherent SI. Nothing here computes; formulas live in {@code core.engine}.
 */
@NullMarked
package longthrow.core.term;

import org.jspecify.annotations.NullMarked;
