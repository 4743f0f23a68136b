package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import longthrow.core.answer.DynoRuns;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.Logs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet of runs that is wrong is refused with a message that says what, where, what was found, what fits there and how to mend it; nothing that is written makes reading or answering throw. */
class DynoSheetFileTest {
    private static final String SHEET = """
            longthrow_dyno: 1
            name: muffler
            standard: iso_1585
            bench: {kind: brake, arm: 300 mm ± 0.5 mm, calibration: {2 kg: 0.98, 5 kg: 2.46, 10 kg: 4.90}}
            baseline: stock
            speeds: {from: 2000 rpm, to: 6000 rpm}
            sessions:
              - name: A1
                setup: stock
                date: 2026-05-02
                who: Ada
                air: {pressure: 99.6 kPa ± 0.1 kPa, temperature: 19 °C, humidity: 46 %}
                runs:
                  - {peak: 9.38 kW}
                  - {name: warm, peak: 9.71 kW ± 0.05 kW, aside: kill cord pulled}
                  - {rows: {2500 rpm: 12.0 N·m, 3000 rpm: 12.5 N·m}}
                  - {rows: {2500 rpm: 3.1 kW, 3000 rpm: 3.9 kW}, air: {temperature: 21 °C}}
                  - {log: run-5.csv, columns: {T: time, 3: force}, rate: 100, keep: [spike]}
              - {name: B, setup: muffler, runs: [{peak: 9.8 kW}]}
              - {name: R, setup: reference, check: yes, dyno: the club's, runs: [{peak: 3 kW}]}
            """;

    static Stream<Arguments> faults() {
        return Stream.of(
                fault("longthrow_dyno: 1", "longthrow_dyno: 9", "longthrow_dyno"),
                fault("name: muffler\n", "", "name"),
                fault("name: muffler\n", "name: muffler\ncolour: red\n", "colour"),
                fault("standard: iso_1585\n", "", "'standard' is missing"),
                fault("iso_1585", "iso_1584", "'iso_1584' is not one of the words"),
                fault("(?m)^bench:.*\n", "", "'bench' is missing"),
                fault("kind: brake, ", "", "kind"),
                fault("kind: brake", "kind: treadmill", "'treadmill' is not one of the words"),
                fault("arm: 300 mm ± 0.5 mm", "arm: 300", "bench.arm: '300'"),
                fault("arm: 300 mm", "arm: -300 mm", "is not above 0"),
                fault("arm: 300 mm", "drum_inertia: 2 kg·m², arm: 300 mm", "has no place at a brake"),
                fault("arm: 300 mm", "drive_efficiency: 1.2, arm: 300 mm", "is more than all"),
                fault("kind: brake, arm: 300 mm ± 0.5 mm", "kind: table", "calibration: has no place at figures"),
                fault("5 kg: 2.46", "5: 2.46", "bench.calibration.5"),
                fault("5 kg: 2.46", "5 kg: much", "'much'"),
                fault("kind: brake, ", "kind: brake, coast_down: ../down.csv, ", "does not lie beside the sheet"),
                fault("baseline: stock", "baseline: stok", "is no setup of a session"),
                fault("from: 2000 rpm", "from: 7000 rpm", "is not above 'from', 7000 rpm"),
                fault("from: 2000 rpm", "from: 0 rpm", "is not above 0"),
                fault("from: 2000 rpm", "from: 2000", "speeds.from"),
                fault("(?s)sessions:.*", "", "'sessions' is missing"),
                fault("(?s)sessions:.*", "sessions: none\n", "sessions"),
                fault("  - name: A1\n    setup", "  - setup", "name"),
                fault("name: B,", "name: A1,", "names two sessions"),
                fault("    setup: stock\n", "", "setup"),
                fault("date: 2026-05-02", "date: 2 May", "'2 May' is no date"),
                fault("99.6 kPa ±", "996 kPa ±", "is not what a barometer shows anywhere"),
                fault("temperature: 19 °C", "temperature: 91 °C", "is no air that an engine runs in"),
                fault("humidity: 46 %", "humidity: 146 %", "is no relative humidity"),
                fault("humidity: 46 %", "dew: 46 %", "'dew' is not a key"),
                fault(", runs: \\[\\{peak: 9.8 kW}]", "", "'runs' is missing"),
                fault("runs: \\[\\{peak: 9.8 kW}]", "runs: {peak: 9.8 kW}", "runs"),
                fault("name: warm", "name: 1", "names two runs of one session"),
                fault("\\{peak: 9.38 kW}", "{aside: no}", "nothing says what the run read"),
                fault("\\{peak: 9.38 kW}", "{peak: 9.38 kW, log: a.csv}", "more than one sort of figures"),
                fault("\\{peak: 9.38 kW}", "{peak: 9.38 kW, rate: 100}", "has no place without 'log'"),
                fault("\\{peak: 9.38 kW}", "{peak: 0 kW}", "is not above 0"),
                fault("\\{peak: 9.38 kW}", "{peak: 9.38}", "sessions[1].runs[1].peak: '9.38'"),
                fault("\\{peak: 9.38 kW}", "{peak: 9.38 mm}", "'9.38 mm'"),
                fault("\\{2500 rpm: 12.0 N·m", "{0 rpm: 12.0 N·m", "is not above 0"),
                fault("\\{2500 rpm: 12.0 N·m", "{3500 rpm: 12.0 N·m", "does not come after 3500 rpm"),
                fault("\\{2500 rpm: 12.0 N·m", "{2500 rpm: 3.1 kW", "is not of the kind of 3.1 kW"),
                fault("rate: 100", "rate: -5", "is no rate of rows"),
                fault("log: run-5.csv", "log: /tmp/run-5.csv", "does not lie beside the sheet"),
                fault("log: run-5.csv", "log: 'c:\\\\\\\\run-5.csv'", "does not lie beside the sheet"),
                fault("keep: \\[spike]", "keep: [spikes]", "'spikes' is not one of the words"),
                fault("units|(?m)^name: muffler", "units: mixed\nname: muffler", "'mixed'"),
                fault("check: yes", "check: perhaps", "'perhaps'"));
    }

    private static Arguments fault(String place, String instead, String said) {
        return Arguments.of(place, instead, said);
    }

    @Test
    void theSheetIsUnderstood() {
        ReadDynoSheet read = DynoSheetFile.read(SHEET);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        assertThat(read.sheet().orElseThrow().sessions()).hasSize(3);
        assertThat(DynoSheetFile.isOne(SHEET)).isTrue();
        assertThat(DynoSheetFile.isOne(Repository.text("examples/demo.yaml"))).isFalse();
    }

    @ParameterizedTest
    @MethodSource("faults")
    void eachFaultIsToldWithItsPlaceAndItsMend(String place, String instead, String said) {
        String wrong = SHEET.replaceFirst(place, instead);
        assertThat(wrong).isNotEqualTo(SHEET);
        ReadDynoSheet read = DynoSheetFile.read(wrong);
        assertThat(read.sheet()).isEmpty();
        assertThat(read.faults()).extracting(Fault::message).anyMatch(m -> m.contains(said));
        assertThat(read.faults()).allSatisfy(fault -> {
            assertThat(fault.line()).as(fault.message()).isPositive();
            assertThat(fault.why()).as(fault.message()).isNotBlank();
            assertThat(fault.mend()).as(fault.message()).isNotBlank();
            boolean isMissing = fault.why().contains("missing") || fault.why().contains("nothing says");
            assertThat(isMissing || !fault.path().isEmpty()).as(fault.message()).isTrue();
        });
    }

    @Test
    void moreRunsThanASeasonHasAreRefused() {
        String many = SHEET.replace("[{peak: 9.8 kW}]", "[" + "{peak: 9.8 kW}, ".repeat(2001) + "{peak: 9.8 kW}]");
        assertThat(DynoSheetFile.read(many).faults())
                .extracting(Fault::message)
                .anyMatch(m -> m.contains("2008 runs") && m.contains("up to 2000"));
    }

    private static final String DRUM = """
            longthrow_dyno: 1
            name: drum
            standard: none
            bench:
              kind: inertia_drum
              engine_turns: 5.4
              coast_down: bare.csv
              cord_radius: 155 mm ± 1 mm
              falling_mass:
                - {mass: 10 kg, height: 1.80 m, time: 3.4 s ± 0.1 s}
                - {mass: 5 kg, height: 1.80 m, time: 5.1 s, stops_after: 60 s}
              added_disc: {mass: 12 kg, diameter: 300 mm, bore: 40 mm, coast_down: disc.csv}
            sessions: [{name: A, setup: stock, runs: []}]
            """;

    static Stream<Arguments> faultsOfADrum() {
        return Stream.of(
                fault("inertia_drum", "table", "falling_mass: has no place at"),
                fault("inertia_drum", "table", "added_disc: has no place at"),
                fault("  coast_down: bare.csv\n", "", "without a run-down of the bare drum"),
                fault("  cord_radius: .*\n", "", "without the radius that the cord pulls at"),
                fault("cord_radius: 155 mm", "cord_radius: 0 mm", "is not above 0"),
                fault("mass: 5 kg", "mass: 10 kg", "10 kg twice"),
                fault("    - \\{mass: 5 kg.*\n", "", "friction is in the time of one fall alone"),
                fault(
                        "    - \\{mass: 5 kg",
                        "    - {mass: 7 kg, height: 1 m, time: 3 s}\n    - {mass: 5 kg",
                        "3 falls"),
                fault("mass: 5 kg", "mass: 5", "falling_mass[2].mass: '5'"),
                fault("mass: 5 kg, ", "", "'mass' is missing"),
                fault("time: 5.1 s", "time: 0 s", "is not above 0"),
                fault("time: 5.1 s, ", "", "'time' is missing"),
                fault("height: 1.80 m, time: 5", "time: 5", "'height' is missing"),
                fault("stops_after", "stops", "'stops' is not a key"),
                fault("bore: 40 mm", "bore: 400 mm", "is not below the diameter"),
                fault("bore: 40 mm", "inertia: 0.1 kg·m²", "has no place beside 'inertia'"),
                fault("mass: 12 kg, ", "", "'mass' is missing"),
                fault(", coast_down: disc.csv", "", "coast_down"),
                fault("disc.csv", "a/disc.csv", "does not lie beside the sheet"));
    }

    @Test
    void aDrumsInertiaIsUnderstood() {
        ReadDynoSheet read = DynoSheetFile.read(DRUM);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        assertThat(read.sheet().orElseThrow().bench().falls()).hasSize(2);
        assertThat(read.sheet().orElseThrow().bench().added().orElseThrow().coastDown())
                .isEqualTo("disc.csv");
    }

    @ParameterizedTest
    @MethodSource("faultsOfADrum")
    void eachFaultOfADrumIsToldWithItsMend(String place, String instead, String said) {
        String wrong = DRUM.replaceFirst(place, instead);
        assertThat(wrong).isNotEqualTo(DRUM);
        ReadDynoSheet read = DynoSheetFile.read(wrong);
        assertThat(read.sheet()).isEmpty();
        assertThat(read.faults()).extracting(Fault::message).anyMatch(m -> m.contains(said));
        assertThat(read.faults()).allSatisfy(fault -> {
            assertThat(fault.line()).as(fault.message()).isPositive();
            assertThat(fault.mend()).as(fault.message()).isNotBlank();
        });
    }

    private static final String[] PIECES = {
        "\n",
        "\n  ",
        "  ",
        ",",
        ": ",
        "-",
        "- ",
        "{",
        "}",
        "[",
        "]",
        "'",
        "\"",
        "#",
        "±",
        " ± 0.1",
        " ± 100 %",
        "0",
        "9",
        ".",
        "1e308",
        "1e-308",
        "9".repeat(40),
        "NaN",
        "unknown",
        "kW",
        "N·m",
        "rpm",
        "aside: x, ",
        "name: 1, ",
        "check: yes\n    ",
        "none",
        "table",
        "inertia_drum",
        "road",
        "stock",
        "\u0000",
        "\uFEFF",
        "𝛑",
        "\u2028",
        "&a ",
        "*a",
        "0x1F",
        "|"
    };

    @ParameterizedTest
    @ValueSource(longs = {20261127, 20261128, 20261129})
    void nothingThrows(long seed) { // 1,000 for each seed
        String header = Repository.text("examples/dyno/header.yaml");
        String levels = Repository.text("examples/dyno/levels.yaml");
        SplittableRandom random = new SplittableRandom(seed);
        int answered = 0;
        for (int i = 0; i < 1000; i++) {
            int which = random.nextInt(12);
            StringBuilder text = new StringBuilder(which == 0 ? levels : which < 3 ? DRUM : which < 7 ? SHEET : header);
            for (int n = random.nextInt(1, 4); n > 0; n--) {
                int at = random.nextInt(text.length());
                if (random.nextBoolean()) { // another digit, so that the sheet may still be read
                    while (at > 0 && !Character.isDigit(text.charAt(at))) {
                        at--;
                    }
                    text.setCharAt(at, (char) ('0' + random.nextInt(10)));
                } else if (random.nextInt(3) == 0) {
                    text.delete(at, Math.min(text.length(), at + random.nextInt(1, 12)));
                } else if (random.nextInt(4) == 0) { // a whole line goes or comes twice
                    int from = text.lastIndexOf("\n", at) + 1;
                    int to = text.indexOf("\n", at) < 0 ? text.length() : text.indexOf("\n", at) + 1;
                    String line = text.substring(from, to);
                    text.replace(from, to, random.nextBoolean() ? "" : line + line);
                } else {
                    text.insert(at, PIECES[random.nextInt(PIECES.length)]);
                }
                text.append(text.length() == 0 ? "x" : "");
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            if (random.nextInt(20) == 0) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            answered += isAnswered(bytes, text.toString()) ? 1 : 0;
        }
        assertThat(answered).isGreaterThan(200); // else the answer itself would hardly be tried
    }

    private static boolean isAnswered(byte[] bytes, String text) {
        try {
            ReadDynoSheet read = DynoSheetFile.read(bytes);
            assertThat(read.sheet().isEmpty()).as(text).isEqualTo(!read.faults().isEmpty());
            if (read.sheet().isEmpty()) {
                return false;
            }
            DynoRuns runs = Dyno.of(read.sheet().get(), Logs.none()).runs().orElseThrow();
            assertThat(runs.sentences()).as(text).isNotEmpty();
            assertThat(runs.runs()).as(text).allMatch(r -> r.counts() == r.why().isEmpty());
            return true;
        } catch (RuntimeException thrown) {
            throw new AssertionError(text, thrown);
        }
    }

    /** Every key that the reader knows is explained in the glossary, and no other. */
    @Test
    void glossaryKnowsEveryKey() {
        assertThat(WordsOfADynoSheet.keys("sheet")).containsExactlyInAnyOrderElementsOf(DynoSheetFile.KEYS);
        List<String> figures = java.util.Arrays.stream(longthrow.core.dyno.BenchFigure.values())
                .map(longthrow.core.dyno.BenchFigure::key)
                .toList();
        assertThat(WordsOfADynoSheet.keys("bench"))
                .containsExactlyInAnyOrderElementsOf(DynoSheetFile.BENCH_KEYS.stream()
                        .filter(key -> !figures.contains(key))
                        .toList());
        assertThat(WordsOfADynoSheet.keys("session")).containsExactlyInAnyOrderElementsOf(DynoSheetFile.SESSION_KEYS);
        assertThat(WordsOfADynoSheet.keys("run")).containsExactlyInAnyOrderElementsOf(DynoSheetFile.RUN_KEYS);
    }
}
