package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Verdict;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** Figures held against rules, the worst first; what the rest of the trade says stands below the rule that was chosen. */
final class VerdictList {
    private static final int INDENT = 2;
    private static final List<Verdict.State> WORST_FIRST =
            List.of(Verdict.State.FAILS, Verdict.State.NEAR, Verdict.State.UNKNOWN, Verdict.State.MEETS);

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    VerdictList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        if (answer.verdicts().isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "VERDICTS", "meets or fails: 95 % sure; near: not proven either way");
        Map<Verdict, List<Verdict>> others = new LinkedHashMap<>();
        answer.verdicts().stream()
                .filter(Verdict::chosen)
                .sorted(Comparator.comparing(v -> WORST_FIRST.indexOf(v.state())))
                .forEach(v -> others.put(v, new ArrayList<>()));
        Map<Term, List<Verdict>> undecided = new LinkedHashMap<>();
        for (Verdict verdict : answer.verdicts()) {
            if (!verdict.chosen()) {
                others.keySet().stream()
                        .filter(v -> v.term() == verdict.term())
                        .max(Comparator.comparing(v -> nearness(v.rule(), verdict.rule())))
                        .map(others::get)
                        .orElseGet(() -> undecided.computeIfAbsent(verdict.term(), t -> new ArrayList<>()))
                        .add(verdict);
            }
        }
        others.forEach(this::print);
        undecided.forEach(this::printUndecided);
    }

    /** Characters two keys share from the start: alternatives of one disputed rule share its key. */
    private static int nearness(String a, String b) {
        int at = 0;
        while (at < Math.min(a.length(), b.length()) && a.charAt(at) == b.charAt(at)) {
            at++;
        }
        return at;
    }

    private void print(Verdict verdict, List<Verdict> others) {
        page.hanging(INDENT, ink(verdict.state()), word(verdict.state()), Ink.STRONG, named(verdict));
        int indent = INDENT + WORD_WIDTH + 1;
        boolean well = verdict.state() == Verdict.State.MEETS;
        String found = found(verdict);
        if (!found.isEmpty()) {
            page.paragraph(indent, found);
        }
        if (!well || all) {
            page.ifAny(indent, "why:", verdict.why());
            page.ifAny(indent, "cure:", verdict.cure());
            page.ifAny(indent, "rule from:", verdict.source());
        }
        if (!others.isEmpty() && (all || !well || others.stream().anyMatch(o -> o.state() != verdict.state()))) {
            page.hanging(indent, Ink.QUIET, "others say", Ink.PLAIN, "");
            others.forEach(other -> printOther(indent + INDENT, other));
        }
    }

    private void printUndecided(Term term, List<Verdict> verdicts) {
        page.hanging(
                INDENT, Ink.DOUBTFUL, term.label() + ":", Ink.PLAIN, "the trade disagrees and no rule has been chosen");
        String found = found(verdicts.get(0));
        if (!found.isEmpty()) {
            page.paragraph(2 * INDENT, found);
        }
        verdicts.forEach(verdict -> printOther(2 * INDENT, verdict));
    }

    private void printOther(int indent, Verdict other) {
        String source = all && !other.source().isBlank() ? " [" + other.source() + "]" : "";
        page.hanging(indent, ink(other.state()), word(other.state()), Ink.PLAIN, other.label() + source);
    }

    private static String named(Verdict verdict) {
        String label = verdict.label();
        return label.contains(verdict.term().label()) ? label : verdict.term().label() + ": " + label;
    }

    private String found(Verdict verdict) {
        String figure = answer.value(verdict.term())
                .map(result -> "it is " + FigureTable.printed(printer, result).line()
                        + (result.contradicted() ? ", in dispute" : ""))
                .orElse("");
        String sure = Double.isNaN(verdict.probability())
                ? ""
                : Percent.ofProbability(verdict.probability()) + " sure to keep it";
        return figure + (figure.isEmpty() || sure.isEmpty() ? "" : "; ") + sure;
    }

    private static final int WORD_WIDTH = "UNKNOWN".length();

    private static String word(Verdict.State state) {
        String word =
                state == Verdict.State.MEETS ? state.label() : state.label().toUpperCase(java.util.Locale.ROOT);
        return PlainText.padded(word, WORD_WIDTH);
    }

    private static Ink ink(Verdict.State state) {
        return switch (state) {
            case MEETS -> Ink.GOOD;
            case NEAR, UNKNOWN -> Ink.DOUBTFUL;
            case FAILS -> Ink.BAD;
        };
    }
}
