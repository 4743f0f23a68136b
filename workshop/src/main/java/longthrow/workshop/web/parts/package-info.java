/** The page of the parts: catalogues looked through row by row before they count, and kept. */
@NullMarked
package longthrow.workshop.web.parts;

import org.jspecify.annotations.NullMarked;
