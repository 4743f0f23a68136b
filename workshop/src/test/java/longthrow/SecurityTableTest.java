package longthrow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/security.md promises nothing without a test that is there, and leaves no item of the standard out. */
class SecurityTableTest {
    private static final Path ROOT = Path.of("").toAbsolutePath().getParent();
    private static final Pattern SHOWN = Pattern.compile("`(\\w+)#(\\w+)`");
    private static final Pattern ITEM = Pattern.compile("\\d{1,2}\\.\\d\\.\\d{1,2}");

    /** OWASP ASVS 5.0.0, all of level 1: seventy items in fifteen chapters; the numbers of chapter 6 in part from memory. */
    private static final String LEVEL_ONE = """
            1.2.1 1.2.2 1.2.3 1.2.4 1.2.5 1.3.1 1.3.2 1.5.1
            2.1.1 2.2.1 2.2.2 2.3.1
            3.2.1 3.2.2 3.3.1 3.4.1 3.4.2 3.5.1 3.5.2 3.5.3
            4.1.1 4.4.1
            5.2.1 5.2.2 5.3.1 5.3.2
            6.1.1 6.2.1 6.2.2 6.2.3 6.2.4 6.2.5 6.2.6 6.2.7 6.2.8 6.3.1 6.3.2 6.4.1 6.4.2
            7.2.1 7.2.2 7.2.3 7.2.4 7.4.1 7.4.2
            8.1.1 8.2.1 8.2.2 8.3.1
            9.1.1 9.1.2 9.1.3 9.2.1
            10.4.1 10.4.2 10.4.3 10.4.4 10.4.5
            11.3.1 11.3.2 11.4.1
            12.1.1 12.2.1 12.2.2
            13.4.1
            14.2.1 14.3.1
            15.1.1 15.2.1 15.3.1
            """;

    @Test
    void everyTestThatARowNamesIsThere() throws IOException {
        List<String> missing = new ArrayList<>();
        for (String row : rows()) {
            SHOWN.matcher(row).results().filter(name -> !isThere(name)).forEach(name -> missing.add(name.group()));
        }
        assertThat(missing).as("named in docs/security.md, and not there").isEmpty();
    }

    @Test
    void everyRowThatSaysItIsShownNamesATest() throws IOException {
        boolean shown = false;
        for (String line : Files.readAllLines(ROOT.resolve("docs/security.md"))) {
            if (line.startsWith("| item") || line.startsWith("| threat")) {
                shown = line.contains("shown by");
            } else if (line.startsWith("#")) {
                shown = false;
            } else if (shown && line.startsWith("|") && !line.startsWith("|---")) {
                String last = line.substring(line.lastIndexOf('|', line.length() - 2));
                assertThat(SHOWN.matcher(last).find()).as(line).isTrue();
            }
        }
        assertThat(rows()).hasSizeGreaterThan(40);
    }

    @Test
    void everyItemOfLevelOneStandsThereOnce() throws IOException {
        List<String> there = rows().stream()
                .map(row -> row.split("\\|", -1)[1])
                .flatMap(first -> ITEM.matcher(first).results().map(MatchResult::group))
                .toList();
        assertThat(there)
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrder(LEVEL_ONE.strip().split("\\s+"));
        assertThat(there).hasSize(70);
    }

    private static List<String> rows() throws IOException {
        return Files.readAllLines(ROOT.resolve("docs/security.md")).stream()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| item") && !line.startsWith("| threat"))
                .toList();
    }

    private static boolean isThere(MatchResult name) {
        Pattern method =
                Pattern.compile("@(Test|ParameterizedTest)\\b[^;]*?\\bvoid " + name.group(2) + "\\(", Pattern.DOTALL);
        return source(name.group(1) + ".java").stream()
                .anyMatch(text -> method.matcher(text).find());
    }

    private static List<String> source(String file) {
        try (Stream<Path> all = Files.walk(ROOT)) {
            List<String> texts = new ArrayList<>();
            for (Path path : all.filter(p -> p.endsWith(file) && p.toString().contains("/src/test/java/"))
                    .toList()) {
                texts.add(Files.readString(path));
            }
            return texts;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
