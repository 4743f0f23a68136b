package longthrow.core.engine;

import longthrow.core.formula.Expression;
import longthrow.core.motion.Cylinder;

/**
 * Helical compression spring of round wire. Budynas and Nisbett, Shigley's Mechanical Engineering Design, eqs. (10-7), (10-9), (10-25); Wahl,
 * Mechanical Springs. Lengths [m], loads [N], stresses [Pa].
 * @param wire         diameter
 * @param meanDiameter coil diameter between wire centres
 * @param activeCoils  coils that twist
 * @param totalCoils   with the dead end coils
 */
public record CoilSpring(Expression wire, Expression meanDiameter, Expression activeCoils, Expression totalCoils) {
    /** Load per length. */
    public Expression rate(Expression shearModulus) {
        return wire.power(4)
                .times(shearModulus)
                .dividedBy(meanDiameter.power(3).times(activeCoils).times(8));
    }

    /** Spring index: mean diameter over wire. */
    public Expression index() {
        return meanDiameter.dividedBy(wire);
    }

    /** Wahl's factor for the curvature of the wire and the direct shear. */
    public Expression wahlFactor() {
        Expression c = index();
        Expression bending = c.times(4).minus(1).dividedBy(c.times(4).minus(4));
        return bending.plus(Expression.constant(0.615).dividedBy(c));
    }

    /** Largest shear stress, Wahl's factor in it. */
    public Expression shearStress(Expression load) {
        return wahlFactor()
                .times(load)
                .times(meanDiameter)
                .times(8)
                .dividedBy(wire.power(3).times(Math.PI));
    }

    /** Mass of the coils that move. */
    public Expression activeMass(Expression density) {
        return Cylinder.volume(wire, meanDiameter.times(activeCoils).times(Math.PI))
                .times(density);
    }

    /** Lowest natural frequency with both ends held [Hz]. */
    public Expression surgeFrequency(Expression shearModulus, Expression density) {
        return rate(shearModulus).dividedBy(activeMass(density)).squareRoot().half();
    }

    /** Pressed until the coils touch, ends ground flat. */
    public Expression solidLength() {
        return totalCoils.times(wire);
    }
}
