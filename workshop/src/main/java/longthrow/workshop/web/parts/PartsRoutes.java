package longthrow.workshop.web.parts;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.Fault;
import longthrow.buildfile.Imported;
import longthrow.buildfile.RowFate;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of the catalogues: looked through first, then kept or left. */
public final class PartsRoutes implements Routes {
    private static final String PAGE = "/parts";

    /** Files sent and not kept yet wait in memory, so many at most. */
    private static final int MOST_WAITING = 3;

    /** Together no larger than the largest catalogue that is read. */
    private static final long MOST_BYTES = CatalogueFile.MOST_BYTES;

    /** Rows on one page; layout. */
    private static final int ROWS = 200;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

    private final Workbench bench;
    private final Catalogues catalogues;
    private final List<Sheet> demo;
    private final Map<String, Waiting> waiting = new LinkedHashMap<>();

    /**
     * Over a store.
     * @param demo files of the invented catalogue, by their names
     */
    public PartsRoutes(Workbench bench, Catalogues catalogues, Map<String, byte[]> demo) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.demo = demo.entrySet().stream()
                .map(e -> new Sheet(e.getKey(), "", e.getValue()))
                .toList();
    }

    /** A file that was sent. Not a record: it holds bytes. */
    private static final class Sheet {
        private final String name;
        private final String kind;
        private final byte[] bytes;

        Sheet(String name, String kind, byte[] bytes) {
            this.name = name;
            this.kind = kind;
            this.bytes = bytes;
        }

        Imported read() {
            return Catalogues.read(kind, name, bytes);
        }

        /** The file as it is kept: with the kind of its rows above them where its owner said it beside the file. */
        byte[] kept() {
            if (kind.isEmpty()) {
                return bytes;
            }
            byte[] line = ("# kind: " + kind + "\n").getBytes(StandardCharsets.UTF_8);
            int mark = bytes.length >= 3 && (bytes[0] & 0xff) == 0xef && (bytes[1] & 0xff) == 0xbb ? 3 : 0;
            byte[] all = new byte[line.length + bytes.length - mark];
            System.arraycopy(line, 0, all, 0, line.length);
            System.arraycopy(bytes, mark, all, line.length, bytes.length - mark);
            return all;
        }
    }

    /** What was sent at once, and what became of its rows. */
    private record Waiting(List<Sheet> sheets, Imported read) {
        static Waiting of(List<Sheet> sheets) {
            return new Waiting(
                    List.copyOf(sheets),
                    Imported.together(sheets.stream().map(Sheet::read).toList()));
        }
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get(PAGE, this::page);
        routes.post(PAGE, this::receive);
        routes.post(PAGE + "/demo", request -> wait(request, demo));
        routes.post(PAGE + "/invented", this::invented);
        routes.get(PAGE + "/waiting/{pending}", this::fates);
        routes.post(PAGE + "/waiting/{pending}", this::keep);
        routes.get(PAGE + "/{catalogue}", this::keptFates);
        routes.post(PAGE + "/{catalogue}/active", this::activate);
        routes.post(PAGE + "/{catalogue}/forget", this::forget);
    }

    // ---- those kept

    private void page(Context request) {
        List<CatalogueEntry> all = bench.store().catalogues();
        bench.view()
                .show(
                        request,
                        "parts",
                        new PartsPage(
                                bench.frame(request, "Parts"),
                                all.stream().map(this::kept).toList(),
                                CatalogueFile.kinds(),
                                demo.stream()
                                        .allMatch(sheet -> all.stream()
                                                .anyMatch(e -> e.name().equals(sheet.name)))));
    }

    /** Whether nothing in it can be bought. */
    private static boolean isInvented(Imported read) {
        return (!read.parts().isEmpty() || !read.operations().isEmpty())
                && read.parts().stream().allMatch(p -> p.invented())
                && read.operations().stream().allMatch(o -> o.invented());
    }

    /** All that are invented at once: left out, searched again, or, once left out, deleted. */
    private void invented(Context request) {
        List<CatalogueEntry> all = bench.store().catalogues().stream()
                .filter(e -> isInvented(catalogues.alone(e)))
                .toList();
        String what = Workbench.field(request, "what");
        List<CatalogueEntry> meant =
                all.stream().filter(e -> e.active() == what.equals("out")).toList();
        String many = meant.size() == 1 ? "1 invented file" : meant.size() + " invented files";
        switch (what) {
            case "out", "in" -> meant.forEach(e -> bench.store().activateCatalogue(e.id(), what.equals("in")));
            case "forget" -> meant.forEach(e -> bench.store().forgetCatalogue(e.id()));
            default ->
                throw new Refused(
                        HttpStatus.BAD_REQUEST, "The form is not whole; nothing was changed", "Load the page again.");
        }
        Workbench.goOn(
                request,
                PAGE,
                switch (what) {
                    case "out" ->
                        many + " left out of searches. Nothing is deleted: Search all invented again takes it back.";
                    case "in" -> many + " searched again.";
                    default -> many + " deleted. Take the invented catalogue brings them back.";
                });
    }

    private PartsPage.Kept kept(CatalogueEntry entry) {
        Imported read = catalogues.alone(entry);
        boolean invented = isInvented(read);
        return new PartsPage.Kept(
                entry.id().toString(),
                entry.name(),
                counts(read),
                DAY.format(entry.imported().atZone(ZoneId.systemDefault())),
                entry.active(),
                invented);
    }

    private static String counts(Imported read) {
        long refused =
                read.fates().stream().filter(f -> f.outcome().isRefused()).count();
        long same = read.fates().stream()
                .filter(f -> f.outcome() == RowFate.Outcome.SAME)
                .count();
        return many(read.parts().size(), "part") + " and "
                + many(read.operations().size(), "machine operation")
                + (same == 0 ? "" : ", " + same + " the same again")
                + (refused == 0 ? "" : ", " + many(refused, "row") + " refused");
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    private CatalogueEntry entry(Context request) {
        String id = request.pathParam("catalogue");
        return bench.store().catalogues().stream()
                .filter(c -> c.id().toString().equals(id))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND, "There is no such catalogue here", "Look in the list of parts."));
    }

    private void keptFates(Context request) {
        CatalogueEntry entry = entry(request);
        show(request, entry.name(), "", entry.name(), PAGE + "/" + entry.id(), catalogues.alone(entry));
    }

    private void activate(Context request) {
        CatalogueEntry entry = entry(request);
        bench.store().activateCatalogue(entry.id(), !entry.active());
        Workbench.goOn(
                request, PAGE, entry.name() + (entry.active() ? " is left out of searches." : " is searched again."));
    }

    private void forget(Context request) {
        CatalogueEntry entry = entry(request);
        bench.store().forgetCatalogue(entry.id());
        Workbench.goOn(request, PAGE, entry.name() + " is deleted.");
    }

    // ---- one that comes

    private void receive(Context request) {
        String kind = Workbench.field(request, "kind");
        if (!kind.isEmpty() && !CatalogueFile.kinds().contains(kind)) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "'" + kind + "' is no kind of part",
                    "Allowed: " + String.join(", ", CatalogueFile.kinds()) + ".");
        }
        List<UploadedFile> files =
                request.uploadedFiles("file").stream().filter(f -> f.size() > 0).toList();
        if (files.isEmpty()) {
            String names = names(request.uploadedFiles("file"));
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    names.isEmpty()
                            ? "No catalogue was chosen; nothing was changed"
                            : names + ": it is empty; nothing was changed",
                    "Go back and choose one.");
        }
        if (files.stream().mapToLong(UploadedFile::size).sum() > MOST_BYTES) {
            throw new Refused(
                    HttpStatus.CONTENT_TOO_LARGE,
                    String.format(
                            Locale.ROOT,
                            "%s: that is more than %,d bytes; nothing was changed",
                            names(files),
                            MOST_BYTES),
                    "Send fewer files at once, or split them.");
        }
        List<Sheet> sheets = new ArrayList<>();
        for (UploadedFile file : files) {
            try (InputStream in = file.content()) {
                sheets.add(new Sheet(name(file.filename()), kind, in.readAllBytes()));
            } catch (IOException failed) {
                throw new Refused(
                        HttpStatus.BAD_REQUEST,
                        name(file.filename()) + " did not come whole; nothing was changed",
                        "Send it again.");
            }
        }
        wait(request, sheets);
    }

    private static String names(List<UploadedFile> files) {
        return files.stream()
                .map(UploadedFile::filename)
                .filter(sent -> !sent.isBlank())
                .map(PartsRoutes::name)
                .collect(Collectors.joining(", "));
    }

    /** Without the folders that some browsers send along. */
    private static String name(String sent) {
        String last = sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1)
                .strip();
        return last.isEmpty() ? "catalogue.csv" : last;
    }

    private void wait(Context request, List<Sheet> sheets) {
        String pending = UUID.randomUUID().toString();
        Waiting read = Waiting.of(sheets);
        synchronized (waiting) {
            waiting.put(pending, read);
            while (waiting.size() > MOST_WAITING) {
                waiting.remove(waiting.keySet().iterator().next());
            }
        }
        request.redirect(PAGE + "/waiting/" + pending, HttpStatus.SEE_OTHER);
    }

    private Waiting waiting(Context request) {
        synchronized (waiting) {
            return Optional.ofNullable(waiting.get(request.pathParam("pending")))
                    .orElseThrow(() -> new Refused(
                            HttpStatus.NOT_FOUND,
                            "What was sent does not wait here any more",
                            "Send the catalogue once more; nothing of it was kept before."));
        }
    }

    private void fates(Context request) {
        Waiting sent = waiting(request);
        String pending = request.pathParam("pending");
        show(
                request,
                "What would come of it",
                pending,
                sent.sheets().stream().map(s -> s.name).collect(Collectors.joining(", ")),
                PAGE + "/waiting/" + pending,
                sent.read());
    }

    /** What the owner has to mend first, then what to look at, then the rest, each in the order of the files. */
    private void show(Context request, String title, String pending, String files, String address, Imported read) {
        List<RowFate> fates = read.fates().stream()
                .sorted(Comparator.comparingInt(PartsRoutes::rank))
                .toList();
        int asked = Optional.ofNullable(request.queryParam("from"))
                .filter(f -> f.matches("\\d{1,9}"))
                .map(Integer::parseInt)
                .orElse(1);
        int from = Math.max(1, Math.min(asked, Math.max(1, fates.size())));
        int to = Math.min(fates.size(), from - 1 + ROWS);
        bench.view()
                .show(
                        request,
                        "fates",
                        new FatesPage(
                                bench.frame(request, title),
                                pending,
                                files,
                                counts(read),
                                !read.parts().isEmpty() || !read.operations().isEmpty(),
                                read.faults().stream()
                                        .map(Fault::message)
                                        .map(PageWords::said)
                                        .toList(),
                                read.notes().stream().map(n -> n.message()).toList(),
                                fates.subList(from - 1, to).stream()
                                        .map(PartsRoutes::row)
                                        .toList(),
                                fates.isEmpty() ? 0 : from,
                                fates.size(),
                                from > 1 ? address + "?from=" + Math.max(1, from - ROWS) : "",
                                to < fates.size() ? address + "?from=" + (to + 1) : ""));
    }

    private static int rank(RowFate fate) {
        return fate.outcome().isRefused()
                ? 0
                : !fate.remarks().isEmpty() ? 1 : fate.outcome() == RowFate.Outcome.SAME ? 2 : 3;
    }

    private static FatesPage.Row row(RowFate fate) {
        List<String> why =
                new ArrayList<>(fate.reasons().stream().map(PartsRoutes::words).toList());
        fate.remarks().forEach(n -> why.add(n.path() + ": " + n.text()));
        if (!fate.other().isEmpty()) {
            why.add("see " + fate.other());
        }
        String kind = fate.outcome().isRefused() ? "refused" : fate.outcome() == RowFate.Outcome.SAME ? "same" : "kept";
        return new FatesPage.Row(
                fate.file() + ", line " + fate.line(),
                fate.code(),
                kind,
                fate.outcome().label(),
                why);
    }

    private static String words(Fault fault) {
        return new Fault(0, 0, fault.path(), fault.found(), fault.why(), fault.allowed(), fault.mend()).message();
    }

    private void keep(Context request) {
        Waiting sent = waiting(request);
        for (Sheet sheet : sent.sheets()) {
            bench.store().addCatalogue(sheet.name, new ByteArrayInputStream(sheet.kept()));
        }
        synchronized (waiting) {
            waiting.remove(request.pathParam("pending"));
        }
        Workbench.goOn(request, PAGE, "Kept: " + counts(sent.read()) + ". They are searched from now on.");
    }
}
