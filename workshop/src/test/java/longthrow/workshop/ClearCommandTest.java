package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code clear} from arguments to exit code, on the invented acceptance case of the longer throw. */
class ClearCommandTest {
    private static final String LONGER = "../examples/scenarios/s1-longer-throw.yaml";

    @Test
    void whatIsUnknownStandsBeforeWhatClears() {
        CommandRun run = CommandRun.of("clear", LONGER);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out())
                .containsSubsequence(
                        "STOP",
                        "mocked up",
                        "UNKNOWN UNTIL MOCKED UP",
                        "rod bolts to camshaft core:",
                        "GAPS",
                        "piston skirt to",
                        "1.65");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @Test
    void everyUnknownPairSaysInJsonHowToReadItAndNoneIsSaidToClear() {
        JsonNode pairs = new JsonMapper()
                .readTree(CommandRun.of("clear", "--json", LONGER).out())
                .get("clearances");
        assertThat(pairs).hasSizeGreaterThan(20);
        int unknown = 0;
        for (JsonNode pair : pairs) {
            boolean isUnknown = pair.get("state").stringValue().equals("unknown");
            unknown += isUnknown ? 1 : 0;
            assertThat(pair.get("cold").isEmpty()).as(pair.toString()).isEqualTo(isUnknown);
            assertThat(pair.get("how").stringValue()).isNotBlank();
        }
        assertThat(unknown).isGreaterThan(15);
    }

    /** At 1:1, with the bar to check it by, and of this pair only. */
    @Test
    void theOutlineOfWhatComesOffIsAFileToPrintAtFullSize(@TempDir Path folder) throws IOException {
        Path shorter = folder.resolve("shorter.yaml");
        String text = Files.readString(Path.of(LONGER));
        assertThat(text).contains("86.40 mm ± 0.03 mm");
        Files.writeString(shorter, text.replace("86.40 mm ± 0.03 mm", "85.60 mm ± 0.03 mm"));
        CommandRun run = CommandRun.of("clear", shorter.toString(), "--relief", "skirt_to_counterweight");
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith("<svg ")
                .containsPattern("width=\"[\\d.]+mm\"")
                .contains("piston skirt: what comes off where counterweight passes")
                .contains("print at 100 %")
                .contains("its maker says");
        CommandRun none = CommandRun.of("clear", shorter.toString(), "--relief", "no_such_pair");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.out()).isEmpty();
        assertThat(none.err()).contains("'no_such_pair' is no pair", "it has outlines for skirt_to_counterweight");
        CommandRun clears = CommandRun.of("clear", LONGER, "--relief", "skirt_to_counterweight");
        assertThat(clears.code()).isEqualTo(1);
        assertThat(clears.err()).contains("nothing is cut to an outline for 'skirt_to_counterweight'", "no outline");
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(CommandRun.of("clear", "none-of-this-name.yaml").code()).isEqualTo(2);
    }
}
