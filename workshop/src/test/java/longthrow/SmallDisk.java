package longthrow;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file system of its own in memory, small enough to fill. Only where this user may mount one. */
public final class SmallDisk implements AutoCloseable {
    private static final int PIECE_BYTES = 16 * 1024;

    private final Path place;
    private final Path filler;

    private SmallDisk(Path place) {
        this.place = place;
        this.filler = place.resolve("filler");
    }

    /** Mounted, or the test is skipped and says so. */
    public static SmallDisk of(Path place, int kilobytes) throws IOException {
        Files.createDirectories(place);
        LoudSkip.unless(
                run("mount", "-t", "tmpfs", "-o", "size=" + kilobytes + "k", "tmpfs", place.toString()),
                "a disk that is full or can only be read; mounting one in memory needs root and Linux");
        return new SmallDisk(place);
    }

    public Path path() {
        return place;
    }

    /** Takes some more room; says whether there was any. */
    public boolean fillSome() throws IOException {
        try (OutputStream out = Files.newOutputStream(
                filler, java.nio.file.StandardOpenOption.CREATE, java.nio.file.StandardOpenOption.APPEND)) {
            out.write(new byte[PIECE_BYTES]);
            return true;
        } catch (IOException full) {
            if (!String.valueOf(full.getMessage()).contains("No space left")) {
                throw full;
            }
            return false;
        }
    }

    /** Takes all the room there is but for about so much [bytes]. */
    public void fillUpTo(long left) throws IOException {
        boolean more = true;
        while (more && Files.getFileStore(place).getUsableSpace() > left) {
            more = fillSome();
        }
    }

    public void makeRoom() throws IOException {
        Files.deleteIfExists(filler);
    }

    /** From now on it can only be read; nothing on it may be open for writing. */
    public void readOnly() {
        must(run("mount", "-o", "remount,ro", place.toString()));
    }

    @Override
    public void close() {
        must(run("umount", place.toString()));
    }

    private static void must(boolean done) {
        if (!done) {
            throw new IllegalStateException("the small disk does not obey");
        }
    }

    private static boolean run(String... command) {
        try {
            return new ProcessBuilder(command)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .redirectError(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException noSuchCommand) {
            return false;
        } catch (InterruptedException told) {
            throw new IllegalStateException(told);
        }
    }
}
