package longthrow.workshop.web.measure;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadBuild;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
import longthrow.core.measure.EntryCautions;
import longthrow.core.measure.Glimpse;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Changes;
import longthrow.workshop.web.Changes.Outcome;
import longthrow.workshop.web.Rail.Question;
import longthrow.workshop.web.Refused;
import longthrow.workshop.web.Routes;
import longthrow.workshop.web.Workbench;

/** Addresses of measure: the page in stripping order, the card of each quantity, the words to choose, the text itself. */
public final class MeasureRoutes implements Routes {
    /** Characters of what was done, in the history; layout. */
    private static final int LONGEST_WHAT = 150;

    /** As an alternative: none of them. */
    static final String NONE = "unknown";

    /** Where a form of the page Fit stands, instead of a figure's row. */
    private static final String FROM_FIT = "fit";

    private final Workbench bench;
    private final Changes changes;
    private final Previews previews = new Previews();

    public MeasureRoutes(Workbench bench) {
        this.bench = bench;
        this.changes = new Changes(bench);
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get(
                "/b/{id}",
                request ->
                        request.redirect(Workbench.base(bench.entry(request).id()) + "/measure", HttpStatus.SEE_OTHER));
        routes.get("/b/{id}/measure", this::page);
        routes.get("/b/{id}/measure/{term}", this::card);
        routes.post("/b/{id}/measure/{term}", this::keepReading);
        routes.post("/b/{id}/preview/{term}", this::preview);
        routes.post("/b/{id}/choice/{choice}", this::keepChoice);
        routes.post("/b/{id}/rule/{rule}", this::keepRule);
        routes.get("/b/{id}/text", this::text);
        routes.post("/b/{id}/text", this::keepText);
    }

    private void page(Context request) {
        Workbench.Open open = bench.open(request);
        if (open.measure().isEmpty()) {
            text(request);
            return;
        }
        bench.view()
                .show(
                        request,
                        "measure",
                        MeasurePage.of(
                                bench.frame(request, open, "Measure", Question.MEASURE),
                                open.build(),
                                open.measure().orElseThrow(),
                                Term.at(Workbench.justKept(request)),
                                Optional.ofNullable(request.queryParam("find"))
                                        .orElse("")
                                        .strip()));
    }

    // ---- a reading

    private static Term term(Context request) {
        return Term.at(request.pathParam("term"))
                .filter(Term::isRead)
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND, "There is no such reading", "Look for it on the page Measure."));
    }

    private void card(Context request) {
        Term term = term(request);
        Workbench.Open open = bench.open(request);
        String entry = Optional.ofNullable(request.queryParam("entry")).orElse("");
        showCard(
                request,
                open,
                term,
                CardPage.typed(term, open.build(), open.revision().number(), entry),
                List.of(),
                Optional.empty());
    }

    private void showCard(
            Context request,
            Workbench.Open open,
            Term term,
            CardPage.Typed typed,
            List<String> faults,
            Optional<EnteredReading.Commas> commas) {
        Build build = open.build();
        Figures figures = Figures.of(open.measure().flatMap(m -> m.value(term)), new FigurePrinter(build.units()));
        bench.view()
                .show(
                        request,
                        "card",
                        CardPage.of(
                                bench.frame(request, open, term.label(), Question.MEASURE),
                                term,
                                build,
                                typed,
                                faults,
                                commas,
                                figures));
    }

    private void keepReading(Context request) {
        Term term = term(request);
        Workbench.Open open = bench.begin(request);
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                entered(request, term, open.revision().text()),
                text -> withReading(request, term, text),
                (begun, latest) -> isQueued(request) && sameEntries(begun, latest, term));
        String page = open.base() + "/measure";
        if (outcome instanceof Outcome.Kept) {
            Workbench.kept(request, term.path());
            Workbench.goOn(
                    request,
                    page + "#" + term.path(),
                    "Kept: " + term.label() + "." + toMind(request, term, open.build()));
        } else if (outcome instanceof Outcome.Same) {
            Workbench.kept(request, term.path());
            Workbench.goOn(request, page + "#" + term.path(), term.label() + " says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            showCard(
                    request,
                    open,
                    term,
                    sent(request),
                    faulty.faults(),
                    EnteredReading.of(request, term, open.build()).commas());
        } else {
            String mine = term.label() + ": "
                    + Optional.of(EnteredReading.of(request, term, open.build()))
                            .flatMap(EnteredReading::entry)
                            .map(MeasurePage::words)
                            .orElse("taken out");
            changes.showOutdated(request, open, mine, page + "/" + term.path(), (Outcome.Outdated) outcome);
        }
    }

    /** How what was entered was understood where it was written in an unusual way, and what stands out in it. */
    private static String toMind(Context request, Term term, Build build) {
        EnteredReading entered = EnteredReading.of(request, term, build);
        String said = entered.said().isEmpty() ? "" : " " + capital(String.join("; ", entered.said())) + ".";
        return said + cautions(build, term, entered).stream().map(c -> " " + c).collect(Collectors.joining());
    }

    private static List<String> cautions(Build build, Term term, EnteredReading entered) {
        return entered.entry().stream()
                .flatMap(e -> EntryCautions.of(build, term, e, term.path()).stream())
                .map(f -> PageWords.said("Mind: " + f.message() + ". " + capital(PageWords.said(f.mend())) + "."))
                .toList();
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** What a form enters, in a line for the history: the label and the figures as they were typed. */
    private String entered(Context request, Term term, String text) {
        return brief(term.label() + ": "
                + bench.desk()
                        .read(text)
                        .build()
                        .map(build -> EnteredReading.of(request, term, build))
                        .filter(e -> e.faults().isEmpty())
                        .map(e -> e.entry().map(MeasurePage::words).orElse("one entry taken out"))
                        .orElse("entered"));
    }

    private static String said(Choice choice, String word) {
        return choice.options().stream()
                .filter(o -> o.key().equals(word))
                .map(o -> o.label())
                .findFirst()
                .orElse(word.isEmpty() ? "not known" : word);
    }

    private static String brief(String what) {
        return what.length() > LONGEST_WHAT ? what.substring(0, LONGEST_WHAT) + "…" : what;
    }

    /** Whether it waited on the phone while the workshop was out of reach: others before it in the line have moved the build on. */
    private static boolean isQueued(Context request) {
        return !Workbench.field(request, "queued").isEmpty();
    }

    private static boolean sameEntries(String begun, String latest, Term term) {
        Optional<List<Given>> before = BuildFile.read(begun).build().map(b -> b.of(term));
        return before.equals(BuildFile.read(latest).build().map(b -> b.of(term)));
    }

    /** The text with the reading of a form in it. */
    private Edited withReading(Context request, Term term, String text) {
        ReadBuild read = bench.desk().read(text);
        if (read.build().isEmpty()) {
            return new Edited(Optional.empty(), read.faults());
        }
        EnteredReading entered = EnteredReading.of(request, term, read.build().get());
        if (!entered.faults().isEmpty()) {
            return new Edited(Optional.empty(), faults(entered.faults()));
        }
        try {
            String entry = BuildFile.entry(entered.among(read.build().get().of(term)));
            return BuildFile.edit(text, term.path(), entry);
        } catch (IllegalArgumentException cannotStandInAFile) {
            return new Edited(
                    Optional.empty(),
                    faults(
                            List.of(
                                    "A note or a name holds signs that cannot be kept, or is far too long. Write it in plain words.")));
        }
    }

    private static List<Fault> faults(List<String> words) {
        return words.stream().map(w -> new Fault(0, 0, "", "", w, "", "")).toList();
    }

    /** What stood in the boxes of a form that is shown again. */
    private static CardPage.Typed sent(Context request) {
        String how = Workbench.field(request, "how");
        String entry = Workbench.field(request, "entry");
        return new CardPage.Typed(
                Workbench.basedOn(request),
                entry.isEmpty() ? "new" : entry,
                how.isEmpty() ? "read" : how,
                request.formParams("reading").stream().filter(r -> !r.isBlank()).toList(),
                Workbench.field(request, "unit"),
                Workbench.field(request, "with"),
                Workbench.field(request, "part_at"),
                Workbench.field(request, "part_at_unit"),
                Workbench.field(request, "value"),
                Workbench.field(request, "plus_minus"),
                Workbench.field(request, "by"),
                Workbench.field(request, "note"));
    }

    /** What a form would change, while it is typed. Nothing is kept. */
    private void preview(Context request) {
        Term term = term(request);
        Previews.Asked asked = previews.ask(Workbench.field(request, "key"));
        String text = bench.store().latest(bench.entry(request).id()).text();
        Edited edited = withReading(request, term, text);
        List<String> faults = edited.faults().stream().map(Changes::words).toList();
        Optional<String> typed = bench.desk().text(edited);
        if (typed.isEmpty()) {
            bench.view().show(request, "figures", Map.of("figures", Figures.NONE, "faults", faults));
            return;
        }
        String changed = typed.get();
        Optional<Glimpse> after = bench.desk().glance(changed, () -> previews.isNewest(asked));
        if (after.isEmpty()) {
            request.status(HttpStatus.NO_CONTENT); // typed on: the page waits for the newer one
            return;
        }
        Figures figures = Figures.changed(term, bench.desk().glance(text), after.get(), printer(text));
        List<String> minded = new ArrayList<>(faults);
        bench.desk()
                .read(text)
                .build()
                .ifPresent(b -> minded.addAll(cautions(b, term, EnteredReading.of(request, term, b))));
        bench.view().show(request, "figures", Map.of("figures", figures, "faults", minded));
        bench.desk().workAhead(changed, () -> previews.isNewest(asked));
    }

    private FigurePrinter printer(String text) {
        return new FigurePrinter(bench.desk().read(text).build().orElseThrow().units());
    }

    // ---- a word

    private void keepChoice(Context request) {
        Choice choice = Choice.at(request.pathParam("choice"))
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND, "There is no such choice", "Look for it on the page Measure."));
        Workbench.Open open = bench.begin(request);
        String word = Workbench.field(request, "word");
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                brief(choice.meaning() + ": " + said(choice, word)),
                text -> withWord(text, choice, word),
                (begun, latest) -> false);
        String page = open.base() + "/measure";
        String place = page + "#" + choice.part().key();
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(request, place, "Kept: " + choice.meaning() + ".");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, place, "It says so already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT, String.join(" ", faulty.faults()), "Go back and choose another.");
        } else {
            changes.showOutdated(
                    request,
                    open,
                    choice.meaning() + ": " + (word.isEmpty() ? "not known" : word),
                    place,
                    (Outcome.Outdated) outcome);
        }
    }

    private static Edited withWord(String text, Choice choice, String word) {
        try {
            return BuildFile.edit(text, choice.path(), word.isEmpty() ? "unknown" : BuildFile.quoted(word));
        } catch (IllegalArgumentException cannotStandInAFile) {
            return new Edited(
                    Optional.empty(), faults(List.of("It holds signs that cannot be kept, or is far too long.")));
        }
    }

    // ---- a rule on which the trade disagrees

    private void keepRule(Context request) {
        Rule rule = Rule.at(request.pathParam("rule"))
                .orElseThrow(() ->
                        new Refused(HttpStatus.NOT_FOUND, "There is no such rule", "Look for it on the page Measure."));
        Workbench.Open open = bench.begin(request);
        String word = Workbench.field(request, "alternative");
        Optional<Alternative> chosen = rule.alternative(word);
        boolean letGo = word.equals(NONE) && open.build().rulesChosen().containsKey(rule.key());
        if (chosen.isEmpty() && !letGo) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "None of the sources was chosen for " + rule.label() + "; nothing was changed",
                    "Go back and choose one of them.");
        }
        String what =
                rule.label() + ": " + chosen.map(Alternative::label).orElse("none of the sources, so it is open again");
        String at = Workbench.field(request, "at");
        String place =
                at.equals(FROM_FIT) ? open.base() + "/fit?now=1#rule-" + rule.key() : open.base() + "/measure#" + at;
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "chose " + what,
                text -> BuildFile.edit(
                        text,
                        "rules.choose." + rule.key(),
                        chosen.map(Alternative::key).orElse(NONE)),
                (begun, latest) -> false);
        if (outcome instanceof Outcome.Kept) {
            Workbench.goOn(request, place, "Chosen: " + what + ".");
        } else if (outcome instanceof Outcome.Same) {
            Workbench.goOn(request, place, "It is chosen already; nothing was changed.");
        } else if (outcome instanceof Outcome.Faulty faulty) {
            throw new Refused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    String.join(" ", faulty.faults()),
                    "Open the text of the build and mend what is said there.");
        } else {
            changes.showOutdated(request, open, what, place, (Outcome.Outdated) outcome);
        }
    }

    // ---- the text

    private void text(Context request) {
        Workbench.Open open = bench.open(request);
        showText(
                request,
                open,
                open.revision().number(),
                open.revision().text(),
                open.work().faults().stream().map(Fault::message).toList());
    }

    private void showText(Context request, Workbench.Open open, int based, String text, List<String> faults) {
        bench.view()
                .show(
                        request,
                        "text",
                        new TextPage(
                                bench.frame(request, open, "The build file"),
                                open.base() + "/text",
                                based,
                                text,
                                faults,
                                UUID.randomUUID().toString()));
    }

    private void keepText(Context request) {
        Workbench.Open open = bench.begin(request);
        // A browser sends the ends of lines as two signs, whatever they were.
        String sent = Optional.ofNullable(request.formParam("text")).orElse("").replace("\r\n", "\n");
        String text = open.revision().text().contains("\r\n") ? sent.replace("\n", "\r\n") : sent;
        List<Fault> faults = BuildFile.read(text).faults();
        if (!faults.isEmpty()) {
            request.status(HttpStatus.UNPROCESSABLE_CONTENT);
            showText(
                    request,
                    open,
                    Workbench.basedOn(request),
                    sent,
                    faults.stream().map(Fault::message).toList());
            return;
        }
        Outcome outcome = changes.keep(
                open.entry().id(),
                Workbench.basedOn(request),
                Workbench.key(request),
                "changed as text",
                begun -> new Edited(Optional.of(text), List.of()),
                (begun, latest) -> false);
        if (outcome instanceof Outcome.Outdated outdated) {
            changes.showOutdatedText(
                    request,
                    open,
                    text,
                    open.base() + "/text",
                    outdated,
                    both -> BuildFile.read(both).faults().isEmpty());
        } else {
            Workbench.goOn(
                    request,
                    open.base() + "/text",
                    outcome instanceof Outcome.Same ? "It says so already; nothing was changed." : "Kept.");
        }
    }
}
