package longthrow.core.build;

import java.util.Optional;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A limit the owner must or wants to keep: a class rule, a maker's sheet, a limit of his own.
 * @param name      what to call it
 * @param term      the figure it limits
 * @param least     inclusive; null for none
 * @param most      inclusive; null for none
 * @param guard     kept back from the limit when something is cut towards it; null for none
 * @param temperature at which the rule speaks of the part; null for 20 °C (ISO 1)
 * @param procedure how the rule says it is measured
 * @param reference where the rule is written
 */
public record OwnRule(
        String name,
        Term term,
        @Nullable Quantity least,
        @Nullable Quantity most,
        @Nullable Quantity guard,
        @Nullable Quantity temperature,
        String procedure,
        String reference) {
    public OwnRule {
        if (least == null && most == null) {
            throw new IllegalArgumentException("rule " + name + " has neither a least nor a most");
        }
    }

    /** Whether the least is the most too, so that only a figure without any doubt could keep it. */
    public boolean isOnePoint() {
        return least != null && most != null && least.compareTo(most) == 0;
    }

    public Optional<Quantity> lower() {
        return Optional.ofNullable(least);
    }

    public Optional<Quantity> upper() {
        return Optional.ofNullable(most);
    }
}
