package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A wheel drawn onto a taper by its nut, with a key. The taper holds the wheel, the key only locates it: so the taper is judged alone, and the key tells what
 * breaks when the taper slips. Statics of a cone; Decker, Maschinenelemente, cone joints; from memory. Lengths [m], angles [rad], forces [N].
 * @param meanDiameter of the length of taper in contact
 * @param halfAngle    of the cone, between its axis and its side: tan = (D - d) / 2 / length
 */
public record FlywheelFit(Expression meanDiameter, Expression halfAngle) {
    /**
     * Coefficient of friction of clean dry steel or iron on steel; handbooks give 0.10 to 0.20, and 0.15 is commonly reckoned with; from memory. Oil on the
     * taper brings it to 0.05 to 0.10.
     */
    public static final double DRY = 0.15;

    /** Taken for doubt about {@link #DRY}: half-width, 95 %. */
    public static final double DRY_SPREAD = 0.05;

    /**
     * Torque at which the taper slips [N m], as drawn on: mu F r / (sin a + mu cos a). Once bedded by running, the friction that resisted the drawing-on is
     * gone and it holds more, up to mu F r / sin a; that is not counted.
     * @param clamp    of the nut
     * @param friction coefficient
     */
    public Expression slipTorque(Expression clamp, Expression friction) {
        Expression wedge = halfAngle.sine().plus(friction.times(halfAngle.cosine()));
        return friction.times(clamp).times(meanDiameter.half()).dividedBy(wedge);
    }

    /** Pressure on the cone of that clamp [Pa]. */
    public Expression conePressure(Expression clamp, Expression friction, Expression length) {
        Expression wedge = halfAngle.sine().plus(friction.times(halfAngle.cosine()));
        Expression side = length.dividedBy(halfAngle.cosine());
        return clamp.dividedBy(wedge).dividedBy(meanDiameter.times(Math.PI).times(side));
    }

    /**
     * Torque on the joint [N m] when the crank is jerked: the wheel's share of it is its inertia over that of all that turns.
     * @param jerk    torque of the crank, gas and inertia
     * @param wheel   inertia of the wheel [kg m2]
     * @param allElse inertia of the crank and what turns with it [kg m2]
     */
    public static Expression jointTorque(Expression jerk, Expression wheel, Expression allElse) {
        return jerk.times(wheel).dividedBy(wheel.plus(allElse));
    }

    /**
     * Torque that shears the key, should the taper slip [N m].
     * @param strength in shear [Pa]
     */
    public Expression keyShearTorque(Expression width, Expression length, Expression strength) {
        return strength.times(width).times(length).times(meanDiameter.half());
    }

    /**
     * Torque that crushes the key's side [N m].
     * @param bite     height of key in the shallower of the two ways
     * @param strength in compression, of the softer part [Pa]
     */
    public Expression keyCrushTorque(Expression bite, Expression length, Expression strength) {
        return strength.times(bite).times(length).times(meanDiameter.half());
    }
}
