package longthrow.core.quantity;

/** Carries a refusal from deep inside the reading of a text up to its door; never leaves the package. */
final class Refusal extends Exception {
    private static final long serialVersionUID = 1;

    private final String allowed;
    private final String mend;

    Refusal(String why, String allowed, String mend) {
        super(why, null, false, false);
        this.allowed = allowed;
        this.mend = mend;
    }

    Parsed.Refused of(String written) {
        return new Parsed.Refused(WrittenText.shown(written), String.valueOf(getMessage()), allowed, mend);
    }
}
