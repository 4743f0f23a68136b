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

    /** One radius for two bodies that bulge towards each other. */
    public static Expression combinedRadius(Expression one, Expression other) {
        return one.times(other).dividedBy(one.plus(other));
    }

    /** Half the width of the touching strip. */
    public static Expression halfWidth(Expression load, Expression radius, Expression length, Expression modulus) {
        return load.times(radius)
                .times(4)
                .dividedBy(length.times(modulus).times(Math.PI))
                .squareRoot();
    }

    /** Largest shear stress, 0.786 half widths below the surface, where flaking starts: 0.300 of the largest pressure. */
    public static Expression largestShear(Expression largestPressure) {
        return largestPressure.times(0.300);
    }
}
