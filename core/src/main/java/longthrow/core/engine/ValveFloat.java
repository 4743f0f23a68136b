package longthrow.core.engine;

import longthrow.core.formula.Expression;

/** Spring force against the inertia of what it must keep on the lobe: Newton's law at one point of the lift curve. */
public final class ValveFloat {
    private ValveFloat() {}

    /** Load of the spring at a lift [N]. */
    public static Expression springLoad(Expression seatLoad, Expression rate, Expression lift) {
        return rate.times(lift).plus(seatLoad);
    }

    /** Force it takes to keep the mass on the lobe [N]; deceleration by angle squared [m/rad2], speed of that angle [rad/s]. */
    public static Expression inertiaLoad(Expression mass, Expression deceleration, Expression speed) {
        return mass.times(deceleration).times(speed.squared());
    }

    /** Speed at which the spring just keeps the mass on the lobe [rad/s], of the shaft whose angle the deceleration is by. */
    public static Expression limitingSpeed(Expression springLoad, Expression mass, Expression deceleration) {
        return springLoad.dividedBy(mass.times(deceleration)).squareRoot();
    }
}
