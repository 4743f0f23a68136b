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
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.buildfile.log.LogLayout;
import longthrow.buildfile.log.LogTold;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.dyno.Dyno;
import longthrow.workshop.draw.RunsChart;
import longthrow.workshop.store.BuildEntry;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.store.StoredFile;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Dynos.Attached;
import longthrow.workshop.web.FileName;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Addresses of dyno. */
public final class DynoRoutes implements Routes {
    /** Sent at once: a log of an hour at 1 kHz is some 150 MiB, and a log is read whole; our own choice. */
    private static final long MOST_MEBIBYTES = 256;

    /** Of a sheet, which is written by hand; our own choice. */
    private static final long LARGEST_SHEET = 4L << 20;

    private static final Logger LOGGER = LoggerFactory.getLogger(DynoRoutes.class);

    private static final String LOG = "application/octet-stream";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private final Workbench bench;
    private final Dynos dynos;
    private final LogViews views;

    public DynoRoutes(Workbench bench, Dynos dynos) {
        this.bench = bench;
        this.dynos = dynos;
        this.views = new LogViews(dynos);
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/dyno", this::page);
        routes.post("/b/{id}/dyno", this::receive);
        routes.get("/b/{id}/dyno/blank", this::blank);
        routes.get("/b/{id}/dyno/file", this::file);
        routes.post("/b/{id}/dyno/aside", this::aside);
        routes.post("/b/{id}/dyno/back", this::bringBack);
        routes.get("/b/{id}/dyno/log", this::log);
        routes.post("/b/{id}/dyno/layout", this::layout);
    }

    private static String page(BuildEntry entry, String sheet) {
        return Workbench.base(entry.id()) + "/dyno" + (sheet.isEmpty() ? "" : "?sheet=" + encoded(sheet));
    }

    private static String file(BuildEntry entry, StoredFile file) {
        return Workbench.base(entry.id()) + "/dyno/file?name=" + encoded(file.name());
    }

    private static String log(BuildEntry entry, String sheet, String log) {
        return Workbench.base(entry.id()) + "/dyno/log?log=" + encoded(log)
                + (sheet.isEmpty() ? "" : "&sheet=" + encoded(sheet));
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
        RunsChart.Speeds speeds = speeds(request);
        Optional<DynoAnswer> told = chosen.map(sheet -> told(sheet, attached, open.entry(), speeds));
        List<StoredFile> unnamed = dynos.unnamed(attached);
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
                                        .map(f -> new DynoPage.Log(
                                                kept(f, file(open.entry(), f), chosen),
                                                log(
                                                        open.entry(),
                                                        chosen.map(StoredFile::name)
                                                                .orElse(""),
                                                        f.name()),
                                                unnamed.contains(f)))
                                        .toList(),
                                chosen.map(sheet -> versions(sheet, open.entry()))
                                        .orElse(List.of()),
                                told,
                                MOST_MEBIBYTES + " MiB",
                                Dyno.cautions()));
    }

    /** Speeds that pictures are to show, as asked; all of them where that is no stretch. */
    private static RunsChart.Speeds speeds(Context request) {
        return RunsChart.Speeds.parse(
                Optional.ofNullable(request.queryParam("low")).orElse(""),
                Optional.ofNullable(request.queryParam("high")).orElse(""));
    }

    private List<DynoPage.Kept> versions(StoredFile sheet, BuildEntry entry) {
        return dynos.versions(entry.id(), sheet.name()).stream()
                .filter(f -> !f.sha256().equals(sheet.sha256()))
                .map(f -> kept(f, file(entry, f) + "&version=" + f.sha256(), Optional.empty()))
                .toList();
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

    private DynoAnswer told(StoredFile sheet, Attached attached, BuildEntry entry, RunsChart.Speeds speeds) {
        ReadDynoSheet read = dynos.sheet(sheet);
        Optional<Answer> answer;
        try {
            answer = dynos.of(sheet, attached);
        } catch (Refused | StoreFault told) {
            throw told;
        } catch (RuntimeException fault) {
            LOGGER.error("a sheet of runs cannot be worked out", fault);
            return DynoAnswer.faulty(
                    sheet.name(),
                    sheet.sha256(),
                    file(entry, sheet),
                    read,
                    List.of(
                            "This sheet cannot be worked out, which is a fault of Longthrow and not of yours. The other sheets of this"
                                    + " build stand as they were. Set aside its runs one by one to find the one that does it."));
        }
        return answer.map(a -> DynoAnswer.of(
                        new DynoAnswer.Source(
                                sheet.name(),
                                sheet.sha256(),
                                file(entry, sheet),
                                page(entry, sheet.name()),
                                name -> attached.log(name)
                                        .map(f -> log(entry, sheet.name(), f.name()))
                                        .orElse("")),
                        read,
                        dynos.lacking(sheet, attached),
                        dynos.ofItsLogs(entry.id(), sheet, attached),
                        a,
                        speeds))
                .orElseGet(() -> DynoAnswer.faulty(sheet.name(), sheet.sha256(), file(entry, sheet), read, List.of()));
    }

    // ---- rows of a log

    private void log(Context request) {
        Workbench.Open open = bench.open(request);
        BuildEntry entry = open.entry();
        Attached attached = dynos.of(entry.id());
        String sheetName = Optional.ofNullable(request.queryParam("sheet")).orElse("");
        StoredFile file = named(
                attached.others(),
                Optional.ofNullable(request.queryParam("log")).orElse(""),
                entry);
        LogViews.Seen seen = seen(attached, sheetName, file, entry);
        LogSight.Wish wish = new LogSight.Wish(
                Optional.ofNullable(request.queryParam("from")).orElse("").strip(),
                Optional.ofNullable(request.queryParam("to")).orElse("").strip(),
                request.queryParams("show").stream()
                        .filter(c -> c.matches("\\d{1,4}"))
                        .map(Integer::valueOf)
                        .toList(),
                "yes".equals(request.queryParam("wide")));
        String address = log(entry, sheetName, file.name());
        LogSight sight = seen.log().map(l -> LogSight.of(l, wish, address)).orElseGet(() -> LogSight.none(address));
        if ("yes".equals(request.queryParam("piece"))) {
            bench.view().show(request, "dynosight", Map.of("seen", sight));
            return;
        }
        DynoRuns.Log told = seen.logged().told();
        bench.view()
                .show(
                        request,
                        "dynolog",
                        new LogPage(
                                bench.frame(request, open, "Rows of " + file.name(), Question.DYNO),
                                file.name(),
                                sheetName,
                                page(entry, sheetName),
                                seen.log().isPresent()
                                        ? String.format(
                                                Locale.ROOT, "%,d of %,d lines are rows", told.kept(), told.rows())
                                        : seen.logged().trouble(),
                                sight,
                                told.columns(),
                                told.listed().stream()
                                        .limit(DynoAnswer.MOST_LISTED)
                                        .toList(),
                                Math.max(0, told.listed().size() - DynoAnswer.MOST_LISTED),
                                LogAsks.of(seen)));
    }

    private LogViews.Seen seen(Attached attached, String sheetName, StoredFile file, BuildEntry entry) {
        Optional<StoredFile> sheet =
                sheetName.isEmpty() ? Optional.empty() : Optional.of(named(attached.sheets(), sheetName, entry));
        return views.of(sheet, file, attached, () -> bench.store().content(file));
    }

    /** What columns mean, confirmed or forgotten; counts for every log of the layout. */
    private void layout(Context request) {
        BuildEntry entry = bench.entry(request);
        Attached attached = dynos.of(entry.id());
        String sheetName = Workbench.field(request, "sheet");
        StoredFile file = named(attached.others(), Workbench.field(request, "log"), entry);
        String there = log(entry, sheetName, file.name());
        LogLayout layout = seen(attached, sheetName, file, entry)
                .layout()
                .orElseThrow(() -> new Refused(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        "The file " + file.name() + " is no log, so there is nothing to be said of its columns",
                        "Send a log that can be read.",
                        new Frame.Place("Back to the log", there)));
        if (Workbench.field(request, "what").equals("forget")) {
            dynos.layouts().forget(layout.fingerprint());
            Workbench.goOn(request, there, "Forgotten. Logs of this layout are recognised anew.");
            return;
        }
        LogAsks.Answered answered = LogAsks.read(layout, field -> Workbench.field(request, field));
        LogTold told = answered.told()
                .orElseThrow(() -> new Refused(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        answered.trouble() + "; nothing was changed",
                        "Go back and mend it there.",
                        new Frame.Place("Back to the log", there)));
        dynos.layouts().confirm(layout.fingerprint(), file.name(), told);
        Workbench.goOn(
                request,
                there,
                "Kept. Every log of this layout is read so from now on, where its sheet says nothing else.");
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
                chosen.equals(Optional.of(file)),
                file.sha256());
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
        String version = Optional.ofNullable(request.queryParam("version")).orElse("");
        StoredFile wanted = version.isEmpty() ? file : version(entry, file, version);
        download(request, plain(file.name()), bench.store().content(wanted), LOG);
    }

    private StoredFile version(BuildEntry entry, StoredFile file, String sha256) {
        return dynos.versions(entry.id(), file.name()).stream()
                .filter(f -> f.sha256().equals(sha256))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND,
                        "No such version of '" + file.name() + "' is kept",
                        "Look in the list of its versions.",
                        back(entry, "")));
    }

    /** An earlier version of a sheet counts again; what stood there until now is kept as well. */
    private void bringBack(Context request) {
        BuildEntry entry = bench.entry(request);
        StoredFile sheet = named(dynos.of(entry.id()).sheets(), Workbench.field(request, "sheet"), entry);
        refuseUnlessSeen(request, sheet, entry);
        StoredFile earlier = version(entry, sheet, Workbench.field(request, "version"));
        keep(entry, sheet.name(), bench.store().content(earlier));
        Workbench.goOn(
                request,
                page(entry, sheet.name()),
                "The version of " + DAY.format(earlier.attached().atZone(ZoneId.systemDefault()))
                        + " counts again. The one before is kept among the versions.");
    }

    private void keep(BuildEntry entry, String name, byte[] content) {
        bench.store()
                .attach(
                        entry.id(),
                        bench.store().latest(entry.id()).number(),
                        name,
                        Dynos.SHEET,
                        new ByteArrayInputStream(content));
    }

    private static void refuseUnlessSeen(Context request, StoredFile sheet, BuildEntry entry) {
        if (!sheet.sha256().equals(Workbench.field(request, "seen"))) {
            throw new Refused(
                    HttpStatus.CONFLICT,
                    "The sheet was changed since this page was made; nothing was changed now",
                    "Look at it as it stands, then do it again.",
                    back(entry, sheet.name()));
        }
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
                        + ". What was kept under the same name before is kept too; the newest counts."
                        + namedByNone(entry, files));
    }

    private String namedByNone(BuildEntry entry, List<UploadedFile> files) {
        List<String> sent = files.stream().map(f -> name(f.filename())).toList();
        String unnamed = dynos.unnamed(dynos.of(entry.id())).stream()
                .map(StoredFile::name)
                .filter(sent::contains)
                .collect(Collectors.joining(", "));
        return unnamed.isEmpty() ? "" : " No run of a sheet names " + unnamed + " yet.";
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
        refuseUnlessSeen(request, sheet, entry);
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
        keep(entry, name, text.getBytes(StandardCharsets.UTF_8));
        Workbench.goOn(
                request, page(entry, name), isAside ? "The run is set aside: " + why + "." : "The run counts again.");
    }
}
