package longthrow.workshop;

import java.io.IOException;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import longthrow.buildfile.log.LogSource;

/** A logger's file beside a sheet of runs, laid into memory by the system and only read. */
final class LogOnDisk implements LogSource {
    private final MappedByteBuffer bytes;

    private LogOnDisk(MappedByteBuffer bytes) {
        this.bytes = bytes;
    }

    /** Empty where there is no such file, or where it cannot be read. */
    static Optional<LogSource> of(Path folder, String name) {
        try {
            Path path = folder.resolve(name);
            if (!Files.isRegularFile(path) || !Files.isReadable(path)) {
                return Optional.empty();
            }
            try (FileChannel channel = FileChannel.open(path)) {
                long size = Math.min(channel.size(), Integer.MAX_VALUE);
                return Optional.of(new LogOnDisk(channel.map(FileChannel.MapMode.READ_ONLY, 0, size)));
            }
        } catch (InvalidPathException | IOException cannot) {
            return Optional.empty();
        }
    }

    @Override
    public long size() {
        return bytes.capacity();
    }

    @Override
    public void read(long at, byte[] into, int offset, int count) {
        bytes.get((int) at, into, offset, count);
    }
}
