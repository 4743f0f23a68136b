/** The page of the Book: the sheet and the page for the wall, the same templates as in print, and the PDF of each. */
@NullMarked
package longthrow.workshop.web.book;

import org.jspecify.annotations.NullMarked;
