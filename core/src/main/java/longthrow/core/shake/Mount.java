package longthrow.core.shake;

import longthrow.core.formula.Expression;

/**
 * Engine on its mount as one mass on one spring, in one direction: how far it moves and how much of the force goes through. Den Hartog, Mechanical
 * Vibrations, chapter 2; from memory. Real mounts move in six ways at once, so this tells where the trouble lies, not its last millimetre.
 * @param mass      that moves: the engine and what is bolted to it [kg]
 * @param stiffness of all mounts together in that direction [N/m]
 * @param damping   share of critical damping, 0 and up; rubber has a few hundredths
 */
public record Mount(Expression mass, Expression stiffness, Expression damping) {
    /** Natural angular frequency [rad/s]: the crank speed at which the primary force shakes worst. */
    public Expression naturalFrequency() {
        return stiffness.dividedBy(mass).squareRoot();
    }

    private Expression dampingTerm(Expression frequency) {
        return damping.times(2).times(frequency).dividedBy(naturalFrequency()).squared();
    }

    private Expression opposition(Expression frequency) {
        Expression one = Expression.constant(1);
        Expression spring = one.minus(frequency.dividedBy(naturalFrequency()).squared());
        return spring.squared().plus(dampingTerm(frequency));
    }

    /**
     * Amplitude of the movement [m], half of peak to peak.
     * @param force     amplitude of the shaking force [N]
     * @param frequency of that force [rad/s]: crank speed for the primary, twice that for the secondary
     */
    public Expression amplitude(Expression force, Expression frequency) {
        return force.dividedBy(stiffness).dividedBy(opposition(frequency).squareRoot());
    }

    /** Share of the force's amplitude that reaches the frame; above 1 up to the square root of 2 times the natural frequency. */
    public Expression transmitted(Expression frequency) {
        return dampingTerm(frequency).plus(1).dividedBy(opposition(frequency)).squareRoot();
    }
}
