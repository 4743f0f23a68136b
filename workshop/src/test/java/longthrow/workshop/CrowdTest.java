package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.RevisionEntry;
import longthrow.workshop.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Thirty people read and write at once. Here for twenty seconds; {@code -Dlongthrow.crowd.seconds=300} makes it the five
 * minutes of docs/measurements.md. {@code longthrow.crowd.page} and {@code longthrow.crowd.key} set their pauses [ms],
 * {@code longthrow.crowd.after} how long the workshop stands open before they come [s];
 * {@code longthrow.crowd.program} names the launcher of the built program, which then serves in a process of its own.
 */
class CrowdTest {
    private static final int PEOPLE = 30;

    /** Three at each, so that they get into each other's way. */
    private static final int BUILDS = 10;

    /**
     * Only what would be a standstill: the first twenty seconds of a fresh program, beside other tests. What is reached stands in
     * docs/measurements.md [ms].
     */
    private static final double MOST = 30_000;

    @TempDir
    private Path folder;

    @Test
    void thirtyPeopleReadAndWriteAndNoEditIsLost() throws InterruptedException {
        Crowd.Pace pace = new Crowd.Pace(
                Duration.ofSeconds(Integer.getInteger("longthrow.crowd.seconds", 20)),
                Integer.getInteger("longthrow.crowd.page", 3_000),
                Integer.getInteger("longthrow.crowd.key", 500));
        Crowd.Seen seen;
        String program = System.getProperty("longthrow.crowd.program");
        try (Visitor visitor =
                program == null ? Visitor.in(folder) : Visitor.of(ServedProgram.in(Path.of(program), folder))) {
            Thread.sleep(Duration.ofSeconds(Integer.getInteger("longthrow.crowd.after", 0))
                    .toMillis());
            List<String> builds = new ArrayList<>();
            for (int i = 0; i < BUILDS; i++) {
                builds.add(visitor.example());
                visitor.get(builds.get(i) + "/measure");
            }
            Crowd crowd = new Crowd(URI.create(visitor.address()), visitor.token(), pace);
            if (program != null) {
                crowd.learnToWalk();
            }
            seen = crowd.work(PEOPLE, builds);
        }
        System.out.printf(
                Locale.ROOT,
                "%s%n%d edits kept, %d outdated and kept on top%n",
                seen.table(),
                seen.kept().size(),
                seen.outdated());
        assertThat(seen.errors()).isEmpty();
        assertThat(seen.kept()).hasSizeGreaterThanOrEqualTo(PEOPLE);
        everyEditIsThere(seen.kept());
        assertThat(seen.percentile(0.99)).isLessThan(MOST);
    }

    /** In the store opened anew: each a revision of its own, and the last of everyone in the newest text. */
    private void everyEditIsThere(List<Crowd.Acknowledged> kept) {
        try (Store store = Store.open(folder)) {
            assertThat(store.health().damage()).isEmpty();
            Map<String, Crowd.Acknowledged> last = new LinkedHashMap<>();
            for (Crowd.Acknowledged edit : kept) {
                RevisionEntry revision = store.savedBy(edit.key()).orElseThrow();
                assertThat(revision.build()).isEqualTo(build(edit));
                assertThat(store.at(revision.build(), revision.number()).text()).contains(edit.note());
                last.put(edit.build() + edit.quantity(), edit); // each person's own, in their order
            }
            for (Crowd.Acknowledged edit : last.values()) {
                assertThat(store.latest(build(edit)).text()).contains(edit.note());
            }
            int revisions =
                    store.builds().stream().mapToInt(b -> b.latest() - 1).sum();
            assertThat(revisions).as("nothing saved twice").isEqualTo(kept.size());
        }
    }

    private static BuildId build(Crowd.Acknowledged edit) {
        return BuildId.parse(edit.build().replace("/b/", "")).orElseThrow();
    }
}
