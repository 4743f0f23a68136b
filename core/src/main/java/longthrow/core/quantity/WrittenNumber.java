package longthrow.core.quantity;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The number at the start of a text: a decimal, a fraction, or a whole number with a fraction.
 *
 * @param typed as it stands in the text
 * @param understood the same with a decimal point and without grouping; equal to {@code typed} in the plain case
 * @param rest the text after it, stripped
 */
record WrittenNumber(Fraction value, String typed, String understood, String rest) {
    private static final String FORMS = "a decimal such as 66.01, or a fraction such as 5/8 or 2 5/8";
    /** More digits than any reading has; keeps the exact sums small. */
    private static final int MOST_DIGITS = 40;
    /** 1e30 and 1e-30 are beyond any quantity of the trade in any unit of the table. */
    private static final int LARGEST_EXPONENT = 30;

    private static final Pattern SIGN = Pattern.compile("([+-]?) *");
    private static final Pattern MIXED = Pattern.compile("([0-9]++)(?:[ \u2009]++| ?- ?)([0-9]++) ?/ ?([0-9]++)");
    private static final Pattern FRACTION = Pattern.compile("([0-9]++) ?/ ?([0-9]++)");
    private static final Pattern DECIMAL =
            Pattern.compile("((?:[0-9]|[.,](?=[0-9]))(?:[0-9.,]|\u2009(?=[0-9]))*+)(?:[eE]([+-]?[0-9]++))?");

    private static final Pattern GROUPED_BY_SPACE = Pattern.compile("[1-9][0-9]{0,2}(?:\u2009[0-9]{3})+");
    private static final Pattern GROUPED_BY_COMMA = Pattern.compile("[1-9][0-9]{0,2}(?:,[0-9]{3})+");
    private static final Pattern GROUPED_BY_DOT = Pattern.compile("[1-9][0-9]{0,2}(?:\\.[0-9]{3})+");

    /** Whether the text goes on with a digit, so that another number stands here. */
    static boolean startsAt(String text) {
        return !text.isEmpty() && WrittenText.isDigit(text.charAt(text.startsWith(".") && text.length() > 1 ? 1 : 0));
    }

    boolean isPlain() {
        return typed.equals(understood);
    }

    boolean isNegative() {
        return typed.startsWith("-");
    }

    /** The number at the start of a text in plain characters. */
    static WrittenNumber read(String text) throws Refusal {
        Matcher sign = SIGN.matcher(text);
        int start = sign.lookingAt() ? sign.end() : 0;
        boolean negative = "-".equals(sign.group(1));
        Matcher mixed = MIXED.matcher(text).region(start, text.length());
        if (mixed.lookingAt()) {
            Fraction part = fraction(mixed.group(2), mixed.group(3));
            if (part.compareTo(Fraction.ONE) >= 0) {
                throw new Refusal(
                        "has a fraction of one or more behind whole numbers",
                        FORMS,
                        "check the two numbers of " + mixed.group(2) + "/" + mixed.group(3));
            }
            String understood = mixed.group(1) + " " + mixed.group(2) + "/" + mixed.group(3);
            return read(text, negative, mixed.end(), decimal(mixed.group(1)).plus(part), understood);
        }
        Matcher fraction = FRACTION.matcher(text).region(start, text.length());
        if (fraction.lookingAt()) {
            Fraction value = fraction(fraction.group(1), fraction.group(2));
            return read(text, negative, fraction.end(), value, fraction.group(1) + "/" + fraction.group(2));
        }
        if (text.startsWith("0x", start) || text.startsWith("0X", start)) {
            throw new Refusal("is a hexadecimal number", FORMS, "write it as a decimal");
        }
        Matcher decimal = DECIMAL.matcher(text).region(start, text.length());
        if (decimal.lookingAt()) {
            return readDecimal(text, negative, decimal);
        }
        throw noNumber(text);
    }

    private static WrittenNumber readDecimal(String text, boolean negative, Matcher decimal) throws Refusal {
        String exponent = decimal.group(2);
        String rest = text.substring(decimal.end());
        String digits = withPoint(decimal.group(1), exponent == null ? rest : "e" + exponent + rest);
        Fraction value = decimal(digits);
        if (exponent == null) {
            return read(text, negative, decimal.end(), value, digits);
        }
        String power = exponent.replaceFirst("^([+-]?)0+(?=[0-9])", "$1");
        if (power.length() > 3 || Math.abs(Integer.parseInt(power)) > LARGEST_EXPONENT) {
            throw new Refusal(
                    "has the exponent " + WrittenText.shown(power) + ", far beyond anything that is measured",
                    "exponents from -" + LARGEST_EXPONENT + " to " + LARGEST_EXPONENT,
                    "check the number");
        }
        Fraction scaled = value.times(Fraction.of(BigDecimal.ONE.scaleByPowerOfTen(Integer.parseInt(power))));
        return read(text, negative, decimal.end(), scaled, digits + text.charAt(decimal.end(1)) + exponent);
    }

    private static WrittenNumber read(String text, boolean negative, int end, Fraction magnitude, String understood) {
        String typed = text.substring(0, end);
        if (typed.indexOf(' ') >= 0) {
            typed = typed.replaceFirst("^([+-]) +", "$1")
                    .replaceAll(" ?/ ?", "/")
                    .replaceAll(" +", " ");
        }
        String sign = negative ? "-" : typed.startsWith("+") ? "+" : "";
        return new WrittenNumber(
                negative ? magnitude.negated() : magnitude,
                typed,
                sign + understood,
                text.substring(end).strip());
    }

    /** The digits with a point as decimal mark and no grouping, where only one reading is possible. */
    private static String withPoint(String digits, String rest) throws Refusal {
        int mark = decimalMark(digits);
        String whole = mark < 0 ? digits : digits.substring(0, mark);
        String places = mark < 0 ? "" : digits.substring(mark + 1);
        boolean grouped = whole.indexOf(',') >= 0 || whole.indexOf('.') >= 0 || whole.indexOf('\u2009') >= 0;
        if (grouped
                && !GROUPED_BY_SPACE.matcher(whole).matches()
                && !GROUPED_BY_COMMA.matcher(whole).matches()
                && !GROUPED_BY_DOT.matcher(whole).matches()) {
            throw unreadable(digits);
        }
        boolean decimalComma = mark >= 0 && digits.charAt(mark) == ',';
        if (decimalComma && !grouped && GROUPED_BY_COMMA.matcher(digits).matches()) {
            throw eitherMeaning(whole, places, rest);
        }
        if (!places.chars().allMatch(c -> WrittenText.isDigit((char) c)) || (decimalComma && places.isEmpty())) {
            throw unreadable(digits);
        }
        String wholeDigits = grouped ? whole.replaceAll("[,.\u2009]", "") : whole;
        return mark < 0 ? wholeDigits : wholeDigits + "." + places;
    }

    /** Where the decimal mark stands, -1 for none: a mark that comes twice groups; of two kinds the last is decimal. */
    private static int decimalMark(String digits) throws Refusal {
        int comma = digits.lastIndexOf(',');
        int point = digits.lastIndexOf('.');
        boolean commasGroup = digits.indexOf(',') != comma;
        boolean pointsGroup = digits.indexOf('.') != point;
        if (commasGroup && pointsGroup) {
            throw unreadable(digits);
        }
        return commasGroup ? point : pointsGroup ? comma : Math.max(comma, point);
    }

    private static Refusal eitherMeaning(String whole, String places, String rest) {
        String small = whole + "." + places;
        String unit = rest.isBlank() ? "" : " " + rest.strip();
        return new Refusal(
                "can be read as " + small + " or as " + whole + places,
                "a point or a comma as decimal mark where the number can be read in one way only",
                "write " + small + unit + " or " + whole + places + unit);
    }

    private static Refusal unreadable(String digits) {
        return new Refusal(
                "has points, commas or spaces in '" + WrittenText.shown(digits) + "' that do not make one number",
                FORMS,
                "write it with one decimal point and no other mark");
    }

    private static Fraction fraction(String numerator, String denominator) throws Refusal {
        Fraction below = decimal(denominator);
        if (below.signum() == 0) {
            throw new Refusal("has the denominator 0", FORMS, "write the fraction like 5/8");
        }
        return decimal(numerator).over(below);
    }

    private static Fraction decimal(String digits) throws Refusal {
        if (digits.length() > MOST_DIGITS) {
            throw new Refusal(
                    "has a number of " + digits.length() + " digits",
                    "at most " + MOST_DIGITS + " digits",
                    "write the digits that were read");
        }
        return Fraction.of(digits.startsWith(".") ? "0" + digits : digits);
    }

    private static Refusal noNumber(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        if (lower.matches("[+-]? *(nan|inf|∞).*")) {
            return new Refusal("is not a finite number", FORMS, "write the number that was read");
        }
        if (lower.matches("[<>~≈≤≥].*")) {
            return new Refusal(
                    "starts with '" + text.charAt(0) + "'; one value is wanted here, not a limit or a guess",
                    FORMS,
                    "write the value, with its doubt as ± if you like");
        }
        return new Refusal("does not start with a number", FORMS, "write the number first, then its unit");
    }
}
