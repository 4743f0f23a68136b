package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.life.Life;
import longthrow.core.pipe.PlainKernel;
import longthrow.core.power.Prediction;
import longthrow.core.power.Run;
import longthrow.core.power.Runner;
import longthrow.core.power.Speeds;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What flow-bench tables and lift tables do to the torque of an invented engine, and which do not count. */
class PowerTablesTest {
    private static final String CAM =
            "camshaft: {drive: in_case, checking_lift: 0.15 mm, intake_opens: 12° ± 2°, intake_closes: 46° ± 2°,"
                    + " exhaust_opens: 50° ± 2°, exhaust_closes: 12° ± 2°}";

    private static final String ENGINE =
            Repository.text("examples/scenarios/breathing.yaml").replace("camshaft: {drive: in_case}", CAM)
                    + "intake_valve: {head_diameter: 26.0 mm ± 0.1 mm, lift: 6.4 mm ± 0.1 mm}\n"
                    + "exhaust_valve: {head_diameter: 24.0 mm ± 0.1 mm, lift: 6.2 mm ± 0.1 mm}\n";

    private static final double FAST = 3600;

    /** Runs what is asked first, the speed itself, and nothing of what it leans on. */
    private static Runner once() {
        AtomicInteger asked = new AtomicInteger();
        Runner real = Runner.inTurn(PlainKernel::new, () -> true);
        return runs -> asked.getAndIncrement() == 0
                ? real.all(runs)
                : Optional.of(Collections.nCopies(runs.size(), new Run.Outcome(Optional.empty(), "not run")));
    }

    private static Runner never() {
        return runs -> Optional.of(Collections.nCopies(runs.size(), new Run.Outcome(Optional.empty(), "not run")));
    }

    private static Answer power(String text, Runner runner) {
        Build build =
                BuildFile.read(text.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
        Speeds speeds = new Speeds(List.of(Units.RPM.toSi(FAST)), Speeds.MOST, 1);
        return Prediction.of(build, Life.of(build, Catalogue.EMPTY, List.of()), speeds, runner)
                .orElseThrow();
    }

    private static double torque(String text) {
        return curve(power(text, once()))
                .rows()
                .get(0)
                .figure("torque")
                .orElseThrow()
                .figure()
                .value();
    }

    private static TorqueCurve curve(Answer answer) {
        return answer.torque().orElseThrow();
    }

    /** Coefficients of the curtain that are published for inlets (Heywood, 1988, chapter 6), times a factor, at six lifts of a head of 26 mm. */
    private static String published(double times, String more) {
        double[] coefficients = {0.70, 0.68, 0.65, 0.60, 0.54, 0.48};
        return "flow_tables: [{valve: intake, joined: radiused, " + more + "rows: {"
                + IntStream.range(0, 6)
                        .mapToObj(i ->
                                String.format(Locale.ROOT, "%.2f mm: %.4f", 1.3 * (i + 1), times * coefficients[i]))
                        .collect(Collectors.joining(", "))
                + "}}]\n";
    }

    private static final String WHOLE = "direction: into_cylinder, coefficient_of: curtain_area, within: 2 %, ";

    private static List<Finding> of(Answer answer, String where) {
        return answer.findings().stream().filter(f -> f.where().equals(where)).toList();
    }

    @Test
    void moreFlowGivesMoreTorqueAndThePublishedGivesTheSame() {
        double bare = torque(ENGINE);
        assertThat(torque(ENGINE + published(1, WHOLE))).isCloseTo(bare, within(2e-3 * bare)); // throat and stem aside
        double more = torque(ENGINE + published(1.15, WHOLE));
        double less = torque(ENGINE + published(0.75, WHOLE));
        assertThat(more).isGreaterThan(1.001 * bare);
        assertThat(less).isLessThan(0.985 * bare);
        // a table of the other way: its own way is worked out, a few per cent less than the exhaust's coefficients
        double against = torque(ENGINE + published(0.75, WHOLE.replace("into", "out_of")));
        assertThat(against).isLessThan(less * 1.005);
    }

    @Test
    void theTableIsToldWithItsDoubtAndOwnsIt() {
        Answer answer = power(ENGINE + published(1, WHOLE), Runner.inTurn(PlainKernel::new, () -> true));
        assertThat(of(answer, "flow_tables[1]"))
                .anyMatch(f -> f.kind() == Finding.Kind.NOTE
                        && f.message().contains("flow of the intake port is that of this table")
                        && f.message().contains("1.00 of what is published"));
        assertThat(answer.defaults())
                .noneMatch(
                        d -> d.where().equals("power.intake_flow") && d.what().startsWith("flow"));
        assertThat(answer.defaults()).anyMatch(d -> d.where().equals("power.exhaust_flow"));
        TorqueCurve.Row bare = curve(power(ENGINE, Runner.inTurn(PlainKernel::new, () -> true)))
                .rows()
                .get(0);
        TorqueCurve.Row read = curve(answer).rows().get(0);
        assertThat(read.figure("torque").orElseThrow().figure().expanded())
                .isLessThan(bare.figure("torque").orElseThrow().figure().expanded());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "coefficient_of: curtain_area, | which way the air went is not said | direction: into_cylinder",
                "direction: into_cylinder, | of what area they are coefficients is not said | coefficient_of: curtain_area",
                "direction: into_cylinder, coefficient_of: throat_area, | throat or stem | intake_valve.stem_diameter",
            })
    void aTableWithoutWayOrBasisDoesNotCountAndIsAskedFor(String words, String why, String mend) {
        isNotCounted(ENGINE + published(1.15, words + " "), why, mend);
    }

    @Test
    void aTableThatCannotBeDoesNotCount() {
        String flows = "flow_tables: [{valve: intake, direction: into_cylinder, joined: radiused, DEPTH"
                + "rows: {2 mm: 10 l/s, 4 mm: 18 l/s, 6 mm: 22 l/s}}]\n";
        isNotCounted(ENGINE + flows.replace("DEPTH", ""), "at what depression it was read is not said", "28 inH2O");
        assertThat(of(power(ENGINE + flows.replace("DEPTH", "depression: 28 inH2O, "), never()), "flow_tables[1]"))
                .noneMatch(f -> f.kind() == Finding.Kind.WARNING);
        // at a tenth of the depression it would be three times the gap
        isNotCounted(ENGINE + flows.replace("DEPTH", "depression: 2.8 inH2O, "), "row 1: flow is", "mend");
        isNotCounted(
                ENGINE.replace("head_diameter: 26.0 mm ± 0.1 mm, ", "")
                        + flows.replace("DEPTH", "depression: 28 inH2O, "),
                "the head of the valve",
                "intake_valve.head_diameter");
        isNotCounted(
                ENGINE + flows.replace("DEPTH", "depression: 28 inH2O, ").replace("4 mm: 18", "4 mm: 9"),
                "below that of a lower lift",
                "mend");
    }

    private static void isNotCounted(String text, String why, String mend) {
        Answer answer = power(text, never());
        assertThat(of(answer, "flow_tables[1]")).singleElement().satisfies(f -> {
            assertThat(f.kind()).isEqualTo(Finding.Kind.WARNING);
            assertThat(f.message()).contains("does not count", why);
            assertThat(f.mend()).contains(mend);
        });
        assertThat(answer.defaults()).anyMatch(d -> d.where().equals("power.intake_flow"));
    }

    @Test
    void ofTwoTablesTheOneReadItsOwnWayCounts() {
        String two = (published(1, WHOLE.replace("into", "out_of")) + published(1, WHOLE))
                .replace("]\nflow_tables: [", ", ");
        Answer answer = power(ENGINE + two, never());
        assertThat(of(answer, "flow_tables[1]"))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("does not count beside flow_tables[2]"));
        assertThat(of(answer, "flow_tables[2]"))
                .singleElement()
                .satisfies(f -> assertThat(f.kind()).isEqualTo(Finding.Kind.NOTE));
    }

    // ---- restrictor plates

    private static String plate(String where, String words) {
        return ENGINE + where + ": {" + words + "}\n";
    }

    @Test
    void aPlateTakesTorqueAndMoreOfItTheSmallerAndSharperItIs() {
        double bare = torque(ENGINE);
        double wide = torque(plate("intake", "restrictor_bore: 16 mm, restrictor_edge: rounded"));
        double sharp = torque(plate("intake", "restrictor_bore: 16 mm, restrictor_edge: thin"));
        double small = torque(plate("intake", "restrictor_bore: 11 mm, restrictor_edge: thin"));
        assertThat(wide).isLessThan(bare);
        assertThat(sharp).isLessThan(0.99 * wide);
        assertThat(power(plate("intake", "restrictor_bore: 11 mm, restrictor_edge: thin"), never())
                        .defaults())
                .anyMatch(d ->
                        d.where().equals("intake.restrictor_bore") && d.what().contains("coefficient"));
        assertThat(small).isLessThan(0.85 * sharp);
        assertThat(torque(plate("exhaust", "restrictor_bore: 10 mm, restrictor_edge: thin")))
                .isLessThan(0.95 * bare);
    }

    @Test
    void aPlateIsNamedAmongWhatHoldsTorqueDownAndItsEdgeIsAskedFor() {
        Answer answer = power(plate("intake", "restrictor_bore: 12 mm"), Runner.inTurn(PlainKernel::new, () -> true));
        assertThat(curve(answer).rows().get(0).bounds().get(0).what())
                .contains("restrictor plate under the carburettor");
        assertThat(answer.defaults())
                .anyMatch(d ->
                        d.where().equals("intake.restrictor_edge") && d.what().contains("not told"))
                .anyMatch(d ->
                        d.where().equals("exhaust.restrictor_bore") && d.what().startsWith("no restrictor"));
        assertThat(curve(answer).next().get(0).read().where()).isEqualTo("intake.restrictor_edge");
    }

    @Test
    void aPlateThatCannotBeOrIsHalfToldIsSaid() {
        assertThat(of(power(plate("intake", "restrictor_bore: 40 mm"), never()), "intake.restrictor_bore"))
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING && f.message().contains("does not count"));
        assertThat(of(power(plate("exhaust", "restrictor_edge: thin"), never()), "exhaust.restrictor_edge"))
                .anyMatch(f -> f.mend().contains("exhaust.restrictor_bore"));
    }

    // ---- lift tables

    /** Up and down about 109 degrees after overlap in a power of the cosine, at 0.15 mm 119 degrees before and behind it whatever the power: opening at 10 and closing at 48. */
    private static String lifted(double power) {
        double half = 0.5 * Math.PI * 119 / Math.acos(Math.pow(0.15 / 6.4, 1 / power));
        StringBuilder rows = new StringBuilder();
        for (int degrees = -65; degrees <= 283; degrees += 3) {
            double cosine = Math.abs(degrees - 109) < half ? Math.cos(0.5 * Math.PI * (degrees - 109) / half) : 0;
            rows.append(rows.isEmpty() ? "" : ", ")
                    .append(String.format(Locale.ROOT, "%d°: %.3f mm", degrees, 6.4 * Math.pow(cosine, power)));
        }
        return "lift_tables: [{valve: intake, at: valve, rows: {" + rows + "}}]\n";
    }

    private static final String NO_EVENTS = ENGINE.replace(" intake_opens: 12° ± 2°, intake_closes: 46° ± 2°,", "");

    @Test
    void aFullerLiftTableGivesMoreTorqueThanALeanerOne() {
        double fuller = torque(NO_EVENTS + lifted(1.5));
        double leaner = torque(NO_EVENTS + lifted(4));
        assertThat(fuller).isGreaterThan(1.002 * leaner);
        Answer answer = power(NO_EVENTS + lifted(1.5), never());
        assertThat(of(answer, "lift_tables[1]")).anyMatch(f -> f.message().contains("is lifted as this table has it"));
    }

    @Test
    void aLiftTableWithoutTheRestOfTheTimingIsToldNotToCount() {
        Answer answer = power(
                NO_EVENTS.replace(", exhaust_opens: 50° ± 2°, exhaust_closes: 12° ± 2°", "") + lifted(1.5), never());
        assertThat(of(answer, "lift_tables[1]"))
                .filteredOn(f -> f.kind() == Finding.Kind.WARNING)
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.message()).contains("does not count for torque", "open and close is not known");
                    assertThat(f.mend()).contains("tables of both valves");
                });
    }
}
