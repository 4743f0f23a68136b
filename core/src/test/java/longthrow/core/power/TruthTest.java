package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What docs/truth.md says of an engine is what a run of today says: {@link Truth} writes it anew. */
class TruthTest {
    @ParameterizedTest
    @ValueSource(strings = {"E03", "E07", "E11", "E15"})
    void thePageSaysWhatARunSays(String id) throws IOException {
        PublishedEngine engine = PublishedEngine.makers().stream()
                .filter(row -> row.id().equals(id))
                .findFirst()
                .orElseThrow();
        double torque =
                Truth.at(engine.figures(), engine.torqueSpeed().orElseThrow()).torque();
        double power =
                Truth.at(engine.figures(), engine.powerSpeed().orElseThrow()).power();
        Matcher line = Pattern.compile(
                        "\\| " + id + " \\|[^|]*\\|[^|]*\\| ([0-9.]+) ±[^|]*\\|[^|]*\\|[^|]*\\|[^|]*\\| ([0-9.]+) \\|")
                .matcher(Files.readString(Path.of("..").resolve(Truth.PAGE), StandardCharsets.UTF_8));
        assertThat(line.find()).as("row " + id + " of docs/truth.md").isTrue();
        assertThat(Double.parseDouble(line.group(1))).isCloseTo(torque, within(0.051));
        assertThat(Double.parseDouble(line.group(2))).isCloseTo(power / 1000, within(0.0051));
    }
}
