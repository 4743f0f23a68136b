package longthrow.buildfile.log;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines by which a layout is recognised: those at the beginning of a log, and some from its middle and its end.
 * @param head    the lines at the beginning, all that the first bytes hold
 * @param others  lines from the middle and the end
 * @param lineEnd the byte that ends a line
 * @param isReturned whether a carriage return stands before each line feed
 * @param charset of the text
 */
record Sample(List<Line> head, List<Line> others, byte lineEnd, boolean isReturned, Charset charset) {
    /** Of the beginning: room for the longest preamble that a logger writes. */
    static final int HEAD = 1 << 18;

    private static final int PART = 1 << 14;
    private static final int MOST_HEAD_LINES = 2000;

    /** One line, without its end, and the byte of the log at which it begins. */
    static final class Line {
        private final byte[] bytes;
        private final long at;

        Line(byte[] bytes, long at) {
            this.bytes = bytes;
            this.at = at;
        }

        byte[] bytes() {
            return bytes;
        }

        long at() {
            return at;
        }

        boolean isBlank() {
            for (byte b : bytes) {
                if (!Cells.isBlank(b)) {
                    return false;
                }
            }
            return true;
        }
    }

    static Sample of(LogSource source, long start) {
        byte[] first = part(source, start, HEAD);
        boolean feeds = contains(first, (byte) '\n');
        byte end = (byte) (feeds || !contains(first, (byte) '\r') ? '\n' : '\r');
        boolean isWhole = start + first.length == source.size();
        List<Line> head = lines(first, start, end, isWhole, true);
        List<Line> others = new ArrayList<>();
        if (!isWhole) {
            long middle = start + (source.size() - start) / 2;
            others.addAll(lines(part(source, middle, PART), middle, end, false, false));
            long last = Math.max(start + first.length, source.size() - PART);
            others.addAll(lines(part(source, last, PART), last, end, true, false));
        }
        boolean returned = feeds && contains(first, (byte) '\r');
        return new Sample(head, others, end, returned, charset(first));
    }

    private static byte[] part(LogSource source, long at, int most) {
        byte[] part = new byte[(int) Math.min(most, source.size() - at)];
        source.read(at, part, 0, part.length);
        return part;
    }

    private static boolean contains(byte[] bytes, byte wanted) {
        for (byte b : bytes) {
            if (b == wanted) {
                return true;
            }
        }
        return false;
    }

    private static List<Line> lines(byte[] bytes, long base, byte end, boolean withLast, boolean withFirst) {
        List<Line> lines = new ArrayList<>();
        int from = 0;
        boolean whole = withFirst; // a line that a window cuts is left out
        for (int at = 0; at < bytes.length && lines.size() < MOST_HEAD_LINES; at++) {
            if (bytes[at] == end) {
                if (whole) {
                    lines.add(line(bytes, from, at, base));
                }
                whole = true;
                from = at + 1;
            }
        }
        if (from < bytes.length && withLast && whole && lines.size() < MOST_HEAD_LINES) {
            lines.add(line(bytes, from, bytes.length, base));
        }
        return lines;
    }

    private static Line line(byte[] bytes, int from, int to, long base) {
        int end = to > from && bytes[to - 1] == '\r' ? to - 1 : to;
        byte[] line = new byte[end - from];
        System.arraycopy(bytes, from, line, 0, line.length);
        return new Line(line, base + from);
    }

    /** UTF-8 if it is that throughout, but for a letter cut at the end. */
    private static Charset charset(byte[] bytes) {
        int end = bytes.length;
        while (end > 0 && end > bytes.length - 4 && bytes.length == HEAD && bytes[end - 1] < 0) {
            end--;
        }
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, 0, end));
            return StandardCharsets.UTF_8;
        } catch (CharacterCodingException no) {
            return StandardCharsets.ISO_8859_1;
        }
    }

    /** The cells of a line, as text; empty where a quotation mark is not closed. */
    List<String> cells(Line line, byte delimiter) {
        Cells cells = new Cells(delimiter);
        int count = cells.split(line.bytes(), 0, line.bytes().length);
        List<String> texts = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            texts.add(new String(line.bytes(), cells.from(c), cells.to(c) - cells.from(c), charset));
        }
        return texts;
    }
}
