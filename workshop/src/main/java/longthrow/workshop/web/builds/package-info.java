/** The list of builds, their history and their files. */
@NullMarked
package longthrow.workshop.web.builds;

import org.jspecify.annotations.NullMarked;
