package longthrow.buildfile.log;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;

/** Bytes as lines are read from: unpacked, in UTF-8 or an encoding of one byte a letter. What is packed or wide is held in memory, so there is a limit to it. */
final class Unpacked {
    /** Most bytes that a packed or wide log may come to. An hour of six columns at 1 kHz is 158 MB. */
    static final int MOST = 192 << 20;

    private static final int CHUNK = 1 << 20;

    private final List<byte[]> chunks = new ArrayList<>();
    private int inLast = CHUNK;
    private long size;

    private Unpacked() {}

    /**
     * A source of plain bytes.
     * @param source   of them
     * @param encoding of the text before
     * @param isPacked whether it was
     * @param start    where the text begins, behind a byte order mark
     * @param note     what went wrong and lost the rest; empty where nothing did
     */
    record Plain(LogSource source, String encoding, boolean isPacked, long start, String note) {}

    /** Thrown where the limit is passed, with what to say. */
    static final class TooLarge extends Exception {
        private static final long serialVersionUID = 1L;

        TooLarge(String message) {
            super(message);
        }
    }

    static Plain of(LogSource source) throws TooLarge {
        byte[] head = head(source, 4096);
        boolean packed = head.length > 2 && (head[0] & 0xff) == 0x1f && (head[1] & 0xff) == 0x8b;
        String note = "";
        LogSource text = source;
        if (packed) {
            Unpacked unpacked = new Unpacked();
            note = unpacked.inflate(source);
            text = unpacked.asSource();
            head = head(text, 4096);
        }
        Charset wide = wide(head);
        if (wide != null) {
            Unpacked narrow = new Unpacked();
            narrow.narrow(text, wide);
            return new Plain(narrow.asSource(), wide.name(), packed, bom(head(narrow.asSource(), 3)), note);
        }
        return new Plain(text, "", packed, bom(head), note);
    }

    static byte[] head(LogSource source, int most) {
        byte[] head = new byte[(int) Math.min(most, source.size())];
        source.read(0, head, 0, head.length);
        return head;
    }

    private static int bom(byte[] head) {
        return head.length >= 3 && (head[0] & 0xff) == 0xef && (head[1] & 0xff) == 0xbb && (head[2] & 0xff) == 0xbf
                ? 3
                : 0;
    }

    /** Two bytes a letter: by its mark, or as every other byte is zero. */
    private static @Nullable Charset wide(byte[] head) {
        if (head.length >= 2) {
            int mark = (head[0] & 0xff) << 8 | (head[1] & 0xff);
            if (mark == 0xfffe) {
                return StandardCharsets.UTF_16LE;
            }
            if (mark == 0xfeff) {
                return StandardCharsets.UTF_16BE;
            }
        }
        int even = 0;
        int odd = 0;
        for (int i = 0; i < head.length; i++) {
            even += head[i] == 0 && i % 2 == 0 ? 1 : 0;
            odd += head[i] == 0 && i % 2 == 1 ? 1 : 0;
        }
        int most = head.length / 4; // of half the bytes, half
        if (head.length >= 4 && odd > most && even <= odd / 20) {
            return StandardCharsets.UTF_16LE;
        }
        return head.length >= 4 && even > most && odd <= even / 20 ? StandardCharsets.UTF_16BE : null;
    }

    private void add(byte[] bytes, int count) throws TooLarge {
        if (size + count > MOST) {
            throw new TooLarge("comes to more than " + (MOST >> 20) + " MiB when it is unpacked");
        }
        int from = 0;
        while (from < count) {
            if (inLast == CHUNK) {
                chunks.add(new byte[CHUNK]);
                inLast = 0;
            }
            int part = Math.min(count - from, CHUNK - inLast);
            System.arraycopy(bytes, from, chunks.get(chunks.size() - 1), inLast, part);
            inLast += part;
            from += part;
        }
        size += count;
    }

    private LogSource asSource() {
        return new LogSource() {
            @Override
            public long size() {
                return size;
            }

            @Override
            public void read(long at, byte[] into, int offset, int count) {
                int done = 0;
                while (done < count) {
                    int in = (int) ((at + done) % CHUNK);
                    int part = Math.min(count - done, CHUNK - in);
                    System.arraycopy(chunks.get((int) ((at + done) / CHUNK)), in, into, offset + done, part);
                    done += part;
                }
            }
        };
    }

    private String inflate(LogSource source) throws TooLarge {
        byte[] buffer = new byte[1 << 16];
        SourceStream packed = new SourceStream(source);
        try (Gzip in = new Gzip(packed)) {
            for (int got = in.read(buffer); got >= 0; got = in.read(buffer)) {
                add(buffer, got);
            }
            long behind = in.behind() + packed.available();
            return behind == 0
                    ? ""
                    : behind + " bytes follow behind the packed log, which are no packed log: they were not read";
        } catch (ZipException broken) {
            return "the packed file is broken behind what was read of it: the rest is lost";
        } catch (IOException early) {
            return "the packed file ends early: what was unpacked is read, the rest is lost";
        }
    }

    private void narrow(LogSource source, Charset wide) throws TooLarge {
        CharsetDecoder decoder = wide.newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        CharsetEncoder encoder = StandardCharsets.UTF_8
                .newEncoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        ByteBuffer in = ByteBuffer.allocate(1 << 16).order(ByteOrder.BIG_ENDIAN);
        CharBuffer chars = CharBuffer.allocate(1 << 16);
        ByteBuffer out = ByteBuffer.allocate(1 << 18);
        long at = 0;
        boolean last;
        do {
            int part = (int) Math.min(in.remaining(), source.size() - at);
            source.read(at, in.array(), in.position(), part);
            in.position(in.position() + part).flip();
            at += part;
            last = at >= source.size();
            CoderResult decoded = decoder.decode(in, chars, last);
            if (last) {
                decoder.flush(chars);
            }
            if (decoded.isError()) {
                throw new IllegalStateException("a decoder told to replace did not");
            }
            in.compact();
            chars.flip();
            CoderResult encoded = encoder.encode(chars, out, last);
            if (encoded.isError()) {
                throw new IllegalStateException("an encoder told to replace did not");
            }
            chars.compact();
            add(out.array(), out.position());
            out.clear();
        } while (!last);
    }

    /** Knows what is left behind the last packed part. */
    private static final class Gzip extends GZIPInputStream {
        /** Check sum and length behind what is packed (RFC 1952, section 2.3). */
        private static final int TRAILER = 8;

        Gzip(InputStream packed) throws IOException {
            super(packed, 1 << 16);
        }

        /** Bytes that were fetched and belong to nothing. */
        long behind() {
            return Math.max(0, inf.getRemaining() - TRAILER);
        }
    }

    /** The bytes as a stream. */
    private static final class SourceStream extends InputStream {
        private final LogSource source;
        private long at;

        SourceStream(LogSource source) {
            this.source = source;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int offset, int count) {
            if (count == 0) {
                return 0;
            }
            int part = (int) Math.min(count, source.size() - at);
            if (part <= 0) {
                return -1;
            }
            source.read(at, into, offset, part);
            at += part;
            return part;
        }

        @Override
        public int available() {
            return (int) Math.min(Integer.MAX_VALUE, source.size() - at);
        }
    }
}
