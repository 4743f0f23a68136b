package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.Judge;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** Rules on which sources differ, held against a figure: which are settled, and how each source is put into words. */
public final class Disputed {
    /** A limit with more characters was worked out, and is cut to a share of itself; layout. */
    private static final int LONGEST_LIMIT = 6;

    private static final double LIMIT_TO = 0.005;

    private Disputed() {}

    /** Rules the trade disagrees on and the owner has not settled: the alternatives of each, by its key and the figure. */
    public static Map<String, List<Verdict>> undecided(Answer answer) {
        return undecided(answer.verdicts());
    }

    private static Map<String, List<Verdict>> undecided(List<Verdict> verdicts) {
        Map<String, List<Verdict>> undecided = new LinkedHashMap<>();
        for (Verdict verdict : verdicts) {
            boolean settled = verdicts.stream()
                    .anyMatch(v -> v.chosen() && (areAlternatives(v, verdict) || standsBefore(v, verdict)));
            if (!settled) {
                undecided
                        .computeIfAbsent(rule(verdict) + " " + verdict.term().path(), k -> new ArrayList<>())
                        .add(verdict);
            }
        }
        return undecided;
    }

    /** Those of a figure. */
    public static List<List<Verdict>> undecided(Answer answer, Term term) {
        // What settles a rule is about the same figure.
        return List.copyOf(undecided(answer.verdictsOn(term)).values());
    }

    /** What the other sources say beside the rule that counts. */
    public static List<Verdict> others(Answer answer, Verdict chosen) {
        return answer.verdicts().stream()
                .filter(v -> !v.chosen() && areAlternatives(v, chosen))
                .toList();
    }

    /** A rule the owner laid down. */
    public static boolean isOwn(Verdict verdict) {
        return verdict.rule().startsWith(Judge.OWN);
    }

    /** Whether a rule of the owner limits the same figure on the same side. */
    private static boolean standsBefore(Verdict own, Verdict other) {
        return isOwn(own)
                && own.term() == other.term()
                && ((own.least() != Double.NEGATIVE_INFINITY && other.least() != Double.NEGATIVE_INFINITY)
                        || (own.most() != Double.POSITIVE_INFINITY && other.most() != Double.POSITIVE_INFINITY));
    }

    private static boolean areAlternatives(Verdict a, Verdict b) {
        return a.term() == b.term() && rule(a).equals(rule(b));
    }

    /** The key of the rule, which stands before that of the alternative. */
    public static String rule(Verdict verdict) {
        int dot = verdict.rule().indexOf('.');
        return dot < 0 ? verdict.rule() : verdict.rule().substring(0, dot);
    }

    /** The key of the alternative. */
    public static String alternative(Verdict verdict) {
        return verdict.rule().substring(rule(verdict).length()).replaceFirst("^\\.", "");
    }

    /** Whether a rule that fails hangs, by every source, on something the build does not say: then it is open whether it is broken. */
    public static boolean isPerhapsNotMeant(List<Verdict> verdicts) {
        return verdicts.stream().allMatch(v -> v.state() == Verdict.State.FAILS && v.isPerhapsNotMeant());
    }

    /** Whether all sources come to the same verdict. */
    public static boolean isAgreed(List<Verdict> verdicts) {
        return verdicts.stream().allMatch(v -> v.state() == verdicts.get(0).state());
    }

    /** Why it is open, to stand behind a name. */
    public static String why(List<Verdict> verdicts) {
        return verdicts.size() == 1
                ? ", not in force unless you choose it"
                : isAgreed(verdicts) ? ", none chosen" : ", the trade disagrees";
    }

    /** How many say so, to stand behind a name. */
    public static String byAll(List<Verdict> verdicts) {
        return switch (verdicts.size()) {
            case 1 -> "";
            case 2 -> ", by both sources";
            default -> ", by all " + verdicts.size() + " sources";
        };
    }

    /** The rule's own label, which stands before that of each alternative. */
    public static String sharedLabel(List<Verdict> verdicts) {
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

    /**
     * An alternative's own words with its limits.
     * @param said what stands above already, before the alternative's own words
     */
    public static String words(Verdict verdict, String said, FigurePrinter printer) {
        String label = verdict.label().startsWith(said + ": ")
                ? verdict.label().substring(said.length() + 2)
                : verdict.label();
        return label + limits(verdict, printer);
    }

    /** The limits behind the words, in the units that come first: "; least 1.27 mm". */
    private static String limits(Verdict verdict, FigurePrinter printer) {
        boolean low = Double.isFinite(verdict.least());
        boolean high = Double.isFinite(verdict.most());
        if (low && high) {
            return "; " + limit(verdict, verdict.least(), printer) + " to " + limit(verdict, verdict.most(), printer);
        }
        return low
                ? "; least " + limit(verdict, verdict.least(), printer)
                : high ? "; most " + limit(verdict, verdict.most(), printer) : "";
    }

    private static String limit(Verdict verdict, double si, FigurePrinter printer) {
        Figure exact = printer.print(verdict.term().dimension(), si, 0).first();
        Figure shown = exact.value().length() <= LONGEST_LIMIT
                ? exact
                : printer.print(verdict.term().dimension(), si, LIMIT_TO * Math.abs(si))
                        .first();
        return (shown.value() + " " + shown.unit()).strip();
    }
}
