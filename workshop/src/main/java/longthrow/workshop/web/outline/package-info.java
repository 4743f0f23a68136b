/** The pages on which the outline of a part is entered: pasted or from a file, looked at to scale, kept. */
@NullMarked
package longthrow.workshop.web.outline;

import org.jspecify.annotations.NullMarked;
