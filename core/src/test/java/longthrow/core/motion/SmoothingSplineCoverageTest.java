package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.measurement.StudentT;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often the 95 % band of the spline holds the true lift of invented lobes, over all angles, between the readings too. */
class SmoothingSplineCoverageTest {
    private static final double STATED = 0.012; // mm
    private static final double TABLE_FREEDOM = 12.5;

    private final Random random = new Random(20_261_125);

    /** Share of angles, over twenty tables of each lobe, where the band holds the truth. */
    private double held(double step, double scatter, boolean half) {
        int held = 0;
        int asked = 0;
        for (DoubleUnaryOperator lobe : InventedLobes.all()) {
            for (int table = 0; table < 20; table++) {
                SmoothingSpline spline = read(lobe, step, scatter, half);
                double factor = StudentT.factor(0.95, spline.freedom());
                for (double at = -149.6; at < 150; at += 6.1) {
                    asked++;
                    held += Math.abs(spline.at(at) - lobe.applyAsDouble(at)) <= factor * spline.deviation(at) ? 1 : 0;
                }
            }
        }
        return held / (double) asked;
    }

    private SmoothingSpline read(DoubleUnaryOperator lobe, double step, double scatter, boolean half) {
        List<Double> angles = new ArrayList<>();
        for (double at = half ? 0 : -170 + random.nextDouble() * step; at <= 175; at += step) {
            angles.add(at);
        }
        double[] x = angles.stream().mapToDouble(a -> a).toArray();
        double[] y = Arrays.stream(x)
                .map(a -> lobe.applyAsDouble(a) + scatter * random.nextGaussian())
                .toArray();
        double[] deviations = new double[x.length];
        Arrays.fill(deviations, STATED);
        return SmoothingSpline.likeliest(half ? Knots.mirrored(x) : Knots.natural(x), y, deviations, TABLE_FREEDOM);
    }

    /**
     * Bounds: what was counted (95.1 and 98.6 over the lobe; 2026-11-25), with room for chance. Where the steps are so wide that the lobe is smoother between
     * them than a random walk would be, the band is wider than it need be.
     */
    @ParameterizedTest
    @CsvSource({"5, false, 0.935, 0.97", "10, false, 0.96, 0.995", "5, true, 0.935, 0.975"})
    void bandHoldsTheLobe(double step, boolean half, double least, double most) {
        assertThat(held(step, STATED, half)).isBetween(least, most);
    }

    /** A hand twice as good as the table says gets a wider band than it need have; the table pulls. */
    @Test
    void aBetterHandIsCoveredMoreOften() {
        assertThat(held(5, 0.5 * STATED, false)).isGreaterThan(0.98);
    }

    /** What the mirror knows: no slope at the axis, the same on both sides. */
    @Test
    void theMirroredCurveIsEven() {
        SmoothingSpline spline = read(InventedLobes.all().get(0), 10, STATED, true);
        assertThat(spline.slope(0)).isCloseTo(0, within(1e-12));
        assertThat(spline.at(-37)).isEqualTo(spline.at(37));
        assertThat(spline.slope(-37)).isEqualTo(-spline.slope(37));
        assertThat(spline.bend(-37)).isEqualTo(spline.bend(37));
        assertThat(spline.covariance(37, 0, -37, 0)).isCloseTo(spline.covariance(37, 0, 37, 0), within(1e-12));
        assertThat(spline.slopeDeviation(0)).isCloseTo(0, within(1e-9));
    }

    /** A spline is what it was: its slopes are its derivatives, and its doubt of a slope is that of a difference over a small step. */
    @Test
    void slopesAndTheirDoubtAreDerivatives() {
        SmoothingSpline spline = read(InventedLobes.all().get(1), 5, STATED, false);
        double h = 1e-3;
        for (double at = -140.3; at < 140; at += 7.7) {
            assertThat(spline.slope(at)).isCloseTo((spline.at(at + h) - spline.at(at - h)) / (2 * h), within(1e-7));
            assertThat(spline.bend(at))
                    .isCloseTo((spline.slope(at + h) - spline.slope(at - h)) / (2 * h), within(1e-7));
            double difference = spline.covariance(at + h, 0, at + h, 0)
                    - 2 * spline.covariance(at + h, 0, at - h, 0)
                    + spline.covariance(at - h, 0, at - h, 0);
            assertThat(spline.slopeDeviation(at)).isCloseTo(Math.sqrt(difference) / (2 * h), within(2e-5));
        }
    }
}
