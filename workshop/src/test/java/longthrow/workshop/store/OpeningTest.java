package longthrow.workshop.store;

import static longthrow.workshop.store.StoreFault.Kind.DAMAGED;
import static longthrow.workshop.store.StoreFault.Kind.LOCKED;
import static longthrow.workshop.store.StoreFault.Kind.NEWER_SCHEMA;
import static longthrow.workshop.store.StoreFault.Kind.NOT_WRITABLE;
import static longthrow.workshop.store.StoreFault.Kind.READ_ONLY;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What is found when a store is opened, and what is said about it. */
class OpeningTest {
    private final MovableClock clock = new MovableClock("2026-03-02T08:00:00Z");
    private final Setup setup = Setup.of(StoreLimits.DEFAULT).with(clock);

    private Path folder;
    private Path database;

    @BeforeEach
    void name(@TempDir Path temporary) throws IOException {
        folder = temporary.toRealPath().resolve("data");
        database = folder.resolve("longthrow.db");
    }

    @Test
    void aFolderThatCannotBeMadeIsSaid() throws IOException {
        Files.writeString(folder, "a file stands in the way");
        Faults.of(NOT_WRITABLE, () -> Store.open(folder));
        StoreFault fault = Faults.of(StoreFault.Kind.NOT_WRITABLE, () -> Store.open(folder.resolve("below")));
        assertThat(fault.where()).contains("below");
        assertThat(fault.mend()).contains("--data");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void aPlaceWhereNothingCanBeMadeIsSaid() {
        StoreFault fault = org.assertj.core.api.Assertions.catchThrowableOfType(
                StoreFault.class, () -> Store.open(Path.of("/proc/longthrow")));
        assertThat(fault.kind()).isIn(NOT_WRITABLE, StoreFault.Kind.DISK_FAILED);
        assertThat(fault.getMessage()).contains("/proc/longthrow");
    }

    @Test
    void theSameFolderTwiceInOneProcessIsRefusedAndTheFirstKeepsItsLock() throws Exception {
        try (Store first = Store.open(folder)) {
            assertThat(Faults.of(LOCKED, () -> Store.open(folder)).what()).contains("this same process");
            assertThat(refusedToAnotherProcess())
                    .contains("process " + ProcessHandle.current().pid());
            first.setSetting("still", "open");
        }
        Store.open(folder).close();
    }

    /** In a process of its own: within this one the lock is seen before the system is asked. */
    private String refusedToAnotherProcess() throws IOException, InterruptedException {
        Process other = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        SecondOpener.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String said = new String(other.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(other.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return said;
    }

    /** Says the fault it gets when it opens a store. */
    static final class SecondOpener {
        private SecondOpener() {}

        /** Argument: the folder. */
        public static void main(String[] arguments) {
            try (Store store = Store.open(Path.of(arguments[0]))) {
                System.out.print("opened " + store.folder());
            } catch (StoreFault fault) {
                System.out.print(fault.kind() + " " + fault.getMessage());
            }
        }
    }

    /** What a killed process leaves: the file, but no lock of the system on it. */
    @Test
    void theLockFileOfADeadProcessDoesNotBlock() throws IOException {
        Files.createDirectory(folder);
        Files.writeString(folder.resolve("longthrow.lock"), "Held by process 1. Nothing to delete here.\n");
        Store.open(folder).close();
    }

    @Test
    void aStoreOfANewerProgramIsNotTouched() throws IOException {
        Setup newer = setup.withSchema("classpath:longthrow/workshop/store/later", 2);
        Store.open(folder, newer).close();
        byte[] before = Files.readAllBytes(database);
        StoreFault fault = Faults.of(NEWER_SCHEMA, () -> Store.open(folder, setup));
        assertThat(fault.what()).contains("version 2", "up to 1");
        assertThat(Files.readAllBytes(database)).isEqualTo(before);
    }

    @Test
    void anOlderStoreIsBackedUpThenBroughtUpToDate() throws IOException {
        BuildId id = filled();
        Store.open(folder, setup.withSchema("classpath:longthrow/workshop/store/later", 2))
                .close();
        assertThat(backups()).anyMatch(name -> name.endsWith("-before-schema-2.db"));
        Path before = folder.resolve("backups")
                .resolve(backups().stream()
                        .filter(name -> name.contains("before"))
                        .findFirst()
                        .orElseThrow());
        Store.restore(folder, before, setup);
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.latest(id).text()).startsWith("text");
        }
    }

    @Test
    void theNewestSchemaIsTheLastStepThereIs() throws IOException {
        Path steps = Path.of("src/main/resources/longthrow/workshop/store/schema");
        try (Stream<Path> files = Files.list(steps)) {
            assertThat(files.map(file -> file.getFileName().toString().replaceAll("^V([0-9]+)__.*", "$1"))
                            .mapToInt(Integer::parseInt)
                            .max())
                    .hasValue(Schema.NEWEST);
        }
    }

    @Test
    void aWholeStoreHasNothingToTell() {
        filled();
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().damage()).isEmpty();
            assertThat(store.health().notes()).isEmpty();
            assertThat(store.health().readOnly()).isFalse();
        }
    }

    @Test
    void aDamagedStoreStaysReadableAndNamesTheNewestGoodBackup() throws IOException {
        BuildId id = filled();
        spoilTheIndexOfNames();
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().readOnly()).isTrue();
            assertThat(store.health().damage()).isNotEmpty();
            GoodBackup good = store.health().newestGoodBackup().orElseThrow();
            assertThat(good.path()).isEqualTo(folder.resolve("backups/longthrow-2026-03-02T080000Z.db"));
            assertThat(good.builds()).isEqualTo(1);
            assertThat(good.revisions()).isEqualTo(2);
            StoreFault fault = Faults.of(READ_ONLY, () -> store.save(id, 2, "x", "", UUID.randomUUID()));
            assertThat(fault.mend()).contains(good.path().toString(), "(0 minutes ago)", "1 build and 2 revisions");
            Faults.of(READ_ONLY, () -> store.create("x", "x", UUID.randomUUID()));
            Faults.of(READ_ONLY, () -> store.setSetting("a", "b"));
            Faults.of(READ_ONLY, () -> store.attach(id, 1, "a", "text/plain", new ByteArrayInputStream(new byte[1])));
            Faults.of(READ_ONLY, () -> store.importAll(new ByteArrayInputStream(new byte[1])));
            Faults.of(READ_ONLY, () -> store.backUpIfDue());
            assertThat(store.at(id, 1).text()).isEqualTo("text");
            store.exportAll(new ByteArrayOutputStream());
        }
    }

    /** SQLite does not notice it: the structure is whole, a digit of a reading is another. */
    @Test
    void aFlippedSignInATextIsFound() throws IOException {
        BuildId id = filled();
        byte[] bytes = Files.readAllBytes(database);
        String raw = new String(bytes, StandardCharsets.ISO_8859_1);
        int at = raw.indexOf("bore 66.01");
        assertThat(at).isPositive();
        bytes[at + 6] = '8';
        Files.write(database, bytes);
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().damage()).singleElement().asString().contains("revision 2", "Demo");
            Faults.of(DAMAGED, () -> store.latest(id));
            assertThat(store.at(id, 1).text()).isEqualTo("text");
        }
    }

    @Test
    void aFileThatIsNoDatabaseIsRefusedAndABackupNamed() throws IOException {
        BuildId id = filled();
        byte[] rubbish = "no database".repeat(1000).getBytes(StandardCharsets.US_ASCII);
        Files.write(database, rubbish);
        StoreFault fault = Faults.of(DAMAGED, () -> Store.open(folder, setup));
        assertThat(fault.mend()).contains("longthrow-2026-03-02T080000Z.db");
        assertThat(Files.readAllBytes(database)).isEqualTo(rubbish);

        Path aside = Store.restore(folder, folder.resolve("backups/longthrow-2026-03-02T080000Z.db"), setup);
        assertThat(aside.resolve("longthrow.db")).hasBinaryContent(rubbish);
        clock.forward(Duration.ofHours(1));
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.latest(id).text()).contains("bore 66.01");
        }
    }

    @Test
    void anEmptyStoreIsNotMadeWhereAFullOneWas() throws IOException {
        filled();
        Files.delete(database);
        assertThat(Faults.of(DAMAGED, () -> Store.open(folder, setup)).what()).contains("gone");
        assertThat(database).doesNotExist();
    }

    @Test
    void aForeignDatabaseIsNotTouched() throws IOException {
        Files.createDirectory(folder);
        Database.bare("make", Database.source(database, setup), database, connection -> {
            try (var statement = connection.createStatement()) {
                return statement.execute("CREATE TABLE recipes (name TEXT)");
            }
        });
        byte[] before = Files.readAllBytes(database);
        assertThat(Faults.of(DAMAGED, () -> Store.open(folder, setup)).what()).contains("not Longthrow's");
        assertThat(Files.readAllBytes(database)).isEqualTo(before);
    }

    @Test
    void aDamagedBackupIsPassedOverAndNotRestored() throws IOException {
        filled();
        Path good = folder.resolve("backups/longthrow-2026-03-02T080000Z.db");
        Path bad = folder.resolve("backups/longthrow-2026-03-03T080000Z.db");
        Files.writeString(bad, "rubbish");
        assertThat(new Backups(folder).newestGood(clock.instant()).orElseThrow().path())
                .isEqualTo(good);
        Faults.of(DAMAGED, () -> Store.restore(folder, bad, setup));
        Store.open(folder, setup).close();
    }

    @Test
    void aBackupIsMadeWhenTheNewestIsADayOldAndTheyRotate() throws IOException {
        filled();
        assertThat(backups()).containsExactly("longthrow-2026-03-02T080000Z.db");
        clock.forward(Duration.ofHours(23));
        Store.open(folder, setup).close();
        assertThat(backups()).hasSize(1);
        for (int day = 0; day < 40; day++) {
            clock.forward(Duration.ofHours(25));
            Store.open(folder, setup).close();
        }
        assertThat(backups()).hasSize(BackupRotation.DAYS + BackupRotation.WEEKS);
        assertThat(backups())
                .allMatch(name ->
                        Backups.damage(folder.resolve("backups").resolve(name)).isEmpty());
        try (Store store = Store.open(folder, setup)) {
            clock.forward(Duration.ofDays(2));
            assertThat(store.backUpIfDue()).isPresent();
            assertThat(store.backUpIfDue()).isEmpty();
        }
    }

    @Test
    void whateverWasKeptIsInABackupAtTheNextStart() throws IOException {
        Store.open(folder, setup).close();
        assertThat(folder.resolve("backups")).doesNotExist(); // nothing to lose yet
        BuildId id;
        try (Store store = Store.open(folder, setup)) {
            id = store.create("One", "text", UUID.randomUUID());
        }
        assertThat(newest().builds()).as("the first session ends with one").isEqualTo(1);
        clock.forward(Duration.ofMinutes(10));
        try (Store store = Store.open(folder, setup)) {
            store.create("Two", "text", UUID.randomUUID());
        }
        assertThat(newest().builds()).as("younger than an hour").isEqualTo(1);
        clock.forward(Duration.ofMinutes(1));
        Store.open(folder, setup).close();
        assertThat(newest().builds()).isEqualTo(2);
        assertThat(newest().made()).isEqualTo(clock.instant());
        clock.forward(Duration.ofHours(1));
        try (Store store = Store.open(folder, setup)) {
            assertThat(newest().age()).as("nothing was kept since").isEqualTo(Duration.ofHours(1));
            store.rename(id, "Another name");
        }
        assertThat(newest().age()).as("a name is kept too").isZero();
    }

    @Test
    void whileOpenABackupIsMadeOnceAnHourWhenSomethingWasKept() {
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.backUpIfDue()).isEmpty();
            BuildId id = store.create("One", "text", UUID.randomUUID());
            assertThat(store.backUpIfDue()).isPresent();
            store.save(id, 1, "more", "", UUID.randomUUID());
            clock.forward(Duration.ofMinutes(59));
            assertThat(store.backUpIfDue()).isEmpty();
            clock.forward(Duration.ofMinutes(1));
            assertThat(store.backUpIfDue()).isPresent();
            assertThat(newest().revisions()).isEqualTo(2);
            clock.forward(Duration.ofHours(5));
            assertThat(store.backUpIfDue()).as("nothing was kept since").isEmpty();
        }
    }

    @Test
    void aFileOfNoBytesBesideBackupsIsNoNewWorkshop() throws IOException {
        filled();
        clock.forward(Duration.ofDays(3));
        Files.write(database, new byte[0]);
        StoreFault fault = Faults.of(DAMAGED, () -> Store.open(folder, setup));
        assertThat(fault.what()).contains("0 bytes", "backups");
        assertThat(fault.mend())
                .contains(
                        "longthrow-2026-03-02T080000Z.db, made 2026-03-02 08:00 UTC (3 days ago)",
                        "with 1 build and 2 revisions",
                        "OLD");
        assertThat(database).isEmptyFile();
        deleteBackups();
        Path log = Files.writeString(folder.resolve("longthrow.db-wal"), "the last edits");
        assertThat(Faults.of(DAMAGED, () -> Store.open(folder, setup)).what()).contains("0 bytes", "log");
        assertThat(log).hasContent("the last edits");
    }

    @Test
    void aDatabaseWithoutTablesBesideBackupsIsNoNewWorkshop() throws IOException {
        filled();
        Files.delete(database);
        Database.bare("make", Database.source(database, setup), database, connection -> {
            try (var statement = connection.createStatement()) {
                return statement.execute("VACUUM");
            }
        });
        assertThat(Faults.of(DAMAGED, () -> Store.open(folder, setup)).what()).contains("no tables");
    }

    /** What a first start leaves that was cut off at once: nothing was there to lose. */
    @Test
    void aFileOfNoBytesAloneIsANewWorkshop() throws IOException {
        Files.createDirectory(folder);
        Files.write(database, new byte[0]);
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().readOnly()).isFalse();
        }
    }

    @Test
    void anEmptyBackupIsPassedOverAndSaidToBeEmptyWhereThereIsNoOther() throws IOException {
        filled();
        Path empty = folder.resolveSibling("empty");
        Store.open(empty, setup).close();
        Path bare = folder.resolve("backups/longthrow-2026-03-03T080000Z.db");
        Files.copy(empty.resolve("longthrow.db"), bare);
        assertThat(newest().made()).isEqualTo(java.time.Instant.parse("2026-03-02T08:00:00Z"));
        Files.delete(folder.resolve("backups/longthrow-2026-03-02T080000Z.db"));
        Files.delete(database);
        assertThat(Faults.of(DAMAGED, () -> Store.open(folder, setup)).mend())
                .contains(bare.toString(), "later than the clock", "EMPTY");
    }

    /** Windows does not let go of an open file, so that it cannot be deleted there. */
    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void whatIsDoneAfterTheFileWasDeletedIsNotAcknowledgedAndWhatWasBeforeCanBeTakenOut() throws IOException {
        filled();
        try (Store store = Store.open(folder, setup)) {
            BuildId id = store.create("Two", "text two", UUID.randomUUID());
            Files.delete(database);
            StoreFault fault = Faults.of(DAMAGED, () -> store.save(id, 1, "lost", "", UUID.randomUUID()));
            assertThat(fault.what()).contains("deleted");
            assertThat(fault.mend()).contains("Save all builds");
            Faults.of(DAMAGED, store::backUpIfDue);
            assertThat(store.latest(id).text()).isEqualTo("text two");
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            store.exportAll(out);
            assertThat(database).doesNotExist();
            try (Store other = Store.open(folder.resolveSibling("other"), setup)) {
                assertThat(other.importAll(new ByteArrayInputStream(out.toByteArray()))
                                .builds())
                        .hasSize(2);
            }
            Files.writeString(database, "another file");
            assertThat(Faults.of(DAMAGED, () -> store.archive(id)).what()).contains("replaced");
        }
    }

    private GoodBackup newest() {
        return new Backups(folder).newestGood(clock.instant()).orElseThrow();
    }

    @Test
    void aBackupIsTheSameStoreInOneFile() throws IOException {
        BuildId id = filled();
        clock.forward(Duration.ofDays(2));
        Store.open(folder, setup).close();
        Path elsewhere = Files.createDirectory(folder.resolveSibling("elsewhere"));
        Files.copy(
                folder.resolve("backups/longthrow-2026-03-04T080000Z.db"),
                elsewhere.resolve("longthrow.db"),
                StandardCopyOption.COPY_ATTRIBUTES);
        try (Store store = Store.open(elsewhere, setup)) {
            assertThat(store.history(id)).hasSize(2);
            assertThat(store.latest(id).text()).contains("bore 66.01");
        }
    }

    @Test
    void whatAKilledProcessWasWritingIsSweptOut() throws IOException {
        filled();
        Path file = Files.writeString(folder.resolve("files/arriving-1.new"), "half a photo");
        Store.open(folder, setup).close();
        assertThat(file).doesNotExist();
    }

    /** A store with a backup from before its last edit was made; the database file is complete in itself. */
    private BuildId filled() {
        BuildId id;
        try (Store store = Store.open(folder, setup)) {
            id = store.create("Demo", "text", UUID.randomUUID());
            store.save(id, 1, "text, bore 66.01", "", UUID.randomUUID());
        }
        deleteBackups();
        Store.open(folder, setup).close(); // with a backup that holds it
        return id;
    }

    private void deleteBackups() {
        try {
            for (String name : backups()) {
                Files.delete(folder.resolve("backups").resolve(name));
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Overwrites the page of an index: reading by the table goes on, the structure is broken. */
    private void spoilTheIndexOfNames() throws IOException {
        int page = Database.bare("look", Database.source(database, setup), database, connection -> {
            try (var statement = connection.createStatement();
                    var rows = statement.executeQuery(
                            "SELECT rootpage FROM sqlite_schema WHERE name = 'catalogue_content'")) {
                return rows.getInt(1);
            }
        });
        byte[] bytes = Files.readAllBytes(database);
        int size = ((bytes[16] & 0xff) << 8) | (bytes[17] & 0xff);
        java.util.Arrays.fill(bytes, (page - 1) * size, page * size, (byte) 0x55);
        Files.write(database, bytes);
    }

    private List<String> backups() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("backups"))) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }
}
