package longthrow.workshop.store;

import java.time.Instant;
import java.util.OptionalInt;

/**
 * A revision in the history of its build, without the text.
 *
 * @param number   1 for the first; without gaps
 * @param what     what was done, in the words of whoever saved it
 * @param restores the number of the older revision this one brings back, where it does
 * @param undo     whether it does so by {@link Store#undo}
 * @param sha256   of the text in UTF-8, 64 small hexadecimal digits
 */
public record RevisionEntry(
        BuildId build, int number, Instant saved, String what, OptionalInt restores, boolean undo, String sha256) {}
