package longthrow.core.motion;

import java.util.Arrays;

/** The lift table of acceptance case S3 as its interpolating periodic cubic spline, for tests of other packages. */
public final class AcceptanceLift {
    private final SmoothingSpline curve;

    public AcceptanceLift() {
        double[] deviations = new double[36];
        Arrays.fill(deviations, 0.01);
        curve = SmoothingSplineValidationTest.pellowdene(deviations);
    }

    /** Lift at a crank angle from the peak [m]. */
    public double at(double angle) {
        return 1e-3 * curve.at(angle);
    }

    /** Its second derivative [m/rad2]. */
    public double bend(double angle) {
        return 1e-3 * curve.bend(angle);
    }
}
