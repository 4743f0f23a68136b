package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GapFitTest {
    /** Gap 8 mm less 4 mm (1 - cos(angle / 2)): known at every angle. */
    private static final Pair PAIR = Pair.of(
            Body.of("stop", Outline.circle(new Point(0, -5e-3), 5e-3), Body.Depth.throughout(), Motion.fixed()),
            Body.of(
                    "valve",
                    Outline.circle(new Point(0, 5e-3), 5e-3),
                    Body.Depth.throughout(),
                    Motion.valve(new Point(0, 10e-3), 0, Course.of(a -> 4e-3 * (1 - Math.cos(a / 2))))));

    private static double gap(double angle) {
        return 10e-3 - 4e-3 * (1 - Math.cos(angle / 2));
    }

    private static List<GapFit.Reading> read(double shift, double phase, double... errors) {
        List<GapFit.Reading> readings = new ArrayList<>();
        for (int i = 0; i < errors.length; i++) {
            double angle = 5 + i * 0.5;
            readings.add(new GapFit.Reading(angle, gap(angle - phase) + shift + errors[i], 0.05e-3));
        }
        return readings;
    }

    @Test
    void shiftAndPhaseThatWereMadeAreFound() {
        GapFit fit = GapFit.of(PAIR, read(0.2e-3, 0.05, 0, 0, 0, 0, 0, 0), GapFit.Freely.SHIFT_AND_PHASE);
        assertThat(fit.shift()).isCloseTo(0.2e-3, within(1e-7));
        assertThat(fit.phase()).isCloseTo(0.05, within(1e-5));
        assertThat(fit.chiSquared()).isLessThan(1e-3);
        assertThat(fit.freedom()).isEqualTo(4);
    }

    /** Mean of the errors is the shift, doubt 0.05/sqrt 4; residuals by hand; chi-squared 10 of 3 degrees of freedom: 0.0186 (tables). */
    @Test
    void disagreementIsReported() {
        double e = 0.05e-3 * Math.sqrt(2.5);
        GapFit fit = GapFit.of(PAIR, read(0, 0, e, -e, e, -e), GapFit.Freely.SHIFT);
        assertThat(fit.shift()).isCloseTo(0, within(1e-8));
        assertThat(fit.shiftDoubt()).isCloseTo(0.025e-3, within(1e-12));
        assertThat(fit.chiSquared()).isCloseTo(10, within(0.01));
        assertThat(fit.chance()).isCloseTo(0.0186, within(0.0002));
    }

    @Test
    void tooFewReadingsAreRefused() {
        assertThatThrownBy(() -> GapFit.of(PAIR, read(0, 0, 0), GapFit.Freely.SHIFT_AND_PHASE))
                .hasMessageContaining("1 readings");
        assertThatThrownBy(() -> new GapFit.Reading(0, 1e-3, 0)).hasMessageContaining("above 0");
    }
}
