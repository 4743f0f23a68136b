package longthrow.workshop.book;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;

/** Writes a Book as a tagged PDF (PDF/UA) with its fonts and its build file inside. Nothing is loaded from outside. */
public final class BookPdf {
    /** Under this name the build file lies inside. */
    static final String ATTACHMENT = "build.yaml";

    /** Entry of the document information under which the SHA-256 of that file stands, as small hex digits. */
    static final String SUM = "BuildFileSHA256";

    /** Where the template compiler puts the pages, see workshop/pom.xml. */
    private static final String PAGES = "longthrow.workshop.web.pages";

    private static final String FONT = "Book";

    /** Sizes tried for the wall, large to small, until it is one page. */
    private static final List<String> WALL_SIZES = List.of("w1", "w2", "w3", "w4");

    /** Widest drawing that fits the text [CSS pixels]. */
    private static final int WIDEST_DRAWING = 560;

    /** Pixels of a style sheet: CSS Values and Units 3 (W3C), 96 to the inch. */
    private static final double PIXELS_PER_MILLIMETRE = 96 / 25.4;

    /** A drawing in millimetres whose own units are tenths of them. */
    private static final Pattern TO_SIZE = Pattern.compile(
            "<svg ([^>]*?)width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"0 0 [0-9.]+ [0-9.]+\"");

    private static final Pattern DRAWING = Pattern.compile("<svg ([^>]*?)width=\"(\\d+)\" height=\"(\\d+)\"");

    private BookPdf() {}

    /**
     * The PDF.
     * @param wall      the one page for the wall rather than the full sheet
     * @param buildFile bytes of the build file, attached as they are, with their SHA-256
     */
    public static byte[] of(Sheet sheet, boolean wall, byte[] buildFile) {
        quiet();
        if (!wall) {
            return printed(sheet, Optional.empty(), "full", buildFile).bytes();
        }
        return wall(sheet, buildFile).bytes();
    }

    /** The largest type that makes one page of it; where none does, the smallest with the most that has room. */
    private static Printed wall(Sheet sheet, byte[] buildFile) {
        Wall whole = Wall.of(sheet.book());
        Printed printed = printed(sheet, Optional.of(whole), WALL_SIZES.get(0), buildFile);
        for (int i = 1; i < WALL_SIZES.size() && printed.pages() > 1; i++) {
            printed = printed(sheet, Optional.of(whole), WALL_SIZES.get(i), buildFile);
        }
        return printed.pages() > 1 ? shortened(sheet, buildFile) : printed;
    }

    /** Halving: fewer lines make no longer page. */
    private static Printed shortened(Sheet sheet, byte[] buildFile) {
        String smallest = WALL_SIZES.get(WALL_SIZES.size() - 1);
        int tooFew = 0;
        int enough = Wall.NoRoom.most(sheet.book());
        Printed fits = printed(sheet, Optional.of(Wall.of(sheet.book(), enough)), smallest, buildFile);
        while (enough - tooFew > 1) {
            int without = (tooFew + enough) / 2;
            Printed tried = printed(sheet, Optional.of(Wall.of(sheet.book(), without)), smallest, buildFile);
            if (tried.pages() > 1) {
                tooFew = without;
            } else {
                enough = without;
                fits = tried;
            }
        }
        return fits;
    }

    @SuppressWarnings("ArrayRecordComponent") // never compared, and never leaves this class
    private record Printed(byte[] bytes, int pages) {}

    /** The libraries' own log would stand between the answers; what matters fails a test or is thrown. */
    private static void quiet() {
        if (System.getProperty("java.awt.headless") == null) {
            System.setProperty("java.awt.headless", "true");
        }
        XRLog.setLoggingEnabled(false);
    }

    private static Printed printed(Sheet sheet, Optional<Wall> wall, String size, byte[] buildFile) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useExternalResourceAccessControl(
                (uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
        builder.useExternalResourceAccessControl(
                (uri, type) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
        builder.useUriResolver((base, uri) -> null);
        EnumSet<FSFontUseCase> everywhere = EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG);
        builder.useFont(font("DejaVuSansCondensed.ttf"), FONT, 400, FontStyle.NORMAL, true, everywhere);
        builder.useFont(font("DejaVuSansCondensed-Bold.ttf"), FONT, 700, FontStyle.NORMAL, true, everywhere);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.usePdfUaAccessibility(true);
        builder.withProducer("Longthrow");
        builder.withHtmlContent(html(sheet, wall, size), null);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        builder.toStream(out);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            attach(document, buildFile);
            int pages = document.getNumberOfPages();
            document.save(out);
            document.close();
            return new Printed(out.toByteArray(), pages);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // in memory alone, so a fault of the program
        }
    }

    /** As the page has it, with the drawings as wide as the paper. */
    static String html(Sheet sheet, Optional<Wall> wall, String size) {
        Map<String, Object> parameters = new HashMap<>();
        parameters.put("sheet", sheet.drawn(BookPdf::onPaper));
        parameters.put("wall", wall);
        parameters.put("size", size);
        parameters.put("style", new String(resource("print.css"), StandardCharsets.UTF_8));
        StringOutput out = new StringOutput();
        TemplateEngine.createPrecompiled(null, ContentType.Html, BookPdf.class.getClassLoader(), PAGES)
                .render("bookprint.jte", parameters, out);
        return out.toString();
    }

    /** With the font that is inside, a size in whole pixels that fits, and words for those who cannot see it. */
    private static Sheet.Picture onPaper(Sheet.Picture picture) {
        String svg = inPixels(picture.svg());
        Matcher size = DRAWING.matcher(svg);
        if (!size.find()) {
            throw new IllegalStateException("a drawing without its size: " + picture.name());
        }
        int wide = Integer.parseInt(size.group(2));
        int high = Integer.parseInt(size.group(3));
        int fit = Math.min(wide, WIDEST_DRAWING);
        String sized = size.replaceFirst("<svg alt=\"" + picture.name() + "\" $1width=\"" + fit + "\" height=\""
                + Math.round((float) high * fit / wide) + "\"");
        return new Sheet.Picture(
                picture.name(),
                sized.replace("font-family=\"sans-serif\"", "font-family=\"" + FONT + "\"")
                        .replace("currentColor", "#111111"));
    }

    /** A drawing that is to size, of as many whole pixels as hold it; its room grows with them, so that it stays to size. */
    private static String inPixels(String svg) {
        Matcher size = TO_SIZE.matcher(svg);
        if (!size.find()) {
            return svg;
        }
        long wide = (long) Math.ceil(Double.parseDouble(size.group(2)) * PIXELS_PER_MILLIMETRE);
        long high = (long) Math.ceil(Double.parseDouble(size.group(3)) * PIXELS_PER_MILLIMETRE);
        return size.replaceFirst(Matcher.quoteReplacement(String.format(
                Locale.ROOT,
                "<svg %swidth=\"%d\" height=\"%d\" viewBox=\"0 0 %.3f %.3f\"",
                size.group(1),
                wide,
                high,
                10 * wide / PIXELS_PER_MILLIMETRE,
                10 * high / PIXELS_PER_MILLIMETRE)));
    }

    private static FSSupplier<InputStream> font(String name) {
        return () -> new ByteArrayInputStream(resource(name));
    }

    private static byte[] resource(String name) {
        try (InputStream in = BookPdf.class.getResourceAsStream(name)) {
            return Objects.requireNonNull(in, "resource " + name + " is missing from the jar; build again")
                    .readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void attach(PDDocument document, byte[] buildFile) throws IOException {
        PDEmbeddedFile file = new PDEmbeddedFile(document, new ByteArrayInputStream(buildFile), COSName.FLATE_DECODE);
        file.setSubtype("application/yaml");
        file.setSize(buildFile.length);
        PDComplexFileSpecification specification = new PDComplexFileSpecification();
        specification.setFile(ATTACHMENT);
        specification.setFileUnicode(ATTACHMENT);
        specification.setFileDescription("The build file that this Book was made from");
        specification.setEmbeddedFile(file);
        specification.setEmbeddedFileUnicode(file);
        specification.getCOSObject().setItem(COSName.getPDFName("AFRelationship"), COSName.getPDFName("Source"));
        PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
        tree.setNames(Map.of(ATTACHMENT, specification));
        PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
        names.setEmbeddedFiles(tree);
        document.getDocumentCatalog().setNames(names);
        COSArray associated = new COSArray();
        associated.add(specification.getCOSObject());
        document.getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("AF"), associated);
        document.getDocumentInformation().setCustomMetadataValue(SUM, sum(buildFile));
    }

    /** SHA-256 (FIPS 180-4) as small hex digits. */
    static String sum(byte[] buildFile) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(buildFile));
        } catch (NoSuchAlgorithmException cannotBe) {
            throw new IllegalStateException("every Java has SHA-256", cannotBe);
        }
    }
}
