package longthrow.core.engine;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.formula.Expression;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * A limit, itself included: a stated figure, or a factor of another figure of the same engine, or their sum.
 * @param stated figure, or what is added to the factor's part; null for nothing
 * @param factor of the other figure; 0 when there is none
 * @param of     the other figure; null when there is none
 * @param spread 95 % half-width of the limit itself, from bringing it to 20 °C [SI]; 0 for a limit that is taken as it is stated
 */
public record Bound(
        @Nullable Quantity stated,
        BigDecimal factor,
        @Nullable Term of,
        double spread) {
    /** Stated lengths are whole picometres; halves of them are met too. [m] */
    private static final BigDecimal HALF_PICOMETRE = new BigDecimal("5e-13");
    /** Digits that a double computed in a few steps surely has. */
    private static final MathContext SURE_DIGITS = new MathContext(12);

    public Bound {
        if (stated == null && of == null) {
            throw new IllegalArgumentException("a limit needs a figure or a factor of one");
        }
    }

    /** A stated figure. */
    static Bound stated(Quantity stated) {
        return new Bound(stated, BigDecimal.ZERO, null, 0);
    }

    static Bound millimetres(String decimal) {
        return stated(Quantity.of(decimal, Units.MILLIMETRE));
    }

    /** So many times another figure. */
    static Bound times(String factor, Term of) {
        return new Bound(null, new BigDecimal(factor), of, 0);
    }

    /** The same limit, itself only known to a 95 % half-width. */
    Bound within(double halfWidth) {
        return new Bound(stated, factor, of, halfWidth);
    }

    Bound plus(Quantity more) {
        return new Bound(more, factor, of, spread);
    }

    /** The figure that it is a factor of. */
    public Optional<Term> reference() {
        return Optional.ofNullable(of);
    }

    /** The limit as a formula of its reference, by the path of the term [SI]. */
    public Expression expression() {
        Expression offset = Expression.constant(stated == null ? 0 : stated.si());
        return of == null
                ? offset
                : Expression.input(of.path()).times(factor.doubleValue()).plus(offset);
    }

    /** The limit of this engine [SI]; empty when its reference is unknown. */
    public Optional<Double> value(Function<Term, Optional<Measured>> figures) {
        return decimal(figures).map(BigDecimal::doubleValue);
    }

    /** The limit to all its digits: decimal throughout, so that a limit made of stated figures is what they say. */
    Optional<BigDecimal> decimal(Function<Term, Optional<Measured>> figures) {
        BigDecimal offset = stated == null ? BigDecimal.ZERO : siOf(stated);
        if (of == null) {
            return Optional.of(offset);
        }
        Term reference = of;
        return figures.apply(reference)
                .filter(m -> !m.isUnknown())
                .map(m -> asStated(m.value(), reference.dimension())
                        .multiply(factor)
                        .add(offset));
    }

    /**
     * What a computed double stands for when everything it was made of was stated without doubt. A length is brought back to the half
     * picometre, which is finer than any reading and far coarser than the rounding of doubles: 0.1 mm + 0.3 mm is 0.4 mm again.
     */
    static BigDecimal asStated(double si, Dimension dimension) {
        return dimension == Dimension.LENGTH
                ? BigDecimal.valueOf(Math.rint(si / HALF_PICOMETRE.doubleValue()))
                        .multiply(HALF_PICOMETRE)
                : new BigDecimal(si).round(SURE_DIGITS);
    }

    private static BigDecimal siOf(Quantity quantity) {
        return quantity.dimension() == Dimension.LENGTH
                ? quantity.siFraction().toDecimal()
                : new BigDecimal(quantity.si()).round(SURE_DIGITS);
    }

    /** In words: "0.001 × crankpin diameter + 0.0005 in". */
    public String text() {
        String offset = stated == null ? "" : stated.written();
        if (of == null) {
            return offset;
        }
        return factor.toPlainString() + " × " + of.label() + (offset.isEmpty() ? "" : " + " + offset);
    }

    @Override
    public String toString() {
        return text();
    }
}
