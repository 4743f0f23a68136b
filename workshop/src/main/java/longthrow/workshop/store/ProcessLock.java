package longthrow.workshop.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One process at a time: a lock of the system on a file, which ends with its process however that ends. The file itself
 * stays and means nothing; who holds it stands in it for people to read.
 */
final class ProcessLock implements AutoCloseable {
    private static final String NAME = "longthrow.lock";

    /** Far behind the text, because Windows lets nobody read what is locked. */
    private static final long LOCKED_BYTE = 1L << 40;

    /**
     * Folders this process holds. Asked first: POSIX lets go of all locks of a process on a file as soon as the process closes
     * any channel to it, so a second try must not even open it.
     */
    private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

    private final Path folder;
    private final FileChannel channel;
    private final FileLock lock;

    private ProcessLock(Path folder, FileChannel channel, FileLock lock) {
        this.folder = folder;
        this.channel = channel;
        this.lock = lock;
    }

    /** @param folder real path */
    static ProcessLock take(Path folder) {
        if (!HELD_HERE.add(folder)) {
            throw locked(folder, "this same process");
        }
        try {
            return takeFromOthers(folder);
        } catch (IOException e) {
            HELD_HERE.remove(folder);
            throw Disk.fault("lock the folder against a second program", folder, e);
        } catch (StoreFault e) {
            HELD_HERE.remove(folder);
            throw e;
        }
    }

    private static ProcessLock takeFromOthers(Path folder) throws IOException {
        FileChannel channel = FileChannel.open(
                folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        try {
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            if (lock != null) {
                sayWhoHoldsIt(channel);
                return new ProcessLock(folder, channel, lock);
            }
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        throw locked(folder, holder(folder));
    }

    /** Only for people to read: on a full disk it stays unsaid, and the lock holds all the same. */
    private static void sayWhoHoldsIt(FileChannel channel) {
        String words = "Held by process " + ProcessHandle.current().pid() + ". Nothing to delete here.\n";
        try {
            channel.truncate(0);
            channel.write(ByteBuffer.wrap(words.getBytes(StandardCharsets.US_ASCII)), 0);
        } catch (IOException unsaid) {
            // see above
        }
    }

    private static String holder(Path folder) {
        try {
            String words = Files.readString(folder.resolve(NAME), StandardCharsets.US_ASCII);
            String digits = words.replaceAll("(?s)^Held by process ([0-9]{1,18})\\..*$", "$1");
            return digits.matches("[0-9]{1,18}") ? "process " + digits : "another process";
        } catch (IOException unknown) {
            return "another process";
        }
    }

    private static StoreFault locked(Path folder, String who) {
        return new StoreFault(
                StoreFault.Kind.LOCKED,
                "the data are open in " + who + " already, and only one may write them",
                folder.toString(),
                "Use that one, or end it and try again, or choose another folder with --data");
    }

    @Override
    public void close() {
        try {
            lock.release();
            channel.close();
        } catch (IOException e) {
            // the system takes the lock back when the process ends
        } finally {
            HELD_HERE.remove(folder);
        }
    }
}
