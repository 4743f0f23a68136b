package longthrow.workshop.web.shake;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.term.Term;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.ChosenSpeed;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of shake. */
public final class ShakeRoutes implements Routes {
    private final Workbench bench;
    private final Catalogues catalogues;
    private final Loaded loaded;

    public ShakeRoutes(Workbench bench, Catalogues catalogues, Loaded loaded) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.loaded = loaded;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/shake", this::page);
        routes.get("/b/{id}/shake/answer", this::answer);
        routes.get("/b/{id}/shake/told", this::told);
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        String text = open.revision().text();
        List<CatalogueEntry> active = catalogues.active();
        ChosenSpeed view = view(request);
        boolean now = request.queryParam("now") != null || request.queryParam("speed") != null;
        Optional<Answer> known = now ? Optional.of(loaded.shake(text, active)) : loaded.shakeIfKnown(text, active);
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "shake",
                        new ShakePage(
                                bench.frame(request, open, "Shake", Question.SHAKE),
                                view,
                                known.map(own -> laidOut(open, active, own, view))));
    }

    /** The part of the page that takes a while. */
    private void answer(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        List<CatalogueEntry> active = catalogues.active();
        Answer own = loaded.shake(open.revision().text(), active);
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(request, "shakeanswer", Map.of("answer", laidOut(open, active, own, ChosenSpeed.OF_THE_BUILD)));
    }

    /** The part that hangs on the speed. */
    private void told(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        List<CatalogueEntry> active = catalogues.active();
        Answer own = loaded.shake(open.revision().text(), active);
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "shaketold",
                        Map.of("told", laidOut(open, active, own, view(request)).told()));
    }

    private ShakeAnswer laidOut(Workbench.Open open, List<CatalogueEntry> active, Answer own, ChosenSpeed view) {
        Answer shown = view.speed().isPresent()
                ? loaded.shakeAt(open.revision().text(), active, view.speed().getAsDouble())
                : own;
        boolean isWanted =
                open.measure().flatMap(m -> m.value(Term.WANTED_SPEED)).isPresent();
        return ShakeAnswer.of(own, shown, view, isWanted, open.base());
    }

    private static ChosenSpeed view(Context request) {
        return ChosenSpeed.of(request, "Shown is the speed of the build.");
    }
}
