package longthrow.core.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/**
 * Seeds are fixed, so each test gives the same on every run; the limits are those a right generator passes with a
 * probability of 0.999 or more.
 */
class SampleSourceTest {
    private static final int MANY = 1_000_000;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /** First outputs of the authors' reference implementation of xoroshiro128++ from the state 1, 2. */
    @Test
    void laneFollowsThePublishedGenerator() {
        long[] s0 = new long[SampleSource.LANES];
        long[] s1 = new long[SampleSource.LANES];
        long[] raw = new long[SampleSource.LANES];
        s0[9] = 1;
        s1[9] = 2;
        for (String expected : new String[] {
            "393217", "669327710093319", "1732421326133921491", "11394790081659126983", "9555452776773192676"
        }) {
            SampleSource.refill(s0, s1, raw);
            assertThat(Long.toUnsignedString(raw[9])).isEqualTo(expected);
        }
    }

    /** Marsaglia and Tsang 2000 (from memory): r and v for 128 and 256 layers, which are printed exact but for their last digits. */
    @Test
    void layersAreThoseOfThePaper() {
        assertThat(SampleSource.tailStart(256)).isCloseTo(3.654152885361009, within(1e-12));
        assertThat(SampleSource.layerArea(3.654152885361009))
                .isCloseTo(0.00492867323399, within(2e-14)); // ends 3975 here
        assertThat(SampleSource.tailStart(128)).isCloseTo(3.442619855899, within(3e-12));
        assertThat(SampleSource.layerArea(3.442619855899)).isCloseTo(9.91256303526217e-3, within(1e-16));
    }

    /** Moments of the standard normal 0, 1, 0, 3, 0, 15; limits 4 standard errors, variances 1, 2, 15, 96, 945, 10170. */
    @Test
    void normalsHaveTheMomentsOfTheNormal() {
        double[] z = normals(1, 10 * MANY);
        double[] expected = {0, 1, 0, 3, 0, 15};
        double[] variance = {1, 2, 15, 96, 945, 10_170};
        for (int power = 1; power <= 6; power++) {
            double sum = 0;
            for (double x : z) {
                sum += Math.pow(x, power);
            }
            assertThat(sum / z.length)
                    .as("moment %s", power)
                    .isCloseTo(expected[power - 1], within(4 * Math.sqrt(variance[power - 1] / z.length)));
        }
    }

    @Test
    void normalsFollowTheDistribution() {
        assertFollows(normals(2, MANY), x -> NORMAL.cumulativeProbability(x));
        double[] scaled = new double[MANY];
        SampleSource.of(3).fillNormal(scaled, 0, MANY, 5, 0.1);
        assertFollows(scaled, x -> NORMAL.cumulativeProbability((x - 5) / 0.1));
        double[] single = new double[MANY];
        SampleSource source = SampleSource.of(4);
        Arrays.setAll(single, k -> source.nextNormal());
        assertFollows(single, x -> NORMAL.cumulativeProbability(x));
    }

    /** 1000 bins of equal probability catch a flaw of single layers that Kolmogorov-Smirnov is blind to. */
    @Test
    void normalsFillEqualBinsEvenly() {
        double[] edges = new double[999];
        Arrays.setAll(edges, i -> NORMAL.inverseCumulativeProbability((i + 1) / 1000.0));
        int[] counts = new int[1000];
        double[] z = normals(5, 10 * MANY);
        for (double x : z) {
            int found = Arrays.binarySearch(edges, x);
            counts[found >= 0 ? found : -found - 1]++;
        }
        assertEven(counts);
    }

    /** Beyond 4 standard deviations lie 6.334e-5 of all, beyond 5 5.733e-7 (tables of the normal); Poisson limits. */
    @Test
    void tailsAreNeitherMissingNorFat() {
        double[] z = normals(6, 10 * MANY);
        double[] beyond = Arrays.stream(z).map(Math::abs).filter(x -> x > 4).toArray();
        double expected = 10 * MANY * 6.334e-5;
        assertThat((double) beyond.length).isCloseTo(expected, within(3.5 * Math.sqrt(expected)));
        double tail = NORMAL.cumulativeProbability(-4);
        assertFollows(beyond, x -> 1 - NORMAL.cumulativeProbability(-x) / tail);
        assertThat(Arrays.stream(beyond).filter(x -> x > 5).count()).isBetween(0L, 16L);
        assertThat((double) Arrays.stream(z).filter(x -> x > 4).count())
                .isCloseTo(expected / 2, within(3.5 * Math.sqrt(expected / 2)));
    }

    /** Successive numbers, numbers of the same lane, and squares: correlations below 4 / sqrt(n); pairs fill a grid. */
    @Test
    void successiveNumbersAreIndependent() {
        double[] z = normals(7, 4 * MANY);
        double[] squares = Arrays.stream(z).map(x -> (x * x - 1) / Math.sqrt(2)).toArray();
        int[] bins = Arrays.stream(z).mapToInt(SampleSourceTest::bin).toArray();
        for (int lag : new int[] {1, 2, 3, 30, SampleSource.LANES - 1, SampleSource.LANES, SampleSource.LANES + 1}) {
            assertThat(correlation(z, z, lag)).as("lag %s", lag).isCloseTo(0, within(4 / Math.sqrt(z.length)));
            assertThat(correlation(squares, squares, lag))
                    .as("lag %s", lag)
                    .isCloseTo(0, within(4 / Math.sqrt(z.length)));
            int[] counts = new int[32 * 32];
            for (int k = 0; k + lag < z.length; k += 2 * lag) {
                for (int j = k; j < Math.min(k + lag, z.length - lag); j++) { // each number in one pair only
                    counts[bins[j] * 32 + bins[j + lag]]++;
                }
            }
            assertEven(counts);
        }
    }

    private static int bin(double normal) {
        return (int) (32 * NORMAL.cumulativeProbability(normal));
    }

    @Test
    void streamsAndSeedsAreUnrelated() {
        double[] first = new double[MANY];
        double[] second = new double[MANY];
        for (long[] pair : new long[][] {{1, 0, 1, 1}, {1, 0, 2, 0}, {0, 1, 1, 0}, {-1, 7, -1, 8}}) {
            SampleSource.of(pair[0], pair[1]).fillNormal(first, 0, MANY);
            SampleSource.of(pair[2], pair[3]).fillNormal(second, 0, MANY);
            assertThat(correlation(first, second, 0)).isCloseTo(0, within(4 / Math.sqrt(MANY)));
        }
    }

    @Test
    void theSameSeedGivesTheSameInPiecesAsAtOnce() {
        double[] once = new double[5000];
        double[] pieces = new double[5000];
        SampleSource.of(8, 3).fillNormal(once, 0, 5000, 2, 3);
        SampleSource source = SampleSource.of(8, 3);
        for (int at = 0, size = 1; at < 5000; at += size, size = Math.min(size + 7, 5000 - at)) {
            source.fillNormal(pieces, at, size, 2, 3);
        }
        assertThat(pieces).isEqualTo(once);
        assertThat(normals(9, 10)).isEqualTo(normals(9, 10)).isNotEqualTo(normals(10, 10));
    }

    @Test
    void uniformsFollowTheDistribution() {
        double[] u = new double[MANY];
        SampleSource.of(11).fillUniform(u, 0, MANY);
        assertFollows(u, x -> x);
        assertThat(Arrays.stream(u).min().orElseThrow()).isPositive();
        assertThat(Arrays.stream(u).max().orElseThrow()).isLessThan(1);
        SampleSource.of(11).fillUniform(u, 0, MANY, -2, 6);
        assertFollows(u, x -> (x + 2) / 8);
    }

    /** Degrees of freedom on both sides of the change of method, fractional and below 2 too. */
    @Test
    void studentsTFollowsTheDistribution() {
        double[] t = new double[MANY / 2];
        for (double degrees : new double[] {1, 2, 4, 12, 13, 40, 2.5, 0.7}) {
            TDistribution expected = new TDistribution(degrees);
            SampleSource.of(12).fillT(t, 0, t.length, degrees, 3, 2);
            assertFollows(t, x -> expected.cumulativeProbability((x - 3) / 2));
        }
        SampleSource source = SampleSource.of(13);
        Arrays.setAll(t, k -> source.nextT(4));
        assertFollows(t, new TDistribution(4)::cumulativeProbability);
    }

    /** Distribution functions by hand integration of the densities of JCGM 101:2008, 6.4.5 and 6.4.6. */
    @Test
    void triangleAndArcsineFollowTheirDistributions() {
        double[] x = new double[MANY];
        SampleSource.of(14).fillTriangular(x, 0, MANY, 1, 3);
        assertFollows(x, v -> v < 2 ? (v - 1) * (v - 1) / 2 : 1 - (3 - v) * (3 - v) / 2);
        SampleSource.of(15).fillArcSine(x, 0, MANY, -1, 1);
        assertFollows(x, v -> 0.5 + Math.asin(v) / Math.PI);
    }

    /** JCGM 101:2008, 6.4.3.3 (from memory): mean (a + b) / 2, variance (b - a)^2 / 12 + d^2 / 9. */
    @Test
    void curvilinearTrapezoidHasTheMomentsOfTheGuide() {
        double[] x = new double[4 * MANY];
        SampleSource.of(16).fillCurvilinearTrapezoid(x, 0, x.length, 1, 3, 0.5);
        double mean = Arrays.stream(x).average().orElseThrow();
        double variance = Arrays.stream(x).map(v -> (v - 2) * (v - 2)).average().orElseThrow();
        assertThat(mean).isCloseTo(2, within(0.0015));
        assertThat(variance).isCloseTo(4 / 12.0 + 0.25 / 9, within(0.0008));
        assertThat(Arrays.stream(x).min().orElseThrow()).isBetween(0.5, 0.51);
        SampleSource.of(16).fillCurvilinearTrapezoid(x, 0, MANY, 1, 3, 0);
        assertFollows(Arrays.copyOf(x, MANY), v -> (v - 1) / 2);
    }

    @Test
    void senselessShapesAreRefused() {
        SampleSource source = SampleSource.of(1);
        double[] out = new double[4];
        assertThatThrownBy(() -> source.fillNormal(out, 2, 3))
                .hasMessageContaining("3 numbers from place 2 of an array of 4");
        assertThatThrownBy(() -> source.fillNormal(out, 0, 1, 0, -1))
                .hasMessageContaining("-1.0; it must be 0 or more");
        assertThatThrownBy(() -> source.fillNormal(out, 0, 1, Double.NaN, 1)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> source.fillUniform(out, 0, 1, 2, 1)).hasMessageContaining("the lower one first");
        assertThatThrownBy(() -> source.fillT(out, 0, 1, 0, 0, 1)).hasMessageContaining("degrees of freedom");
        assertThatThrownBy(() -> source.nextT(-1)).hasMessageContaining("degrees of freedom");
        assertThatThrownBy(() -> source.fillCurvilinearTrapezoid(out, 0, 1, 0, 1, 0.6))
                .hasMessageContaining("at most half");
    }

    private static double[] normals(long seed, int count) {
        double[] z = new double[count];
        SampleSource.of(seed).fillNormal(z, 0, count);
        return z;
    }

    private static double correlation(double[] a, double[] b, int lag) {
        double sum = 0;
        for (int k = 0; k + lag < a.length; k++) {
            sum += a[k] * b[k + lag];
        }
        return sum / (a.length - lag);
    }

    /** Kolmogorov-Smirnov: the largest distance stays below 1.95 / sqrt(n) with a probability of 0.999 (asymptotic). */
    private static void assertFollows(double[] samples, DoubleUnaryOperator distribution) {
        double[] sorted = samples.clone();
        Arrays.sort(sorted);
        double farthest = 0;
        for (int k = 0; k < sorted.length; k++) {
            double p = distribution.applyAsDouble(sorted[k]);
            farthest = Math.max(farthest, Math.max((k + 1.0) / sorted.length - p, p - (double) k / sorted.length));
        }
        assertThat(farthest).isLessThan(1.95 / Math.sqrt(sorted.length));
    }

    /** Pearson's chi-square between its 0.0005 and 0.9995 points. */
    private static void assertEven(int[] counts) {
        double mean = Arrays.stream(counts).average().orElseThrow();
        double chiSquare = Arrays.stream(counts)
                .mapToDouble(c -> (c - mean) * (c - mean) / mean)
                .sum();
        ChiSquaredDistribution expected = new ChiSquaredDistribution(counts.length - 1);
        assertThat(expected.cumulativeProbability(chiSquare)).isBetween(0.0005, 0.9995);
    }
}
