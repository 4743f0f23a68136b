package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code power} from arguments to exit code, on an invented engine and on the example, of which a reading is in dispute. */
class PowerCommandTest {
    private static final Path ENGINE = Path.of("../examples/scenarios/breathing.yaml");

    private static CommandRun of(String... arguments) throws IOException {
        return CommandRun.reading(Files.readString(ENGINE), arguments);
    }

    @Test
    void tellsTorqueWithItsBandWhatHoldsItDownAndThatItIsNotApproved() throws IOException {
        CommandRun run = of("power", "-", "--speed", "3000rpm");
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out())
                .containsSubsequence(
                        "STOP",
                        "POWER – reckoned as made to drive a machine",
                        "Most torque ",
                        " ± ",
                        "AT EACH SPEED",
                        "3000 rpm:",
                        "held down by:",
                        "WHO OWNS THE DOUBT",
                        "READ FOR POWER");
        assertThat(run.out()).containsPattern("at 3000 rpm, a speed that is\\s+not\\s+approved");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @Test
    void theJsonHoldsEverySpeedItsCycleAndWhetherTheSumsBalance() throws IOException {
        JsonNode answer = new JsonMapper()
                .readTree(of("power", "--json", "-", "--speed", "3000rpm").out());
        assertThat(answer.get("question").stringValue()).isEqualTo("power");
        JsonNode curve = answer.get("torque").get(0);
        JsonNode row = curve.get("rows").get(0);
        assertThat(row.get("standing").stringValue()).isEqualTo("not_approved");
        assertThat(row.get("speed").doubleValue()).isEqualTo(100 * Math.PI);
        JsonNode torque = row.get("figures").get(0);
        assertThat(torque.get("key").stringValue()).isEqualTo("torque");
        assertThat(torque.get("unit").stringValue()).isEqualTo("N·m");
        assertThat(torque.get("low").doubleValue())
                .isBetween(5.0, torque.get("value").doubleValue());
        assertThat(torque.get("high").doubleValue())
                .isBetween(torque.get("value").doubleValue(), 20.0);
        JsonNode reckoning = row.get("reckoning").get(0);
        assertThat(Math.abs(reckoning.get("mass").doubleValue())).isLessThan(1e-3);
        assertThat(Math.abs(reckoning.get("energy").doubleValue())).isLessThan(1e-3);
        assertThat(curve.get("cycle")).hasSize(361);
        assertThat(curve.get("missing")).isEmpty();
    }

    /** The example's compression height is in dispute, so its compression ratio is not known. */
    @Test
    void withoutWhatNothingUsualStandsForNoTorqueIsToldButWhatToRead() {
        CommandRun run = CommandRun.of("power", "../examples/demo.yaml");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).containsSubsequence("NOT TOLD", "piston.compression_height");
        assertThat(run.out()).doesNotContain("AT EACH SPEED");
    }

    /**
     * The invented muffler runs over the invented engine: not the same engine, and what is said must follow from the figures. Its truth at 3000 rpm in the standard's air is 13.2 - 1.9 / 16 + 0.5 / 4 = 13.2 N·m, less what
     * drift took; the prediction is some 11.6 ± 2.1.
     */
    @Test
    void runsOfASheetLieOverTheTorqueThatIsPredicted() throws IOException {
        CommandRun run = of("power", "-", "--speed", "3000rpm", "--dyno", "../examples/dyno/muffler.yaml", "--json");
        assertThat(run.err()).isEmpty();
        JsonNode curve = new JsonMapper().readTree(run.out()).get("torque").get(0);
        assertThat(curve.get("air").get(0).get("pressure").doubleValue()).isEqualTo(100_000);
        JsonNode overlay = curve.get("overlays").get(0);
        assertThat(overlay.get("standard").stringValue()).startsWith("ISO 1585");
        JsonNode stock = overlay.get("held").get(0);
        assertThat(stock.get("name").stringValue()).isEqualTo("stock");
        assertThat(stock.get("compared").intValue()).isEqualTo(1);
        JsonNode at = stock.get("points").get(0);
        assertThat(at.get("measured").doubleValue())
                .as("the truth, within its ±")
                .isBetween(
                        13.2 - 2 * at.get("measured_half").doubleValue(),
                        13.2 + 2 * at.get("measured_half").doubleValue());
        double predicted =
                curve.get("rows").get(0).get("figures").get(0).get("value").doubleValue();
        assertThat(at.get("predicted").doubleValue()).isEqualTo(predicted);
        double ratio = stock.get("ratio").doubleValue();
        double half = stock.get("half").doubleValue();
        assertThat(ratio).isEqualTo(at.get("measured").doubleValue() / predicted);
        assertThat(stock.get("verdict").stringValue()).isEqualTo(Math.abs(ratio - 1) <= half ? "agrees" : "too_low");
    }

    /** Of an engine of which no torque is told nothing is held against anything, and the sheet is named. */
    @Test
    void withoutAPredictionNothingIsHeldAgainstIt() {
        CommandRun run = CommandRun.of("power", "../examples/demo.yaml", "--dyno", "../examples/dyno/header.yaml");
        assertThat(run.out())
                .containsSubsequence("MEASURED OVER PREDICTED", "did the header help", "No torque is predicted");
    }

    @Test
    void aSheetThatCannotBeReadRefusesTheCallBeforeAnySum() throws IOException {
        CommandRun run = of("power", "-", "--speed", "3000rpm", "--dyno", "../examples/dyno/none.yaml");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("none.yaml", "no such file");
    }

    /** Whether the build that a sheet names is there or not: it is said, and how the two are seen together. */
    @Test
    void aSheetThatNamesItsBuildSaysHowTheTwoAreSeenTogether(@TempDir Path folder) throws IOException {
        String sheet = Files.readString(Path.of("../examples/dyno/header.yaml"))
                .replace("standard:", "engine: mine.yaml\nstandard:");
        Path file = Files.writeString(folder.resolve("runs.yaml"), sheet);
        assertThat(CommandRun.of("dyno", file.toString(), "--width", "200").out())
                .contains("names mine.yaml as its build, and no such file lies beside it");
        Path build = Files.writeString(folder.resolve("mine.yaml"), "longthrow: 1\n");
        assertThat(CommandRun.of("dyno", file.toString(), "--json").out())
                .contains("longthrow power " + build + " --dyno " + file);
    }

    /** Nothing times anything is nothing: a flat crown has no ratio of warm to cold. */
    @Test
    void aCrownWithoutVolumeIsMeasuredLikeAnyOther() throws IOException {
        CommandRun run = of("measure", "-");
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isIn(0, 1);
        assertThat(run.out()).contains("READ NEXT");
    }

    @Test
    void whatIsNoSpeedIsRefusedWithWhatIsAllowed() throws IOException {
        for (String wrong : new String[] {"3000", "60 mm", "0 rpm", "1e9rpm", "nonsense", "3000 rpm ± 5 rpm"}) {
            CommandRun run = of("power", "-", "--speed", wrong);
            assertThat(run.code()).as(wrong).isEqualTo(2);
            assertThat(run.out()).as(wrong).isEmpty();
            assertThat(run.err()).as(wrong).contains("--speed is '" + wrong + "'", "allowed:", "such as 3600rpm");
        }
    }

    @Test
    void moreSpeedsThanAreToldAreRefused() throws IOException {
        String[] call = new String[2 + 2 * 21];
        call[0] = "power";
        call[1] = "-";
        for (int i = 0; i < 21; i++) {
            call[2 + 2 * i] = "--speed";
            call[3 + 2 * i] = (2000 + 50 * i) + "rpm";
        }
        CommandRun run = of(call);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("21 times", "up to 20");
    }
}
