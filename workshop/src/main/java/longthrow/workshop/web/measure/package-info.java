/** The page and the cards of measure. */
@NullMarked
package longthrow.workshop.web.measure;

import org.jspecify.annotations.NullMarked;
