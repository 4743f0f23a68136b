package longthrow.workshop.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a database file page by page, without the tree that leads to them: what SQLite no longer opens can still be looked through. Rows that
 * point nowhere are passed over, of one whose end is cut off there is its beginning; whether one means anything is for the caller to tell.
 *
 * <p>Source: Database File Format, sqlite.org/fileformat2.html, sections 1.3 (header), 1.6 (b-tree pages), 1.7 (overflow), 2.1 (records), 4 (the log).
 */
final class RawPages implements AutoCloseable {
    private static final int USUAL_PAGE_BYTES = 4096;
    private static final int LEAST_PAGE_BYTES = 512;
    private static final int MOST_PAGE_BYTES = 65536;
    private static final int FILE_HEADER_BYTES = 100;
    private static final int LEAF_HEADER_BYTES = 8;
    private static final int LOG_HEADER_BYTES = 32;
    private static final int FRAME_HEADER_BYTES = 24;

    /** Far above what is kept in one row: a text of 1 MiB. A larger one is a number that was damaged. */
    private static final int MOST_ROW_BYTES = 16 << 20;

    private final FileChannel file;
    private final int pageBytes;
    private final int usable;
    private final int pages;
    private final Map<Integer, byte[]> newer;

    /**
     * A row.
     * @param values null, Long, Double, String or byte[] each
     * @param cut    whether its end lies behind the end of the file; what is missing of its values is nought
     */
    record Row(long id, List<@Nullable Object> values, boolean cut) {
        Row {
            values = Collections.unmodifiableList(values);
        }
    }

    private RawPages(FileChannel file, byte[] log) throws IOException {
        this.file = file;
        byte[] header = new byte[FILE_HEADER_BYTES];
        read(header, 0);
        int said = ((header[16] & 0xff) << 8) | (header[17] & 0xff);
        int size = said == 1 ? MOST_PAGE_BYTES : said;
        boolean sound = Integer.bitCount(size) == 1 && size >= LEAST_PAGE_BYTES;
        this.pageBytes = sound ? size : USUAL_PAGE_BYTES;
        this.usable = pageBytes; // this program keeps no bytes of a page back
        this.newer = newer(log, pageBytes);
        int most = newer.keySet().stream().mapToInt(n -> n).max().orElse(0);
        this.pages = Math.max(most, (int) Math.min(Integer.MAX_VALUE, file.size() / pageBytes));
    }

    /**
     * Of a file, with the log that was beside it.
     * @param log empty where there is none
     */
    static RawPages of(Path file, byte[] log) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        try {
            return new RawPages(channel, log);
        } catch (IOException | RuntimeException failed) {
            channel.close();
            throw failed;
        }
    }

    /**
     * Pages in the log, each as last written. Frames of an earlier round have another salt. Their check sums are not asked: one that is damaged is worth as much as a
     * damaged page of the file, and behind it there may be whole ones.
     */
    private static Map<Integer, byte[]> newer(byte[] log, int pageBytes) {
        Map<Integer, byte[]> found = new HashMap<>();
        if (log.length < LOG_HEADER_BYTES) {
            return found;
        }
        ByteBuffer bytes = ByteBuffer.wrap(log);
        long salt = bytes.getLong(16);
        Map<Integer, byte[]> open = new HashMap<>();
        for (int at = LOG_HEADER_BYTES;
                at + FRAME_HEADER_BYTES + pageBytes <= log.length;
                at += FRAME_HEADER_BYTES + pageBytes) {
            int page = bytes.getInt(at);
            if (bytes.getLong(at + 8) == salt && page > 0) {
                byte[] content = new byte[pageBytes];
                bytes.get(at + FRAME_HEADER_BYTES, content);
                open.put(page, content);
                if (bytes.getInt(at + 4) != 0) { // the last of a transaction
                    found.putAll(open);
                    open.clear();
                }
            }
        }
        return found;
    }

    /** Every row of every page that can be taken for the leaf of a table. */
    List<Row> rows() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (int number = 1; number <= pages; number++) {
            byte[] page = page(number);
            int start = number == 1 ? FILE_HEADER_BYTES : 0;
            ByteBuffer bytes = ByteBuffer.wrap(page);
            int cells = bytes.getShort(start + 3) & 0xffff;
            for (int i = 0; i < cells; i++) {
                int pointer = start + LEAF_HEADER_BYTES + 2 * i;
                if (pointer + 2 > page.length) {
                    break; // the count is damaged
                }
                int at = bytes.getShort(pointer) & 0xffff;
                if (at >= start + LEAF_HEADER_BYTES && at < page.length) {
                    row(page, at).ifPresent(rows::add);
                }
            }
        }
        return rows;
    }

    private Optional<Row> row(byte[] page, int at) throws IOException {
        Cursor cursor = new Cursor(page, at);
        long size = cursor.varint();
        long id = cursor.varint();
        if (cursor.isPastEnd() || size < 1 || size > MOST_ROW_BYTES) {
            return Optional.empty();
        }
        return payload(page, cursor.at(), (int) size)
                .flatMap(found -> values(found.bytes()).map(values -> new Row(id, values, found.cut())));
    }

    /** The bytes of a row. */
    private static final class Payload {
        private final byte[] bytes;
        private final boolean cut;

        Payload(byte[] bytes, boolean cut) {
            this.bytes = bytes;
            this.cut = cut;
        }

        byte[] bytes() {
            return bytes;
        }

        boolean cut() {
            return cut;
        }
    }

    /** What lies on the page, and the rest behind it page after page. */
    private Optional<Payload> payload(byte[] page, int at, int size) throws IOException {
        int most = usable - 35;
        int least = (usable - 12) * 32 / 255 - 23;
        int spread = least + (size - least) % (usable - 4);
        int here = size <= most ? size : spread <= most ? spread : least;
        if (at + here + (here < size ? 4 : 0) > page.length) {
            return Optional.empty();
        }
        byte[] all = new byte[size];
        System.arraycopy(page, at, all, 0, here);
        int next = here < size ? ByteBuffer.wrap(page).getInt(at + here) : 0;
        for (int filled = here; filled < size; ) { // ends: each page fills some
            if (next > pages) {
                return Optional.of(new Payload(all, true));
            }
            if (next < 1) {
                return Optional.empty();
            }
            byte[] behind = page(next);
            int part = Math.min(size - filled, usable - 4);
            System.arraycopy(behind, 4, all, filled, part);
            filled += part;
            next = ByteBuffer.wrap(behind).getInt(0);
        }
        return Optional.of(new Payload(all, false));
    }

    private static Optional<List<@Nullable Object>> values(byte[] payload) {
        Cursor kinds = new Cursor(payload, 0);
        long header = kinds.varint();
        if (header < 1 || header > payload.length) {
            return Optional.empty();
        }
        List<@Nullable Object> values = new ArrayList<>();
        int at = (int) header;
        while (kinds.at() < header) {
            long kind = kinds.varint();
            long size = size(kind);
            if (kinds.isPastEnd() || kind < 0 || size < 0 || at + size > payload.length) {
                return Optional.empty();
            }
            values.add(value(payload, at, kind, (int) size));
            at += (int) size;
        }
        return Optional.of(values);
    }

    private static long size(long kind) {
        if (kind >= 12) {
            return (kind - 12) / 2;
        }
        return switch ((int) kind) {
            case 1, 2, 3, 4 -> kind;
            case 5 -> 6;
            case 6, 7 -> 8;
            case 0, 8, 9 -> 0;
            default -> -1; // kept back for SQLite itself
        };
    }

    private static @Nullable Object value(byte[] payload, int at, long kind, int size) {
        if (kind == 0) {
            return null;
        }
        if (kind == 8 || kind == 9) {
            return kind - 8;
        }
        if (kind == 7) {
            return ByteBuffer.wrap(payload).getDouble(at);
        }
        if (kind < 7) {
            long number = payload[at]; // with its sign
            for (int i = 1; i < size; i++) {
                number = (number << 8) | (payload[at + i] & 0xff);
            }
            return number;
        }
        return kind % 2 == 1
                ? new String(payload, at, size, StandardCharsets.UTF_8)
                : java.util.Arrays.copyOfRange(payload, at, at + size);
    }

    private byte[] page(int number) throws IOException {
        byte[] logged = newer.get(number);
        if (logged != null) {
            return logged;
        }
        byte[] page = new byte[pageBytes];
        read(page, (long) (number - 1) * pageBytes);
        return page;
    }

    /** What is past the end of the file stays nought. */
    private void read(byte[] into, long from) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(into);
        while (buffer.hasRemaining() && file.read(buffer, from + buffer.position()) >= 0) {
            // on to the next piece
        }
    }

    @Override
    public void close() throws IOException {
        file.close();
    }

    /** Reads numbers of one to nine bytes, high bits first. */
    private static final class Cursor {
        private final byte[] bytes;
        private int at;
        private boolean pastEnd;

        Cursor(byte[] bytes, int at) {
            this.bytes = bytes;
            this.at = at;
        }

        int at() {
            return at;
        }

        boolean isPastEnd() {
            return pastEnd;
        }

        long varint() {
            long number = 0;
            for (int i = 0; i < 9; i++) {
                if (at >= bytes.length) {
                    pastEnd = true;
                    return -1;
                }
                byte next = bytes[at];
                at++;
                if (i == 8) {
                    return (number << 8) | (next & 0xff);
                }
                number = (number << 7) | (next & 0x7f);
                if (next >= 0) {
                    return number;
                }
            }
            return number;
        }
    }
}
