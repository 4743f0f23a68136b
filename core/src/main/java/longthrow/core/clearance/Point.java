package longthrow.core.clearance;

/**
 * A point of the plane [m].
 * @param x across the cylinder, positive to the side of the crank pin at +90 degrees
 * @param y along the cylinder, positive towards the head
 */
public record Point(double x, double y) {
    public Point {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException(
                    "a point is at " + x + ", " + y + " m; both coordinates must be finite numbers, in metres");
        }
    }

    /** At a distance from another point, in the direction of an angle [rad] from +y towards +x. */
    static Point polar(Point centre, double radius, double angle) {
        return new Point(centre.x + radius * Math.sin(angle), centre.y + radius * Math.cos(angle));
    }
}
