package longthrow.workshop.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileStore;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteException;

/** Files that are there in whole or not at all, and what it means when the disk refuses. */
final class Disk {
    /** Ends the name of a file that is not finished; one found at the start was left by a process that was killed. */
    static final String UNFINISHED = ".new";

    private static final String OWNER_ONLY = "rwx------";

    /** With less room than this a refusal to write is taken for a full disk; SQLite itself asks for 32 KiB at a time. */
    private static final long AS_GOOD_AS_FULL_BYTES = 64 * 1024;

    private Disk() {}

    /** Makes the folder and those above it; where it is made and the system knows modes, it is its owner's alone. */
    static void makeFolder(Path folder) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        Path above = nearestThere(folder);
        if (!Files.isDirectory(above)) {
            throw new NotDirectoryException(above.toString());
        }
        boolean modes = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
        if (modes) {
            Files.createDirectories(
                    folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(OWNER_ONLY)));
        } else {
            Files.createDirectories(folder);
        }
    }

    static void sync(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Puts a finished and synced file in its place in one step that outlasts a power cut. */
    static void moveInPlace(Path finished, Path place) throws IOException {
        Files.move(finished, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        syncFolder(place.getParent());
    }

    /** So that names outlast a power cut; where a folder cannot be opened (Windows), the system sees to that itself. */
    static void syncFolder(@Nullable Path folder) {
        if (folder == null) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notPossibleHere) {
            // the content is on the disk all the same
        }
    }

    /** The trouble in words for the owner: full, write-protected, or whatever the system said. */
    static StoreFault fault(String doing, Path where, Exception cause) {
        String said = String.valueOf(cause.getMessage());
        if (isFull(where) || said.toLowerCase(Locale.ROOT).contains("no space left")) {
            return full(doing, where, cause);
        }
        if (cause instanceof AccessDeniedException
                || cause instanceof ReadOnlyFileSystemException
                || cause instanceof NotDirectoryException
                || cause instanceof FileAlreadyExistsException
                || said.toLowerCase(Locale.ROOT).contains("read-only file system")) {
            return notWritable(doing, where, cause);
        }
        return new StoreFault(
                StoreFault.Kind.DISK_FAILED,
                "could not " + doing + ": " + words(cause),
                where.toString(),
                "Nothing acknowledged is lost. Look whether the disk is there and healthy, then try again",
                cause);
    }

    static StoreFault full(String doing, Path where, @Nullable Throwable cause) {
        return new StoreFault(
                StoreFault.Kind.DISK_FULL,
                "could not " + doing + ": the disk is full",
                where.toString(),
                "This was not kept; everything acknowledged before is safe. Make room on that disk and try again",
                cause);
    }

    static StoreFault notWritable(String doing, Path where, @Nullable Exception cause) {
        return new StoreFault(
                StoreFault.Kind.NOT_WRITABLE,
                "could not " + doing + (cause == null ? "" : ": " + words(cause)),
                where.toString(),
                "This was not kept; everything acknowledged before is safe. Give yourself the right to write there (its owner can: chmod -R u+rwX), or choose another folder with --data",
                cause);
    }

    /** What the system said, for somebody who knows no name of a Java class. */
    static String words(Exception cause) {
        if (cause instanceof SQLiteException sqlite) {
            return "the database says '" + sqlite.getResultCode().message + "'";
        }
        if (cause instanceof AccessDeniedException denied) {
            return "this program may not write " + denied.getFile();
        }
        if (cause instanceof NoSuchFileException gone) {
            return gone.getFile() + " is not there";
        }
        if (cause instanceof NotDirectoryException file) {
            return file.getFile() + " is a file where a folder is needed";
        }
        if (cause instanceof FileAlreadyExistsException there) {
            return there.getFile() + " is in the way";
        }
        if (cause instanceof ReadOnlyFileSystemException) {
            return "that disk can only be read";
        }
        String said = cause instanceof FileSystemException system ? system.getReason() : cause.getMessage();
        return said == null || said.isBlank() ? "the system gave no reason" : "the system says '" + said + "'";
    }

    /** The path itself, or the nearest above it that is there. */
    private static Path nearestThere(Path path) {
        Path there = path.toAbsolutePath();
        for (Path above = there.getParent(); above != null && !Files.exists(there); above = there.getParent()) {
            there = above;
        }
        return there;
    }

    /** Whether there is as good as no room left where the path is, or would be. */
    static boolean isFull(Path path) {
        try {
            FileStore store = Files.getFileStore(nearestThere(path));
            return store.getTotalSpace() > 0 // of /proc and the like nothing is known
                    && store.getUsableSpace() < AS_GOOD_AS_FULL_BYTES;
        } catch (IOException unknown) {
            return false;
        }
    }
}
