package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A stress that swings about a mean: how far from breaking in the long run. Budynas and Nisbett, Shigley's Mechanical Engineering Design, section
 * 6-12; Dowling, Mechanical Behavior of Materials, for Morrow and for Smith, Watson and Topper; from memory. All [Pa]; factors are by how much both parts
 * may grow together.
 * @param alternating half the swing, 0 and up, stress concentration in it
 * @param mean        midway; where it squeezes it is taken as none, which is on the safe side
 */
public record MeanStress(Expression alternating, Expression mean) {
    /** By the two ends of the swing. */
    public static MeanStress between(Expression least, Expression most) {
        return new MeanStress(most.minus(least).half(), most.plus(least).half());
    }

    private Expression pulling() {
        return Expression.max(mean, Expression.constant(0));
    }

    private static Expression one() {
        return Expression.constant(1);
    }

    /** Modified Goodman: a straight line from the endurance limit to the ultimate strength. What this product judges by. */
    public Expression goodman(Expression endurance, Expression ultimate) {
        return one().dividedBy(alternating.dividedBy(endurance).plus(pulling().dividedBy(ultimate)));
    }

    /** Gerber: a parabola, through the middle of test results; 2 / (A + sqrt(A2 + 4 B2)) solves n A + (n B)2 = 1. */
    public Expression gerber(Expression endurance, Expression ultimate) {
        Expression a = alternating.dividedBy(endurance);
        Expression b = pulling().dividedBy(ultimate);
        return Expression.constant(2)
                .dividedBy(a.plus(a.squared().plus(b.squared().times(4)).squareRoot()));
    }

    /** ASME: an ellipse from the endurance limit to the yield strength. */
    public Expression elliptic(Expression endurance, Expression yield) {
        Expression sum = alternating
                .dividedBy(endurance)
                .squared()
                .plus(pulling().dividedBy(yield).squared());
        return one().dividedBy(sum.squareRoot());
    }

    /** Soderberg: a straight line to the yield strength. */
    public Expression soderberg(Expression endurance, Expression yield) {
        return goodman(endurance, yield);
    }

    /** Langer: against yielding in the first turn. */
    public Expression yielding(Expression yield) {
        return yield.dividedBy(alternating.plus(mean.absolute()));
    }

    /** The swing without mean that does as much harm, by Goodman; below 0 when the mean alone is past the ultimate strength. */
    public Expression reversed(Expression ultimate) {
        return alternating.dividedBy(one().minus(pulling().dividedBy(ultimate)));
    }

    /** The same by Morrow, with the true strength at fracture. */
    public Expression reversedMorrow(Expression fracture) {
        return reversed(fracture);
    }

    /** The same by Smith, Watson and Topper. */
    public Expression reversedTopper() {
        return pulling().plus(alternating).times(alternating).squareRoot();
    }
}
