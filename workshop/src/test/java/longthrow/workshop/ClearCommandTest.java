package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
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

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(CommandRun.of("clear", "none-of-this-name.yaml").code()).isEqualTo(2);
    }
}
