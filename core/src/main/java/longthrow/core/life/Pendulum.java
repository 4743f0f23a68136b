package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A rod swung like a pendulum from the top of each bore in turn: tells where its centre of mass is and how hard it is to turn. Compound
 * pendulum, T = 2 pi sqrt((k2 + h2) / (g h)); Khurmi and Gupta, Theory of Machines, Example 15.17; from memory. Small swings: 5 degrees each way lengthen
 * the time by 0.05 % (a2/16), 10 degrees by 0.2 %. The closed form for h follows from h1 + h2 = span and k the same in both.
 * @param mass      of the rod [kg]
 * @param span      between the two edges it swings on: length and half of each bore [m]
 * @param smallTime of one swing there and back, hung by the small end [s]
 * @param bigTime   hung by the big end [s]
 * @param gravity   of the place [m/s2]
 */
public record Pendulum(Expression mass, Expression span, Expression smallTime, Expression bigTime, Expression gravity) {
    /** Standard acceleration of free fall [m/s2], ISO 80000-3; between the poles and the equator it is 0.3 % more or less. */
    public static final double STANDARD_GRAVITY = 9.80665;

    /** Length of the simple pendulum that swings as slowly. */
    private Expression equivalent(Expression time) {
        return gravity.times(time.dividedBy(2 * Math.PI).squared());
    }

    /** Centre of mass below the edge of the small end's bore. */
    public Expression belowSmallEdge() {
        Expression small = equivalent(smallTime);
        Expression big = equivalent(bigTime);
        return span.times(big.minus(span)).dividedBy(small.plus(big).minus(span.times(2)));
    }

    /** Square of the radius of gyration about the centre of mass. */
    private Expression gyrationSquared() {
        Expression below = belowSmallEdge();
        return equivalent(smallTime).minus(below).times(below);
    }

    /** Radius of gyration about the centre of mass. */
    public Expression gyration() {
        return gyrationSquared().squareRoot();
    }

    /** Moment of inertia about the centre of mass. */
    public Expression inertia() {
        return mass.times(gyrationSquared());
    }

    /**
     * The rod as two masses.
     * @param smallBore diameter of the bore it swung on
     */
    public RodMass rod(Expression length, Expression smallBore) {
        return new RodMass(mass, length, length.plus(smallBore.half()).minus(belowSmallEdge()));
    }
}
