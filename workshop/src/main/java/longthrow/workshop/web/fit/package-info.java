/** The page of fit: which parts go together, why the others do not, and taking one of the ways. */
@NullMarked
package longthrow.workshop.web.fit;

import org.jspecify.annotations.NullMarked;
