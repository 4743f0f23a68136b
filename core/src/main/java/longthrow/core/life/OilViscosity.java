package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * Oil by its kinematic viscosity at two temperatures: log10 log10 (v + 0.7) falls straight with log10 T. ASTM D341 (after Walther), for v above 2
 * mm2/s; from memory. Viscosities [m2/s], temperatures [K].
 * @param cool            the lower temperature, 313.15 on most sheets
 * @param coolViscosity   there
 * @param hot             the higher temperature, 373.15 on most sheets
 * @param hotViscosity    there
 */
public record OilViscosity(Expression cool, Expression coolViscosity, Expression hot, Expression hotViscosity) {
    private static final double SQUARE_MILLIMETRE = 1e-6;
    private static final double SHIFT = 0.7;

    /** 40 and 100 degrees Celsius, the two temperatures of data sheets; ISO 3104. */
    public static OilViscosity ofSheet(Expression at40, Expression at100) {
        return new OilViscosity(Expression.constant(313.15), at40, Expression.constant(373.15), at100);
    }

    private static Expression decimal(Expression of) {
        return of.logarithm().dividedBy(Math.log(10));
    }

    private static Expression doubled(Expression viscosity) {
        return decimal(decimal(viscosity.dividedBy(SQUARE_MILLIMETRE).plus(SHIFT)));
    }

    /** B of the line. */
    public Expression slope() {
        return doubled(coolViscosity)
                .minus(doubled(hotViscosity))
                .dividedBy(decimal(hot).minus(decimal(cool)));
    }

    /** A of the line. */
    public Expression intercept() {
        return doubled(coolViscosity).plus(slope().times(decimal(cool)));
    }

    /** Kinematic viscosity at a temperature. */
    public Expression at(Expression temperature) {
        Expression line = intercept().minus(slope().times(decimal(temperature)));
        Expression once = line.times(Math.log(10)).exponential();
        Expression twice = once.times(Math.log(10)).exponential();
        return twice.minus(SHIFT).times(SQUARE_MILLIMETRE);
    }

    /** Dynamic viscosity [Pa s]; the oil's density at that temperature [kg/m3]. */
    public Expression dynamic(Expression temperature, Expression density) {
        return at(temperature).times(density);
    }

    /**
     * Viscosity index up to 100 by procedure A of ASTM D2270: both viscosities at 40 degrees of the standard's two reference oils that have this oil's
     * viscosity at 100 degrees.
     * @param poor L of the standard's table
     * @param good H of the standard's table
     */
    public static Expression index(Expression at40, Expression poor, Expression good) {
        return poor.minus(at40).dividedBy(poor.minus(good)).times(100);
    }
}
