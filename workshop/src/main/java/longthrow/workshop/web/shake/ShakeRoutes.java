package longthrow.workshop.web.shake;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Units;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of shake. */
public final class ShakeRoutes implements Routes {
    private static final int LONGEST_SAID = 20;

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
        ShakePage.View view = view(request);
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
                .show(
                        request,
                        "shakeanswer",
                        Map.of("answer", laidOut(open, active, own, ShakePage.View.OF_THE_BUILD)));
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

    private ShakeAnswer laidOut(Workbench.Open open, List<CatalogueEntry> active, Answer own, ShakePage.View view) {
        Answer shown = view.speed().isPresent()
                ? loaded.shakeAt(open.revision().text(), active, view.speed().getAsDouble())
                : own;
        boolean isWanted =
                open.measure().flatMap(m -> m.value(Term.WANTED_SPEED)).isPresent();
        return ShakeAnswer.of(own, shown, view, isWanted, open.base());
    }

    /** Any speed that may be wanted of an engine may be looked at. */
    private static ShakePage.View view(Context request) {
        String asked =
                Optional.ofNullable(request.queryParam("speed")).orElse("").strip();
        if (asked.isEmpty()) {
            return ShakePage.View.OF_THE_BUILD;
        }
        Believable range = Term.WANTED_SPEED.believable();
        Parsed parsed = QuantityParser.parse(BareNumber.with(asked, Units.RPM.symbol()), Dimension.ROTATIONAL_SPEED);
        if (parsed instanceof Parsed.Understood understood
                && range.holds(understood.stated().value().si())) {
            return new ShakePage.View(
                    OptionalDouble.of(understood.stated().value().si()), "");
        }
        String said = asked.length() > LONGEST_SAID ? asked.substring(0, LONGEST_SAID) + "…" : asked;
        return new ShakePage.View(
                OptionalDouble.empty(),
                String.format(
                        Locale.ROOT,
                        "Crank speed: “%s” was asked for; it must be a speed from %.0f to %.0f rpm, such as 3000 rpm or 50 rev/s. Shown is the speed of the "
                                + "build.",
                        said,
                        Units.RPM.fromSi(range.least()),
                        Units.RPM.fromSi(range.most())));
    }
}
