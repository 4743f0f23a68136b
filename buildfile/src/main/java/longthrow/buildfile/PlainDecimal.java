package longthrow.buildfile;

/**
 * The plain decimals of a file, read where they lie: sign, digits, one mark. Whatever looks different is left to the
 * {@link longthrow.core.quantity.QuantityParser}, which reads every plain decimal the same way.
 */
final class PlainDecimal {
    /** So many digits fit a long with room to spare. */
    private static final int MOST_DIGITS = 15;

    private final boolean decimalComma;
    private long unscaled;
    private int scale;

    /** @param decimalComma whether a comma may stand for the point: only where commas do not part the cells */
    PlainDecimal(boolean decimalComma) {
        this.decimalComma = decimalComma;
    }

    /** Whether it is one; then {@link #unscaled} and {@link #scale} hold it. */
    boolean read(char[] buffer, int from, int end) {
        boolean negative = buffer[from] == '-';
        int start = negative ? from + 1 : from;
        int mark = -1;
        long number = 0;
        for (int i = start; i < end; i++) {
            char c = buffer[i];
            if (c >= '0' && c <= '9') {
                number = 10 * number + (c - '0');
            } else if (mark < 0 && i > start && i + 1 < end && (c == '.' || (c == ',' && decimalComma))) {
                mark = i;
            } else {
                return false;
            }
        }
        int places = mark < 0 ? 0 : end - mark - 1;
        int wholes = (mark < 0 ? end : mark) - start;
        boolean mayGroup = mark >= 0 && buffer[mark] == ',' && places == 3 && wholes <= 3 && buffer[start] != '0';
        boolean spelledOut = wholes > 1 && buffer[start] == '0'; // 007 keeps its text in the long way
        if (wholes < 1 || wholes + places > MOST_DIGITS || mayGroup || spelledOut) {
            return false;
        }
        unscaled = negative ? -number : number;
        scale = places;
        return true;
    }

    long unscaled() {
        return unscaled;
    }

    /** Digits behind the mark. */
    int scale() {
        return scale;
    }
}
