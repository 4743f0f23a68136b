package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.clearance.Motion.Hand;
import longthrow.core.clearance.Motion.Standing;
import org.junit.jupiter.api.Test;

/** A pushrod against plane trigonometry: its foot rides up the way of the follower, and its upper end stays on the circle of the rocker's arm. */
class PushrodMotionTest {
    private static final double FOOT_X = 41e-3;
    private static final double FOOT_Y = 30e-3;
    private static final double LENGTH = 120e-3;
    private static final double ARM = 16.5e-3;
    private static final double LIFT = 5e-3;

    private static double lift(double angle) {
        return LIFT * Math.pow(Math.sin(angle / 2), 2);
    }

    /** By hand: at full lift, 12 degrees from upright and without swing the foot is 5 sin 12 across and 5 cos 12 up. */
    @Test
    void theFootRidesUpTheWayOfItsFollower() {
        double lean = Math.toRadians(12);
        Motion pushrod = Motion.pushrod(
                new Point(FOOT_X, FOOT_Y), lean, Course.of(PushrodMotionTest::lift), Hand.WITH_CRANK, Course.none());
        Standing down = pushrod.standing(0);
        assertThat(down.x()).isCloseTo(FOOT_X, within(1e-12));
        assertThat(down.y()).isCloseTo(FOOT_Y, within(1e-12));
        Standing up = pushrod.standing(Math.PI);
        assertThat(up.x()).isCloseTo(FOOT_X + 1.03956e-3, within(1e-8));
        assertThat(up.y()).isCloseTo(FOOT_Y + 4.89074e-3, within(1e-8));
        assertThat(up.turn()).isCloseTo(lean, within(1e-12));
    }

    /**
     * The upper end hangs on a rocker's arm that lies level at half lift, axis a pushrod's length above. Two circles meet where the end is: law of cosines in the
     * triangle of foot, axis and end. Drawn with the swing of that triangle, the end stays on the arm's circle at every angle, to either hand.
     */
    @Test
    void theUpperEndStaysOnTheCircleOfTheRocker() {
        for (Hand hand : Hand.values()) {
            double way = hand == Hand.WITH_CRANK ? 1 : -1;
            double axisX = FOOT_X + way * ARM;
            double axisY = FOOT_Y + LENGTH + LIFT / 2;
            Course swing = Course.of(angle -> way * swing(FOOT_Y + lift(angle), axisX, axisY, way));
            Motion pushrod =
                    Motion.pushrod(new Point(FOOT_X, FOOT_Y), 0, Course.of(PushrodMotionTest::lift), hand, swing);
            double farthest = 0;
            for (int degrees = 0; degrees < 720; degrees += 7) {
                Standing at = pushrod.standing(Math.toRadians(degrees));
                double endX = at.x() + LENGTH * Math.sin(at.turn());
                double endY = at.y() + LENGTH * Math.cos(at.turn());
                assertThat(Math.hypot(endX - axisX, endY - axisY))
                        .as("at %d degrees", degrees)
                        .isCloseTo(ARM, within(1e-8));
                farthest = Math.max(farthest, Math.abs(at.turn()));
            }
            // an arm that rises 2.5 mm over level moves its end 16.5 - sqrt(16.5^2 - 2.5^2) = 0.19 mm across: 0.0016
            // rad on 120 mm
            assertThat(farthest).isBetween(1.4e-3, 1.8e-3);
        }
    }

    /** Turn of the pushrod from upright towards +x, of the two ways to close the triangle the one beside the axis. */
    private static double swing(double footY, double axisX, double axisY, double way) {
        double across = axisX - FOOT_X;
        double up = axisY - footY;
        double between = Math.hypot(across, up);
        double atFoot = Math.acos((LENGTH * LENGTH + between * between - ARM * ARM) / (2 * LENGTH * between));
        return Math.atan2(across, up) - way * atFoot;
    }
}
