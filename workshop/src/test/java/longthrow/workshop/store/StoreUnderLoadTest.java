package longthrow.workshop.store;

import static longthrow.workshop.store.StoreFault.Kind.DISK_FULL;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import longthrow.SmallDisk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many at once, and a disk that is full. */
class StoreUnderLoadTest {
    @TempDir
    private Path temporary;

    @Test
    void threadsOnOneBuildNeverOverwriteEachOther() throws Exception {
        try (Store store = Store.open(temporary.resolve("data"))) {
            BuildId id = store.create("Demo", "0", UUID.randomUUID());
            AtomicInteger outdated = new AtomicInteger();
            List<List<Integer>> saved = together(4, thread -> {
                List<Integer> mine = new ArrayList<>();
                int latest = 1;
                while (mine.size() < 25) {
                    SaveResult result = store.save(id, latest, "thread " + thread, "", UUID.randomUUID());
                    if (result instanceof SaveResult.Saved done) {
                        latest = done.revision().number();
                        mine.add(latest);
                    } else {
                        latest = ((SaveResult.Outdated) result).latest().number();
                        outdated.incrementAndGet();
                    }
                }
                return mine;
            });
            assertThat(saved.stream().flatMap(List::stream))
                    .doesNotHaveDuplicates()
                    .hasSize(100);
            assertThat(store.history(id)).hasSize(101);
            for (int thread = 0; thread < 4; thread++) {
                for (int number : saved.get(thread)) {
                    assertThat(store.at(id, number).text()).isEqualTo("thread " + thread);
                }
            }
            assertThat(outdated.get()).isPositive();
        }
    }

    @Test
    void theSameKeyFromTwoThreadsAtOnceIsSavedOnce() throws Exception {
        try (Store store = Store.open(temporary.resolve("data"))) {
            BuildId id = store.create("Demo", "0", UUID.randomUUID());
            for (int number = 1; number < 20; number++) {
                UUID key = UUID.randomUUID();
                int basedOn = number;
                List<SaveResult> results = together(2, thread -> store.save(id, basedOn, "text", "", key));
                assertThat(results)
                        .allMatch(result -> result instanceof SaveResult.Saved saved
                                && saved.revision().number() == basedOn + 1);
            }
            assertThat(store.history(id)).hasSize(20);
        }
    }

    @Test
    void twoStoresSideBySideAreTwoStores() throws Exception {
        try (Store one = Store.open(temporary.resolve("one"));
                Store other = Store.open(temporary.resolve("other"))) {
            together(2, thread -> {
                Store store = thread == 0 ? one : other;
                BuildId id = store.create("Demo " + thread, "0", UUID.randomUUID());
                for (int number = 1; number <= 30; number++) {
                    store.save(id, number, "store " + thread, "", UUID.randomUUID());
                }
                return id;
            });
            assertThat(one.builds())
                    .singleElement()
                    .matches(build -> build.name().equals("Demo 0"));
            assertThat(other.builds()).singleElement().matches(build -> build.latest() == 31);
        }
    }

    @Test
    void readersSeeWholeStatesWhileOneWritesAndForgets() throws Exception {
        try (Store store = Store.open(temporary.resolve("data"))) {
            BuildId id = store.create("Demo", "0", UUID.randomUUID());
            together(3, thread -> {
                for (int turn = 1; turn <= 40; turn++) {
                    if (thread == 0) {
                        store.save(id, turn, "text " + turn, "", UUID.randomUUID());
                        store.forget(store.create("Passing", "x", UUID.randomUUID()));
                    } else {
                        Revision latest = store.latest(id);
                        assertThat(latest.number() == 1 ? "0" : "text " + (latest.number() - 1))
                                .isEqualTo(latest.text());
                        assertThat(store.builds()).isNotEmpty();
                    }
                }
                return true;
            });
            assertThat(store.builds()).hasSize(1);
        }
    }

    /** A database that may grow no further is to SQLite what a full disk is. */
    @Test
    void aFullDatabaseSaysSoAndLosesNothingAcknowledged() {
        Path folder = temporary.resolve("data");
        Setup small = Setup.of(StoreLimits.DEFAULT).withMostPages(60);
        fillUpAndLook(folder, small);
    }

    /** A real full disk: a file system of one megabyte and a half in memory, where this user may mount one. */
    @Test
    void aFullDiskSaysSoAndLosesNothingAcknowledged() throws Exception {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 1536)) {
            fillUpAndLook(disk.path().resolve("data"), Setup.of(StoreLimits.DEFAULT));
            disk.fillUpTo(0);
            Faults.of(DISK_FULL, () -> Store.open(disk.path().resolve("other")));
        }
    }

    private static void fillUpAndLook(Path folder, Setup setup) {
        SplittableRandom random = new SplittableRandom(3);
        List<String> acknowledged = new ArrayList<>();
        BuildId id;
        try (Store store = Store.open(folder, setup)) {
            id = store.create("Demo", "first", UUID.randomUUID());
            acknowledged.add("first");
            StoreFault fault = Faults.of(DISK_FULL, () -> {
                for (int number = 1; number < 2000; number++) {
                    String text = random.nextLong() + "x".repeat(5000);
                    store.save(id, number, text, "", UUID.randomUUID());
                    acknowledged.add(text);
                }
            });
            assertThat(fault.mend()).contains("Make room");
            assertThat(acknowledged).hasSizeGreaterThan(5);
            isThere(store, id, acknowledged); // while it is full
        }
        try (Store store = Store.open(folder, Setup.of(StoreLimits.DEFAULT))) {
            assertThat(store.health().damage()).isEmpty();
            isThere(store, id, acknowledged);
        }
    }

    private static void isThere(Store store, BuildId id, List<String> acknowledged) {
        assertThat(store.history(id)).hasSize(acknowledged.size());
        for (int number = 1; number <= acknowledged.size(); number++) {
            assertThat(store.at(id, number).text()).isEqualTo(acknowledged.get(number - 1));
        }
    }

    @Test
    void aFileThatFindsNoRoomIsRefusedAndTheRestGoesOn() throws Exception {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 2048);
                Store store = Store.open(disk.path().resolve("data"))) {
            BuildId id = store.create("Demo", "first", UUID.randomUUID());
            byte[] large = new byte[3 << 20];
            StoreFault fault = Faults.of(
                    DISK_FULL, () -> store.attach(id, 1, "a.jpg", "image/jpeg", new ByteArrayInputStream(large)));
            assertThat(fault.what()).contains("a.jpg");
            assertThat(store.files(id)).isEmpty();
            store.save(id, 1, "second", "", UUID.randomUUID());
            assertThat(store.latest(id).text()).isEqualTo("second");
        }
    }

    /** Work of a thread by its number. */
    @FunctionalInterface
    private interface Work<T> {
        T of(int thread) throws Exception;
    }

    private static <T> List<T> together(int threads, Work<T> work) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Callable<T>> all = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                int number = thread;
                all.add(() -> work.of(number));
            }
            List<T> results = new ArrayList<>();
            for (Future<T> done : pool.invokeAll(all)) {
                results.add(done.get());
            }
            return results;
        } finally {
            pool.shutdownNow();
        }
    }
}
