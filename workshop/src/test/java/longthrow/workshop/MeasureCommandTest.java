package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.print.AnswerText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.NullAndEmptySource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Help.Ansi;

/** {@code measure} and {@code demo} from arguments to exit code, with real files. */
class MeasureCommandTest {
    /** Invented. Deck and squish follow from these readings, and nothing contradicts anything. */
    private static final String BUILD = """
            longthrow: 1
            engine:
              name: Dovrin 171
              invented: yes
            gasket:
              thickness: 1.30 mm ± 0.03 mm
            cylinder:
              bore: 66.00 mm ± 0.01 mm
              deck_height: 139.62 mm ± 0.05 mm
            piston:
              compression_height: 24.90 mm ± 0.02 mm
            connecting_rod:
              length: 86.40 mm ± 0.03 mm
            crankshaft:
              stroke: 56.50 mm ± 0.02 mm
            """;

    @TempDir
    private Path folder;

    @Test
    void readingsBecomeFiguresWithTheirDoubt() throws IOException {
        CommandRun run = CommandRun.of("measure", file(BUILD));
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        // 139.62 - 56.50/2 - 86.40 - 24.90 = 0.07 and 1.30 more is the squish; root of the squares of 0.05, 0.03, 0.02,
        // 0.03 and 0.01 (half the stroke) is 0.07. By hand, JCGM 100:2008 eq. (10).
        assertThat(run.out()).containsSubsequence("Dovrin 171", "INVENTED", "squish", "1.37 ± 0.07 mm");
    }

    @Test
    void standardInputServesAsWellAsAFile() throws IOException {
        CommandRun piped = CommandRun.reading(BUILD, "measure", "-");
        assertThat(piped).isEqualTo(CommandRun.of("measure", file(BUILD)));
    }

    @Test
    void unitsAskedForGoBeforeThoseOfTheFile() throws IOException {
        String metric = CommandRun.of("measure", file(BUILD)).out();
        String inch = CommandRun.of("measure", "--units", "inch", file(BUILD)).out();
        assertThat(metric).containsSubsequence("  squish", " mm", " in");
        assertThat(inch).containsSubsequence("  squish", " in", " mm");
    }

    @Test
    void jsonIsOneDocumentAndNothingElse() throws IOException {
        CommandRun run = CommandRun.of("measure", "--json", file(BUILD));
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).startsWith("{\n  \"format\": 1,").endsWith("}\n").contains("\"engine.squish\": {");
    }

    @Test
    void filesHandedOverTheWrongWayRoundAreNamed() throws IOException {
        String donors = folder.resolve("donors.yaml").toString();
        Files.writeString(Path.of(donors), "longthrow_donors: 1\ndonors: []\n");
        CommandRun run = CommandRun.of("measure", "--donors", file(BUILD), donors);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .contains("this is a donors catalogue; mend: give it with --donors")
                .contains("this is a build file; mend: give it as the build file itself, without --donors");
    }

    @Test
    void everyFaultOfTheFileIsSaidAtOnceWithItsPlace() throws IOException {
        String faulty = BUILD.replace("66.00 mm ± 0.01 mm", "66.00").replace("deck_height", "deck_hieght");
        String name = file(faulty);
        CommandRun run = CommandRun.of("measure", name);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .contains(name + ":8:9: cylinder.bore: '66.00'", "mend:")
                .contains(name + ":9:3: cylinder.deck_hieght", "deck_height")
                .contains("2 faults")
                .doesNotContain("\tat ");
    }

    @Test
    void howACommaWasUnderstoodIsSaidBesideTheAnswerNotInIt() throws IOException {
        CommandRun run = CommandRun.of("measure", "--json", file(BUILD.replace("66.00 mm ± 0.01 mm", "66,02 mm")));
        assertThat(run.code()).isZero();
        assertThat(run.err()).contains("66.02 mm");
        assertThat(run.out()).startsWith("{");
    }

    @Test
    void answerWithAStopEndsWithItsOwnCode() {
        assertThat(ExitCode.of(SampleAnswer.loud(UnitSystem.METRIC_FIRST))).isEqualTo(ExitCode.ANSWERED_WITH_STOP);
        assertThat(ExitCode.of(SampleAnswer.quiet(UnitSystem.METRIC_FIRST))).isEqualTo(ExitCode.ANSWERED);
    }

    @Test
    void seenCrackStopsAndTheShellIsTold() throws IOException {
        String cracked = BUILD
                + "flywheel:\n  kind: spoked_iron\nseen:\n  - {part: flywheel, damage: crack, where: spoke root}\n";
        CommandRun run = CommandRun.of("measure", file(cracked));
        assertThat(run.out()).contains("STOP");
        assertThat(run.code()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({"no-such.yaml, no such file", "., is a folder"})
    void whatCannotBeReadIsRefusedByNameAndReason(String name, String reason) {
        CommandRun run = CommandRun.of("measure", folder.resolve(name).toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(name, reason).doesNotContain("Exception", "\tat ");
    }

    @Test
    void pipeWithANameIsReadAsAStream() throws IOException, InterruptedException {
        Path pipe = folder.resolve("pipe");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        Process writer = new ProcessBuilder("cp", file(BUILD), pipe.toString()).start();
        assertThat(CommandRun.of("measure", pipe.toString())).isEqualTo(CommandRun.of("measure", file(BUILD)));
        assertThat(writer.waitFor()).isZero();
    }

    @Test
    void emptyNameIsSaidToBeEmpty() {
        CommandRun run = CommandRun.of("measure", "");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("the name is empty");
    }

    @Test
    void endlessInputIsCutOffAndRefused() {
        CommandRun run = CommandRun.of("measure", "/dev/zero");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("/dev/zero", "16 MB");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "measure",
                "measure --blank x.yaml",
                "measure --blank --json",
                "measure --blank --all",
                "measure --blank --width 80",
                "measure --blank --donors x.yaml",
                "measure --blank --at-lift 1mm",
                "measure --units cubits x.yaml",
                "measure - --donors -"
            })
    void callThatMakesNoSenseIsRefusedWithTheCure(String line) {
        CommandRun run = CommandRun.of(line.split(" ", -1));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("See: longthrow measure --help");
        assertThat(run.out()).isEmpty();
    }

    private static final String LOBE = BUILD + """
            camshaft:
              checking_lift: 1.27 mm ± 0.01 mm
              intake_opens: 8° ± 1°
              intake_closes: 40° ± 1°
            intake_valve:
              lift: 8.20 mm ± 0.05 mm
            use:
              wanted_speed: 6500 rpm
            """;

    /** At the checking lift the events come back as written; 8 + 40 + 180 is the duration, (40 + 180 - 8) / 2 the centre. */
    @Test
    void everyLiftAskedForIsAnsweredForEachValve() throws IOException {
        CommandRun run = CommandRun.of(
                "measure",
                "--width",
                "200",
                "--at-lift",
                "1.27 mm",
                "--at-lift",
                "0.2 in",
                "--at-lift",
                "9 mm",
                file(LOBE));
        assertThat(run.code()).as("no flywheel is rated for the wanted speed").isEqualTo(1);
        assertThat(run.out())
                .containsSubsequence(
                        "VALVE MOTION",
                        "intake valve, by lobe figures:",
                        "peak velocity",
                        "per degree",
                        "m/s",
                        "greatest negative acceleration",
                        "lift at overlap top",
                        "ASSUMED: only duration, peak lift and centre are known",
                        "at 1.27 mm: opens before top dead centre 8.0 ± 1.0 °; closes after bottom dead centre 40.0 ± 1.0 °;",
                        "duration 228.0 ± 1.5 °; lobe centre 106.0 ±",
                        "at 0.2 in: opens before top dead centre -",
                        "at 9 mm: the valve does not surely lift so far: its full lift is 8.200",
                        "exhaust valve: no lift table");
        String json = CommandRun.of("measure", "--json", "--at-lift", "1.27 mm", file(LOBE))
                .out();
        assertThat(json)
                .containsSubsequence(
                        "\"movements\": [",
                        "\"valve\": \"intake_valve\"",
                        "\"key\": \"peak_velocity\"",
                        "\"unit\": \"m/rad\"",
                        "\"lift\": 0.00127",
                        "\"key\": \"duration\"");
    }

    @Test
    void unaskedTheValveMotionIsShort() throws IOException {
        String out = CommandRun.of("measure", file(LOBE)).out();
        int start = out.indexOf("VALVE MOTION");
        assertThat(start).isPositive();
        assertThat(out.substring(start, out.indexOf("\n\n", start)).split("\n", -1).length)
                .isLessThanOrEqualTo(8);
        assertThat(CommandRun.of("measure", file(BUILD)).out()).doesNotContain("VALVE MOTION");
    }

    @ParameterizedTest
    @CsvSource({
        "1, has no unit",
        "-1 mm, is no lift of an open valve",
        "0 mm, is no lift of an open valve",
        "3 g, a length is wanted here",
        "1 mm ± 0.1 mm, leave the ± out"
    })
    void aLiftThatIsNoneIsRefusedWithTheCure(String lift, String said) throws IOException {
        CommandRun run = CommandRun.of("measure", "--at-lift", lift, file(LOBE));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(said, "--at-lift", "See: longthrow measure --help");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void fileOfDonorsThatIsNotThereIsNotOfferedASheetToFillIn() throws IOException {
        CommandRun run = CommandRun.of(
                "measure", file(BUILD), "--donors", folder.resolve("none").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("no such file", "examples/donors.yaml").doesNotContain("--blank");
        CommandRun empty = CommandRun.of("measure", file(BUILD), "--donors", "/dev/null");
        assertThat(empty.code()).isEqualTo(2);
        assertThat(empty.err()).contains("'longthrow_donors: 1'").doesNotContain("'longthrow: 1'");
    }

    @Test
    void widthOutsideItsRangeIsRefusedWithTheRange() throws IOException {
        CommandRun run = CommandRun.of("measure", "--width", "59", file(BUILD));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("59", "60 to 200");
    }

    @Test
    void blankSheetReadsBackAsABuild() throws IOException {
        CommandRun blank = CommandRun.of("measure", "--blank");
        assertThat(blank.code()).isZero();
        CommandRun read = CommandRun.of("measure", file(blank.out()));
        assertThat(read.err()).isEmpty();
        assertThat(read.code()).isZero();
    }

    @Test
    void colourOnlyWhereTheTerminalShowsIt() throws IOException {
        assertThat(CommandRun.of(Ansi.ON, "measure", file(BUILD)).out()).contains("\u001b[");
        assertThat(CommandRun.of(Ansi.OFF, "measure", file(BUILD)).out()).doesNotContain("\u001b");
        assertThat(CommandRun.of(Ansi.ON, "measure", "--json", file(BUILD)).out())
                .doesNotContain("\u001b");
    }

    @Test
    void demoSaysThatItIsInventedAndWhatToDoNext() throws IOException {
        CommandRun run = CommandRun.of("demo");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .containsSubsequence("INVENTED", "squish", "This engine is invented", "--blank > my-engine.yaml");
        assertThat(DemoCommand.text()).isEqualTo(Files.readAllBytes(Path.of("..", "examples", "demo.yaml")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"measure", "set", "demo", "completion"})
    void everyHelpGivesAnExample(String command) {
        CommandRun run = CommandRun.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("Example", "longthrow " + command);
    }

    @ParameterizedTest
    @CsvSource({"40, 60", "72, 72", "400, 120", "0, 80", "wide, 80"})
    void pageIsAsWideAsTheTerminalWithinReason(String columns, int width) {
        assertThat(AnswerOptions.ofTerminal(columns)).isEqualTo(width);
    }

    @ParameterizedTest
    @NullAndEmptySource
    void pageIsEightyColumnsWideWhereNobodySays(String columns) {
        assertThat(AnswerOptions.ofTerminal(columns)).isEqualTo(80);
    }

    @Test
    void progressSpeaksAfterASecondOnATerminalAndWipesItselfAway() {
        assertThat(saidDuring(1300, true)).startsWith("\rmeasuring, 1 s").endsWith("\r\u001b[K");
    }

    @ParameterizedTest
    @CsvSource({"true, 0", "false, 1300"})
    void progressIsSilentForShortSumsAndWhereThereIsNoTerminal(boolean terminal, long milliseconds) {
        assertThat(saidDuring(milliseconds, terminal)).isEmpty();
    }

    private static String saidDuring(long milliseconds, boolean terminal) {
        StringWriter err = new StringWriter();
        String result = Patience.during("measuring", new PrintWriter(err), terminal, () -> {
            LockSupport.parkNanos(milliseconds * 1_000_000);
            return "done";
        });
        assertThat(result).isEqualTo("done");
        return err.toString();
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 80, 100})
    void demoFitsThePage(int width) {
        List<String> lines = CommandRun.of("demo", "--all", "--width", "" + width)
                .out()
                .lines()
                .toList();
        assertThat(lines).allMatch(line -> line.codePointCount(0, line.length()) <= width);
        assertThat(AnswerText.LEAST_WIDTH).isLessThanOrEqualTo(width);
    }

    private String file(String text) throws IOException {
        Path file = folder.resolve("my engine.yaml");
        Files.writeString(file, text);
        return file.toString();
    }
}
