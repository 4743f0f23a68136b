package longthrow.workshop;

import java.io.PrintWriter;
import java.util.function.Supplier;

/**
 * Says on the terminal that a sum is still running, from the first second on, and wipes that away when it is done. Where standard
 * error is no terminal it says nothing.
 */
final class Patience {
    /** Set by the launcher: whether standard error is a terminal. */
    private static final String TERMINAL_PROPERTY = "longthrow.terminal.err";

    private static final long STEP_MILLISECONDS = 1000;
    private static final String WIPE_LINE = "\r\u001b[K";

    private final PrintWriter err;
    private final Thread speaker;
    private boolean spoke;

    private Patience(PrintWriter err, String what) {
        this.err = err;
        this.speaker = new Thread(() -> speak(what), "progress");
        speaker.setDaemon(true);
    }

    /** The sum, with word of it on standard error where that is a terminal. */
    static <T> T during(String what, PrintWriter err, Supplier<T> sum) {
        return during(what, err, Boolean.getBoolean(TERMINAL_PROPERTY), sum);
    }

    static <T> T during(String what, PrintWriter err, boolean terminal, Supplier<T> sum) {
        Patience patience = new Patience(err, what);
        if (terminal) {
            patience.speaker.start();
        }
        try {
            return sum.get();
        } finally {
            patience.end();
        }
    }

    private void speak(String what) {
        try {
            for (int seconds = 1; ; seconds++) {
                Thread.sleep(STEP_MILLISECONDS);
                synchronized (this) {
                    spoke = true;
                    err.print("\r" + what + ", " + seconds + " s");
                    err.flush();
                }
            }
        } catch (InterruptedException done) {
            // the sum is done
        }
    }

    private void end() {
        speaker.interrupt();
        try {
            speaker.join();
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
        synchronized (this) {
            if (spoke) {
                err.print(WIPE_LINE);
                err.flush();
            }
        }
    }
}
