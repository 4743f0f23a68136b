package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;

/** Exit codes as the project promises them: 0 answered, 1 with a stop, 2 input refused, 3 internal fault. */
class LongthrowTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void versionIsTheOneOfTheBuild() {
        assertThat(run("--version")).isZero();
        assertThat(out.toString().strip()).matches("longthrow \\d+\\.\\d+\\.\\d+(-SNAPSHOT)?");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void helpNamesEveryExitCodeAndGivesAnExample() {
        assertThat(run("--help")).isZero();
        assertThat(out.toString()).contains("Exit codes:", "0   answered", "3   internal fault", "Example:");
    }

    @Test
    void completionScriptKnowsTheCommands() {
        assertThat(run("completion")).isZero();
        assertThat(out.toString()).startsWith("#!/usr/bin/env bash").contains("completion", "--trace");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--colour", "mesure", "completion --nonsense"})
    void whatIsNotKnownIsRefusedByNameWithoutTrace(String line) {
        assertThat(run(line.split(" ", -1))).isEqualTo(2);
        String last = line.substring(line.lastIndexOf(' ') + 1);
        assertThat(err.toString()).contains(last).contains("--help").doesNotContain("\tat ");
        assertThat(out.toString()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"help", "bogus"})
    void wordThatIsNoCommandIsNamedWithThoseThereAre(String word) {
        assertThat(run(word)).isEqualTo(2);
        assertThat(err.toString())
                .contains(
                        "no command is called '" + word
                                + "'; commands: measure, fit, clear, life, shake, power, dyno, book, import, catalogue, set, serve, demo, completion")
                .doesNotContain("index");
    }

    @Test
    void callWithoutCommandIsRefusedAndSaysWhereToLook() {
        assertThat(run()).isEqualTo(2);
        assertThat(err.toString()).contains("a command is missing", "See: longthrow --help");
    }

    @ParameterizedTest
    @EnumSource
    void whatTheCommandReturnsIsWhatTheShellGets(ExitCode code) {
        assertThat(runWith(() -> code, "try")).isEqualTo(code.code());
    }

    @Test
    void exitCodesAreTheFourPromised() {
        assertThat(ExitCode.values()).extracting(ExitCode::code).containsExactly(0, 1, 2, 3);
    }

    @Test
    void internalFaultShowsNoTraceUnlessAsked() {
        assertThat(runWith(LongthrowTest::fault, "try")).isEqualTo(3);
        assertThat(err.toString())
                .contains("internal fault", "broken inside", "--trace")
                .doesNotContain("\tat ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"try --trace", "--trace try"})
    void internalFaultShowsItsTraceWhenAsked(String line) {
        assertThat(runWith(LongthrowTest::fault, line.split(" ", -1))).isEqualTo(3);
        assertThat(err.toString()).contains("internal fault", "\tat longthrow.workshop.LongthrowTest.fault");
    }

    @Test
    void exhaustedStackIsAnInternalFaultToo() {
        assertThat(runWith(LongthrowTest::endless, "try")).isEqualTo(3);
        assertThat(err.toString())
                .contains("internal fault", "StackOverflowError")
                .doesNotContain("\tat ");
    }

    @Test
    void missingPieceOfTheProgramIsADamagedBuild() {
        Callable<ExitCode> torn = () -> {
            throw new NoClassDefFoundError("longthrow/core/Torn");
        };
        assertThat(runWith(torn, "try")).isEqualTo(3);
        assertThat(err.toString()).contains("the build is damaged. Delete the folder build and call again");
    }

    @Test
    void launcherIsToldOfAStopByTheNumberItAskedFor() {
        assertThat(Longthrow.forTheLauncher(1)).isEqualTo(1);
        System.setProperty("longthrow.stop", "101");
        try {
            assertThat(Longthrow.forTheLauncher(1)).isEqualTo(101);
            assertThat(Longthrow.forTheLauncher(0)).isZero();
            assertThat(Longthrow.forTheLauncher(3)).isEqualTo(3);
        } finally {
            System.clearProperty("longthrow.stop");
        }
    }

    @Test
    void nameThatBeginsWithAnAtSignIsAFileAndNoListOfArguments(@TempDir Path folder) throws IOException {
        Path list = Files.writeString(folder.resolve("list"), "secret words\n");
        assertThat(run("measure", "@" + list)).isEqualTo(2);
        assertThat(err.toString()).contains("@" + list, "no such file").doesNotContain("secret");
    }

    @Test
    void onlyACommandThatIsAlikeIsSuggested() {
        assertThat(run("foo")).isEqualTo(2);
        assertThat(err.toString()).contains("no command is called 'foo'").doesNotContain("Did you mean");
        assertThat(run("mesure")).isEqualTo(2);
        assertThat(err.toString()).contains("Did you mean: longthrow measure?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"measure --blank", "demo --json", "demo", "completion", "--help", "--version"})
    void answerThatCouldNotBeWrittenIsNoSuccess(String line) throws IOException {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        int code;
        try (OutputStream full = new FileOutputStream("/dev/full")) { // full(4): every write fails with ENOSPC
            code = Longthrow.run(full, said, Ansi.OFF, line.split(" ", -1));
        }
        assertThat(code).isEqualTo(2); // a full disk is no fault of the program's
        assertThat(said.toString(StandardCharsets.UTF_8))
                .isEqualTo("longthrow: the answer could not be written: no space left on the disk\n");
    }

    @Test
    void readerThatHasHadEnoughIsNoFault() {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        assertThat(Longthrow.run(failing("Broken pipe"), said, Ansi.OFF, "measure", "--blank"))
                .isZero();
        assertThat(said.size()).isZero();
    }

    @Test
    void closedOutputIsSaid() {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        assertThat(Longthrow.run(failing("Bad file descriptor"), said, Ansi.OFF, "measure", "--blank"))
                .isEqualTo(2);
        assertThat(said.toString(StandardCharsets.UTF_8)).contains("the output is closed");
    }

    private static OutputStream failing(String why) {
        return new OutputStream() {
            @Override
            public void write(int single) throws IOException {
                throw new IOException(why);
            }
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ESC",
                "--ESC",
                "measure --units ESC x.yaml",
                "measure --width ESC x.yaml",
                "measure --ESC",
                "measure ESC",
                "measure --blank ESC",
                "set ESC a.b c",
                "set x.yaml --ESC c",
                "set a b c ESC",
                "completion ESC"
            })
    void argumentsCannotCommandTheTerminal(String line) {
        assertThat(run(line.replace("ESC", "a\u001b[31mb").split(" ", -1))).isEqualTo(2);
        assertThat(err.toString()).contains("[31mb").doesNotContain("\u001b");
    }

    @Test
    void faultThatQuotesTheInputCannotCommandTheTerminalEither() {
        Callable<ExitCode> quoting = () -> {
            throw new IllegalStateException("a\u001b[31mb");
        };
        assertThat(runWith(quoting, "try", "--trace")).isEqualTo(3);
        assertThat(err.toString()).contains("[31mb", "\tat ").doesNotContain("\u001b");
    }

    @Test
    void colourNeedsATerminalThatCanAndNoRefusal() {
        assertThat(Colour.of(true, null, "xterm")).isEqualTo(Ansi.ON);
        assertThat(Colour.of(true, "", null)).isEqualTo(Ansi.ON);
        assertThat(Colour.of(false, null, "xterm")).isEqualTo(Ansi.OFF);
        assertThat(Colour.of(true, "1", "xterm")).isEqualTo(Ansi.OFF);
        assertThat(Colour.of(true, null, "dumb")).isEqualTo(Ansi.OFF);
    }

    @Test
    void commandThatIsWiredAloneIsTheSameAsAmongAll() {
        for (Subcommand each : Subcommand.values()) {
            CommandLine all = new Longthrow()
                    .commandLine(new PrintWriter(out), new PrintWriter(err), Ansi.OFF, List.of(Subcommand.values()));
            CommandLine alone = new Longthrow()
                    .commandLine(
                            new PrintWriter(out), new PrintWriter(err), Ansi.OFF, Subcommand.reachedBy(each.word()));
            CommandLine among = Objects.requireNonNull(all.getSubcommands().get(each.word()));
            CommandLine byItself = Objects.requireNonNull(alone.getSubcommands().get(each.word()));
            assertThat(among.getCommandName()).isEqualTo(each.word());
            assertThat(byItself.getUsageMessage()).isEqualTo(among.getUsageMessage());
            assertThat(byItself.isUnmatchedOptionsArePositionalParams())
                    .isEqualTo(among.isUnmatchedOptionsArePositionalParams());
        }
        assertThat(Subcommand.reachedBy("measure", "demo")).containsExactly(Subcommand.MEASURE);
        assertThat(Subcommand.reachedBy()).containsExactly(Subcommand.values());
        assertThat(Subcommand.reachedBy("--trace", "measure")).containsExactly(Subcommand.values());
        assertThat(Subcommand.reachedBy("completion")).containsExactly(Subcommand.values());
    }

    private int run(String... arguments) {
        return Longthrow.run(new PrintWriter(out), new PrintWriter(err), Ansi.OFF, arguments);
    }

    private int runWith(Callable<ExitCode> body, String... arguments) {
        Longthrow root = new Longthrow();
        CommandLine line = root.commandLine(
                new PrintWriter(out), new PrintWriter(err), Ansi.OFF, List.of(Subcommand.values()), new Trial(body));
        return Longthrow.execute(root, line, arguments);
    }

    private static ExitCode fault() {
        throw new IllegalStateException("broken inside");
    }

    @SuppressWarnings("InfiniteRecursion") // the point of it
    private static ExitCode endless() {
        return endless();
    }

    @Command(name = "try")
    private record Trial(Callable<ExitCode> body) implements Callable<ExitCode> {
        @Override
        public ExitCode call() throws Exception {
            return body.call();
        }
    }
}
