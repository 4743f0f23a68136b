/** The page Dyno: sheets of runs and loggers' files of a build, what they come to, and which runs count. */
@NullMarked
package longthrow.workshop.web.dyno;

import org.jspecify.annotations.NullMarked;
