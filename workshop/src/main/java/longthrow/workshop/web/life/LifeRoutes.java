package longthrow.workshop.web.life;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.GasTraceText;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.GasReading;
import longthrow.core.build.Given;
import longthrow.core.build.HoursAt;
import longthrow.core.life.Life;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Changes.Outcome;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of life. */
public final class LifeRoutes implements Routes {
    /** Rows there are for a duty, at least; layout. */
    private static final int LEAST_ROWS = 3;

    private static final List<Unit> UNITS = List.of(Units.KILOPASCAL, Units.BAR, Units.PSI, Units.MEGAPASCAL);

    private final Workbench bench;
    private final Changes changes;
    private final Catalogues catalogues;
    private final Loaded loaded;

    public LifeRoutes(Workbench bench, Catalogues catalogues, Loaded loaded) {
        this.bench = bench;
        this.changes = new Changes(bench);
        this.catalogues = catalogues;
        this.loaded = loaded;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/life", this::page);
        routes.get("/b/{id}/life/answer", this::answer);
        routes.post("/b/{id}/life/looked", this::looked);
        routes.post("/b/{id}/life/gas", this::gas);
        routes.post("/b/{id}/life/duty", this::duty);
    }

    private void page(Context request) {
        page(request, Typed.NOTHING, List.of());
    }

    /**
     * What was sent and not kept.
     * @param duty rows of it; empty where none was sent
     */
    private record Typed(Telling.Sent trace, List<Telling.Row> duty) {
        static final Typed NOTHING = new Typed(Telling.Sent.NOTHING, List.of());
    }

    private void page(Context request, Typed sent, List<String> faults) {
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
                                known.map(answer -> LifeAnswer.of(answer, open.base())),
                                telling(open, sent, faults)));
    }

    private Telling telling(Workbench.Open open, Typed sent, List<String> faults) {
        Build build = open.build();
        List<Telling.Trace> traces = new ArrayList<>();
        for (GasReading trace : build.gas()) {
            traces.add(new Telling.Trace(
                    traces.size() + 1,
                    trace.speed().written() + ", " + trace.pressure().key() + ", "
                            + trace.cycles().meaning() + ", within "
                            + trace.within().written() + ", " + trace.rows().size() + " rows"));
        }
        return new Telling(
                open.base(),
                bench.token(),
                open.revision().number(),
                UUID.randomUUID().toString(),
                Life.LOOKED_OVER.stream().map(p -> looked(build, p)).toList(),
                traces,
                new Telling.Duty(
                        HoursAt.said(build.hoursAt(), hoursWanted(build)),
                        sent.duty().isEmpty() ? rows(build.hoursAt()) : sent.duty()),
                sent.trace(),
                faults);
    }

    /** The hours wanted, where they are said once. */
    private static Optional<Quantity> hoursWanted(Build build) {
        List<Given> said = build.of(Term.LIFE_WANTED);
        return said.size() == 1 ? said.get(0).figure() : Optional.empty();
    }

    private static List<Telling.Row> rows(List<HoursAt> steps) {
        List<Telling.Row> rows = new ArrayList<>();
        steps.forEach(s -> rows.add(
                new Telling.Row(rows.size() + 1, s.speed().written(), s.share().written())));
        int most = Math.min(HoursAt.MOST_STEPS, Math.max(LEAST_ROWS, steps.size() + 1));
        while (rows.size() < most) {
            rows.add(new Telling.Row(rows.size() + 1, "", ""));
        }
        return rows;
    }

    private static Telling.Looked looked(Build build, Part part) {
        return new Telling.Looked(
                part.key(),
                part.label(),
                build.foundSound(part).map(Damage::where).orElse(""),
                build.damageSeen().stream()
                        .filter(d -> d.part() == part)
                        .map(d -> d.kind().label())
                        .collect(Collectors.joining(", ")));
    }

    /** The part of the page that takes a while. */
    private void answer(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        Answer answer = loaded.life(open.revision().text(), catalogues.active());
        if (bench.sentOn(request, open)) {
            return;
        }
        bench.view()
                .show(
                        request,
                        "lifeanswer",
                        Map.of(
                                "answer",
                                LifeAnswer.of(answer, open.base()),
                                "traces",
                                open.build().gas().size()));
    }

    // ---- what is told

    private void looked(Context request) {
        Map<Part, String> how = new LinkedHashMap<>();
        Life.LOOKED_OVER.forEach(p ->
                how.put(p, Workbench.field(request, "how." + p.key()).strip()));
        keep(request, "what was looked over", build -> BuildFile.seen(withLooked(build, how)), "seen", Typed.NOTHING);
    }

    /** Damage that was seen stays whatever is said of the rest. */
    private static List<Damage> withLooked(Build build, Map<Part, String> how) {
        List<Damage> seen = new ArrayList<>(build.damage().stream()
                .filter(d -> !d.isNone() || !how.containsKey(d.part()))
                .toList());
        how.forEach((part, words) -> {
            if (!words.isEmpty()) {
                seen.add(new Damage(part, Damage.Kind.NONE, words));
            }
        });
        return seen;
    }

    private void gas(Context request) {
        String out = Workbench.field(request, "out");
        if (!out.isEmpty()) {
            int number = Workbench.number(out);
            keep(
                    request,
                    "gas trace taken out",
                    build -> BuildFile.gasTraces(without(build.gas(), number)),
                    "gas_traces",
                    Typed.NOTHING);
            return;
        }
        Telling.Sent sent = new Telling.Sent(
                Workbench.field(request, "speed"),
                Workbench.field(request, "pressure"),
                Workbench.field(request, "air"),
                Workbench.field(request, "cycles"),
                Workbench.field(request, "within"),
                Workbench.field(request, "unit"),
                Workbench.field(request, "note"),
                Workbench.field(request, "rows"));
        List<String> faults = new ArrayList<>();
        Optional<GasReading> reading = reading(sent, faults);
        if (reading.isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            page(request, new Typed(sent, List.of()), faults);
            return;
        }
        keep(
                request,
                "gas trace at " + reading.get().speed().written(),
                build -> BuildFile.gasTraces(with(build.gas(), reading.get())),
                "gas_traces",
                new Typed(sent, List.of()));
    }

    /** All steps together, for only together they are a duty; none, and the button that takes it away, leave none. */
    private void duty(Context request) {
        List<Telling.Row> rows = new ArrayList<>();
        List<HoursAt> steps = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        boolean isTakenAway = !Workbench.field(request, "out").isEmpty();
        for (int number = 1; number <= HoursAt.MOST_STEPS && !isTakenAway; number++) {
            String speed = Workbench.field(request, "speed." + number);
            String share = Workbench.field(request, "share." + number);
            rows.add(new Telling.Row(number, speed, share));
            if (!speed.isBlank() || !share.isBlank()) {
                Optional<Quantity> at =
                        quantity("speed of step " + number, speed, Units.RPM, Dimension.ROTATIONAL_SPEED, faults);
                Optional<Quantity> part =
                        quantity("share of step " + number, share, Units.PERCENT, Dimension.RATIO, faults);
                at.ifPresent(a -> part.ifPresent(p -> steps.add(new HoursAt(a, p))));
            }
        }
        while (rows.size() > LEAST_ROWS
                && rows.get(rows.size() - 1).speed().isBlank()
                && rows.get(rows.size() - 1).share().isBlank()) {
            rows.remove(rows.size() - 1);
        }
        if (faults.isEmpty()) {
            HoursAt.trouble(steps)
                    .ifPresent(t ->
                            faults.add(t.found() + " " + t.why() + " (allowed: " + t.allowed() + "); " + t.mend()));
        }
        Typed sent = new Typed(Telling.Sent.NOTHING, rows);
        if (!faults.isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            page(request, sent, faults);
            return;
        }
        keep(
                request,
                steps.isEmpty()
                        ? "stated duty taken away"
                        : "duty of " + String.join(", ", HoursAt.said(steps, Optional.empty())),
                build -> BuildFile.hoursAt(steps),
                "hours_at",
                sent);
    }

    private static List<GasReading> without(List<GasReading> traces, int number) {
        List<GasReading> left = new ArrayList<>(traces);
        if (number >= 1 && number <= left.size()) {
            left.remove(number - 1);
        }
        return left;
    }

    private static List<GasReading> with(List<GasReading> traces, GasReading one) {
        List<GasReading> all = new ArrayList<>(traces);
        all.add(one);
        return all;
    }

    private static Optional<GasReading> reading(Telling.Sent sent, List<String> faults) {
        Optional<Quantity> speed = quantity("speed", sent.speed(), Units.RPM, Dimension.ROTATIONAL_SPEED, faults);
        Optional<Quantity> within = quantity("within", sent.within(), Units.PERCENT, Dimension.RATIO, faults);
        Optional<GasReading.Reference> pressure = Arrays.stream(GasReading.Reference.values())
                .filter(r -> r.key().equals(sent.pressure()))
                .findFirst();
        Optional<GasReading.Cycles> cycles = Arrays.stream(GasReading.Cycles.values())
                .filter(c -> c.key().equals(sent.cycles()))
                .findFirst();
        Optional<Unit> unit =
                UNITS.stream().filter(u -> u.symbol().equals(sent.unit())).findFirst();
        Optional<Quantity> air = pressure.filter(p -> p == GasReading.Reference.GAUGE)
                        .isPresent()
                ? quantity("pressure of the air", sent.air(), unit.orElse(Units.KILOPASCAL), Dimension.PRESSURE, faults)
                : Optional.empty();
        if (pressure.isEmpty() || cycles.isEmpty() || unit.isEmpty()) {
            faults.add("choose unit, what the pressures are above, and which cycles they are of");
            return Optional.empty();
        }
        GasTraceText.Rows rows = GasTraceText.read(sent.rows(), unit.get());
        faults.addAll(rows.faults());
        return faults.isEmpty()
                ? Optional.of(new GasReading(
                        speed.orElseThrow(),
                        pressure.get(),
                        air.orElse(null),
                        cycles.get(),
                        within.orElseThrow(),
                        sent.note().strip(),
                        rows.rows()))
                : Optional.empty();
    }

    private static Optional<Quantity> quantity(
            String name, String typed, Unit bare, Dimension dimension, List<String> faults) {
        Parsed parsed = QuantityParser.parse(BareNumber.with(typed.strip(), bare.symbol()), dimension);
        if (parsed instanceof Parsed.Understood understood
                && understood.stated().expandedDoubt().isEmpty()) {
            return Optional.of(understood.stated().value());
        }
        String found = typed.isBlank() ? "is empty" : "'" + typed.strip() + "' is no " + dimension.plainName();
        faults.add(name + " " + found + "; write a figure such as "
                + (dimension == Dimension.RATIO ? "3 %" : dimension == Dimension.PRESSURE ? "99.6 kPa" : "3000 rpm"));
        return Optional.empty();
    }

    /** What a section of the build file becomes. */
    @FunctionalInterface
    private interface Becoming {
        String of(Build build);
    }

    private void keep(Context request, String what, Becoming section, String key, Typed sent) {
        Workbench.Open open = bench.open(request);
        open.build();
        String page = open.base() + "/life";
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                what,
                text -> edited(text, section, key),
                (begun, latest) -> false);
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(request, page, "Kept: " + what + ".");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            page(request, sent, faulty.faults());
        } else {
            changes.showOutdated(request, open, what, page, (Outcome.Outdated) outcome);
        }
    }

    private static Edited edited(String text, Becoming section, String key) {
        Optional<Build> build = BuildFile.read(text).build();
        return BuildFile.edit(text, key, build.map(section::of).orElse("[]"));
    }
}
