package longthrow.core.reduce;

import longthrow.core.formula.Expression;

/** What torque and fuel are worth, whatever the engine's size; four-stroke. Heywood (1988), eqs. (2.19), (2.22), (2.24). Coherent SI. */
public final class FourStrokeFigures {
    /** A four-stroke fires every two turns. */
    private static final double RADIANS_PER_CYCLE = 4 * Math.PI;

    private FourStrokeFigures() {}

    /** Mean effective pressure of a torque: 4 pi T / V [Pa]. */
    public static Expression meanEffectivePressure(Expression torque, Expression displacement) {
        return torque.times(RADIANS_PER_CYCLE).dividedBy(displacement);
    }

    /** Fuel for the work done: mass flow over power [kg/J]; 1 g/(kW h) is 1/3.6e9 kg/J. */
    public static Expression specificConsumption(Expression fuelFlow, Expression power) {
        return fuelFlow.dividedBy(power);
    }

    /** Share of the fuel's energy that becomes work. */
    public static Expression efficiency(Expression fuelFlow, Expression power, Expression lowerHeatingValue) {
        return power.dividedBy(fuelFlow.times(lowerHeatingValue));
    }
}
