/** The page Clear: what may touch, with the engine turning. */
@NullMarked
package longthrow.workshop.web.clear;

import org.jspecify.annotations.NullMarked;
