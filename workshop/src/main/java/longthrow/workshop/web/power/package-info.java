/** The page Power: what torque over what speeds, how sure, and what bounds it. */
@NullMarked
package longthrow.workshop.web.power;

import org.jspecify.annotations.NullMarked;
