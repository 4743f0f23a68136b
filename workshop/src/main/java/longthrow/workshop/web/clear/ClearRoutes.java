package longthrow.workshop.web.clear;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import java.util.Optional;
import longthrow.core.clear.ReliefCut;
import longthrow.workshop.draw.ReliefSheet;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of clear. */
public final class ClearRoutes implements Routes {
    private static final int TURNS = 720;

    private final Workbench bench;
    private final Clearances clearances;

    public ClearRoutes(Workbench bench, Clearances clearances) {
        this.bench = bench;
        this.clearances = clearances;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/clear", this::page);
        routes.get("/b/{id}/clear/answer", this::answer);
        routes.get("/b/{id}/clear/relief/{pair}.svg", this::relief);
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
