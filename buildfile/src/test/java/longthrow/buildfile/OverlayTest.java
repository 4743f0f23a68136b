package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.Overlay.Verdict;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.overlay.Overlays;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/** Runs over a prediction. Both are invented: a flat prediction of 10 ± 1 N·m, refused from 3200 rpm on, and tables of rows; figures are worked by hand beside each test. */
class OverlayTest {
    /** Of DIN 70020: at 101.3 kPa and 20 °C its factor is 1, whatever the humidity. */
    private static final String STANDARD_DAY =
            "{pressure: 101.3 kPa ± 0 kPa, temperature: 20.0 °C ± 0 °C, humidity: 50 % ± 0 %}";

    private static final String HOT_THIN_DAY =
            "{pressure: 95.0 kPa ± 0 kPa, temperature: 35.0 °C ± 0 °C, humidity: 50 % ± 0 %}";

    /** (101.3 / 95) times the root of (35 + 273) / (20 + 273). */
    private static final double HOT_THIN_FACTOR = 101.3 / 95 * Math.sqrt(308.0 / 293);

    private static Measured doubted(double value, double half) {
        return Measured.of(value, List.of(Source.at95("prediction", Source.Kind.ASSUMED, "prediction", half)));
    }

    private static Row row(double rpm) {
        double speed = Units.RPM.toSi(rpm);
        return rpm >= 3200
                ? new Row(speed, Standing.REFUSED, "a limit is passed", List.of(), List.of(), Optional.empty())
                : new Row(
                        speed,
                        Standing.APPROVED,
                        "",
                        List.of(
                                new Shaking.Figure("torque", "torque", Dimension.TORQUE, doubted(10, 1)),
                                new Shaking.Figure("power", "power", Dimension.POWER, doubted(10 * speed, speed))),
                        List.of(),
                        Optional.empty());
    }

    private static Answer predicted(double kilopascal, double celsius, double... rpm) {
        List<Row> rows = new ArrayList<>();
        for (double speed : rpm) {
            rows.add(row(speed));
        }
        TorqueCurve curve = new TorqueCurve(
                        "",
                        rows,
                        List.of(),
                        Double.NaN,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty())
                .with(new TorqueCurve.Air(
                        Measured.exact(1e3 * kilopascal), Measured.exact(celsius + 273.15), Measured.exact(0.5)));
        return new Answer(
                        "power",
                        "invented",
                        true,
                        UnitSystem.METRIC_FIRST,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of())
                .withTorque(curve);
    }

    private static Answer predicted() {
        return predicted(101.3, 20, 2000, 2200, 2400, 2600, 2800, 3000, 3200, 3400);
    }

    /** One session; the first run is the cold one, and falls out. */
    private static String sheet(String standard, String bench, String air, double... torques) {
        StringBuilder runs = new StringBuilder();
        for (double t : torques) {
            runs.append(String.format(
                    Locale.ROOT,
                    "      - {rows: {2000 rpm: %1$s, 2500 rpm: %1$s, 3000 rpm: %1$s, 3200 rpm: %1$s, 3600 rpm: %1$s}}\n",
                    t + " N·m ± 0.3 N·m"));
        }
        return "longthrow_dyno: 1\nname: rows of a brake\ninvented: yes\nstandard: " + standard + "\nbench: {" + bench
                + "}\nsessions:\n  - name: A\n    setup: stock\n    air: " + air + "\n    runs:\n" + runs;
    }

    private static final String AT_CRANK = "kind: table, drive_efficiency: 1";

    private static Overlay over(String sheet, Answer power) {
        return Overlays.onto(power, List.of(DynoAnswerTest.answer(sheet)))
                .torque()
                .orElseThrow()
                .overlays()
                .get(0);
    }

    private static Overlay.Held held(String sheet, Answer power) {
        return over(sheet, power).held().get(0);
    }

    private static String said(Overlay.Held held) {
        return String.join(" ", held.sentences());
    }

    /**
     * 9.4, 9.5, 9.6 N·m: mean 9.5, standard deviation 0.1, of the mean 4.3027 (Student, 2 degrees) x 0.1 / root 3 = 0.2484. Of one run ± 0.3, that is 3.1915, 3.1579 and 3.125 %, in the mean 3.1581 % or 0.3000.
     * Both: 0.3895. Over 10 ± 1: 0.95, and the root of 0.3895² + 1² over 10 = 0.1073.
     */
    @Test
    void whatLiesWithinBothDoubtsAgreesAndSaysHowMuchThatIsWorth() {
        Overlay.Held held = held(sheet("din_70020", AT_CRANK, STANDARD_DAY, 9, 9.4, 9.5, 9.6), predicted());
        assertThat(held.verdict()).isEqualTo(Verdict.AGREES);
        assertThat(held.of()).isEqualTo("the mean of 3 runs");
        assertThat(held.ratio()).isCloseTo(0.95, within(1e-9));
        assertThat(held.half()).isCloseTo(0.1073, within(5e-5));
        assertThat(held.within()).isEqualTo(3);
        assertThat(held.compared()).isEqualTo(3);
        Overlay.At at = held.points().get(1);
        assertThat(at.measuredHalf()).isCloseTo(0.3895, within(5e-5));
        assertThat(at.difference()).isCloseTo(10 / 9.5 - 1, within(1e-9));
        assertThat(at.half()).as("the root of 0.3895² + 1², over 9.5").isCloseTo(0.11297, within(5e-5));
        assertThat(said(held))
                .contains("0.95 ± 0.11 of that predicted", "3 of 3", "off by less than 11 % could not be told");
    }

    /** The refused speed and the one beyond stay without power; the prediction is the same to the last digit. */
    @Test
    void whatWasRunAtARefusedSpeedRaisesNothing() {
        Answer power = predicted();
        Answer laid = Overlays.onto(
                power, List.of(DynoAnswerTest.answer(sheet("din_70020", AT_CRANK, STANDARD_DAY, 9, 9.4, 9.5, 9.6))));
        TorqueCurve curve = laid.torque().orElseThrow();
        assertThat(curve.rows()).isEqualTo(power.torque().orElseThrow().rows());
        assertThat(curve.withOverlays(List.of())).isEqualTo(power.torque().orElseThrow());
        Overlay.Held held = curve.overlays().get(0).held().get(0);
        assertThat(held.points()).filteredOn(p -> !p.isCompared()).hasSize(2);
        assertThat(held.points().get(3).why()).isEqualTo("refused");
        assertThat(held.points().get(4).why()).contains("outside the speeds");
        assertThat(said(held))
                .contains(
                        "At 3200 rpm torque was measured and none is told: refused; that it was run there changes nothing of that.");
        assertThat(String.join(" ", curve.overlays().get(0).sentences()))
                .contains("Nothing of the prediction was moved", "does not show that it holds there");
    }

    @Test
    void moreThanBothDoubtsApartIsPredictedTooHighOrTooLow() {
        assertThat(held(sheet("din_70020", AT_CRANK, STANDARD_DAY, 7, 7, 7.1, 7), predicted())
                        .verdict())
                .isEqualTo(Verdict.TOO_HIGH);
        assertThat(held(sheet("din_70020", AT_CRANK, STANDARD_DAY, 12, 12, 12.1, 12), predicted())
                        .verdict())
                .isEqualTo(Verdict.TOO_LOW);
    }

    /** Read on a hot day in thin air, 10 N·m of the standard day are 9.147. Against a prediction in that air they are 9.147, against one in the standard's 10. */
    @Test
    void aHotThinDayShowsLess() {
        double read = Math.rint(1e4 * 10 / HOT_THIN_FACTOR) / 1e4;
        String sheet = sheet("din_70020", AT_CRANK, HOT_THIN_DAY, read, read, read, read);
        assertThat(held(sheet, predicted()).ratio()).isCloseTo(1, within(1e-5));
        Overlay.Held there = held(sheet, predicted(95, 35, 2000, 2200, 2400, 2600, 2800, 3000));
        assertThat(there.ratio()).isCloseTo(1 / HOT_THIN_FACTOR, within(1e-5));
        assertThat(HOT_THIN_FACTOR).isCloseTo(1.0933, within(5e-5));
        assertThat(there.points().get(0).measuredHalf())
                .as("no doubt of the weather where both airs are one: ± 0.3 of the run as read")
                .isCloseTo(0.3, within(1e-6));
        assertThat(held(sheet, predicted()).points().get(0).measuredHalf()).isGreaterThan(0.3 * HOT_THIN_FACTOR);
        assertThat(String.join(
                        " ", over(sheet, predicted(95, 35, 2000, 2200, 2400)).sentences()))
                .contains("35 °C", "95", "times 0.9147", "DIN 70020");
    }

    @Test
    void asReadNothingIsClaimedAndWhichAirEachStandsInIsSaid() {
        String sheet = sheet("none", AT_CRANK, HOT_THIN_DAY, 9, 9.4, 9.5, 9.6);
        Overlay.Held held = held(sheet, predicted());
        assertThat(held.verdict()).isEqualTo(Verdict.CANNOT_BE_TOLD);
        assertThat(held.ratio()).isCloseTo(0.95, within(1e-9));
        assertThat(said(held)).contains("the runs stand as read", "write 'standard'", "Of the shape alone");
        assertThat(over(sheet.replace("standard:", "engine: mine.yaml\nstandard:"), predicted())
                        .sentences())
                .contains("The sheet names mine.yaml as the build of its engine.");
        assertThat(over(sheet, predicted()).sentences().get(0))
                .contains("as they were read, in the air of their days", "101.3 kPa");
    }

    /** Behind a drive of unknown loss there is only a shape, unless there is more than was predicted for the crank. */
    @Test
    void behindADriveOfUnknownLossNoAgreementIsClaimed() {
        String drum = "kind: inertia_drum, drum_inertia: 2 kg·m² ± 0.02 kg·m², engine_turns: 3";
        Overlay.Held held = held(sheet("din_70020", drum, STANDARD_DAY, 9, 9.4, 9.5, 9.6), predicted());
        assertThat(held.verdict()).isEqualTo(Verdict.CANNOT_BE_TOLD);
        assertThat(said(held))
                .contains(
                        "what the drive takes is not known",
                        "drive_efficiency",
                        "the drive would hand on 95 %",
                        "from 0.0 % below to 0.0 % above")
                .doesNotContain("could not be told from a right one");
        Overlay.Held more = held(sheet("din_70020", drum, STANDARD_DAY, 13, 13, 13.1, 13), predicted());
        assertThat(more.verdict()).isEqualTo(Verdict.TOO_LOW);
        assertThat(said(more)).contains("even before what the drive takes is added");
        Overlay.Held told = held(
                sheet("din_70020", drum + ", drive_efficiency: 0.95 ± 0.01", STANDARD_DAY, 9, 9.4, 9.5, 9.6),
                predicted());
        assertThat(told.verdict()).isEqualTo(Verdict.AGREES);
        assertThat(told.ratio()).as("0.95 over 0.95").isCloseTo(1, within(1e-9));
    }

    @Test
    void whereADynamometerDoesNotSayOfWhatItTellsOnlyTheShapeIsSaid() {
        Overlay.Held held = held(sheet("din_70020", "kind: table", STANDARD_DAY, 9, 9.4, 9.5, 9.6), predicted());
        assertThat(held.verdict()).isEqualTo(Verdict.CANNOT_BE_TOLD);
        assertThat(said(held))
                .contains("at the crank or behind a drive is not said", "1 where it tells them at the crank");
    }

    /** Of figures without a ± it can be said that they lie in the prediction's band, and not that they lie out of it. */
    @Test
    void withoutADoubtOfTheMeasuredOnlyWhatLiesInTheBandIsTold() {
        String sheet =
                sheet("din_70020", AT_CRANK, STANDARD_DAY, 9, 9.4, 9.5, 9.6).replace(" ± 0.3 N·m", "");
        Overlay.Held inside = held(sheet, predicted());
        assertThat(inside.verdict()).isEqualTo(Verdict.AGREES);
        assertThat(inside.half()).isNaN();
        assertThat(said(inside)).contains("0.95 (± not known)", "no more than that they lie within");
        Overlay.Held beyond =
                held(sheet("din_70020", AT_CRANK, STANDARD_DAY, 7, 7, 7.1, 7).replace(" ± 0.3 N·m", ""), predicted());
        assertThat(beyond.verdict()).isEqualTo(Verdict.CANNOT_BE_TOLD);
        assertThat(said(beyond)).contains("write a ± beside");
    }

    /** Two speeds of somebody's choice are no curve: nothing is told between them, and the rows are read there. */
    @Test
    void betweenSingleSpeedsNothingIsPredicted() {
        Overlay.Held held =
                held(sheet("din_70020", AT_CRANK, STANDARD_DAY, 9, 9.4, 9.5, 9.6), predicted(101.3, 20, 2000, 3000));
        assertThat(held.points()).hasSize(2).allMatch(Overlay.At::isCompared);
    }

    /** The scenario's peaks: a table that does not say of what it tells, and figures without a ±. */
    @Test
    void ofPeaksAloneOnlyThePeakIsCompared() {
        String header = Repository.text("examples/dyno/header.yaml");
        Overlay overlay = over(header, predicted());
        assertThat(overlay.held()).extracting(Overlay.Held::name).containsExactly("stock", "header");
        assertThat(overlay.held()).allMatch(h -> h.verdict() == Verdict.CANNOT_BE_TOLD && h.compared() == 1);
        assertThat(said(overlay.held().get(0))).contains("Most power measured is", "Only the peak can be compared");
        Overlay crank = over(header.replace("kind: table", "kind: table, drive_efficiency: 1"), predicted());
        assertThat(said(crank.held().get(0)))
                .as("9.5 kW where 10 N·m at 3000 rpm, the highest speed that is told, are 3.1")
                .contains("the prediction is not told beyond 3000 rpm");
    }
}
