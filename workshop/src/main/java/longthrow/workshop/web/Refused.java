package longthrow.workshop.web;

import io.javalin.http.HttpStatus;

/** A request that is not answered with a page, with words for the person who made it. */
public final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient HttpStatus status;
    private final String mend;
    private final transient Frame.Place back;

    /**
     * What was wrong and how to go on.
     * @param message one sentence without its full stop
     * @param mend    what to do, a sentence
     */
    public Refused(HttpStatus status, String message, String mend) {
        this(status, message, mend, new Frame.Place("To the builds", "/builds"));
    }

    /**
     * The same with a way back of its own.
     * @param back where whoever asked goes on
     */
    public Refused(HttpStatus status, String message, String mend, Frame.Place back) {
        super(message);
        this.status = status;
        this.mend = mend;
        this.back = back;
    }

    HttpStatus status() {
        return status;
    }

    String mend() {
        return mend;
    }

    Frame.Place back() {
        return back;
    }
}
