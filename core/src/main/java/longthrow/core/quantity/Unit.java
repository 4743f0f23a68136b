package longthrow.core.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;

/**
 * One unit: how it is printed and spelled, and exactly what it is worth. The rows are in {@link Units}.
 *
 * <p>SI value = (number + offset) · factor · π^piPower. The offset is zero but for temperatures, the power of π is zero
 * but for degrees and turns, so that every factor is an exact fraction.
 */
public final class Unit {
    /** π to 50 digits (Abramowitz and Stegun 1964, table 1.1). */
    static final BigDecimal PI = new BigDecimal("3.1415926535897932384626433832795028841971693993751");

    private static final MathContext WORKING = new MathContext(40);

    private final Dimension dimension;
    private final String symbol;
    private final Fraction factor;
    private final int piPower;
    private final Fraction offset;
    private final List<String> spellings;
    private final String source;
    private final BigDecimal worth; // the factor in 50 digits
    private final double toSiFactor;
    private final BigDecimal offsetDecimal;
    private final double offsetNumber;

    /** Factor as two whole numbers a double holds; 0 over 1 where it is none: π or an offset comes in, or they are too large. */
    private final long plainNumerator;

    private final long plainDenominator;

    /** Whole numbers up to here are held exactly by a double. */
    private static final long EXACT_IN_A_DOUBLE = 1L << 53;

    Unit(
            Dimension dimension,
            String symbol,
            Fraction factor,
            int piPower,
            Fraction offset,
            List<String> spellings,
            String source) {
        this.dimension = dimension;
        this.symbol = symbol;
        this.factor = factor;
        this.piPower = piPower;
        this.offset = offset;
        this.spellings = List.copyOf(spellings);
        this.source = source;
        this.worth = withPi(factor.toDecimal(), piPower);
        this.toSiFactor = worth.doubleValue();
        this.offsetDecimal = offset.toDecimal();
        this.offsetNumber = offset.toDouble();
        boolean plain = piPower == 0
                && offset.signum() == 0
                && factor.numerator().bitLength() < 53
                && factor.denominator().bitLength() < 53;
        this.plainNumerator = plain ? factor.numerator().longValueExact() : 0;
        this.plainDenominator = plain ? factor.denominator().longValueExact() : 1;
    }

    /**
     * The unit of this dimension written so, by any of its spellings.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Unit of(Dimension dimension, String spelling) {
        return find(dimension, spelling)
                .orElseThrow(() -> new IllegalArgumentException("no unit of " + dimension.plainName() + " is written '"
                        + spelling + "'; there are " + String.join(", ", dimension.fittingUnits()) + " and others"));
    }

    /** The unit of this dimension written so, by any of its spellings, if there is one. */
    public static Optional<Unit> find(Dimension dimension, String spelling) {
        return Spellings.find(spelling, dimension).map(Spellings.Entry::unit);
    }

    public Dimension dimension() {
        return dimension;
    }

    /** As it is printed; empty for a bare number. */
    public String symbol() {
        return symbol;
    }

    /** Worth of one in coherent SI, still to be multiplied by π to the {@link #piPower}. */
    public Fraction factor() {
        return factor;
    }

    /** 1 for degrees and turns, 0 for all others. */
    public int piPower() {
        return piPower;
    }

    /** Added to the number before the factor: 273.15 for °C, 459.67 for °F, 0 for all others. */
    public Fraction offset() {
        return offset;
    }

    /** All spellings but the symbol. */
    List<String> spellings() {
        return spellings;
    }

    /** Where the factor comes from. */
    public String source() {
        return source;
    }

    /** A number of this unit in coherent SI. */
    public double toSi(double number) {
        return (number + offsetNumber) * toSiFactor;
    }

    /**
     * The double nearest to {@code unscaled / 10^scale} of this unit, in coherent SI: one correctly rounded division (IEEE 754)
     * of whole numbers that a double holds. NaN where they are too large, or π or an offset comes in.
     */
    double exactSi(long unscaled, int scale) {
        if (plainNumerator == 0 || scale < 0 || scale > 15) {
            return Double.NaN;
        }
        long ten = 1;
        for (int i = 0; i < scale; i++) {
            ten *= 10;
        }
        boolean held = Math.abs(unscaled) <= EXACT_IN_A_DOUBLE / plainNumerator
                && ten <= EXACT_IN_A_DOUBLE / plainDenominator
                && unscaled != Long.MIN_VALUE;
        return held ? (double) (unscaled * plainNumerator) / (double) (ten * plainDenominator) : Double.NaN;
    }

    /** Digits behind the point that are sure to leave a whole number of picometres; -1 for a unit that is no plain length. */
    public int decimalsOfExactLength() {
        if (dimension != Dimension.LENGTH || plainNumerator == 0) {
            return -1;
        }
        Fraction picometres = factor.times(Fraction.of(1_000_000_000_000L));
        int decimals = -1;
        while (picometres.isWhole() && decimals < 15) {
            decimals++;
            picometres = picometres.over(Fraction.of(10));
        }
        return decimals;
    }

    /** A coherent SI value as a number of this unit. */
    public double fromSi(double si) {
        return si / toSiFactor - offsetNumber;
    }

    /** A finite coherent SI value as a number of this unit, carried in 40 digits so that nothing overflows. */
    BigDecimal decimalFromSi(double si) {
        BigDecimal number = BigDecimal.valueOf(si).divide(worth, WORKING);
        return offset.signum() == 0 ? number : number.subtract(offsetDecimal);
    }

    /** The unit in which a doubt about a number of this unit is given: itself, without the offset of temperatures. */
    public Unit ofDifference() {
        return dimension == Dimension.TEMPERATURE ? of(Dimension.TEMPERATURE_DIFFERENCE, symbol) : this;
    }

    static BigDecimal withPi(BigDecimal number, int piPower) {
        return piPower == 0 ? number : number.multiply(PI, WORKING);
    }

    @Override
    public String toString() {
        return symbol.isEmpty() ? "a bare number" : symbol;
    }
}
