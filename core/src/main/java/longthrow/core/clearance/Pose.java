package longthrow.core.clearance;

/** Where a body's frame stands and how fast it moves with the crank angle. Belongs to one thread. */
final class Pose {
    /** Origin of the frame [m]. */
    double x;

    double y;
    /** Cosine and sine of its turn from +y towards +x. */
    double c;

    double s;
    /** Change of the origin with the crank angle [m/rad]. */
    double vx;

    double vy;
    /** Change of the turn with the crank angle. */
    double w;

    void turn(double angle) {
        c = Math.cos(angle);
        s = Math.sin(angle);
    }

    double worldX(double px, double py) {
        return x + c * px + s * py;
    }

    double worldY(double px, double py) {
        return y - s * px + c * py;
    }
}
