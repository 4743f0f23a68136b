package longthrow.core.engine;

import longthrow.core.formula.Expression;

/** A ball on a flat or on another ball, both elastic: Johnson, Contact Mechanics (1985), chapter 4. Stresses and moduli [Pa], lengths [m]. */
public final class PointContact {
    private PointContact() {}

    /**
     * Radius of the touching circle.
     * @param radius  of the ball; for two balls see {@link LineContact#combinedRadius}
     * @param modulus E* of {@link LineContact#effectiveModulus}
     */
    public static Expression contactRadius(Expression load, Expression radius, Expression modulus) {
        return load.times(radius).times(0.75).dividedBy(modulus).power(1.0 / 3);
    }

    /** Largest pressure, in the middle. */
    public static Expression largestPressure(Expression load, Expression radius, Expression modulus) {
        Expression circle = contactRadius(load, radius, modulus).squared().times(Math.PI);
        return load.times(1.5).dividedBy(circle);
    }

    /** How much nearer the bodies come. */
    public static Expression approach(Expression load, Expression radius, Expression modulus) {
        return contactRadius(load, radius, modulus).squared().dividedBy(radius);
    }
}
