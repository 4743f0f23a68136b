package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Pattern;
import longthrow.workshop.book.BookReader;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BookPageTest {
    @TempDir
    private Path folder;

    private Visitor visitor;

    @BeforeEach
    void open() {
        visitor = Visitor.in(folder);
    }

    @AfterEach
    void close() {
        visitor.close();
    }

    private String scenario(String name) throws IOException {
        Visitor.Page page = visitor.upload(
                "/builds/file",
                name,
                Files.readAllBytes(Path.of("../examples/scenarios").resolve(name)),
                Map.of("key", Visitor.key()));
        return page.location().replace("/measure", "");
    }

    @Test
    void theFullSheetStandsOnThePageWithItsStopOnTop() {
        String base = visitor.example();
        Visitor.Page page = visitor.get(base + "/book");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("REFUSED. This sheet approves nothing until the stop is gone.")
                .contains("What stands in the way")
                .contains("unknown: ask the maker")
                .contains("Measure these again before you buy")
                .contains("no price said");
        assertThat(page.body().indexOf("STOP, refused")).isLessThan(page.body().indexOf("<h2>Recipe"));
        assertThat(page.body()).contains("aria-current=\"page\"><b>Book</b>");
    }

    @Test
    void thePageForTheWallIsTheSameEngine() {
        String base = visitor.example();
        assertThat(visitor.get(base + "/book?view=wall").words())
                .contains("the page for the wall")
                .contains("REFUSED.")
                .contains("First start and running in")
                .doesNotContain("Tickets for the machine shop");
    }

    @Test
    void everyDefaultIsOnThePageOnce() {
        String base = visitor.example();
        long measured = visitor.get(base + "/book")
                .body()
                .lines()
                .filter(line -> Pattern.compile(">D\\d+</td>").matcher(line).find())
                .count();
        long answered = CommandRun.of("measure", "../examples/demo.yaml", "--json")
                .out()
                .split("\"defaults\": \\[", -1)[1]
                .split("\"next\"", -1)[0]
                .lines()
                .filter(line -> line.contains("\"where\":"))
                .count();
        assertThat(measured).isEqualTo(answered).isPositive();
    }

    @Test
    void thePdfHoldsTheBuildFileAndIsTakenBackByTheListOfBuilds() throws IOException {
        String base = scenario("s4-vintage-iron.yaml");
        byte[] pdf = visitor.download(base + "/book.pdf?view=wall");
        byte[] text = Files.readAllBytes(Path.of("../examples/scenarios/s4-vintage-iron.yaml"));
        assertThat(BookReader.buildFile(pdf).buildFile()).get().isEqualTo(text);
        Visitor.Page taken = visitor.upload("/builds/file", "book.pdf", pdf, Map.of("key", Visitor.key()));
        assertThat(taken.status()).isEqualTo(303);
        byte[] again = visitor.download(taken.location().replace("/measure", "/file"));
        assertThat(again).isEqualTo(text);
    }

    @Test
    void aPdfWithoutABuildFileIsRefused() {
        Visitor.Page page = visitor.upload(
                "/builds/file",
                "scribble.pdf",
                "%PDF-1.7 nothing".getBytes(StandardCharsets.UTF_8),
                Map.of("key", Visitor.key()));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("damaged PDF").contains("nothing was begun");
    }

    @Test
    void sharedItIsWithoutFreeWordsUnlessAsked() {
        String base = visitor.example();
        assertThat(visitor.get(base + "/book").words()).contains("Bench example, 187 cc single – full sheet");
        Visitor.Page shared = visitor.get(base + "/book?share=yes&now=1");
        assertThat(shared.body().split("<main", -1)[1])
                .doesNotContain("Bench example")
                .doesNotContain("Orrindel")
                .contains("Left out for sharing")
                .contains("notes, 2 times");
        assertThat(new String(
                        BookReader.buildFile(visitor.download(base + "/book.pdf?share=yes"))
                                .buildFile()
                                .orElseThrow(),
                        StandardCharsets.UTF_8))
                .doesNotContain("Bench example")
                .doesNotContain("Orrindel");
        assertThat(visitor.get(base + "/book?share=yes&names=yes").words())
                .contains("Bench example, 187 cc single – full sheet");
    }

    /** With a catalogue the page is there at once and asks for the sheet; without script a link does. */
    @Test
    void aSearchIsWaitedForOnThePage() throws IOException {
        visitor.upload(
                "/parts",
                "s1-catalogue.yaml",
                Files.readAllBytes(Path.of("../examples/scenarios/s1-catalogue.yaml")),
                Map.of("key", Visitor.key(), "name", "s1"));
        String base = scenario("s1-rod-wanted.yaml");
        Visitor.Page sheet = visitor.get(base + "/book/sheet?view=sheet");
        assertThat(sheet.status()).isEqualTo(200);
        assertThat(sheet.words()).contains("Tickets for the machine shop");
    }
}
