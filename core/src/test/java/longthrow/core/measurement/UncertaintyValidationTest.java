package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.engine.Compression;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.formula.SampleSummary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Doubt against the worked examples of the Guide (JCGM 100:2008) and its first supplement (JCGM 101:2008), as tabulated in the reference
 * rows; each row names its section and table. Inputs of each case stand in its rows.
 */
class UncertaintyValidationTest {
    private static final int MILLION = 1_000_000;

    private static final ReferenceRows ROWS = ReferenceRows.of("01_uncertainty");

    private static final Map<String, Measured> GAUGE = Map.of(
            "ls", Measured.of(50_000_623, List.of(read("ls", 25, 18))),
            "d", Measured.of(215, List.of(read("d mean", 5.8, 24), read("d random", 3.9, 5), read("d system", 6.7, 8))),
            "alpha", Measured.of(11.5e-6, List.of(tolerance("alpha", 2e-6, Double.POSITIVE_INFINITY))),
            "dalpha", Measured.of(0, List.of(tolerance("dalpha", 1e-6, 50))),
            "theta mean", Measured.of(-0.1, List.of(known("theta mean", 0.2))),
            "theta swing",
                    Measured.of(0, List.of(known("theta swing", new Law.ArcSine(-0.5, 0.5).standardDeviation()))),
            "dtheta", Measured.of(0, List.of(tolerance("dtheta", 0.05, 2))));

    private static final Map<String, Law> MASS_LAWS = Map.of(
            "mR", new Law.Normal(100_000, 0.050),
            "dmR", new Law.Normal(1.234, 0.020),
            "air", new Law.Rectangular(1.10, 1.30),
            "weight", new Law.Rectangular(7000, 9000),
            "reference", new Law.Rectangular(7950, 8050));

    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return ROWS.all();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void doubtIsWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(74);
        assertThat(COMPUTED.leftOut(Set.of())).isEmpty();
    }

    static List<ReferenceRows.GridCell> factors() {
        return ReferenceRows.grid("01_student_t_grid", ROWS.row("UNC-14.1"), 1e-9, false);
    }

    /** Tolerance of UNC-14, which names the grid. */
    @ParameterizedTest
    @MethodSource("factors")
    void coverageFactorIsWhatTheTableSays(ReferenceRows.GridCell cell) {
        double probability = Double.parseDouble(cell.column().replace("p=", ""));
        cell.row().check(StudentT.factor(probability, cell.argument()));
    }

    @Test
    void allCoverageFactorsArePresent() {
        assertThat(factors()).hasSize(26 * 6);
    }

    /** JCGM 101:2008, 9.3, table 6: the Guide's framework with terms of second order gives 0.0750 mg; from memory. */
    @Test
    void secondOrderSeesTheProductThatTheFirstOrderMisses() {
        SecondOrder second = SecondOrder.of(massComparison(), UncertaintyValidationTest::massFigure);
        assertThat(second.standardUncertainty()).isCloseTo(0.0750, within(0.000_05));
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        endGauge(to);
        resistanceAndReactance(to);
        product(to);
        readingsWithCertificate(to);
        compressionRatio(to, "UNC-05", 0.5);
        compressionRatio(to, "UNC-06", 0);
        sums(to);
        mass(to);
        squares(to, "UNC-10", 0, 0);
        squares(to, "UNC-11", 0.01, 0);
        squares(to, "UNC-12", 0.01, 0.9);
        endGaugeByTrials(to);
        to.putFrom(
                "UNC-14",
                1,
                StudentT.factor(0.6827, 3),
                StudentT.factor(0.95, 5),
                StudentT.factor(0.9545, 10),
                StudentT.factor(0.99, 16),
                StudentT.factor(0.9973, 20));
        return to;
    }

    private static Expression in(String name) {
        return Expression.input(name);
    }

    private static Source known(String id, double u) {
        return Source.known(id, Source.Kind.TYPED, id, u);
    }

    private static Source read(String id, double u, double degreesOfFreedom) {
        return new Source(id, Source.Kind.SCATTER, id, u, degreesOfFreedom, u);
    }

    /** H.1, lengths in nanometres. Theta as two inputs, mean and swing, so that the trials can draw them apart. */
    private static Formula gaugeLength() {
        Expression theta = in("theta mean").plus(in("theta swing"));
        Expression expansion =
                in("dalpha").times(theta).plus(in("alpha").times(in("dtheta"))).times(in("ls"));
        return Formula.of("end gauge", in("ls").plus(in("d")).minus(expansion));
    }

    private static Source tolerance(String id, double halfWidth, double degreesOfFreedom) {
        double u = new Law.Rectangular(-halfWidth, halfWidth).standardDeviation();
        return new Source(id, Source.Kind.TOLERANCE, id, u, degreesOfFreedom, u);
    }

    private static Measured gauge(String name) {
        Measured figure = GAUGE.get(name);
        if (figure == null) {
            throw new IllegalArgumentException(name);
        }
        return figure;
    }

    private static void endGauge(ComputedRows to) {
        Measured length = Measured.through(gaugeLength(), UncertaintyValidationTest::gauge);
        Map<String, Double> parts = new LinkedHashMap<>();
        length.contributions().forEach((source, c) -> parts.put(source.id(), Math.abs(c)));
        SecondOrder second = SecondOrder.of(gaugeLength(), UncertaintyValidationTest::gauge);
        to.putFrom(
                "UNC-01",
                1,
                length.value() / 1e6,
                gauge("d").standardUncertainty(),
                gauge("d").degreesOfFreedom(),
                parts.getOrDefault("dtheta", Double.NaN),
                parts.getOrDefault("dalpha", Double.NaN),
                length.standardUncertainty(),
                length.degreesOfFreedom(),
                StudentT.factor(0.99, Math.floor(length.degreesOfFreedom())),
                length.expandedTruncated(0.99),
                second.standardUncertainty(),
                between(second, Set.of("alpha"), Set.of("dtheta")),
                between(second, Set.of("dalpha"), Set.of("theta mean", "theta swing")));
        assertThat(length.shares().get(0).owner()).isEqualTo("ls");
    }

    /** Root of what the products of two groups of sources add to the variance. */
    private static double between(SecondOrder second, Set<String> some, Set<String> others) {
        double variance = 0;
        for (SecondOrder.Term term : second.terms()) {
            String a = term.first().id();
            String b = term.second().id();
            if ((some.contains(a) && others.contains(b)) || (some.contains(b) && others.contains(a))) {
                variance += term.variance();
            }
        }
        return Math.sqrt(variance);
    }

    /** H.2: current in milliamperes in the data, amperes in the formula. */
    private static void resistanceAndReactance(ComputedRows to) {
        Map<String, double[]> readings = new LinkedHashMap<>();
        readings.put("V", new double[] {5.007, 4.994, 5.005, 4.990, 4.999});
        readings.put("I", new double[] {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3});
        readings.put("phi", new double[] {1.0456, 1.0438, 1.0468, 1.0428, 1.0433});
        Map<String, Measured> means = SimultaneousReadings.means("bridge", "bridge", readings);
        Function<String, Measured> figures = name -> means.getOrDefault(name, Measured.exact(0));
        Measured v = figures.apply("V");
        Measured i = figures.apply("I");
        Measured phi = figures.apply("phi");
        Expression impedance = in("V").dividedBy(in("I"));
        Measured r = Measured.through(Formula.of("R", impedance.times(in("phi").cosine())), figures);
        Measured x = Measured.through(Formula.of("X", impedance.times(in("phi").sine())), figures);
        Measured z = Measured.through(Formula.of("Z", impedance), figures);
        to.putFrom("UNC-02", 1, v.value(), i.value() * 1000, phi.value());
        to.putFrom("UNC-02", 4, v.standardUncertainty(), i.standardUncertainty() * 1000, phi.standardUncertainty());
        to.putFrom("UNC-02", 7, v.correlationWith(i), v.correlationWith(phi), i.correlationWith(phi));
        to.putFrom("UNC-02", 10, r.value(), x.value(), z.value());
        to.putFrom("UNC-02", 13, r.standardUncertainty(), x.standardUncertainty(), z.standardUncertainty());
        to.putFrom("UNC-02", 16, r.correlationWith(x), r.correlationWith(z), x.correlationWith(z));
    }

    /**
     * G.4.1. The Guide rounds the degrees of freedom to 19.0 before it looks up the factor; cut from the unrounded 18.9987 they would be 18,
     * so the factor is taken at the printed 19.
     */
    private static void product(ComputedRows to) {
        Formula formula = Formula.of("product", in("X1").times(in("X2")).times(in("X3")));
        Map<String, Source> sources =
                Map.of("X1", read("X1", 0.25, 9), "X2", read("X2", 0.57, 4), "X3", read("X3", 0.82, 14));
        Measured y = Measured.through(
                formula,
                name -> Measured.withContributions(
                        1, Map.of(sources.getOrDefault(name, known(name, 1)), relative(sources, name))));
        double rounded = Math.rint(y.degreesOfFreedom());
        to.putFrom(
                "UNC-03",
                1,
                y.standardUncertainty() * 100,
                y.degreesOfFreedom(),
                StudentT.factor(0.95, rounded),
                StudentT.factor(0.95, rounded) * y.standardUncertainty() * 100);
    }

    private static double relative(Map<String, Source> sources, String name) {
        return sources.getOrDefault(name, known(name, 0)).standardUncertainty() / 100;
    }

    /** Millimetres. */
    private static void readingsWithCertificate(ComputedRows to) {
        Measured read = SimultaneousReadings.means(
                        "gauge", "gauge", Map.of("x", new double[] {0.152, 0.149, 0.155, 0.151, 0.15, 0.154}))
                .getOrDefault("x", Measured.exact(0));
        Source step = Source.rectangular("step", Source.Kind.RESOLUTION, "step", 0.001 / 2);
        Map<String, Measured> figures = Map.of(
                "read", read,
                "other", Measured.of(0, List.of(step, known("certificate", 0.004 / 2))),
                "dT", Measured.of(3, List.of(Source.known("dT", Source.Kind.TEMPERATURE, "dT", 1))));
        Measured corrected = Measured.through(
                Formula.of("corrected", in("read").plus(in("other")).minus(in("dT").times(60 * 2.3e-5))),
                name -> figures.getOrDefault(name, Measured.exact(0)));
        to.putFrom(
                "UNC-04",
                1,
                corrected.value(),
                read.standardUncertainty(),
                step.standardUncertainty(),
                corrected.standardUncertainty(),
                corrected.degreesOfFreedom(),
                corrected.expandedTruncated(0.95));
    }

    /** Millimetres and cubic millimetres; bore and stroke share a source so far that their correlation is r. */
    private static void compressionRatio(ComputedRows to, String caseId, double r) {
        Source shared = known("shared", 1);
        Source own = known("own", 1);
        Map<String, Measured> figures = Map.of(
                "bore", Measured.withContributions(68, Map.of(shared, 0.005)),
                "stroke", Measured.withContributions(54, Map.of(shared, r * 0.01, own, Math.sqrt(1 - r * r) * 0.01)),
                "clearance", Measured.of(25e3, List.of(known("burette", 0.15e3))));
        Formula formula = Formula.of(
                "ratio", Compression.ratio(Compression.sweptVolume(in("bore"), in("stroke")), in("clearance")));
        Function<String, Measured> given = name -> figures.getOrDefault(name, Measured.exact(0));
        Measured ratio = Measured.through(formula, given);
        assertThat(given.apply("bore").correlationWith(given.apply("stroke"))).isCloseTo(r, within(1e-12));
        double[] slope = new double[3];
        formula.gradient(
                formula.inputs().stream()
                        .mapToDouble(n -> given.apply(n).value())
                        .toArray(),
                slope);
        to.putFrom(
                caseId,
                1,
                ratio.value(),
                ratio.standardUncertainty(),
                slope[formula.inputs().indexOf("clearance")] * 1e3);
    }

    private static void sums(ComputedRows to) {
        Formula four = Formula.of("sum", Expression.sum(in("X1"), in("X2"), in("X3"), in("X4")));
        SampleSummary normal = MonteCarlo.ofLaws(four, name -> new Law.Normal(0, 1), MILLION, 0.95);
        to.putFrom("UNC-07", 1, normal.standardDeviation(), normal.symmetric().hi());
        Law even = new Law.Rectangular(-Math.sqrt(3), Math.sqrt(3));
        SampleSummary rectangular = MonteCarlo.ofLaws(four, name -> even, MILLION, 0.95);
        to.putFrom(
                "UNC-08",
                1,
                rectangular.standardDeviation(),
                rectangular.symmetric().hi());
    }

    /** 9.3, milligrams and kg/m3. */
    private static Formula massComparison() {
        Expression buoyancy = in("air")
                .minus(1.2)
                .times(Expression.constant(1)
                        .dividedBy(in("weight"))
                        .minus(Expression.constant(1).dividedBy(in("reference"))))
                .plus(1);
        return Formula.of("mass", in("mR").plus(in("dmR")).times(buoyancy).minus(100_000));
    }

    private static Measured massFigure(String name) {
        Law law = MASS_LAWS.getOrDefault(name, new Law.Normal(0, 0));
        return Measured.of(law.mean(), List.of(known(name, law.standardDeviation())));
    }

    private static void mass(ComputedRows to) {
        SampleSummary trials = MonteCarlo.ofLaws(
                massComparison(), name -> MASS_LAWS.getOrDefault(name, new Law.Normal(0, 0)), MILLION, 0.95);
        to.putFrom(
                "UNC-09",
                1,
                trials.mean(),
                trials.standardDeviation(),
                Measured.through(massComparison(), UncertaintyValidationTest::massFigure)
                        .standardUncertainty(),
                trials.shortest().lo(),
                trials.shortest().hi());
    }

    /** 9.4: both inputs lean on a shared source so far that their correlation is r. */
    private static void squares(ComputedRows to, String caseId, double x1, double r) {
        Source first = known("first", 1);
        Source second = known("second", 1);
        Map<String, Measured> figures = Map.of(
                "X1", Measured.withContributions(x1, Map.of(first, 0.005)),
                "X2", Measured.withContributions(0, Map.of(first, r * 0.005, second, Math.sqrt(1 - r * r) * 0.005)));
        Formula formula = Formula.of("mismatch", in("X1").squared().plus(in("X2").squared()));
        SampleSummary trials =
                MonteCarlo.summary(formula, name -> figures.getOrDefault(name, Measured.exact(0)), MILLION, 0.95);
        to.putFrom(
                caseId,
                1,
                trials.mean() * 1e6,
                trials.standardDeviation() * 1e6,
                trials.shortest().hi() * 1e6);
    }

    /** 9.5, nanometres; the correction 50 mm taken off. */
    private static void endGaugeByTrials(ComputedRows to) {
        Map<String, Law> laws = Map.of(
                "ls", new Law.ScaledT(18, 50_000_623, 25),
                "D", new Law.ScaledT(24, 215, 6),
                "d1", new Law.ScaledT(5, 0, 4),
                "d2", new Law.ScaledT(8, 0, 7),
                "alpha", new Law.Rectangular(9.5e-6, 13.5e-6),
                "theta mean", new Law.Normal(-0.1, 0.2),
                "theta swing", new Law.ArcSine(-0.5, 0.5),
                "dalpha", new Law.CurvilinearTrapezoid(-1e-6, 1e-6, 0.1e-6),
                "dtheta", new Law.CurvilinearTrapezoid(-0.050, 0.050, 0.025));
        Expression theta = in("theta mean").plus(in("theta swing"));
        Expression expansion =
                in("dalpha").times(theta).plus(in("alpha").times(in("dtheta"))).times(in("ls"));
        Formula formula = Formula.of(
                "end gauge",
                Expression.sum(in("ls"), in("D"), in("d1"), in("d2"))
                        .minus(expansion)
                        .minus(50_000_000));
        SampleSummary trials =
                MonteCarlo.ofLaws(formula, name -> laws.getOrDefault(name, new Law.Normal(0, 0)), MILLION, 0.99);
        Measured first = Measured.through(gaugeLength(), UncertaintyValidationTest::gauge);
        to.putFrom(
                "UNC-13",
                1,
                trials.mean(),
                trials.standardDeviation(),
                trials.shortest().lo(),
                trials.shortest().hi(),
                first.standardUncertainty());
    }
}
