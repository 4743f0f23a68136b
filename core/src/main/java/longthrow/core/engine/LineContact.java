package longthrow.core.engine;

import longthrow.core.formula.Expression;

/** Cylinder on a flat, both elastic: Johnson, Contact Mechanics (1985), section 4.2. Stresses and moduli [Pa], lengths [m]. */
public final class LineContact {
    private LineContact() {}

    /** E* of two materials by modulus and Poisson's ratio. */
    public static Expression effectiveModulus(Expression e1, double nu1, Expression e2, double nu2) {
        Expression one = Expression.constant(1 - nu1 * nu1).dividedBy(e1);
        Expression two = Expression.constant(1 - nu2 * nu2).dividedBy(e2);
        return Expression.constant(1).dividedBy(one.plus(two));
    }

    /** Largest pressure, on the line in the middle. */
    public static Expression largestPressure(
            Expression load, Expression radius, Expression length, Expression modulus) {
        return load.times(modulus)
                .dividedBy(length.times(radius).times(Math.PI))
                .squareRoot();
    }
}
