package longthrow.core.quantity;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A number with its unit, exactly as stated, and the text it was stated in. Two quantities are equal when they are worth
 * the same: 1 in equals 25.4 mm.
 */
public final class Quantity implements Comparable<Quantity> {
    private final Unit unit;
    private final double si;

    /** Decimal that {@link #value} and {@link #written} are made of when they are first asked for; see {@link #ofDecimal}. */
    private final long unscaled;

    private final int scale;

    // Worked out at the latest when asked for. Two threads may both do it; they get equal values, which are immutable.
    private @Nullable String written;
    private @Nullable Fraction value;
    private @Nullable Fraction siFraction;

    private Quantity(String written, Fraction value, Unit unit) {
        Fraction exact = value.plus(unit.offset()).times(unit.factor());
        this.written = written;
        this.value = value;
        this.unit = unit;
        this.siFraction = exact;
        this.si = Unit.withPi(exact.toDecimal(), unit.piPower()).doubleValue();
        this.unscaled = 0;
        this.scale = 0;
    }

    private Quantity(long unscaled, int scale, double si, Unit unit) {
        this.unit = unit;
        this.si = si;
        this.unscaled = unscaled;
        this.scale = scale;
    }

    /**
     * A number of a unit.
     *
     * @param written the text this was stated in, kept as it is
     */
    public static Quantity of(String written, Fraction value, Unit unit) {
        return new Quantity(written, value, unit);
    }

    /** As if the number had been written with the unit's symbol behind it. */
    public static Quantity of(BigDecimal value, Unit unit) {
        return new Quantity((value.toPlainString() + " " + unit.symbol()).strip(), Fraction.of(value), unit);
    }

    /**
     * As if the decimal had been written with the unit's symbol behind it.
     *
     * @throws NumberFormatException if the value is not a decimal
     */
    public static Quantity of(String value, Unit unit) {
        return of(new BigDecimal(value), unit);
    }

    /**
     * The decimal {@code unscaled / 10^scale}, as if it had been written with the unit's symbol behind it. Equal in every respect to
     * {@link #of(BigDecimal, Unit)}, and made for files of a hundred thousand rows: text and exact fraction are formed when
     * they are asked for.
     *
     * @param scale digits behind the point, 0 to 18
     */
    public static Quantity ofDecimal(long unscaled, int scale, Unit unit) {
        double si = unit.exactSi(unscaled, scale);
        return Double.isNaN(si)
                ? of(BigDecimal.valueOf(unscaled, scale), unit)
                : new Quantity(unscaled, scale, si, unit);
    }

    /** What was written, digits and unit, so that a file is written back as it was read. */
    public String written() {
        String text = written;
        if (text == null) {
            text = (BigDecimal.valueOf(unscaled, scale).toPlainString() + " " + unit.symbol()).strip();
            written = text;
        }
        return text;
    }

    /** The exact number in the written unit. */
    public Fraction value() {
        Fraction number = value;
        if (number == null) {
            number = Fraction.of(BigDecimal.valueOf(unscaled, scale));
            value = number;
        }
        return number;
    }

    public Unit unit() {
        return unit;
    }

    public Dimension dimension() {
        return unit.dimension();
    }

    /** The nearest double in coherent SI. */
    public double si() {
        return si;
    }

    /** The exact value in coherent SI, still to be multiplied by π to the unit's {@link Unit#piPower}. */
    public Fraction siFraction() {
        Fraction exact = siFraction;
        if (exact == null) {
            exact = value().plus(unit.offset()).times(unit.factor());
            siFraction = exact;
        }
        return exact;
    }

    /**
     * The exact number in another unit of the same dimension.
     *
     * @throws IllegalArgumentException if the dimensions differ, or π stands between the units (degrees, radians)
     */
    public Fraction valueIn(Unit other) {
        if (other.dimension() != dimension() || other.piPower() != unit.piPower()) {
            throw new IllegalArgumentException("'" + written() + "' cannot be given exactly in " + other
                    + "; that takes a unit of " + dimension().plainName() + " of the same kind as " + unit);
        }
        return siFraction().over(other.factor()).minus(other.offset());
    }

    /** The exact length, if this is a length of whole picometres within ±9,223 km, as every parsed length is. */
    public Optional<ExactLength> exactLength() {
        try {
            return dimension() == Dimension.LENGTH ? Optional.of(ExactLength.of(this)) : Optional.empty();
        } catch (IllegalArgumentException notWhole) {
            return Optional.empty();
        }
    }

    /**
     * Compares the worth, exactly.
     *
     * @throws IllegalArgumentException if the dimensions differ
     */
    @Override
    public int compareTo(Quantity other) {
        if (other.dimension() != dimension()) {
            throw new IllegalArgumentException(
                    "'" + written() + "' is " + dimension().withArticle() + ", '"
                            + other.written() + "' is " + other.dimension().withArticle()
                            + "; only quantities of one kind can be compared");
        }
        return unit.piPower() == other.unit.piPower()
                ? siFraction().compareTo(other.siFraction())
                : Unit.withPi(siFraction().toDecimal(), unit.piPower())
                        .compareTo(Unit.withPi(other.siFraction().toDecimal(), other.unit.piPower()));
    }

    @Override
    public boolean equals(@Nullable Object object) {
        return object instanceof Quantity other
                && other.dimension() == dimension()
                && other.siFraction().equals(siFraction())
                && (other.unit.piPower() == unit.piPower() || siFraction().signum() == 0);
    }

    @Override
    public int hashCode() {
        return Objects.hash(dimension(), siFraction());
    }

    @Override
    public String toString() {
        return written();
    }
}
