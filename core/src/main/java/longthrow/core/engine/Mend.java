package longthrow.core.engine;

/**
 * What mends a figure on the wrong side of a limit.
 * @param how     in words; {@value #AMOUNT} stands for the amount to take or add, {@value #OVER} for the amount by which it is wrong
 * @param outcome what that makes of the part
 */
public record Mend(String how, Outcome outcome) {
    static final String AMOUNT = "{x}";
    static final String OVER = "{over}";

    /** For a side that has no limit. */
    static final Mend NONE = new Mend("", Outcome.KEEP);

    static Mend adjust(String how) {
        return new Mend(how, Outcome.KEEP);
    }

    static Mend machine(String how) {
        return new Mend(how, Outcome.MACHINE);
    }

    static Mend replace(String how) {
        return new Mend(how, Outcome.REPLACE);
    }

    String with(String amount, String over) {
        return how.replace(AMOUNT, amount).replace(OVER, over);
    }
}
