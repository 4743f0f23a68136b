package longthrow.core.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;

class SampleSummaryTest {
    /**
     * JCGM 101:2008, 9.2.2 and 9.2.3 (from memory): the sum of four quantities of standard uncertainty 1. Normal: 2.00 and
     * -3.92 to 3.92. Rectangular: 2.00 and -3.88 to 3.88, analytically 2 sqrt(3) (2 - (3/5)^(1/4)).
     */
    @Test
    void additiveModelOfTheGuide() {
        int count = 1_000_000;
        SampleSource source = SampleSource.of(101);
        double[][] x = new double[4][count];
        double[] y = new double[count];
        Formula sum = Formula.of(
                "Y",
                Expression.sum(
                        Expression.input("1"), Expression.input("2"), Expression.input("3"), Expression.input("4")));
        for (double[] row : x) {
            source.fillNormal(row, 0, count);
        }
        sum.samples(x, 0, count, y);
        assertSummary(SampleSummary.of(y, 0.95), 2, 3.92);
        for (double[] row : x) {
            source.fillUniform(row, 0, count, -Math.sqrt(3), Math.sqrt(3));
        }
        sum.samples(x, 0, count, y);
        assertSummary(SampleSummary.of(y, 0.95), 2, 2 * Math.sqrt(3) * (2 - Math.pow(0.6, 0.25)));
    }

    /** Standard errors with a million samples: mean 0.002, deviation 0.0014, each end about 0.006; four of them. */
    private static void assertSummary(SampleSummary summary, double deviation, double end) {
        assertThat(summary.mean()).isCloseTo(0, within(0.008));
        assertThat(summary.median()).isCloseTo(0, within(0.011));
        assertThat(summary.standardDeviation()).isCloseTo(deviation, within(0.006));
        assertThat(summary.symmetric().hi()).isCloseTo(end, within(0.024));
        assertThat(summary.symmetric().lo()).isCloseTo(-end, within(0.024));
        assertThat(summary.shortest().hi() - summary.shortest().lo()).isCloseTo(2 * end, within(0.03));
    }

    /** By the words of JCGM 101:2008, 7.7, on all samples sorted. */
    @Test
    void agreesWithSortingEverything() {
        SplittableRandom random = new SplittableRandom(4);
        for (int trial = 0; trial < 400; trial++) {
            int count = 3 + random.nextInt(trial % 10 == 0 ? 20_000 : 300);
            double p = random.nextDouble(0.3, 0.7);
            double[] samples = new double[count + 5];
            int shape = trial % 5;
            for (int k = 0; k < samples.length; k++) {
                samples[k] = shape(random, shape);
            }
            double[] given = samples.clone();
            SampleSummary summary = SampleSummary.of(samples, 2, count, p);
            assertThat(samples).isEqualTo(given);
            double[] sorted = Arrays.copyOfRange(samples, 2, 2 + count);
            Arrays.sort(sorted);
            double pm = p * count;
            int q = pm == Math.rint(pm) ? (int) pm : (int) (pm + 0.5);
            int r = (count - q) % 2 == 0 ? (count - q) / 2 : (count - q + 1) / 2;
            assertThat(summary.symmetric()).isEqualTo(new Interval(sorted[r - 1], sorted[r + q - 1]));
            Interval shortest = new Interval(sorted[0], sorted[q]);
            for (int s = 2; s <= count - q; s++) {
                if (sorted[s + q - 1] - sorted[s - 1] < shortest.hi() - shortest.lo()) {
                    shortest = new Interval(sorted[s - 1], sorted[s + q - 1]);
                }
            }
            assertThat(summary.shortest()).as("trial %s", trial).isEqualTo(shortest);
            assertThat(summary.median()).isEqualTo(sorted[count / 2]);
            DescriptiveStatistics independent = new DescriptiveStatistics(sorted);
            double scale = Math.max(Math.abs(sorted[0]), Math.abs(sorted[count - 1]));
            assertThat(summary.mean()).isCloseTo(independent.getMean(), within(1e-12 * scale));
            assertThat(summary.standardDeviation())
                    .isCloseTo(independent.getStandardDeviation(), within(1e-12 * scale));
        }
    }

    private static double shape(SplittableRandom random, int shape) {
        double u = random.nextDouble();
        return switch (shape) {
            case 0 -> u;
            case 1 -> -Math.log(1 - u); // skew: shortest differs from symmetric
            case 2 -> Math.rint(8 * u); // many equal
            case 3 -> u < 0.01 ? 1e12 : u; // far outliers: the bulk in one bin
            default -> 1e6 + 1e-6 * u; // small spread on a large value
        };
    }

    @Test
    void samplesThatAreAllEqualHaveNoSpread() {
        SampleSummary summary = SampleSummary.of(new double[] {3, 3, 3, 3}, 0.5);
        assertThat(summary.standardDeviation()).isZero();
        assertThat(summary.symmetric()).isEqualTo(Interval.point(3));
        assertThat(summary.count()).isEqualTo(4);
    }

    @Test
    void whatCannotBeSummedUpIsRefused() {
        assertThatThrownBy(() -> SampleSummary.of(new double[] {1, 2, Double.NaN, 4}, 0.5))
                .hasMessageContaining("sample number 2 is NaN");
        assertThatThrownBy(() -> SampleSummary.of(new double[] {1, 2, 3, Double.POSITIVE_INFINITY}, 0.5))
                .hasMessageContaining("sample number 3 is Infinity");
        assertThatThrownBy(() -> SampleSummary.of(new double[10], 0.95))
                .hasMessageContaining("needs more than 10 samples; 40 are enough");
        assertThatThrownBy(() -> SampleSummary.of(new double[10], 1)).hasMessageContaining("between 0 and 1");
        assertThatThrownBy(() -> SampleSummary.of(new double[10], 5, 6, 0.5)).hasMessageContaining("there are 10");
        assertThat(SampleSummary.of(normalised(40), 0.95).count()).isEqualTo(40);
    }

    private static double[] normalised(int count) {
        double[] samples = new double[count];
        SampleSource.of(1).fillNormal(samples, 0, count);
        return samples;
    }
}
