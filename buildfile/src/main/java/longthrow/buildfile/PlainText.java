package longthrow.buildfile;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import longthrow.buildfile.Node.Place;
import org.jspecify.annotations.Nullable;

/** The first door: bytes to text that is safe to hand to the YAML scanner, or the reason why not. */
final class PlainText {
    /** A build file with every term, photograph names and notes is under 100 kB. */
    static final int MOST_BYTES = 1 << 20;

    /** Longest single text: a page of notes. */
    static final int LONGEST_SCALAR = 4000;

    private static final char BYTE_ORDER_MARK = '\uFEFF';
    private static final String SAVE_AS_UTF8 = "save the file as plain text in UTF-8";

    private PlainText() {}

    /** Strictly decoded and checked; empty with the faults added. */
    static Optional<String> decode(byte[] bytes, Faults faults) {
        if (FileKind.isNoLines(bytes, faults)) {
            return Optional.empty();
        }
        if (bytes.length > MOST_BYTES) {
            return refuseSize(bytes.length, "bytes", faults);
        }
        CharBuffer chars = decodeStrictly(bytes, faults);
        return chars == null ? Optional.empty() : check(chars.toString(), faults);
    }

    /** Says where bytes stop being UTF-8. */
    static void refuseBytes(byte[] bytes, Faults faults) {
        decodeStrictly(bytes, faults);
    }

    private static @Nullable CharBuffer decodeStrictly(byte[] bytes, Faults faults) {
        CharBuffer chars = CharBuffer.allocate(bytes.length + 1);
        ByteBuffer from = ByteBuffer.wrap(bytes);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(from, chars, true);
        chars.flip();
        if (result.isError()) {
            refuseBytes(bytes, from.position(), chars, faults);
            return null;
        }
        return chars;
    }

    private static void refuseBytes(byte[] bytes, int at, CharBuffer before, Faults faults) {
        int line = 1;
        int column = 1;
        for (int i = 0; i < before.length(); i++) {
            boolean lineEnds = before.charAt(i) == '\n';
            line += lineEnds ? 1 : 0;
            column = lineEnds ? 1 : column + 1;
        }
        int first = bytes[at] & 0xff;
        boolean wide = at == 0 && (first == 0xff || first == 0xfe);
        faults.add(
                new Place(line, column),
                "",
                String.format(Locale.ROOT, "byte %02x", first),
                "at byte " + at + " is not UTF-8"
                        + (wide ? "; the file looks like UTF-16" : ", perhaps ± or ° in another encoding"),
                "UTF-8",
                SAVE_AS_UTF8);
    }

    /** Checked, without a byte order mark; empty with the faults added. */
    static Optional<String> check(String text, Faults faults) {
        if (text.length() > MOST_BYTES) {
            return refuseSize(text.length(), "characters", faults);
        }
        String plain = text.startsWith(String.valueOf(BYTE_ORDER_MARK)) ? text.substring(1) : text;
        int before = faults.count();
        int line = 1;
        int start = 0;
        while (start <= plain.length()) {
            int end = lineEnd(plain, start);
            checkLine(plain, start, end, line, faults);
            line++;
            start = end + (plain.startsWith("\r\n", end) ? 2 : 1);
        }
        return faults.count() == before ? Optional.of(plain) : Optional.empty();
    }

    private static int lineEnd(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return end;
    }

    private static void checkLine(String text, int start, int end, int line, Faults faults) {
        refuseMarkers(text.substring(start, Math.min(end, start + 5)), line, faults);
        boolean comment = false;
        boolean blankSoFar = true;
        for (int at = start; at < end; ) {
            int c = text.codePointAt(at);
            Place place = new Place(line, text.codePointCount(start, at) + 1);
            comment |= c == '#' && (blankSoFar || text.charAt(at - 1) == ' ');
            if (c == '\t' && !comment) {
                faults.add(
                        place,
                        "",
                        "",
                        "a tab stands here; tabs have no fixed width, so what belongs to what cannot be told",
                        "spaces",
                        "put spaces in its place");
                return; // one a line is enough
            }
            if (isInvisible(c)) {
                faults.add(
                        place,
                        "",
                        "",
                        String.format(Locale.ROOT, "the invisible character U+%04X stands here", c),
                        "plain text",
                        "delete it and type the line again");
                return;
            }
            blankSoFar &= c == ' ';
            at += Character.charCount(c);
        }
    }

    private static void refuseMarkers(String head, int line, Faults faults) {
        if (head.matches("(---|\\.\\.\\.)( .*)?")) {
            faults.add(
                    new Place(line, 1),
                    "",
                    head.substring(0, 3),
                    "is a document marker; one file holds one engine",
                    "",
                    "delete the line, and put another engine into its own file");
        } else if (head.startsWith("%")) {
            faults.add(
                    new Place(line, 1),
                    "",
                    "%",
                    "starts a directive, which a build file does not have",
                    "",
                    "delete the line, or put # before it if it is a remark");
        }
    }

    /** Characters that cannot be seen or that break a line in some programs only: nothing a person types on purpose. */
    static boolean isInvisible(int c) {
        int type = Character.getType(c);
        return (Character.isISOControl(c) && c != '\n' && c != '\t')
                || type == Character.SURROGATE
                || type == Character.UNASSIGNED
                || type == Character.LINE_SEPARATOR
                || type == Character.PARAGRAPH_SEPARATOR
                || (type == Character.FORMAT && c != 0x200d); // a zero-width joiner holds some letters together
    }

    private static Optional<String> refuseSize(int size, String what, Faults faults) {
        faults.add(
                "the file has " + String.format(Locale.ROOT, "%,d", size) + " " + what + " and was not looked into",
                "at most " + String.format(Locale.ROOT, "%,d", MOST_BYTES),
                "check that this is the build file; keep logs and photographs beside it, not in it");
        return Optional.empty();
    }
}
