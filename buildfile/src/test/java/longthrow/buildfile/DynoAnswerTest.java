package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.Logs;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/**
 * From a sheet of runs to the answer. The scenario "did the header help?" (invented engine) with the figures that are written beside it; half their last digit is allowed.
 */
class DynoAnswerTest {
    private static final String HEADER = Repository.text("examples/dyno/header.yaml");

    static Answer answer(String sheet) {
        ReadDynoSheet read = DynoSheetFile.read(sheet);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return Dyno.of(read.sheet().orElseThrow(), Logs.none());
    }

    private static DynoRuns runs(String sheet) {
        return answer(sheet).runs().orElseThrow();
    }

    private static String changed(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    private static double factor(DynoRuns.Run run) {
        return run.factor().map(Measured::value).orElse(1.0);
    }

    private static List<DynoRuns.Run> counted(DynoRuns runs, String session) {
        return runs.runs().stream()
                .filter(r -> r.session().equals(session) && r.counts())
                .toList();
    }

    private static double mean(DynoRuns runs, String session) {
        return counted(runs, session).stream()
                .mapToDouble(r -> r.power().orElseThrow().figure().value() / 1000)
                .average()
                .orElseThrow();
    }

    private static DynoRuns.Way way(DynoRuns.Gain gain, String how) {
        return gain.others().stream()
                .filter(w -> w.how().contains(how))
                .findFirst()
                .orElseThrow();
    }

    /** Two dynamometers differ by more than a header gives: the last session on another one leaves the baseline not repeated. */
    @Test
    void whatRanOnAnotherDynamometerIsHeldAgainstNothing() {
        Answer answer = answer(changed(HEADER, "  - name: A2\n", "  - name: A2\n    dyno: the club's\n"));
        DynoRuns runs = answer.runs().orElseThrow();
        assertThat(runs.gains().get(0).verdict()).isEqualTo(DynoRuns.Verdict.BASELINE_NOT_REPEATED);
        assertThat(answer.findings())
                .anyMatch(f -> f.where().equals("session A2")
                        && f.message().contains("the club's")
                        && f.message().contains("own drum"));
        assertThat(runs.runs())
                .filteredOn(r -> r.session().equals("A2"))
                .hasSize(5)
                .allMatch(r -> !r.counts() && r.why().contains("another dynamometer"));
    }

    /** What the dynamometer showed has no doubt of its own in such a sheet: that of the air alone would be too little. */
    @Test
    void aFigureWithoutItsPlusMinusHasADoubtThatIsNotKnown() {
        assertThat(runs(HEADER).runs())
                .allMatch(r -> r.power().orElseThrow().figure().isUnknown());
        DynoRuns told = runs(changed(HEADER, "{peak: 9.71 kW}", "{peak: 9.71 kW ± 0.05 kW}"));
        assertThat(told.runs().stream()
                        .filter(r -> !r.power().orElseThrow().figure().isUnknown()))
                .hasSize(2)
                .allMatch(r -> r.power().orElseThrow().figure().expanded() > 0.05e3);
    }

    @Test
    void headerIsARealGainByTheFiguresOfTheScenario() {
        DynoRuns runs = runs(HEADER);
        assertThat(runs.standard()).isEqualTo("ISO 1585 (spark ignition)");
        assertThat(runs.figure()).isEqualTo(Dimension.POWER);
        assertThat(factor(runs.runs().get(0))).isCloseTo(0.9925, within(5e-5));
        assertThat(factor(runs.runs().get(5))).isCloseTo(1.0033, within(1e-4)); // other vapour formulas within 0.0001
        assertThat(factor(runs.runs().get(10))).isCloseTo(1.0132, within(5e-5));
        assertThat(mean(runs, "A1")).isCloseTo(9.633, within(5e-4));
        assertThat(mean(runs, "B")).isCloseTo(9.789, within(5e-4));
        assertThat(mean(runs, "A2")).isCloseTo(9.562, within(5e-4));
        DynoRuns.Gain gain = runs.gains().get(0);
        assertThat(runs.gains()).hasSize(1);
        assertThat(gain.verdict()).isEqualTo(DynoRuns.Verdict.REAL_GAIN);
        assertThat(gain.gain()).isCloseTo(0.020, within(5e-4));
        assertThat(gain.half()).isCloseTo(0.0045, within(5e-5));
        assertThat(gain.anyDrift()).isCloseTo(0.006, within(5e-4));
        assertThat(way(gain, "Welch").half()).isCloseTo(0.007, within(5e-4));
        assertThat(way(gain, "first baseline session alone").gain()).isCloseTo(0.016, within(5e-4));
        assertThat(way(gain, "as read").gain()).isCloseTo(0.012, within(5e-4));
        assertThat(way(gain, "corrected, warm-up pulls too").gain()).isCloseTo(0.024, within(5e-4));
        assertThat(gain.of()).isEqualTo("the peak");
        assertThat(gain.points()).isEmpty();
        assertThat(runs.setups()).isEmpty();
    }

    @Test
    void firstPullsAreOutWithTheReason() {
        DynoRuns runs = runs(HEADER);
        assertThat(runs.runs()).hasSize(15);
        assertThat(runs.runs().stream().filter(r -> !r.counts()))
                .extracting(r -> r.session() + r.name() + ": " + r.why())
                .containsExactly(
                        "A11: first pull of its session: warm-up",
                        "B1: first pull of its session: warm-up",
                        "A21: first pull of its session: warm-up");
    }

    @Test
    void verdictIsSaidInAPlainSentenceAndTheInstrumentsThatWereTakenForGranted() {
        Answer answer = answer(HEADER);
        DynoRuns runs = answer.runs().orElseThrow();
        assertThat(runs.sentences())
                .containsExactly(
                        "Real as far as 3 sessions tell: 'header' gains, peak +2.0 ± 0.6 % by ISO 1585 (spark ignition).");
        assertThat(runs.gains().get(0).sentences())
                .anyMatch(s -> s.contains("+2.00 ± 0.45 % if the engine drifted on a straight line"))
                .anyMatch(s -> s.startsWith("The baseline drifted by -0.7"))
                .anyMatch(s -> s.contains("the peak alone"));
        assertThat(answer.invented()).isTrue();
        assertThat(answer.defaults())
                .extracting(DefaultUsed::where)
                .contains("sessions.air.pressure", "sessions.air.temperature", "sessions.air.humidity");
        assertThat(runs.cautions()).anyMatch(c -> c.contains("carbon monoxide"));
    }

    @Test
    void withoutTheBaselineRunAgainNothingIsShown() {
        DynoRuns runs = runs(HEADER.substring(0, HEADER.indexOf("  - name: A2")));
        DynoRuns.Gain gain = runs.gains().get(0);
        assertThat(gain.verdict()).isEqualTo(DynoRuns.Verdict.BASELINE_NOT_REPEATED);
        assertThat(runs.sentences().get(0))
                .contains("Not shown", "'stock' was not run both before and after 'header'", "+1.6 %");
    }

    @Test
    void aSessionWhoseAirIsNotKnownIsHeldAgainstNothing() {
        Answer answer = answer(changed(HEADER, "air: {pressure: 99.55 kPa, temperature: 23.0 °C, humidity: 41 %}", ""));
        DynoRuns runs = answer.runs().orElseThrow();
        assertThat(runs.gains()).isEmpty();
        assertThat(answer.findings())
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING
                        && f.where().equals("session B")
                        && f.message().contains("are not all known"));
        DynoRuns.Run header = runs.runs().get(6);
        assertThat(header.counts()).isFalse();
        assertThat(header.factor()).isEmpty();
        assertThat(header.power().orElseThrow().figure().value()).isEqualTo(9820);
        assertThat(runs.sentences()).anyMatch(s -> s.contains("the air of session B is not known whole"));
    }

    @Test
    void airThatNobodyReadIsNotMadeUp() {
        String sheet = HEADER.replaceAll("(?m)^    air: .*\n", "");
        Answer answer = answer(sheet);
        assertThat(answer.runs().orElseThrow().gains()).isEmpty();
        assertThat(answer.findings().stream().filter(f -> f.message().contains("are not all known")))
                .hasSize(3);
        assertThat(answer.defaults()).isEmpty();
        assertThat(answer.runs().orElseThrow().sentences())
                .containsExactly(
                        "No run is held against another: the air of no session is known whole, and without it nothing can be corrected to ISO 1585 (spark ignition).");
    }

    @Test
    void asReadNothingIsCorrectedAndThatIsSaid() {
        DynoRuns runs = runs(changed(HEADER, "standard: iso_1585", "standard: none"));
        assertThat(runs.standard()).isEmpty();
        assertThat(runs.runs()).allMatch(r -> r.factor().isEmpty());
        assertThat(mean(runs, "B")).isCloseTo((9.82 + 9.72 + 9.76 + 9.73) / 4, within(1e-12));
        assertThat(runs.sentences().get(0)).contains("uncorrected");
        assertThat(runs.gains().get(0).sentences()).anyMatch(s -> s.startsWith("Nothing is corrected for the weather"));
    }

    @Test
    void eachStandardStandsByItsNameOnItsFigures() {
        DynoRuns sae = runs(changed(HEADER, "iso_1585", "sae_j1349_2004"));
        DynoRuns din = runs(changed(HEADER, "iso_1585", "din_70020"));
        assertThat(sae.standard()).startsWith("SAE J1349");
        assertThat(din.standard()).startsWith("DIN 70020");
        assertThat(sae.sentences().get(0)).contains(sae.standard());
        assertThat(din.sentences().get(0)).contains(din.standard());
        // DIN 70020 refers to 101.3 kPa and 20 °C, so that it reads the same pulls higher than ISO 1585 with 99 kPa and
        // 25 °C
        assertThat(mean(din, "B")).isGreaterThan(mean(runs(HEADER), "B"));
    }

    @Test
    void airOutsideWhatTheStandardIsMeantForIsSaid() {
        Answer answer = answer(changed(HEADER, "temperature: 26.5 °C", "temperature: 41 °C"));
        assertThat(answer.findings())
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING
                        && f.where().equals("session A2")
                        && f.message().contains("air temperature 41.0 °C is outside"));
        assertThat(answer.runs().orElseThrow().gains()).hasSize(1);
    }

    @Test
    void hotAirOfOneRunIsSaidOfThatRun() {
        String sheet = changed(HEADER, "{peak: 9.82 kW}", "{name: hot, peak: 9.82 kW, air: {temperature: 42 °C}}");
        assertThat(answer(sheet).findings())
                .anyMatch(f ->
                        f.where().equals("run hot of B") && f.message().contains("air temperature 42.0 °C is outside"));
    }

    @Test
    void aRunsOwnAirCountsAndWhatWasNotReadAgainIsTheSessions() {
        String whole = changed(
                HEADER,
                "{peak: 9.82 kW}",
                "{peak: 9.82 kW, air: {pressure: 99.55 kPa, temperature: 27.0 °C, humidity: 41 %}}");
        String part = changed(HEADER, "{peak: 9.82 kW}", "{peak: 9.82 kW, air: {temperature: 27.0 °C}}");
        DynoRuns.Run own = runs(part).runs().get(6);
        assertThat(factor(own))
                .isGreaterThan(1.01)
                .isEqualTo(factor(runs(whole).runs().get(6)));
        assertThat(runs(part).gains().get(0).gain())
                .isGreaterThan(runs(HEADER).gains().get(0).gain() + 0.001)
                .isEqualTo(runs(whole).gains().get(0).gain());
    }

    @Test
    void horsepowerTellsTheSame() {
        String hp = HEADER;
        for (int hundredths = 930; hundredths < 990; hundredths++) {
            double kilowatt = hundredths / 100.0;
            hp = hp.replace(
                    String.format(Locale.ROOT, "%.2f kW", kilowatt),
                    String.format(Locale.ROOT, "%.6f hp", Units.HORSEPOWER.fromSi(1000 * kilowatt)));
        }
        assertThat(hp).doesNotContain("9.7 kW").contains(" hp}");
        assertThat(runs(hp).gains().get(0).gain())
                .isCloseTo(runs(HEADER).gains().get(0).gain(), within(1e-6));
    }

    @Test
    void poundFeetAreTorque() {
        DynoRuns runs = runs(HEADER.replace(" kW", " lb-ft"));
        assertThat(runs.figure()).isEqualTo(Dimension.TORQUE);
        assertThat(runs.runs().get(1).power()).isEmpty();
        assertThat(runs.runs().get(1).torque().orElseThrow().figure().value())
                .isCloseTo(9.71 * 1.3558179 * factor(runs.runs().get(1)), within(1e-5));
    }

    @Test
    void aRunSetAsideIsOutByItsOwnersWord() {
        DynoRuns runs = runs(changed(HEADER, "{peak: 9.82 kW}", "{peak: 9.82 kW, aside: fuel tap half shut}"));
        DynoRuns.Run aside = runs.runs().get(6);
        assertThat(aside.counts()).isFalse();
        assertThat(aside.why()).isEqualTo("set aside: fuel tap half shut");
        assertThat(runs.gains().get(0).gain())
                .isLessThan(runs(HEADER).gains().get(0).gain());
    }

    private static final String TABLE = """
            longthrow_dyno: 1
            name: jet
            invented: yes
            standard: none
            bench: {kind: table}
            sessions:
              - name: A1
                setup: old jet
                runs:
                  - {rows: {2500 rpm: 11.9 N·m, 3000 rpm: 12.4 N·m, 3500 rpm: 12.0 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.5 N·m, 3500 rpm: 12.1 N·m}}
                  - {rows: {2500 rpm: 12.1 N·m, 3000 rpm: 12.5 N·m, 3500 rpm: 12.2 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.6 N·m, 3500 rpm: 12.1 N·m}}
              - name: B
                setup: new jet
                runs:
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.6 N·m, 3500 rpm: 12.6 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.9 N·m, 3500 rpm: 12.7 N·m}}
                  - {rows: {2500 rpm: 12.1 N·m, 3000 rpm: 12.8 N·m, 3500 rpm: 12.8 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.8 N·m, 3500 rpm: 12.7 N·m}}
              - name: A2
                setup: old jet
                runs:
                  - {rows: {2500 rpm: 11.9 N·m, 3000 rpm: 12.4 N·m, 3500 rpm: 12.0 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.5 N·m, 3500 rpm: 12.1 N·m}}
                  - {rows: {2500 rpm: 12.1 N·m, 3000 rpm: 12.5 N·m, 3500 rpm: 12.2 N·m}}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.6 N·m, 3500 rpm: 12.1 N·m}}
            """;

    @Test
    void rowsAreHeldAgainstEachOtherAtTheirOwnSpeeds() {
        DynoRuns runs = runs(TABLE);
        DynoRuns.Gain gain = runs.gains().get(0);
        assertThat(gain.baseline()).isEqualTo("old jet"); // the first session's, since none is named
        assertThat(gain.verdict()).isEqualTo(DynoRuns.Verdict.NOT_PROVED);
        assertThat(gain.points())
                .extracting(p -> Math.round(Units.RPM.fromSi(p.speed())))
                .containsExactly(2500L, 3000L, 3500L);
        // by hand from the three pulls of each session that count: 12.0333 and 12.0333; 12.5333 and 12.8333; 12.1333
        // and 12.7333
        assertThat(gain.points().get(0).gain()).isCloseTo(0, within(1e-9));
        assertThat(gain.points().get(1).gain()).isCloseTo(0.3 / (12.0 + 1.6 / 3), within(1e-4));
        assertThat(gain.points().get(2).gain()).isCloseTo(0.6 / (12.0 + 0.4 / 3), within(1e-4));
        assertThat(runs.setups()).extracting(DynoRuns.Setup::name).containsExactly("old jet", "new jet");
        assertThat(runs.setups()).extracting(DynoRuns.Setup::runs).containsExactly(6, 3);
        assertThat(runs.setups().get(1).torque().get(1).value()).isCloseTo(38.5 / 3, within(1e-9));
    }

    @Test
    void rowsAtOtherSpeedsShareAGridAndASpeedThatOneLacksIsTold() {
        Answer answer = answer(
                TABLE.replace("3500 rpm: 12.7 N·m", "3400 rpm: 12.7 N·m").replace("3500 rpm: 12.8", "3600 rpm: 12.8"));
        DynoRuns.Gain gain = answer.runs().orElseThrow().gains().get(0);
        assertThat(gain.points()).hasSizeGreaterThan(10);
        double last = gain.points().get(gain.points().size() - 1).speed();
        assertThat(Units.RPM.fromSi(last)).isLessThanOrEqualTo(3400 + 1e-6);
        assertThat(answer.findings())
                .anyMatch(f -> f.where().equals("speeds") && f.message().contains("not used"));
    }

    @Test
    void onlySpeedsThatAreUsedCount() {
        DynoRuns.Gain gain = runs(changed(TABLE, "standard: none\n", "standard: none\nspeeds: {from: 2900 rpm}\n"))
                .gains()
                .get(0);
        assertThat(gain.points()).hasSize(2);
        assertThat(gain.gain()).isGreaterThan(runs(TABLE).gains().get(0).gain());
        Answer none = answer(changed(TABLE, "standard: none\n", "standard: none\nspeeds: {from: 5000 rpm}\n"));
        assertThat(none.findings())
                .anyMatch(f -> f.message().contains("no speed is in the runs and between 'from' and 'to'"));
        assertThat(none.runs().orElseThrow().gains()).isEmpty();
    }

    @Test
    void powerInRowsIsTorqueBySpeed() {
        String power = TABLE.replace(
                "{2500 rpm: 12.0 N·m, 3000 rpm: 12.9 N·m, 3500 rpm: 12.7 N·m}",
                "{2500 rpm: 3.141593 kW, 3000 rpm: 4.052655 kW, 3500 rpm: 4.654793 kW}");
        assertThat(power).isNotEqualTo(TABLE);
        assertThat(runs(power).gains().get(0).gain())
                .isCloseTo(runs(TABLE).gains().get(0).gain(), within(1e-6));
    }

    @Test
    void peaksAmongRowsAreHeldAgainstTheirPeaksAndThatIsSaid() {
        String mixed = changed(
                TABLE, "{rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.9 N·m, 3500 rpm: 12.7 N·m}}", "{peak: 12.9 N·m}");
        Answer answer = answer(mixed);
        assertThat(answer.runs().orElseThrow().gains().get(0).of()).isEqualTo("the peak");
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("some runs are a peak alone"));
    }

    @Test
    void runsOfTheReferenceEngineAreNoChange() {
        String checked = changed(TABLE, "  - name: B\n", """
                  - name: R
                    setup: reference
                    check: yes
                    runs: [{peak: 5.0 N·m}]
                  - name: B
                """);
        DynoRuns runs = runs(checked);
        assertThat(runs.gains()).extracting(DynoRuns.Gain::setup).containsExactly("new jet");
        assertThat(runs.runs().stream().filter(r -> r.session().equals("R")))
                .extracting(DynoRuns.Run::why)
                .containsExactly("run of the reference engine");
        assertThat(runs.gains().get(0).of()).isNotEqualTo("the peak");
    }

    @Test
    void aLogThatIsNotThereIsSaidAndTheOthersCount() {
        DynoRuns runs = runs(changed(
                TABLE, "{rows: {2500 rpm: 12.1 N·m, 3000 rpm: 12.8 N·m, 3500 rpm: 12.8 N·m}}", "{log: lost.csv}"));
        assertThat(runs.runs().get(6).why()).isEqualTo("its file was not handed in");
        assertThat(runs.gains()).hasSize(1);
    }
}
