package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Verdict;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Percent;
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
        answer.verdicts().stream()
                .filter(v -> v.chosen() && !isPlainlyMet(v))
                .sorted(Comparator.comparing((Verdict v) -> !Disputed.isOwn(v))
                        .thenComparing(v -> WORST_FIRST.indexOf(v.state())))
                .forEach(v -> print(v, Disputed.others(answer, v)));
        Disputed.undecided(answer).values().stream().filter(v -> !areAllMet(v)).forEach(this::printUndecided);
        met();
    }

    /** Met, and no source says otherwise: nothing but its name is left to say. */
    private boolean isPlainlyMet(Verdict verdict) {
        return !all
                && !Disputed.isOwn(verdict)
                && verdict.state() == Verdict.State.MEETS
                && Disputed.others(answer, verdict).stream().allMatch(o -> o.state() == Verdict.State.MEETS);
    }

    private boolean areAllMet(List<Verdict> verdicts) {
        return !all && verdicts.stream().allMatch(v -> v.state() == Verdict.State.MEETS);
    }

    /** All that is plainly met, in one paragraph. */
    private void met() {
        List<String> met = new ArrayList<>();
        answer.verdicts().stream()
                .filter(v -> v.chosen() && isPlainlyMet(v))
                .forEach(v -> met.add(of(v.term(), Disputed.sharedLabel(List.of(v)))));
        Disputed.undecided(answer).values().stream()
                .filter(this::areAllMet)
                .forEach(v -> met.add(of(v.get(0).term(), Disputed.sharedLabel(v)) + Disputed.byAll(v)));
        if (!met.isEmpty()) {
            page.hanging(INDENT, Ink.GOOD, word(Verdict.State.MEETS), Ink.PLAIN, String.join("; ", met));
        }
    }

    private void print(Verdict verdict, List<Verdict> others) {
        page.hanging(INDENT, ink(verdict.state()), word(verdict.state()), Ink.STRONG, named(verdict));
        int indent = INDENT + WORD_WIDTH + 1;
        boolean well = verdict.state() == Verdict.State.MEETS;
        String figure = figure(verdict.term());
        if (well && !figure.isEmpty()) {
            page.paragraph(indent, Disputed.isOwn(verdict) ? verdict.why() : figure + "; " + sure(verdict));
        }
        if (!well || all) {
            page.ifAny(indent, "why:", verdict.why());
            if (all
                    || Disputed.isOwn(verdict)
                    || verdict.state()
                            != Verdict.State.UNKNOWN) { // what is to be read stands under UNKNOWN or SUSPECTS
                page.ifAny(indent, "cure:", verdict.cure());
                page.ifAny(indent, "rule from:", verdict.source());
            }
        }
        if (!others.isEmpty() && (all || others.stream().anyMatch(o -> o.state() != verdict.state()))) {
            page.hanging(indent, Ink.QUIET, "others say", Ink.PLAIN, "");
            others.forEach(other -> printOther(indent + INDENT, other, ""));
        }
    }

    private void printUndecided(List<Verdict> verdicts) {
        Verdict first = verdicts.get(0);
        boolean agreed = Disputed.isAgreed(verdicts);
        String figure = figure(first.term());
        String figureBehind = figure.isEmpty() ? "" : ": " + figure;
        int indent = INDENT + WORD_WIDTH + 1;
        if (agreed && !all && verdicts.size() > 1) {
            String by = of(first.term(), verdicts.size() == 1 ? first.label() : Disputed.sharedLabel(verdicts))
                    + Disputed.byAll(verdicts);
            Verdict.State state = Disputed.isPerhapsNotMeant(verdicts) ? Verdict.State.UNKNOWN : first.state();
            String perhaps = state == first.state() ? "" : "; fails if it is meant here";
            page.hanging(INDENT, ink(state), word(state), Ink.STRONG, by + figureBehind + perhaps);
            if (first.state() != Verdict.State.MEETS) {
                page.ifAny(indent, "why:", first.why());
                page.ifAny(indent, "cure:", first.state() == Verdict.State.UNKNOWN ? "" : first.cure());
            }
            return;
        }
        page.hanging(
                INDENT,
                Ink.DOUBTFUL,
                PlainText.padded("OPEN", WORD_WIDTH),
                Ink.STRONG,
                first.term().label() + Disputed.why(verdicts) + figureBehind);
        String shared = Disputed.sharedLabel(verdicts);
        if (!shared.equals(first.term().label())) {
            page.paragraph(indent, shared + ":");
        }
        verdicts.forEach(verdict -> printOther(indent, verdict, shared));
        if (verdicts.size() == 1) {
            page.ifAny(indent, "why:", first.why());
        }
        page.ifAny(
                indent,
                "choose:",
                "longthrow set FILE rules.choose." + Disputed.rule(first) + " " + Disputed.alternative(verdicts.get(0))
                        + (verdicts.size() == 1 ? "" : ", or " + others(verdicts)));
    }

    private static String others(List<Verdict> verdicts) {
        return verdicts.stream().skip(1).map(Disputed::alternative).collect(Collectors.joining(", or "))
                + " in its place";
    }

    /** @param said what stands above already, before the alternative's own words */
    private void printOther(int indent, Verdict other, String said) {
        String source = all && !other.source().isBlank() ? " [" + other.source() + "]" : "";
        page.hanging(
                indent,
                ink(other.state()),
                word(other.state()),
                Ink.PLAIN,
                Disputed.words(other, said, printer) + source);
    }

    private static String named(Verdict verdict) {
        return of(verdict.term(), verdict.label());
    }

    /** With the figure it is about: one rule may be held against two of them. */
    private static String of(Term term, String label) {
        return label.contains(term.label()) ? label : term.label() + ": " + label;
    }

    private String figure(Term term) {
        return answer.value(term)
                .map(result -> result.printed(printer).line() + (result.contradicted() ? ", IN DISPUTE" : ""))
                .orElse("");
    }

    private static String sure(Verdict verdict) {
        return Percent.ofProbability(verdict.probability()) + " sure to keep it";
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
