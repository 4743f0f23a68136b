package longthrow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/measurements.md claims nothing that cannot be measured again through the classes the command uses. */
class MeasurementsTest {
    private static final Path ROOT = Path.of("").toAbsolutePath().getParent();
    private static final Pattern TEST = Pattern.compile("-Dtest=(\\w+)");
    private static final Pattern BENCH = Pattern.compile("longthrow\\.bench\\.(\\w+)");
    /** A class with a main of its own beside the tests. */
    private static final Pattern TIMING = Pattern.compile(
            "longthrow\\.(?:core\\.(?:fit|clearance|gain|gas|pipe|cycle|power|recording|reduce)|buildfile\\.log)\\.(\\w+)[ `]");

    /**
     * What a measurement has to go through: the question itself, or the parts of core that the question is made of; of clearance, cycle, flow, gain, gas, life, pipe and shake, which no
     * command asks yet, their own tests.
     */
    private static final Pattern PRODUCT = Pattern.compile(
            "Measure\\.of\\(|\\bFit\\.of\\(|Figures\\.|Suspects\\.of\\(|NextReadings|SmoothingSpline\\.likeliest|LiftCurve\\.of|MonteCarlo\\.|BuildFile\\.|CatalogueFile\\.|StackSearch|Longthrow\\.|QuantityParser|Store\\.open\\(|Visitor\\.in\\(|extends InTheBrowser|package longthrow\\.core\\.(clearance|cycle|engine|flow|gain|gas|life|pipe|power|recording|reduce|shake);|package longthrow\\.buildfile\\.log;");

    @Test
    void everyRowCanBeMeasuredAgainThroughTheClassTheCommandUses() throws IOException {
        List<String> rows = rows();
        assertThat(rows).isNotEmpty();
        for (String row : rows) {
            if (row.contains("./longthrow") || row.contains("./check")) {
                continue; // the command itself
            }
            Matcher test = TEST.matcher(row);
            Matcher timing = TIMING.matcher(row);
            Matcher bench = BENCH.matcher(row);
            assertThat(test.find() || bench.find() || timing.find())
                    .as("a command in: " + row)
                    .isTrue();
            test.reset();
            bench.reset();
            timing.reset();
            String name =
                    test.find() ? test.group(1) : bench.find() ? bench.group(1) : timing.find() ? timing.group(1) : "";
            Path source = source(name + ".java");
            assertThat(PRODUCT.matcher(Files.readString(source)).find())
                    .as(source + " goes through the class the command uses")
                    .isTrue();
        }
    }

    private static List<String> rows() throws IOException {
        return Files.readAllLines(ROOT.resolve("docs/measurements.md")).stream()
                .filter(line -> line.startsWith("|"))
                .filter(line -> !line.startsWith("|---") && !line.startsWith("| what |"))
                .filter(line -> line.contains("`") || line.contains("as above"))
                .filter(line -> !line.contains("as above"))
                .toList();
    }

    private static Path source(String file) {
        try (Stream<Path> all = Files.walk(ROOT)) {
            return all.filter(p -> p.getFileName().toString().equals(file)
                            && p.toString().contains("src"))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no " + file + " in this repository"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
