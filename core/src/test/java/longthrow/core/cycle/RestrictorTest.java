package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.cycle.Restrictor.Edge;
import org.junit.jupiter.api.Test;

class RestrictorTest {
    /** A quarter of the pipe: Weisbach 0.632 at 0.2 and 0.643 at 0.3, half-way between. */
    @Test
    void aSharpPlateContractsAndARoundOneDoesNot() {
        assertThat(Restrictor.coefficient(Edge.THIN, 0.25).value()).isCloseTo(0.6375, within(1e-9));
        assertThat(Restrictor.coefficient(Edge.THICK, 0.25).value()).isCloseTo(0.82, within(1e-9));
        assertThat(Restrictor.coefficient(Edge.THICK, 0.95).value())
                .isCloseTo(0.946, within(1e-9)); // as little as a thin one
        assertThat(Restrictor.coefficient(Edge.ROUNDED, 0.25).value()).isCloseTo(0.97, within(1e-9));
        assertThat(Restrictor.coefficient(Edge.NOT_SAID, 0.25).low()).isCloseTo(0.6075, within(1e-9));
        assertThat(Restrictor.coefficient(Edge.NOT_SAID, 0.25).high()).isEqualTo(1);
        for (Edge edge : Edge.values()) {
            for (double opening = 0; opening <= 1; opening += 0.05) {
                var found = Restrictor.coefficient(edge, Math.min(1, opening));
                assertThat(found.value()).isBetween(found.low(), found.high());
                assertThat(found.high()).isLessThanOrEqualTo(1);
                assertThat(found.source()).isNotBlank();
            }
        }
    }

    /** Two alike cost twice the pressure: the area of one over root two, the diameter over the fourth root of two. */
    @Test
    void lossesOfTwoInARowAddUp() {
        assertThat(Restrictor.inARow(0.020, 0.020)).isCloseTo(0.020 / 1.189207115, within(1e-9));
        assertThat(Restrictor.inARow(0.010, 0.030)).isCloseTo(0.010 * Math.pow(1 + 1 / 81.0, -0.25), within(1e-12));
    }
}
