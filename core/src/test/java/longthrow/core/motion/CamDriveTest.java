package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Timing of a camshaft in the head against a chain laid round two circles. Crank sprocket at the origin, cam sprocket above it; seen from the side on which both
 * turn clockwise the chain runs down on the right, from cam to crank, and that run pulls. The crank is held, so the link at its lowest point is; what the
 * right-hand way from there to the top of the cam sprocket gains in length, the cam must pay out, turning clockwise: forward.
 */
class CamDriveTest {
    private static final int POINTS = 200_000;

    private record Point(double x, double y) {}

    private static List<Point> rightHalf(double height, double radius) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= POINTS; i++) {
            double angle = -Math.PI / 2 + Math.PI * i / POINTS;
            points.add(new Point(radius * Math.cos(angle), height + radius * Math.sin(angle)));
        }
        return points;
    }

    /** Length of a tight string from the lowest point of the crank sprocket, on the right, to the top of the cam sprocket: the hull of both half circles. */
    private static double pullingWay(double height, double crankRadius, double camRadius) {
        List<Point> all = rightHalf(0, crankRadius);
        all.addAll(rightHalf(height, camRadius));
        List<Point> hull = new ArrayList<>();
        for (Point p : all) {
            while (hull.size() > 1 && turn(hull.get(hull.size() - 2), hull.get(hull.size() - 1), p) <= 0) {
                hull.remove(hull.size() - 1);
            }
            hull.add(p);
        }
        double length = 0;
        for (int i = 1; i < hull.size(); i++) {
            length += Math.hypot(
                    hull.get(i).x() - hull.get(i - 1).x(),
                    hull.get(i).y() - hull.get(i - 1).y());
        }
        return length;
    }

    private static double turn(Point a, Point b, Point c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    }

    private static double formula(double rise, double diameter) {
        return Formula.of("shift", Timing.headShift(Expression.constant(rise), Expression.constant(diameter)))
                .at();
    }

    /** Cam of 30 teeth over crank of 15: 60 and 30 mm; the pulling run leans by asin(15 / 180) = 4.8 degrees, its cosine is 0.9965. */
    @ParameterizedTest
    @CsvSource({"-1.0", "-0.3", "0.28", "0.8"})
    void aHeadThatRisesTurnsTheCamForwardAndOneThatComesDownBackward(double rise) {
        double cam = (pullingWay(180 + rise, 15, 30) - pullingWay(180, 15, 30)) / 30;
        double crank = 2 * cam;
        assertThat(Math.signum(crank)).isEqualTo(Math.signum(rise));
        double lean = Math.asin(15.0 / 180);
        assertThat(crank).isCloseTo(formula(rise, 60) * Math.cos(lean), within(2e-5 * Math.abs(rise)));
        assertThat(crank / formula(rise, 60)).isBetween(0.99, 1.0);
    }

    /** Half a millimetre off the head, 60 mm: 4 x 0.5 / 60 = 1/30 rad, 1.91 degrees late. */
    @Test
    void halfAMillimetreOnSixtyIsNearlyTwoDegrees() {
        assertThat(Math.toDegrees(formula(-0.5, 60))).isCloseTo(-1.9099, within(1e-4));
    }
}
