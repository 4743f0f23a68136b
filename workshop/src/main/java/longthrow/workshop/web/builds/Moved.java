package longthrow.workshop.web.builds;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Rule;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Desk;

/**
 * What an edit did, in quantities and answers rather than in lines of a file.
 * @param entered what was entered, from what to what
 * @param answers what of the chief answers moved
 * @param others  how many figures moved besides
 * @param came    stops that were not there before
 * @param went    stops that are not there any more
 * @param trouble why nothing can be said of it; empty where it can
 */
public record Moved(
        List<Line> entered, List<Line> answers, int others, List<String> came, List<String> went, String trouble) {
    /** What an engine builder looks at first; the rest of what moved is counted. */
    private static final List<Term> CHIEF =
            List.of(Term.SWEPT_VOLUME, Term.COMPRESSION_RATIO, Term.EFFECTIVE_RATIO, Term.SQUISH, Term.DECK_CLEARANCE);

    private static final String NOTHING = "–";

    public Moved {
        entered = List.copyOf(entered);
        answers = List.copyOf(answers);
        came = List.copyOf(came);
        went = List.copyOf(went);
    }

    /**
     * One thing that is another now.
     * @param was     before; a dash for nothing
     * @param card    path of the quantity, where it has a card; else empty
     */
    public record Line(String label, String was, String now, String card) {}

    /** Whether nothing but words and order of the file is another. */
    public boolean isNothing() {
        return entered.isEmpty() && answers.isEmpty() && others == 0 && came.isEmpty() && went.isEmpty();
    }

    /**
     * Between two texts that were worked out.
     * @param from number of the one before
     * @param to   number of the one after
     */
    static Moved of(Desk.Work before, Desk.Work after, int from, int to) {
        Optional<Build> one = before.build();
        Optional<Build> other = after.build();
        if (one.isEmpty() || other.isEmpty()) {
            return new Moved(
                    List.of(),
                    List.of(),
                    0,
                    List.of(),
                    List.of(),
                    "The text of revision " + (one.isEmpty() ? from : to)
                            + " cannot be read as a build, so only lines are compared.");
        }
        Answer was = before.measure().orElseThrow();
        Answer now = after.measure().orElseThrow();
        List<Line> figures = figures(was, now, other.get());
        List<String> chief = CHIEF.stream().map(Term::path).toList();
        return new Moved(
                entered(one.get(), other.get()),
                figures.stream()
                        .filter(l -> chief.contains(l.card()))
                        .map(Moved::withoutCard)
                        .toList(),
                (int) figures.stream().filter(l -> !chief.contains(l.card())).count(),
                stops(now, was),
                stops(was, now),
                "");
    }

    private static List<Line> entered(Build was, Build now) {
        List<Line> lines = new ArrayList<>();
        for (Term term : Term.values()) {
            add(lines, term.label(), given(was.of(term)), given(now.of(term)), term.isRead() ? term.path() : "");
        }
        for (Choice choice : Choice.values()) {
            add(lines, PageWords.place(choice.path()), chosen(was, choice), chosen(now, choice), "");
        }
        for (Term term : Term.values()) {
            add(lines, "aim: " + term.label(), aim(was, term), aim(now, term), "");
        }
        Set<String> names = new LinkedHashSet<>();
        was.ownRules().forEach(r -> names.add(r.name()));
        now.ownRules().forEach(r -> names.add(r.name()));
        names.forEach(name -> add(lines, name, limit(was, name), limit(now, name), ""));
        for (Rule rule : Rule.values()) {
            add(
                    lines,
                    "source chosen: " + rule.label(),
                    was.rulesChosen().getOrDefault(rule.key(), "").replace('_', ' '),
                    now.rulesChosen().getOrDefault(rule.key(), "").replace('_', ' '),
                    "");
        }
        add(lines, "taken, to be bought or done", taken(was), taken(now), "");
        return lines;
    }

    private static void add(List<Line> lines, String label, String was, String now, String card) {
        if (!was.equals(now)) {
            lines.add(new Line(label, was.isEmpty() ? NOTHING : was, now.isEmpty() ? NOTHING : now, card));
        }
    }

    private static String given(List<Given> entries) {
        return entries.stream()
                .map(g -> g.written()
                        + (g instanceof Given.Specified s && !s.by().isEmpty() ? " by " + s.by() : "")
                        + (g instanceof Given.Assumed ? ", assumed" : ""))
                .collect(Collectors.joining("; "));
    }

    private static String chosen(Build build, Choice choice) {
        return build.choice(choice).orElse("").replace('_', ' ');
    }

    private static String aim(Build build, Term term) {
        return Optional.ofNullable(build.aims().get(term))
                .map(Quantity::written)
                .orElse("");
    }

    private static String limit(Build build, String name) {
        return build.ownRules().stream()
                .filter(r -> r.name().equals(name))
                .map(Moved::window)
                .collect(Collectors.joining("; "));
    }

    private static String window(OwnRule rule) {
        String least = rule.lower().map(q -> "least " + q.written()).orElse("");
        String most = rule.upper().map(q -> "most " + q.written()).orElse("");
        return least.isEmpty() || most.isEmpty() ? least + most : least + ", " + most;
    }

    private static String taken(Build build) {
        return build.taken().stream().map(Decided::code).collect(Collectors.joining(", "));
    }

    /** As printed: what differs in digits that nobody is shown did not move. */
    private static List<Line> figures(Answer was, Answer now, Build build) {
        FigurePrinter printer = new FigurePrinter(build.units());
        List<Line> lines = new ArrayList<>();
        for (Term term : Term.values()) {
            add(lines, term.label(), figure(was, term, printer), figure(now, term, printer), term.path());
        }
        return lines;
    }

    private static String figure(Answer answer, Term term, FigurePrinter printer) {
        return answer.value(term)
                .map(r -> r.printed(printer).line() + (r.contradicted() ? ", in dispute" : ""))
                .orElse("");
    }

    private static Line withoutCard(Line line) {
        return new Line(line.label(), line.was(), line.now(), "");
    }

    /** Those of one answer that the other does not have. */
    private static List<String> stops(Answer of, Answer less) {
        Set<String> there = less.stops().stream().map(Moved::words).collect(Collectors.toSet());
        return of.stops().stream()
                .map(Moved::words)
                .filter(w -> !there.contains(w))
                .distinct()
                .toList();
    }

    private static String words(Stop stop) {
        return (stop.refused() ? "refused: " : "not approved: ") + PageWords.said(stop.what());
    }
}
