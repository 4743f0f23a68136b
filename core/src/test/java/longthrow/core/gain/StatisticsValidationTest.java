package longthrow.core.gain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;

/** Statistics against NIST's Statistical Reference Datasets and worked sets: rows DYN-13 to 19 and 22 to 24; each row names its source. */
class StatisticsValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("10_dyno_statistics");

    /** Fewest digits that agree with the certified ones, by row. */
    private final Map<String, Double> digits = new LinkedHashMap<>();

    private void check(String caseId, double... got) {
        for (int i = 0; i < got.length; i++) {
            ReferenceRows.Row row = ROWS.row(caseId + "." + (i + 1));
            row.check(got[i]);
            double off = Math.abs(got[i] - row.value()) / Math.abs(row.value());
            digits.put(row.id(), off == 0 ? 15 : -Math.log10(off));
        }
    }

    private double fewest() {
        return digits.values().stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    }

    @Test
    void summariesLoseNoDigits() throws IOException {
        summary("DYN-13", "10_nist_michelso");
        assertThat(fewest()).isGreaterThan(13);
        digits.clear();
        summary("DYN-14", "10_nist_numacc3"); // seven digits alike: the deviation can keep no more than nine
        assertThat(fewest()).isGreaterThan(9);
    }

    private void summary(String caseId, String set) throws IOException {
        Sample s =
                Sample.of(Arrays.stream(columns(set)).mapToDouble(row -> row[0]).toArray());
        check(caseId, s.mean(), s.standardDeviation(), s.firstAutocorrelation());
    }

    @Test
    void straightLineAsCertified() throws IOException {
        double[][] rows = columns("10_nist_norris");
        LinearFit fit = LinearFit.of(predictors(rows), first(rows));
        check(
                "DYN-15",
                fit.coefficients().get(0),
                fit.coefficients().get(1),
                fit.standardErrors().get(0),
                fit.standardErrors().get(1),
                fit.residualDeviation(),
                fit.rSquared());
        assertThat(fewest()).isGreaterThan(12);
    }

    @Test
    void illConditionedRegressionAsCertified() throws IOException {
        double[][] rows = columns("10_nist_longley");
        LinearFit fit = LinearFit.of(predictors(rows), first(rows));
        double[] got = new double[14];
        for (int i = 0; i < 7; i++) {
            got[i] = fit.coefficients().get(i);
            got[i + 7] = fit.standardErrors().get(i);
        }
        check("DYN-16", got);
        assertThat(fewest()).isGreaterThan(11);
    }

    @Test
    void varianceInOneWayAsCertified() throws IOException {
        Map<Double, List<Double>> groups = new TreeMap<>();
        for (double[] row : columns("10_nist_sirstv")) {
            groups.computeIfAbsent(row[0], g -> new ArrayList<>()).add(row[1]);
        }
        OneWay table = OneWay.of(groups.values().stream()
                .map(g -> g.stream().mapToDouble(Double::doubleValue).toArray())
                .toList());
        check("DYN-17", table.between(), table.within(), table.f(), table.residualDeviation());
        assertThat(fewest()).isGreaterThan(9);
        // F of 4 and 20 degrees of freedom: 0.05 at 2.866, tables of Fisher, from memory
        assertThat(new OneWay(4 * 2.866, 4, 20, 20).probability()).isCloseTo(0.05, within(5e-5));
    }

    @Test
    void curvesAsCertified() throws IOException {
        double[][] kirby = columns("10_nist_kirby2");
        CurveFit fit = CurveFit.of(
                StatisticsValidationTest::kirby, second(kirby), first(kirby), 1.5, -0.15, 0.0025, -0.0015, 2e-5);
        check("DYN-18", curve(fit));
        double[][] mgh = columns("10_nist_mgh17");
        fit = CurveFit.of(StatisticsValidationTest::mgh17, second(mgh), first(mgh), 0.5, 1.5, -1, 0.01, 0.02);
        check("DYN-19", curve(fit));
        assertThat(fewest()).isGreaterThan(7);
    }

    private static double[] curve(CurveFit fit) {
        double[] got = new double[12];
        for (int i = 0; i < 5; i++) {
            got[2 * i] = fit.coefficients().get(i);
            got[2 * i + 1] = fit.standardErrors().get(i);
        }
        got[10] = fit.sumOfSquares();
        got[11] = fit.residualDeviation();
        return got;
    }

    private static double kirby(double x, double[] b, double[] slopes) {
        double below = 1 + b[3] * x + b[4] * x * x;
        double y = (b[0] + b[1] * x + b[2] * x * x) / below;
        slopes[0] = 1 / below;
        slopes[1] = x / below;
        slopes[2] = x * x / below;
        slopes[3] = -y * x / below;
        slopes[4] = -y * x * x / below;
        return y;
    }

    private static double mgh17(double x, double[] b, double[] slopes) {
        slopes[0] = 1;
        slopes[1] = Math.exp(-x * b[3]);
        slopes[2] = Math.exp(-x * b[4]);
        slopes[3] = -x * b[1] * slopes[1];
        slopes[4] = -x * b[2] * slopes[2];
        return b[0] + b[1] * slopes[1] + b[2] * slopes[2];
    }

    @Test
    void twoSamplesAsWorked() {
        double[] a = {27.5, 21.0, 19.0, 23.6, 17.0, 17.9, 16.9, 20.1, 21.9, 22.6, 23.1, 19.6, 19.0, 21.7, 21.4};
        double[] b = {27.1, 22.0, 20.8, 23.4, 23.4, 23.5, 25.8, 22.0, 24.8, 20.2, 21.9, 22.1, 22.9, 20.5, 24.4};
        welch("DYN-22", TwoSamples.welch(a, b));
        welch(
                "DYN-23",
                TwoSamples.welch(new double[] {6.42, 6.38, 6.45, 6.4, 6.43}, new double[] {6.51, 6.49, 6.57, 6.53}));
        TwoSamples paired = TwoSamples.paired(
                new double[] {6.42, 6.38, 6.45, 6.4, 6.43, 6.41}, new double[] {6.47, 6.44, 6.49, 6.48, 6.46, 6.5});
        check("DYN-24", paired.t(), paired.probability(), paired.difference());
        assertThat(fewest()).isGreaterThan(11);
        assertThatThrownBy(() -> TwoSamples.paired(a, new double[3])).hasMessageContaining("15 and 3");
    }

    private void welch(String caseId, TwoSamples t) {
        check(caseId, t.t(), t.degreesOfFreedom(), t.probability(), t.difference(), t.halfWidth());
    }

    /** By hand: 4 x 0.01 = 0.04, 3 x 0.02 = 0.06, then the larger so far. S. Holm (1979). */
    @Test
    void severalTriesByHolm() {
        assertThat(Holm.adjusted(List.of(0.03, 0.01, 0.02, 0.9))).containsExactly(0.06, 0.04, 0.06, 0.9);
        assertThat(Holm.adjusted(List.of(Double.NaN, 0.01))).containsExactly(Double.NaN, 0.02);
    }

    private static double[] first(double[][] rows) {
        return Arrays.stream(rows).mapToDouble(row -> row[0]).toArray();
    }

    private static double[] second(double[][] rows) {
        return Arrays.stream(rows).mapToDouble(row -> row[1]).toArray();
    }

    private static double[][] predictors(double[][] rows) {
        return Arrays.stream(rows)
                .map(row -> Arrays.copyOfRange(row, 1, row.length))
                .toArray(double[][]::new);
    }

    private static double[][] columns(String set) throws IOException {
        try (InputStream stream = StatisticsValidationTest.class.getResourceAsStream("/references/" + set + ".csv")) {
            String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines()
                    .skip(1)
                    .map(line -> Arrays.stream(line.split(",", -1))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
        }
    }
}
