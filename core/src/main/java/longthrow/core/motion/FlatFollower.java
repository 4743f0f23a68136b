package longthrow.core.motion;

import longthrow.core.formula.Expression;

/** A flat follower square to its travel. Lengths [m], derivatives by cam angle [m/rad, m/rad2]. Norton, Design of Machinery, section 8.6; from memory. */
public final class FlatFollower {
    private FlatFollower() {}

    /** Contact beside the cam axis: the follower must reach at least this far. */
    public static double contactOffset(double slope) {
        return slope;
    }

    /**
     * Radius of curvature of the cam at the contact; below 0 the cam cannot be cut for this follower.
     * @param baseRadius radius of the base circle
     */
    public static double curvatureRadius(double baseRadius, double lift, double bend) {
        return baseRadius + lift + bend;
    }

    /** The same as a formula. */
    public static Expression curvatureRadius(Expression baseRadius, Expression lift, Expression bend) {
        return Expression.sum(baseRadius, lift, bend);
    }
}
