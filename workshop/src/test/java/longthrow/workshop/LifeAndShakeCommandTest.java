package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code life} and {@code shake} from arguments to exit code, on the invented acceptance case of the springs and on the example engine. */
class LifeAndShakeCommandTest {
    private static final String SPRINGS = "../examples/scenarios/s3-springs.yaml";
    private static final String DEMO = "../examples/demo.yaml";

    @TempDir
    private Path folder;

    private String held() throws IOException {
        String text = Files.readString(Path.of(SPRINGS));
        assertThat(text).contains("wanted_speed: 6000 rpm");
        Path file = folder.resolve("held.yaml");
        Files.writeString(file, text.replace("wanted_speed: 6000 rpm", "wanted_speed: 3600 rpm"));
        return file.toString();
    }

    @Test
    void aRefusalSaysWhyWhatWouldLiftItAndWhatCanBeHad() {
        CommandRun run = CommandRun.of("life", SPRINGS);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .containsSubsequence(
                        "STOP",
                        "VERDICT",
                        "REFUSED:",
                        "6000 rpm",
                        "why:",
                        "instead:",
                        "3600 rpm",
                        "WHAT WOULD LIFT IT",
                        "1. flywheel",
                        "price not known",
                        "2. rod",
                        "3. speed limiter",
                        "LIMITS",
                        "exceeded:",
                        "unknown:");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    /** Nobody has looked it over, nor counted how often its bolts were tightened. */
    @Test
    void theGovernedSpeedIsNotApprovedOfPartsNobodyLookedOver() throws IOException {
        CommandRun run = CommandRun.of("life", held());
        assertThat(run.out()).contains("NOT APPROVED: not approved at 3600 rpm", "look over flywheel");
        assertThat(run.code()).isEqualTo(1);
    }

    /** Approved up to the maker's speed ends with 0: nothing stands in the way. */
    @Test
    void theGovernedSpeedIsApproved() throws IOException {
        Path file = folder.resolve("sound.yaml");
        String held = Files.readString(Path.of(held()));
        assertThat(held).contains("  metal: cast_aluminium\n");
        Files.writeString(
                file,
                held.replace(
                                        "  stroke: 62.0 mm ± 0.001 mm\n",
                                        "  stroke: 62.0 mm ± 0.001 mm\n  donor_stroke: 62.0 mm ± 0.001 mm\n")
                                .replace(
                                        "  metal: cast_aluminium\n", "  metal: cast_aluminium\n  bolt_tightenings: 1\n")
                                .replace(
                                        "intake_valve:\n",
                                        "exhaust_valve:\n  lift: 8.20 mm ± 0.03 mm\n\nintake_valve:\n")
                        + """

                        seen:
                          - {part: flywheel, damage: none, where: 'dyed, hub and rim'}
                          - {part: connecting_rod, damage: none, where: dyed}
                          - {part: crankshaft, damage: none, where: 'dyed, fillets and taper'}
                          - {part: piston, damage: none, where: by eye}
                        """);
        CommandRun run = CommandRun.of("life", file.toString());
        assertThat(run.out()).contains("APPROVED: approved up to 3600 rpm");
        assertThat(run.code()).isZero();
    }

    @Test
    void everyRungSaysInJsonWhatItHangsOnAndWhatIsMissing() throws IOException {
        JsonNode answer = new JsonMapper()
                .readTree(CommandRun.of("life", "--json", SPRINGS).out());
        assertThat(answer.get("question").stringValue()).isEqualTo("life");
        assertThat(answer.get("approval").get(0).get("verdict").stringValue()).isEqualTo("refused");
        assertThat(answer.get("approval").get(0).get("up_to").isNull()).isTrue();
        assertThat(answer.get("rungs")).hasSizeGreaterThan(20);
        for (JsonNode rung : answer.get("rungs")) {
            boolean isUnknown = rung.get("state").stringValue().equals("unknown");
            assertThat(rung.get("missing").isEmpty()).as(rung.toString()).isEqualTo(!isUnknown);
            assertThat(rung.get("source").stringValue()).isNotBlank();
        }
        assertThat(answer.get("shaking")).isEmpty();
    }

    @Test
    void allShowsSourcesAndHowToReadWhatIsMissing() {
        assertThat(CommandRun.of("life", "--all", SPRINGS).out()).contains("hangs on:", "by:", "how:", "doubt by:");
    }

    @Test
    void shakeSaysWhatNoCounterweightCanCancel() throws IOException {
        CommandRun run = CommandRun.of("shake", DEMO);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .containsSubsequence("SHAKE", "No counterweight", "balance factor", "WHAT A COUNTERWEIGHT TRADES");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        JsonNode answer =
                new JsonMapper().readTree(CommandRun.of("shake", "--json", DEMO).out());
        assertThat(answer.get("shaking").get(0).get("path")).hasSize(72);
        assertThat(answer.get("rungs")).isEmpty();
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(CommandRun.of("life", folder.resolve("none.yaml").toString()).code())
                .isEqualTo(2);
        assertThat(CommandRun.of("shake", folder.resolve("none.yaml").toString())
                        .code())
                .isEqualTo(2);
    }
}
