package longthrow.core.formula;

/**
 * A function is not defined, or cannot be shown to be defined, everywhere in an interval. The enclosure of an inner
 * result may be wider than the truth, so a narrower box may pass where this one does not.
 */
public final class OutsideDomainException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    OutsideDomainException(String what, Interval found, String allowed) {
        super(what + " is asked over " + found.lo() + " to " + found.hi() + "; it is defined for " + allowed
                + ". Narrow the inputs, or split their range");
    }

    OutsideDomainException(String formula, OutsideDomainException cause) {
        super("in the formula " + formula + ", " + cause.getMessage(), cause);
    }
}
