/**
 * The Book laid out: the same templates for the page and for the PDF (docs/decisions/0013), the PDF written and read back.
 * <p>Start at {@link longthrow.workshop.book.Sheet}, what the templates get, and {@link longthrow.workshop.book.BookPdf}.
 * <p>Not here: what stands in a Book, see {@code longthrow.core.book}.
 */
@NullMarked
package longthrow.workshop.book;

import org.jspecify.annotations.NullMarked;
