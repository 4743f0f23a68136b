/**
 * An answer as one JSON document (RFC 8259), and the schema of that document, both from one description.
 *
 * <p>Start at {@link longthrow.workshop.json.AnswerJson}. Numbers are coherent SI in full precision; what is not known is
 * {@code null}, never a number that only looks like one. Keys are those of {@code core.term.Term} and are only ever added.
 */
@NullMarked
package longthrow.workshop.json;

import org.jspecify.annotations.NullMarked;
