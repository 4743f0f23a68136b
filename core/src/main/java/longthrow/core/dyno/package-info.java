/** The question {@code dyno}: what runs on a dynamometer were read, in which air and by which bench, as their owner wrote it down; the curve corrected, and whether a gain is real. */
@NullMarked
package longthrow.core.dyno;

import org.jspecify.annotations.NullMarked;
