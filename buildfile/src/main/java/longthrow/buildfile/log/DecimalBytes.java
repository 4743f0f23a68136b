package longthrow.buildfile.log;

import java.nio.charset.StandardCharsets;

/**
 * Decimal numbers out of bytes, to the same double as {@link Double#parseDouble}.
 *
 * <p>A whole number below 2^53 over a power of ten up to 10^22 is one correctly rounded division of numbers that a double holds (IEEE 754), so
 * it is the nearest double; what has more digits goes to parseDouble itself.
 */
final class DecimalBytes {
    /** Powers of ten that a double holds exactly. */
    static final double[] POWERS = new double[23];

    private static final int MOST_DIGITS = 18; // a long holds them
    private static final long EXACT = 1L << 53;

    static {
        POWERS[0] = 1;
        for (int i = 1; i < POWERS.length; i++) {
            POWERS[i] = POWERS[i - 1] * 10;
        }
    }

    private DecimalBytes() {}

    /** Whether something that {@link #value} understands stands in these bytes: sign, digits with at most one mark, exponent. */
    static boolean isNumber(byte[] bytes, int from, int to, byte mark) {
        int at = from;
        if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
            at++;
        }
        int digits = 0;
        boolean marked = false;
        for (; at < to; at++) {
            byte b = bytes[at];
            if (b >= '0' && b <= '9') {
                digits++;
            } else if (b == mark && !marked) {
                marked = true;
            } else {
                break;
            }
        }
        if (digits == 0) {
            return false;
        }
        if (at < to && (bytes[at] == 'e' || bytes[at] == 'E')) {
            at++;
            if (at < to && (bytes[at] == '-' || bytes[at] == '+')) {
                at++;
            }
            int exponent = at;
            while (at < to && bytes[at] >= '0' && bytes[at] <= '9') {
                at++;
            }
            if (at == exponent || at - exponent > 4) {
                return false;
            }
        }
        return at == to;
    }

    /** The number that {@link #isNumber} found there; it may be infinite where its exponent is too large. */
    static double value(byte[] bytes, int from, int to, byte mark) {
        int at = from;
        boolean negative = bytes[at] == '-';
        if (negative || bytes[at] == '+') {
            at++;
        }
        long whole = 0;
        int digits = 0; // from the first that is not zero
        int places = 0;
        boolean marked = false;
        for (; at < to; at++) {
            byte b = bytes[at];
            if (b == mark) {
                marked = true;
            } else if (b < '0' || b > '9') {
                break;
            } else {
                if (digits < MOST_DIGITS) {
                    whole = whole * 10 + (b - '0');
                }
                digits += digits > 0 || b != '0' ? 1 : 0;
                places += marked ? 1 : 0;
            }
        }
        if (at < to || digits > MOST_DIGITS || whole > EXACT || places >= POWERS.length) {
            String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
            return Double.parseDouble(mark == '.' ? text : text.replace((char) mark, '.'));
        }
        double size = whole / POWERS[places];
        return negative ? -size : size;
    }
}
