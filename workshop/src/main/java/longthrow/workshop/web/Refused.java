package longthrow.workshop.web;

import io.javalin.http.HttpStatus;

/** A request that is not answered with a page, with words for the person who made it. */
public final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient HttpStatus status;
    private final String mend;

    /**
     * What was wrong and how to go on.
     * @param message one sentence without its full stop
     * @param mend    what to do, a sentence
     */
    public Refused(HttpStatus status, String message, String mend) {
        super(message);
        this.status = status;
        this.mend = mend;
    }

    HttpStatus status() {
        return status;
    }

    String mend() {
        return mend;
    }
}
