package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** What a help text shows as an example is what an owner types first: each one is run as it stands. */
class HelpExamplesTest {
    private static final String FILE = "my-engine.yaml";
    private static final Pattern WORD = Pattern.compile("'([^']*)'|(\\S+)");

    @TempDir
    private Path folder;

    static List<String> examples() {
        CommandLine root = new Longthrow()
                .commandLine(
                        new PrintWriter(new StringWriter()),
                        new PrintWriter(new StringWriter()),
                        Ansi.OFF,
                        List.of(Subcommand.values()));
        return Stream.concat(Stream.of(root), root.getSubcommands().values().stream())
                .flatMap(c -> Arrays.stream(c.getCommandSpec().usageMessage().footer()))
                .map(String::strip)
                .filter(l -> l.startsWith("longthrow "))
                .filter(l -> !l.startsWith("longthrow serve")) // stays until it is ended: ServeCommandTest
                .toList();
    }

    @Test
    void thereAreSome() {
        assertThat(examples()).hasSizeGreaterThan(7);
    }

    @ParameterizedTest
    @MethodSource("examples")
    void runsAsItStands(String example) throws IOException {
        Path file = folder.resolve(FILE);
        Files.write(file, DemoCommand.text());
        String call = example.split(" > ", -1)[0].substring("longthrow ".length());
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(call);
        while (word.find()) {
            words.add(
                    word.group(1) != null
                            ? word.group(1)
                            : word.group(2)
                                    .replace(FILE, file.toString())
                                    .replaceFirst("^examples/", "../examples/")
                                    .replaceFirst("^(.*\\.pdf|.*-again\\.yaml)$", folder + "/$1")
                                    .replaceFirst("^parts\\.yaml$", "../examples/scenarios/s1-catalogue.yaml"));
        }
        if (words.get(0).equals("import")) { // what it takes back was written before
            CommandRun.of("book", file.toString(), "--out", words.get(1));
        }
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isIn(0, 1);
    }
}
