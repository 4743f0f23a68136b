package longthrow.workshop.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.book.Book;
import longthrow.core.book.Shared;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.life.Life;
import longthrow.core.measure.Measure;
import longthrow.core.shake.Shake;
import longthrow.workshop.print.PageWords;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The PDF read back by a library that did not lay it out. */
class BookPdfTest {
    private static final Path EXAMPLES = Path.of("../examples");
    private static final Pattern DEFAULT_LINE = Pattern.compile("(?m)^D(\\d+) ");
    private static final Pattern DEFAULT_CELL = Pattern.compile(">D(\\d+)</td>");

    private static final Map<String, Sheet> SHEETS = new HashMap<>();

    private static byte[] file(String name) throws IOException {
        return Files.readAllBytes(EXAMPLES.resolve(name));
    }

    private static Build build(byte[] text) {
        return BuildFile.read(text).build().orElseThrow();
    }

    private static byte[] pdf(String name, boolean wall) throws IOException {
        return BookPdf.of(sheet(name), wall, file(name));
    }

    /** Each asked once: what touches takes seconds. */
    private static Sheet sheet(String name) throws IOException {
        Sheet known = SHEETS.get(name);
        if (known == null) {
            known = Sheet.of(build(file(name)), Catalogue.EMPTY);
            SHEETS.put(name, known);
        }
        return known;
    }

    private static String squeezed(String text) {
        return text.replaceAll("\\s+", "");
    }

    private static String text(byte[] pdf, int pages) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setEndPage(pages);
            stripper.setSortByPosition(pages == 1); // as it is seen; floats are painted before what stands above them
            return stripper.getText(document);
        }
    }

    private static List<Integer> numbers(Pattern pattern, String text) {
        List<Integer> found = new ArrayList<>();
        Matcher matcher = pattern.matcher(text);
        while (matcher.find()) {
            found.add(Integer.valueOf(matcher.group(1)));
        }
        return found;
    }

    /** The counts are read out of what was laid out, and the measure of them is the answer itself. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo.yaml",
                "scenarios/s1-rod-wanted.yaml",
                "scenarios/s2-side-valve-kart.yaml",
                "scenarios/s4-vintage-iron.yaml"
            })
    void everyDefaultOfTheAnswerStandsOnThePageAndInThePdf(String name) throws IOException {
        byte[] text = file(name);
        Build build = build(text);
        Set<DefaultUsed> used = new LinkedHashSet<>(Measure.of(build, List.of()).defaults());
        used.addAll(Clear.of(build).defaults());
        used.addAll(
                Life.of(build, Catalogue.EMPTY, Clear.of(build).clearances()).defaults());
        used.addAll(Shake.of(build).defaults());
        List<Integer> wanted =
                java.util.stream.IntStream.rangeClosed(1, used.size()).boxed().toList();
        Sheet sheet = sheet(name);
        assertThat(sheet.book().defaults()).as("each once").containsExactlyElementsOf(used);
        assertThat(numbers(DEFAULT_CELL, BookPdf.html(sheet, Optional.empty(), "full")))
                .as("page")
                .isEqualTo(wanted);
        assertThat(numbers(DEFAULT_LINE, text(BookPdf.of(sheet, false, text), 99)))
                .as("PDF")
                .isEqualTo(wanted);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void itIsTaggedAndItsFontsAreInside(boolean wall) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf("demo.yaml", wall))) {
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getStructureTreeRoot().getKids())
                    .isNotEmpty();
            assertThat(document.getDocumentCatalog().getLanguage()).startsWith("en");
            assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle())
                    .isTrue();
            String metadata =
                    new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8);
            assertThat(metadata).containsPattern("pdfuaid:part(>|=\")1");
            int fonts = 0;
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                    fonts++;
                }
            }
            assertThat(fonts).isGreaterThan(1);
            assertThat(wall ? document.getNumberOfPages() : 1).isEqualTo(1);
        }
    }

    /** A skirt that a traced counterweight runs into: what comes off it is there, a pixel as wide on paper as it says. */
    @Test
    void whatToCutIsPrintedToSize() throws IOException {
        String demo = Files.readString(EXAMPLES.resolve("demo.yaml"));
        String agreeing = demo.replace("value: 37.6 mm ± 0.3 mm", "value: 39.5 mm ± 0.3 mm"); // else no cut is told
        assertThat(agreeing).isNotEqualTo(demo);
        byte[] text = (agreeing
                        + "\noutlines:\n  - {part: counterweight, unit: 1 mm, points: [[0, -39.5], [14, 0], [0, 16], [-14, 0]]}\n")
                .getBytes(StandardCharsets.UTF_8);
        Sheet sheet = Sheet.of(build(text), Catalogue.EMPTY);
        assertThat(sheet.cuts()).isNotEmpty();
        String html = BookPdf.html(sheet, Optional.empty(), "full");
        String cut = html.substring(html.indexOf("What to cut"));
        assertThat(cut).contains("10 mm: print at 100 %", "its maker says", "where the counterweight passes");
        Matcher size = Pattern.compile("width=\"(\\d+)\" height=\"(\\d+)\" viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"")
                .matcher(cut);
        assertThat(size.find()).isTrue();
        for (int k = 1;
                k <= 2;
                k++) { // CSS pixels, 96 to the inch; the box is in tenths of a millimetre, written to a thousandth
            assertThat(Double.parseDouble(size.group(k + 2)))
                    .isCloseTo(
                            Integer.parseInt(size.group(k)) * 254 / 96.0, org.assertj.core.api.Assertions.within(1e-3));
        }
    }

    /** Forty cracks in the stop on top, each with its place: gaps that are not read are a count with where to find them, and the page stays one. */
    @Test
    void gapsThatAreNotReadAreACountWithWhereTheyStand() throws IOException {
        String seen = java.util.stream.IntStream.rangeClosed(1, 40)
                .mapToObj(k -> "  - {part: flywheel, damage: crack, where: 'spoke " + k
                        + ", from the root to a third of its length, on the side of the engine'}\n")
                .collect(java.util.stream.Collectors.joining());
        byte[] text = ("longthrow: 1\nengine:\n  name: Many lines\nuse:\n  wanted_speed: 5200 rpm\nseen:\n" + seen)
                .getBytes(StandardCharsets.UTF_8);
        Sheet sheet = Sheet.of(build(text), Catalogue.EMPTY);
        byte[] pdf = BookPdf.of(sheet, true, text);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        String words = new PDFTextStripper().getText(Loader.loadPDF(pdf)).replaceAll("\\s+", "");
        assertThat(words).contains("spoke40,");
        long unread = sheet.book().targets().stream()
                .filter(target -> !target.limit() && target.now().isEmpty())
                .count();
        assertThat(unread).isPositive();
        assertThat(words).contains(unread + "moreofwhichnothingisread:thefullsheet,underAssemblytargets,");
        assertThat(Wall.of(sheet.book()).notRead()).isEqualTo((int) unread);
        assertThat(Wall.of(sheet.book()).set()).isEmpty();
        assertThat(Wall.of(sheet.book()).left()).as("it is filled").hasSizeGreaterThan(1);
    }

    /** However much is not read, the caution before the first start is on the one page there is. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo.yaml",
                "scenarios/s1-longer-throw.yaml",
                "scenarios/s2-side-valve-kart.yaml",
                "scenarios/s4-vintage-iron.yaml",
                "blank"
            })
    void theWallIsOnePageAndCutsNoStopNoCautionAndNoStep(String name) throws IOException {
        byte[] text = name.equals("blank") ? """
                        longthrow: 1
                        engine:
                          name: Hardly read
                        cylinder:
                          bore: 66.01 mm ± 0.01 mm
                        crankshaft:
                          stroke: 50.00 mm ± 0.02 mm
                        use:
                          wanted_speed: 5200 rpm
                        """.getBytes(StandardCharsets.UTF_8) : file(name);
        Sheet sheet = name.equals("blank") ? Sheet.of(build(text), Catalogue.EMPTY) : sheet(name);
        byte[] pdf = BookPdf.of(sheet, true, text);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        String seen = new PDFTextStripper().getText(Loader.loadPDF(pdf)).replaceAll("\\s+", "");
        assertThat(Wall.moving(sheet.book()))
                .as("what touches, what lets go, where it shakes")
                .hasSize(3)
                .allSatisfy(line -> assertThat(seen).contains(squeezed(PageWords.said(line))));
        sheet.book().stops().forEach(s -> assertThat(seen).contains(s.what().replaceAll("\\s+", "")));
        sheet.book().cautions().forEach(c -> assertThat(seen).contains(c.mend().replaceAll("\\s+", "")));
        sheet.book().steps().forEach(s -> assertThat(seen).contains(s.step().replaceAll("\\s+", "")));
        assertThat(sheet.book().targets().stream()
                        .filter(t -> !t.limit() && !t.now().isEmpty()))
                .allSatisfy(t -> assertThat(seen).contains(t.label().replaceAll("\\s+", "")));
        assertThat(seen).as("of the others how many, and where").contains("moreofwhichnothingisread:thefullsheet");
    }

    /** Six times what an engine has to set: what has no room is counted and the page is one; what is not kept stays longest, and no stop, caution or step goes. */
    @Test
    void whatHasNoRoomOnTheWallIsCounted() throws IOException {
        Sheet demo = sheet("demo.yaml");
        List<Book.Target> many = new ArrayList<>();
        for (int k = 1; k <= 6; k++) {
            int copy = k;
            demo.book().targets().stream()
                    .filter(t -> !t.limit() && !t.now().isEmpty())
                    .map(t -> new Book.Target(
                            t.part(),
                            t.label() + " no " + copy,
                            t.how(),
                            t.limits(),
                            t.now(),
                            t.other(),
                            false,
                            t.whose()))
                    .forEach(many::add);
        }
        Sheet sheet = withTargets(demo, many);
        byte[] pdf = BookPdf.of(sheet, true, file("demo.yaml"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        String seen = new PDFTextStripper().getText(Loader.loadPDF(pdf)).replaceAll("\\s+", "");
        long shown =
                many.stream().filter(t -> seen.contains(squeezed(t.label()))).count();
        assertThat(shown).isLessThan(many.size());
        assertThat(seen).contains((many.size() - shown) + "morethatarereadandhavenoroomhere:thefullsheet");
        sheet.book().stops().forEach(s -> assertThat(seen).contains(squeezed(s.what())));
        sheet.book().cautions().forEach(c -> assertThat(seen).contains(squeezed(c.mend())));
        sheet.book().steps().forEach(s -> assertThat(seen).contains(squeezed(s.step())));
        Wall least = Wall.of(sheet.book(), Wall.NoRoom.most(sheet.book()));
        assertThat(least.set()).isEmpty();
        assertThat(least.figures()).isEmpty();
        assertThat(least.room().isBrief()).isTrue();
    }

    private static Sheet withTargets(Sheet of, List<Book.Target> targets) {
        Book b = of.book();
        Book book = new Book(
                b.engine(),
                b.invented(),
                b.units(),
                b.approval(),
                b.stops(),
                b.headline(),
                b.chosen(),
                b.recipe(),
                b.again(),
                b.readings(),
                b.unread(),
                b.parts(),
                b.ways(),
                b.refused(),
                b.searched(),
                b.tickets(),
                targets,
                b.torques(),
                b.damage(),
                b.touching(),
                b.limits(),
                b.shaking(),
                b.proved(),
                b.steps(),
                b.cautions(),
                b.findings(),
                b.unknowns(),
                b.defaults(),
                b.signatures(),
                b.cost(),
                b.leftOut());
        return new Sheet(
                book, of.pictures(), of.touching(), of.cuts(), of.limits(), of.path(), of.lookAgain(), of.shared());
    }

    /** Gaps that hold a run back though they are known, and damage that no stop names, stand on the wall by name, a few and then a count. */
    @Test
    void theWallNamesGapsThatHoldARunBackAndDamage() throws IOException {
        StringBuilder more = new StringBuilder("\nmocked_up:\n");
        for (String pair : List.of(
                "rod_bolts_to_case",
                "big_end_to_case",
                "counterweight_to_case",
                "rod_to_skirt",
                "rod_bolts_to_intake_lobe")) {
            more.append("  - {pair: ").append(pair).append(", way: wire, gap: 0.2 mm}\n");
        }
        more.append(
                "seen:\n  - {part: piston, damage: scored, where: skirt}\n  - {part: head, damage: corroded, where: deck}\n");
        byte[] text = ("longthrow: 1\nengine:\n  name: Hardly read\nuse:\n  wanted_speed: 5200 rpm\n" + more)
                .getBytes(StandardCharsets.UTF_8);
        Sheet sheet = Sheet.of(build(text), Catalogue.EMPTY);
        List<String> warned = Wall.warned(sheet.book());
        long held = Clear.of(build(text)).clearances().stream()
                .filter(p -> p.state() != Clearance.State.UNKNOWN && p.hold() != Clearance.Hold.NOTHING)
                .count();
        assertThat(held).isGreaterThan(4);
        assertThat(warned.get(0))
                .startsWith("Hold a run back: ")
                .contains("; and " + (held - 4) + " more pairs, see Clear");
        assertThat(warned)
                .contains(
                        "Damage was seen: piston, deep scores or scuffing (skirt); head, pitted by rust or corrosion (deck).");
        byte[] pdf = BookPdf.of(sheet, true, text);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        String seen = new PDFTextStripper().getText(Loader.loadPDF(pdf)).replaceAll("\\s+", "");
        assertThat(warned).allSatisfy(line -> assertThat(seen).contains(squeezed(PageWords.said(line))));
    }

    /** The example's columns, at about the same height: neither is half empty. */
    @ParameterizedTest
    @ValueSource(strings = {"demo.yaml", "scenarios/s1-longer-throw.yaml", "scenarios/s4-vintage-iron.yaml"})
    void noColumnOfTheWallIsHalfEmpty(String name) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(name, true))) {
            PDFTextStripperByArea halves = new PDFTextStripperByArea();
            PDRectangle page = document.getPage(0).getMediaBox();
            halves.addRegion("left", new Rectangle2D.Double(0, 0, page.getWidth() / 2, page.getHeight()));
            halves.addRegion(
                    "right", new Rectangle2D.Double(page.getWidth() / 2, 0, page.getWidth() / 2, page.getHeight()));
            halves.extractRegions(document.getPage(0));
            long left = halves.getTextForRegion("left").lines().count();
            long right = halves.getTextForRegion("right").lines().count();
            assertThat((double) Math.min(left, right) / Math.max(left, right))
                    .as(left + " lines and " + right)
                    .isGreaterThan(0.6);
        }
    }

    /** What the example's three answers say, found again on paper: each unknown pair and each known gap, each limit, each figure of the shake. */
    @Test
    void theMovingEngineStandsInTheFullSheet() throws IOException {
        Build build = build(file("demo.yaml"));
        String seen = squeezed(text(pdf("demo.yaml", false), 99));
        Answer clear = Clear.of(build);
        assertThat(clear.clearances())
                .hasSizeGreaterThan(30)
                .allSatisfy(pair -> assertThat(seen).contains(squeezed(pair.one() + " to " + pair.other() + ":")));
        assertThat(seen).contains(squeezed("Unknown until mocked up: 24"), squeezed("overlap, 0.35 mm"));
        assertThat(seen.indexOf(squeezed("Unknown until mocked up: 24")))
                .isLessThan(seen.indexOf(squeezed("rod bolts to camshaft core: ■ may touch")));
        LimitLadder ladder = Life.of(build, Catalogue.EMPTY, Clear.of(build).clearances())
                .ladder()
                .orElseThrow();
        assertThat(ladder.rungs())
                .hasSizeGreaterThan(20)
                .allSatisfy(rung -> assertThat(seen).contains(squeezed(rung.label())));
        assertThat(seen)
                .contains(squeezed(
                        "■ REFUSED: refused at 5200 rpm; instead: nothing at any speed before nothing touches"))
                .contains(squeezed("price not known"), squeezed("Will it start"));
        assertThat(seen)
                .contains(squeezed("0.483 ± 0.006"), squeezed("No counterweight can make a single stand still"));
        assertThat(sheet("demo.yaml").touching()).hasSize(5);
        assertThat(sheet("demo.yaml").limits().keySet())
                .as("a bar for each speed, and their scale")
                .containsExactlyInAnyOrderElementsOf(java.util.stream.Stream.concat(
                                java.util.stream.Stream.of(Sheet.SCALE),
                                ladder.rungs().stream()
                                        .filter(r -> r.speed().isPresent())
                                        .map(Rung::key))
                        .toList());
        assertThat(sheet("demo.yaml").path()).isPresent();
    }

    /** Of the trade's signs none is printed as the mark for a missing one. */
    @Test
    void signsOfTheTradeComeThrough() throws IOException {
        byte[] text = new String(file("demo.yaml"), StandardCharsets.UTF_8)
                .replace("Bench example, 187 cc single", "Δ ≤ ⌀ ± ° × µ bench")
                .getBytes(StandardCharsets.UTF_8);
        byte[] pdf = BookPdf.of(Sheet.of(build(text), Catalogue.EMPTY), true, text);
        assertThat(text(pdf, 1)).contains("Δ ≤ ⌀ ± ° × µ bench");
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aRefusedEngineSaysSoOnTopOfTheFirstPage(boolean wall) throws IOException {
        String first = text(pdf("scenarios/s4-vintage-iron.yaml", wall), 1);
        assertThat(first).contains("REFUSED. This sheet approves nothing until the stop is gone.");
        assertThat(first.indexOf("STOP, refused: do not start it and do not spin the flywheel"))
                .isBetween(0, first.indexOf(wall ? "Set to" : "Recipe"));
    }

    @Test
    void theBuildFileComesBackByteForByte() throws IOException {
        byte[] text = file("demo.yaml");
        assertThat(BookReader.buildFile(pdf("demo.yaml", false)).buildFile())
                .get()
                .isEqualTo(text);
    }

    /** Processor time, for what else the machine does is not the Book's; asked for are 1.5 MB and 3 s on the demo. */
    @Test
    void itIsSmallAndSoonDone() throws IOException {
        byte[] text = file("demo.yaml");
        Sheet sheet = sheet("demo.yaml");
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        long before = clock.getCurrentThreadCpuTime();
        byte[] pdf = BookPdf.of(sheet, false, text);
        double seconds = (clock.getCurrentThreadCpuTime() - before) * 1e-9;
        System.out.printf(Locale.ROOT, "Book of the demo: %d bytes, %.2f s%n", pdf.length, seconds);
        assertThat(pdf.length).isLessThan(1_500_000);
        assertThat(seconds).isLessThan(3);
    }

    // ---- sharing

    /** A name or a place in every corner that takes free words, comments among them. */
    @Test
    void aSharedBookHoldsNoPlantedName() throws IOException {
        String planted = new String(file("demo.yaml"), StandardCharsets.UTF_8)
                .replace("Bench example, 187 cc single", "Zoltan's 187")
                .replace("Orrindel 163, long crank fitted", "Zoltan's mower from Qwertyhausen")
                .replace("who: the owner", "who: Zoltan, when: Sunday in Qwertyhausen, photo: zoltan-at-home.jpg")
                .replace("my_caliper", "zoltans_caliper")
                .replace("checked in March", "checked by Zoltan in March")
                .replace("Bought seized", "Bought of Zoltan in Qwertyhausen, seized")
                .replace("compression release still working", "Zoltan says the release works")
                .replace("by: the cam card", "by: Zoltan's cams at Qwertyhausen")
                .replace("by: the crank seller's list", "by: Zoltan")
                .replace("because: shallow dish", "because: Zoltan said shallow dish")
                .replace("two light lines", "Zoltan saw two light lines")
                .replace("invented yard class", "Qwertyhausen class")
                .replace("invented rule sheet", "Zoltan's sheet")
                .replace("filled from a burette", "filled by Zoltan from a burette")
                .replace("gears in the case", "Zoltan says gears in the case")
                .replace("# The example engine.", "# Zoltan of Qwertyhausen.");
        Shared shared = Shared.of(build(planted.getBytes(StandardCharsets.UTF_8)), Catalogue.EMPTY);
        byte[] pdf = BookPdf.of(
                Sheet.of(shared), false, BuildFile.write(shared.build()).getBytes(StandardCharsets.UTF_8));
        String attached = new String(BookReader.buildFile(pdf).buildFile().orElseThrow(), StandardCharsets.UTF_8);
        String all = text(pdf, 99) + attached + everythingUnpacked(pdf);
        assertThat(all.toLowerCase(Locale.ROOT)).doesNotContain("zoltan").doesNotContain("qwertyhausen");
        assertThat(text(pdf, 99))
                .contains("Left out for sharing")
                .contains("engine.name")
                .contains("engine.donor");
        assertThat(BuildFile.read(attached).build()).contains(shared.build());
    }

    /** Metadata and every stream, as far as they are text. */
    private static String everythingUnpacked(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            StringBuilder all = new StringBuilder();
            all.append(document.getDocumentInformation().getCOSObject());
            all.append(new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8));
            document.setAllSecurityToBeRemoved(true);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out, org.apache.pdfbox.pdfwriter.compress.CompressParameters.NO_COMPRESSION);
            return all.append(new String(out.toByteArray(), StandardCharsets.ISO_8859_1))
                    .toString();
        }
    }

    // ---- what is no Book

    private static String refused(byte[] pdf) {
        BookReader.Taken taken = BookReader.buildFile(pdf);
        assertThat(taken.buildFile()).isEmpty();
        assertThat(taken.why()).isNotBlank().doesNotContain("Exception");
        return taken.why();
    }

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    @Test
    void aForeignPdfIsRefused() throws IOException {
        try (PDDocument foreign = new PDDocument()) {
            foreign.addPage(new PDPage());
            assertThat(refused(saved(foreign))).contains("without a build file inside");
        }
    }

    @Test
    void anEncryptedPdfIsRefusedWithAndWithoutAPassword() throws IOException {
        for (String password : List.of("secret", "")) {
            try (PDDocument document = Loader.loadPDF(pdf("scenarios/s4-vintage-iron.yaml", true))) {
                document.protect(new StandardProtectionPolicy("owner", password, new AccessPermission()));
                assertThat(refused(saved(document))).contains("is encrypted");
            }
        }
    }

    @Test
    void aDamagedPdfIsRefusedOrGivesTheSameFile() throws IOException {
        byte[] whole = pdf("scenarios/s4-vintage-iron.yaml", true);
        byte[] text = file("scenarios/s4-vintage-iron.yaml");
        SplittableRandom random = new SplittableRandom(20240613);
        for (int round = 0; round < 60; round++) {
            byte[] damaged = round % 2 == 0 ? Arrays.copyOf(whole, random.nextInt(whole.length)) : whole.clone();
            for (int k = 0; k < 40 && damaged.length > 0; k++) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            BookReader.Taken taken = BookReader.buildFile(damaged);
            if (taken.buildFile().isEmpty()) {
                assertThat(taken.why()).as("round " + round).isNotBlank();
            } else if (taken.vouched()) {
                assertThat(taken.buildFile()).as("round " + round).get().isEqualTo(text);
            } else if (round % 2 == 0) {
                assertThat(taken.buildFile().get()).hasSizeLessThanOrEqualTo(text.length);
            }
        }
        assertThat(refused("%PDF-1.7 and nothing more".getBytes(StandardCharsets.UTF_8)))
                .contains("damaged");
    }

    /** FIPS 180-4, SHA-256 of the example message "abc" (NIST, Cryptographic Standards and Guidelines, example values). */
    @Test
    void theChecksumIsTheOneOfTheStandard() {
        assertThat(BookPdf.sum("abc".getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void aBuildFilePutInPlaceOfAnotherOfTheSameLengthIsRefused() throws IOException {
        byte[] text = file("scenarios/s4-vintage-iron.yaml");
        byte[] whole = pdf("scenarios/s4-vintage-iron.yaml", true);
        assertThat(BookReader.buildFile(whole).vouched()).isTrue();
        byte[] other = text.clone();
        other[other.length - 2] ^= 1;
        try (PDDocument document = Loader.loadPDF(whole)) {
            try (OutputStream inside = attachment(document).createOutputStream(COSName.FLATE_DECODE)) {
                inside.write(other);
            }
            assertThat(refused(saved(document)))
                    .contains("another build file than the one it was made with")
                    .contains(BookPdf.sum(other).substring(0, 12))
                    .contains(BookPdf.sum(text).substring(0, 12));
        }
    }

    private static PDEmbeddedFile attachment(PDDocument document) throws IOException {
        PDEmbeddedFilesNameTreeNode files =
                Objects.requireNonNull(document.getDocumentCatalog().getNames().getEmbeddedFiles());
        return Objects.requireNonNull(
                Objects.requireNonNull(files.getNames().get(BookPdf.ATTACHMENT)).getEmbeddedFile());
    }

    /** A Book from before there were sums is taken, and is not called unchanged; a sum that is none is refused. */
    @Test
    void withoutAChecksumNothingVouchesForTheBuildFile() throws IOException {
        byte[] text = file("scenarios/s4-vintage-iron.yaml");
        byte[] whole = pdf("scenarios/s4-vintage-iron.yaml", true);
        try (PDDocument document = Loader.loadPDF(whole)) {
            document.getDocumentInformation().setCustomMetadataValue(BookPdf.SUM, "none");
            assertThat(refused(saved(document))).contains("something that is none");
            document.getDocumentInformation().setCustomMetadataValue(BookPdf.SUM, null);
            BookReader.Taken taken = BookReader.buildFile(saved(document));
            assertThat(taken.buildFile()).get().isEqualTo(text);
            assertThat(taken.vouched()).isFalse();
        }
    }

    @Test
    void anAttachmentThatUnpacksWithoutEndIsRefused() throws IOException {
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            PDEmbeddedFile file =
                    new PDEmbeddedFile(document, new ByteArrayInputStream(new byte[64 << 20]), COSName.FLATE_DECODE);
            PDComplexFileSpecification specification = new PDComplexFileSpecification();
            specification.setEmbeddedFile(file);
            PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
            tree.setNames(Map.of(BookPdf.ATTACHMENT, specification));
            PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
            names.setEmbeddedFiles(tree);
            document.getDocumentCatalog().setNames(names);
            byte[] bomb = saved(document);
            assertThat(bomb.length).isLessThan(BookReader.MOST_BYTES);
            assertThat(refused(bomb)).contains("unpacks to more than 4 MB");
        }
    }
}
