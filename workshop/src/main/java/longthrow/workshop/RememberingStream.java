package longthrow.workshop;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Remembers the first failure to write: a {@link java.io.PrintWriter} tells that there was one, but not which. */
final class RememberingStream extends OutputStream {
    private final OutputStream end;
    private @Nullable IOException first;

    RememberingStream(OutputStream end) {
        this.end = end;
    }

    Optional<IOException> failure() {
        return Optional.ofNullable(first);
    }

    @Override
    public void write(int single) throws IOException {
        write(new byte[] {(byte) single}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        try {
            end.write(bytes, from, count);
        } catch (IOException failed) {
            throw remembered(failed);
        }
    }

    @Override
    public void flush() throws IOException {
        try {
            end.flush();
        } catch (IOException failed) {
            throw remembered(failed);
        }
    }

    private IOException remembered(IOException failed) {
        if (first == null) {
            first = failed;
        }
        return failed;
    }
}
