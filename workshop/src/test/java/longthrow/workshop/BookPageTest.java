package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import longthrow.workshop.book.BookReader;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BookPageTest extends OverHttp {
    private String scenario(String name) throws IOException {
        Visitor.Page page = visitor.upload(
                "/builds/file",
                name,
                Files.readAllBytes(Path.of("../examples/scenarios").resolve(name)),
                Map.of("key", Visitor.key()));
        return page.location().replace("/measure", "");
    }

    private void catalogue() throws IOException {
        Visitor.Page sent = visitor.upload(
                "/parts",
                "s1-catalogue.yaml",
                Files.readAllBytes(Path.of("../examples/scenarios/s1-catalogue.yaml")),
                Map.of());
        assertThat(visitor.post(sent.location(), Map.of()).status()).isEqualTo(303);
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

    /** Its rod is honed: that must reach the shop, whatever the search says of the build with the plan in it. */
    @Test
    void whatIsTakenIsOnTheTicketAndTheBillUntilItIsRead() throws IOException {
        String base = scenario("s1-rod-wanted.yaml");
        catalogue();
        Visitor.Page fit = visitor.get(base + "/fit?now=1");
        Visitor.Page taken = visitor.post(
                base + "/fit/take", Map.of("based", "1", "key", Visitor.key(), "title", fit.hidden("title")));
        assertThat(taken.status()).as(taken.words()).isEqualTo(303);
        assertThat(visitor.get(base + "/measure").words()).contains("planned, not machined yet");
        assertThat(visitor.get(base + "/fit?now=1").words()).contains("planned, not machined yet");
        assertThat(visitor.get(base + "/book").words())
                .contains("R3, connecting rod", "hone the small end by", "17.0100 mm", "stands here until")
                .contains("planned, not machined yet; read it after the job")
                .contains("taken: R3: billet rod", "95.00 EUR", "14.00 EUR")
                .doesNotContain("None that the answers ask for");
        Map<String, String> read =
                Map.of("based", "2", "key", Visitor.key(), "entry", "0", "how", "read", "unit", "mm");
        assertThat(visitor.post(base + "/measure/connecting_rod.small_end_bore", read, List.of("17.027"))
                        .status())
                .isEqualTo(303);
        visitor.get(base + "/fit?now=1"); // the Book waits for the search
        assertThat(visitor.get(base + "/book").words())
                .doesNotContain("stands here until", "planned, not machined yet;")
                .contains("taken: R3: billet rod");
    }

    /** The sheet is long: every chapter that is there is one link away, and none leads nowhere, with script or without. */
    @Test
    void theSheetHasItsChaptersOnTop() {
        for (String asked : List.of("/book?now=1", "/book?share=yes&now=1")) {
            String sheet = visitor.get(visitor.example() + asked).body();
            String list = sheet.substring(sheet.indexOf("<nav class=\"contents\""), sheet.indexOf("<h2>Recipe"));
            List<String> keys = Pattern.compile("href=\"#(chapter-[a-z-]+)\"")
                    .matcher(list)
                    .results()
                    .map(m -> m.group(1))
                    .toList();
            List<String> there = Pattern.compile(" id=\"(chapter-[a-z-]+)\"")
                    .matcher(sheet)
                    .results()
                    .map(m -> m.group(1))
                    .toList();
            assertThat(keys).as(asked).isEqualTo(there).doesNotHaveDuplicates().hasSizeGreaterThan(18);
            assertThat(there.contains("chapter-left-out")).isEqualTo(asked.contains("share"));
        }
        assertThat(visitor.get(visitor.example() + "/book?view=wall").body()).doesNotContain("class=\"contents\"");
    }

    /** Before it is laid out a chapter is as tall as its rows make it, in steps that the style sheet has. */
    @Test
    void aChapterNotYetLaidOutIsAsTallAsItsRows() {
        String style = visitor.get("/static/longthrow.css").body();
        Pattern defaults = Pattern.compile("tall-(\\d+)\" id=\"chapter-readings\"");
        List<Integer> tall = Stream.of(visitor.example(), visitor.empty("Nothing read yet"))
                .map(base -> visitor.get(base + "/book?now=1").body())
                .peek(sheet -> assertThat(Pattern.compile("class=\"chapter (tall-\\d+)\"")
                                .matcher(sheet)
                                .results()
                                .map(m -> "." + m.group(1) + " {"))
                        .hasSizeGreaterThan(15)
                        .allSatisfy(one -> assertThat(style).contains(one)))
                .map(defaults::matcher)
                .filter(Matcher::find)
                .map(found -> Integer.valueOf(found.group(1)))
                .toList();
        assertThat(tall).hasSize(2);
        assertThat(tall.get(0)).isGreaterThan(4 * tall.get(1));
    }

    /** What is counted is said; pairs that fill the wall are counted too, and named on the full sheet. */
    @Test
    void theWallCountsWhatTheSheetNames() {
        String base = visitor.empty("Nothing read yet");
        String sheet = visitor.get(base + "/book?now=1").words();
        String wall = visitor.get(base + "/book?view=wall").words();
        assertThat(wall)
                .containsPattern("Figures not known: \\d+; taken for granted: \\d+\\. The full sheet lists each")
                .containsPattern("not known: (\\d+) of \\1 pairs, see Clear");
        assertThat(sheet)
                .containsPattern("not known: [a-z ]+ to [a-z ]+, [a-z ]+ to")
                .doesNotContain("pairs, see Clear");
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

    /** Who set 1.27 mm himself must not read another's figure first. */
    @Test
    void anOwnersLimitStandsFirstOnTheWall() throws IOException {
        String text = Files.readString(Path.of("../examples/scenarios/s1-longer-throw.yaml"))
                .replaceFirst(
                        "rules:\\n  choose:\\n    squish_least: general\\n",
                        "rules:\n  keep: [{name: mine, term: engine.squish, least: 1.27 mm}]\n");
        String base = visitor.upload(
                        "/builds/file", "own.yaml", text.getBytes(StandardCharsets.UTF_8), Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
        String wall = visitor.get(base + "/book?view=wall").words();
        String set = wall.substring(wall.indexOf("Set to"));
        assertThat(set).containsSubsequence("● least 1.27 mm", "your own", "the trade says: ", "0.76 mm");
        assertThat(set.indexOf("1.27 mm")).isLessThan(set.indexOf("0.76 mm"));
        assertThat(wall).doesNotContainPattern("\\d\\.\\d{3,}00 mm");
    }

    @Test
    void theMockUpLeadsToTheSignaturesThatAreMadeOnPaper() throws IOException {
        String base = scenario("s1-longer-throw.yaml");
        visitor.get(base + "/clear?now=1"); // while the gaps are being worked out that is said instead
        assertThat(visitor.get(base + "/measure").body()).contains("href=\"" + base + "/book?view=sheet#signatures\"");
        Visitor.Page sheet = visitor.get(base + "/book?view=sheet");
        assertThat(sheet.body()).contains("<h2 id=\"signatures\">");
        assertThat(sheet.words()).contains("Signed on paper").contains("Measure ■ not approved", "STOP, not approved");
    }

    /** No page of an engine talks of places in a file or of options of a command. */
    @ParameterizedTest
    @ValueSource(strings = {"/measure", "/fit?now=1"})
    void pagesSpeakTheWordsOfPages(String page) throws IOException {
        String base = scenario("s1-longer-throw.yaml");
        String words = visitor.get(base + page).words();
        assertThat(words)
                .doesNotContain("--catalogue", "--why", "longthrow import", "aims:", "choose:", "fit: ")
                .doesNotContain(" (flywheel.rated_speed)", "use.duty", "connecting_rod.metal");
    }

    /** Names on the page and in print, with the way to the card; places of the file stay in the JSON. */
    @Test
    void whatWasNoticedNamesQuantitiesAndLeadsToThem() throws IOException {
        String base = visitor.example();
        Visitor.Page page = visitor.get(base + "/book");
        String part = page.words().substring(page.words().indexOf("What was noticed"));
        Pattern place = Pattern.compile(
                "(cylinder|crankshaft|piston|head|gasket|camshaft|connecting_rod|engine|flywheel|use|instruments)\\.[a-z_]+");
        assertThat(place.matcher(part).results().map(m -> m.group()).toList()).isEmpty();
        assertThat(part).doesNotContain("[2]", "#2");
        assertThat(page.body().substring(page.body().indexOf("<h2>What was noticed")))
                .contains("href=\"" + base + "/measure/");
        String json = CommandRun.of("book", "../examples/demo.yaml", "--json").out();
        assertThat(json).contains("\"whose\": \"trade\"", "\"behind_own\": false");
        assertThat(place.matcher(json).find()).isTrue();
    }

    @Test
    void everyDefaultIsOnThePageOnce() {
        String base = visitor.example();
        long shown = visitor.get(base + "/book?now=1")
                .body()
                .lines()
                .filter(line -> Pattern.compile(">D\\d+</td>").matcher(line).find())
                .count();
        long answered = CommandRun.of("book", "../examples/demo.yaml", "--json")
                .out()
                .split("\"defaults\": \\[", -1)[1]
                .split("\"signatures\"", -1)[0]
                .lines()
                .filter(line -> line.contains("\"where\":"))
                .count();
        assertThat(shown).isEqualTo(answered).isPositive();
    }

    /** The page is there at once and says what it waits for; after an edit it waits again, and shows nothing of before. */
    @Test
    void whatTouchesComesLaterAndIsNeverThatOfAnOlderText() throws IOException {
        String base = scenario("s1-longer-throw.yaml");
        Visitor.Page first = visitor.get(base + "/book");
        assertThat(first.words())
                .contains("are being worked out for what is written down now")
                .contains("Not worked out for what is written down now. Ask it on the page Clear")
                .contains("Recipe")
                .doesNotContain("Unknown until mocked up");
        assertThat(first.body()).contains("hx-get=\"" + base + "/book/sheet?view=sheet&amp;now=1\"");
        Visitor.Page all = visitor.get(base + "/book/sheet?view=sheet&now=1");
        assertThat(all.words())
                .contains("Unknown until mocked up: 36", "What lets go first", "NOT APPROVED", "Balance factor")
                .contains("piston skirt to counterweight: clears cold")
                .doesNotContain("being worked out", "Not worked out");
        assertThat(all.body()).contains("href=\"" + base + "/measure/camshaft.axis_up\"");
        assertThat(visitor.get(base + "/book").words()).contains("Unknown until mocked up: 36");
        assertThat(visitor.get(base + "/book?view=wall").words())
                .contains("Least gap: piston crown to head", "not approved at 6500 rpm", "drill plan unknown");
        Map<String, String> shorter =
                Map.of("based", "1", "key", Visitor.key(), "entry", "0", "how", "read", "unit", "mm", "value", "17.1");
        assertThat(visitor.post(base + "/measure/piston.skirt_below_pin", shorter, List.of("17.1"))
                        .status())
                .isEqualTo(303);
        assertThat(visitor.get(base + "/book").words())
                .contains("are being worked out for what is written down now")
                .doesNotContain("Unknown until mocked up");
        assertThat(visitor.get(base + "/book?view=wall").words())
                .contains("Not all of it is worked out")
                .doesNotContain("Least gap");
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

    /** Sheets attached to the build stand in its Book, one that cannot be read too; handed on without a word of theirs. */
    @Test
    void sheetsOfRunsStandInTheBook() throws IOException {
        String base = scenario("s1-rod-wanted.yaml");
        assertThat(visitor.get(base + "/book?now=1").words()).contains("Nothing: no sheet of runs stands beside");
        String header = Files.readString(Path.of("../examples/dyno/header.yaml"));
        sheet(base, "header.yaml", header);
        assertThat(visitor.get(base + "/book?now=1").words())
                .contains(
                        "Kolvane 249, did the header help – INVENTED: no such run exists",
                        "header against stock: a real gain. Real as far as 3 sessions tell: 'header' gains, peak +2.0 ± 0.6 %",
                        "12 of 15 runs count",
                        "first pull of its session: warm-up");
        sheet(base, "mine.yaml", header.replace("iso_1585", "iso"));
        assertThat(visitor.get(base + "/book?now=1").words())
                .contains("mine.yaml", "1 fault keeps it from being read, so nothing of it stands in this Book");
        Visitor.Page shared = visitor.get(base + "/book?share=yes&now=1");
        assertThat(shared.words())
                .contains("setup 2 against setup 1 (the baseline): a real gain", "runs: names of setups, 3 times");
        assertThat(shared.body().split("<main", -1)[1]).doesNotContain("Kolvane", "header", "mine.yaml", "own drum");
    }

    private void sheet(String base, String name, String text) {
        assertThat(visitor.upload(base + "/dyno", name, text.getBytes(StandardCharsets.UTF_8), Map.of())
                        .status())
                .isEqualTo(303);
    }

    /** A word that is not known never gives the full Book with names; each address that shows one is asked. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "share=YES",
                "share=on",
                "share=1",
                "share=no&share=yes",
                "names=on",
                "share=yes&names=YES",
                "view=zzz",
                "view=Wall",
                "Share=yes",
                "shared=yes"
            })
    void aWordThatIsNotKnownIsRefused(String query) {
        String base = visitor.example();
        for (String address : List.of("/book?", "/book/sheet?", "/book.pdf?")) {
            Visitor.Page page = visitor.get(base + address + query);
            assertThat(page.status()).as(address + query).isEqualTo(400);
            assertThat(page.body()).contains("nothing was shown").doesNotContain("Orrindel");
        }
    }

    @Test
    void nothingSaidOrNoIsTheFullSheetWithNames() {
        String base = visitor.example();
        for (String query : List.of("", "?view=&share=&names=", "?view=sheet&share=no&names=no")) {
            assertThat(visitor.get(base + "/book" + query).words())
                    .contains("Bench example, 187 cc single – full sheet");
        }
    }

    /** Printed by a browser: what stands around the sheet holds the name of the build and of its rules. */
    @Test
    void inPrintNothingStandsAroundTheSheet() {
        String base = visitor.example();
        Visitor.Page shared = visitor.get(base + "/book?share=yes&now=1");
        String title = shared.body().split("<title>", -1)[1].split("</title>", -1)[0];
        assertThat(title).isEqualTo("Book – Longthrow");
        String main = shared.body().split("<main", -1)[1].split("</main>", -1)[0];
        assertThat(main)
                .contains("<div class=\"book\">")
                .doesNotContain("Bench example")
                .doesNotContain("Orrindel");
        assertThat(shared.body()).contains("<body class=\"framed sheet-alone\"");
        assertThat(visitor.get(base + "/measure").body()).contains("<body class=\"framed\"");
        String style = visitor.get("/static/longthrow.css").body();
        String print = style.split(Pattern.quote("@media print {"), -1)[1].split("\n}", -1)[0];
        assertThat(print)
                .contains(
                        ".sheet-alone > :not(main), .sheet-alone main > :not(.book, [hx-get]) { display: none !important; }");
    }

    @Test
    void aBookWithAnotherBuildFileInsideIsRefusedAndOneWithoutAChecksumIsSaid() throws IOException {
        String base = scenario("s4-vintage-iron.yaml");
        byte[] pdf = visitor.download(base + "/book.pdf?view=wall");
        Visitor.Page other =
                visitor.upload("/builds/file", "book.pdf", withSum(pdf, "0".repeat(64)), Map.of("key", Visitor.key()));
        assertThat(other.status()).isEqualTo(422);
        assertThat(other.words()).contains("another build file").contains("nothing was begun");
        Visitor.Page bare =
                visitor.upload("/builds/file", "book.pdf", withSum(pdf, null), Map.of("key", Visitor.key()));
        assertThat(bare.status()).isEqualTo(303);
        assertThat(visitor.said()).contains("nothing vouches");
    }

    private static byte[] withSum(byte[] pdf, @Nullable String sum) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            document.getDocumentInformation().setCustomMetadataValue("BuildFileSHA256", sum);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        }
    }

    /** Page, sheet and PDF of what is handed on share one search, and it is not mistaken for that of the whole. */
    @Test
    void theSearchOfASharedOneIsRememberedToo() throws IOException {
        catalogue();
        String base = scenario("s1-rod-wanted.yaml");
        Visitor.Page before = visitor.get(base + "/book?share=yes");
        assertThat(before.words()).contains("may take a minute").doesNotContain("Left out for sharing");
        byte[] pdf = visitor.download(base + "/book.pdf?share=yes");
        assertThat(BookReader.buildFile(pdf).vouched()).isTrue();
        Visitor.Page after = visitor.get(base + "/book?share=yes");
        assertThat(after.words())
                .contains("Left out for sharing")
                .contains("R3 + G130")
                .doesNotContain("may take a minute");
        assertThat(visitor.get(base + "/book").words()).contains("may take a minute");
    }

    /** With a catalogue the page is there at once and asks for the sheet; without script a link does. */
    @Test
    void aSearchIsWaitedForOnThePage() throws IOException {
        catalogue();
        String base = scenario("s1-rod-wanted.yaml");
        assertThat(visitor.get(base + "/book").words()).contains("Show it when it is done");
        Visitor.Page sheet = visitor.get(base + "/book/sheet?view=sheet");
        assertThat(sheet.status()).isEqualTo(200);
        assertThat(sheet.words()).contains("Tickets for the machine shop").contains("R3 + G130");
    }
}
