package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

/** The example of runs with logs, from files to answer, held against the truth that it was made from ({@link DynoExample}). */
class DynoExampleTest {
    private static final Path FOLDER = Repository.at("examples/dyno");
    private static final Answer ANSWER = answer();
    private static final DynoRuns RUNS = ANSWER.runs().orElseThrow();

    private static Answer answer() {
        DynoSheet sheet =
                DynoSheetFile.read(bytes("muffler.yaml").orElseThrow()).sheet().orElseThrow();
        return Dyno.of(sheet, new LogsOfASheet(sheet, name -> bytes(name).map(LogSource::of), 1));
    }

    private static Optional<byte[]> bytes(String name) {
        try {
            return Files.exists(FOLDER.resolve(name))
                    ? Optional.of(Files.readAllBytes(FOLDER.resolve(name)))
                    : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static DynoRuns.Run run(String session, String name) {
        return RUNS.runs().stream()
                .filter(r -> r.session().equals(session) && r.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> listed(String file) {
        return RUNS.logs().stream()
                .filter(l -> l.file().equals(file))
                .findFirst()
                .orElseThrow()
                .listed();
    }

    @Test
    void filesAreThoseOfTheGenerator() {
        for (Map.Entry<String, String> file : DynoExample.files().entrySet()) {
            byte[] made = file.getValue().getBytes(StandardCharsets.UTF_8);
            assertThat(bytes(file.getKey()))
                    .as(file.getKey())
                    .hasValueSatisfying(b -> assertThat(b).isEqualTo(made));
            assertThat(made).as(file.getKey()).hasSizeLessThan(25_000);
        }
    }

    @Test
    void bandsOfTheGainHoldTheTruth() {
        DynoRuns.Gain gain = RUNS.gains().get(0);
        assertThat(gain.verdict()).isEqualTo(DynoRuns.Verdict.REAL_GAIN);
        assertThat(Math.abs(gain.gain() - DynoExample.GAIN)).isLessThan(gain.anyDrift());
        assertThat(gain.anyDrift()).isLessThan(0.015);
        assertThat(gain.points())
                .hasSizeGreaterThan(10)
                .allSatisfy(p -> assertThat(Math.abs(p.gain() - DynoExample.GAIN))
                        .as("at %.0f rpm", Units.RPM.fromSi(p.speed()))
                        .isLessThan(p.everySpeed()));
    }

    /** Within the doubt of bench and run, and 1 % more: three deviations of a pull (0.6 %) and the drift up to there. */
    @Test
    void curvesOfTheFirstStockPullsHoldTheTruth() {
        for (String name : List.of("2", "3", "4")) {
            assertThat(run("A1", name).curve()).hasSizeGreaterThan(10).allSatisfy(p -> {
                double truth = DynoExample.truth(Units.RPM.fromSi(p.speed()));
                assertThat(p.half()).isBetween(0.005 * truth, 0.08 * truth);
                assertThat(Math.abs(p.value() - truth))
                        .as("run %s at %.0f rpm", name, Units.RPM.fromSi(p.speed()))
                        .isLessThan(p.half() + 0.01 * truth);
            });
        }
    }

    @Test
    void whatIsWrongWithRowsIsTold() {
        assertThat(listed("a1-2.csv"))
                .anyMatch(
                        s -> s.contains("line 151, Drum speed [rpm]: spike (set aside): jumps by 8897.8 rpm and back"));
        assertThat(listed("b-2.csv")).anyMatch(s -> s.matches("lines 181 to 182, .*: dropout \\(set aside\\).*"));
        assertThat(listed("b-3.csv")).anyMatch(s -> s.contains("clutch slip (set aside)"));
        assertThat(run("B", "3").counts()).isFalse();
        assertThat(run("B", "3").why())
                .isEqualTo("the clutch slipped: engine and drum did not keep their ratio; if it did not, write"
                        + " 'keep: [clutch_slip]' at the run");
        assertThat(listed("a1-4.csv").stream().filter(s -> s.contains("spike") || s.contains("dropout")))
                .isEmpty();
    }

    @Test
    void theWholeSlowRunDownIsUsed() {
        assertThat(ANSWER.findings())
                .extracting(Finding::message)
                .noneMatch(m -> m.contains("un-down") || m.contains("run down"));
    }

    @Test
    void semicolonsAndDecimalCommasAreUnderstoodAndTwoPullsInOneFileAreTwo() {
        assertThat(run("A1", "3").counts()).isTrue();
        assertThat(run("A2", "3 #1").counts()).isTrue();
        assertThat(run("A2", "3 #2").counts()).isTrue();
        assertThat(RUNS.runs()).hasSize(12);
        assertThat(RUNS.runs().stream().filter(r -> r.why().contains("warm-up")))
                .extracting(r -> r.session() + " " + r.name())
                .containsExactly("A1 1", "B 1", "A2 1");
    }
}
