package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A flat disk or ring of one thickness with a hole, turning. Roark's Formulas for Stress and Strain, section 16.6; Budynas and Nisbett, Shigley's
 * Mechanical Engineering Design, eq. (3-55); from memory. Stresses grow with the square of speed. Magnet, keyway, fins, holes and flaws concentrate them:
 * this is the least there is, never a rating. Lengths [m], stresses [Pa], speeds [rad/s].
 * @param inner   radius of the hole, above 0
 * @param outer   radius
 * @param density [kg/m3]
 * @param poisson ratio
 */
public record RotatingDisk(Expression inner, Expression outer, Expression density, double poisson) {
    private Expression rim(Expression speed) {
        return density.times(speed.squared());
    }

    /** Along the rim at the hole: the largest. */
    public Expression hoopAtBore(Expression speed) {
        Expression squares =
                outer.squared().times(3 + poisson).plus(inner.squared().times(1 - poisson));
        return rim(speed).times(squares).dividedBy(4);
    }

    /** Along the rim at the outside. */
    public Expression hoopAtRim(Expression speed) {
        Expression squares =
                inner.squared().times(3 + poisson).plus(outer.squared().times(1 - poisson));
        return rim(speed).times(squares).dividedBy(4);
    }

    /** Largest outward stress, at {@link #radiusOfLargestRadial}. */
    public Expression largestRadial(Expression speed) {
        return rim(speed).times(outer.minus(inner).squared()).times((3 + poisson) / 8);
    }

    /** Mean of both radii by product. */
    public Expression radiusOfLargestRadial() {
        return inner.times(outer).squareRoot();
    }

    /** Growth of the outer radius [m]. */
    public Expression growth(Expression speed, Expression modulus) {
        return hoopAtRim(speed).times(outer).dividedBy(modulus);
    }

    /** Speed at which the stress at the hole reaches a strength; the fastest a perfect disk could turn. */
    public Expression speedOfStress(Expression strength) {
        return strength.dividedBy(hoopAtBore(Expression.constant(1))).squareRoot();
    }

    /** Thin rim that carries itself: density times rim speed squared; what spoked wheels are reckoned by. Carvill, Mechanical Engineer's Data Handbook, 1.2.7. */
    public static Expression thinRim(Expression density, Expression rimSpeed) {
        return density.times(rimSpeed.squared());
    }

    /** Rim speed at which a thin rim reaches a strength [m/s]. */
    public static Expression rimSpeedOfStress(Expression density, Expression strength) {
        return strength.dividedBy(density).squareRoot();
    }

    /** Disk without a hole: at its centre, both ways; same source. */
    public static Expression solidCentre(Expression density, double poisson, Expression rimSpeed) {
        return thinRim(density, rimSpeed).times((3 + poisson) / 8);
    }

    /** Mean radius ring, for comparison. */
    public Expression asThinRing(Expression speed) {
        return thinRim(density, inner.plus(outer).half().times(speed));
    }
}
