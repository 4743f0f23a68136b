/** The page Life: what lets go first, at what speed, and whether the speed wanted may be run. */
@NullMarked
package longthrow.workshop.web.life;

import org.jspecify.annotations.NullMarked;
