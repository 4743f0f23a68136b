package longthrow.workshop.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class TurnsTest {
    private static final int MANY = 6;

    private final Turns turns = new Turns(2);
    private final CountDownLatch begun = new CountDownLatch(1);
    private final CountDownLatch go = new CountDownLatch(1);
    private final AtomicInteger runs = new AtomicInteger();
    private final Lately<String, String> lately = new Lately<>(10, this::work);

    private String work(String key) {
        runs.incrementAndGet();
        if (key.equals("long")) {
            begun.countDown();
            try {
                assertThat(go.await(30, TimeUnit.SECONDS)).isTrue();
            } catch (InterruptedException told) {
                throw new IllegalStateException(told);
            }
        }
        return "sum of " + key;
    }

    @Test
    @Timeout(60)
    void manyWhoAskForTheSameTakeOneTurn() throws InterruptedException {
        List<CompletableFuture<Optional<String>>> all = new ArrayList<>();
        for (int k = 0; k < MANY; k++) {
            all.add(CompletableFuture.supplyAsync(() -> turns.of(lately, "long", () -> true), TurnsTest::start));
        }
        assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
        assertThat(CompletableFuture.supplyAsync(() -> turns.of(lately, "short", () -> true), TurnsTest::start))
                .as("while the long one runs")
                .succeedsWithin(Duration.ofSeconds(30))
                .isEqualTo(Optional.of("sum of short"));
        assertThat(turns.isIdle()).isFalse();
        go.countDown();
        for (CompletableFuture<Optional<String>> each : all) {
            assertThat(each).succeedsWithin(Duration.ofSeconds(30)).isEqualTo(Optional.of("sum of long"));
        }
        assertThat(runs).hasValue(2);
        assertThat(turns.isIdle()).isTrue();
    }

    @Test
    void whatIsNotWantedWhenTheTurnComesIsNotWorkedOut() {
        assertThat(turns.of(lately, "short", () -> false)).isEmpty();
        assertThat(runs).hasValue(0);
        assertThat(turns.of(lately, "short", () -> true)).contains("sum of short");
        assertThat(turns.of(lately, "short", () -> false)).contains("sum of short");
        assertThat(runs).hasValue(1);
    }

    private static void start(Runnable run) {
        Thread thread = new Thread(run, "asks");
        thread.setDaemon(true);
        thread.start();
    }
}
