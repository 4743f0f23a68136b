/**
 * What every question answers with: figures with their doubt, verdicts, findings, stops, unknowns, defaults used, and what to read next.
 * <p>Start at {@link longthrow.core.answer.Answer} (docs/decisions/0001). Command, JSON, page and book only lay it out.
 */
@NullMarked
package longthrow.core.answer;

import org.jspecify.annotations.NullMarked;
