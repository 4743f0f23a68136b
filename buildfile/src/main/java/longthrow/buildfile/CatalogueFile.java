package longthrow.buildfile;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A catalogue of parts and machine operations: CSV, one kind a file, or YAML, several. The good rows are kept and every bad one is told
 * with its reason. Never throws, whatever the bytes.
 */
public final class CatalogueFile {
    /** The format of a YAML catalogue, and the only one there has been. */
    public static final int FORMAT_VERSION = 1;

    /** A hundred thousand rows of ten figures are 10 MB. */
    public static final int MOST_BYTES = 64 << 20;

    static final String VERSION = "catalogue";

    private CatalogueFile() {}

    /** Names that the kind of a CSV file may have. */
    public static List<String> kinds() {
        return Shelf.keys();
    }

    /** As {@link #csv(String, String, byte[])}, the kind told by the file or its name. */
    public static Imported csv(String fileName, byte[] utf8) {
        return csv("", fileName, utf8);
    }

    /**
     * Reads a CSV file.
     * @param kind     one of {@link #kinds}; empty to be told by the line {@code # kind: …} above the header, or the file's name
     * @param fileName stands in every row's place
     */
    public static Imported csv(String kind, String fileName, byte[] utf8) {
        Faults noText = new Faults();
        if (FileKind.isNoTable(utf8, noText)) {
            return Imported.refused(noText.all());
        }
        if (utf8.length > MOST_BYTES) {
            return refused(
                    String.format(Locale.ROOT, "the file has %,d bytes and was not looked into", utf8.length),
                    String.format(Locale.ROOT, "at most %,d", MOST_BYTES),
                    "split it");
        }
        String text = new String(utf8, StandardCharsets.UTF_8);
        if (text.indexOf('\uFFFD') >= 0 && !isUtf8(utf8)) {
            Faults faults = new Faults();
            PlainText.refuseBytes(utf8, faults);
            return Imported.refused(faults.all());
        }
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        CsvPreamble preamble = CsvPreamble.of(plain);
        String said = kind.isEmpty() ? preamble.kind() : kind;
        Optional<Shelf> shelf = said.isEmpty() ? Shelf.ofFileName(fileName) : Shelf.at(said);
        if (shelf.isEmpty()) {
            return refused(
                    said.isEmpty()
                            ? "neither the file nor its name says what its rows are"
                            : "'" + Faults.shown(said) + "' is no kind of part",
                    String.join(", ", Shelf.keys()),
                    (said.isEmpty()
                                    ? ""
                                    : TradeWords.didYouMean(said, Shelf.keys()).orElse("") + " ")
                            + "write the kind above the header, such as # kind: connecting_rod");
        }
        Optional<Boolean> invented = yesOrNo(preamble.invented());
        if (invented.isEmpty()) {
            return refused(
                    "'invented' is neither yes nor no but '" + Faults.shown(preamble.invented()) + "'",
                    "yes, no",
                    "write # invented: yes for a made-up catalogue, else leave the line out");
        }
        return new CsvCatalogue(plain, fileName, shelf.get(), preamble, invented.get()).read();
    }

    /** Reads a YAML file. Lines as in a build file; the first is {@code catalogue: 1}. */
    public static Imported yaml(String fileName, byte[] utf8) {
        return YamlCatalogue.read(fileName, utf8);
    }

    private static Optional<Boolean> yesOrNo(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "yes" -> Optional.of(true);
            case "", "no" -> Optional.of(false);
            default -> Optional.empty();
        };
    }

    /** A character that stands for what could not be decoded may also stand in the file itself. */
    private static boolean isUtf8(byte[] bytes) {
        try {
            CharBuffer decoded = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return decoded != null;
        } catch (CharacterCodingException broken) {
            return false;
        }
    }

    private static Imported refused(String why, String allowed, String mend) {
        return Imported.refused(List.of(new Fault(0, 0, "", "", why, allowed, mend.strip())));
    }
}
