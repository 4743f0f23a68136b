package longthrow.core.shake;

import longthrow.core.formula.Expression;
import longthrow.core.motion.SliderCrank;

/**
 * Force of the moving parts on the frame at steady speed, exact, offsets included. Gas pushes head and crank apart equally and is not in it. Forces [N],
 * speeds of the crank [rad/s]. A rod that is not its two masses adds a couple, no force.
 * @param crank         throw, rod and offset
 * @param reciprocating piston assembly and small end of the rod [kg]
 * @param rotating      big end of the rod and crankpin side of the crank, at the crank radius [kg]
 * @param counterweight opposite, at the crank radius [kg]
 */
public record ShakingForce(SliderCrank crank, Expression reciprocating, Expression rotating, Expression counterweight) {
    /** With the counterweight that makes this balance factor. */
    public static ShakingForce ofFactor(
            SliderCrank crank, Expression reciprocating, Expression rotating, Expression factor) {
        return new ShakingForce(crank, reciprocating, rotating, rotating.plus(factor.times(reciprocating)));
    }

    private Expression turning(Expression speed) {
        return rotating.minus(counterweight).times(crank.crankRadius()).times(speed.squared());
    }

    /** Along the cylinder, towards the head positive. */
    public Expression along(Expression angle, Expression speed) {
        Expression piston = reciprocating.times(crank.travelBend(angle)).times(speed.squared());
        return piston.plus(turning(speed).times(angle.cosine()));
    }

    /** Across the cylinder, towards the crank pin at +90 degrees positive. */
    public Expression across(Expression angle, Expression speed) {
        return turning(speed).times(angle.sine());
    }

    /** Amplitude of the primary force of the reciprocating mass, no counterweight. */
    public Expression primary(Expression speed) {
        return reciprocating.times(crank.crankRadius()).times(speed.squared());
    }

    /** Amplitude of the secondary force by its first term: primary times crank radius over rod. No counterweight touches it. */
    public Expression secondary(Expression speed) {
        return primary(speed).times(ratio());
    }

    /**
     * Amplitude of the second order with two more terms of its series, l + l3/4 + 15 l5/128 for l = crank radius over rod; no offset. What is left
     * is below 3e-5 of the primary for rods of three crank radii and more. Taylor, vol. 2; from memory, held against a Fourier sum in the tests.
     */
    public Expression secondaryRefined(Expression speed) {
        Expression square = ratio().squared();
        Expression series = square.times(square.times(15.0 / 128).plus(0.25)).plus(1);
        return secondary(speed).times(series);
    }

    private Expression ratio() {
        return crank.crankRadius().dividedBy(crank.rodLength());
    }
}
