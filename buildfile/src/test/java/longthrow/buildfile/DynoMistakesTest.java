package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What owners write down wrongly, and what they pick: each is named where the verdict stands. The engines are invented. */
class DynoMistakesTest {
    private static final String HEADER = Repository.text("examples/dyno/header.yaml");

    private static String changed(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    private static Answer answer(String sheet, Map<String, String> files) {
        ReadDynoSheet read = DynoSheetFile.read(sheet);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        DynoSheet parsed = read.sheet().orElseThrow();
        return Dyno.of(
                parsed,
                new LogsOfASheet(
                        parsed,
                        name -> Optional.ofNullable(files.get(name))
                                .map(text -> LogSource.of(text.getBytes(StandardCharsets.UTF_8))),
                        1));
    }

    private static Answer answer(String sheet) {
        return answer(sheet, Map.of());
    }

    private static void warns(Answer answer, String where, String words) {
        assertThat(answer.findings())
                .filteredOn(f -> f.kind() == Finding.Kind.WARNING)
                .anyMatch(f -> f.where().contains(where) && f.message().contains(words));
    }

    // ---- a brake's calibration

    /** 20 N m at the crank on an arm of 0.4 m: the cell carries 50 N, which is 5.0986 kgf (g of ISO 80000-3). The cell shows a tenth too much and 1 kgf with nothing on it. */
    private static final String BRAKE = """
            longthrow_dyno: 1
            name: brake
            invented: yes
            standard: none
            bench: {kind: brake, arm: 400 mm ± 0.1 mm, engine_turns: 1, calibration: CALIBRATION}
            sessions: [{name: A, setup: stock, runs: [{log: a.csv}, {log: b.csv}]}]
            """;

    private static String sweep(String column, double shown, long seed) {
        Random random = new Random(seed);
        StringBuilder log = new StringBuilder("Time [s],Engine speed [rpm]," + column + "\n");
        for (int i = 0; i < 400; i++) {
            log.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.1f,%.4f%n",
                    i * 0.02,
                    2500 + i * 5.0,
                    shown * (1 + 0.002 * random.nextGaussian())));
        }
        return log.toString();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{0 kg: 1 kg, 2 kg: 3.2 kg, 4 kg: 5.4 kg, 6 kg: 7.6 kg} | Kraft [kg]",
                "{0 kg: 1000 g, 2 kg: 3200 g, 4 kg: 5400 g, 6 kg: 7600 g} | Kraft [kg]",
                "{0 kg: 1 kgf, 2 kg: 3.2 kgf, 6 kg: 7.6 kgf} | Kraft [kgf]",
                "{0 kg: 1, 2 kg: 3.2, 4 kg: 5.4, 6 kg: 7.6} | Load [kg]",
            })
    void aCalibrationInMassIsThatOfItsWeight(String calibration, String column) {
        double shown = 1 + 1.1 * 50 / 9.80665;
        DynoRuns runs = answer(
                        changed(BRAKE, "CALIBRATION", calibration),
                        Map.of("a.csv", sweep(column, shown, 1), "b.csv", sweep(column, shown, 2)))
                .runs()
                .orElseThrow();
        assertThat(runs.runs().get(1).torque().orElseThrow().figure().value()).isCloseTo(20, within(0.2));
    }

    /** Two loads, a cell that turns back: what is written cannot be used and is not passed over. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{0 kg: 1 kg, 6 kg: 7.6 kg} | 2 lines at 2 loads",
                "{5 kg: 6.5 kg} | 1 line at 1 load",
                "{0 kg: 0, 5 kg: 9, 10 kg: 5} | do not follow the loads",
            })
    void aCalibrationThatCannotBeUsedTellsNoTorque(String calibration, String why) {
        DynoRuns runs = answer(
                        changed(BRAKE, "CALIBRATION", calibration),
                        Map.of("a.csv", sweep("Kraft [kg]", 6, 1), "b.csv", sweep("Kraft [kg]", 6, 2)))
                .runs()
                .orElseThrow();
        assertThat(runs.runs()).allMatch(r -> r.torque().isEmpty() && r.why().contains(why));
        assertThat(runs.sentences().get(0)).contains(why);
    }

    @Test
    void farBeyondTheLoadsThatWereHungThereIsNoTorque() {
        DynoRuns runs = answer(
                        changed(BRAKE, "CALIBRATION", "{0 kg: 0 kg, 1 kg: 1 kg, 2 kg: 2 kg}"),
                        Map.of("a.csv", sweep("Kraft [kg]", 5.1, 1), "b.csv", sweep("Kraft [kg]", 5.1, 2)))
                .runs()
                .orElseThrow();
        assertThat(runs.runs())
                .allMatch(r -> r.torque().isEmpty() && r.why().contains("so far beyond it tells nothing"));
    }

    // ---- one run twice

    @Test
    void aLogNamedTwiceOrCopiedCountsOnce() {
        Map<String, String> files = Map.of("a.csv", sweep("Kraft [N]", 50, 1), "b.csv", sweep("Kraft [N]", 50, 1));
        Answer answer = answer(changed(BRAKE, ", calibration: CALIBRATION", ""), files);
        warns(answer, "run 2 of A", "to the last digit");
        assertThat(answer.runs().orElseThrow().runs().get(1).why()).contains("the same log as run 1 of A");
    }

    // ---- picked runs

    /** The scenario's B with its two lowest set aside; with them back in it is said what comes out. */
    @Test
    void runsSetAsideByHandAreReckonedBackIn() {
        String picked = changed(
                HEADER, "{peak: 9.72 kW}, {peak: 9.76 kW}", "{peak: 9.72 kW, aside: felt off}, {peak: 9.76 kW}");
        DynoRuns runs = answer(picked).runs().orElseThrow();
        assertThat(runs.sentences().get(1))
                .startsWith(
                        "1 run was set aside by hand. With it back in the figures say: Real as far as 3 sessions tell: 'header' gains, peak"
                                + " +2.0 ± 0.6 %");
        assertThat(runs.sentences().get(0)).startsWith("Real").doesNotContain("hangs on");
        String turned = HEADER.replace("{peak: 9.72 kW}", "{peak: 9.50 kW, aside: felt off}")
                .replace("{peak: 9.76 kW}", "{peak: 9.50 kW, aside: felt off}");
        assertThat(answer(turned).runs().orElseThrow().sentences().get(0))
                .contains("2 runs were set aside by hand")
                .contains("hangs on what was set aside");
    }

    // ---- peaks

    @Test
    void aPeakAtTheEndOfATableIsNone() {
        String sheet = HEADER.replace(
                "{peak: 9.82 kW}", "{rows: {3000 rpm: 13.1 N·m, 3500 rpm: 13.4 N·m, 4000 rpm: 13.0 N·m}}");
        DynoRuns runs = answer(sheet).runs().orElseThrow();
        assertThat(runs.runs())
                .filteredOn(r -> r.session().equals("B") && r.name().equals("2"))
                .allMatch(r -> !r.counts() && r.why().contains("may lie beyond"));
        assertThat(runs.gains().get(0).gain()).isCloseTo(0.02, within(0.005));
    }

    /** A first pull that was kept as a peak alone throws no curves away. */
    @Test
    void warmUpDoesNotDecideWhatIsCompared() {
        StringBuilder sheet = new StringBuilder("""
                longthrow_dyno: 1
                name: tables
                invented: yes
                standard: none
                bench: {kind: table}
                sessions:
                """);
        Random random = new Random(3);
        for (String session : new String[] {"A1 stock 1", "B pipe 1.03", "A2 stock 1"}) {
            String[] words = session.split(" ", -1);
            sheet.append("  - {name: ")
                    .append(words[0])
                    .append(", setup: ")
                    .append(words[1])
                    .append(", runs: [{peak: 4 kW}");
            for (int k = 0; k < 4; k++) {
                double level = Double.parseDouble(words[2]) * (1 + 0.003 * random.nextGaussian());
                sheet.append(String.format(
                        Locale.ROOT,
                        ", {rows: {3000 rpm: %.3f N·m, 3500 rpm: %.3f N·m, 4000 rpm: %.3f N·m}}",
                        13.1 * level,
                        13.4 * level,
                        13.0 * level));
            }
            sheet.append("]}\n");
        }
        DynoRuns runs = answer(sheet.toString()).runs().orElseThrow();
        assertThat(runs.gains().get(0).of()).contains("area");
        assertThat(runs.gains().get(0).points()).hasSize(3);
        assertThat(runs.runs()).filteredOn(DynoRuns.Run::counts).hasSize(12);
        assertThat(runs.sentences().get(0))
                .startsWith("Not proved, since nothing is corrected for the weather")
                .contains("By the figures alone: Real as far as 3 sessions tell, the weather left in:");
    }

    // ---- air, dates, names, bench

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "humidity: 46 % | humidity: 0.46 % | session A1 | drier than air is",
                "pressure: 99.62 kPa | pressure: 101.3 kPa | sessions A1 and B | the barometer goes from 101.3 kPa to 99.55 kPa",
                "temperature: 19.0 °C | temperature: 19 °F | sessions A1 and B | the thermometer goes from 19 °F to 23.0 °C",
                "setup: header | setup: 'Stock ' | setups | are written as two setups",
                "standard: iso_1585 | standard: none | standard | the air alone makes 2.1 %",
                "name: A1 | {name}: A1 | - | -",
            })
    void slipsAreNamed(String from, String to, String where, String words) {
        if (where.equals("-")) {
            assertThat(answer(HEADER).findings()).noneMatch(f -> f.kind() == Finding.Kind.WARNING);
            return;
        }
        warns(answer(changed(HEADER, from, to)), where, words);
    }

    @Test
    void oneStandardAtmosphereForAllSessionsWasNotRead() {
        warns(
                answer(HEADER.replace("99.62 kPa", "101.325 kPa")
                        .replace("99.55 kPa", "101.325 kPa")
                        .replace("99.45 kPa", "101.325 kPa")),
                "air",
                "standard atmosphere");
    }

    @Test
    void datesAgainstTheOrderAreNamed() {
        warns(
                answer(HEADER.replace("    setup: stock\n", "    setup: stock\n    date: 2026-05-09\n")
                        .replace("    setup: header\n", "    setup: header\n    date: 2026-05-02\n")),
                "session B",
                "lies before that of session A1");
    }

    @Test
    void aRunOfAnotherUnitIsNamedAndAWildOneDoesNotCount() {
        warns(answer(changed(HEADER, "{peak: 9.72 kW}", "{peak: 9.72 hp}")), "run 3 of B", "0.74 times the middle");
        Answer wild = answer(changed(HEADER, "{peak: 9.72 kW}", "{peak: 97.2 kW}"));
        warns(wild, "run 3 of B", "it does not count");
        assertThat(wild.runs().orElseThrow().gains().get(0).gain()).isCloseTo(0.021, within(0.002));
    }

    @Test
    void aSetupInAnotherUnitIsMoreThanAPartMakes() {
        String sheet = HEADER;
        int from = sheet.indexOf("setup: header");
        int to = sheet.indexOf("name: A2");
        sheet = sheet.substring(0, from) + sheet.substring(from, to).replace("kW", "PS") + sheet.substring(to);
        warns(answer(sheet), "setup header", "more than a part makes");
    }

    @Test
    void aSessionWithoutAirIsTheReasonWhyNothingIsCompared() {
        DynoRuns runs = answer(changed(
                        HEADER, "{pressure: 99.55 kPa, temperature: 23.0 °C, humidity: 41 %}", "{pressure: 99.55 kPa}"))
                .runs()
                .orElseThrow();
        assertThat(runs.sentences()).hasSize(1);
        assertThat(runs.sentences().get(0)).contains("the air of session B is not known whole");
    }

    @ParameterizedTest
    @CsvSource({
        "inertia_drum, drum_inertia: 1e9 kg·m²",
        "inertia_drum, engine_inertia: 12 kg·m²",
        "inertia_drum, drive_efficiency: 9.6 %",
        "brake, arm: 300 m",
    })
    void aBenchThatNoSuchEngineNeedsIsNamed(String kind, String figure) {
        Answer answer = answer(HEADER.replace("kind: table, name: own drum", "kind: " + kind + ", " + figure));
        warns(answer, "bench." + figure.split(":", 2)[0], "is not what a bench for such engines has");
    }

    @Test
    void aSessionCopiedFromAnotherIsNamed() {
        String first = HEADER.substring(HEADER.indexOf("      - {peak: 9.38 kW}"), HEADER.indexOf("  - name: B"));
        String last = "    runs:\n" + first;
        String sheet = HEADER.substring(0, HEADER.lastIndexOf("    runs: [{peak: 9.40 kW}")) + last;
        warns(answer(sheet), "session A2", "those of session A1 to the last digit");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{peak: 9.72 kW} | {peak: 9.72 kW, aside: true} | is no reason",
                "{peak: 9.72 kW} | {rows: {3000 rpm: 9 kW, 1e9 rpm: 9.72 kW}} | is faster than such an engine turns",
            })
    void whatIsNoReasonOrNoSpeedIsRefused(String from, String to, String words) {
        assertThat(DynoSheetFile.read(changed(HEADER, from, to)).faults())
                .extracting(Fault::message)
                .anyMatch(m -> m.contains(words));
    }

    /** What a verdict hangs on is in doubt: then nothing is proved, whatever the figures say. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "standard: iso_1585 | standard: none | the weather is in these figures",
                "pressure: 99.62 kPa | pressure: 101.3 kPa | barometer or thermometer step",
                "pressure: 99.55 kPa, temperature: 23.0 °C | pressure: 85 kPa, temperature: 48.0 °C | lies outside what the standard is for",
                "humidity: 46 % | humidity: 0.46 % | a humidity was not read",
            })
    void whatAVerdictHangsOn(String from, String to, String why) {
        DynoRuns runs = answer(changed(HEADER, from, to)).runs().orElseThrow();
        assertThat(runs.gains().get(0).verdict()).isEqualTo(DynoRuns.Verdict.NOT_PROVED);
        assertThat(runs.sentences().get(0))
                .startsWith("Not proved, since")
                .contains(why)
                .contains("By the figures alone:");
    }

    @Test
    void sessionsOfDifferentDaysProveNothing() {
        String days = HEADER.replace("    setup: header\n", "    setup: header\n    date: 2026-05-20\n");
        days = days.replaceFirst("    setup: stock\n", "    setup: stock\n    date: 2026-05-02\n");
        assertThat(answer(days).runs().orElseThrow().sentences().get(0)).contains("ran on no day on which 'stock' ran");
        String day = HEADER.replace("    setup: header\n", "    setup: header\n    date: 2026-05-02\n")
                .replace("    setup: stock\n", "    setup: stock\n    date: 2026-05-02\n");
        assertThat(answer(day).runs().orElseThrow().gains().get(0).verdict()).isEqualTo(DynoRuns.Verdict.REAL_GAIN);
    }

    /** All pulls of a session alike, the first too: each is itself, and what is wrong is the display. */
    @Test
    void pullsThatAreAlikeAreNotTheFirst() {
        String sheet = HEADER.replaceAll("peak: [0-9.]+ kW", "peak: 9.7 kW");
        assertThat(answer(sheet).runs().orElseThrow().sentences().get(0)).contains("alike to the last digit");
    }

    @Test
    void aCellWithoutCalibrationIsNamed() {
        warns(
                answer(
                        changed(BRAKE, ", calibration: CALIBRATION", ""),
                        Map.of("a.csv", sweep("Kraft [N]", 50, 1), "b.csv", sweep("Kraft [N]", 50, 2))),
                "bench",
                "No calibration of the load cell");
    }

    @Test
    void aChangeThatRanElsewhereIsTheReason() {
        assertThat(answer(changed(HEADER, "    setup: header\n", "    setup: header\n    dyno: far brake\n"))
                        .runs()
                        .orElseThrow()
                        .sentences()
                        .get(0))
                .contains("session B ran on another dynamometer");
    }

    @Test
    void differentRatesAreNamed() {
        String sheet = changed(BRAKE, ", calibration: CALIBRATION", "")
                .replace("{log: a.csv}, {log: b.csv}", "{log: a.csv, rate: 50}, {log: b.csv, rate: 55}");
        warns(
                answer(sheet, Map.of("a.csv", sweep("Kraft [N]", 50, 1), "b.csv", sweep("Kraft [N]", 50, 2))),
                "rate",
                "told as 50 (a.csv) and 55 (b.csv)");
    }

    @Test
    void aCheckWithoutItsDayIsNamed() {
        warns(
                answer(changed(
                        HEADER,
                        "  - name: B\n",
                        "  - {name: R, setup: reference, check: yes, runs: [{peak: 4 kW}]}\n  - name: B\n")),
                "sessions R",
                "checks no day");
    }
}
