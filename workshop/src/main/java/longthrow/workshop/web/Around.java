package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.quantity.FigurePrinter;
import longthrow.workshop.print.PageWords;

/**
 * What stands around every answer, whatever was asked: warnings above it; below it the figures behind it, what was taken and not read, and cautions.
 * @param warnings to act on
 * @param figures  of the engine that it is made of
 * @param taken    for granted
 * @param count    of all that was taken
 * @param cautions to know
 */
public record Around(List<String> warnings, List<Behind> figures, List<Taken> taken, int count, List<String> cautions) {
    public Around {
        warnings = List.copyOf(warnings);
        figures = List.copyOf(figures);
        taken = List.copyOf(taken);
        cautions = List.copyOf(cautions);
    }

    /** A figure of the engine, with the way to where it is read or worked out. */
    public record Behind(Frame.Place place, String words) {}

    /**
     * One thing taken, for one place or several.
     * @param source where it comes from
     * @param places that it stands in for
     */
    public record Taken(String what, String source, List<Frame.Place> places) {
        public Taken {
            places = List.copyOf(places);
        }
    }

    /**
     * Of an answer.
     * @param base address of the build
     */
    public static Around of(Answer answer, String base) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        return new Around(
                said(answer, Finding.Kind.WARNING),
                answer.values().stream()
                        .filter(value -> !value.contradicted())
                        .map(value -> new Behind(
                                Ways.input(value.term().path(), base),
                                value.printed(printer).line()))
                        .toList(),
                taken(answer.defaults(), base),
                answer.defaults().size(),
                said(answer, Finding.Kind.NOTE));
    }

    /** What does not agree, likeliest first. */
    public static List<String> suspects(Answer answer) {
        return said(answer, Finding.Kind.SUSPECT);
    }

    private static List<String> said(Answer answer, Finding.Kind kind) {
        return answer.findings().stream()
                .filter(f -> f.kind() == kind)
                .map(f -> where(f) + PageWords.said(f.message() + (f.mend().isEmpty() ? "" : ". Do this: " + f.mend())))
                .toList();
    }

    /** Not said twice. */
    private static String where(Finding finding) {
        String place = PageWords.place(finding.where()) + ": ";
        return finding.message().startsWith(place) ? "" : place;
    }

    private static List<Taken> taken(List<DefaultUsed> defaults, String base) {
        Map<DefaultUsed, List<Frame.Place>> alike = new LinkedHashMap<>();
        for (DefaultUsed one : defaults) {
            alike.computeIfAbsent(new DefaultUsed("", one.what(), one.source()), k -> new ArrayList<>())
                    .add(Ways.input(one.where(), base));
        }
        return alike.entrySet().stream()
                .map(e ->
                        new Taken(PageWords.said(e.getKey().what()), e.getKey().source(), e.getValue()))
                .toList();
    }
}
