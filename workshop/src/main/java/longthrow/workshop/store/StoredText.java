package longthrow.workshop.store;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

/** What a text, a name and a key must be so that they come back exactly as they went in. */
final class StoredText {
    /** Signs a name may have; our own choice: a line on a phone held upright several times over. */
    static final int NAME_LENGTH = 200;

    /** Signs the words about an edit may have; our own choice. */
    static final int WHAT_LENGTH = 2000;

    private static final Pattern UUID_TEXT =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
    private static final Pattern HASH_TEXT = Pattern.compile("[0-9a-f]{64}");
    private static final Pattern MEDIA_TYPE =
            Pattern.compile("[A-Za-z0-9][A-Za-z0-9!#$&^_.+-]{0,126}/[A-Za-z0-9][A-Za-z0-9!#$&^_.+-]{0,126}");

    private StoredText() {}

    /** The text in UTF-8, or why it cannot be kept exactly. */
    static byte[] build(String text, long limit, String where) {
        if (text.indexOf('\0') >= 0) {
            throw refused(
                    "the text holds a NUL sign at place " + (text.indexOf('\0') + 1) + ", which no build file has",
                    where,
                    "Take it out and save again");
        }
        byte[] bytes;
        try {
            ByteBuffer encoded = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
            bytes = new byte[encoded.remaining()];
            encoded.get(bytes);
        } catch (CharacterCodingException e) {
            throw refused(
                    "the text holds half a sign (a surrogate without its other half), which UTF-8 cannot keep",
                    where,
                    "Take it out and save again");
        }
        if (bytes.length > limit) {
            throw refused(
                    String.format(Locale.ROOT, "the text has %,d bytes; at most %,d are taken", bytes.length, limit),
                    where,
                    "Take out what does not belong into a build file, for instance attach long tables as files");
        }
        return bytes;
    }

    /** The bytes as text; empty where they are not UTF-8 to the last byte. */
    static Optional<String> decode(byte[] bytes) {
        try {
            return Optional.of(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    static String name(String name, String where) {
        return line(name, "name", 1, NAME_LENGTH, where);
    }

    static String what(String what, String where) {
        return line(what, "note on the edit", 0, WHAT_LENGTH, where);
    }

    /** One line of plain signs, blanks around it taken off. */
    static String line(String text, String called, int least, int most, String where) {
        String stripped = text.strip();
        int length = stripped.codePointCount(0, stripped.length());
        if (length < least || length > most) {
            throw refused(
                    "the " + called + " has " + length + " signs; allowed are " + least + " to " + most,
                    where,
                    "Give a " + (length < least ? "longer" : "shorter") + " one");
        }
        boolean odd = stripped.codePoints().anyMatch(c -> Character.isISOControl(c) || isSurrogate(c));
        if (odd) {
            throw refused(
                    "the " + called + " holds a control sign or half a sign (a line break, a tab, a NUL or the like)",
                    where,
                    "Take it out");
        }
        return stripped;
    }

    static String mediaType(String type, String where) {
        if (!MEDIA_TYPE.matcher(type).matches()) {
            throw refused(
                    "'" + type + "' is no media type",
                    where,
                    "Give one such as image/jpeg, text/csv or application/octet-stream (RFC 6838), without parameters");
        }
        return type.toLowerCase(Locale.ROOT);
    }

    static Optional<UUID> uuid(String text) {
        return UUID_TEXT.matcher(text).matches() ? Optional.of(UUID.fromString(text)) : Optional.empty();
    }

    static boolean isHash(String text) {
        return HASH_TEXT.matcher(text).matches();
    }

    static String sha256(byte[] bytes) {
        return HexFormat.of().formatHex(sha256().digest(bytes));
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static boolean isSurrogate(int codePoint) {
        return codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
    }

    private static StoreFault refused(String what, String where, String mend) {
        return new StoreFault(StoreFault.Kind.REFUSED, what, where, mend);
    }
}
