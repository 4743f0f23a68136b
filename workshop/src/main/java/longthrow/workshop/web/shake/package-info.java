/** The page Shake: where the shake goes, with the path of the force. */
@NullMarked
package longthrow.workshop.web.shake;

import org.jspecify.annotations.NullMarked;
