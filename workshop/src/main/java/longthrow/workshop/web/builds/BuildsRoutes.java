package longthrow.workshop.web.builds;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import longthrow.buildfile.BlankSheet;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadBuild;
import longthrow.core.build.Build;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.book.BookReader;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.store.BuildEntry;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.ExportReport;
import longthrow.workshop.store.ImportReport;
import longthrow.workshop.store.RevisionEntry;
import longthrow.workshop.store.SaveResult;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Difference;
import longthrow.workshop.web.FileName;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;
import org.jspecify.annotations.Nullable;

/** Addresses of the list of builds, of their history and of their files. */
public final class BuildsRoutes implements Routes {
    private static final String LIST = "/builds";

    private final Workbench bench;
    private final String example;

    /**
     * Over a store.
     * @param example text of the invented build that a first visit is offered
     */
    public BuildsRoutes(Workbench bench, String example) {
        this.bench = bench;
        this.example = example;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/", request -> request.redirect(LIST, HttpStatus.SEE_OTHER));
        routes.get(
                "/alive",
                request -> request.contentType("text/plain; charset=utf-8").result(bench.token()));
        routes.get(LIST, this::list);
        routes.get("/b/{id}/state", this::state);
        routes.post(LIST, this::begin);
        routes.post(LIST + "/file", this::readFile);
        routes.get("/b/{id}/file", this::file);
        routes.get("/b/{id}/history", this::history);
        routes.get("/b/{id}/compare", this::compare);
        routes.post("/b/{id}/undo", this::undo);
        routes.post("/b/{id}/back", this::bringBack);
        routes.post("/b/{id}/name", this::rename);
        routes.post("/b/{id}/away", this::away);
        routes.get("/everything.zip", this::everything);
        routes.post("/everything", this::takeEverything);
    }

    // ---- the list

    private void list(Context request) {
        List<BuildEntry> all = bench.store().builds();
        bench.view()
                .show(
                        request,
                        "builds",
                        new BuildsPage(
                                bench.frame(request, "Builds"),
                                cards(all, b -> b.archived().isEmpty()),
                                cards(all, b -> b.archived().isPresent()),
                                bench.store().health().notes(),
                                bench.store().folder().toString(),
                                UUID.randomUUID().toString(),
                                Workbench.largestUpload()));
    }

    /** Last saved first. What is not worked out yet is asked for by the page afterwards, so that the list is there at once. */
    private List<BuildCard> cards(List<BuildEntry> all, Predicate<BuildEntry> which) {
        return all.stream()
                .filter(which)
                .sorted((a, b) -> b.saved().compareTo(a.saved()))
                .map(entry -> isAlone(entry, all) ? card(entry) : card(entry).begun(entry.created()))
                .toList();
    }

    /** Whether no other build has its name, as its owner would read it. */
    private static boolean isAlone(BuildEntry entry, List<BuildEntry> all) {
        return all.stream()
                        .filter(other -> other.name()
                                .strip()
                                .equalsIgnoreCase(entry.name().strip()))
                        .count()
                == 1;
    }

    /** One that is damaged does not hide the others. */
    private BuildCard card(BuildEntry entry) {
        try {
            return BuildCard.of(
                    entry, bench.desk().ifKnown(bench.store().latest(entry.id()).text()));
        } catch (StoreFault fault) {
            if (fault.kind() != StoreFault.Kind.DAMAGED) {
                throw fault;
            }
            return BuildCard.damaged(entry, fault.what() + ".");
        }
    }

    private void state(Context request) {
        BuildEntry entry = bench.entry(request);
        BuildCard card = BuildCard.of(
                entry,
                Optional.of(bench.desk().work(bench.store().latest(entry.id()).text())));
        bench.view().show(request, "state", Map.of("card", card));
    }

    // ---- a new one

    private void begin(Context request) {
        String what = Workbench.field(request, "what");
        boolean invented = what.equals("example");
        if (!invented && !what.equals("empty")) {
            throw new Refused(
                    HttpStatus.BAD_REQUEST,
                    "The form asks to begin with '" + what + "', and there is no such thing; nothing was begun",
                    "Go back to the list of builds and choose the example or an empty sheet.");
        }
        String name = Workbench.field(request, "name");
        if (!invented && name.isEmpty()) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "The engine has no name yet; nothing was begun",
                    "Go back and give it one, such as where it came from.");
        }
        String text = invented ? example : named(name);
        String called =
                invented ? BuildFile.read(example).build().map(Build::name).orElseThrow() : name;
        BuildId id = bench.store().create(called, text, Workbench.key(request));
        Workbench.goOn(
                request,
                Workbench.base(id) + "/measure",
                invented
                        ? "This engine is invented. Change what you like; nothing here can be broken."
                        : "Begun: " + name + ".");
    }

    private static String named(String name) {
        String sheet = BlankSheet.text(UnitSystem.METRIC_FIRST);
        try {
            Edited edited = BuildFile.edit(sheet, "engine.name", BuildFile.quoted(name));
            return edited.text()
                    .orElseThrow(() -> new Refused(
                            HttpStatus.UNPROCESSABLE_CONTENT,
                            edited.faults().stream().map(Changes::words).collect(Collectors.joining(" ")),
                            "Go back and choose another name."));
        } catch (IllegalArgumentException cannotStandInAFile) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "The name holds signs that cannot be kept, or is far too long; nothing was begun",
                    "Go back and choose another name.");
        }
    }

    private void readFile(Context request) {
        UploadedFile file = upload(request, "build file");
        long most = Math.max(bench.store().limits().textBytes(), BookReader.MOST_BYTES);
        if (file.size() > most) {
            throw tooLarge(file.filename(), file.size(), most);
        }
        byte[] sent = bytes(file);
        Sent.foreign(sent).ifPresent(what -> {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "'" + file.filename() + "' is " + what + ", not a build file; nothing was begun",
                    "Go back and choose a build file, which is plain text and mostly ends in .yaml, or a Book, the PDF that this program writes. "
                            + "All builds in one file (.zip) are taken at the foot of the list of builds.");
        });
        Optional<BookReader.Taken> book =
                BookReader.isPdf(sent) ? Optional.of(outOfABook(file.filename(), sent)) : Optional.empty();
        byte[] bytes = book.flatMap(BookReader.Taken::buildFile).orElse(sent);
        if (bytes.length > bench.store().limits().textBytes()) {
            throw tooLarge(file.filename(), bytes.length, bench.store().limits().textBytes());
        }
        ReadBuild read = BuildFile.read(bytes);
        if (read.build().isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            bench.view()
                    .show(
                            request,
                            "faults",
                            new FaultsPage(
                                    bench.frame(request, "This file was not taken"),
                                    file.filename(),
                                    read.faults().stream().map(Fault::message).toList()));
            return;
        }
        String name = read.build().get().name();
        BuildId id = bench.store()
                .create(
                        name.isBlank() ? file.filename() : name,
                        new String(bytes, StandardCharsets.UTF_8),
                        Workbench.key(request));
        String doubt = book.isPresent() && !book.get().vouched() ? " " + BookReader.UNVOUCHED : "";
        String notes = read.notes().isEmpty()
                ? ""
                : " Understood: "
                        + read.notes().stream()
                                .map(n -> PageWords.said(n.path() + " " + n.text()))
                                .collect(Collectors.joining("; "))
                        + ".";
        Workbench.goOn(request, Workbench.base(id) + "/measure", "Taken from " + file.filename() + "." + doubt + notes);
    }

    private static Refused tooLarge(String name, long size, long most) {
        return new Refused(
                HttpStatus.CONTENT_TOO_LARGE,
                String.format(
                        Locale.ROOT,
                        "'%s' has %,d bytes, and a build file has at most %,d; nothing was begun",
                        name,
                        size,
                        most),
                "Look whether it is a build file.");
    }

    private static BookReader.Taken outOfABook(String name, byte[] pdf) {
        BookReader.Taken taken = BookReader.buildFile(pdf);
        if (taken.buildFile().isEmpty()) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "'" + name + "' " + taken.why() + "; nothing was begun",
                    "Go back and choose a build file or a Book.");
        }
        return taken;
    }

    /** By its first bytes (APPNOTE.TXT 4.3.7, the local file header; 4.3.16 for one without entries), before all of it is looked at. */
    private static boolean isZip(UploadedFile file) {
        try (InputStream in = file.content()) {
            byte[] first = in.readNBytes(4);
            return first.length == 4
                    && first[0] == 'P'
                    && first[1] == 'K'
                    && ((first[2] == 3 && first[3] == 4) || (first[2] == 5 && first[3] == 6));
        } catch (IOException failed) {
            return false;
        }
    }

    private static UploadedFile upload(Context request, String what) {
        return Optional.ofNullable(request.uploadedFile("file"))
                .filter(f -> f.size() > 0)
                .orElseThrow(() -> new Refused(
                        HttpStatus.UNPROCESSABLE_CONTENT,
                        "No " + what + " was chosen, or it is empty; nothing was changed",
                        "Go back and choose one."));
    }

    private static byte[] bytes(UploadedFile file) {
        try (InputStream in = file.content()) {
            return in.readAllBytes();
        } catch (IOException failed) {
            throw new Refused(
                    HttpStatus.BAD_REQUEST, "The file did not come whole; nothing was changed", "Send it again.");
        }
    }

    // ---- its file and its history

    private void file(Context request) {
        BuildEntry entry = bench.entry(request);
        String text = Optional.ofNullable(request.queryParam("revision"))
                .map(number ->
                        bench.store().at(entry.id(), revision(entry, number)).text())
                .orElseGet(() -> bench.store().exportBuild(entry.id()));
        download(request, FileName.of(entry.name()) + ".yaml");
        request.contentType("application/yaml; charset=utf-8").result(text.getBytes(StandardCharsets.UTF_8));
    }

    private static void download(Context request, String name) {
        request.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    }

    /** Opens for a build whose newest revision is damaged too: there its owner finds one that is whole. */
    private void history(Context request) {
        BuildEntry entry = bench.entry(request);
        List<Integer> damaged = bench.store().health().summary().isEmpty()
                ? List.of()
                : bench.store().damaged(entry.id());
        Optional<Workbench.Open> open = damaged.contains(entry.latest()) ? Optional.empty() : opened(request);
        List<RevisionEntry> all = new ArrayList<>(bench.store().history(entry.id()));
        Collections.reverse(all);
        int newest = all.get(0).number();
        List<Integer> broken =
                open.isEmpty() && damaged.isEmpty() ? bench.store().damaged(entry.id()) : damaged;
        bench.view()
                .show(
                        request,
                        "history",
                        new HistoryPage(
                                open.map(o -> bench.frame(request, o, "History"))
                                        .orElseGet(() -> bench.damagedFrame(request, entry, "History")),
                                Workbench.base(entry.id()),
                                UUID.randomUUID().toString(),
                                all.size() > 1 && open.isPresent(),
                                entry.archived().isPresent(),
                                open.isEmpty(),
                                all.stream()
                                        .map(r -> new HistoryPage.Row(
                                                r.number(),
                                                broken.contains(r.number() - 1) ? 0 : r.number() - 1,
                                                r.what(),
                                                BuildCard.when(r.saved()),
                                                r.number() == newest,
                                                broken.contains(r.number())))
                                        .toList()));
    }

    private Optional<Workbench.Open> opened(Context request) {
        try {
            return Optional.of(bench.open(request));
        } catch (StoreFault fault) {
            if (fault.kind() != StoreFault.Kind.DAMAGED) {
                throw fault;
            }
            return Optional.empty();
        }
    }

    private void compare(Context request) {
        Workbench.Open open = bench.open(request);
        int from = revision(open.entry(), request.queryParam("from"));
        int to = revision(open.entry(), request.queryParam("to"));
        var comparison = bench.store().compare(open.entry().id(), from, to);
        bench.view()
                .show(
                        request,
                        "compare",
                        new ComparePage(
                                bench.frame(request, open, "Revision " + from + " and revision " + to),
                                open.base(),
                                UUID.randomUUID().toString(),
                                from,
                                to,
                                BuildCard.when(comparison.before().saved()),
                                BuildCard.when(comparison.after().saved()),
                                Moved.of(
                                        bench.desk()
                                                .work(bench.store()
                                                        .at(open.entry().id(), from)
                                                        .text()),
                                        bench.desk()
                                                .work(bench.store()
                                                        .at(open.entry().id(), to)
                                                        .text()),
                                        from,
                                        to),
                                Difference.of(comparison)));
    }

    /** A number out of an address, which anybody may have typed or kept for long. */
    private static int revision(BuildEntry entry, @Nullable String number) {
        String said = Optional.ofNullable(number).orElse("");
        int found = said.matches("[0-9]{1,9}") ? Integer.parseInt(said) : 0;
        if (found < 1 || found > entry.latest()) {
            throw new Refused(
                    HttpStatus.NOT_FOUND,
                    (said.isEmpty() ? "The address names no revision" : "There is no revision '" + said + "'")
                            + "; of this build there " + (entry.latest() == 1 ? "is 1" : "are 1 to " + entry.latest()),
                    "Look in its history for the one you want.",
                    new Frame.Place("To the history", Workbench.base(entry.id()) + "/history"));
        }
        return found;
    }

    private void undo(Context request) {
        BuildEntry entry = bench.entry(request);
        after(
                request,
                entry,
                bench.store().undo(entry.id(), Workbench.basedOn(request), Workbench.key(request)),
                "Undone; what was taken back stays in this history.");
    }

    private void bringBack(Context request) {
        BuildEntry entry = bench.entry(request);
        int number = Workbench.number(Workbench.field(request, "number"));
        after(
                request,
                entry,
                bench.store().bringBack(entry.id(), number, Workbench.basedOn(request), Workbench.key(request)),
                "Revision " + number + " stands again; what came after it stays in this history.");
    }

    private static void after(Context request, BuildEntry entry, SaveResult result, String done) {
        Workbench.goOn(
                request,
                Workbench.base(entry.id()) + "/history",
                result instanceof SaveResult.Outdated
                        ? "Not done: the build has changed meanwhile, see the newest revision here, then choose again."
                        : done);
    }

    private void rename(Context request) {
        BuildEntry entry = bench.entry(request);
        bench.store().rename(entry.id(), Workbench.field(request, "name"));
        Workbench.goOn(request, Workbench.base(entry.id()) + "/history", "It has another name in the list of builds.");
    }

    private void away(Context request) {
        BuildEntry entry = bench.entry(request);
        // Sent twice, it asks for the same once more: what is wanted stands in the form, not in what the build happens
        // to be.
        switch (Workbench.field(request, "wanted")) {
            case "bench" -> {
                bench.store().unarchive(entry.id());
                Workbench.goOn(request, LIST, entry.name() + " is on the bench again.");
            }
            case "away" -> {
                if (entry.archived().isEmpty()) { // put away again it would seem put away later than it was
                    bench.store().archive(entry.id());
                }
                Workbench.goOn(request, LIST, entry.name() + " is put away, with all its revisions.");
            }
            default ->
                throw new Refused(
                        HttpStatus.BAD_REQUEST,
                        "The form does not say whether the build is to be put away or taken out; nothing was changed",
                        "Open its history again and press the button there.");
        }
    }

    // ---- all of it

    /** Written whole before the first byte goes out: half an archive would look like one. */
    private void everything(Context request) {
        try {
            Path whole = Files.createTempFile("longthrow", ".zip");
            ExportReport report;
            try (OutputStream out = Files.newOutputStream(whole)) {
                report = bench.store().exportAll(out);
            } catch (IOException | RuntimeException failed) {
                Files.deleteIfExists(whole);
                throw failed;
            }
            if (!report.leftOut().isEmpty()) {
                Workbench.sayLater(
                        request,
                        "The file of all builds is NOT WHOLE. Left out, for it could not be read: "
                                + String.join("; ", report.leftOut()) + ".");
            }
            download(request, report.leftOut().isEmpty() ? "longthrow-builds.zip" : "longthrow-builds-NOT-WHOLE.zip");
            request.contentType("application/zip")
                    .result(Files.newInputStream(whole, StandardOpenOption.READ, StandardOpenOption.DELETE_ON_CLOSE));
        } catch (IOException failed) {
            throw new Refused(
                    HttpStatus.INSUFFICIENT_STORAGE,
                    "The file of all builds could not be written to the folder for passing files",
                    "Look whether the disk is full.");
        }
    }

    private void takeEverything(Context request) {
        UploadedFile file = upload(request, "file of all builds");
        if (!isZip(file)) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "'" + file.filename() + "' is no file of all builds, which is a zip; nothing was changed",
                    "Go back and choose the file that 'Save all builds as one file' gave. A single build file is taken under 'From a file'.");
        }
        ImportReport report;
        try (InputStream in = file.content()) {
            report = bench.store().importAll(in);
        } catch (IOException failed) {
            throw new Refused(
                    HttpStatus.BAD_REQUEST, "The file did not come whole; nothing was changed", "Send it again.");
        }
        String builds = report.builds().stream()
                .map(b -> b.name() + ": "
                        + switch (b.outcome()) {
                            case NEW -> "new here";
                            case SAME -> "the same as here";
                            case FURTHER -> "went on to revision " + b.latest();
                            case DIVERGED ->
                                "had gone on separately; the other's newest text stands as revision " + b.latest()
                                        + ", compare it with revision " + b.latestBefore();
                        })
                .collect(Collectors.joining("; "));
        Workbench.goOn(
                request,
                LIST,
                "Brought back. " + (builds.isEmpty() ? "No build was in it" : builds) + ". Catalogues new here: "
                        + report.catalogues() + "."
                        + (report.leftOut().isEmpty()
                                ? ""
                                : " The file is NOT WHOLE. It was made without what could not be read where it comes from: "
                                        + String.join("; ", report.leftOut()) + "."));
    }
}
