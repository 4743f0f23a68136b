package longthrow.workshop.web.builds;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** What a file is that was sent in place of a build file, by how its bytes begin. */
final class Sent {
    /** Signs at the front, as the standards of these formats have them, in ISO 8859-1. */
    private enum Kind {
        PNG("a picture (PNG)", 0, "\u0089PNG\r\n\u001a\n"),
        JPEG("a picture (JPEG)", 0, "\u00ff\u00d8\u00ff"),
        GIF("a picture (GIF)", 0, "GIF8"),
        WEBP("a picture (WebP)", 8, "WEBP"),
        TIFF("a picture (TIFF)", 0, "II*\u0000"),
        TIFF_BIG("a picture (TIFF)", 0, "MM\u0000*"),
        HEIF("a picture (HEIC)", 4, "ftyphei"),
        HEIF_MIF("a picture (HEIF)", 4, "ftypmif1"),
        AVIF("a picture (AVIF)", 4, "ftypavif"),
        FILM("a film (MP4)", 4, "ftyp"),
        ZIP("an archive (ZIP), or a document of an office program", 0, "PK\u0003\u0004"),
        GZIP("an archive (gzip)", 0, "\u001f\u008b"),
        SQLITE("a database (SQLite)", 0, "SQLite format 3");

        private final String words;
        private final int at;
        private final String begins;

        Kind(String words, int at, String begins) {
            this.words = words;
            this.at = at;
            this.begins = begins;
        }
    }

    private static final int LOOKED_AT = 32;

    private Sent() {}

    /** In words; empty where nothing is recognised, or where it may be a build file. */
    static Optional<String> foreign(byte[] bytes) {
        String front = new String(bytes, 0, Math.min(bytes.length, LOOKED_AT), StandardCharsets.ISO_8859_1);
        for (Kind kind : Kind.values()) {
            if (front.startsWith(kind.begins, kind.at)) {
                return Optional.of(kind.words);
            }
        }
        return Optional.empty();
    }
}
