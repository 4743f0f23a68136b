package longthrow.core.clearance;

/**
 * The least gap of a pair over two turns.
 * @param gap     [m]; below 0 minus the depth of penetration, see {@link Sweep}
 * @param angle   crank angle where it is [rad], 0 to 4 pi
 * @param onOne   nearest point of the first body, in the frame of the crank axis; where they overlap the deepest point
 * @param onOther nearest point of the other body; where they overlap the nearest point of the edge to the deepest one
 */
public record Closest(double gap, double angle, Point onOne, Point onOther) {}
