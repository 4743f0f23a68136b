package longthrow.workshop.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;

/**
 * Contents of attached files and catalogues, each once under its hash in the folder files. A file there is written once, in
 * whole, and never changed.
 */
final class ContentFiles {
    private static final String FOLDER = "files";
    private static final int BUFFER_BYTES = 64 * 1024;

    private final Path folder;

    ContentFiles(Path dataFolder) {
        this.folder = dataFolder.resolve(FOLDER);
    }

    /** A content on the disk, but in no place yet. Closing takes it away where it was not placed. */
    record Arrived(Path at, String sha256, long bytes) implements AutoCloseable {
        @Override
        public void close() {
            try {
                Files.deleteIfExists(at);
            } catch (IOException stays) {
                // swept at the next start
            }
        }
    }

    /** Makes the folder, and sweeps out what a killed process was writing. */
    void prepare() {
        try {
            Disk.makeFolder(folder);
            try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, "*" + Disk.UNFINISHED)) {
                for (Path file : left) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            throw Disk.fault("make the folder for files", folder, e);
        }
    }

    Path folder() {
        return folder;
    }

    /** A file of its own to write to, swept out when unfinished. */
    Path unfinished() throws IOException {
        return Files.createTempFile(folder, "arriving-", Disk.UNFINISHED);
    }

    Arrived receive(InputStream in, long limit, String name) {
        try {
            Path at = unfinished();
            boolean whole = false;
            try {
                Arrived arrived = receive(in, limit, name, at);
                whole = true;
                return arrived;
            } finally {
                if (!whole) {
                    Files.deleteIfExists(at);
                }
            }
        } catch (IOException e) {
            throw Disk.fault("keep the file '" + name + "'", folder, e);
        }
    }

    private static Arrived receive(InputStream in, long limit, String name, Path at) throws IOException {
        MessageDigest digest = StoredText.sha256();
        long bytes = 0;
        try (OutputStream out = Files.newOutputStream(at)) {
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int got = read(in, buffer, name); got >= 0; got = read(in, buffer, name)) {
                bytes += got;
                if (bytes > limit) {
                    throw new StoreFault(
                            StoreFault.Kind.REFUSED,
                            String.format(Locale.ROOT, "the file has more than %,d bytes, which is the limit", limit),
                            "file '" + name + "'",
                            "Make it smaller: a log packed by gzip is read too, and a photo at half its size still shows what it should");
                }
                digest.update(buffer, 0, got);
                out.write(buffer, 0, got);
            }
        }
        Disk.sync(at);
        return new Arrived(at, HexFormat.of().formatHex(digest.digest()), bytes);
    }

    /** What comes from elsewhere may break off; that is not the disk's fault. */
    static int read(InputStream in, byte[] buffer, String name) {
        try {
            return in.read(buffer);
        } catch (IOException e) {
            throw new StoreFault(
                    StoreFault.Kind.REFUSED,
                    "it did not arrive in whole: " + Disk.words(e),
                    "file '" + name + "'",
                    "Nothing of it was kept. Send it again",
                    e);
        }
    }

    /**
     * Puts a content in its place. One that is there already and whole stays; one that is there and broken is mended.
     *
     * @return whether nothing was in its place before
     */
    boolean place(Arrived arrived) {
        Path place = path(arrived.sha256());
        try {
            boolean there = Files.exists(place);
            if (there && isWhole(place, arrived.sha256())) {
                return false;
            }
            Path parent = place.resolveSibling(".").normalize();
            if (!Files.isDirectory(parent)) {
                Disk.makeFolder(parent);
                Disk.syncFolder(folder);
            }
            Disk.moveInPlace(arrived.at(), place);
            return !there;
        } catch (IOException e) {
            throw Disk.fault("keep a file", place, e);
        }
    }

    byte[] read(String sha256, String name) {
        Path place = path(sha256);
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(place);
        } catch (java.nio.file.NoSuchFileException e) {
            throw damaged(place, "the file '" + name + "' is gone from the disk", e);
        } catch (IOException e) {
            throw Disk.fault("read the file '" + name + "'", place, e);
        }
        if (!StoredText.sha256(bytes).equals(sha256)) {
            throw damaged(place, "the file '" + name + "' is not what was saved: its check sum differs", null);
        }
        return bytes;
    }

    private static StoreFault damaged(Path place, String what, @org.jspecify.annotations.Nullable Exception cause) {
        return new StoreFault(
                StoreFault.Kind.DAMAGED,
                what,
                place.toString(),
                "Attach it again if you have it elsewhere: that mends it. Or take it from a copy of this folder",
                cause);
    }

    /** What is wrong with a content that should be there, by a look at its size; empty where nothing is. */
    Optional<String> trouble(String sha256, long bytes) {
        Path place = path(sha256);
        try {
            return Files.size(place) == bytes
                    ? Optional.empty()
                    : Optional.of(String.format(
                            Locale.ROOT,
                            "has %,d bytes on the disk instead of %,d: %s",
                            Files.size(place),
                            bytes,
                            place));
        } catch (IOException gone) {
            return Optional.of("is gone from the disk: " + place);
        }
    }

    void delete(String sha256) {
        Path place = path(sha256);
        try {
            Files.deleteIfExists(place);
            Disk.syncFolder(place.getParent());
        } catch (IOException e) {
            throw Disk.fault("delete a forgotten file", place, e);
        }
    }

    private Path path(String sha256) {
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256);
    }

    private static boolean isWhole(Path file, String sha256) throws IOException {
        MessageDigest digest = StoredText.sha256();
        try (DigestInputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest()).equals(sha256);
    }
}
