package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import longthrow.SmallDisk;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.RevisionEntry;
import longthrow.workshop.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The running program on a disk that gets full, or can only be read: what its owner is told, and what is still there. */
class FullDiskTest {
    private static final String BORE = "/measure/cylinder.bore";

    /** Far more than fit. */
    private static final int MOST_EDITS = 500;

    @TempDir
    private Path temporary;

    @Test
    void whileTheDiskFillsNothingAcknowledgedIsLostAndItGoesOnWhenThereIsRoom() throws IOException {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 3_000)) {
            Path data = disk.path().resolve("data");
            Map<String, String> kept = new LinkedHashMap<>();
            String base;
            try (Visitor visitor = Visitor.in(data)) {
                base = visitor.empty("Full");
                Optional<Visitor.Page> stopped = Optional.empty();
                Map<String, String> waiting = Map.of();
                for (int edit = 1; edit < MOST_EDITS && stopped.isEmpty(); edit++) {
                    disk.fillSome();
                    waiting = form(edit);
                    Visitor.Page page = visitor.post(base + BORE, waiting, List.of("66.01"));
                    if (page.status() == 303) {
                        kept.put(waiting.get("key"), waiting.get("note"));
                    } else {
                        stopped = Optional.of(page);
                    }
                }
                assertThat(stopped).as("the disk never got full").isPresent();
                assertThat(kept).hasSizeGreaterThan(3);
                Visitor.Page refused = stopped.get();
                isSaidPlainly(refused, 507);
                assertThat(refused.words())
                        .contains("Could not keep the edit: the disk is full", data.toString(), "Make room");

                disk.fillUpTo(0);
                isSaidPlainly(
                        visitor.post("/builds", Map.of("what", "empty", "name", "Two", "key", Visitor.key())), 507);
                everythingCanBeRead(visitor, base, kept);

                disk.makeRoom();
                assertThat(visitor.post(base + BORE, waiting, List.of("66.01")).status())
                        .as("the same form sent again")
                        .isEqualTo(303);
                kept.put(waiting.get("key"), waiting.get("note"));
                everythingCanBeRead(visitor, base, kept);
            }
            everyEditIsThere(data, base, kept);
        }
    }

    @Test
    void onAFullDiskTheCommandSaysWhatWhereAndHowToMend() throws IOException {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 1_000)) {
            disk.fillUpTo(0);
            Path data = disk.path().resolve("data");
            CommandRun run = CommandRun.of("serve", "--port", "0", "--data", data.toString());
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.err()).contains("the disk is full", data.toString(), "Make room");
            isPlain(run.err());
        }
    }

    @Test
    void onADiskThatCanOnlyBeReadTheCommandSaysSoAndTouchesNothing() throws IOException {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 3_000)) {
            Path data = disk.path().resolve("data");
            try (Visitor visitor = Visitor.in(data)) {
                visitor.empty("Kept");
            }
            disk.readOnly();
            CommandRun run = CommandRun.of("serve", "--port", "0", "--data", data.toString());
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.err()).contains("write-protected", data.toString(), "--data");
            isPlain(run.err());
            CommandRun elsewhere = CommandRun.of(
                    "serve", "--port", "0", "--data", disk.path().resolve("new").toString());
            assertThat(elsewhere.code()).isEqualTo(2);
            assertThat(elsewhere.err()).contains(disk.path().resolve("new").toString(), "--data");
            isPlain(elsewhere.err());
        }
    }

    @Test
    void aBackupThatDoesNotFitIsSaidAndTheWorkshopOpensAllTheSame() throws IOException {
        try (SmallDisk disk = SmallDisk.of(temporary.resolve("disk"), 8_000)) {
            Path data = disk.path().resolve("data");
            String base;
            try (Visitor visitor = Visitor.in(data)) {
                base = visitor.empty("Large");
                for (int edit = 1; edit <= 40; edit++) {
                    assertThat(visitor.post(base + BORE, form(edit), List.of("66.01"))
                                    .status())
                            .isEqualTo(303);
                }
            }
            try (Stream<Path> backups = Files.list(data.resolve("backups"))) {
                for (Path backup : backups.toList()) {
                    Files.delete(backup); // so that one is due
                }
            }
            disk.fillUpTo(200_000);
            try (Visitor visitor = Visitor.in(data)) {
                Visitor.Page builds = visitor.get("/builds");
                assertThat(builds.status()).isEqualTo(200);
                assertThat(builds.words()).contains("A backup could not be made", "the disk is full");
                isPlain(builds.words());
                assertThat(visitor.get(base + "/measure").status()).isEqualTo(200);
                try (Stream<Path> left = Files.list(data.resolve("backups"))) {
                    assertThat(left).as("half a backup").isEmpty();
                }
            }
            disk.makeRoom();
            try (Visitor visitor = Visitor.in(data)) {
                assertThat(visitor.get("/builds").words()).doesNotContain("could not be made");
            }
            try (Stream<Path> made = Files.list(data.resolve("backups"))) {
                assertThat(made).hasSize(1);
            }
        }
    }

    /** An edit with a note of four thousand letters, each its own. */
    private static Map<String, String> form(int based) {
        String key = Visitor.key();
        return Map.of(
                "based",
                "" + based,
                "key",
                key,
                "entry",
                "0",
                "how",
                "read",
                "unit",
                "mm",
                "note",
                key.replace("-", "").repeat(12));
    }

    private static void everythingCanBeRead(Visitor visitor, String base, Map<String, String> kept) {
        String last = List.copyOf(kept.values()).get(kept.size() - 1);
        assertThat(visitor.get("/builds").status()).isEqualTo(200);
        assertThat(visitor.get(base + "/measure").status()).isEqualTo(200);
        assertThat(visitor.get(base + "/history").status()).isEqualTo(200);
        assertThat(new String(visitor.download(base + "/file"), StandardCharsets.UTF_8))
                .contains(last);
        assertThat(visitor.get("/everything.zip").status()).isEqualTo(200);
    }

    private static void everyEditIsThere(Path data, String base, Map<String, String> kept) {
        BuildId build = BuildId.parse(base.replace("/b/", "")).orElseThrow();
        try (Store store = Store.open(data)) {
            assertThat(store.health().damage()).isEmpty();
            kept.forEach((key, note) -> {
                RevisionEntry revision = store.savedBy(UUID.fromString(key)).orElseThrow();
                assertThat(store.at(build, revision.number()).text()).contains(note);
            });
            assertThat(store.history(build)).hasSize(kept.size() + 1);
        }
    }

    private static void isSaidPlainly(Visitor.Page page, int status) {
        assertThat(page.status()).as(page.words()).isEqualTo(status);
        isPlain(page.body());
    }

    private static void isPlain(String words) {
        assertThat(words).doesNotContain("Exception", "java.", "SQLITE", "\tat ");
    }
}
