package longthrow.workshop.web.measure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.measure.Glimpse;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;

/**
 * Figures beside a form: what is known now, or what an edit would change.
 * @param more     how many are changed besides those that are shown
 * @param warnings what an edit makes wrong that was not before, gravest first
 * @param suspects readings that do not agree, and did not before
 */
public record Figures(String heading, List<Line> lines, int more, List<String> warnings, List<String> suspects) {
    /** So many figures that an edit changes are shown; layout. */
    private static final int MOST = 12;

    /** So many warnings are shown: who typed one figure wrong may have broken twenty rules with it; layout. */
    private static final int MOST_WARNINGS = 4;

    public Figures {
        lines = List.copyOf(lines);
        warnings = List.copyOf(warnings);
        suspects = List.copyOf(suspects);
    }

    /** Nothing to show yet. */
    static final Figures NONE = new Figures("", List.of(), 0, List.of(), List.of());

    /**
     * A figure.
     * @param before what it was; empty when nothing was, or it is the same
     * @param owner  whose doubt it mostly is
     */
    public record Line(String label, String first, String second, String before, String owner) {}

    /** One figure as it is. */
    static Figures of(Optional<Result> result, FigurePrinter printer) {
        return new Figures(
                result.isPresent() ? "As it is known now" : "",
                result.map(r -> List.of(line(r, "", printer))).orElse(List.of()),
                0,
                List.of(),
                List.of());
    }

    /** What is another figure after an edit: the one that is edited first, then in the order of the terms. */
    static Figures changed(Term edited, Glimpse before, Glimpse after, FigurePrinter printer) {
        Map<Term, String> was = new EnumMap<>(Term.class);
        before.values()
                .forEach(b -> was.put(b.term(), b.printed(printer).first().text()));
        List<Line> lines = new ArrayList<>();
        int more = 0;
        for (Result now : editedFirst(edited, after.values())) {
            String old = was.getOrDefault(now.term(), "not known");
            boolean same = old.equals(now.printed(printer).first().text());
            if (same && now.term() != edited) {
                continue;
            }
            if (lines.size() < MOST) {
                lines.add(line(now, same ? "" : old, printer));
            } else {
                more++;
            }
        }
        return new Figures(
                lines.isEmpty() ? "Changes no figure that is not in dispute" : "With this, not kept yet",
                lines,
                more,
                warnings(edited, before, after),
                after.suspects().stream()
                        .filter(f -> !isFresh(f, edited, before))
                        .map(Figures::words)
                        .toList());
    }

    /** What the reading that is typed makes suspect, then what it makes impossible or breaks. */
    private static List<String> warnings(Term edited, Glimpse before, Glimpse after) {
        List<String> all = Stream.concat(
                        after.suspects().stream().filter(f -> isFresh(f, edited, before)),
                        after.brokenSince(before).stream())
                .map(Figures::words)
                .toList();
        if (all.size() <= MOST_WARNINGS) {
            return all;
        }
        List<String> few = new ArrayList<>(all.subList(0, MOST_WARNINGS));
        few.add("and " + (all.size() - MOST_WARNINGS) + " more of the kind");
        return few;
    }

    /** Whether a suspect is the reading that is typed, or was none before. */
    private static boolean isFresh(Finding suspect, Term edited, Glimpse before) {
        return suspect.kind() == Finding.Kind.SUSPECT
                && (PageWords.read(suspect.where()).filter(t -> t == edited).isPresent()
                        || before.suspects().stream().noneMatch(f -> f.where().equals(suspect.where())));
    }

    private static String words(Finding finding) {
        String place = finding.where().isEmpty() ? "" : PageWords.place(finding.where()) + ": ";
        return place + PageWords.said(finding.message());
    }

    private static List<Result> editedFirst(Term edited, List<Result> all) {
        List<Result> sorted = new ArrayList<>(all);
        sorted.sort((a, b) -> Boolean.compare(b.term() == edited, a.term() == edited));
        return sorted;
    }

    private static Line line(Result result, String before, FigurePrinter printer) {
        PrintedFigures printed = result.printed(printer);
        return new Line(
                result.term().label(),
                printed.first().text(),
                printed.second().map(Figure::text).orElse(""),
                before,
                MeasurePage.owner(result));
    }
}
