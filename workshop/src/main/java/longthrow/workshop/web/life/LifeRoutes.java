package longthrow.workshop.web.life;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of life. */
public final class LifeRoutes implements Routes {
    private final Workbench bench;
    private final Catalogues catalogues;
    private final Loaded loaded;

    public LifeRoutes(Workbench bench, Catalogues catalogues, Loaded loaded) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.loaded = loaded;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/life", this::page);
        routes.get("/b/{id}/life/answer", this::answer);
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        String text = open.revision().text();
        List<CatalogueEntry> active = catalogues.active();
        Optional<Answer> known = request.queryParam("now") != null
                ? Optional.of(loaded.life(text, active))
                : loaded.lifeIfKnown(text, active);
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "life",
                        new LifePage(
                                bench.frame(request, open, "Life", Question.LIFE),
                                known.map(answer -> LifeAnswer.of(answer, open.base()))));
    }

    /** The part of the page that takes a while. */
    private void answer(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        Answer answer = loaded.life(open.revision().text(), catalogues.active());
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view().show(request, "lifeanswer", Map.of("answer", LifeAnswer.of(answer, open.base())));
    }
}
