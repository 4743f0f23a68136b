package longthrow.workshop.store;

import java.util.OptionalInt;

/**
 * A line of a comparison.
 *
 * @param before its number in the older text, from 1; empty where it was added
 * @param after  its number in the newer text, from 1; empty where it was removed
 * @param text   without the sign that ends it
 */
public record DiffLine(OptionalInt before, OptionalInt after, String text) {
    /** Whether both texts have it. */
    public boolean same() {
        return before.isPresent() && after.isPresent();
    }

    /** Whether only the newer text has it. */
    public boolean added() {
        return before.isEmpty();
    }

    /** Whether only the older text has it. */
    public boolean removed() {
        return after.isEmpty();
    }
}
