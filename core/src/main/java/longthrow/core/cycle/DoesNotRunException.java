package longthrow.core.cycle;

/** An engine that does not come through its cycle at a speed: its wheel is too light, or the state of its gas is not found. The message says why, for people. */
public final class DoesNotRunException extends RuntimeException {
    private static final long serialVersionUID = 1;

    DoesNotRunException(String why) {
        super(why);
    }

    DoesNotRunException(String why, RuntimeException cause) {
        super(why, cause);
    }
}
