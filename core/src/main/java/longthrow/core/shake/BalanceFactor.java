package longthrow.core.shake;

import longthrow.core.formula.Expression;

/**
 * Balance factor: share of the reciprocating mass that the counterweight balances, after it has balanced all that rotates. Masses [kg], those of
 * the crank at the crank radius.
 */
public final class BalanceFactor {
    private BalanceFactor() {}

    /**
     * By the bob weight with which the bare crank lies still in every position on knife edges or rollers.
     * @param bobWeight hung on the crankpin
     * @param rotating  what of the rod goes round: its big end
     */
    public static Expression ofBobWeight(Expression bobWeight, Expression rotating, Expression reciprocating) {
        return bobWeight.minus(rotating).dividedBy(reciprocating);
    }

    /** The bob weight to hang for a wanted factor. */
    public static Expression bobWeight(Expression factor, Expression rotating, Expression reciprocating) {
        return rotating.plus(factor.times(reciprocating));
    }

    /** What the factor becomes when parts are changed and the crank is left as it is. */
    public static Expression afterChange(Expression factor, Weights before, Weights after) {
        return ofBobWeight(
                bobWeight(factor, before.rotating, before.reciprocating), after.rotating, after.reciprocating);
    }

    /**
     * What must come off the counterweight to bring the factor down, or go on where it is below 0 [kg m].
     * @param radius of the crank [m]
     */
    public static Expression momentToRemove(
            Expression factor, Expression wanted, Expression reciprocating, Expression radius) {
        return factor.minus(wanted).times(reciprocating).times(radius);
    }

    /**
     * The factor once a moment has been taken off the counterweight.
     * @param moment removed [kg m]; below 0 when added, or taken off beside the crankpin
     */
    public static Expression afterRemoval(
            Expression factor, Expression moment, Expression reciprocating, Expression radius) {
        return factor.minus(moment.dividedBy(reciprocating.times(radius)));
    }

    /**
     * Moving parts of one engine.
     * @param rotating      big end of the rod
     * @param reciprocating piston assembly and small end of the rod
     */
    public record Weights(Expression rotating, Expression reciprocating) {}
}
