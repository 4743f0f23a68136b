package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code set}: one value changes, everything else stays, and what would not read never reaches the file. */
class SetCommandTest {
    private static final String BUILD = """
            longthrow: 1
            # of my own
            engine:
              name: Dovrin 171
            cylinder:
              bore: 66.00 mm    # new gauge
            """;

    @TempDir
    private Path folder;

    private Path file = Path.of("");

    @BeforeEach
    void write() throws IOException {
        file = folder.resolve("engine.yaml");
        Files.writeString(file, BUILD);
    }

    @Test
    void oneValueChangesAndCommentsStay() throws IOException {
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.bore", "66.02 mm");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("was: ")
                .contains("66.00 mm")
                .contains("now: ")
                .contains("66.02 mm");
        assertThat(file).hasContent(BUILD.replace("66.00 mm", "66.02 mm"));
        assertThat(inFolder()).containsExactly("engine.yaml");
    }

    @Test
    void valueWithAMinusIsTakenBehindTwoDashes() throws IOException {
        CommandRun run =
                CommandRun.of("set", file.toString(), "cylinder.deck_clearance_flywheel_end", "--", "-0.10 mm");
        assertThat(run.err()).isEmpty();
        assertThat(Files.readString(file)).contains("deck_clearance_flywheel_end: -0.10 mm");
    }

    @Test
    void valueWithAMinusIsTakenWithoutThemToo() throws IOException {
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.deck_clearance", "-0.10 mm");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(Files.readString(file)).contains("deck_clearance: -0.10 mm");
    }

    @Test
    void valueWithoutQuotationMarksIsAskedForWithThem() {
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.bore", "66.02", "mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("put quotation marks around it: '66.02 mm'");
        assertThat(file).hasContent(BUILD);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--nonsense FILE cylinder.bore 1", "FILE --nonsense 1", "FILE engine.name --nonsense"})
    void optionThatIsNotThereIsStillRefused(String line) {
        CommandRun run = CommandRun.of(("set " + line.replace("FILE", file.toString())).split(" ", -1));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--nonsense");
        assertThat(file).hasContent(BUILD);
    }

    @ParameterizedTest
    @CsvSource({"cylinder.bore, 66.02", "cylinder.bore, 66 lb", "cylinder.boer, 66.02 mm", "cylinder.bore, '{'"})
    void whatWouldNotReadIsRefusedAndTheFileStays(String key, String value) throws IOException {
        CommandRun run = CommandRun.of("set", file.toString(), key, value);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("engine.yaml").doesNotContain("\tat ");
        assertThat(file).hasContent(BUILD);
        assertThat(inFolder()).containsExactly("engine.yaml");
    }

    @Test
    void modeOfTheFileIsKept() throws IOException {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
        assertThat(CommandRun.of("set", file.toString(), "cylinder.bore", "66.02 mm")
                        .code())
                .isZero();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-rw-r--");
    }

    @Test
    void linkStaysALinkAndWhatItPointsToChanges() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("link.yaml"), file);
        assertThat(CommandRun.of("set", link.toString(), "cylinder.bore", "66.02 mm")
                        .code())
                .isZero();
        assertThat(link).isSymbolicLink();
        assertThat(Files.readString(file)).contains("66.02 mm");
    }

    @Test
    void valueThatStandsThereAlreadyIsNoChange() {
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.bore", "66.00 mm");
        assertThat(run.code()).isZero();
        assertThat(run.out()).isEqualTo("nothing to change: cylinder.bore is 66.00 mm already\n");
        assertThat(file).hasContent(BUILD);
    }

    @Test
    void writeProtectedFileIsLeft() throws IOException {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.bore", "66.02 mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("is left as it was: it is write-protected", "chmod u+w");
        assertThat(file).hasContent(BUILD);
    }

    @Test
    void fileWithAnotherNameIsNotPartedFromIt() throws IOException {
        Path other = Files.createLink(folder.resolve("other.yaml"), file);
        CommandRun run = CommandRun.of("set", file.toString(), "cylinder.bore", "66.02 mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("2 names (hard links)");
        assertThat(Files.isSameFile(file, other)).isTrue();
    }

    @Test
    void whatAKilledCallLeftIsClearedAwayAndNothingElse() throws IOException {
        Path left = Files.createFile(folder.resolve(".engine.yaml.1649.new"));
        Path fresh = Files.createFile(folder.resolve(".engine.yaml.1650.new"));
        Path foreign = Files.createFile(folder.resolve(".engine.yaml.mine.new"));
        FileTime dayAgo = FileTime.from(Instant.now().minus(Duration.ofDays(1)));
        Files.setLastModifiedTime(left, dayAgo);
        Files.setLastModifiedTime(foreign, dayAgo);
        assertThat(CommandRun.of("set", file.toString(), "cylinder.bore", "66.02 mm")
                        .code())
                .isZero();
        assertThat(left).doesNotExist();
        assertThat(fresh).exists();
        assertThat(foreign).exists();
    }

    @Test
    void linkThatLeadsBackToItselfIsNamedAsThat() throws IOException {
        Path link = folder.resolve("round.yaml");
        Files.createSymbolicLink(link, link);
        for (String command : new String[] {"measure", "set"}) {
            CommandRun run = command.equals("set")
                    ? CommandRun.of("set", link.toString(), "cylinder.bore", "66.02 mm")
                    : CommandRun.of("measure", link.toString());
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.err()).contains("a link that leads back to itself").doesNotContain("chmod");
        }
    }

    @Test
    void refusalSaysThatTheFileStaysAndNamesNoLineOfATextNobodySees() {
        CommandRun run = CommandRun.of("set", file.toString(), "bore", "66 mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .contains(
                        "engine.yaml: bore: ",
                        "write gasket.bore or cylinder.bore or clutch.bore",
                        "the file is left as it was")
                .doesNotContain("yaml:7");
        assertThat(file).hasContent(BUILD);
    }

    @Test
    void fileThatIsNotThereIsRefused() {
        CommandRun run = CommandRun.of("set", folder.resolve("none.yaml").toString(), "cylinder.bore", "66.02 mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("no such file");
    }

    @Test
    void streamIsRefused() {
        CommandRun run = CommandRun.of("set", "/dev/zero", "cylinder.bore", "66.02 mm");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("/dev/zero is no plain file");
    }

    @Test
    void whyItCouldNotBeWrittenIsSaidInPlainWords() {
        assertThat(SystemWords.plain(new IOException("No space left on device")))
                .isEqualTo("no space left on the disk");
        assertThat(SystemWords.plain(new FileSystemException("/a/b", null, "Read-only file system")))
                .isEqualTo("the disk is read-only");
        assertThat(SystemWords.plain(new AccessDeniedException("/a/b"))).isEqualTo("you may not write in its folder");
        assertThat(SystemWords.plain(new IOException())).isEqualTo("the system does not say why");
    }

    private Stream<String> inFolder() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).toList().stream();
        }
    }
}
