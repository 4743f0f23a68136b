package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import longthrow.workshop.store.BuildEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BuildsPageTest extends OverHttp {
    @Test
    void aFirstVisitIsOfferedTheInventedExampleOrAnEmptySheet() {
        assertThat(visitor.get("/").location()).isEqualTo("/builds");
        Visitor.Page page = visitor.get("/builds");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("Nothing here yet", "invented", "Take the invented example", "Begin with an empty sheet");
    }

    @Test
    void theExampleIsListedWithItsStateAndWhatStopsIt() {
        String base = visitor.example();
        visitor.get(base + "/measure");
        Visitor.Page list = visitor.get("/builds");
        assertThat(list.words())
                .contains("Bench example, 187 cc single", "refused", "Refused: do not run it", "1 suspect");
        assertThat(visitor.get(base + "/state").words()).contains("refused", "Refused: do not run it", "invented");
    }

    @Test
    void anEmptySheetBearsItsNameAndKnowsNothing() {
        String base = visitor.empty("Green kart: the \"second\" one # 2");
        assertThat(visitor.get(base + "/measure").words()).contains("Green kart: the \"second\" one # 2");
        assertThat(new String(visitor.download(base + "/file"), StandardCharsets.UTF_8))
                .contains("bore_top_thrust: unknown");
        assertThat(visitor.get("/builds").words()).contains("Green kart");
    }

    @Test
    void aBuildWithoutANameIsNotBegun() {
        Visitor.Page page = visitor.post("/builds", Map.of("what", "empty", "name", " ", "key", Visitor.key()));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("The engine has no name yet; nothing was begun.");
        assertThat(visitor.serving().store().builds()).isEmpty();
    }

    @Test
    void aFormThatComesTwiceBeginsOneBuild() {
        Map<String, String> form = Map.of("what", "example", "key", Visitor.key());
        assertThat(visitor.post("/builds", form).location())
                .isEqualTo(visitor.post("/builds", form).location());
        assertThat(visitor.serving().store().builds()).hasSize(1);
    }

    @Test
    void aBuildFileIsTakenAsItWasTypedAndGivenBackToTheLastSign() {
        String text = "longthrow: 1\n# a remark\nengine:\n  name: From a file\ncylinder:\n  bore: 66.01 mm\n";
        Visitor.Page page = visitor.upload(
                "/builds/file", "my.yaml", text.getBytes(StandardCharsets.UTF_8), Map.of("key", Visitor.key()));
        assertThat(page.status()).isEqualTo(303);
        String base = page.location().replace("/measure", "");
        assertThat(new String(visitor.download(base + "/file"), StandardCharsets.UTF_8))
                .isEqualTo(text);
        assertThat(visitor.get(base + "/measure").words()).contains("From a file", "66.01 mm");
    }

    @Test
    void aBuildFileWithFaultsIsRefusedWithAllOfThem() {
        String text = "longthrow: 1\nengine:\n  name: Bad\ncylinder:\n  bore: 66\n  deck_height: 12 cc\n";
        Visitor.Page page = visitor.upload(
                "/builds/file", "bad.yaml", text.getBytes(StandardCharsets.UTF_8), Map.of("key", Visitor.key()));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words())
                .contains("bad.yaml cannot be read", "line 5", "cylinder.bore", "line 6", "cylinder.deck_height");
        assertThat(visitor.serving().store().builds()).isEmpty();
    }

    @Test
    void aPictureOrAForeignPdfSaysWhatItIsAndWhatIsWanted() {
        byte[] png = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0, 0, 13};
        Visitor.Page picture = visitor.upload("/builds/file", "bore.png", png, Map.of("key", Visitor.key()));
        assertThat(picture.status()).isEqualTo(422);
        assertThat(picture.words())
                .contains("'bore.png' is a picture (PNG), not a build file", "nothing was begun", "plain text", "Book")
                .doesNotContain("UTF-8");
        byte[] pdf = "%PDF-1.4\n1 0 obj\n<<>>\nendobj\n".getBytes(StandardCharsets.US_ASCII);
        assertThat(visitor.upload("/builds/file", "a.pdf", pdf, Map.of("key", Visitor.key()))
                        .words())
                .contains("PDF", "nothing was begun")
                .doesNotContain("UTF-8");
        assertThat(visitor.serving().store().builds()).isEmpty();
    }

    @Test
    void everyEditIsInTheHistoryAndCanBeComparedAndUndone() {
        String base = visitor.empty("Edited");
        read(base, 1, "66.01");
        read(base, 2, "66.55");
        Visitor.Page history = visitor.get(base + "/history");
        assertThat(history.words())
                .contains("bore: 66.55 mm", "bore: 66.01 mm", "Compare these two", "created", "Undo the last edit");
        assertThat(visitor.get(base + "/compare?from=2&to=3").words())
                .contains("was: ", "66.01 mm", "now: ", "66.55 mm");
        Visitor.Page undone = visitor.post(base + "/undo", Map.of("based", "3", "key", Visitor.key()));
        assertThat(undone.status()).isEqualTo(303);
        assertThat(visitor.get(base + "/measure").words()).contains("66.01 mm").doesNotContain("66.55");
        visitor.post(base + "/back", Map.of("based", "4", "key", Visitor.key(), "number", "3"));
        assertThat(visitor.get(base + "/measure").words()).contains("66.55 mm");
        assertThat(visitor.get(base + "/history").words()).contains("back to revision 3");
    }

    @Test
    void undoingWhatSomebodyElseHasChangedMeanwhileIsNotDone() {
        String base = visitor.empty("Edited");
        read(base, 1, "66.01");
        read(base, 2, "66.55");
        visitor.post(base + "/undo", Map.of("based", "2", "key", Visitor.key()));
        assertThat(visitor.said()).contains("Not done");
        assertThat(visitor.get(base + "/measure").words()).contains("66.55 mm");
    }

    private void read(String base, int based, String bore) {
        assertThat(visitor.post(
                                base + "/measure/cylinder.bore",
                                Map.of(
                                        "based",
                                        String.valueOf(based),
                                        "key",
                                        Visitor.key(),
                                        "entry",
                                        "0",
                                        "how",
                                        "read",
                                        "unit",
                                        "mm",
                                        "reading",
                                        bore))
                        .status())
                .isEqualTo(303);
    }

    @Test
    void aBuildIsRenamedPutAwayAndTakenOutAgain() {
        String base = visitor.empty("Old name");
        visitor.post(base + "/name", Map.of("name", "New name"));
        assertThat(visitor.get("/builds").words()).contains("New name").doesNotContain("Old name");
        for (int sent = 0; sent < 2; sent++) {
            visitor.post(base + "/away", Map.of("wanted", "away"));
            assertThat(visitor.get("/builds").words()).contains("Put away 1");
        }
        assertThat(visitor.get(base + "/history").hidden("wanted")).isEqualTo("bench");
        for (int sent = 0; sent < 2; sent++) {
            visitor.post(base + "/away", Map.of("wanted", "bench"));
            assertThat(visitor.get("/builds").words()).doesNotContain("Put away");
        }
        assertThat(visitor.get(base + "/history").hidden("wanted")).isEqualTo("away");
        assertThat(visitor.post(base + "/away", Map.of()).status()).isEqualTo(400);
    }

    @Test
    void whatIsNoWayToBeginBeginsNothing() {
        Visitor.Page page = visitor.post("/builds", Map.of("what", "copy", "name", "Mower"));
        assertThat(page.status()).isEqualTo(400);
        assertThat(page.words()).contains("'copy'", "nothing was begun");
        assertThat(visitor.serving().store().builds()).isEmpty();
    }

    @Test
    void allBuildsGoOutAsOneFileAndComeBackElsewhere(@TempDir Path elsewhere) {
        String base = visitor.example();
        byte[] all = visitor.download("/everything.zip");
        try (Visitor other = Visitor.in(elsewhere)) {
            assertThat(other.upload("/everything", "all.zip", all, Map.of()).status())
                    .isEqualTo(303);
            assertThat(other.said()).contains("new here");
            assertThat(other.serving().store().builds().stream().map(BuildEntry::name))
                    .containsExactly("Bench example, 187 cc single");
            assertThat(other.download(base + "/file")).isEqualTo(visitor.download(base + "/file"));
            other.upload("/everything", "all.zip", all, Map.of());
            assertThat(other.said()).contains("the same as here");
        }
    }

    @Test
    void whatIsNoZipIsNotTakenForAllBuilds() {
        Visitor.Page page = visitor.upload("/everything", "all.zip", new byte[70_000], Map.of());
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("'all.zip' is no file of all builds, which is a zip", "nothing was changed");
        assertThat(visitor.get("/builds").words()).contains("at most 1 GiB");
    }

    @Test
    void aFileThatIsNoArchiveOfOursChangesNothingAndIsSaid() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("../../evil.txt"));
            zip.write(1);
            zip.closeEntry();
        }
        Visitor.Page page = visitor.upload("/everything", "evil.zip", bytes.toByteArray(), Map.of());
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).doesNotContain("Exception");
        assertThat(visitor.serving().store().builds()).isEmpty();
    }

    /** A digit that flipped on the disk, in the text of one build among others. */
    @Test
    void aDamagedBuildHidesNoOtherAndEveryPageSaysIt(@TempDir Path elsewhere) throws IOException {
        String whole = visitor.example();
        String broken = visitor.empty("Broken one");
        read(broken, 1, "66.017");
        read(broken, 2, "66.553");
        visitor.close();
        flip("66.553");
        visitor = Visitor.in(folder);

        Visitor.Page list = visitor.get("/builds");
        assertThat(list.status()).isEqualTo(200);
        assertThat(list.words())
                .contains("Bench example, 187 cc single", "revision 3 of build 'Broken one' is not what was saved")
                .contains("can only be read", "The newest good backup is", "made ", "with 2 builds");
        assertThat(visitor.get(whole + "/measure").words()).contains("can only be read", "The newest good backup is");
        Visitor.Page byAddress = visitor.get(broken + "/measure");
        assertThat(byAddress.status()).isEqualTo(500);
        assertThat(byAddress.words())
                .contains("Revision 3 of build 'Broken one' is not what was saved", "with 2 builds")
                .doesNotContain("open it again");

        Visitor.Page history = visitor.get(broken + "/history");
        assertThat(history.status()).isEqualTo(200);
        assertThat(history.words()).contains("not what was saved; it cannot be used");
        assertThat(new String(visitor.download(broken + "/file?revision=2"), StandardCharsets.UTF_8))
                .contains("66.017");

        byte[] all = visitor.download("/everything.zip");
        assertThat(String.valueOf(visitor.get("/everything.zip").headers())).contains("NOT-WHOLE");
        try (Visitor other = Visitor.in(elsewhere)) {
            assertThat(other.upload("/everything", "all.zip", all, Map.of()).status())
                    .isEqualTo(303);
            assertThat(other.serving().store().builds()).hasSize(2);
            assertThat(new String(other.download(broken + "/file"), StandardCharsets.UTF_8))
                    .contains("66.017");
        }
    }

    /** The database is whole when it is opened and breaks later. */
    @Test
    void damageMetLaterIsSaidWithTheBackupThereIsAndAWholeRevisionIsBroughtBack() throws IOException {
        String broken = visitor.empty("Broken one");
        read(broken, 1, "66.017");
        visitor.close();
        visitor = Visitor.in(folder);
        flip("66.017");
        Visitor.Page page = visitor.get(broken + "/text");
        assertThat(page.status()).isEqualTo(500);
        assertThat(page.words())
                .contains("Revision 2 of build 'Broken one' is not what was saved", "with 1 build and 2 revisions")
                .doesNotContain("open it again");
        assertThat(visitor.get("/parts").words()).contains("Some of the data are damaged");
        assertThat(visitor.get(broken + "/history").words()).contains("Bring back revision 1");
        assertThat(visitor.post(broken + "/back", Map.of("number", "1", "based", "2", "key", Visitor.key()))
                        .status())
                .isEqualTo(303);
        assertThat(visitor.get(broken + "/measure").status()).isEqualTo(200);
        assertThat(visitor.get(broken + "/history").words()).contains("not what was saved; it cannot be used");
    }

    /** Wherever they stand, for the words of a revision hold them too. */
    private void flip(String digits) throws IOException {
        Path database = folder.resolve("longthrow.db");
        String bytes = Files.readString(database, StandardCharsets.ISO_8859_1);
        assertThat(bytes).contains(digits);
        try (RandomAccessFile file = new RandomAccessFile(database.toFile(), "rw")) {
            for (int at = bytes.indexOf(digits); at >= 0; at = bytes.indexOf(digits, at + 1)) {
                file.seek(at + 1L);
                file.write('9');
            }
        }
    }

    @Test
    void aBuildThatIsNotThereIsSaidPlainly() {
        assertThat(visitor.get("/b/" + Visitor.key() + "/measure").status()).isEqualTo(404);
        assertThat(visitor.get("/b/nonsense/measure").words()).contains("There is no such build here");
        assertThat(visitor.get("/nothing").words()).contains("There is no such page");
        String base = visitor.empty("One");
        assertThat(visitor.get(base + "/compare?from=1&to=9").status()).isEqualTo(404);
        for (String address :
                List.of("/compare?from=x&to=1", "/compare?from=1", "/file?revision=9", "/file?revision=0")) {
            Visitor.Page page = visitor.get(base + address);
            assertThat(page.status()).as(address).isEqualTo(404);
            assertThat(page.words()).containsAnyOf("There is no revision", "The address names no revision");
            assertThat(page.body()).contains("href=\"" + base + "/history\"");
        }
    }

    @Test
    void whatAnEditDidIsSaidInQuantitiesAndAnswers() {
        String base = visitor.example();
        visitor.get(base + "/measure");
        assertThat(visitor.post(
                                base + "/measure/gasket.thickness",
                                Map.of("based", "1", "key", Visitor.key(), "entry", "0", "how", "read", "unit", "mm"),
                                List.of("2.90"))
                        .status())
                .isEqualTo(303);
        String words = visitor.get(base + "/compare?from=1&to=2").words();
        assertThat(words).contains("What was entered", "gasket thickness", "2.90 mm", "What moved", "squish");
        assertThat(words).contains("static compression ratio");
        String none = visitor.get(base + "/compare?from=2&to=2").words();
        assertThat(none).contains("No quantity and no answer is another").doesNotContain("What moved");
    }

    @Test
    void twoOfOneNameAreToldApartByWhenTheyWereBegun() {
        visitor.empty("Green kart");
        assertThat(visitor.get("/builds").words()).doesNotContain("Green kart begun");
        visitor.empty("green kart ");
        visitor.empty("Another");
        assertThat(visitor.get("/builds").words())
                .containsPattern("Green kart begun \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d")
                .containsPattern("green kart begun \\d{4}-")
                .doesNotContain("Another begun");
    }
}
