package longthrow.core.fit;

/**
 * From least to most [pm], both included.
 * @param least {@link #NO_LEAST} for none
 * @param most  {@link #NO_MOST} for none
 */
public record Window(long least, long most) {
    /** Far below any length of an engine, and far enough from the end of a long that sums do not wrap. */
    public static final long NO_LEAST = -(1L << 60);

    public static final long NO_MOST = 1L << 60;
    /** Everything. */
    public static final Window ANY = new Window(NO_LEAST, NO_MOST);

    public Window {
        if (least > most) {
            throw new IllegalArgumentException("the window from " + least + " to " + most + " pm is empty");
        }
    }

    public static Window atLeast(long least) {
        return new Window(least, NO_MOST);
    }

    boolean isAny() {
        return least == NO_LEAST && most == NO_MOST;
    }
}
