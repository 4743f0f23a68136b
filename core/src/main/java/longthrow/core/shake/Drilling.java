package longthrow.core.shake;

import longthrow.core.formula.Expression;

/**
 * Round holes in a counterweight: how much moment about the crank axis they take off, and how deep they must be. Volumes and centres of
 * cylinder and cone, worked out here. Lengths [m], moments [kg m], densities [kg/m3].
 *
 * <p>Every hole of a plan lies at the same angle to the line from crankpin through the crank axis, half of them on each side, so that what they take off
 * sideways cancels. A hole refilled with heavier metal counts with the difference of the densities, and adds.
 *
 * @param count    holes, both sides together
 * @param diameter of the drill
 * @param aside    angle of each hole to the middle of the counterweight, seen from the crank axis [rad]
 * @param radius   of the hole's centre for one parallel to the crank axis; of the rim it starts from for one that points at the axis
 * @param density  of what is taken out
 */
public record Drilling(Expression count, Expression diameter, Expression aside, Expression radius, Expression density) {
    /** Half the angle of the point of a twist drill [rad], 118 degrees in all; ISO 5419; from memory. */
    public static final double HALF_POINT = Math.toRadians(59);

    /** Length of the drill's point. */
    public Expression point() {
        return diameter.half().dividedBy(Math.tan(HALF_POINT));
    }

    /** Mass per depth of all holes, as far as it counts along the middle line. */
    private Expression perDepth() {
        return diameter.squared().times(Math.PI / 4).times(density).times(count).times(aside.cosine());
    }

    /** Moment taken off by holes parallel to the crank axis; depth to the full diameter, the point below it. */
    public Expression momentParallel(Expression depth) {
        return perDepth().times(radius).times(depth.plus(point().dividedBy(3)));
    }

    /** The depth for a wanted moment; below 0 when the point alone takes more. */
    public Expression depthParallel(Expression moment) {
        return moment.dividedBy(perDepth().times(radius)).minus(point().dividedBy(3));
    }

    /** Moment taken off by holes from the rim towards the crank axis. */
    public Expression momentRadial(Expression depth) {
        Expression cylinder = depth.times(radius.minus(depth.half()));
        Expression pointCentre = radius.minus(depth).minus(point().dividedBy(4));
        return perDepth().times(cylinder.plus(point().dividedBy(3).times(pointCentre)));
    }

    /** The depth for a wanted moment; not a number where the rim has not that much to give. */
    public Expression depthRadial(Expression moment) {
        Expression third = point().dividedBy(3);
        Expression reach = radius.minus(third);
        Expression wanted = moment.dividedBy(perDepth()).minus(third.times(radius.minus(point().dividedBy(4))));
        return reach.minus(reach.squared().minus(wanted.times(2)).squareRoot());
    }

    /**
     * Wall between the tip of the drill and what lies behind.
     * @param room thickness of the web for parallel holes; rim to the nearest bore for holes towards the axis
     */
    public Expression wallLeft(Expression depth, Expression room) {
        return room.minus(depth).minus(point());
    }

    /** Metal left beside a parallel hole to the outer rim of the counterweight. */
    public Expression rimLeft(Expression rim) {
        return rim.minus(radius).minus(diameter.half());
    }
}
