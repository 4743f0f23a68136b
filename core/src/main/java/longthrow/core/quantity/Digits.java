package longthrow.core.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * How many digits of a value are printed.
 *
 * <p>The doubt is cut to two significant digits when it leads with 1, 2, 3 or 4, else to one, so that rounding never
 * moves it by more than a tenth; the value is rounded to the same place, half to even (JCGM 100:2008, 7.2.6: at most two
 * digits of doubt, value to match).
 */
final class Digits {
    /** A double holds this many decimal digits surely; no more are printed, whatever the doubt. */
    private static final int MOST_DIGITS = 15;
    /** Digits where no doubt says how many there should be. Layout; common practice, no source. */
    private static final int DIGITS_WITHOUT_DOUBT = 4;
    /** Digits of an exact computed value. */
    private static final int DIGITS_EXACT = 7;
    /** A converted figure that ends within so many places is shown exactly. */
    private static final int MOST_EXACT_PLACES = 6;

    /** Four digits of a small figure would say more than was written: 0.0007087 in for 0.018 mm. Layout. */
    private static final int MOST_PLACES_FOR_FOUR_DIGITS = 4;

    /** No limit: the smallest double has its first digit at place 324, and a unit moves it by less than the rest. */
    private static final int MOST_PLACES = 1000;

    private static final int EXPONENT_FORM_FROM = 9;
    private static final int EXPONENT_FORM_BELOW = -6;

    private Digits() {}

    static Figure withDoubt(BigDecimal unrounded, BigDecimal unroundedDoubt, Unit unit) {
        return withDoubt(unrounded, unroundedDoubt, MOST_PLACES, unit);
    }

    /** With no more places than the doubt was typed with. */
    static Figure withDoubt(BigDecimal unrounded, BigDecimal unroundedDoubt, int mostPlaces, Unit unit) {
        BigDecimal value = unrounded.round(new MathContext(MOST_DIGITS)); // drops the dust of a computed double
        BigDecimal doubt = unroundedDoubt.round(new MathContext(MOST_DIGITS));
        if (doubt.signum() == 0) {
            return exact(value, unit);
        }
        int places = Math.min(placesOf(doubt), mostPlaces);
        if (value.signum() != 0) {
            places = Math.min(places, MOST_DIGITS - 1 - exponent(value));
        }
        BigDecimal shownDoubt = doubt.setScale(places, RoundingMode.HALF_UP);
        if (shownDoubt.signum() == 0) {
            shownDoubt = doubt.setScale(places, RoundingMode.UP);
        }
        BigDecimal shown = value.setScale(places, RoundingMode.HALF_EVEN);
        int size = Math.max(exponent(shown), exponent(shownDoubt));
        return figure(shown, text(shownDoubt, size), unit, size);
    }

    /** A computed value without doubt: what seven digits hold of it. */
    static Figure exact(BigDecimal value, Unit unit) {
        BigDecimal digits = exactDigits(value);
        return figure(digits, "", unit, exponent(digits));
    }

    /** Those digits, without the zeros at their end. */
    static BigDecimal exactDigits(BigDecimal value) {
        return stripped(value.round(new MathContext(DIGITS_EXACT, RoundingMode.HALF_EVEN)));
    }

    /** Decimal places that keep the doubt's one or two significant digits; negative for tens, hundreds... */
    private static int placesOf(BigDecimal doubt) {
        BigDecimal rounded = doubt.round(new MathContext(digitsOf(doubt), RoundingMode.HALF_UP));
        return digitsOf(rounded) - 1 - exponent(rounded); // anew: 0.96 has become 1.0, 0.0496 has become 0.05
    }

    private static int digitsOf(BigDecimal doubt) {
        return doubt.unscaledValue().toString().charAt(0) < '5' ? 2 : 1;
    }

    static Figure doubtUnknown(BigDecimal value, Unit unit) {
        BigDecimal shown = value.round(new MathContext(DIGITS_WITHOUT_DOUBT, RoundingMode.HALF_EVEN));
        return figure(filled(shown), Figure.UNKNOWN, unit, exponent(shown));
    }

    /**
     * A figure converted from a unit in which it was written to the last place given here, zero if to no place: exactly if that is
     * short, else to the first place that is no coarser than half the written one, and to four digits as far as the fourth decimal place.
     */
    static Figure converted(BigDecimal value, double lastPlace, Unit unit) {
        BigDecimal exact = stripped(value);
        if (exact.scale() <= MOST_EXACT_PLACES && exact.precision() <= DIGITS_EXACT + 1) {
            return figure(exact, "", unit, exponent(exact));
        }
        int places = Math.min(DIGITS_WITHOUT_DOUBT - 1 - exponent(value), MOST_PLACES_FOR_FOUR_DIGITS);
        places = Math.max(places, lastPlace > 0 ? (int) -Math.floor(Math.log10(lastPlace / 2)) : MOST_EXACT_PLACES);
        places = Math.min(places, MOST_DIGITS - 1 - exponent(value));
        BigDecimal shown = value.setScale(places, RoundingMode.HALF_EVEN);
        return figure(shown, "", unit, exponent(shown));
    }

    /** The number as it was written, with a point as decimal mark. */
    static String asWritten(Quantity stated) {
        try {
            WrittenNumber number = WrittenNumber.read(WrittenText.plain(stated.written()));
            if (number.value().equals(stated.value())) {
                return tidy(number.understood(), stated.value().signum());
            }
        } catch (Refusal notWrittenAsANumber) {
            // made by a program, or of two units: its value stands for it
        }
        return stated.value().toString();
    }

    /** ".5" as 0.5, "5." as 5, "-0.0" as 0.0. */
    private static String tidy(String number, int signum) {
        String unsigned = signum == 0 && number.startsWith("-") ? number.substring(1) : number;
        String led = unsigned.replaceFirst("^([+-]?)\\.", "$10.");
        return led.endsWith(".") ? led.substring(0, led.length() - 1) : led;
    }

    /** The worth of the last place that was written, in the written unit; zero for a fraction. */
    static double lastWrittenPlace(Quantity stated) {
        String number = asWritten(stated);
        return number.indexOf('/') >= 0 ? 0 : new BigDecimal(number).ulp().doubleValue();
    }

    /** Decimal places of what was written; without limit for a fraction. */
    static int writtenPlaces(Quantity stated) {
        String number = asWritten(stated);
        return number.indexOf('/') >= 0 ? MOST_PLACES : new BigDecimal(number).scale();
    }

    private static Figure figure(BigDecimal value, String doubt, Unit unit, int size) {
        return new Figure(text(value, size), doubt, unit.symbol());
    }

    /** Plain, or with a power of ten where the figure is very large or very small. */
    private static String text(BigDecimal number, int size) {
        if (size < EXPONENT_FORM_FROM && size >= EXPONENT_FORM_BELOW) {
            return number.toPlainString();
        }
        return number.signum() == 0 ? "0" : number.scaleByPowerOfTen(-size).toPlainString() + "e" + size;
    }

    /** Power of ten of the leading digit; 0 for zero. */
    private static int exponent(BigDecimal number) {
        return number.signum() == 0 ? 0 : number.precision() - number.scale() - 1;
    }

    private static BigDecimal stripped(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** With trailing zeros up to the digits a figure without doubt has. */
    private static BigDecimal filled(BigDecimal number) {
        return number.signum() == 0
                ? BigDecimal.ZERO
                : number.setScale(DIGITS_WITHOUT_DOUBT - 1 - exponent(number), RoundingMode.UNNECESSARY);
    }
}
