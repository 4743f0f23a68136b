package longthrow.buildfile;

import java.util.Optional;
import java.util.function.Function;

/**
 * Files that are no text, told by the bytes they begin with: what people hand over when they mean the text that can be saved out of them.
 * Source of the bytes: PDF, ISO 32000-1:2008, 7.5.2; zip and with it the newer spreadsheets, APPNOTE.TXT 4.3.7; older spreadsheets, MS-CFB 2.2.
 */
public enum FileKind {
    /** A PDF, among them the Book. */
    PDF(
            "is a PDF, not plain text",
            "save the table that the PDF was made from as CSV, or type it off; out of a Book, 'longthrow import' takes the build file",
            "out of a Book, 'longthrow import' takes the build file; any other PDF has to be typed off",
            '%',
            'P',
            'D',
            'F',
            '-'),
    /** A spreadsheet of today, which is a zip of several files; an archive looks the same. */
    ZIPPED(
            "is a spreadsheet file (.xlsx, .ods) or another zip archive, not plain text",
            "open it with the program it was made with and save the one sheet as CSV in UTF-8",
            "a build file or a file of donors is no table but plain lines of 'what: figure': copy the figures into one; 'longthrow measure --blank' makes an empty sheet",
            'P',
            'K',
            3,
            4),
    /** A spreadsheet of the years before. */
    COMPOUND(
            "is a spreadsheet file of an older kind (.xls), not plain text",
            "open it with the program it was made with and save the one sheet as CSV in UTF-8",
            "a build file or a file of donors is no table but plain lines of 'what: figure': copy the figures into one; 'longthrow measure --blank' makes an empty sheet",
            0xd0,
            0xcf,
            0x11,
            0xe0,
            0xa1,
            0xb1,
            0x1a,
            0xe1);

    private final String why;
    private final String mend;
    private final String mendAsLines;

    @SuppressWarnings("ImmutableEnumChecker") // never handed out
    private final int[] begins;

    FileKind(String why, String mend, String mendAsLines, int... begins) {
        this.why = why;
        this.mend = mend;
        this.mendAsLines = mendAsLines;
        this.begins = begins;
    }

    /** What the bytes are, where they are no text; empty for anything else. */
    public static Optional<FileKind> of(byte[] bytes) {
        for (FileKind kind : values()) {
            if (kind.begins(bytes)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    private boolean begins(byte[] bytes) {
        for (int i = 0; i < begins.length; i++) {
            if (bytes.length <= i || (bytes[i] & 0xff) != begins[i]) {
                return false;
            }
        }
        return true;
    }

    /** What is wrong with it, to stand behind the file's name. */
    public String why() {
        return why;
    }

    /** What to do about it where a build file is wanted, or a file of donors. */
    public String mendAsLines() {
        return mendAsLines;
    }

    /** Says so of such a file where a table is wanted; whether it did. */
    static boolean isNoTable(byte[] bytes, Faults faults) {
        return isRefused(bytes, faults, kind -> kind.mend);
    }

    /** Says so of such a file where lines of words and figures are wanted; whether it did. */
    static boolean isNoLines(byte[] bytes, Faults faults) {
        return isRefused(bytes, faults, kind -> kind.mendAsLines);
    }

    private static boolean isRefused(byte[] bytes, Faults faults, Function<FileKind, String> mend) {
        Optional<FileKind> kind = of(bytes);
        kind.ifPresent(k -> faults.add("the file " + k.why, "plain text in UTF-8", mend.apply(k)));
        return kind.isPresent();
    }
}
