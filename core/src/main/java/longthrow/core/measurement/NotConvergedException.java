package longthrow.core.measurement;

import java.util.Locale;

/** An iteration did not settle. */
public final class NotConvergedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public NotConvergedException(String what, int steps, double residual, double tolerance) {
        super(String.format(
                Locale.ROOT,
                "%s did not settle: after %d steps the last one was still %.3g, wanted %.3g",
                what,
                steps,
                residual,
                tolerance));
    }
}
