package longthrow.workshop.web.power;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import longthrow.core.answer.Answer;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.ChosenSpeed;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Torques;
import longthrow.workshop.web.Workbench;

/** Addresses of power. */
public final class PowerRoutes implements Routes {
    /** A page that asks is answered after so long, and asks again: so it is known that it is still there; our own choice. */
    private static final long PATIENCE_MILLISECONDS = 4_000;

    private static final String CURVE = "power";
    private static final String CHOSEN = "chosen";

    /** A speed of one's own stands without runs: they are over the curve. */
    private static final Dynos.Laid NONE = new Dynos.Laid(List.of(), List.of(), List.of(), List.of());

    private final Workbench bench;
    private final Catalogues catalogues;
    private final Torques torques;
    private final Dynos dynos;

    public PowerRoutes(Workbench bench, Catalogues catalogues, Torques torques, Dynos dynos) {
        this.dynos = dynos;
        this.bench = bench;
        this.catalogues = catalogues;
        this.torques = torques;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/power", this::page);
        routes.get("/b/{id}/power/answer", this::answer);
        routes.get("/b/{id}/power/told", this::told);
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        String text = open.revision().text();
        List<CatalogueEntry> active = catalogues.active();
        ChosenSpeed view = ChosenSpeed.of(request, "Shown is the curve alone.");
        boolean now = request.queryParam("now") != null;
        Optional<Answer> curve =
                now ? torques.of(text, active, OptionalDouble.empty(), isNewest(open)) : torques.ifKnown(text, active);
        Optional<Answer> own = view.speed().isEmpty()
                ? Optional.empty()
                : now
                        ? torques.of(text, active, view.speed(), isNewest(open))
                        : torques.ifKnownAt(text, active, view.speed().getAsDouble());
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "power",
                        new PowerPage(
                                bench.frame(request, open, "Power", Question.POWER),
                                view,
                                own.map(answer -> PowerAnswer.of(answer, NONE, open.base(), CHOSEN)),
                                curve.map(answer -> PowerAnswer.of(answer, laid(open, now), open.base(), CURVE))));
    }

    /** The part of the page that takes a while; not there yet, it is to be asked for again. */
    private void answer(Context request) {
        piece(request, OptionalDouble.empty(), "poweranswer", "powerlater", CURVE);
    }

    /** The part that hangs on the speed. */
    private void told(Context request) {
        ChosenSpeed view = ChosenSpeed.of(request, "");
        piece(request, view.speed(), "powertold", "powertoldlater", CHOSEN);
    }

    private void piece(Context request, OptionalDouble speed, String template, String later, String idPrefix) {
        Workbench.Open open = bench.open(request);
        open.build();
        Optional<Answer> answer = torques.within(
                PATIENCE_MILLISECONDS, open.revision().text(), catalogues.active(), speed, isNewest(open));
        if (bench.sentOn(request, open)) {
            return;
        }
        Map<String, Object> parameters = new HashMap<>();
        if (answer.isPresent()) {
            Dynos.Laid laid = speed.isPresent() ? NONE : laid(open, true);
            parameters.put("answer", PowerAnswer.of(answer.get(), laid, open.base(), idPrefix));
        } else {
            parameters.put("base", open.base());
            if (speed.isPresent()) {
                parameters.put("asked", new ChosenSpeed(speed, "").asked());
            }
        }
        bench.view().show(request, answer.isPresent() ? template : later, parameters);
    }

    /** The sheets kept with the build. */
    private Dynos.Laid laid(Workbench.Open open, boolean now) {
        return dynos.laid(open.entry().id(), now);
    }

    private BooleanSupplier isNewest(Workbench.Open open) {
        return () -> bench.store().latest(open.entry().id()).number()
                == open.revision().number();
    }
}
