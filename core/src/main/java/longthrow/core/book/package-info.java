/**
 * The sheet to sign, print, tape to the wall and share: what the other questions answered, in the trade's words and in the order of the job.
 * <p>Start at {@link longthrow.core.book.Book#of}. {@link longthrow.core.book.Shared} takes out names, places and photographs.
 * <p>Nothing is worked out here that another question works out; limits and steps come from {@code engine}, with their sources.
 * <p>Not here: how it is laid out, see {@code longthrow.workshop.book}.
 */
@NullMarked
package longthrow.core.book;

import org.jspecify.annotations.NullMarked;
