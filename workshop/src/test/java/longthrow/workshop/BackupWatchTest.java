package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import longthrow.workshop.store.Store;
import longthrow.workshop.store.StoreFault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The watch of backups with a period of a millisecond in place of its five minutes. */
class BackupWatchTest {
    private static final Duration SOON = Duration.ofMillis(1);
    private static final long PATIENCE_SECONDS = 20;

    @TempDir
    private Path folder;

    private static Thread started(BackupWatch watch) {
        Thread thread = new Thread(watch, "watch");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    @Test
    void looksAgainAndAgainUntilItIsInterrupted() throws InterruptedException {
        CountDownLatch fiveLooks = new CountDownLatch(5);
        Thread thread = started(new BackupWatch(() -> false, fiveLooks::countDown, SOON, said -> {}));
        assertThat(fiveLooks.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
        thread.interrupt();
        thread.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
        assertThat(thread.isAlive()).isFalse();
    }

    /** Looks 1 to 3 meet one trouble, 4 another, 5 none, 6 the first again: said three times. */
    @Test
    void saysATroubleOnceUntilItChangesOrHasGone() throws InterruptedException {
        StoreFault one = fault("one");
        StoreFault other = fault("other");
        List<StoreFault> met = java.util.Arrays.asList(one, one, one, other, null, one);
        List<String> said = new CopyOnWriteArrayList<>();
        AtomicInteger looks = new AtomicInteger();
        Thread thread = started(new BackupWatch(
                () -> looks.get() >= met.size(),
                () -> {
                    StoreFault now = met.get(looks.getAndIncrement());
                    if (now != null) {
                        throw now;
                    }
                },
                SOON,
                said::add));
        thread.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
        assertThat(said).containsExactly(one.getMessage(), other.getMessage(), one.getMessage());
    }

    /** A fault as a store makes one: of a folder that is a file. */
    private StoreFault fault(String name) {
        Path file = folder.resolve(name);
        try {
            Files.writeString(file, "no folder");
            Store.open(file).close();
            throw new AssertionError("a file was opened as a folder");
        } catch (StoreFault fault) {
            return fault;
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void aStoreThatCanOnlyBeReadIsNotWatched() {
        AtomicInteger looks = new AtomicInteger();
        new BackupWatch(() -> true, looks::incrementAndGet, SOON, said -> {}).run();
        assertThat(looks).hasValue(0);
    }

    /** Over a real store: something was kept, a look later its backup lies there. */
    @Test
    void makesTheBackupThatIsDue() throws Exception {
        try (Store store = Store.open(folder.resolve("data"))) {
            store.create("One", "longthrow: 1\nengine:\n  name: One\n", java.util.UUID.randomUUID());
            CountDownLatch made = new CountDownLatch(1);
            Thread thread = started(new BackupWatch(
                    () -> false, () -> store.backUpIfDue().ifPresent(backup -> made.countDown()), SOON, said -> {}));
            assertThat(made.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
            thread.interrupt();
            thread.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
        }
    }

    @Test
    void aPeriodOfNothingIsRefused() {
        assertThatThrownBy(() -> new BackupWatch(() -> false, () -> {}, Duration.ZERO, said -> {}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("above 0");
    }
}
