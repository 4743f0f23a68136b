package longthrow.workshop.store;

import static longthrow.workshop.store.StoreFault.Kind.NOT_FOUND;
import static longthrow.workshop.store.StoreFault.Kind.REFUSED;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreTest {
    private static final String TYPED = "# off the bench\r\nlongthrow: 1\nengine: {name: “Demo” ± ⌀}\n\n";

    @TempDir
    private Path temporary;

    private final MovableClock clock = new MovableClock("2026-03-02T08:00:00Z");
    private Store store;

    @BeforeEach
    void open() {
        store = opened();
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void keepsABuildFileExactlyAsTyped() {
        BuildId id = store.create(" Demo ", TYPED, key());
        reopen();
        assertThat(store.latest(id).text()).isEqualTo(TYPED);
        assertThat(store.exportBuild(id)).isEqualTo(TYPED);
        assertThat(store.builds()).singleElement().satisfies(entry -> {
            assertThat(entry.id()).isEqualTo(id);
            assertThat(entry.name()).isEqualTo("Demo");
            assertThat(entry.latest()).isEqualTo(1);
            assertThat(entry.created()).isEqualTo(clock.instant());
            assertThat(entry.archived()).isEmpty();
        });
        assertThat(BuildId.parse(id.toString())).contains(id);
        assertThat(BuildId.parse("1-1-1-1-1")).isEmpty();
    }

    @Test
    void everySaveIsARevisionAndNoneIsOverwritten() {
        BuildId id = store.create("Demo", "one", key());
        for (int number = 1; number < 5; number++) {
            clock.forward(Duration.ofMinutes(1));
            saved(store.save(id, number, "text " + number, "step " + number, key()), number + 1);
        }
        assertThat(store.history(id)).extracting(RevisionEntry::number).containsExactly(1, 2, 3, 4, 5);
        assertThat(store.history(id))
                .extracting(RevisionEntry::what)
                .containsExactly("created", "step 1", "step 2", "step 3", "step 4");
        assertThat(store.at(id, 1).text()).isEqualTo("one");
        assertThat(store.at(id, 3).text()).isEqualTo("text 2");
        assertThat(store.builds().get(0).saved()).isEqualTo(clock.instant());
    }

    @Test
    void aSaveBasedOnAnOldRevisionIsAnsweredWithTheNewerOneAndNotApplied() {
        BuildId id = store.create("Demo", "a\nb\n", key());
        saved(store.save(id, 1, "a\nB\n", "first tab", key()), 2);
        SaveResult second = store.save(id, 1, "A\nb\n", "second tab", key());
        assertThat(second).isInstanceOfSatisfying(SaveResult.Outdated.class, outdated -> {
            assertThat(outdated.latest().number()).isEqualTo(2);
            assertThat(outdated.latest().text()).isEqualTo("a\nB\n");
        });
        assertThat(store.history(id)).hasSize(2);
    }

    @Test
    void theSameKeyAgainGivesTheFirstResultAndAddsNothing() {
        UUID creating = key();
        BuildId id = store.create("Demo", "one", creating);
        assertThat(store.create("Demo", "one", creating)).isEqualTo(id);
        UUID saving = key();
        saved(store.save(id, 1, "two", "edit", saving), 2);
        saved(store.save(id, 2, "three", "edit", key()), 3);
        reopen();
        assertThat(store.save(id, 1, "two", "edit", saving)).isInstanceOfSatisfying(SaveResult.Saved.class, again -> {
            assertThat(again.again()).isTrue();
            assertThat(again.revision().number()).isEqualTo(2);
        });
        assertThat(store.builds()).hasSize(1);
        assertThat(store.history(id)).hasSize(3);
    }

    /** Answering "saved" to a different edit under a used key would lose that edit without a word. */
    @Test
    void aUsedKeyWithAnotherEditIsRefused() {
        BuildId id = store.create("Demo", "one", key());
        UUID used = key();
        saved(store.save(id, 1, "two", "edit", used), 2);
        Faults.of(REFUSED, () -> store.save(id, 1, "something else", "edit", used));
        Faults.of(REFUSED, () -> store.save(id, 2, "two", "edit", used));
        Faults.of(REFUSED, () -> store.create("Other", "two", used));
        Faults.of(REFUSED, () -> store.undo(id, 2, used));
        Faults.of(REFUSED, () -> store.bringBack(id, 1, 2, used));
        BuildId other = store.create("Other", "one", key());
        Faults.of(REFUSED, () -> store.save(other, 1, "two", "edit", used));
        assertThat(store.history(id)).hasSize(2);
    }

    @Test
    void undoGoesBackStepByStepAndTheHistoryBringsForthAgain() {
        BuildId id = store.create("Demo", "A", key());
        saved(store.save(id, 1, "B", "", key()), 2);
        saved(store.save(id, 2, "C", "", key()), 3);
        UUID key = key();
        saved(store.undo(id, 3, key), 4);
        assertThat(store.latest(id).text()).isEqualTo("B");
        saved(store.undo(id, 3, key), 4); // sent again
        saved(store.undo(id, 4, key()), 5);
        assertThat(store.latest(id).text()).isEqualTo("A");
        Faults.of(REFUSED, () -> store.undo(id, 5, key()));
        assertThat(store.undo(id, 3, key())).isInstanceOf(SaveResult.Outdated.class);

        saved(store.bringBack(id, 3, 5, key()), 6);
        assertThat(store.latest(id).text()).isEqualTo("C");
        saved(store.undo(id, 6, key()), 7); // takes the bringing back, not C itself
        assertThat(store.latest(id).text()).isEqualTo("A");

        saved(store.save(id, 7, "D", "", key()), 8);
        saved(store.undo(id, 8, key()), 9);
        assertThat(store.latest(id).text()).isEqualTo("A");
        assertThat(store.bringBack(id, 2, 8, key())).isInstanceOf(SaveResult.Outdated.class);
        assertThat(store.history(id)).hasSize(9);
    }

    @Test
    void comparesTwoRevisionsLineByLine() {
        BuildId id = store.create("Demo", "a\nb\nc\n", key());
        saved(store.save(id, 1, "a\nB\nc\nd\n", "", key()), 2);
        Comparison comparison = store.compare(id, 1, 2);
        assertThat(comparison.lines().stream()
                        .map(line -> (line.same() ? "  " : line.added() ? "+ " : "- ") + line.text()))
                .containsExactly("  a", "- b", "+ B", "  c", "+ d");
        assertThat(comparison.same()).isFalse();
        assertThat(store.compare(id, 2, 2).same()).isTrue();
    }

    @Test
    void renamesAndArchivesWithoutTouchingTheText() {
        BuildId id = store.create("Demo", "one", key());
        store.rename(id, "Kart ⌀68");
        store.archive(id);
        reopen();
        assertThat(store.builds().get(0).name()).isEqualTo("Kart ⌀68");
        assertThat(store.builds().get(0).archived()).contains(clock.instant());
        store.unarchive(id);
        assertThat(store.builds().get(0).archived()).isEmpty();
        assertThat(store.latest(id).text()).isEqualTo("one");
    }

    @Test
    void forgettingTakesOneBuildAndItsFilesAndLeavesTheOthers() throws IOException {
        BuildId gone = store.create("Gone", "secret bore 66.01", key());
        BuildId kept = store.create("Kept", "one", key());
        store.attach(gone, 1, "own.jpg", "image/jpeg", bytes("only here"));
        store.attach(gone, 1, "both.jpg", "image/jpeg", bytes("in both"));
        StoredFile shared = store.attach(kept, 1, "both.jpg", "image/jpeg", bytes("in both"));
        store.forget(gone);
        Faults.of(NOT_FOUND, () -> store.latest(gone));
        Faults.of(NOT_FOUND, () -> store.files(gone));
        assertThat(store.builds()).hasSize(1);
        assertThat(store.content(shared)).isEqualTo("in both".getBytes(StandardCharsets.UTF_8));
        assertThat(filesOnDisk()).hasSize(1);
        reopen();
        assertThat(store.health().notes()).isEmpty();
        assertThat(Files.readString(temporary.resolve("data/longthrow.db"), StandardCharsets.ISO_8859_1))
                .as("what is forgotten is overwritten in the database")
                .doesNotContain("secret bore");
    }

    @Test
    void theSameContentIsKeptOnce() throws IOException {
        BuildId id = store.create("Demo", "one", key());
        saved(store.save(id, 1, "two", "", key()), 2);
        StoredFile first = store.attach(id, 1, "IMG_1.JPG", "Image/JPEG", bytes("photo"));
        StoredFile again = store.attach(id, 1, "IMG_1.JPG", "image/jpeg", bytes("photo"));
        StoredFile later = store.attach(id, 2, "piston.jpg", "image/jpeg", bytes("photo"));
        assertThat(again).isEqualTo(first);
        assertThat(first.mediaType()).isEqualTo("image/jpeg");
        assertThat(later.sha256()).isEqualTo(first.sha256());
        assertThat(store.files(id)).containsExactly(first, later);
        assertThat(filesOnDisk()).hasSize(1);
        assertThat(store.content(later)).isEqualTo("photo".getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aFileOverTheLimitIsRefusedAndLeavesNothing() throws IOException {
        BuildId id = store.create("Demo", "one", key());
        store.close();
        store = Store.open(temporary.resolve("data"), StoreLimits.DEFAULT.withFileBytes(10));
        assertThat(Faults.of(REFUSED, () -> store.attach(id, 1, "a.jpg", "image/jpeg", bytes("12345678901")))
                        .what())
                .contains("10 bytes");
        assertThat(store.attach(id, 1, "a.jpg", "image/jpeg", bytes("1234567890"))
                        .bytes())
                .isEqualTo(10);
        assertThat(filesOnDisk()).hasSize(1);
    }

    @Test
    void attachingNowhereLeavesNothing() throws IOException {
        BuildId id = store.create("Demo", "one", key());
        Faults.of(NOT_FOUND, () -> store.attach(id, 2, "a.jpg", "image/jpeg", bytes("x")));
        Faults.of(NOT_FOUND, () -> store.attach(BuildId.fresh(), 1, "a.jpg", "image/jpeg", bytes("x")));
        Faults.of(REFUSED, () -> store.attach(id, 1, "a.jpg", "jpeg", bytes("x")));
        Faults.of(REFUSED, () -> store.attach(id, 1, "a\n.jpg", "image/jpeg", bytes("x")));
        assertThat(filesOnDisk()).isEmpty();
    }

    @Test
    void aFileThatBreaksOffWhileItArrivesLeavesNothing() throws IOException {
        BuildId id = store.create("Demo", "one", key());
        InputStream breaking = new SequenceInputStream(new ByteArrayInputStream(new byte[100_000]), new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the phone went away");
            }

            @Override
            public int read(byte[] into, int from, int most) throws IOException {
                return read();
            }
        });
        Faults.of(REFUSED, () -> store.attach(id, 1, "a.jpg", "image/jpeg", breaking));
        assertThat(filesOnDisk()).isEmpty();
    }

    @Test
    void aFileGoneOrChangedOnTheDiskIsToldAndMendedByAttachingItAgain() throws IOException {
        BuildId id = store.create("Demo", "one", key());
        StoredFile file = store.attach(id, 1, "a.jpg", "image/jpeg", bytes("photo"));
        Files.writeString(filesOnDisk().get(0), "phot0");
        Faults.of(StoreFault.Kind.DAMAGED, () -> store.content(file));
        store.attach(id, 1, "a.jpg", "image/jpeg", bytes("photo"));
        assertThat(store.content(file)).isEqualTo("photo".getBytes(StandardCharsets.UTF_8));
        Files.delete(filesOnDisk().get(0));
        Faults.of(StoreFault.Kind.DAMAGED, () -> store.content(file));
        reopen();
        assertThat(store.health().readOnly()).isFalse();
        assertThat(store.health().notes()).singleElement().asString().contains(file.sha256());
    }

    @Test
    void cataloguesAreKeptAsTheFilesTheyWere() {
        CatalogueEntry rods = store.addCatalogue("rods.csv", bytes("code,length [mm]\nA,86.4\n"));
        assertThat(store.addCatalogue("rods.csv", bytes("code,length [mm]\nA,86.4\n")))
                .isEqualTo(rods);
        CatalogueEntry pistons = store.addCatalogue("pistons.csv", bytes("code\nB\n"));
        store.activateCatalogue(pistons.id(), false);
        reopen();
        assertThat(store.catalogues()).extracting(CatalogueEntry::name).containsExactly("rods.csv", "pistons.csv");
        assertThat(store.catalogues()).extracting(CatalogueEntry::active).containsExactly(true, false);
        assertThat(store.content(rods)).isEqualTo("code,length [mm]\nA,86.4\n".getBytes(StandardCharsets.UTF_8));
        store.forgetCatalogue(rods.id());
        assertThat(store.catalogues()).hasSize(1);
        Faults.of(NOT_FOUND, () -> store.content(rods));
        Faults.of(NOT_FOUND, () -> store.activateCatalogue(rods.id(), true));
    }

    @Test
    void smallSettingsStay() {
        assertThat(store.setting("open build")).isEmpty();
        store.setSetting("open build", "one");
        store.setSetting("open build", "two");
        reopen();
        assertThat(store.setting("open build")).contains("two");
        store.removeSetting("open build");
        assertThat(store.setting("open build")).isEmpty();
    }

    @Test
    void textsAndNamesThatWouldNotComeBackAsTheyWereAreRefused() {
        String full = "x".repeat((int) StoreLimits.DEFAULT.textBytes());
        BuildId id = store.create("Demo", full, key());
        assertThat(store.latest(id).text()).isEqualTo(full);
        assertThat(Faults.of(REFUSED, () -> store.save(id, 1, full + "x", "", key()))
                        .what())
                .contains("1,048,577", "1,048,576");
        Faults.of(REFUSED, () -> store.save(id, 1, "a\0b", "", key()));
        Faults.of(REFUSED, () -> store.save(id, 1, "half a sign: \ud800", "", key()));
        Faults.of(REFUSED, () -> store.create("  ", "x", key()));
        Faults.of(REFUSED, () -> store.create("x".repeat(201), "x", key()));
        Faults.of(REFUSED, () -> store.rename(id, "two\nlines"));
        Faults.of(REFUSED, () -> store.save(id, 1, "x", "y".repeat(2001), key()));
        assertThat(store.history(id)).hasSize(1);
        assertThat(store.builds()).hasSize(1);
    }

    @Test
    void whatIsNotThereIsSaidToBeNotThere() {
        BuildId id = store.create("Demo", "one", key());
        assertThat(Faults.of(NOT_FOUND, () -> store.at(id, 2)).what()).contains("1 to 1");
        Faults.of(NOT_FOUND, () -> store.save(id, 2, "x", "", key()));
        Faults.of(NOT_FOUND, () -> store.save(id, 0, "x", "", key()));
        BuildId none = BuildId.fresh();
        Faults.of(NOT_FOUND, () -> store.latest(none));
        Faults.of(NOT_FOUND, () -> store.history(none));
        Faults.of(NOT_FOUND, () -> store.save(none, 1, "x", "", key()));
        Faults.of(NOT_FOUND, () -> store.rename(none, "x"));
        Faults.of(NOT_FOUND, () -> store.archive(none));
        Faults.of(NOT_FOUND, () -> store.forget(none));
        Faults.of(NOT_FOUND, () -> store.compare(id, 1, 9));
    }

    @Test
    void aClosedStoreSaysSo() {
        store.close();
        Faults.of(StoreFault.Kind.CLOSED, () -> store.builds());
    }

    @Test
    void theFolderIsItsOwnersAlone() throws IOException {
        if (temporary.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(temporary.resolve("data"))))
                    .isEqualTo("rwx------");
        }
        assertThat(temporary.resolve("data")).isDirectory();
    }

    @Test
    void everyConnectionOfThePoolsIsSetUpToLoseNothing() {
        store.close();
        Setup setup = Setup.of(StoreLimits.DEFAULT);
        Path file = temporary.resolve("data/longthrow.db");
        try (Database database = Database.open(file, setup)) {
            for (String pragma : List.of("journal_mode=wal", "synchronous=2", "foreign_keys=1", "busy_timeout=10000")) {
                String[] parts = pragma.split("=", -1);
                Database.Work<String> asked = handle -> handle.createQuery("PRAGMA " + parts[0])
                        .mapTo(String.class)
                        .one();
                assertThat(database.read("ask", asked)).as(pragma).isEqualTo(parts[1]);
                assertThat(database.write("ask", asked)).as(pragma).isEqualTo(parts[1]);
            }
            Faults.of(
                    StoreFault.Kind.NOT_WRITABLE,
                    () -> database.read("write by a reader", handle -> handle.execute("DELETE FROM setting")));
        }
    }

    @Test
    void noRevisionCanBeChangedEvenBySql() {
        store.create("Demo", "one", key());
        store.close();
        try (Database database = Database.open(temporary.resolve("data/longthrow.db"), Setup.of(StoreLimits.DEFAULT))) {
            Faults.of(
                    StoreFault.Kind.DISK_FAILED,
                    () -> database.write("spoil", handle -> handle.execute("UPDATE revision SET text = 'other'")));
            List<BuildEntry> builds = database.read("read", handle -> new BuildTable(handle).list());
            assertThat(builds).hasSize(1);
        }
    }

    private void reopen() {
        store.close();
        store = opened();
    }

    private Store opened() {
        return Store.open(
                temporary.resolve("data"), Setup.of(StoreLimits.DEFAULT).with(clock));
    }

    private List<Path> filesOnDisk() throws IOException {
        try (Stream<Path> all = Files.walk(temporary.resolve("data/files"))) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    private static void saved(SaveResult result, int number) {
        assertThat(result)
                .isInstanceOfSatisfying(
                        SaveResult.Saved.class,
                        saved -> assertThat(saved.revision().number()).isEqualTo(number));
    }

    private static InputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static UUID key() {
        return UUID.randomUUID();
    }

    @Test
    void textsThatLookLikeStatementsAreKeptAsTexts() {
        String statement = "x'); DROP TABLE revision; --";
        BuildId id = store.create(statement, statement, key());
        saved(store.save(id, 1, "two " + statement, statement, key()), 2);
        store.attach(id, 2, "a'; DELETE FROM content; --.jpg", "image/jpeg", bytes("photo"));
        store.addCatalogue("k' OR '1'='1.csv", bytes("code\nA\n"));
        store.setSetting(statement, statement);
        assertThat(store.setting("x' OR '1'='1")).isEmpty();
        reopen();
        assertThat(store.builds()).singleElement().matches(build -> build.name().equals(statement));
        assertThat(store.at(id, 1).text()).isEqualTo(statement);
        assertThat(store.latest(id).entry().what()).isEqualTo(statement);
        assertThat(store.files(id)).singleElement().matches(file -> file.name().startsWith("a'; DELETE"));
        assertThat(store.catalogues()).singleElement().matches(one -> one.name().equals("k' OR '1'='1.csv"));
        assertThat(store.setting(statement)).contains(statement);
    }
}
