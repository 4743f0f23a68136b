package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.workshop.json.BookJson;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class BookCommandTest {
    private static final Path EXAMPLES = Path.of("../examples");
    private static final String DEMO = EXAMPLES.resolve("demo.yaml").toString();
    private static final Path SCHEMA = Path.of("..", "docs", "book.schema.json");

    @TempDir
    private Path folder;

    private static String scenario(String name) {
        return EXAMPLES.resolve("scenarios").resolve(name).toString();
    }

    private static JsonNode json(String... more) {
        CommandRun run = CommandRun.of(java.util.stream.Stream.concat(
                        java.util.stream.Stream.of("book", "--json"), java.util.Arrays.stream(more))
                .toArray(String[]::new));
        assertThat(run.err()).as("complaints").isEmpty();
        return new JsonMapper().readTree(run.out());
    }

    private static List<String> texts(JsonNode list, String key) {
        return list.valueStream().map(n -> n.path(key).stringValue()).toList();
    }

    @Test
    void anEmptyNameIsNoPlaceForABook() {
        for (String call : List.of("book", "import")) {
            CommandRun run = CommandRun.of(call, DEMO, "--out", "");
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.err()).contains("--out names no file: the name is empty", "such as --out my-engine");
        }
    }

    @Test
    void schemaInTheDocumentationIsTheOneOfTheCode() throws IOException {
        if (Boolean.getBoolean("longthrow.rewrite")) {
            Files.writeString(SCHEMA, BookJson.schema());
        }
        assertThat(SCHEMA).hasContent(BookJson.schema());
    }

    @ParameterizedTest
    @ValueSource(strings = {"s1-rod-wanted.yaml", "s2-side-valve-kart.yaml", "s4-vintage-iron.yaml"})
    void documentKeepsItsSchema(String name) {
        CommandRun run = CommandRun.of("book", "--json", scenario(name));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(BookJson.schema(), InputFormat.JSON)
                        .validate(run.out(), InputFormat.JSON))
                .isEmpty();
    }

    /** Acceptance case S1 (invented): the rod that closes the stack, why the others do not, and the small end honed. */
    @Test
    void theFirstScenarioAsABook() {
        JsonNode book = json(scenario("s1-rod-wanted.yaml"), "--catalogue", scenario("s1-catalogue.yaml"));
        assertThat(book.path("ways").path(0).path("title").stringValue()).isEqualTo("R3 + G130");
        assertThat(texts(book.path("refused"), "example")).contains("R1 + G130", "R2 + G130", "R4 + G130");
        JsonNode ticket = book.path("tickets").path(0);
        assertThat(ticket.path("part").stringValue()).startsWith("R3");
        assertThat(ticket.path("from").stringValue()).startsWith("17.01");
        assertThat(ticket.path("to").stringValue()).startsWith("17.021");
        assertThat(ticket.path("datum").stringValue()).isEqualTo("big-end bore");
        assertThat(book.path("total").stringValue()).isEqualTo("109.00 EUR and what G130 costs");
        assertThat(book.path("budget").stringValue()).isEqualTo("330.00 EUR");
        assertThat(book.path("unpriced").toString()).contains("rod bolts, new", "gasket set", "spark plug");
        assertThat(texts(book.path("stops"), "what")).contains("6500 rpm is not approved");
        assertThat(book.path("approval").stringValue()).startsWith("NOT APPROVED");
        assertThat(texts(book.path("torques"), "torque")).containsOnly("unknown: ask the maker");
    }

    /** Acceptance case S2 (invented): the head may be cut by about 0.1 mm; methanol's card is printed. */
    @Test
    void theSecondScenarioAsABook() {
        JsonNode book = json(scenario("s2-side-valve-kart.yaml"));
        JsonNode ticket = book.path("tickets").path(0);
        assertThat(ticket.path("work").stringValue()).contains("may be cut").contains("0.11 ± 0.09 mm");
        assertThat(ticket.path("to").stringValue())
                .contains("8.40")
                .contains("1.51")
                .contains("27.0");
        assertThat(ticket.path("datum").stringValue()).isEqualTo("head face");
        assertThat(texts(book.path("cautions"), "message")).anyMatch(m -> m.contains("methanol fire card"));
        assertThat(texts(book.path("steps"), "step")).anyMatch(m -> m.startsWith("methanol"));
    }

    /** Acceptance case S4 (invented): refused, on top of everything. */
    @Test
    void theFourthScenarioAsABook() {
        JsonNode book = json(scenario("s4-vintage-iron.yaml"));
        assertThat(book.path("approval").stringValue()).startsWith("REFUSED");
        assertThat(book.path("stops").path(0).path("refused").booleanValue()).isTrue();
        assertThat(texts(book.path("stops"), "what")).contains("do not start it and do not spin the flywheel");
        assertThat(texts(book.path("targets"), "label")).contains("big-end clearance");
    }

    @ParameterizedTest
    @CsvSource({
        "demo.yaml",
        "scenarios/s1-rod-wanted.yaml",
        "scenarios/s2-side-valve-kart.yaml",
        "scenarios/s4-vintage-iron.yaml"
    })
    void defaultsAreThoseOfEveryQuestionEachOnce(String name) {
        String file = EXAMPLES.resolve(name).toString();
        Set<String> used = new LinkedHashSet<>();
        for (String question : List.of("measure", "clear", "life", "shake")) {
            new JsonMapper()
                    .readTree(CommandRun.of(question, file, "--json").out())
                    .path("defaults")
                    .valueStream()
                    .forEach(d -> used.add(d.toString()));
        }
        assertThat(json(file).path("defaults").valueStream().map(JsonNode::toString))
                .containsExactlyElementsOf(used);
    }

    /** S1 (invented) as a Book: what is not read of the rod is unknown, and no speed is approved without the makers' ratings. */
    @Test
    void whatTouchesLetsGoAndShakesStandsInTheDocument() {
        JsonNode book = json(scenario("s1-longer-throw.yaml"));
        JsonNode touching = book.path("touching").path(0);
        assertThat(texts(touching.path("unknown"), "pair")).contains("rod bolts to camshaft core", "dipper to case");
        assertThat(touching.path("unknown").path(0).path("how").stringValue()).isNotBlank();
        JsonNode skirt = touching.path("told")
                .valueStream()
                .filter(t -> t.path("key").stringValue().equals("skirt_to_counterweight"))
                .findFirst()
                .orElseThrow();
        // needs map, S1: 86.40 - 28.25 - 17.6 - 38.9 = 1.65 mm
        assertThat(skirt.path("cold").path(0).path("gap").stringValue()).startsWith("1.65");
        JsonNode limits = book.path("limits").path(0);
        assertThat(limits.path("verdict").stringValue()).isEqualTo("NOT APPROVED");
        assertThat(texts(limits.path("limits"), "key")).isNotEmpty().doesNotHaveDuplicates();
        assertThat(book.path("shaking").path(0).path("line").stringValue())
                .contains("Balance factor", "unknown: read piston mass");
    }

    @Test
    void aPdfIsWrittenOnceAndTheBuildFileComesBackByteForByte() throws IOException {
        Path pdf = folder.resolve("book.pdf");
        CommandRun run = CommandRun.of("book", DEMO, "--out", pdf.toString());
        assertThat(run.code()).isEqualTo(1); // the demo is refused
        assertThat(run.out()).contains("written: ").contains("REFUSED").contains("do not run it at 5200 rpm");
        byte[] first = Files.readAllBytes(pdf);
        CommandRun again = CommandRun.of("book", DEMO, "--out", pdf.toString());
        assertThat(again.code()).isEqualTo(2);
        assertThat(again.err()).contains("is there already");
        assertThat(pdf).hasBinaryContent(first);

        Path back = folder.resolve("back.yaml");
        CommandRun taken = CommandRun.of("import", pdf.toString(), "--out", back.toString());
        assertThat(taken.code()).as(taken.err()).isZero();
        assertThat(back).hasBinaryContent(Files.readAllBytes(Path.of(DEMO)));
        CommandRun twice = CommandRun.of("import", pdf.toString(), "--out", back.toString());
        assertThat(twice.code()).isEqualTo(2);
        assertThat(twice.err()).contains("is there already");
    }

    @Test
    void aBookWithoutAChecksumIsTakenAndOneWithAnotherIsNot() throws IOException {
        Path pdf = folder.resolve("book.pdf");
        CommandRun.of("book", scenario("s4-vintage-iron.yaml"), "--wall", "--out", pdf.toString());
        Path back = folder.resolve("back.yaml");
        assertThat(CommandRun.of("import", pdf.toString(), "--out", back.toString())
                        .out())
                .contains("as they were put in by the checksum");
        Path bare = rewritten(pdf, null);
        CommandRun taken = CommandRun.of(
                "import", bare.toString(), "--out", folder.resolve("bare.yaml").toString());
        assertThat(taken.code()).as(taken.err()).isZero();
        assertThat(taken.out()).contains("nothing vouches").doesNotContain("as they were put in");
        assertThat(importing(rewritten(pdf, "0".repeat(64))))
                .contains("another build file")
                .contains("000000000000…");
    }

    /** The same with another sum, or without. */
    private Path rewritten(Path pdf, @Nullable String sum) throws IOException {
        Path other = folder.resolve(sum == null ? "bare.pdf" : "other.pdf");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            document.getDocumentInformation().setCustomMetadataValue("BuildFileSHA256", sum);
            document.save(other.toFile());
        }
        return other;
    }

    @Test
    void aSharedOneIsNotNamedAfterTheBuildFile() throws IOException {
        Path named = folder.resolve("zoltan-kart.yaml");
        Files.copy(Path.of(scenario("s4-vintage-iron.yaml")), named);
        List<Path> made = new ArrayList<>();
        try {
            for (int time = 0; time < 2; time++) {
                String out = CommandRun.of("book", named.toString(), "--wall", "--share")
                        .out();
                assertThat(out).doesNotContain("zoltan");
                Matcher written =
                        Pattern.compile("written: (shared-wall(-\\d+)?\\.pdf),").matcher(out);
                assertThat(written.find()).as(out).isTrue();
                made.add(Path.of(written.group(1)));
            }
            assertThat(made).doesNotHaveDuplicates().allMatch(Files::exists);
        } finally {
            for (Path each : made) {
                Files.delete(each);
            }
        }
        assertThat(BookCommand.unused(folder, "shared-book").getFileName()).hasToString("shared-book.pdf");
        Files.createFile(folder.resolve("shared-book.pdf"));
        assertThat(BookCommand.unused(folder, "shared-book").getFileName()).hasToString("shared-book-2.pdf");
    }

    @Test
    void helpSaysThatAStopIsNoFailureToWrite() {
        assertThat(CommandRun.of("book", "--help").out())
                .containsPattern("1 +written all the same, and it holds a stop");
    }

    @Test
    void whatIsNoBookIsRefusedInPlainWords() throws IOException {
        Path text = Files.writeString(folder.resolve("not.pdf"), "longthrow: 1");
        assertThat(importing(text)).contains("is no PDF");
        Path cut = folder.resolve("cut.pdf");
        Path pdf = folder.resolve("book.pdf");
        CommandRun.of("book", scenario("s4-vintage-iron.yaml"), "--wall", "--out", pdf.toString());
        byte[] whole = Files.readAllBytes(pdf);
        Files.write(cut, java.util.Arrays.copyOf(whole, whole.length / 2));
        assertThat(importing(cut)).containsAnyOf("damaged PDF", "without a build file");
        assertThat(importing(folder.resolve("none.pdf"))).contains("there is no such file");
        Path huge = folder.resolve("huge.pdf");
        Files.write(huge, new byte[9 << 20]);
        assertThat(importing(huge)).contains("larger than 8 MB");
    }

    private String importing(Path file) {
        Path back = folder.resolve("never.yaml");
        CommandRun run = CommandRun.of("import", file.toString(), "--out", back.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(back).doesNotExist();
        return run.err();
    }

    @Test
    void optionsThatDoNotGoTogetherAreRefused() {
        assertThat(CommandRun.of("book", DEMO, "--json", "--wall").err()).contains("makes no PDF");
        assertThat(CommandRun.of("book", DEMO, "--with-names").err()).contains("goes with --share");
        assertThat(CommandRun.reading("longthrow: 1", "book", "-").err()).contains("with --out");
        assertThat(CommandRun.of(
                                "book",
                                DEMO,
                                "--out",
                                folder.resolve("none").resolve("a.pdf").toString())
                        .err())
                .contains("there is no such folder");
    }

    private static final String MUFFLER = "dyno/muffler.yaml";

    private static String example(String name) {
        return EXAMPLES.resolve(name).toString();
    }

    /** Logs lie beside the sheet; the document keeps its schema and has each sheet in the order that was given. */
    @Test
    void runsStandInTheDocument() {
        CommandRun run = CommandRun.of(
                "book",
                "--json",
                scenario("s1-rod-wanted.yaml"),
                "--dyno",
                example(MUFFLER),
                "--dyno",
                example("dyno/header.yaml"));
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(BookJson.schema(), InputFormat.JSON)
                        .validate(run.out(), InputFormat.JSON))
                .isEmpty();
        JsonNode proved = new JsonMapper().readTree(run.out()).path("proved");
        assertThat(texts(proved, "title"))
                .containsExactly("Tarn 206, another muffler", "Kolvane 249, did the header help");
        JsonNode header = proved.path(1).path("changes").path(0);
        assertThat(header.path("gain").stringValue()).isEqualTo("+2.0 ± 0.6 %");
        assertThat(header.path("shown").booleanValue()).isTrue();
    }

    @Test
    void thePdfHoldsWhatWasProvedAndHandedOnNoWordOfTheSheet() throws IOException {
        Path pdf = folder.resolve("proved.pdf");
        CommandRun run = CommandRun.of(
                "book", scenario("s1-rod-wanted.yaml"), "--dyno", example(MUFFLER), "--out", pdf.toString());
        assertThat(run.err()).isEmpty();
        assertThat(words(pdf))
                .contains("What was proved on the dynamometer", "muffler against stock: a real gain.", "+2.58 ± 0.43 %")
                .contains("R. Example", "the clutch slipped", "13.22 ± 0.31", "Nobody in the plane of flywheel");
        Path handedOn = folder.resolve("for-a-friend.pdf");
        CommandRun shared = CommandRun.of(
                "book",
                scenario("s1-rod-wanted.yaml"),
                "--share",
                "--dyno",
                example(MUFFLER),
                "--out",
                handedOn.toString());
        assertThat(shared.out()).contains("runs: who, 3 times", "can tell how high the place lies");
        assertThat(words(handedOn))
                .contains("setup 2 against setup 1 (the baseline): a real gain.", "+2.58 ± 0.43 %")
                .doesNotContain("R. Example", "muffler", "Tarn", "own drum", ".csv");
    }

    private static String words(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new org.apache.pdfbox.text.PDFTextStripper()
                    .getText(document)
                    .replaceAll("\\s+", " ");
        }
    }

    @Test
    void aFaultySheetOfRunsIsSaidAndNothingIsWritten() throws IOException {
        Path bad = folder.resolve("runs.yaml");
        Files.writeString(
                bad, Files.readString(EXAMPLES.resolve("dyno/header.yaml")).replace("iso_1585", "iso"));
        Path pdf = folder.resolve("runs.pdf");
        CommandRun run = CommandRun.of("book", DEMO, "--dyno", bad.toString(), "--out", pdf.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("runs.yaml:4", "'iso'", "allowed: ", "1 fault in ", "nothing worked out");
        assertThat(CommandRun.of("book", DEMO, "--dyno", DEMO, "--out", pdf.toString())
                        .code())
                .isEqualTo(2);
        assertThat(CommandRun.of("book", DEMO, "--dyno", "-", "--out", pdf.toString())
                        .err())
                .contains("logs lie beside a sheet");
        String header = example("dyno/header.yaml");
        assertThat(CommandRun.of("book", DEMO, "--dyno", header, "--dyno", header, "--out", pdf.toString())
                        .err())
                .contains("is given twice");
        assertThat(CommandRun.of("book", DEMO, "--dyno", example("dyno/none.yaml"), "--out", pdf.toString())
                        .err())
                .contains("there is no such file");
        assertThat(pdf).doesNotExist();
    }

    @Test
    void aFaultyBuildIsSaidAndNothingIsWritten() throws IOException {
        Path bad = folder.resolve("bad.yaml");
        Files.write(
                bad, "longthrow: 1\nengine:\n  name: x\ncylinder:\n  bore: 66.00\n".getBytes(StandardCharsets.UTF_8));
        Path pdf = folder.resolve("bad.pdf");
        CommandRun run = CommandRun.of("book", bad.toString(), "--out", pdf.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("cylinder.bore");
        assertThat(pdf).doesNotExist();
    }
}
