package longthrow.core.reduce;

import longthrow.core.formula.Expression;

/**
 * A body that turns: torque, power and what it takes to speed it up. Rigid-body dynamics; inertia [kg m2], speed [rad/s], acceleration [rad/s2], torque [N m],
 * power [W]. Each formula is written once, as an expression, so that doubt follows by its gradient.
 */
public final class Rotation {
    private Rotation() {}

    /** Torque that speeds an inertia up: I d(omega)/dt. */
    public static Expression torque(Expression inertia, Expression acceleration) {
        return inertia.times(acceleration);
    }

    /** Power of a torque at a speed. */
    public static Expression power(Expression torque, Expression speed) {
        return torque.times(speed);
    }

    /** Inertia of a tube about its axis, walls square to it: m (r_inner^2 + r_outer^2) / 2; a disc has no inner radius. */
    public static Expression inertiaOfTube(Expression mass, Expression innerRadius, Expression outerRadius) {
        return mass.times(innerRadius.squared().plus(outerRadius.squared())).half();
    }

    /** Mass of a tube of a material: density pi (r_outer^2 - r_inner^2) length. */
    public static Expression massOfTube(
            Expression density, Expression innerRadius, Expression outerRadius, Expression length) {
        return density.times(outerRadius.squared().minus(innerRadius.squared()))
                .times(length)
                .times(Math.PI);
    }

    /** Mass that would resist as much at the rim: I / r^2 [kg]. */
    public static Expression massAtRim(Expression inertia, Expression radius) {
        return inertia.dividedBy(radius.squared());
    }

    /**
     * What turns with the engine and what turns with the drum, seen at the drum: I_drum + I_engine ratio^2.
     * @param ratio engine speed over drum speed
     */
    public static Expression inertiaAtDrum(Expression drum, Expression engine, Expression ratio) {
        return drum.plus(engine.times(ratio.squared()));
    }

    /** The same seen at the engine: I_drum / ratio^2 + I_engine. */
    public static Expression inertiaAtEngine(Expression drum, Expression engine, Expression ratio) {
        return drum.dividedBy(ratio.squared()).plus(engine);
    }

    /** Speed after a time at constant power: (speed0^2 + 2 P t / I)^(1/2) [rad/s]. */
    public static Expression speedAtConstantPower(
            Expression inertia, Expression power, Expression startSpeed, Expression time) {
        return startSpeed
                .squared()
                .plus(power.times(time).times(2).dividedBy(inertia))
                .squareRoot();
    }

    /** Torque of a force that pulls square to an arm. */
    public static Expression torqueAtArm(Expression force, Expression arm) {
        return force.times(arm);
    }
}
