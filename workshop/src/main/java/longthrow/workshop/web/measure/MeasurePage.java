package longthrow.workshop.web.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import longthrow.workshop.draw.BoreMap;
import longthrow.workshop.draw.DeckTilt;
import longthrow.workshop.draw.StackBar;
import longthrow.workshop.print.Disputed;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.Ways;

/**
 * Measure in stripping order.
 * @param stack picture of the stack as SVG; empty where it cannot be drawn
 * @param bore  pictures of bore and deck as SVG; none where they were not read
 * @param key   of an edit made on this page, for once
 * @param find  what quantities are looked for; empty for all of them
 * @param found how many there are, in words; empty where nothing is looked for
 * @param leads other places that what is looked for stands at
 */
public record MeasurePage(
        Frame frame,
        String summary,
        List<Suspect> suspects,
        List<Next> next,
        String stack,
        List<String> bore,
        String key,
        String find,
        String found,
        List<Frame.Place> leads,
        List<Section> sections) {
    /** So many rules are named; layout. */
    private static final int MOST_LEADS = 8;

    public MeasurePage {
        suspects = List.copyOf(suspects);
        next = List.copyOf(next);
        bore = List.copyOf(bore);
        leads = List.copyOf(leads);
        sections = List.copyOf(sections);
    }

    /** A reading that does not agree with the rest. */
    public record Suspect(String where, String message, String mend, String address) {}

    /** A reading to take next. */
    public record Next(String label, String how, String why, String address) {}

    /** A part of the engine. */
    public record Section(
            String key, String label, String meaning, String count, boolean open, List<Word> words, List<Row> rows) {
        /** Whether there is a rule in it on which sources differ: its choices stand under the rows. */
        public boolean hasDisputes() {
            return rows.stream().anyMatch(row -> !row.disputes().isEmpty());
        }

        /** Parts of it whose outline may be traced. */
        public List<OutlinedPart> outlined() {
            return Arrays.stream(OutlinedPart.values())
                    .filter(o -> o.part().key().equals(key))
                    .toList();
        }

        /** Open, whatever is known of it: something in it is looked for. */
        Section found() {
            return new Section(key, label, meaning, count, true, words, rows);
        }
    }

    /**
     * A word to choose or to write, such as the metal of the head.
     * @param options empty for free words
     */
    public record Word(String path, String action, String meaning, String chosen, List<CardPage.Item> options) {}

    /** A verdict in a line. */
    public record Judged(String state, String text) {}

    /**
     * A rule on which sources differ, with what each says.
     * @param rule    its key
     * @param title   why it is open, or that others say otherwise
     * @param action  where the choice goes; empty where there is nothing to choose
     * @param sources each with its key
     */
    public record Dispute(String rule, String title, String action, boolean open, List<Source> sources) {
        public Dispute {
            sources = List.copyOf(sources);
        }
    }

    /** What one source says, and how the figure stands to it. */
    public record Source(String key, boolean chosen, Judged judged) {}

    /** A quantity. */
    public record Row(
            String path,
            String address,
            String label,
            String symbol,
            boolean isRead,
            String given,
            String first,
            String second,
            String owner,
            boolean disputed,
            List<Judged> verdicts,
            List<Dispute> disputes,
            Optional<Onward> onward) {
        public Row {
            verdicts = List.copyOf(verdicts);
            disputes = List.copyOf(disputes);
        }
    }

    /**
     * Where to go on from a quantity that was just kept.
     * @param best      the reading that cuts the doubt most; none where nothing is advised
     * @param following what is not known yet and comes next in stripping order
     */
    public record Onward(Optional<Next> best, Optional<Next> following) {}

    /**
     * The page of a build that could be read.
     * @param kept quantity that was kept just before
     * @param find words of the quantities that are looked for; empty for the whole page
     */
    static MeasurePage of(Frame frame, Build build, Answer answer, Optional<Term> kept, String find) {
        Wanted wanted = Wanted.of(find);
        Map<Part, List<Row>> rows = new EnumMap<>(Part.class);
        FigurePrinter printer = new FigurePrinter(build.units());
        for (Term term : Term.values()) {
            Optional<Result> result = answer.value(term);
            boolean shown = (term.isRead() || result.isPresent()) && wanted.holds(term);
            if (shown) {
                Optional<Onward> onward = kept.filter(k -> k == term).map(k -> onward(k, build, answer, frame.base()));
                rows.computeIfAbsent(term.part(), p -> new ArrayList<>())
                        .add(row(term, result, build, answer, printer, frame.base(), onward));
            }
        }
        List<Section> sections = new ArrayList<>();
        for (Part part : Part.values()) {
            List<Word> words = words(part, build, frame.base(), wanted);
            List<Row> its = rows.getOrDefault(part, List.of());
            if (!its.isEmpty() || !words.isEmpty()) {
                Section section = section(part, build, words, its);
                sections.add(wanted.isAll() ? section : section.found());
            }
        }
        if (!wanted.isAll()) {
            return found(frame, answer, find, leads(wanted, answer, frame.base()), sections);
        }
        return new MeasurePage(
                frame,
                summary(answer),
                answer.findings().stream()
                        .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                        .map(f -> new Suspect(
                                PageWords.place(f.where()),
                                PageWords.said(f.message()),
                                PageWords.said(f.mend()),
                                Ways.card(f.where(), frame.base())))
                        .toList(),
                answer.next().stream().map(n -> next(n, frame.base())).toList(),
                answer.value(Term.DECK_HEIGHT)
                        .map(any -> StackBar.of(answer).svg("stack"))
                        .orElse(""),
                pictures(answer),
                UUID.randomUUID().toString(),
                "",
                "",
                List.of(),
                sections);
    }

    /** The page with nothing on it but what is looked for. */
    private static MeasurePage found(
            Frame frame, Answer answer, String find, List<Frame.Place> leads, List<Section> sections) {
        int many = sections.stream()
                .mapToInt(s -> s.rows().size() + s.words().size())
                .sum();
        return new MeasurePage(
                frame,
                summary(answer),
                List.of(),
                List.of(),
                "",
                List.of(),
                UUID.randomUUID().toString(),
                find,
                many == 0 && !leads.isEmpty()
                        ? "No quantity is called that; it stands elsewhere:"
                        : many == 0
                                ? "Nothing here is called that. Try one word of it, such as pin, or a part, such as rod."
                                : many + (many == 1 ? " is" : " are") + " called that or have it in what they mean.",
                leads,
                sections);
    }

    /** Where what is looked for stands besides: limits and aims, rules of the trade, what may be spent and bought. */
    private static List<Frame.Place> leads(Wanted wanted, Answer answer, String base) {
        List<Frame.Place> leads = new ArrayList<>();
        for (Term term : List.of(Term.SQUISH, Term.COMPRESSION_RATIO)) {
            if (wanted.holds(term)) {
                leads.add(new Frame.Place(
                        "Fit: aim, least and most of " + term.label(), base + "/fit#" + term.path() + ".least"));
            }
        }
        if (wanted.isOf("budget", "money", "price", "spend", "cost")) {
            leads.add(new Frame.Place("Fit: budget", base + "/fit#budget"));
        }
        if (wanted.isOf("machining", "bought", "buy", "keep")) {
            leads.add(new Frame.Place("Fit: what may be bought, and machining", base + "/fit#wish"));
        }
        Arrays.stream(Rule.values())
                .filter(wanted::holds)
                .filter(r -> answer.value(r.term()).isPresent() || r.term().isRead())
                .limit(MOST_LEADS)
                .map(r -> new Frame.Place(
                        "The rule on " + r.term().label() + ": " + r.label(),
                        base + "/measure#" + r.term().path()))
                .forEach(leads::add);
        return leads;
    }

    private static Onward onward(Term kept, Build build, Answer answer, String base) {
        Optional<Next> best =
                answer.next().stream().filter(n -> n.read() != kept).findFirst().map(n -> next(n, base));
        List<Term> order = Arrays.stream(Part.values())
                .flatMap(p -> Term.read().stream().filter(t -> t.part() == p))
                .toList();
        Optional<Next> following = order.stream()
                .skip(order.indexOf(kept) + 1L)
                .filter(t -> !t.isForPowerAlone())
                .filter(t -> build.of(t).stream().allMatch(Given.NotKnown.class::isInstance))
                .findFirst()
                .map(t -> new Next(t.label(), "", "", base + "/measure/" + t.path()));
        return new Onward(best, following);
    }

    /** The bore by depth and direction, and the tilt of the deck, where they were read. */
    private static List<String> pictures(Answer answer) {
        List<String> all = new ArrayList<>();
        BoreMap.of(answer).ifPresent(map -> all.add(map.svg("bore")));
        DeckTilt.of(answer).ifPresent(tilt -> all.add(tilt.svg("deck")));
        return all;
    }

    private static Next next(NextReading next, String base) {
        return new Next(
                next.read().label(),
                next.how(),
                next.why(),
                base + "/measure/" + next.read().path());
    }

    /** What stands in the way by kind: together as many as that list has. */
    private static String summary(Answer answer) {
        if (answer.values().isEmpty()
                && answer.stops().isEmpty()
                && answer.findings().stream().noneMatch(f -> f.kind() == Finding.Kind.SUSPECT)
                && !answer.next().isEmpty()) {
            return "Nothing is read yet. Begin with "
                    + answer.next().get(0).read().label() + ".";
        }
        long unknown = answer.unknowns().size();
        String stops = Ways.stops(answer);
        long suspects = answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .count();
        return stops.substring(0, 1).toUpperCase(Locale.ROOT) + stops.substring(1)
                + (suspects == 0 ? "" : "; " + suspects + (suspects == 1 ? " reading" : " readings") + " suspect")
                + "; " + unknown
                + (unknown == 1 ? " figure" : " figures") + " not known yet.";
    }

    private static List<Word> words(Part part, Build build, String base, Wanted wanted) {
        return Arrays.stream(Choice.values())
                .filter(c -> c.part() == part && wanted.holds(c))
                .map(c -> word(c, build.choice(c).orElse(""), base))
                .toList();
    }

    private static Word word(Choice choice, String chosen, String base) {
        List<CardPage.Item> options = new ArrayList<>();
        if (!choice.options().isEmpty()) {
            options.add(new CardPage.Item("", "not known", chosen.isEmpty()));
            choice.options()
                    .forEach(o -> options.add(
                            new CardPage.Item(o.key(), o.label(), o.key().equals(chosen))));
        }
        return new Word(choice.path(), base + "/choice/" + choice.path(), choice.meaning(), chosen, options);
    }

    /** Only what is known counts: that something is not known is an entry, and no reading. What power alone asks for is missing to nobody else. */
    private static Section section(Part part, Build build, List<Word> words, List<Row> rows) {
        List<Term> its = Term.read().stream().filter(t -> t.part() == part).toList();
        long read = its.stream().filter(t -> isKnown(t, build)).count();
        long all = its.stream()
                .filter(t -> !t.isForPowerAlone() || isKnown(t, build))
                .count();
        String known = all == 0 ? "for power alone" : read + " of " + all + " known";
        return new Section(part.key(), part.label(), part.meaning(), known, read > 0, words, rows);
    }

    private static boolean isKnown(Term term, Build build) {
        return build.of(term).stream().anyMatch(g -> !(g instanceof Given.NotKnown));
    }

    private static Row row(
            Term term,
            Optional<Result> result,
            Build build,
            Answer answer,
            FigurePrinter printer,
            String base,
            Optional<Onward> onward) {
        Optional<PrintedFigures> printed = result.map(r -> r.printed(printer));
        return new Row(
                term.path(),
                base + "/measure/" + term.path(),
                term.label(),
                term.symbol(),
                term.isRead(),
                given(build.of(term)),
                printed.map(p -> p.first().text()).orElse(""),
                printed.flatMap(PrintedFigures::second).map(f -> f.text()).orElse(""),
                result.map(MeasurePage::owner).orElse(""),
                result.map(Result::contradicted).orElse(false),
                judged(term, answer),
                disputes(term, build, answer, printer, base),
                onward);
    }

    /** The rules that count, and those on which no source says otherwise. */
    private static List<Judged> judged(Term term, Answer answer) {
        List<Judged> all = new ArrayList<>();
        answer.verdictsOn(term).stream()
                .filter(v -> v.chosen() && v.state() != Verdict.State.UNKNOWN)
                .map(v -> judged(v.state(), v.label()))
                .forEach(all::add);
        Disputed.undecided(answer, term).stream()
                .filter(v -> !isOpen(v) && v.get(0).state() != Verdict.State.UNKNOWN)
                .map(v -> judged(v.get(0).state(), Disputed.sharedLabel(v) + Disputed.byAll(v)))
                .forEach(all::add);
        return all;
    }

    private static Judged judged(Verdict.State state, String text) {
        return new Judged(state.label(), state.label() + ": " + PageWords.said(text));
    }

    /** Whether it cannot be said how the figure stands: sources differ, or a rule counts only where it is chosen, or perhaps not here. */
    private static boolean isOpen(List<Verdict> verdicts) {
        return !Disputed.isAgreed(verdicts)
                || Disputed.isPerhapsNotMeant(verdicts)
                || (verdicts.size() == 1
                        && verdicts.get(0).state() != Verdict.State.MEETS
                        && verdicts.get(0).state() != Verdict.State.UNKNOWN);
    }

    /** What is open, and what others say beside a rule that the owner chose. */
    private static List<Dispute> disputes(Term term, Build build, Answer answer, FigurePrinter printer, String base) {
        List<Dispute> all = new ArrayList<>();
        Disputed.undecided(answer, term).stream()
                .filter(MeasurePage::isOpen)
                .map(v -> dispute(
                        v,
                        "OPEN" + Disputed.why(v) + ": " + Disputed.sharedLabel(v)
                                + (Disputed.isPerhapsNotMeant(v) ? "; fails if it is meant here" : ""),
                        true,
                        false,
                        printer,
                        base))
                .forEach(all::add);
        for (Verdict chosen : answer.verdictsOn(term)) {
            List<Verdict> others = Disputed.others(answer, chosen);
            boolean picked = build.rulesChosen().containsKey(Disputed.rule(chosen));
            boolean differ = others.stream().anyMatch(o -> o.state() != chosen.state());
            if (chosen.chosen() && !Disputed.isOwn(chosen) && !others.isEmpty() && (differ || picked)) {
                List<Verdict> together = new ArrayList<>(List.of(chosen));
                together.addAll(others);
                String title = differ ? "Others say" : "You chose one; all come to the same here";
                all.add(dispute(together, title, false, picked, printer, base));
            }
        }
        return all;
    }

    private static Dispute dispute(
            List<Verdict> verdicts, String title, boolean open, boolean picked, FigurePrinter printer, String base) {
        String rule = Disputed.rule(verdicts.get(0));
        String shared = Disputed.sharedLabel(verdicts);
        List<Source> sources = new ArrayList<>();
        verdicts.forEach(v -> sources.add(new Source(
                Disputed.alternative(v), v.chosen(), judged(v.state(), Disputed.words(v, shared, printer)))));
        if (picked) {
            sources.add(new Source(MeasureRoutes.NONE, false, new Judged("", "none of them: leave it open again")));
        }
        return new Dispute(rule, title, base + "/rule/" + rule, open, sources);
    }

    /** Whose doubt it mostly is, and how the figure is known. */
    static String owner(Result result) {
        String how = result.isWorkedOut() ? "worked out" : result.howKnown();
        return result.figure().shares().stream()
                .filter(s -> s.share() >= 0.01)
                .findFirst()
                .map(s -> "doubt mostly: " + s.owner() + (how.isEmpty() ? "" : "; " + how))
                .orElse(how);
    }

    /** What was entered, as it was written. */
    static String given(List<Given> entries) {
        return entries.stream().map(MeasurePage::words).collect(Collectors.joining("; "));
    }

    /** One entry, as it was written. */
    static String words(Given given) {
        if (given instanceof Given.Taken taken) {
            return taken.readings().stream().map(Quantity::written).collect(Collectors.joining(", "));
        }
        if (given instanceof Given.Typed typed) {
            return typed.value().written() + " ± " + typed.plusMinus().written();
        }
        if (given instanceof Given.Specified sheet) {
            Quantity tolerance = sheet.tolerance();
            return sheet.value().written() + (tolerance == null ? "" : " ± " + tolerance.written()) + " (sheet)";
        }
        if (given instanceof Given.Assumed assumed) {
            return assumed.value().written() + " ± " + assumed.plusMinus().written() + " (assumed)";
        }
        return "not known";
    }
}
