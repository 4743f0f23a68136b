package longthrow.core.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Optional;

/**
 * An exact fraction in lowest terms. Decimals and inch fractions alike are fractions, so nothing written is rounded.
 *
 * @param numerator carries the sign
 * @param denominator &gt; 0 (a negative one is turned positive)
 */
public record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {
    public static final Fraction ZERO = of(0);
    public static final Fraction ONE = of(1);

    /** Digits carried where a fraction has to become a decimal; far beyond a double's 17. */
    private static final MathContext WORKING = new MathContext(50);

    public Fraction {
        if (denominator.signum() == 0) {
            throw new IllegalArgumentException("denominator is 0; a fraction needs a denominator other than 0");
        }
        BigInteger divisor = numerator.gcd(denominator).multiply(BigInteger.valueOf(denominator.signum()));
        numerator = numerator.divide(divisor);
        denominator = denominator.divide(divisor);
    }

    public static Fraction of(long whole) {
        return new Fraction(BigInteger.valueOf(whole), BigInteger.ONE);
    }

    public static Fraction of(long numerator, long denominator) {
        return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    public static Fraction of(BigDecimal decimal) {
        return decimal.scale() <= 0
                ? new Fraction(decimal.toBigIntegerExact(), BigInteger.ONE)
                : new Fraction(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()));
    }

    /**
     * The fraction a decimal is worth.
     *
     * @throws NumberFormatException if it is not a decimal as {@link BigDecimal} reads them
     */
    public static Fraction of(String decimal) {
        return of(new BigDecimal(decimal));
    }

    public Fraction plus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    public Fraction minus(Fraction other) {
        return plus(other.negated());
    }

    public Fraction times(Fraction other) {
        return new Fraction(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    /**
     * This divided by the other.
     *
     * @throws IllegalArgumentException if the other is zero
     */
    public Fraction over(Fraction other) {
        return new Fraction(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    public Fraction negated() {
        return new Fraction(numerator.negate(), denominator);
    }

    public int signum() {
        return numerator.signum();
    }

    public boolean isWhole() {
        return denominator.equals(BigInteger.ONE);
    }

    /** As a decimal of 50 digits, rounded where it does not end. */
    public BigDecimal toDecimal() {
        return new BigDecimal(numerator).divide(new BigDecimal(denominator), WORKING);
    }

    /** As a decimal, if it ends: 5/8 is 0.625, 1/3 is none. */
    public Optional<BigDecimal> exactDecimal() {
        int twos = denominator.getLowestSetBit();
        BigInteger rest = denominator.shiftRight(twos);
        BigInteger five = BigInteger.valueOf(5);
        while (rest.mod(five).signum() == 0) {
            rest = rest.divide(five);
        }
        return rest.equals(BigInteger.ONE)
                ? Optional.of(new BigDecimal(numerator).divide(new BigDecimal(denominator)))
                : Optional.empty();
    }

    /** The nearest double. */
    public double toDouble() {
        return toDecimal().doubleValue();
    }

    @Override
    public int compareTo(Fraction other) {
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    @Override
    public String toString() {
        return exactDecimal().map(BigDecimal::toPlainString).orElse(numerator + "/" + denominator);
    }
}
