package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A database that SQLite no longer opens: what is whole in it is shown, and nothing that is not. */
class SalvageTest {
    private static final int BUILDS = 8;
    private static final int REVISIONS = 12;

    private final MovableClock clock = new MovableClock("2026-03-02T08:00:00Z");
    private final Setup setup = Setup.of(StoreLimits.DEFAULT).with(clock);
    private final Map<BuildId, String> names = new LinkedHashMap<>();

    private Path folder;
    private Path database;

    @BeforeEach
    void fill(@TempDir Path temporary) throws IOException {
        folder = temporary.toRealPath().resolve("data");
        database = folder.resolve(Access.DATABASE);
        try (Store store = Store.open(folder, setup)) {
            for (int build = 1; build <= BUILDS; build++) {
                BuildId id = store.create("Engine " + build, text(build, 1), UUID.randomUUID());
                names.put(id, "Engine " + build);
                for (int number = 2; number <= REVISIONS; number++) {
                    store.save(id, number - 1, text(build, number), "edit", UUID.randomUUID());
                }
            }
            store.attach(
                    names.keySet().iterator().next(), 1, "bore.jpg", "image/jpeg", new ByteArrayInputStream(new byte[] {
                        1, 2, 3
                    }));
        }
    }

    /** From 50 bytes to three pages: what lies on one page, and what goes on behind it. */
    private static String text(int build, int number) {
        return "engine " + build + ", revision " + number + "\n"
                + "cylinder.bore: 66.0%d mm ± 0.01 mm%n".formatted(number % 10).repeat(build * build * 4);
    }

    private String whole(BuildId id, int number) {
        int build = Integer.parseInt(names.getOrDefault(id, "Engine 0").substring("Engine ".length()));
        return text(build, number);
    }

    /** Every revision that can be read is exactly what was saved. @return how many can */
    private int readable(Store store) {
        int count = 0;
        for (BuildEntry entry : store.builds()) {
            assertThat(entry.name()).isNotBlank();
            List<Integer> damaged = store.damaged(entry.id());
            for (RevisionEntry revision : store.history(entry.id())) {
                if (!damaged.contains(revision.number()) && names.containsKey(entry.id())) {
                    assertThat(store.at(entry.id(), revision.number()).text())
                            .isEqualTo(whole(entry.id(), revision.number()));
                    count++;
                }
            }
        }
        return count;
    }

    /** Read-only, with what is lost and the backup said, and all that can be read in one file that another store takes. */
    private int opened() throws IOException {
        byte[] before = Files.readAllBytes(database);
        int count;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().readOnly()).isTrue();
            assertThat(store.health().summary()).contains("can only be read", "newest good backup");
            assertThat(store.health().newestGoodBackup().orElseThrow().builds()).isEqualTo(BUILDS);
            Faults.of(StoreFault.Kind.READ_ONLY, () -> store.create("x", "x", UUID.randomUUID()));
            count = readable(store);
            store.exportAll(out);
        }
        assertThat(Files.readAllBytes(database))
                .as("the damaged file stays for who can mend it")
                .isEqualTo(before);
        try (Store other = Store.open(folder.resolveSibling("other-" + UUID.randomUUID()), setup)) {
            other.importAll(new ByteArrayInputStream(out.toByteArray()));
            int taken = 0;
            for (BuildEntry entry : other.builds()) {
                for (RevisionEntry revision : other.history(entry.id())) { // numbered anew: an archive has no gaps
                    taken += names.containsKey(entry.id()) ? 1 : 0;
                    assertThat(other.at(entry.id(), revision.number()).text()).contains("engine ", "revision ");
                }
            }
            assertThat(taken).isEqualTo(count);
        }
        return count;
    }

    @Test
    void aFileCutToSixtyInAHundredShowsWhatLiesBeforeTheCut() throws IOException {
        byte[] all = Files.readAllBytes(database);
        Files.write(database, Arrays.copyOf(all, all.length * 6 / 10));
        assertThat(opened()).isBetween(BUILDS, BUILDS * REVISIONS - 1);
    }

    /** Some texts are hit, and so are pages that lead to the rest; what is hit is never shown as if it were whole. */
    /** Texts of eleven pages each, as a copy that broke off leaves them, and no backup. */
    private byte[] largeOnes(Path other) throws IOException {
        try (Store store = Store.open(other, setup)) {
            String large = "cylinder.bore: 66.01 mm ± 0.01 mm%n".formatted().repeat(1300);
            for (int build = 1; build <= 3; build++) {
                BuildId id = store.create("Large " + build, "# first\n" + large, UUID.randomUUID());
                for (int number = 2; number <= 40; number++) {
                    store.save(id, number - 1, "# " + number + "\n" + large, "edit", UUID.randomUUID());
                }
            }
        }
        try (var backups = Files.walk(other.resolve("backups"))) {
            for (Path one : backups.filter(Files::isRegularFile).toList()) {
                Files.delete(one);
            }
        }
        return Files.readAllBytes(other.resolve(Access.DATABASE));
    }

    @Test
    void aFileCutToATenthWithoutABackupIsShownWithWhatIsLost() throws IOException {
        Path other = folder.resolveSibling("large");
        byte[] all = largeOnes(other);
        assertThat(all).hasSizeGreaterThan(5_000_000);
        Path file = other.resolve(Access.DATABASE);
        Files.write(file, Arrays.copyOf(all, 600_000));
        try (Store store = Store.open(other, setup)) {
            assertThat(store.health().readOnly()).isTrue();
            assertThat(store.builds()).extracting(BuildEntry::name).containsExactly("Large 1");
            assertThat(store.health().damage())
                    .anyMatch(d -> d.startsWith("What could be read was copied out"))
                    .anyMatch(d -> d.startsWith("'Large 3': nothing of it can be read, and no backup has it"));
            BuildEntry first = store.builds().get(0);
            List<Integer> damaged = store.damaged(first.id());
            assertThat(store.history(first.id())).hasSizeGreaterThan(damaged.size());
            for (RevisionEntry revision : store.history(first.id())) {
                if (!damaged.contains(revision.number())) {
                    assertThat(store.at(first.id(), revision.number()).text())
                            .startsWith("# ")
                            .endsWith("0.01 mm\n");
                }
            }
        }
        assertThat(Files.size(file)).as("left as it is").isEqualTo(600_000);
    }

    /** The rows lie on pages behind the cut; of the builds there are only names left, and that is said. */
    @Test
    void aFileOfWhichOnlyNamesAreLeftNamesThem() throws IOException {
        Path other = folder.resolveSibling("large");
        Files.write(other.resolve(Access.DATABASE), Arrays.copyOf(largeOnes(other), 100_000));
        assertThat(Faults.of(StoreFault.Kind.DAMAGED, () -> Store.open(other, setup)))
                .hasMessageContaining("only their names are left: 'Large 1', 'Large 2', 'Large 3'");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 20260302})
    void twoHundredFlippedBytesCostWhatTheyHit(long seed) throws IOException {
        byte[] all = Files.readAllBytes(database);
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            all[random.nextInt(all.length)] ^= (byte) (1 + random.nextInt(255));
        }
        Files.write(database, all);
        assertThat(opened()).isPositive();
    }

    /** A flip in a time leaves the database whole in SQLite's eyes; the row that has it cannot be told, all others can. */
    @Test
    void aTimeThatNobodyCanReadHidesNothingElse() throws IOException {
        byte[] all = Files.readAllBytes(database);
        byte[] time = "-03-02T08:00".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        int hit = 0;
        for (int at = 4; at < all.length - time.length && hit < 1; at++) {
            if (Arrays.equals(all, at, at + time.length, time, 0, time.length)) {
                all[at - 2] ^= (byte) 0x80;
                hit++;
            }
        }
        assertThat(hit).isEqualTo(1);
        Files.write(database, all);
        assertThat(opened()).isBetween(BUILDS * REVISIONS - REVISIONS, BUILDS * REVISIONS);
    }

    @Test
    void aLostHeaderCostsNothing() throws IOException {
        byte[] all = Files.readAllBytes(database);
        Arrays.fill(all, 0, 100, (byte) 0);
        Files.write(database, all);
        assertThat(opened()).isEqualTo(BUILDS * REVISIONS);
    }

    /** What a kill leaves, without the log: the last edits stood there alone. */
    @Test
    void aLogThatIsGoneIsSaidAndTheRestIsShown() throws IOException {
        Path killed = Files.createDirectories(folder.resolveSibling("killed"));
        try (Store store = Store.open(folder, setup)) {
            BuildId id = names.keySet().iterator().next();
            store.save(id, REVISIONS, "only in the log", "", UUID.randomUUID());
            for (String end : List.of("", "-wal", "-shm")) {
                Files.copy(database.resolveSibling(Access.DATABASE + end), killed.resolve(Access.DATABASE + end));
            }
        }
        Path log = killed.resolve(Access.DATABASE + "-wal");
        byte[] kept = Files.readAllBytes(log);
        Files.delete(log);
        Path backups = Files.createDirectory(killed.resolve("backups"));
        Path newest = folder.resolve("backups");
        try (var files = Files.list(newest)) {
            for (Path file : files.toList()) {
                Files.copy(file, backups.resolve(file.getFileName()));
            }
        }
        try (Store store = Store.open(killed, setup)) {
            assertThat(store.health().readOnly()).isTrue();
            assertThat(store.health().summary()).contains("longthrow.db-wal", "newest good backup");
            assertThat(readable(store)).isEqualTo(BUILDS * REVISIONS);
        }
        Files.write(log, kept);
        try (Store store = Store.open(killed, setup)) {
            assertThat(store.latest(names.keySet().iterator().next()).text())
                    .as("put back in time it brings everything")
                    .isEqualTo("only in the log");
        }
    }

    /** A damaged log: its whole frames count, whatever stands before them. */
    @Test
    void whatStandsInTheLogIsReadToo() throws IOException {
        Path killed = Files.createDirectories(folder.resolveSibling("killed"));
        BuildId id = names.keySet().iterator().next();
        try (Store store = Store.open(folder, setup)) {
            store.save(id, REVISIONS, "only in the log", "", UUID.randomUUID());
            for (String end : List.of("", "-wal")) {
                Files.copy(database.resolveSibling(Access.DATABASE + end), killed.resolve(Access.DATABASE + end));
            }
        }
        Path file = killed.resolve(Access.DATABASE);
        byte[] all = Files.readAllBytes(file);
        Arrays.fill(all, 0, 100, (byte) 0);
        Files.write(file, all);
        try (Store store = Store.open(killed, setup)) {
            assertThat(store.at(id, REVISIONS + 1).text()).isEqualTo("only in the log");
            assertThat(store.health().readOnly()).isTrue();
        }
    }

    @Test
    void aBuildWhoseNameIsLostIsThereUnderItsNumber() throws IOException {
        byte[] all = Files.readAllBytes(database);
        int at = new String(all, StandardCharsets.ISO_8859_1)
                .indexOf(names.keySet().iterator().next().toString());
        assertThat(at).isPositive();
        all[at] = '?';
        Arrays.fill(all, 0, 100, (byte) 0);
        Files.write(database, all);
        try (Store store = Store.open(folder, setup)) {
            assertThat(store.health().summary()).contains("What could be read was copied out and is shown: 8 builds");
            assertThat(store.builds()).hasSize(BUILDS);
            BuildEntry nameless = store.builds().get(0);
            assertThat(nameless.name()).isEqualTo("Build 1, its name is lost");
            assertThat(store.exportBuild(nameless.id())).isEqualTo(text(1, REVISIONS));
            assertThat(String.join("\n", store.health().damage())).contains("'Engine 1'");
        }
    }
}
