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

    private final String digits;
    private final int point;
    private final double shown;
    private final double value;

    private WrittenDigits(String digits, int point, double value) {
        this.digits = digits;
        this.point = point;
        this.value = value;
        this.shown = number(digits, point);
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

    private static double number(String digits, int point) {
        return Double.parseDouble("0" + digits.substring(0, point) + "." + digits.substring(point) + "0");
    }

    private double moveTo(String other, int itsPoint) {
        return shown == 0 ? 0 : (number(other, itsPoint) - shown) * value / shown;
    }

    /** To bring a missing digit back, for each digit and place of it [SI]. */
    List<Double> restored() {
        List<Double> moves = new ArrayList<>();
        for (int at = 0; at < digits.length(); at++) {
            for (char digit = at == 0 ? '1' : '0'; digit <= '9'; digit++) {
                String longer = digits.substring(0, at) + digit + digits.substring(at);
                if (at <= point) {
                    moves.add(moveTo(longer, point + 1));
                }
                if (at >= point) {
                    moves.add(moveTo(longer, point));
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
        for (int at = 0; at + 1 < digits.length(); at++) {
            String other =
                    digits.substring(0, at) + digits.charAt(at + 1) + digits.charAt(at) + digits.substring(at + 2);
            moves.add(moveTo(other, point));
        }
        return moves;
    }

    /** To put the right digit in the place of a wrong one [SI]; a figure does not begin with nought. */
    List<Double> misread() {
        List<Double> moves = new ArrayList<>();
        for (int at = 0; at < digits.length(); at++) {
            for (char digit = at == 0 && point > 1 ? '1' : '0'; digit <= '9'; digit++) {
                moves.add(moveTo(digits.substring(0, at) + digit + digits.substring(at + 1), point));
            }
        }
        return moves;
    }
}
