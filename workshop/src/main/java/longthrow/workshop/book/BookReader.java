package longthrow.workshop.book;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import longthrow.buildfile.FileKind;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.PDNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.jspecify.annotations.Nullable;

/** Takes the build file out of a Book, byte for byte as it was put in by the checksum beside it; or says why not. Never throws, whatever the bytes. */
public final class BookReader {
    /** A Book has a fraction of it [bytes]. */
    public static final int MOST_BYTES = 8 << 20;

    /** To be said of a build file that came without a checksum, a sentence. */
    public static final String UNVOUCHED =
            "This Book bears no checksum of the build file, so nothing vouches that it is as it was put in; look its figures over.";

    /** A build file has at most a part of it [bytes]; a stream that unpacks to more is none. */
    static final int MOST_ATTACHED = 4 << 20;

    /** A tree of names deeper than this was not made by us. */
    private static final int DEEPEST = 8;

    private static final byte[] BEGINS = {'%', 'P', 'D', 'F', '-'};
    /** The mark may stand a little way in. */
    private static final int LOOKED_AT = 1024;

    private BookReader() {}

    /** What came out of it: a build file, or a reason. */
    public static final class Taken {
        private final Optional<byte[]> buildFile;
        private final boolean vouched;
        private final String why;

        private Taken(Optional<byte[]> buildFile, boolean vouched, String why) {
            this.buildFile = buildFile;
            this.vouched = vouched;
            this.why = why;
        }

        /** Its bytes; empty where there is none. */
        public Optional<byte[]> buildFile() {
            return buildFile.map(byte[]::clone);
        }

        /**
         * Whether the Book bears the checksum of these very bytes. It tells of damage and of a file put in place of another; it is no
         * signature, for whoever changes both is not found out.
         */
        public boolean vouched() {
            return vouched;
        }

        /** Why there is none, and what to do; empty where there is one. */
        public String why() {
            return why;
        }
    }

    /** Whether it begins as a PDF does. */
    public static boolean isPdf(byte[] bytes) {
        for (int at = 0; at + BEGINS.length <= Math.min(bytes.length, LOOKED_AT); at++) {
            if (Arrays.equals(bytes, at, at + BEGINS.length, BEGINS, 0, BEGINS.length)) {
                return true;
            }
        }
        return false;
    }

    /** Takes the build file out. */
    public static Taken buildFile(byte[] pdf) {
        if (pdf.length > MOST_BYTES) {
            return refused(
                    "is larger than " + (MOST_BYTES >> 20) + " MB; a Book is far smaller. Look at the name again");
        }
        Optional<FileKind> other = FileKind.of(pdf).filter(k -> k != FileKind.PDF);
        if (other.isPresent()) {
            return refused(other.get().why() + "; a Book is the PDF that 'longthrow book' writes");
        }
        if (!isPdf(pdf)) {
            return refused("is no PDF; a Book is the PDF that 'longthrow book' writes. A build file needs no import");
        }
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.isEncrypted()
                    ? encrypted()
                    : attached(document)
                            .orElseGet(() -> refused(
                                    "is a PDF without a build file inside; it was not written by 'longthrow book', or was printed anew. "
                                            + "Ask for the PDF as it was written"));
        } catch (InvalidPasswordException locked) {
            return encrypted();
        } catch (TooLarge bomb) {
            return refused("holds an attachment that unpacks to more than " + (MOST_ATTACHED >> 20)
                    + " MB; that is no build file");
        } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError damaged) {
            // the library throws all sorts at a PDF that is cut off or scribbled over
            return refused("is a damaged PDF and cannot be taken apart. Ask for it again, whole");
        }
    }

    private static Taken encrypted() {
        return refused("is encrypted; a Book never is. Take its protection off, or ask for the PDF as it was written");
    }

    private static Taken refused(String why) {
        return new Taken(Optional.empty(), false, why);
    }

    private static Optional<Taken> attached(PDDocument document) throws IOException {
        PDDocumentNameDictionary names = document.getDocumentCatalog().getNames();
        PDEmbeddedFilesNameTreeNode tree = names == null ? null : names.getEmbeddedFiles();
        List<PDComplexFileSpecification> found = new ArrayList<>();
        if (tree != null) {
            collect(tree, found, 0);
        }
        for (PDComplexFileSpecification specification : found) {
            PDEmbeddedFile file = specification.getEmbeddedFile();
            if (file != null) {
                return Optional.of(compared(unpacked(file), document.getDocumentInformation()));
            }
        }
        return Optional.empty();
    }

    private static Taken compared(byte[] buildFile, PDDocumentInformation information) {
        if (!information.getCOSObject().containsKey(COSName.getPDFName(BookPdf.SUM))) {
            return new Taken(Optional.of(buildFile), false, "");
        }
        String said = information.getCustomMetadataValue(BookPdf.SUM);
        String found = BookPdf.sum(buildFile);
        return found.equals(said)
                ? new Taken(Optional.of(buildFile), true, "")
                : refused("holds another build file than the one it was made with: its checksum (SHA-256) begins with "
                        + brief(found) + ", and the Book says " + brief(said)
                        + ". It was changed or damaged afterwards, and what is printed need not be what is inside. Ask for the PDF as it was "
                        + "written; to look at it all the same, save the attachment " + BookPdf.ATTACHMENT
                        + " with a PDF reader");
    }

    private static String brief(@Nullable String sum) {
        return sum == null || !sum.matches("[0-9a-f]{64}") ? "something that is none" : sum.substring(0, 12) + "…";
    }

    private static void collect(
            PDNameTreeNode<PDComplexFileSpecification> node, List<PDComplexFileSpecification> found, int depth)
            throws IOException {
        if (depth > DEEPEST) {
            throw new IOException("names without end");
        }
        Map<String, PDComplexFileSpecification> here = node.getNames();
        if (here != null && here.containsKey(BookPdf.ATTACHMENT)) {
            found.add(here.get(BookPdf.ATTACHMENT));
        }
        List<PDNameTreeNode<PDComplexFileSpecification>> kids = node.getKids();
        if (kids != null) {
            for (PDNameTreeNode<PDComplexFileSpecification> kid : kids) {
                collect(kid, found, depth + 1);
            }
        }
    }

    /** Unpacked by ourselves, no further than a build file is long: the library unpacks all before it gives the first byte. */
    private static byte[] unpacked(PDEmbeddedFile file) throws IOException {
        List<COSName> filters = file.getFilters();
        try (InputStream raw = file.getCOSObject().createRawInputStream();
                InputStream in = filters.isEmpty() ? raw : inflated(raw, filters)) {
            byte[] bytes = in.readNBytes(MOST_ATTACHED + 1);
            if (bytes.length > MOST_ATTACHED) {
                throw new TooLarge();
            }
            return bytes;
        }
    }

    private static InputStream inflated(InputStream raw, List<COSName> filters) throws IOException {
        if (!filters.equals(List.of(COSName.FLATE_DECODE))) {
            throw new IOException("packed in a way that no Book is");
        }
        return new InflaterInputStream(raw);
    }

    /** An attachment that is no build file by its size. */
    private static final class TooLarge extends IOException {
        private static final long serialVersionUID = 1L;
    }
}
