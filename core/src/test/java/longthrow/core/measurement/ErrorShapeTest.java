package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class ErrorShapeTest {
    private static final double P = 0.975;

    private static Source scatter(String id, double freedom) {
        return new Source(id, Source.Kind.SCATTER, id, 1, freedom, 1);
    }

    private static Source table(String id) {
        return new Source(id, Source.Kind.SCATTER, id, 1, 12.5, 1, "table");
    }

    private static Source step(String id) {
        return Source.rectangular(id, Source.Kind.RESOLUTION, id, Math.sqrt(3));
    }

    private static Source known(String id) {
        return Source.known(id, Source.Kind.INSTRUMENT, id, 1);
    }

    private static ErrorShape shape(Object... sourcesAndContributions) {
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int i = 0; i < sourcesAndContributions.length; i += 2) {
            contributions.put((Source) sourcesAndContributions[i], (Double) sourcesAndContributions[i + 1]);
        }
        return new ErrorShape(contributions);
    }

    /** JCGM 100:2008 table G.2, 95 %: t of 2 degrees of freedom 4.30, of infinitely many 1.96. */
    @Test
    void oneScatterOrOneKnownErrorAloneIsAsTabulated() {
        assertThat(shape(scatter("a", 2), 0.5).quantile(P)).isCloseTo(0.5 * 4.30, within(0.5 * 0.005));
        assertThat(shape(known("a"), 0.6, known("b"), 0.8).quantile(P)).isCloseTo(1.96, within(0.005));
    }

    /** Evenly between the ends: 95 % of the half-width; JCGM 100:2008 G.1.3 remarks that 1.96 u would reach beyond the ends. */
    @Test
    void oneRectangleAloneHasNoTails() {
        assertThat(shape(step("a"), 1.0).quantile(P)).isCloseTo(0.95 * Math.sqrt(3), within(1e-6));
    }

    /** Triangle of half-width 2a: the tail above x holds (2a - x)^2 / (8 a^2). */
    @Test
    void twoEqualRectanglesMakeATriangle() {
        double a = Math.sqrt(3);
        assertThat(shape(step("a"), 1.0, step("b"), 1.0).quantile(P))
                .isCloseTo(2 * a - Math.sqrt(8 * a * a * 0.025), within(1e-4));
    }

    @Test
    void errorsScaledByOneLineOfTheTableKeepItsDegreesOfFreedom() {
        double t = new TDistribution(12.5).inverseCumulativeProbability(P);
        assertThat(shape(table("a"), 1.0, table("b"), -1.0).quantile(P)).isCloseTo(Math.sqrt(2) * t, within(1e-6));
    }

    /** A t of 12.5 degrees of freedom, a normal and a rectangle added by trials. */
    @Test
    void tableKnownErrorAndStepAddUpAsTrialsDo() {
        SplittableRandom random = new SplittableRandom(20_261_125L);
        TDistribution t = new TDistribution(12.5);
        double[] sum = new double[200_000];
        for (int k = 0; k < sum.length; k++) {
            sum[k] = t.inverseCumulativeProbability(random.nextDouble(1e-12, 1))
                    + 0.7 * random.nextGaussian()
                    + 1.2 * Math.sqrt(3) * (2 * random.nextDouble() - 1);
        }
        Arrays.sort(sum);
        double trials = sum[(int) (P * sum.length)];
        assertThat(shape(table("a"), 1.0, known("b"), 0.7, step("c"), 1.2).quantile(P))
                .isCloseTo(trials, within(0.02)); // trials scatter by 0.01
    }

    /** Figures of the decision record, by numerical integration over the scatter that might have been seen. */
    @Test
    void oneScatterOfThreeReadingsBesideAKnownErrorCoversNearlyAlways() {
        for (double ratio : new double[] {0.1, 0.3, 1, 3, 5, 10, 100}) {
            double covered = 0;
            int steps = 2000;
            for (int i = 0; i < steps; i++) {
                double seen = ratio * -Math.log((i + 0.5) / steps); // chi-squared of 2 degrees of freedom, by 2
                double half =
                        shape(scatter("a", 2), Math.sqrt(seen), known("b"), 1.0).quantile(P);
                covered += 2 * Normal.atMost(half / Math.sqrt(1 + ratio)) - 1;
            }
            assertThat(100 * covered / steps).as("variance ratio " + ratio).isBetween(94.6, 95.4);
        }
    }

    @Test
    void probabilityIsTheInverseOfTheQuantile() {
        ErrorShape shape = shape(scatter("a", 2), 1.0, table("b"), 0.8, known("c"), 0.5, step("d"), 1.0);
        for (double p : new double[] {0.01, 0.3, 0.5, 0.9, 0.975, 0.999}) {
            assertThat(shape.atMost(shape.quantile(p))).isCloseTo(p, within(1e-6));
        }
    }

    @Test
    void quantilesRiseWithProbability() {
        ErrorShape shape = shape(scatter("a", 2), 0.8, known("c"), 1.0, step("d"), 1.0);
        double before = 0;
        for (double p = 0.55; p < 1; p += 0.05) {
            assertThat(shape.quantile(p)).isGreaterThan(before);
            before = shape.quantile(p);
        }
    }

    @Test
    void fastNormalAndFastTAgreeWithTheLibrary() {
        NormalDistribution normal = new NormalDistribution();
        for (double z = -9; z < 9; z += 0.37) {
            assertThat(Normal.atMost(z)).isCloseTo(normal.cumulativeProbability(z), within(1e-13));
        }
        for (double freedom : new double[] {1, 1.5, 2, 2.3, 3, 4.7, 9, 12.5, 60, 1e4}) {
            for (double p : new double[] {0.51, 0.6, 0.9, 0.95, 0.975, 0.995, 0.9999}) {
                double library = new TDistribution(freedom).inverseCumulativeProbability(p);
                assertThat(StudentT.quantile(p, freedom))
                        .as(freedom + " " + p)
                        .isCloseTo(library, within(1e-8 * Math.max(1, library)));
            }
        }
    }
}
