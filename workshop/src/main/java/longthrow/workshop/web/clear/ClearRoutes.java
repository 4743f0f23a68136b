package longthrow.workshop.web.clear;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.MockUpEntry;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.build.MockedUp;
import longthrow.core.clear.ReliefCut;
import longthrow.core.term.MovingPair;
import longthrow.workshop.draw.ReliefSheet;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Changes.Outcome;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of clear. */
public final class ClearRoutes implements Routes {
    private static final int TURNS = 720;

    /** How the place of an entry of the mock-up begins. */
    /** Characters under one word of a form; layout, and less than a build file holds in one text. */
    private static final int LONGEST = 2000;

    private static final Pattern ENTRY = Pattern.compile("^mocked_up\\[\\d+](\\.|: )?");

    private final Workbench bench;
    private final Changes changes;
    private final Clearances clearances;

    public ClearRoutes(Workbench bench, Clearances clearances) {
        this.bench = bench;
        this.changes = new Changes(bench);
        this.clearances = clearances;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/clear", this::page);
        routes.get("/b/{id}/clear/answer", this::answer);
        routes.get("/b/{id}/clear/relief/{pair}.svg", this::relief);
        routes.get("/b/{id}/clear/mocked/{pair}", this::mockUp);
        routes.post("/b/{id}/clear/mocked/{pair}", this::keepMockUp);
        routes.post("/b/{id}/clear/mocked/{pair}/out", this::takeOut);
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        String text = open.revision().text();
        boolean now = request.queryParam("now") != null || request.queryParam("pair") != null;
        Optional<Clearances.Seen> seen = now ? Optional.of(clearances.of(text)) : clearances.ifKnown(text);
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "clear",
                        new ClearPage(
                                bench.frame(request, open, "Clear", Question.CLEAR),
                                view(request),
                                seen.map(s -> laidOut(request, open, s))));
    }

    /** The part of the page that takes a while. */
    private void answer(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        Clearances.Seen seen = clearances.of(open.revision().text());
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view().show(request, "clearanswer", Map.of("answer", laidOut(request, open, seen)));
    }

    /** What comes off a part, to print at full size. */
    private void relief(Context request) {
        Workbench.Open open = bench.open(request);
        String key = request.pathParam("pair");
        ReliefCut cut = clearances.of(open.revision().text()).answer().clearances().stream()
                .filter(pair -> pair.key().equals(key))
                .findFirst()
                .flatMap(pair -> ReliefCut.of(open.build(), pair))
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND,
                        "Nothing is cut to an outline for this pair",
                        "Open Clear: each pair of which something has to come off says so."));
        request.contentType("image/svg+xml")
                .header("Content-Disposition", "attachment; filename=\"" + cut.key() + ".svg\"")
                .result(ReliefSheet.of(cut, "relief"));
    }

    // ---- what was mocked up

    private static MovingPair pair(Context request) {
        return MovingPair.at(request.pathParam("pair"))
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND, "There is no pair of that name", "Open Clear and choose one there."));
    }

    private void mockUp(Context request) {
        Workbench.Open open = bench.open(request);
        MovingPair pair = pair(request);
        show(
                request,
                open,
                pair,
                MockUpPage.Form.blank(
                        pair,
                        open.revision().number(),
                        open.build(),
                        open.measure().orElseThrow()),
                List.of());
    }

    private void show(
            Context request, Workbench.Open open, MovingPair pair, MockUpPage.Form form, List<String> faults) {
        Clearance told = clearances.of(open.revision().text()).answer().clearances().stream()
                .filter(c -> c.key().equals(pair.key()))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND,
                        "This engine has no such pair as it stands",
                        "Open Clear and choose one there."));
        bench.view()
                .show(
                        request,
                        "mockup",
                        MockUpPage.of(
                                bench.frame(request, open, "Mock-up: " + pair.label(), Question.CLEAR),
                                pair,
                                told,
                                open.build(),
                                form,
                                faults));
    }

    private void keepMockUp(Context request) {
        Workbench.Open open = bench.open(request);
        Build build = open.build();
        MovingPair pair = pair(request);
        String found = Workbench.field(request, "found");
        if (!List.of("free", "touches", "rows").contains(found)
                && Workbench.field(request, "gap").isEmpty()) {
            refuse(
                    request,
                    open,
                    pair,
                    List.of("No gap is written; nothing was kept. Write what was read, or say what was found."));
            return;
        }
        List<String> tooLong = request.formParamMap().entrySet().stream()
                .filter(field -> field.getValue().stream().anyMatch(typed -> typed.length() > LONGEST))
                .map(field -> "What is written under " + field.getKey() + " is longer than " + LONGEST
                        + " characters; nothing was kept. Say it in fewer.")
                .toList();
        if (!tooLong.isEmpty()) {
            refuse(request, open, pair, tooLong);
            return;
        }
        MockUpEntry entry = MockUpPage.typed(pair, request, build);
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "mock-up: " + pair.label(),
                text -> BuildFile.addMockUp(text, entry),
                // behind whatever came in between, but of another mock-up of the same pair its owner is told first
                (begun, latest) -> mockedUp(begun, pair).equals(mockedUp(latest, pair)));
        String page = open.base() + "/clear?now=1#" + pair.key();
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(request, page, "Kept: mock-up of " + pair.label() + ". Undo is in the history.");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            refuse(
                    request,
                    open,
                    pair,
                    faulty.faults().stream().map(ClearRoutes::said).toList());
        } else {
            changes.showOutdated(request, open, "mock-up: " + pair.label(), page, (Outcome.Outdated) outcome);
        }
    }

    /** What was read of a pair, as far as its text can be read. */
    private Optional<List<MockedUp>> mockedUp(String text, MovingPair pair) {
        return bench.desk()
                .read(text)
                .build()
                .map(build ->
                        build.mockedUp().stream().filter(m -> m.pair() == pair).toList());
    }

    /** The number an entry was to have is of no use to somebody who fills a form. */
    private static String said(String fault) {
        return PageWords.said(ENTRY.matcher(fault).replaceFirst(""));
    }

    private void refuse(Context request, Workbench.Open open, MovingPair pair, List<String> faults) {
        request.status(HttpStatus.UNPROCESSABLE_CONTENT);
        show(request, open, pair, MockUpPage.Form.sent(pair, request, open.build()), faults);
    }

    private void takeOut(Context request) {
        Workbench.Open open = bench.begin(request);
        MovingPair pair = pair(request);
        int index = Workbench.number(Workbench.field(request, "index"));
        String was = Workbench.field(request, "was");
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "mock-up taken out: " + pair.label(),
                text -> BuildFile.withoutMockUp(text, index, was),
                (begun, latest) -> false);
        String page = open.base() + "/clear?now=1#" + pair.key();
        if (outcome instanceof Outcome.Kept || outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "Taken out: a mock-up of " + pair.label() + ". Undo is in the history.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            throw new Refused(
                    HttpStatus.CONFLICT, String.join(" ", faulty.faults()), "Look at the page of this pair again.");
        } else {
            changes.showOutdated(request, open, "mock-up taken out: " + pair.label(), page, (Outcome.Outdated) outcome);
        }
    }

    private static ClearAnswer laidOut(Context request, Workbench.Open open, Clearances.Seen seen) {
        return ClearAnswer.of(open.measure().orElseThrow(), seen, view(request), open.base());
    }

    private static ClearPage.View view(Context request) {
        String pair = Optional.ofNullable(request.queryParam("pair")).orElse("");
        String angle = Optional.ofNullable(request.queryParam("angle")).orElse("");
        int degrees = angle.matches("-?\\d{1,5}") ? Math.floorMod(Integer.parseInt(angle), TURNS) : 0;
        return new ClearPage.View(degrees, pair);
    }
}
