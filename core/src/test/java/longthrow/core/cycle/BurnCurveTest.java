package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Properties of the burn curve over random ones; its figures are in {@link CycleFormulaValidationTest}. */
class BurnCurveTest {
    static List<BurnCurve> fiveHundredCurves() {
        SplittableRandom random = new SplittableRandom(20261127);
        return IntStream.range(0, 500)
                .mapToObj(k -> new BurnCurve(
                        random.nextDouble(2, 9),
                        random.nextDouble(0.1, 5),
                        random.nextDouble(-1, 0.5),
                        random.nextDouble(0.3, 2)))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("fiveHundredCurves")
    void angleIsTheInverseOfShareAndRateItsSlope(BurnCurve curve) {
        double before = 0;
        for (int k = 1; k < 50; k++) {
            double theta = curve.start() + curve.duration() * k / 50;
            double share = curve.share(theta);
            assertThat(share).isGreaterThan(before).isLessThan(1);
            before = share;
            if (share < 0.999) { // beyond, 1 - x has lost its digits
                assertThat(curve.angle(share)).isCloseTo(theta, within(1e-10));
            }
            double h = 1e-5 * curve.duration();
            double slope = (curve.share(theta + h) - curve.share(theta - h)) / (2 * h);
            assertThat(curve.rate(theta)).isCloseTo(slope, within(1e-6 * curve.rate(curve.fastest()) + 1e-6));
            assertThat(curve.rate(theta)).isLessThanOrEqualTo(curve.rate(curve.fastest()) * (1 + 1e-12));
        }
    }

    @Test
    void nothingBurnsBeforeTheStartNorAfterTheEnd() {
        BurnCurve curve = new BurnCurve(5, 2, -0.3, 0.9);
        assertThat(curve.share(-0.4)).isZero();
        assertThat(curve.rate(-0.4)).isZero();
        assertThat(curve.share(2)).isEqualTo(curve.burnedAtEnd()).isCloseTo(1 - Math.exp(-5), within(1e-15));
        assertThat(curve.rate(curve.end() + 1e-9)).isZero();
    }

    @Test
    void passesATenthAndNineTenthsWhereTold() {
        SplittableRandom random = new SplittableRandom(7);
        for (int k = 0; k < 1000; k++) {
            double spark = random.nextDouble(-1, 0.2);
            double development = random.nextDouble(0.1, 1);
            double rapid = random.nextDouble(0.1, 1.5);
            BurnCurve sparked = BurnCurve.fromSpark(spark, development, rapid);
            assertThat(sparked.start()).isEqualTo(spark);
            assertThat(sparked.share(spark + development)).isCloseTo(0.1, within(1e-12));
            assertThat(sparked.share(spark + development + rapid)).isCloseTo(0.9, within(1e-12));
            BurnCurve formed = BurnCurve.ofForm(5, 2, spark + development, rapid);
            assertThat(formed.share(spark + development)).isCloseTo(0.1, within(1e-12));
            assertThat(formed.share(spark + development + rapid)).isCloseTo(0.9, within(1e-12));
        }
    }

    @Test
    void refusesWhatIsNoCurve() {
        assertThatThrownBy(() -> new BurnCurve(5, -1, 0, 1)).hasMessageContaining("must be above -1");
        assertThatThrownBy(() -> new BurnCurve(5, 2, Double.NaN, 1)).hasMessageContaining("start of burning");
        assertThatThrownBy(() -> BurnCurve.fromSpark(0, 0, 1)).hasMessageContaining("development");
        assertThatThrownBy(() -> new BurnCurve(5, 2, 0, 1).angle(0.999)).hasMessageContaining("share burned");
    }
}
