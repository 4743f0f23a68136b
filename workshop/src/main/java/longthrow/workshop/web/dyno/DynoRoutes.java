package longthrow.workshop.web.dyno;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.core.answer.Answer;
import longthrow.workshop.store.BuildEntry;
import longthrow.workshop.store.StoredFile;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Dynos.Attached;
import longthrow.workshop.web.FileName;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of dyno. */
public final class DynoRoutes implements Routes {
    /** Sent at once: a log of an hour at 1 kHz is some 150 MiB, and a log is read whole; our own choice. */
    private static final long MOST_MEBIBYTES = 256;

    /** Of a sheet, which is written by hand; our own choice. */
    private static final long LARGEST_SHEET = 4L << 20;

    private static final String LOG = "application/octet-stream";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private final Workbench bench;
    private final Dynos dynos;

    public DynoRoutes(Workbench bench, Dynos dynos) {
        this.bench = bench;
        this.dynos = dynos;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/dyno", this::page);
        routes.post("/b/{id}/dyno", this::receive);
        routes.get("/b/{id}/dyno/blank", this::blank);
        routes.get("/b/{id}/dyno/file", this::file);
        routes.post("/b/{id}/dyno/aside", this::aside);
    }

    private static String page(BuildEntry entry, String sheet) {
        return Workbench.base(entry.id()) + "/dyno" + (sheet.isEmpty() ? "" : "?sheet=" + encoded(sheet));
    }

    private static String file(BuildEntry entry, StoredFile file) {
        return Workbench.base(entry.id()) + "/dyno/file?name=" + encoded(file.name());
    }

    private static String encoded(String name) {
        return URLEncoder.encode(name, StandardCharsets.UTF_8);
    }

    private static Frame.Place back(BuildEntry entry, String sheet) {
        return new Frame.Place("Back to Dyno", page(entry, sheet));
    }

    // ---- shown

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        Attached attached = dynos.of(open.entry().id());
        String wanted = Optional.ofNullable(request.queryParam("sheet")).orElse("");
        Optional<StoredFile> chosen = wanted.isEmpty()
                ? attached.sheets().stream().findFirst()
                : Optional.of(named(attached.sheets(), wanted, open.entry()));
        Optional<DynoAnswer> told = chosen.map(sheet -> told(sheet, attached, open.entry()));
        bench.view()
                .show(
                        request,
                        "dyno",
                        new DynoPage(
                                bench.frame(request, open, "Dyno", Question.DYNO),
                                attached.sheets().stream()
                                        .map(f -> kept(f, page(open.entry(), f.name()), chosen))
                                        .toList(),
                                attached.others().stream()
                                        .map(f -> kept(f, file(open.entry(), f), chosen))
                                        .toList(),
                                told,
                                MOST_MEBIBYTES + " MiB"));
    }

    private static StoredFile named(List<StoredFile> files, String name, BuildEntry entry) {
        return files.stream()
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND,
                        "No file '" + name + "' is kept with this build",
                        "Look in the list of its files.",
                        back(entry, "")));
    }

    private DynoAnswer told(StoredFile sheet, Attached attached, BuildEntry entry) {
        ReadDynoSheet read = dynos.sheet(sheet);
        Optional<Answer> answer = dynos.of(sheet, attached);
        return answer.map(a -> DynoAnswer.of(
                        sheet.name(), sheet.sha256(), file(entry, sheet), read, dynos.lacking(sheet, attached), a))
                .orElseGet(() -> DynoAnswer.faulty(sheet.name(), sheet.sha256(), file(entry, sheet), read));
    }

    private static DynoPage.Kept kept(StoredFile file, String address, Optional<StoredFile> chosen) {
        return new DynoPage.Kept(
                file.name(),
                address,
                String.format(
                        Locale.ROOT,
                        "%,d bytes, since %s",
                        file.bytes(),
                        DAY.format(file.attached().atZone(ZoneId.systemDefault()))),
                chosen.equals(Optional.of(file)));
    }

    // ---- handed out

    private void blank(Context request) {
        download(request, "dyno-runs.yaml", DynoSheetFile.blank().getBytes(StandardCharsets.UTF_8), Dynos.SHEET);
    }

    private void file(Context request) {
        BuildEntry entry = bench.entry(request);
        Attached attached = dynos.of(entry.id());
        String name = Optional.ofNullable(request.queryParam("name")).orElse("");
        StoredFile file = named(
                Stream.concat(attached.sheets().stream(), attached.others().stream())
                        .toList(),
                name,
                entry);
        download(request, plain(file.name()), bench.store().content(file), LOG);
    }

    /** As far as its letters may stand in a header. */
    private static String plain(String name) {
        int point = name.lastIndexOf('.');
        return point <= 0
                ? FileName.of(name)
                : FileName.of(name.substring(0, point)) + "." + FileName.of(name.substring(point + 1));
    }

    private static void download(Context request, String name, byte[] content, String type) {
        request.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
        request.contentType(type).result(content);
    }

    // ---- taken in

    private void receive(Context request) {
        BuildEntry entry = bench.entry(request);
        List<UploadedFile> files = request.uploadedFiles("file").stream()
                .filter(f -> !f.filename().isBlank())
                .toList();
        refuseUnlessGood(files, entry);
        int revision = bench.store().latest(entry.id()).number();
        String sheet = "";
        for (UploadedFile file : files) {
            String name = name(file.filename());
            try (InputStream in = file.content()) {
                boolean isSheet = Dynos.isSheet(name);
                bench.store().attach(entry.id(), revision, name, isSheet ? Dynos.SHEET : LOG, in);
                sheet = isSheet ? name : sheet;
            } catch (IOException failed) {
                throw new Refused(
                        HttpStatus.BAD_REQUEST,
                        "The file " + name + " did not come whole; what came before it is kept",
                        "Send it again.",
                        back(entry, ""));
            }
        }
        Workbench.goOn(
                request,
                page(entry, sheet),
                "Kept: "
                        + files.stream().map(f -> name(f.filename())).collect(Collectors.joining(", "))
                        + ". What was kept under the same name before is kept too; the newest counts.");
    }

    private static void refuseUnlessGood(List<UploadedFile> files, BuildEntry entry) {
        if (files.isEmpty()) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "No file was chosen; nothing was changed",
                    "Go back and choose a sheet or a log.",
                    back(entry, ""));
        }
        files.stream().filter(f -> f.size() == 0).findFirst().ifPresent(empty -> {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "The file " + name(empty.filename()) + " is empty; nothing was changed",
                    "Send the others without it, or write it again.",
                    back(entry, ""));
        });
        if (files.stream().mapToLong(UploadedFile::size).sum() > MOST_MEBIBYTES << 20) {
            throw new Refused(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "That is more than " + MOST_MEBIBYTES + " MiB; nothing was changed",
                    "Send fewer files at once, or cut a log into a file for each run.",
                    back(entry, ""));
        }
        files.stream()
                .filter(f -> Dynos.isSheet(name(f.filename())) && f.size() > LARGEST_SHEET)
                .findFirst()
                .ifPresent(large -> {
                    throw new Refused(
                            HttpStatus.CONTENT_TOO_LARGE,
                            "A sheet of runs has at most " + (LARGEST_SHEET >> 20) + " MiB, and "
                                    + name(large.filename()) + " has more; nothing was changed",
                            "A log is sent under a name that does not end in .yaml.",
                            back(entry, ""));
                });
    }

    /** Without the folders that some browsers send along. */
    private static String name(String sent) {
        String last = sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1)
                .strip();
        return last.isEmpty() ? "runs" : last;
    }

    // ---- which runs count

    /** Written into the sheet, which is kept as a new version of its file: what stood there before is kept too. */
    private void aside(Context request) {
        BuildEntry entry = bench.entry(request);
        String name = Workbench.field(request, "sheet");
        StoredFile sheet = named(dynos.of(entry.id()).sheets(), name, entry);
        if (!sheet.sha256().equals(Workbench.field(request, "seen"))) {
            throw new Refused(
                    HttpStatus.CONFLICT,
                    "The sheet was changed since this page was made; nothing was changed now",
                    "Look at it as it stands, then do it again.",
                    back(entry, name));
        }
        boolean isAside = Workbench.field(request, "what").equals("aside");
        String why = isAside ? Workbench.field(request, "why") : "";
        if (isAside && why.isEmpty()) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "A run is set aside for a reason, and none was written; nothing was changed",
                    "Go back and write why it does not count.",
                    back(entry, name));
        }
        Edited edited = DynoSheetFile.aside(
                new String(bench.store().content(sheet), StandardCharsets.UTF_8),
                Workbench.number(Workbench.field(request, "session")),
                Workbench.number(Workbench.field(request, "run")),
                why);
        String text = edited.text()
                .orElseThrow(() -> new Refused(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        edited.faults().get(0).message() + "; nothing was changed",
                        "Fetch the sheet, write it there and send it again.",
                        back(entry, name)));
        bench.store()
                .attach(
                        entry.id(),
                        bench.store().latest(entry.id()).number(),
                        name,
                        Dynos.SHEET,
                        new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        Workbench.goOn(
                request, page(entry, name), isAside ? "The run is set aside: " + why + "." : "The run counts again.");
    }
}
