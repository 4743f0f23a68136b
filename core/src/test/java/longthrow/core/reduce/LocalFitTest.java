package longthrow.core.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import longthrow.core.measurement.StudentT;
import longthrow.core.reduce.Simulated.Scatter;
import longthrow.core.reduce.Simulated.Shape;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Curves through points whose truth is known; {@code LocalFitCover} is the long measurement of which this has the short form. */
class LocalFitTest {
    private static final int RUNS = 40;

    /** Local parabolas are exact for a parabola, in either way of drawing. */
    @Test
    void parabolaIsItself() {
        int n = 100;
        double[] time = new double[n];
        double[] speed = new double[n];
        double[] value = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.1 * i;
            speed[i] = 200 + 5 * i;
            value[i] = 3 + 0.02 * speed[i] - 3e-5 * speed[i] * speed[i];
        }
        double[] places = {230, 400, 650};
        LocalFit values = LocalFit.ofValues(speed, value, places);
        LocalFit slopes = LocalFit.ofSlopes(time, speed, speed, places);
        for (int k = 0; k < 3; k++) {
            double v = places[k];
            assertThat(values.value(k)).isCloseTo(3 + 0.02 * v - 3e-5 * v * v, within(1e-9));
            assertThat(slopes.value(k)).isCloseTo(50, within(1e-9));
        }
    }

    /**
     * The 95 % band covers the truth. 40 runs at 25 speeds, which hang together: a standard deviation of the share covered is near 2 %, so the bounds are 89 and 100 where the
     * long measurement has 94 to 99.
     */
    @ParameterizedTest
    @EnumSource(Shape.class)
    void bandCoversTheTruth(Shape shape) {
        for (boolean slope : new boolean[] {true, false}) {
            for (Scatter scatter : Scatter.ALL) {
                double[] covered = LocalFitCover.covered(shape, scatter, slope, 100, RUNS);
                assertThat(LocalFitCover.mean(covered))
                        .as("%s %s %s", shape, scatter, slope ? "drum" : "brake")
                        .isBetween(0.89, 1.0);
            }
        }
    }

    /** A doubt that counted rows as independent would be caught: the band must widen with what lingers. */
    @Test
    void whatLingersWidensTheBand() {
        double[] places = {500};
        double own = 0;
        double lingering = 0;
        for (int run = 0; run < 10; run++) {
            own += Simulated.pull(Shape.FLAT, new Scatter(0.4, 0, 0.6, 0), 0.14, 100, new Random(run))
                    .drawn(false, places)
                    .standardUncertainty(0);
            lingering += Simulated.pull(Shape.FLAT, new Scatter(0.4, 0, 0, 0.6), 0.14, 100, new Random(run))
                    .drawn(false, places)
                    .standardUncertainty(0);
        }
        assertThat(lingering).isGreaterThan(2 * own);
    }

    @Test
    void factorOfStudentIsWhatTheBandIsMadeOf() {
        LocalFit fit = Simulated.pull(Shape.HILL, Scatter.ALL[1], 0.14, 100, new Random(1))
                .drawn(true, new double[] {500});
        assertThat(fit.freedom(0)).isBetween(2.0, 120.0);
        assertThat(StudentT.factor(0.95, fit.freedom(0))).isBetween(1.96, 4.4);
        assertThat(fit.ofDifference(0, 1, 0, 1)).isZero();
    }

    /** Rows that slip now and then leave no five neighbours to take a slope of; a speed held twice tells no parabola. */
    @Test
    void pointsThatAreTooFewAreSaidToBe() {
        int n = 100;
        double[] time = new double[n];
        double[] holes = new double[n];
        double[] twoSpeeds = new double[n];
        double[] even = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 0.1 * i;
            even[i] = 100 + i;
            holes[i] = i % 4 == 0 ? Double.NaN : 100 + i;
            twoSpeeds[i] = i < n / 2 ? 100 : 200;
        }
        double[] places = {110, 150, 190};
        assertThat(LocalFit.ofSlopes(time, even, even, places).isDrawn()).isTrue();
        assertThat(LocalFit.ofSlopes(time, holes, even, places).isDrawn()).isFalse();
        assertThat(LocalFit.ofValues(twoSpeeds, even, places).isDrawn()).isFalse();
        assertThat(LocalFit.ofValues(holes, even, places).isDrawn()).isTrue();
    }
}
