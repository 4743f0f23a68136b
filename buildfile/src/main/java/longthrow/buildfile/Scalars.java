package longthrow.buildfile;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;

/** Texts and figures as they may stand in a file. */
final class Scalars {
    /** A double holds at most so many decimal digits. */
    private static final int MOST_DIGITS = 17;

    private Scalars() {}

    /**
     * A text, in quotation marks where it needs them.
     * @param inBrackets whether it stands in a list or mapping on one line, where commas part the items
     */
    static String write(String text, boolean inBrackets) {
        refuse(text);
        return isPlain(text) && !(inBrackets && text.indexOf(',') >= 0) ? text : quoted(text);
    }

    /** Whether it can stand without quotation marks: stricter than the format, so that nobody need know its rules. */
    private static boolean isPlain(String text) {
        return !text.isEmpty()
                && startsPlain(text)
                && text.equals(text.strip())
                && !text.endsWith(":")
                && !text.contains(": ")
                && !text.contains(" #")
                && text.chars().noneMatch(c -> "[]{}\n".indexOf(c) >= 0);
    }

    /** With a letter or a digit, or a sign or point and then a digit. */
    private static boolean startsPlain(String text) {
        char first = text.charAt(0);
        boolean signed = "+-.".indexOf(first) >= 0 && text.length() > 1;
        return Character.isDigit(signed ? text.charAt(1) : first)
                || Character.isLetter(first)
                || Character.getType(first) == Character.OTHER_NUMBER;
    }

    private static String quoted(String text) {
        boolean oneLine = text.indexOf('\n') < 0;
        if (oneLine && text.indexOf('\'') < 0) {
            return "'" + text + "'";
        }
        return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + "\"";
    }

    private static void refuse(String text) {
        boolean invisible = text.codePoints().anyMatch(c -> PlainText.isInvisible(c) || c == '\t');
        if (invisible || text.length() > PlainText.LONGEST_SCALAR) {
            throw new IllegalArgumentException("text is '" + Faults.shown(text) + "' of " + text.length()
                    + " characters; a build file holds visible characters only, at most " + PlainText.LONGEST_SCALAR
                    + " in one text");
        }
    }

    /** The shortest figure in the usual metric unit, else in SI, that is read back as exactly this double. */
    static String figure(Dimension dimension, double si) {
        Unit usual = BenchUnits.of(dimension, si).metric();
        Unit coherent = dimension.takesBareNumbers() ? usual : Unit.of(dimension, dimension.siSymbol());
        for (Unit unit : new Unit[] {usual, coherent}) {
            for (int digits = 1; digits <= MOST_DIGITS; digits++) {
                BigDecimal number = rounded(unit.fromSi(si), digits);
                if (Quantity.of(number, unit).si() == si) {
                    return Quantity.of(number, unit).written();
                }
            }
        }
        return Quantity.of(rounded(usual.fromSi(si), MOST_DIGITS - 2), usual).written();
    }

    private static BigDecimal rounded(double number, int digits) {
        BigDecimal rounded =
                BigDecimal.valueOf(number).round(new MathContext(digits)).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    /** A bare decimal that is read back as exactly this double. */
    static String decimal(double number) {
        return rounded(number, MOST_DIGITS).toPlainString().toLowerCase(Locale.ROOT);
    }
}
