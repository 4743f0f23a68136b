package longthrow.workshop.web;

import java.util.regex.Pattern;
import longthrow.core.quantity.UnitSystem;

/** A number without a unit, as a keypad gives it: it takes the unit chosen beside the box. */
public final class BareNumber {
    /** Digits with points, commas and spaces. */
    private static final Pattern BARE = Pattern.compile("[+\\-−]?\\s*[\\d.,  ]+");

    private BareNumber() {}

    /** The unit of bare lengths of a build's pages; it stands beside each box that takes them. */
    public static String length(UnitSystem units) {
        return units == UnitSystem.METRIC_FIRST ? "mm" : "in";
    }

    /** The text with the unit behind it where it is a bare number; as it is where it has words of its own. */
    public static String with(String text, String unit) {
        return !unit.isEmpty() && BARE.matcher(text).matches() ? text + " " + unit : text;
    }
}
