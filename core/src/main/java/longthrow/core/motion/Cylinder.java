package longthrow.core.motion;

import longthrow.core.formula.Expression;

/** The round bore: area [m2] and volume [m3] by diameter and length [m]. */
public final class Cylinder {
    private static final double QUARTER_PI = Math.PI / 4;

    private Cylinder() {}

    /** Area of a circle by its diameter. */
    public static Expression area(Expression diameter) {
        return diameter.squared().times(QUARTER_PI);
    }

    /** Area times length along the axis. */
    public static Expression volume(Expression diameter, Expression length) {
        return area(diameter).times(length);
    }
}
