package longthrow.workshop.web.fit;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.web.BareNumber;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Changes.Outcome;
import longthrow.workshop.web.EitherComma;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Searches;
import longthrow.workshop.web.Workbench;

/** Addresses of fit. */
public final class FitRoutes implements Routes {
    /** What is aimed at by a field of its own; others stand in the text. */
    private static final List<Term> AIMS = List.of(Term.SQUISH, Term.COMPRESSION_RATIO);

    /** Kinds of part that a stack is made of. */
    private static final List<PartKind> KINDS =
            List.of(PartKind.CRANKSHAFT, PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET, PartKind.HEAD);

    private static final String USUAL =
            FitWish.Preference.USUAL.stream().map(FitWish.Preference::meaning).collect(Collectors.joining(", then "));

    /** Behind the place of a term: fields beside that of its aim. */
    private static final String UNIT = ".unit";

    private static final String LEAST = ".least";
    private static final String MOST = ".most";

    private final Workbench bench;
    private final Changes changes;
    private final Catalogues catalogues;
    private final Searches searches;

    public FitRoutes(Workbench bench, Catalogues catalogues, Searches searches) {
        this.bench = bench;
        this.changes = new Changes(bench);
        this.catalogues = catalogues;
        this.searches = searches;
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}/fit", this::page);
        routes.get("/b/{id}/fit/answer", this::answer);
        routes.get("/b/{id}/fit/section", this::section);
        routes.post("/b/{id}/fit", this::keepWish);
        routes.post("/b/{id}/fit/take", this::take);
        routes.get("/b/{id}/limits", request -> limits(request, List.of()));
        routes.post("/b/{id}/limits", this::keepLimit);
    }

    // ---- the page

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        List<CatalogueEntry> active = catalogues.active();
        String text = open.revision().text();
        open.build();
        boolean now = request.queryParam("now") != null;
        Optional<Answer> answer = now ? Optional.of(searches.of(text, active)) : searches.ifKnown(text, active);
        show(request, open, form(open), answer, List.of(), List.of());
    }

    /** The part of the page that takes a while. */
    private void answer(Context request) {
        Workbench.Open open = bench.open(request);
        open.build();
        bench.view()
                .show(
                        request,
                        "fitanswer",
                        Map.of(
                                "answer",
                                laidOut(
                                        request,
                                        open,
                                        searches.of(open.revision().text(), catalogues.active()))));
    }

    private void show(
            Context request,
            Workbench.Open open,
            FitPage.Form form,
            Optional<Answer> answer,
            List<String> faults,
            List<FitPage.Comma> commas) {
        List<CatalogueEntry> active = catalogues.active();
        bench.view()
                .show(
                        request,
                        "fit",
                        new FitPage(
                                bench.frame(request, open, "Fit", Question.FIT),
                                form,
                                FitPage.Section.of(open.measure(), angle(request)),
                                searched(active),
                                !active.isEmpty(),
                                answer.map(a -> laidOut(request, open, a)),
                                faults,
                                commas));
    }

    private void section(Context request) {
        FitPage.Section section = FitPage.Section.of(bench.open(request).measure(), angle(request));
        bench.view().show(request, "section", Map.of("section", section));
    }

    private static int angle(Context request) {
        return Optional.ofNullable(request.queryParam("angle"))
                .filter(a -> a.matches("-?\\d{1,3}"))
                .map(Integer::parseInt)
                .orElse(0);
    }

    private FitAnswer laidOut(Context request, Workbench.Open open, Answer answer) {
        List<Integer> beside = request.queryParams("with").stream()
                .filter(w -> w.matches("\\d{1,3}"))
                .map(Integer::valueOf)
                .toList();
        return FitAnswer.of(
                answer,
                open.build(),
                beside,
                open.base(),
                open.revision().number(),
                bench.token(),
                UUID.randomUUID().toString());
    }

    private String searched(List<CatalogueEntry> active) {
        if (active.isEmpty()) {
            return "No catalogue is kept yet, so the stack is solved for each of its figures and nothing is searched.";
        }
        Catalogue all = catalogues.together(active).catalogue();
        return "Searched: " + active.stream().map(CatalogueEntry::name).limit(4).collect(Collectors.joining(", "))
                + (active.size() > 4 ? " and " + (active.size() - 4) + " more" : "") + "; "
                + all.parts().size()
                + " parts, " + all.operations().size() + " machine operations.";
    }

    private FitPage.Form form(Workbench.Open open) {
        Build build = open.build();
        FitWish wish = build.fit();
        return new FitPage.Form(
                open.revision().number(),
                UUID.randomUUID().toString(),
                AIMS.stream().map(t -> aim(t, build)).toList(),
                KINDS.stream()
                        .map(k -> new FitPage.Kind(
                                k.key(), k.label(), wish.choose().contains(k)))
                        .toList(),
                String.join(", ", wish.keep()),
                wish.budget().isPresent()
                        ? (BigDecimal.valueOf(wish.budget().getAsLong(), 2).toPlainString() + " " + wish.currency())
                                .strip()
                        : "",
                wish.machining(),
                ranks(wish.order().stream().map(FitWish.Preference::key).toList()),
                USUAL);
    }

    /** As many as there are things that may count. */
    private static List<FitPage.Rank> ranks(List<String> chosen) {
        return IntStream.rangeClosed(1, FitWish.Preference.values().length)
                .mapToObj(number -> new FitPage.Rank(
                        number,
                        Arrays.stream(FitWish.Preference.values())
                                .map(p -> new FitPage.Preference(
                                        p.key(),
                                        p.meaning(),
                                        number <= chosen.size()
                                                && chosen.get(number - 1).equals(p.key())))
                                .toList()))
                .toList();
    }

    private static FitPage.Aim aim(Term term, Build build) {
        Quantity aim = build.aims().get(term);
        Optional<OwnRule> limit = limit(term, build);
        return FitPage.Aim.of(
                term,
                new FitPage.Wanted(
                        aim == null ? "" : aim.written(),
                        "",
                        limit.flatMap(OwnRule::lower).map(Quantity::written).orElse(""),
                        limit.flatMap(OwnRule::upper).map(Quantity::written).orElse("")),
                usualUnit(term, build),
                others(term, build));
    }

    private static String usualUnit(Term term, Build build) {
        BenchUnits units = BenchUnits.of(term.dimension(), 0);
        return (build.units() == UnitSystem.METRIC_FIRST ? units.metric() : units.inchTrade()).symbol();
    }

    /** The limit that the fields of this page hold: the one under its name. */
    private static Optional<OwnRule> limit(Term term, Build build) {
        return build.ownRules().stream()
                .filter(r -> r.term() == term && r.name().equals(limitName(term)))
                .findFirst();
    }

    private static String limitName(Term term) {
        return "my limit of " + term.label();
    }

    /** The owner's other limits on the figure, which the text holds. */
    private static List<String> others(Term term, Build build) {
        return build.ownRules().stream()
                .filter(r -> r.term() == term && !r.name().equals(limitName(term)))
                .map(r -> r.name()
                        + r.lower().map(q -> ", least " + q.written()).orElse("")
                        + r.upper().map(q -> ", most " + q.written()).orElse(""))
                .toList();
    }

    // ---- aims and wishes

    private void keepWish(Context request) {
        Workbench.Open open = bench.begin(request);
        List<EitherComma> asked = asked(request);
        List<String> wrong = new ArrayList<>();
        asked.forEach(c -> wrong.add("'" + c.typed() + "' can be read as " + c.decimal() + " or as " + c.thousands()
                + ": say which it is. Nothing was kept."));
        foreignMoney(request, open).ifPresent(wrong::add);
        if (!wrong.isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            show(request, bench.open(request), sent(request, open.build()), Optional.empty(), wrong, ways(asked));
            return;
        }
        String what = withWish(request, open.revision().text())
                .text()
                .flatMap(text -> BuildFile.read(text).build())
                .map(after -> WishWords.of(open.build(), after))
                .orElse(WishWords.ALL);
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                what,
                text -> withWish(request, text),
                (begun, latest) -> false);
        String page = open.base() + "/fit";
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(request, page, "Kept." + currency(request));
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            show(request, open, sent(request, open.build()), Optional.empty(), faulty.faults(), List.of());
        } else {
            changes.showOutdated(request, open, WishWords.ALL, page, (Outcome.Outdated) outcome);
        }
    }

    /** Figures whose comma has two readings, where the form does not say which is meant. */
    private static List<EitherComma> asked(Context request) {
        return Workbench.field(request, EitherComma.FIELD).isEmpty()
                ? AIMS.stream()
                        .flatMap(term -> Stream.of("", LEAST, MOST)
                                .flatMap(which ->
                                        EitherComma.of(typed(request, term, which), term.dimension()).stream()))
                        .toList()
                : List.of();
    }

    private static List<FitPage.Comma> ways(List<EitherComma> asked) {
        return asked.isEmpty()
                ? List.of()
                : Stream.of(EitherComma.DECIMAL, EitherComma.THOUSANDS)
                        .map(said -> new FitPage.Comma(
                                said, asked.stream().map(c -> c.meant(said)).collect(Collectors.joining(", "))))
                        .toList();
    }

    /** A budget in a currency in which nothing is offered could be held against no price. */
    private Optional<String> foreignMoney(Context request, Workbench.Open open) {
        String budget = Workbench.field(request, "budget");
        if (budget.isEmpty()) {
            return Optional.empty();
        }
        String currency = BuildFile.edit(open.revision().text(), "fit.budget", BuildFile.quoted(budget))
                .text()
                .flatMap(text -> BuildFile.read(text).build())
                .map(b -> b.fit().currency())
                .orElse(""); // what cannot be read is said when it is to be kept
        Catalogue all = catalogues.together(catalogues.active()).catalogue();
        Set<String> known = Stream.concat(
                        all.parts().stream().map(CataloguePart::offer),
                        all.operations().stream().map(Operation::offer))
                .map(Offer::currency)
                .filter(c -> !c.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
        boolean asItStands = currency.equals(open.build().fit().currency());
        return currency.isEmpty() || known.isEmpty() || known.contains(currency) || asItStands
                ? Optional.empty()
                : Optional.of("Budget '" + budget + "': no price of your catalogues is in " + currency
                        + ", and no rate of exchange is known here. They have: " + String.join(", ", known)
                        + ". Nothing was kept; write the budget in one of those.");
    }

    /** What a budget without a currency comes to. */
    private static String currency(Context request) {
        String budget = Workbench.field(request, "budget");
        return budget.isEmpty() || !BareNumber.with(budget, "?").endsWith("?")
                ? ""
                : " The budget names no currency: it is taken as the one that most prices of the catalogues stand in, which is said beside every way. Write it behind the number, such as "
                        + budget + " EUR.";
    }

    private static FitPage.Form sent(Context request, Build build) {
        List<String> kinds = request.formParams("choose");
        return new FitPage.Form(
                Workbench.basedOn(request),
                UUID.randomUUID().toString(),
                AIMS.stream()
                        .map(t -> FitPage.Aim.of(
                                t,
                                new FitPage.Wanted(
                                        Workbench.field(request, t.path()),
                                        Workbench.field(request, t.path() + UNIT),
                                        Workbench.field(request, t.path() + LEAST),
                                        Workbench.field(request, t.path() + MOST)),
                                usualUnit(t, build),
                                others(t, build)))
                        .toList(),
                KINDS.stream()
                        .map(k -> new FitPage.Kind(k.key(), k.label(), kinds.contains(k.key())))
                        .toList(),
                Workbench.field(request, "keep"),
                Workbench.field(request, "budget"),
                request.formParam("machining") != null,
                ranks(order(request)),
                USUAL);
    }

    /** What counts first, second and so on; twice the same counts once. */
    private static List<String> order(Context request) {
        return request.formParams("order").stream()
                .filter(o -> !o.isEmpty())
                .distinct()
                .toList();
    }

    /** One value after the other; what is wrong is said of all of them at once. */
    private static Edited withWish(Context request, String text) {
        Wish wish = new Wish(text);
        Optional<Build> build = BuildFile.read(text).build();
        if (build.isEmpty()) {
            return new Edited(Optional.empty(), BuildFile.read(text).faults());
        }
        FitWish before = build.get().fit();
        for (Term term : AIMS) {
            wish.aim(
                    term,
                    amount(request, term, ""),
                    Optional.ofNullable(build.get().aims().get(term)));
            if (request.formParam(term.path() + LEAST) != null) {
                wish.limit(term, amount(request, term, LEAST), amount(request, term, MOST), limit(term, build.get()));
            }
        }
        List<String> kinds = request.formParams("choose");
        if (!kinds.equals(before.choose().stream().map(PartKind::key).toList())) {
            wish.put("fit.choose", list(kinds));
        }
        List<String> keep = Arrays.stream(Workbench.field(request, "keep").split(",", -1))
                .map(String::strip)
                .filter(c -> !c.isEmpty())
                .toList();
        if (!keep.equals(before.keep())) {
            wish.put("fit.keep", list(keep));
        }
        wish.budget(Workbench.field(request, "budget"), before);
        List<String> order = order(request);
        if (request.formParam("order") != null
                && !order.equals(
                        before.order().stream().map(FitWish.Preference::key).toList())) {
            wish.put("fit.order", list(order));
        }
        boolean machining = request.formParam("machining") != null;
        if (machining != before.machining()) {
            wish.put("fit.machining", machining ? "yes" : "no");
        }
        return wish.edited();
    }

    /** As the form says its comma is meant. */
    private static String amount(Context request, Term term, String which) {
        String typed = typed(request, term, which);
        return EitherComma.of(typed, term.dimension())
                .map(c -> c.meant(Workbench.field(request, EitherComma.FIELD)))
                .orElse(typed);
    }

    /** A bare number takes the unit beside it. */
    private static String typed(Context request, Term term, String which) {
        return BareNumber.with(
                Workbench.field(request, term.path() + which), Workbench.field(request, term.path() + UNIT));
    }

    private static String list(List<String> words) {
        return words.stream().map(BuildFile::quoted).collect(Collectors.joining(", ", "[", "]"));
    }

    /** A text on which one value after the other is put. */
    private static final class Wish {
        /** An aim or a budget that is let go. */
        private static final String NONE = "unknown";

        private final List<Fault> faults = new ArrayList<>();
        private String text;

        Wish(String text) {
            this.text = text;
        }

        void put(String path, String value) {
            Edited edited = BuildFile.edit(text, path, value);
            edited.text().ifPresent(t -> text = t);
            faults.addAll(edited.faults());
        }

        void aim(Term term, String value, Optional<Quantity> before) {
            if (!value.equals(before.map(Quantity::written).orElse(""))) {
                put("aims." + term.path(), value.isEmpty() ? NONE : BuildFile.quoted(value));
            }
        }

        /** Both ends at once; nothing is touched where both stand there already. */
        void limit(Term term, String least, String most, Optional<OwnRule> before) {
            boolean same = least.equals(before.flatMap(OwnRule::lower)
                            .map(Quantity::written)
                            .orElse(""))
                    && most.equals(before.flatMap(OwnRule::upper)
                            .map(Quantity::written)
                            .orElse(""));
            if (same) {
                return;
            }
            Edited edited = BuildFile.keepLimit(text, limitName(term), term, least, most);
            edited.text().ifPresent(t -> text = t);
            faults.addAll(edited.faults());
        }

        void budget(String value, FitWish before) {
            if (value.isEmpty() && before.budget().isPresent()) {
                put("fit.budget", NONE);
            } else if (!value.isEmpty()) {
                put("fit.budget", BuildFile.quoted(value));
            }
        }

        Edited edited() {
            return new Edited(faults.isEmpty() ? Optional.of(text) : Optional.empty(), faults);
        }
    }

    // ---- limits of the owner's own on any figure

    private void limits(Context request, List<String> faults) {
        Workbench.Open open = bench.open(request);
        bench.view()
                .show(
                        request,
                        "limits",
                        LimitsPage.of(
                                bench.frame(request, open, "Limits of your own"),
                                open.build(),
                                faults,
                                faults.isEmpty() ? LimitsPage.Sent.NOTHING : sentLimit(request)));
    }

    private static LimitsPage.Sent sentLimit(Context request) {
        return new LimitsPage.Sent(
                Workbench.field(request, "name"),
                Workbench.field(request, "term"),
                Workbench.field(request, "least"),
                Workbench.field(request, "most"));
    }

    private void keepLimit(Context request) {
        Workbench.Open open = bench.begin(request);
        LimitsPage.Sent sent = sentLimit(request);
        Optional<Term> term = Term.at(sent.term());
        boolean fresh = open.build().ownRules().stream()
                .noneMatch(r -> r.name().equals(sent.name()) && term.equals(Optional.of(r.term())));
        List<String> wrong = new ArrayList<>();
        if (term.isEmpty()) {
            wrong.add("No figure is chosen. Choose the one to limit; nothing was kept.");
        }
        if (fresh && sent.least().isEmpty() && sent.most().isEmpty()) {
            wrong.add("Neither a least nor a most is given. Give one of them; nothing was kept.");
        }
        if (!wrong.isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            limits(request, wrong);
            return;
        }
        Term meant = term.orElseThrow();
        String name = sent.name().isEmpty() ? limitName(meant) : sent.name();
        String page = open.base() + "/limits";
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "limit: " + name,
                text -> BuildFile.keepLimit(text, name, meant, sent.least(), sent.most()),
                (begun, latest) -> false);
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(
                    request,
                    page,
                    sent.least().isEmpty() && sent.most().isEmpty()
                            ? "Taken out: " + name + ". Undo is in the history."
                            : "Kept: " + name + ".");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, page, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            limits(request, faulty.faults());
        } else {
            changes.showOutdated(request, open, "limit: " + name, page, (Outcome.Outdated) outcome);
        }
    }

    // ---- taking one

    private void take(Context request) {
        Workbench.Open open = bench.open(request);
        List<CatalogueEntry> active = catalogues.active();
        Catalogue all = catalogues.together(active).catalogue();
        String title = Workbench.field(request, "title");
        boolean known = searches.of(open.revision().text(), active).candidates().stream()
                .anyMatch(c -> c.title().equals(title));
        if (!known) {
            throw new Refused(
                    HttpStatus.CONFLICT,
                    "This way is not among those found now; nothing was changed",
                    "Look at the page Fit again: the build or the catalogues have changed meanwhile.");
        }
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "took " + (title.length() > 150 ? title.substring(0, 150) + "…" : title),
                text -> TakenParts.on(text, all, title),
                (begun, latest) -> false);
        if (outcome instanceof Outcome.Kept || outcome instanceof Outcome.Same) {
            Workbench.goOn(
                    request,
                    open.base() + "/measure",
                    "Taken: " + title
                            + ". Its figures are the catalogue's, and sizes that are still to be machined stand as they are planned; the Book has what to order and the tickets for the machine shop. Measure each part when it lies before you, and read again what was read on the engine as it was. Undo is in the history.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT, String.join(" ", faulty.faults()), "Look at the page Fit again.");
        } else {
            changes.showOutdated(
                    request, open, "parts taken: " + title, open.base() + "/fit", (Outcome.Outdated) outcome);
        }
    }
}
