package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PassageTest {
    /** Opens at 340 degrees, shuts at 600. */
    private static double triangle(double angle) {
        double degrees = Math.toDegrees(angle);
        return Math.max(0, 130 - Math.abs(degrees - 470)) * 1e-6;
    }

    @Test
    void itIsReadStraightBetweenItsPlacesAndRepeats() {
        Passage passage = Passage.of(PassageTest::triangle, angle -> 0.5 * triangle(angle));
        for (double degrees : new double[] {341, 400.25, 470, 533.7}) {
            double angle = Math.toRadians(degrees);
            assertThat(passage.at(angle, true)).isCloseTo(triangle(angle), within(1e-12));
            assertThat(passage.at(angle, false)).isCloseTo(0.5 * triangle(angle), within(1e-12));
            assertThat(passage.at(angle - 8 * Math.PI, true)).isCloseTo(triangle(angle), within(1e-12));
        }
        assertThat(passage.at(0.3, true)).isZero();
        assertThat(Math.toDegrees(passage.opens())).isCloseTo(340, within(1e-9));
        assertThat(Math.toDegrees(passage.closes())).isCloseTo(600, within(1e-9));
    }

    @Test
    void oneThatIsOpenOverFiringTopCentreShutsAfterIt() {
        Passage passage = Passage.of(
                angle -> Math.toDegrees(angle) < 20 || Math.toDegrees(angle) > 700 ? 1e-4 : 0,
                angle -> Math.toDegrees(angle) < 20 || Math.toDegrees(angle) > 700 ? 1e-4 : 0);
        assertThat(Math.toDegrees(passage.closes() - passage.opens())).isCloseTo(40, within(1.01));
    }

    @Test
    void whatNoValveDoesIsRefused() {
        assertThatThrownBy(() -> Passage.of(angle -> 1e-4, angle -> 1e-4)).hasMessageContaining("shut somewhere");
        assertThatThrownBy(() -> Passage.of(angle -> 0, angle -> 0)).hasMessageContaining("open somewhere");
        assertThatThrownBy(() -> Passage.of(angle -> -1e-4, angle -> 0)).hasMessageContaining("0 or above");
    }
}
