package longthrow.core.term;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a taper is named: by its rate, diameter lost over length, as one in so many, written 1:8 (ISO 3040:2016, rate of taper; from memory). Two parts
 * go together only where the rates are the same, so a name that is no rate is refused rather than compared as a word.
 */
public final class TaperRate {
    /** What may be written, for people. */
    public static final String ALLOWED = "one in so many, such as 1:8 or 1:7.5";

    /** What {@link #isRate} takes, for a schema. */
    public static final String PATTERN = "^1:[1-9][0-9]{0,2}(\\.[0-9]{1,3})?$";

    private static final Pattern RATE = Pattern.compile(PATTERN);
    private static final Pattern IN_SO_MANY = Pattern.compile("1 ?(?:in|to|/|:) ?([1-9][0-9]{0,2}(?:[.,][0-9]{1,3})?)");
    private static final Pattern PER_FOOT =
            Pattern.compile("([0-9]{1,2}(?:\\.[0-9]{1,4})?) ?(?:in\\.?|inch|inches|\") ?(?:/|per|a) ?(?:ft\\.?|foot)");
    private static final Pattern ANGLE =
            Pattern.compile("([0-9]{1,2}(?:\\.[0-9]{1,4})?) ?(?:°|deg|degrees?)(?: (?:included|whole|half))?");

    private static final int INCHES_OF_A_FOOT = 12;

    private TaperRate() {}

    /** Whether it is written as a rate. */
    public static boolean isRate(String written) {
        return RATE.matcher(written).matches();
    }

    /** What to write instead of a text that is no rate: the rate itself where the text says it in another way, else where to look for it. */
    public static String mend(String written) {
        String plain = written.strip().toLowerCase(Locale.ROOT);
        Matcher inSoMany = IN_SO_MANY.matcher(plain);
        if (inSoMany.matches()) {
            return "write 1:" + inSoMany.group(1).replace(',', '.');
        }
        Matcher perFoot = PER_FOOT.matcher(plain);
        if (perFoot.matches() && new BigDecimal(perFoot.group(1)).signum() > 0) {
            return "write 1:" + shown(INCHES_OF_A_FOOT / Double.parseDouble(perFoot.group(1)))
                    + ", which is 12 in over that";
        }
        Matcher angle = ANGLE.matcher(plain);
        if (angle.matches() && new BigDecimal(angle.group(1)).signum() > 0) {
            double half = Math.toRadians(Double.parseDouble(angle.group(1))) / 2;
            return plain.endsWith("half")
                    ? "write 1:" + shown(1 / (2 * Math.tan(2 * half))) + " if that is the angle of one side"
                    : "write 1:" + shown(1 / (2 * Math.tan(half))) + " if that is the whole angle between the sides";
        }
        return "measure the diameter at two places of the taper: length between them over the difference is the second number;"
                + " or write unknown, and what else you know of it as a note";
    }

    /** To three places, those that are needed. */
    private static String shown(double many) {
        return new BigDecimal(many, MathContext.DECIMAL64)
                .setScale(3, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
