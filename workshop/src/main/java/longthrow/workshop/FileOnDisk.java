package longthrow.workshop;

import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;
import java.util.Set;

/** Puts a new text in the place of an old one, or leaves the old one. */
final class FileOnDisk {
    private static final String NEW = ".new";

    private static final Set<PosixFilePermission> WRITING =
            Set.of(PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    /** A new text lies beside its file for well under a second; one this old was left by a call that was killed. */
    private static final Duration LEFT_BEHIND = Duration.ofHours(1);

    private FileOnDisk() {}

    /**
     * The whole new text or the whole old one, whatever happens in between: written beside the file, brought to the disk, then
     * put in its place in one step.
     * @param file   real path
     * @param before what it held when it was read
     */
    static void replace(Path file, byte[] before, byte[] after) throws IOException {
        refuseWhatShouldStay(file);
        Path folder = Objects.requireNonNull(file.getParent(), "a real path of a file has a folder");
        clearAway(folder, file);
        Path beside = Files.createTempFile(folder, "." + file.getFileName() + ".", NEW);
        beside.toFile().deleteOnExit(); // for a call that is asked to end; nothing helps one that is killed outright
        try {
            try (FileOutputStream out = new FileOutputStream(beside.toFile())) {
                out.write(after);
                out.getFD().sync();
            }
            if (hasModes(file)) {
                Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(file));
            }
            if (!Arrays.equals(before, Files.readAllBytes(file))) {
                throw new IOException("the file was changed by something else meanwhile; call again");
            }
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            syncFolder(folder);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    /**
     * A whole new file under a name that is free, or none.
     * @throws java.nio.file.FileAlreadyExistsException if something has that name; it is left as it is
     */
    static void create(Path file, byte[] content) throws IOException {
        Path folder = Objects.requireNonNull(file.toAbsolutePath().getParent(), "a file's name stands in a folder");
        if (!Files.isDirectory(folder)) {
            throw new IOException("there is no such folder");
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW)) {
            try {
                ByteBuffer left = ByteBuffer.wrap(content);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            } catch (IOException half) {
                Files.deleteIfExists(file);
                throw half;
            }
        }
        syncFolder(folder);
    }

    /** A new file in the old one's place would get round a write protection, and part a file from its other names. */
    private static void refuseWhatShouldStay(Path file) throws IOException {
        boolean closedToAll =
                hasModes(file) && Files.getPosixFilePermissions(file).stream().noneMatch(WRITING::contains);
        if (closedToAll || !Files.isWritable(file)) {
            throw new IOException("it is write-protected; as its owner, open it with: chmod u+w");
        }
        boolean countsNames = Files.getFileStore(file).supportsFileAttributeView("unix");
        if (countsNames && Files.getAttribute(file, "unix:nlink") instanceof Integer names && names > 1) {
            throw new IOException(
                    "it has " + names + " names (hard links), of which only this one would get the new value;"
                            + " make it a file of its own with cp, or edit it by hand");
        }
    }

    private static boolean hasModes(Path file) {
        return Files.getFileAttributeView(file, PosixFileAttributeView.class) != null;
    }

    private static void clearAway(Path folder, Path file) throws IOException {
        FileTime old = FileTime.from(Instant.now().minus(LEFT_BEHIND));
        String ours = "." + file.getFileName() + ".";
        try (DirectoryStream<Path> hidden = Files.newDirectoryStream(folder, path -> {
            String name = String.valueOf(path.getFileName());
            return name.startsWith(ours)
                    && name.endsWith(NEW)
                    && name.substring(ours.length(), Math.max(ours.length(), name.length() - NEW.length()))
                            .matches("[0-9]+"); // as createTempFile names them
        })) {
            for (Path left : hidden) {
                if (Files.getLastModifiedTime(left, LinkOption.NOFOLLOW_LINKS).compareTo(old) < 0) {
                    Files.deleteIfExists(left);
                }
            }
        }
    }

    /** So that the new name outlasts a power cut; where a folder cannot be opened, the system sees to that itself. */
    private static void syncFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notPossibleHere) {
            // the file's content is on the disk all the same
        }
    }
}
