package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A gap that may be left open from some value on is told exactly below it, and never for more than it is: the sweep leaves out what it shows to be wide enough. */
class OpenGapTest {
    private static final int ASKED = 400;
    private static final double WIDEST = 20e-3;
    private static final double CLOSE = 1e-6; // depths are told to half of it

    static java.util.stream.IntStream numbers() {
        return java.util.stream.IntStream.range(0, 60).filter(i -> i % 10 != 7); // those share no depth
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void whatIsLeftOpenIsNoLessThanAskedAndNoMoreThanThere(int number) {
        PairGap open = Specimen.gapOf(number);
        PairGap whole = Specimen.gapOf(number);
        Random random = new Random(number);
        for (int k = 0; k < ASKED; k++) {
            double angle = 4 * Math.PI * random.nextDouble();
            double exact = whole.at(angle);
            double enough = WIDEST * (random.nextDouble() - 0.4);
            if (exact <= 0 && enough >= 0) {
                continue; // asked only of what is surely apart
            }
            open.place(angle);
            double told = open.gap(enough, true);
            assertThat(told).as("at " + angle + ", enough " + enough).isLessThanOrEqualTo(exact + CLOSE);
            if (exact < enough) {
                assertThat(told).as("at " + angle + ", enough " + enough).isCloseTo(exact, within(CLOSE));
            } else {
                assertThat(told).isGreaterThanOrEqualTo(enough - CLOSE);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void stepByStepTheLeastIsNotMissed(int number) {
        PairGap open = Specimen.gapOf(number);
        PairGap whole = Specimen.gapOf(number);
        double least = Double.POSITIVE_INFINITY;
        double exact = Double.POSITIVE_INFINITY;
        for (int k = 0; k < ASKED; k++) {
            double angle = 4 * Math.PI * k / ASKED;
            least = Math.min(least, open.nextNear(angle, least));
            exact = Math.min(exact, whole.at(angle));
        }
        assertThat(least).isCloseTo(exact, within(CLOSE));
    }
}
