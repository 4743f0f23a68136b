package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The digits a figure was written with, and what must be added to it to take back one slip of the pen. */
final class WrittenDigits {
    /** Longer figures are not what a person reads off an instrument. */
    private static final int MOST_DIGITS = 7;
    /** A point slips by one place, or by two. */
    private static final double[] SLIPS = {10, 0.1, 100, 0.01};

    private static final Pattern DECIMAL = Pattern.compile("^\\s*[-−]?(\\d*)\\.?(\\d*)");

    private static final long[] POWERS = powers();

    private final String digits;
    private final long all; // the digits as one number
    private final int point;
    private final double shown;
    private final double value;

    private WrittenDigits(String digits, int point, double value) {
        this.digits = digits;
        this.all = whole(digits);
        this.point = point;
        this.value = value;
        this.shown = number(digits, point);
    }

    private static long[] powers() {
        long[] powers = new long[MOST_DIGITS + 2];
        powers[0] = 1;
        for (int i = 1; i < powers.length; i++) {
            powers[i] = 10 * powers[i - 1];
        }
        return powers;
    }

    /**
     * The digits of a figure; none when it was written as a fraction or with more digits than an instrument shows.
     * @param written as the owner wrote it
     * @param value   what it stands for [SI], any correction included
     */
    static WrittenDigits of(String written, double value) {
        Matcher number = DECIMAL.matcher(written);
        if (written.contains("/") || !number.find()) {
            return new WrittenDigits("", 0, value);
        }
        String digits = number.group(1) + number.group(2);
        return digits.length() > MOST_DIGITS
                ? new WrittenDigits("", 0, value)
                : new WrittenDigits(digits, number.group(1).length(), value);
    }

    /** Exact to the last bit: so few digits and so small a power of ten are both without error, and a division rounds once. */
    private static double number(String digits, int point) {
        return number(whole(digits), digits.length() - point);
    }

    private static double number(long digits, int decimals) {
        return digits / (double) POWERS[decimals];
    }

    private static long whole(String digits) {
        return digits.isEmpty() ? 0 : Long.parseLong(digits);
    }

    private double moveTo(long other, int decimals) {
        return shown == 0 ? 0 : (number(other, decimals) - shown) * value / shown;
    }

    /** To bring a missing digit back, for each digit and place of it [SI]. */
    List<Double> restored() {
        List<Double> moves = new ArrayList<>();
        int count = digits.length();
        for (int at = 0; at < count; at++) {
            long behind = POWERS[count - at];
            long before = all / behind * behind * 10 + all % behind; // a nought in the gap
            for (int digit = at == 0 ? 1 : 0; digit <= 9; digit++) {
                long longer = before + digit * behind;
                if (at <= point) {
                    moves.add(moveTo(longer, count - point));
                }
                if (at >= point) {
                    moves.add(moveTo(longer, count + 1 - point));
                }
            }
        }
        return moves;
    }

    /** To put the decimal point back [SI]. */
    List<Double> shifted() {
        List<Double> moves = new ArrayList<>();
        for (double slip : SLIPS) {
            moves.add(digits.isEmpty() ? 0 : value * (slip - 1));
        }
        return moves;
    }

    /** To put two neighbouring digits back in their order [SI]. */
    List<Double> swapped() {
        List<Double> moves = new ArrayList<>();
        int count = digits.length();
        for (int at = 0; at + 1 < count; at++) {
            long of = POWERS[count - at - 2];
            int step = digit(at + 1) - digit(at);
            moves.add(moveTo(all + 9L * step * of, count - point));
        }
        return moves;
    }

    /** To put the right digit in the place of a wrong one [SI]; a figure does not begin with nought. */
    List<Double> misread() {
        List<Double> moves = new ArrayList<>();
        int count = digits.length();
        for (int at = 0; at < count; at++) {
            for (int digit = at == 0 && point > 1 ? 1 : 0; digit <= 9; digit++) {
                moves.add(moveTo(all + (digit - digit(at)) * POWERS[count - at - 1], count - point));
            }
        }
        return moves;
    }

    private int digit(int at) {
        return digits.charAt(at) - '0';
    }
}
