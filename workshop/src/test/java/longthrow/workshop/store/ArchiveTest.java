package longthrow.workshop.store;

import static longthrow.workshop.store.StoreFault.Kind.BAD_ARCHIVE;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import longthrow.workshop.store.ImportReport.Outcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ArchiveTest {
    private Store home;
    private Store away;
    private BuildId kart;
    private Path awayFolder;

    @BeforeEach
    void fill(@TempDir Path temporary) {
        home = Store.open(temporary.resolve("home"));
        awayFolder = temporary.resolve("away");
        away = Store.open(awayFolder);
        kart = home.create("Kart “⌀68”", "# typed\r\nlongthrow: 1\n", key());
        home.save(kart, 1, "second", "bore read again", key());
        home.undo(kart, 2, key());
        home.attach(kart, 2, "photo.jpg", "image/jpeg", bytes("a photo"));
        home.addCatalogue("rods.csv", bytes("code\nA\n"));
        BuildId old = home.create("Old", "old", key());
        home.archive(old);
    }

    @AfterEach
    void close() {
        home.close();
        away.close();
    }

    @Test
    void everythingGoesOutAndComesInTheSame() {
        ImportReport report = away.importAll(in(exported(home)));
        assertThat(report.leftOut()).isEmpty();
        assertThat(report.builds())
                .extracting(ImportReport.ImportedBuild::outcome)
                .containsOnly(Outcome.NEW);
        assertThat(report.catalogues()).isEqualTo(1);
        assertThat(report.builds().get(0).files()).isEqualTo(1);
        theSameInBothPlaces();
        assertThat(away.content(away.files(kart).get(0))).isEqualTo("a photo".getBytes(StandardCharsets.UTF_8));
        assertThat(away.content(away.catalogues().get(0))).isEqualTo("code\nA\n".getBytes(StandardCharsets.UTF_8));
    }

    /** Of revision 2 went the undo in 3 and the bringing back in 4; 2 and 4 are broken, and the photo was on 2. */
    @Test
    void whatCannotBeReadIsLeftOutAndNamedAndAllElseComesIn() {
        home.bringBack(kart, 2, 3, key());
        home.save(kart, 4, "fifth", "", key());
        Path folder = home.folder();
        home.close();
        Path database = folder.resolve("longthrow.db");
        Database.bare("break", Database.source(database, Setup.of(StoreLimits.DEFAULT)), database, connection -> {
            try (var statement = connection.createStatement()) {
                statement.execute("DROP TRIGGER revision_is_never_changed");
                return statement.executeUpdate("UPDATE revision SET text = 'sEcond' WHERE number IN (2, 4)");
            }
        });
        home = Store.open(folder);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(home.exportAll(out).leftOut())
                .containsExactly(
                        "revision 2 of build 'Kart “⌀68”' is not what was saved: its check sum differs",
                        "revision 4 of build 'Kart “⌀68”' is not what was saved: its check sum differs");
        assertThat(new String(entries(out.toByteArray()).get("manifest.json"), StandardCharsets.UTF_8))
                .contains("leftOut", "revision 4 of build 'Kart “⌀68”' is not what was saved");
        assertThat(home.health().met()).as("seen by nobody yet").isEmpty();
        assertThat(home.lookOverRevisions()).isGreaterThanOrEqualTo(5);
        assertThat(home.health().met()).hasSize(2).allMatch(d -> d.contains("is not what was saved"));
        assertThat(home.health().readOnly()).isFalse();
        assertThat(home.health().summary()).contains("revision 2 of build", "revision 4 of build");
        ImportReport report = away.importAll(in(out.toByteArray()));
        assertThat(report.leftOut()).hasSize(2).allMatch(d -> d.contains("is not what was saved"));
        assertThat(report.builds()).hasSize(2);
        assertThat(away.history(kart)).hasSize(3);
        assertThat(away.at(kart, 2).entry().restores()).hasValue(1);
        assertThat(away.at(kart, 2).text()).isEqualTo("# typed\r\nlongthrow: 1\n");
        assertThat(away.latest(kart).text()).isEqualTo("fifth");
        assertThat(away.files(kart)).isEmpty();
    }

    @Test
    void aFileThatIsGoneFromTheDiskIsLeftOutAndNamed() throws IOException {
        String sha256 = home.files(kart).get(0).sha256();
        Files.delete(
                home.folder().resolve("files").resolve(sha256.substring(0, 2)).resolve(sha256));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(home.exportAll(out).leftOut()).singleElement().asString().contains("gone from the disk");
        away.importAll(in(out.toByteArray()));
        assertThat(away.history(kart)).hasSize(3);
        assertThat(away.files(kart)).isEmpty();
        assertThat(away.catalogues()).hasSize(1);
    }

    @Test
    void buildFilesLieInTheArchiveAsPlainText() {
        assertThat(entries(exported(home)).get("builds/" + kart + "/1.yaml"))
                .isEqualTo("# typed\r\nlongthrow: 1\n".getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theSameArchiveAgainBringsNothing() {
        away.importAll(in(exported(home)));
        ImportReport again = away.importAll(in(exported(home)));
        assertThat(again.builds())
                .extracting(ImportReport.ImportedBuild::outcome)
                .containsOnly(Outcome.SAME);
        assertThat(again.catalogues()).isZero();
        assertThat(away.history(kart)).hasSize(3);
        away.save(kart, 3, "further away", "", key());
        assertThat(away.importAll(in(exported(home))).builds().get(0).outcome()).isEqualTo(Outcome.SAME);
        assertThat(away.latest(kart).text()).isEqualTo("further away");
    }

    @Test
    void whatWasEditedElsewhereBecomesFurtherRevisions() {
        away.importAll(in(exported(home)));
        away.rename(kart, "My name for it");
        home.save(kart, 3, "fourth", "", key());
        ImportReport.ImportedBuild build =
                away.importAll(in(exported(home))).builds().get(0);
        assertThat(build.outcome()).isEqualTo(Outcome.FURTHER);
        assertThat(build.latestBefore()).isEqualTo(3);
        assertThat(build.latest()).isEqualTo(4);
        assertThat(build.name()).isEqualTo("My name for it");
        assertThat(away.latest(kart).text()).isEqualTo("fourth");
    }

    @Test
    void whatWentOnInBothPlacesIsAllKeptAndSaid() {
        away.importAll(in(exported(home)));
        away.save(kart, 3, "mine", "", key());
        home.save(kart, 3, "theirs", "", key());
        home.bringBack(kart, 4, 4, key());
        home.attach(kart, 4, "later.jpg", "image/jpeg", bytes("later"));
        ImportReport.ImportedBuild build =
                away.importAll(in(exported(home))).builds().get(0);
        assertThat(build.outcome()).isEqualTo(Outcome.DIVERGED);
        assertThat(build.latestBefore()).isEqualTo(4);
        assertThat(build.latest()).isEqualTo(6);
        assertThat(away.at(kart, 4).text()).isEqualTo("mine");
        assertThat(away.at(kart, 5).text()).isEqualTo("theirs");
        assertThat(away.at(kart, 6).entry().restores()).hasValue(5); // number 4 there
        assertThat(away.files(kart))
                .anyMatch(file -> file.revision() == 5 && file.name().equals("later.jpg"));
    }

    @Test
    void aFolderOfItsPartsPackedAnewIsTaken() {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        entries.put("builds/", new byte[0]);
        entries.put("builds/" + kart + "/", new byte[0]);
        entries.putAll(entries(exported(home)));
        assertThat(away.importAll(in(zip(entries))).builds()).hasSize(2);
    }

    @Test
    void aZipThatIsNoneOrNotWholeIsRefused() {
        byte[] whole = exported(home);
        refused(new byte[0], "no zip");
        refused("hello".getBytes(StandardCharsets.US_ASCII), "no zip");
        for (int cut : new int[] {1, 10, whole.length / 2, whole.length - 30}) {
            refused(java.util.Arrays.copyOf(whole, whole.length - cut), "no zip");
        }
    }

    @Test
    void flippedBitsAreRefusedOrChangeNothing() {
        byte[] whole = exported(home);
        java.util.SplittableRandom random = new java.util.SplittableRandom(11);
        int refused = 0;
        for (int run = 0; run < 300; run++) {
            byte[] flipped = whole.clone();
            flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
            try {
                away.importAll(in(flipped));
                assertThat(away.history(kart))
                        .isEqualTo(home.history(kart)); // a bit nobody reads, as a date of an entry
                away.builds().forEach(build -> away.forget(build.id()));
                away.catalogues().forEach(one -> away.forgetCatalogue(one.id()));
            } catch (StoreFault fault) {
                assertThat(fault.kind()).as(fault.getMessage()).isIn(BAD_ARCHIVE, StoreFault.Kind.REFUSED);
                refused++;
            }
            assertThat(away.builds()).isEmpty();
        }
        assertThat(refused).as("flips that were noticed").isGreaterThan(100);
    }

    @Test
    void entriesThatWouldGoElsewhereAreRefused() {
        for (String name : new String[] {
            "../evil.yaml", "/etc/evil", "builds/../../evil", "C:\\evil", "builds\\evil", "files/../manifest.json"
        }) {
            refused(with(entries -> entries.put(name, new byte[] {1})), "outside the archive's own folders");
        }
        refused(with(entries -> entries.put("readme.txt", new byte[] {1})), "does not belong");
        assertThat(awayFolder.resolveSibling("evil.yaml")).doesNotExist();
    }

    @Test
    void anEntryTwiceIsRefused() {
        byte[] twice = exported(home);
        // Same length, so the directory of the zip stays right: the second build's text takes the first one's name.
        String second = "builds/" + home.builds().get(1).id() + "/1.yaml";
        byte[] renamed = replaced(twice, second, "builds/" + kart + "/1.yaml");
        refused(renamed, "twice");
    }

    @Test
    void whatTheManifestDoesNotSayIsRefused() {
        String text = "builds/" + kart + "/2.yaml";
        refused(with(entries -> entries.remove(text)), "missing");
        refused(with(entries -> entries.remove("manifest.json")), "no entry 'manifest.json'");
        refused(with(entries -> entries.put("builds/" + kart + "/9.yaml", new byte[] {1})), "not in its manifest");
        refused(with(entries -> entries.put(text, "changed".getBytes(StandardCharsets.UTF_8))), "check sum");
        String photo = "files/" + home.files(kart).get(0).sha256();
        refused(with(entries -> entries.put(photo, "b photo".getBytes(StandardCharsets.UTF_8))), "check sum");
    }

    @Test
    void aManifestThatMakesNoSenseIsRefused() {
        refused(manifest(json -> "{"), "not a JSON object");
        refused(manifest(json -> "[1]"), "not a JSON object");
        refused(manifest(json -> "{}"), "no format");
        refused(manifest(json -> json.replace("longthrow-archive", "other")), "format is 'other'");
        refused(manifest(json -> json.replace("\"version\": 1", "\"version\": 7")), "version is 7");
        refused(manifest(json -> json.replace("\"number\": 2", "\"number\": 5")), "allowed are 2 to 2");
        refused(manifest(json -> json.replace("\"basedOn\": 1", "\"basedOn\": 2")), "allowed are 0 to 1");
        refused(manifest(json -> json.replace("\"restores\": 1", "\"restores\": 3")), "allowed are 1 to 2");
        refused(manifest(json -> json.replace(kart.toString(), "not-a-uuid")), "no UUID");
        refused(manifest(json -> json.replaceAll("\"created\": \"[^\"]*\"", "\"created\": \"yesterday\"")), "no time");
        refused(manifest(json -> json.replace("\"builds\"", "\"biulds\"")), "no list");
        refused(manifest(json -> json.replace("\"sha256\": \"", "\"sha256\": \"X")), "hexadecimal");
        refused(manifest(json -> json.replace("/1.yaml", "/2.yaml")), "names the entry");
    }

    @Test
    void anArchiveWithAnotherTextForTheSameEditIsRefused() {
        away.importAll(in(exported(home)));
        byte[] forged = "forged".getBytes(StandardCharsets.UTF_8);
        String was = home.at(kart, 2).entry().sha256();
        byte[] archive = with(entries -> {
            entries.put("builds/" + kart + "/2.yaml", forged);
            String json = new String(entries.get("manifest.json"), StandardCharsets.UTF_8);
            entries.put(
                    "manifest.json",
                    json.replace(was, StoredText.sha256(forged)).getBytes(StandardCharsets.UTF_8));
        });
        StoreFault fault = Faults.of(BAD_ARCHIVE, () -> away.importAll(in(archive)));
        assertThat(fault.what()).contains("differs");
        assertThat(away.at(kart, 2)).isEqualTo(home.at(kart, 2));
    }

    @Test
    void bombsAreRefused() {
        StoreLimits limits = new StoreLimits(1 << 20, 50_000_000, 1 << 20, 50, 20_000_000, 100, 1 << 20);
        try (Store small = Store.open(awayFolder.resolveSibling("small"), limits)) {
            byte[] zeros = new byte[5_000_000];
            assertThat(bad(small, with(entries -> entries.put("files/" + StoredText.sha256(zeros), zeros)))
                            .what())
                    .contains("times its size");
            byte[] wide = new byte[25_000_000];
            assertThat(bad(small, with(entries -> entries.put("files/" + StoredText.sha256(wide), wide)))
                            .what())
                    .contains("20,000,000");
            assertThat(bad(small, with(entries -> {
                                for (int number = 100; number < 160; number++) {
                                    entries.put("builds/" + kart + "/" + number + ".yaml", new byte[1]);
                                }
                            }))
                            .what())
                    .contains("50 entries");
            assertThat(bad(small, new byte[(1 << 20) + 1]).what()).contains("1,048,576");
            assertThat(small.builds()).isEmpty();
        }
    }

    /** The size a zip says in its directory may be a lie; what comes out is counted. */
    @Test
    void aTextLongerThanABuildFileIsRefused() {
        byte[] longText = "x".repeat((1 << 20) + 1).getBytes(StandardCharsets.UTF_8);
        refused(with(entries -> entries.put("builds/" + kart + "/2.yaml", longText)), "1,048,576 bytes");
    }

    @Test
    void nothingIsLeftOfARefusedArchive() throws IOException {
        refused(with(entries -> entries.put("builds/" + kart + "/3.yaml", new byte[] {1})), "check sum");
        try (Stream<Path> files = Files.walk(awayFolder.resolve("files"))) {
            assertThat(files.filter(Files::isRegularFile)).isEmpty();
        }
    }

    private void theSameInBothPlaces() {
        assertThat(away.builds()).isEqualTo(home.builds());
        assertThat(away.catalogues()).isEqualTo(home.catalogues());
        for (BuildEntry build : home.builds()) {
            assertThat(away.history(build.id())).isEqualTo(home.history(build.id()));
            assertThat(away.files(build.id())).isEqualTo(home.files(build.id()));
            for (int number = 1; number <= build.latest(); number++) {
                assertThat(away.at(build.id(), number)).isEqualTo(home.at(build.id(), number));
            }
        }
        for (StoredFile file : home.files(kart)) {
            assertThat(away.content(file)).isEqualTo(home.content(file));
        }
    }

    private void refused(byte[] archive, String because) {
        assertThat(bad(away, archive).getMessage()).contains(because).contains("Nothing was imported");
        assertThat(away.builds()).isEmpty();
        assertThat(away.catalogues()).isEmpty();
    }

    private static StoreFault bad(Store store, byte[] archive) {
        return Faults.of(BAD_ARCHIVE, () -> store.importAll(in(archive)));
    }

    private byte[] with(Consumer<Map<String, byte[]>> change) {
        Map<String, byte[]> entries = entries(exported(home));
        change.accept(entries);
        return zip(entries);
    }

    private byte[] manifest(UnaryOperator<String> change) {
        return with(entries -> {
            String json = new String(entries.get("manifest.json"), StandardCharsets.UTF_8);
            String changed = change.apply(json);
            assertThat(changed).isNotEqualTo(json);
            entries.put("manifest.json", changed.getBytes(StandardCharsets.UTF_8));
        });
    }

    private static byte[] exported(Store store) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        store.exportAll(out);
        return out.toByteArray();
    }

    private static Map<String, byte[]> entries(byte[] archive) {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(in(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                entries.put(entry.getName(), zip.readAllBytes());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return entries;
    }

    private static byte[] zip(Map<String, byte[]> entries) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static byte[] replaced(byte[] bytes, String one, String other) {
        return new String(bytes, StandardCharsets.ISO_8859_1)
                .replace(one, other)
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    private static InputStream in(byte[] bytes) {
        return new ByteArrayInputStream(bytes);
    }

    private static InputStream bytes(String text) {
        return in(text.getBytes(StandardCharsets.UTF_8));
    }

    private static UUID key() {
        return UUID.randomUUID();
    }
}
