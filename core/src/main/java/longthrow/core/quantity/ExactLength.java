package longthrow.core.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * A stated length as a whole number of picometres, so that sums, differences and comparisons with a limit are exact.
 * 1 in = 25,400,000,000 pm and 1/64 in = 396,875,000 pm (inch: NIST SP 811 (2008), B.8).
 *
 * @param picometres [1e-12 m], any sign; the range is ±9,223 km
 */
public record ExactLength(long picometres) implements Comparable<ExactLength> {
    public static final ExactLength ZERO = new ExactLength(0);

    private static final Fraction PICOMETRES_PER_METRE = Fraction.of(1_000_000_000_000L);
    private static final int PICOMETRE_DECIMALS_OF_MILLIMETRE = 9;

    /**
     * A stated length.
     *
     * @throws IllegalArgumentException if it is not a length, is finer than a picometre, or is beyond ±9,223 km
     */
    public static ExactLength of(Quantity length) {
        if (length.dimension() != Dimension.LENGTH) {
            throw new IllegalArgumentException("'" + length.written() + "' is "
                    + length.dimension().withArticle() + "; an exact length can only be made of a length");
        }
        return ofMetres(length.siFraction(), length.written());
    }

    /**
     * A decimal number of millimetres, such as 86.40.
     *
     * @throws IllegalArgumentException if it is no decimal, is finer than a picometre, or is beyond ±9,223 km
     */
    public static ExactLength ofMillimetres(String decimal) {
        BigDecimal millimetres;
        try {
            millimetres = new BigDecimal(decimal);
        } catch (NumberFormatException notDecimal) {
            throw new IllegalArgumentException(
                    "'" + decimal + "' is not a decimal number of millimetres; write it like 86.40", notDecimal);
        }
        return ofMillimetres(millimetres);
    }

    /**
     * Millimetres.
     *
     * @throws IllegalArgumentException if it is finer than a picometre or beyond ±9,223 km
     */
    public static ExactLength ofMillimetres(BigDecimal millimetres) {
        BigDecimal stripped = millimetres.stripTrailingZeros();
        if (stripped.scale() > PICOMETRE_DECIMALS_OF_MILLIMETRE) {
            throw tooFine(stripped + " mm");
        }
        if (stripped.precision() - stripped.scale() > 19) {
            throw tooLong(stripped + " mm");
        }
        return ofMetres(Fraction.of(stripped).over(Fraction.of(1000)), stripped + " mm");
    }

    /**
     * whole + numerator/denominator inches: (2, 5, 8) is 2 5/8 in, (0, -1, 64) is -1/64 in.
     *
     * @throws IllegalArgumentException if the denominator is not positive, whole and fraction differ in sign, the
     *     length is finer than a picometre (1/3 in is), or it is beyond ±9,223 km
     */
    public static ExactLength ofInchFraction(long whole, long numerator, long denominator) {
        String written = whole + " " + numerator + "/" + denominator + " in";
        if (denominator <= 0) {
            throw new IllegalArgumentException("'" + written + "' has the denominator " + denominator
                    + "; it must be positive, as the 64 in 1/64");
        }
        if (Long.signum(whole) * Long.signum(numerator) < 0) {
            throw new IllegalArgumentException(
                    "'" + written + "' mixes signs; give whole inches and fraction the same sign");
        }
        Fraction inches = Fraction.of(whole).plus(Fraction.of(numerator, denominator));
        return ofMetres(inches.times(Units.INCH.factor()), written);
    }

    private static ExactLength ofMetres(Fraction metres, String written) {
        Fraction picometres = metres.times(PICOMETRES_PER_METRE);
        if (!picometres.isWhole()) {
            throw tooFine(written);
        }
        BigInteger whole = picometres.numerator();
        if (whole.bitLength() > 63) {
            throw tooLong(written);
        }
        return new ExactLength(whole.longValueExact());
    }

    private static IllegalArgumentException tooFine(String written) {
        return new IllegalArgumentException("'" + written + "' is not a whole number of picometres (1e-9 mm), the "
                + "finest length that is kept exactly; write a decimal with at most 9 places of a millimetre");
    }

    private static IllegalArgumentException tooLong(String written) {
        return new IllegalArgumentException(
                "'" + written + "' is beyond ±9,223 km, the longest length that is kept exactly; check its exponent");
    }

    /**
     * The sum.
     *
     * @throws ArithmeticException if the sum is beyond ±9,223 km
     */
    public ExactLength plus(ExactLength other) {
        try {
            return new ExactLength(Math.addExact(picometres, other.picometres));
        } catch (ArithmeticException overflow) {
            throw beyondRange(this + " + " + other, overflow);
        }
    }

    /**
     * The difference.
     *
     * @throws ArithmeticException if the difference is beyond ±9,223 km
     */
    public ExactLength minus(ExactLength other) {
        try {
            return new ExactLength(Math.subtractExact(picometres, other.picometres));
        } catch (ArithmeticException overflow) {
            throw beyondRange(this + " - " + other, overflow);
        }
    }

    /**
     * So many of this length.
     *
     * @throws ArithmeticException if the product is beyond ±9,223 km
     */
    public ExactLength times(long count) {
        try {
            return new ExactLength(Math.multiplyExact(picometres, count));
        } catch (ArithmeticException overflow) {
            throw beyondRange(this + " × " + count, overflow);
        }
    }

    /**
     * Half of it, exactly or not at all.
     *
     * @throws ArithmeticException if it is an odd number of picometres: a half is exact or is not given
     */
    public ExactLength half() {
        if (picometres % 2 != 0) {
            throw new ArithmeticException("half of " + this + " is not a whole number of picometres (1e-9 mm); "
                    + "compare doubled lengths instead of halves");
        }
        return new ExactLength(picometres / 2);
    }

    /** The same length with the other sign. */
    public ExactLength negated() {
        return ZERO.minus(this);
    }

    private static ArithmeticException beyondRange(String sum, ArithmeticException cause) {
        ArithmeticException clear = new ArithmeticException(
                sum + " is beyond ±9,223 km, the longest length that is kept exactly; check the exponents");
        clear.initCause(cause);
        return clear;
    }

    /** The nearest double [m]. */
    public double metres() {
        return picometres / 1e12; // both are exact up to 2^53 pm = 9 km, then the quotient is correctly rounded
    }

    /** In millimetres, exactly, without trailing zeros. */
    public BigDecimal toMillimetresExact() {
        BigDecimal millimetres =
                BigDecimal.valueOf(picometres, PICOMETRE_DECIMALS_OF_MILLIMETRE).stripTrailingZeros();
        return millimetres.scale() < 0 ? millimetres.setScale(0) : millimetres;
    }

    @Override
    public int compareTo(ExactLength other) {
        return Long.compare(picometres, other.picometres);
    }

    @Override
    public String toString() {
        return toMillimetresExact().toPlainString() + " mm";
    }
}
