package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.Judge;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Percent;
import longthrow.core.term.Term;

/** Figures held against rules, the worst first; what the rest of the trade says stands below the rule that was chosen. */
final class VerdictList {
    private static final int INDENT = 2;
    /** A limit with more characters was worked out, and is cut to a share of itself; layout. */
    private static final int LONGEST_LIMIT = 6;

    private static final double LIMIT_TO = 0.005;
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
                .sorted(Comparator.comparing((Verdict v) -> !isOwn(v))
                        .thenComparing(v -> WORST_FIRST.indexOf(v.state())))
                .forEach(v -> print(v, others(v)));
        undecided(answer).values().stream().filter(v -> !areAllMet(v)).forEach(this::printUndecided);
        met();
    }

    /** Met, and no source says otherwise: nothing but its name is left to say. */
    private boolean isPlainlyMet(Verdict verdict) {
        return !all
                && !isOwn(verdict)
                && verdict.state() == Verdict.State.MEETS
                && others(verdict).stream().allMatch(o -> o.state() == Verdict.State.MEETS);
    }

    /** A rule the owner laid down: what it says and by how much it is kept is always printed. */
    private static boolean isOwn(Verdict verdict) {
        return verdict.rule().startsWith(Judge.OWN);
    }

    private boolean areAllMet(List<Verdict> verdicts) {
        return !all && verdicts.stream().allMatch(v -> v.state() == Verdict.State.MEETS);
    }

    /** All that is plainly met, in one paragraph. */
    private void met() {
        List<String> met = new ArrayList<>();
        answer.verdicts().stream()
                .filter(v -> v.chosen() && isPlainlyMet(v))
                .forEach(v -> met.add(of(v.term(), sharedLabel(List.of(v)))));
        undecided(answer).values().stream()
                .filter(this::areAllMet)
                .forEach(v -> met.add(of(v.get(0).term(), sharedLabel(v)) + byAll(v)));
        if (!met.isEmpty()) {
            page.hanging(INDENT, Ink.GOOD, word(Verdict.State.MEETS), Ink.PLAIN, String.join("; ", met));
        }
    }

    private static String byAll(List<Verdict> verdicts) {
        return switch (verdicts.size()) {
            case 1 -> "";
            case 2 -> ", by both sources";
            default -> ", by all " + verdicts.size() + " sources";
        };
    }

    /** Rules the trade disagrees on and the owner has not settled: the alternatives of each, by its key. */
    static Map<String, List<Verdict>> undecided(Answer answer) {
        Map<String, List<Verdict>> undecided = new LinkedHashMap<>();
        for (Verdict verdict : answer.verdicts()) {
            boolean settled = answer.verdicts().stream()
                    .anyMatch(v -> v.chosen() && (areAlternatives(v, verdict) || standsBefore(v, verdict)));
            if (!settled) {
                undecided
                        .computeIfAbsent(
                                disputed(verdict) + " " + verdict.term().path(), k -> new ArrayList<>())
                        .add(verdict);
            }
        }
        return undecided;
    }

    /** Whether a rule of the owner limits the same figure on the same side. */
    private static boolean standsBefore(Verdict own, Verdict other) {
        return isOwn(own)
                && own.term() == other.term()
                && ((own.least() != Double.NEGATIVE_INFINITY && other.least() != Double.NEGATIVE_INFINITY)
                        || (own.most() != Double.POSITIVE_INFINITY && other.most() != Double.POSITIVE_INFINITY));
    }

    private List<Verdict> others(Verdict chosen) {
        return answer.verdicts().stream()
                .filter(v -> !v.chosen() && areAlternatives(v, chosen))
                .toList();
    }

    private static boolean areAlternatives(Verdict a, Verdict b) {
        return a.term() == b.term() && disputed(a).equals(disputed(b));
    }

    /** Whether a rule that fails hangs, by every source, on something the build does not say: then it is open whether it is broken. */
    static boolean isPerhapsNotMeant(List<Verdict> verdicts) {
        return verdicts.stream().allMatch(v -> v.state() == Verdict.State.FAILS && v.isPerhapsNotMeant());
    }

    /** The key of the rule, which stands before that of the alternative. */
    static String disputed(Verdict verdict) {
        int dot = verdict.rule().indexOf('.');
        return dot < 0 ? verdict.rule() : verdict.rule().substring(0, dot);
    }

    private static String alternative(Verdict verdict) {
        return verdict.rule().substring(disputed(verdict).length()).replaceFirst("^\\.", "");
    }

    private void print(Verdict verdict, List<Verdict> others) {
        page.hanging(INDENT, ink(verdict.state()), word(verdict.state()), Ink.STRONG, named(verdict));
        int indent = INDENT + WORD_WIDTH + 1;
        boolean well = verdict.state() == Verdict.State.MEETS;
        String figure = figure(verdict.term());
        if (well && !figure.isEmpty()) {
            page.paragraph(indent, isOwn(verdict) ? verdict.why() : figure + "; " + sure(verdict));
        }
        if (!well || all) {
            page.ifAny(indent, "why:", verdict.why());
            if (all
                    || isOwn(verdict)
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
        boolean agreed = verdicts.stream().allMatch(v -> v.state() == first.state());
        String figure = figure(first.term());
        String figureBehind = figure.isEmpty() ? "" : ": " + figure;
        int indent = INDENT + WORD_WIDTH + 1;
        if (agreed && !all && verdicts.size() > 1) {
            String by =
                    of(first.term(), verdicts.size() == 1 ? first.label() : sharedLabel(verdicts)) + byAll(verdicts);
            Verdict.State state = isPerhapsNotMeant(verdicts) ? Verdict.State.UNKNOWN : first.state();
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
                first.term().label() + why(verdicts) + figureBehind);
        String shared = sharedLabel(verdicts);
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
                "longthrow set FILE rules.choose." + disputed(first) + " " + alternative(verdicts.get(0))
                        + (verdicts.size() == 1 ? "" : ", or " + others(verdicts)));
    }

    private static String why(List<Verdict> verdicts) {
        boolean agreed =
                verdicts.stream().allMatch(v -> v.state() == verdicts.get(0).state());
        return verdicts.size() == 1
                ? ", not in force unless you choose it"
                : agreed ? ", none chosen" : ", the trade disagrees";
    }

    private static String others(List<Verdict> verdicts) {
        return verdicts.stream().skip(1).map(VerdictList::alternative).collect(Collectors.joining(", or "))
                + " in its place";
    }

    /** The rule's own label, which stands before that of each alternative. */
    private static String sharedLabel(List<Verdict> verdicts) {
        String first = verdicts.get(0).label();
        int end = first.lastIndexOf(": ");
        while (end > 0 && !startsAll(verdicts, first.substring(0, end))) {
            end = first.lastIndexOf(": ", end - 1);
        }
        return end > 0 ? first.substring(0, end) : verdicts.get(0).term().label();
    }

    private static boolean startsAll(List<Verdict> verdicts, String start) {
        return verdicts.stream().allMatch(v -> v.label().startsWith(start + ": "));
    }

    /** @param said what stands above already, before the alternative's own words */
    private void printOther(int indent, Verdict other, String said) {
        String source = all && !other.source().isBlank() ? " [" + other.source() + "]" : "";
        String label =
                other.label().startsWith(said + ": ") ? other.label().substring(said.length() + 2) : other.label();
        page.hanging(indent, ink(other.state()), word(other.state()), Ink.PLAIN, label + limits(other) + source);
    }

    /** The limits behind the words, in the units that come first: "; least 1.27 mm". */
    private String limits(Verdict verdict) {
        boolean low = Double.isFinite(verdict.least());
        boolean high = Double.isFinite(verdict.most());
        if (low && high) {
            return "; " + limit(verdict, verdict.least()) + " to " + limit(verdict, verdict.most());
        }
        return low
                ? "; least " + limit(verdict, verdict.least())
                : high ? "; most " + limit(verdict, verdict.most()) : "";
    }

    private String limit(Verdict verdict, double si) {
        Figure exact = printer.print(verdict.term().dimension(), si, 0).first();
        Figure shown = exact.value().length() <= LONGEST_LIMIT
                ? exact
                : printer.print(verdict.term().dimension(), si, LIMIT_TO * Math.abs(si))
                        .first();
        return (shown.value() + " " + shown.unit()).strip();
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
