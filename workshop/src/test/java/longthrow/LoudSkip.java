package longthrow;

import org.junit.jupiter.api.Assumptions;

/** A test that cannot run on this machine says so where it is seen, not only in a count of what was skipped. */
public final class LoudSkip {
    private LoudSkip() {}

    /**
     * Goes on only where the test can run.
     * @param what is not shown by this run, and what it would need
     */
    public static void unless(boolean possible, String what) {
        if (!possible) {
            System.err.println("SKIPPED, NOT SHOWN BY THIS RUN: " + what);
            Assumptions.abort(what);
        }
    }
}
