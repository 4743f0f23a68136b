package longthrow.workshop.web.outline;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.TracedOutline;
import longthrow.core.clear.FewNumbers;
import longthrow.core.clear.OutlineChecks;
import longthrow.core.clear.Tracing;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.OutlineText;
import longthrow.core.clearance.Point;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Term;
import longthrow.workshop.draw.OutlineDrawing;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Changes.Outcome;
import longthrow.workshop.web.Lately;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of traced outlines. */
public final class OutlineRoutes implements Routes {
    /** Largest file with an outline in it [bytes]: a path of a thousand edges is a tenth of it. */
    private static final int LARGEST_FILE = 512 << 10;

    private static final int MOST_REMEMBERED = 32;
    private static final double CHORDS = 20e-6;

    private final Workbench bench;
    private final Changes changes;
    private final Lately<Shape, ByReadings> byReadings = new Lately<>(MOST_REMEMBERED, OutlineRoutes::look);

    /** A part by its readings. */
    private record Shape(String text, OutlinedPart part) {}

    /**
     * What its readings say of it.
     * @param drawn as it is drawn from them; none where they are too few
     * @param known empty where no engine comes near all of them
     */
    private record ByReadings(List<Outline> drawn, Build build, Optional<Known> known) {
        ByReadings {
            drawn = List.copyOf(drawn);
        }
    }

    public OutlineRoutes(Workbench bench) {
        this.bench = bench;
        this.changes = new Changes(bench);
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/outlines", this::list);
        routes.get("/b/{id}/outlines/{part}", this::page);
        routes.post("/b/{id}/outlines/{part}", this::keep);
        routes.post("/b/{id}/outlines/{part}/preview", this::preview);
    }

    private static ByReadings look(Shape shape) {
        Build build = BuildFile.read(shape.text()).build().orElseThrow();
        Optional<Known> known;
        try {
            known = Optional.of(new Known(Appraisal.sound(build)));
        } catch (NotConvergedException nothingNear) {
            known = Optional.empty(); // said of the build, wherever it is looked at
        }
        return new ByReadings(FewNumbers.of(build, shape.part()), build, known);
    }

    private static OutlinedPart part(Context request) {
        return OutlinedPart.at(request.pathParam("part"))
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND,
                        "No outline is taken of such a part",
                        "Choose one of those listed under Outlines."));
    }

    private static String instead(OutlinedPart part) {
        return part.instead().stream().map(Term::label).collect(Collectors.joining("; "));
    }

    private void list(Context request) {
        Workbench.Open open = bench.open(request);
        Build build = open.build();
        List<OutlinePage.Row> rows = Arrays.stream(OutlinedPart.values())
                .map(part -> new OutlinePage.Row(
                        part.key(),
                        part.label(),
                        build.outline(part).map(o -> "traced, " + points(o)).orElse("by its readings"),
                        instead(part)))
                .toList();
        bench.view()
                .show(
                        request,
                        "outlines",
                        new OutlinePage.Listed(bench.frame(request, open, "Outlines", Question.CLEAR), rows));
    }

    private static String points(TracedOutline traced) {
        return traced.form() == TracedOutline.Form.POINTS ? traced.lines().size() + " points" : "a path";
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        Typed typed = open.build().outline(part(request)).map(Typed::of).orElse(Typed.NOTHING);
        show(request, open, typed, List.of(), "");
    }

    private void show(Context request, Workbench.Open open, Typed typed, List<String> faults, String said) {
        OutlinedPart part = part(request);
        bench.view()
                .show(
                        request,
                        "outline",
                        new OutlinePage(
                                bench.frame(request, open, "Outline: " + part.label(), Question.CLEAR),
                                part,
                                open.revision().number(),
                                UUID.randomUUID().toString(),
                                BareNumber.length(open.build().units()),
                                OutlineDrawing.guide(part, "guide"),
                                instead(part),
                                typed,
                                open.build().outline(part).isPresent(),
                                faults,
                                said,
                                seen(open.revision().text(), part, typed)));
    }

    private OutlinePage.Seen seen(String text, OutlinedPart part, Typed typed) {
        ByReadings known = byReadings.of(new Shape(text, part));
        List<Outline> readings = known.drawn();
        if (typed.text().isBlank()) {
            return new OutlinePage.Seen(
                    readings.isEmpty() ? "" : OutlineDrawing.of(part, Optional.empty(), readings, "seen"),
                    List.of(
                            readings.isEmpty()
                                    ? "Nothing is typed yet, and of its readings too few are there to draw it."
                                    : "Nothing is typed yet. Broken line: the part by its readings."),
                    List.of());
        }
        Typed.Made made = typed.make(part, BareNumber.length(known.build().units()));
        if (made.outline().isEmpty()) {
            return new OutlinePage.Seen("", List.of(), made.faults());
        }
        TracedOutline traced = made.outline().get();
        Outline outline = ((OutlineText.Taken) Tracing.read(traced)).outline();
        return new OutlinePage.Seen(
                OutlineDrawing.of(part, Optional.of(outline), readings, "seen"),
                facts(traced, outline, !readings.isEmpty()),
                known.known().stream()
                        .flatMap(k -> OutlineChecks.of(k, traced, part.label()).stream())
                        .map(OutlineRoutes::said)
                        .toList());
    }

    private static String said(Finding finding) {
        return PageWords.said(finding.message().substring(0, 1).toUpperCase(Locale.ROOT)
                + finding.message().substring(1) + ". " + finding.mend() + ".");
    }

    private static List<String> facts(TracedOutline traced, Outline outline, boolean hasReadings) {
        List<String> facts = new ArrayList<>();
        facts.add(
                hasReadings
                        ? "Full line: as typed. Broken line: the part by its readings, larger than it can be where they do not tell."
                        : "Full line: as typed. Of its readings too few are there to draw it beside.");
        facts.add(String.format(
                Locale.ROOT,
                "From %s it reaches %.1f mm up, %.1f mm down, %.1f mm to the left and %.1f mm to the right, %.1f mm at the farthest.",
                traced.part().datum(),
                1e3 * outline.reach(0),
                1e3 * outline.reach(Math.PI),
                1e3 * outline.reach(-Math.PI / 2),
                1e3 * outline.reach(Math.PI / 2),
                1e3 * outline.farthest()));
        if (traced.form() == TracedOutline.Form.POINTS) {
            List<Point> loop = outline.drawn(CHORDS).get(0);
            Point first = loop.get(0);
            Point last = loop.get(loop.size() - 1);
            facts.add(String.format(
                    Locale.ROOT,
                    "%d points; the last is joined to the first by a line of %.1f mm. Look whether that is meant.",
                    loop.size(),
                    1e3 * Math.hypot(last.x() - first.x(), last.y() - first.y())));
        }
        facts.add(
                traced.doubt() == null
                        ? "Taken as within 0.5 mm all round, since no ± is given (" + TracedOutline.USUAL_DOUBT_SOURCE
                                + ")."
                        : traced.isTooClose()
                                ? "Taken as within 0.1 mm all round: less is not believed ("
                                        + TracedOutline.LEAST_DOUBT_SOURCE + ")."
                                : "Within " + traced.doubt().written() + " all round.");
        return facts;
    }

    private static Typed sent(Context request) {
        return new Typed(
                Workbench.field(request, "text"),
                Workbench.field(request, "unit"),
                Workbench.field(request, "datum_x"),
                Workbench.field(request, "datum_y"),
                !Workbench.field(request, "mirrored").isEmpty(),
                Workbench.field(request, "from"),
                Workbench.field(request, "to"),
                Workbench.field(request, "doubt"),
                Workbench.field(request, "note"));
    }

    /** The file of a form, where one was chosen. */
    private static Optional<DrawnFile> file(Context request) {
        Optional<UploadedFile> file = request.isMultipartFormData()
                ? Optional.ofNullable(request.uploadedFile("file")).filter(f -> f.size() > 0)
                : Optional.empty();
        return file.map(f -> {
            if (f.size() > LARGEST_FILE) {
                return new DrawnFile(
                        "",
                        Optional.empty(),
                        String.format(
                                Locale.ROOT,
                                "'%s' has %,d bytes, and a file with an outline at most %,d. Save the outline alone, as points or as one path.",
                                f.filename(),
                                f.size(),
                                LARGEST_FILE));
            }
            try (InputStream in = f.content()) {
                return DrawnFile.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            } catch (IOException failed) {
                return new DrawnFile("", Optional.empty(), "The file did not come whole. Send it again.");
            }
        });
    }

    /** What the boxes hold, redrawn; nothing is kept. */
    private void preview(Context request) {
        String text = bench.store().latest(bench.entry(request).id()).text();
        bench.view().show(request, "outlineseen", Map.of("seen", seen(text, part(request), sent(request))));
    }

    private void keep(Context request) {
        OutlinedPart part = part(request);
        Workbench.Open open = bench.begin(request);
        Typed typed = sent(request);
        Optional<DrawnFile> file = file(request);
        if (file.isPresent()) {
            DrawnFile drawn = file.get();
            boolean isRead = drawn.trouble().isEmpty();
            request.status(isRead ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
            show(
                    request,
                    bench.open(request),
                    isRead ? typed.with(drawn.text(), drawn.unit()) : typed,
                    isRead ? List.of() : List.of(drawn.trouble()),
                    isRead
                            ? "The file is read and nothing is kept yet. Look at the drawing, then keep it."
                                    + drawn.unit()
                                            .map(u -> " By the drawing's own width one of its units is " + u + ".")
                                            .orElse("")
                            : "");
            return;
        }
        boolean isOut = !Workbench.field(request, "out").isEmpty();
        if (!isOut && !Workbench.field(request, "look").isEmpty()) {
            show(request, bench.open(request), typed, List.of(), "Nothing is kept yet.");
            return;
        }
        Typed.Made made = isOut
                ? new Typed.Made(Optional.empty(), List.of())
                : typed.make(part, BareNumber.length(open.build().units()));
        if (!made.faults().isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            show(request, bench.open(request), typed, made.faults(), "");
            return;
        }
        String what = "outline of the " + part.label() + (isOut ? " taken out" : "");
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                what,
                text -> edited(text, part, made.outline()),
                (begun, latest) -> false);
        String page = open.base() + "/outlines/" + part.key();
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(
                    request,
                    open.base() + "/outlines#" + part.key(),
                    isOut ? "Taken out: " + what + ". Undo is in the history." : "Kept: " + what + ".");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            show(request, bench.open(request), typed, faulty.faults(), "");
        } else {
            changes.showOutdated(request, open, what, page, (Outcome.Outdated) outcome);
        }
    }

    private static Edited edited(String text, OutlinedPart part, Optional<TracedOutline> wanted) {
        try {
            return BuildFile.outline(text, part, wanted);
        } catch (IllegalArgumentException cannotStandInAFile) {
            return new Edited(
                    Optional.empty(),
                    List.of(new Fault(
                            0,
                            0,
                            "",
                            "",
                            "The note holds signs that cannot be kept, or a text is far too long",
                            "",
                            "write it in plain words")));
        }
    }
}
