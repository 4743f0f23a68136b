package longthrow.workshop.web;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.QuantityParser;

/**
 * A figure whose comma may be a decimal mark or part thousands: whoever typed it is asked which.
 * @param typed     as it stands in the box
 * @param decimal   with the comma as a decimal mark
 * @param thousands with the comma between thousands
 */
public record EitherComma(String typed, String decimal, String thousands) {
    /** Field by which a form says how such commas are meant, and what it says. */
    public static final String FIELD = "comma";

    public static final String DECIMAL = "decimal";
    public static final String THOUSANDS = "thousands";

    /** One to three digits, a comma, three digits. */
    private static final Pattern EITHER = Pattern.compile("([+\\-−]?\\s*\\d{1,3}),(\\d{3})(?=\\D|$)");

    /** The two readings of a text; empty where it has but one, or none. */
    public static Optional<EitherComma> of(String text, Dimension dimension) {
        Matcher either = EITHER.matcher(text);
        EitherComma two = new EitherComma(text, either.replaceAll("$1.$2"), either.replaceAll("$1$2"));
        return !isUnderstood(text, dimension)
                        && isUnderstood(two.decimal, dimension)
                        && isUnderstood(two.thousands, dimension)
                ? Optional.of(two)
                : Optional.empty();
    }

    /** The text as a form says it is meant; as it stands where it says nothing. */
    public String meant(String said) {
        return said.equals(DECIMAL) ? decimal : said.equals(THOUSANDS) ? thousands : typed;
    }

    private static boolean isUnderstood(String text, Dimension dimension) {
        return QuantityParser.parse(text, dimension) instanceof Parsed.Understood;
    }
}
