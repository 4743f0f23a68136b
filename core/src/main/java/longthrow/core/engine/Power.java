package longthrow.core.engine;

import longthrow.core.formula.Expression;

/** Torque, speed and power: P = T times angular speed. Torque [N m], speed [rad/s], power [W]. */
public final class Power {
    private Power() {}

    /** Power of a torque at a speed. */
    public static Expression power(Expression torque, Expression speed) {
        return torque.times(speed);
    }

    /** The torque behind a power at a speed, speed not zero. */
    public static Expression torque(Expression power, Expression speed) {
        return power.dividedBy(speed);
    }
}
