package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.clear.Clear;
import longthrow.core.engine.Outcome;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/**
 * An answer as an owner reads it at the bench: what must not be done first, then what does not add up, the figures, the verdicts,
 * what is not known, what was taken for granted, and what to read next. One use each.
 */
public final class AnswerText {
    /** Narrower than this a figure with its doubt no longer fits on a line. */
    public static final int LEAST_WIDTH = 60;

    /** Entries of a list before the rest is left to {@code --all}; layout. */
    private static final int SHORT_LIST = 3;

    private static final int SHORT_LIST_OF_UNKNOWNS = 6;
    /** The verdicts above have the rest of it. */
    private static final int LINES_OF_A_PART = 2;

    private static final int INDENT = 2;
    /** The question that searches. */
    private static final String FIT = "fit";

    private static final String CLEAR = "clear";

    private final Answer answer;
    private final boolean all;
    private final Page page;
    private final FigurePrinter printer;

    private AnswerText(Answer answer, int width, boolean colour, boolean all) {
        this.answer = answer;
        this.all = all;
        this.page = new Page(width, colour);
        this.printer = new FigurePrinter(answer.units());
    }

    /**
     * The whole sheet, ended by a line feed.
     *
     * @param width  columns, 60 or more
     * @param colour whether words may be coloured; they say the same without
     * @param all    whether to print every reading, every share and every default
     */
    public static String of(Answer answer, int width, boolean colour, boolean all) {
        return new AnswerText(answer, width, colour, all).laidOut();
    }

    private String laidOut() {
        title();
        stops();
        suspects();
        new ClearanceList(answer, page, all).print();
        new LadderList(answer, page, printer, all).print();
        new ShakingList(answer, page, printer, all).print();
        new TorqueList(answer, page, printer, all).print();
        new OverlayList(answer, page, printer, all).print();
        RunsList runs = new RunsList(answer, page, printer, all);
        runs.printVerdict();
        boolean isOfRuns = answer.runs().isPresent();
        if (isOfRuns) {
            warnings(); // what a verdict may hang on stands beside it
        }
        runs.print();
        boolean searched =
                !answer.candidates().isEmpty() || !answer.rejections().isEmpty();
        new CandidateList(answer, page, printer, all).print();
        if (!searched && !isOfRuns) {
            new FigureTable(answer, page, printer, all).print();
        }
        new ValveMotionList(answer, page, printer, all).print();
        new VerdictList(answer, page, printer, all).print();
        parts();
        if (!isOfRuns) {
            warnings();
        }
        unknowns();
        defaults();
        next();
        findings(Finding.Kind.NOTE, answer.question().equals(FIT) ? "THE STACK SOLVED" : "NOTES", "");
        return page.toString();
    }

    private void warnings() {
        findings(Finding.Kind.WARNING, "WARNINGS", "to act on");
    }

    private void title() {
        page.hanging(0, Ink.STRONG, answer.question() + ":", Ink.STRONG, answer.engine());
        if (answer.invented()) {
            page.hanging(
                    0,
                    Ink.DOUBTFUL,
                    "INVENTED:",
                    Ink.PLAIN,
                    answer.runs().isPresent()
                            ? "no such engine or run exists; the sheet says so."
                            : "no such engine exists; the build file says so.");
        }
        if (answer.question().equals(CLEAR) && !answer.clearances().isEmpty()) {
            page.hanging(0, Ink.STRONG, "In short:", Ink.STRONG, Clear.inShort(answer) + ".");
        }
        if (answer.runs().isEmpty()) {
            page.paragraph(0, answer.question().equals(FIT) ? Tally.ofSearch(answer) : Tally.of(answer));
        }
        answer.findings().stream().filter(this::isSaidOnTop).forEach(f -> page.paragraph(0, f.message() + "."));
    }

    private void stops() {
        if (answer.stops().isEmpty()) {
            return;
        }
        page.heading(Ink.BAD, "STOP", "");
        for (Stop stop : answer.stops()) {
            page.hanging(INDENT, Ink.BAD, stop.refused() ? "REFUSED:" : "NOT APPROVED:", Ink.STRONG, stop.what());
            page.ifAny(2 * INDENT + 1, "why:", stop.why());
            page.ifAny(2 * INDENT + 1, "safe way:", stop.wayRound());
        }
    }

    private void suspects() {
        List<Finding> suspects = of(Finding.Kind.SUSPECT);
        if (suspects.isEmpty()) {
            return;
        }
        page.heading(Ink.BAD, "SUSPECTS", "readings that do not agree with the rest, likeliest first");
        int rank = 0;
        for (Finding suspect : suspects) {
            page.hanging(INDENT, Ink.DOUBTFUL, ++rank + ". " + suspect.where() + ":", Ink.PLAIN, suspect.message());
            page.ifAny(2 * INDENT + 1, "do this:", suspect.mend());
        }
    }

    private void parts() {
        List<Finding> parts = of(Finding.Kind.PART);
        if (parts.isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "PARTS", "what to do with each");
        String notYet = ": " + Outcome.NOT_YET_KNOWN.label() + ":";
        List<String> open = new ArrayList<>();
        for (Finding part : parts) {
            int end = part.message().indexOf(notYet);
            if (!all && end > 0) {
                open.add(part.message().substring(0, end));
                continue;
            }
            page.item(INDENT, part.message(), all ? Integer.MAX_VALUE : LINES_OF_A_PART);
            if (all) {
                page.ifAny(2 * INDENT + 1, "do this:", part.mend());
            }
        }
        if (!open.isEmpty()) {
            page.item(
                    INDENT,
                    Outcome.NOT_YET_KNOWN.label() + ": " + String.join(", ", open) + " (why: --all)",
                    Integer.MAX_VALUE);
        }
    }

    private void findings(Finding.Kind kind, String heading, String meaning) {
        List<Finding> findings = of(kind);
        if (findings.isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, heading, meaning);
        for (Finding finding : findings) {
            String mend = finding.mend().isBlank() ? "" : ". Do this: " + finding.mend();
            page.hanging(INDENT, Ink.STRONG, finding.where() + ":", Ink.PLAIN, finding.message() + mend);
        }
    }

    private List<Finding> of(Finding.Kind kind) {
        return answer.findings().stream()
                .filter(f -> !isSaidOnTop(f))
                .filter(f -> f.kind() == kind && (all || !(isSaidByTheVerdicts(f) || isUncalledFor(f))))
                .toList();
    }

    /** What was searched stands under the title. */
    private boolean isSaidOnTop(Finding finding) {
        return answer.question().equals(FIT)
                && finding.kind() == Finding.Kind.NOTE
                && finding.where().equals("search");
    }

    /** A note on a rule that stands open: its alternatives and how to choose are printed among the verdicts. */
    private boolean isSaidByTheVerdicts(Finding finding) {
        return finding.kind() == Finding.Kind.NOTE && (isSpreadOfARuleInForce(finding) || isOpen(finding));
    }

    /** A caution for a leak-down test matters to those who have taken one, are told to, or ask for all. */
    private boolean isUncalledFor(Finding finding) {
        String test = Term.LEAK_DOWN.path();
        return finding.kind() == Finding.Kind.NOTE
                && finding.where().equals(test)
                && answer.value(Term.LEAK_DOWN).isEmpty()
                && answer.next().stream().noneMatch(next -> next.read() == Term.LEAK_DOWN)
                && answer.findings().stream().noneMatch(other -> other.mend().contains("leak-down"));
    }

    /** What the other sources say stands below the verdict of the one in force. */
    private boolean isSpreadOfARuleInForce(Finding finding) {
        int end = finding.message().indexOf(": sources disagree: ");
        return end > 0
                && answer.verdicts().stream()
                        .anyMatch(v -> v.chosen()
                                && finding.where().equals(v.term().path())
                                && v.label().startsWith(finding.message().substring(0, end)));
    }

    private boolean isOpen(Finding finding) {
        return Disputed.undecided(answer).values().stream()
                .map(verdicts -> verdicts.get(0))
                .anyMatch(v -> finding.where().equals(v.term().path())
                        && finding.mend().contains(Disputed.rule(v) + ":"));
    }

    private void unknowns() {
        if (answer.unknowns().isEmpty()) {
            return;
        }
        page.heading(Ink.DOUBTFUL, "UNKNOWN", "until it is measured");
        for (Unknown unknown : some(answer.unknowns(), SHORT_LIST_OF_UNKNOWNS)) {
            String read = unknown.missing().stream()
                    .map(term -> term == unknown.term() ? "it (" + term.path() + ")" : named(term))
                    .collect(Collectors.joining("; "));
            boolean isTold = !unknown.why().equals(unknown.term().meaning()); // more than what the word means
            String why = all || isTold || read.isEmpty() ? unknown.why() : "";
            String apart = why.isEmpty() || read.isEmpty() ? "" : "; ";
            page.hanging(
                    INDENT,
                    Ink.STRONG,
                    unknown.term().label() + ":",
                    Ink.PLAIN,
                    why + apart + (read.isEmpty() ? "" : "read " + read));
        }
        more(answer.unknowns().size(), SHORT_LIST_OF_UNKNOWNS);
    }

    /** Label and place: the place is what the owner types. */
    private static String named(Term term) {
        return term.label() + " (" + term.path() + ")";
    }

    private void defaults() {
        if (answer.defaults().isEmpty()) {
            return;
        }
        page.heading(
                Ink.STRONG,
                "TAKEN FOR GRANTED",
                answer.runs().isPresent() ? "because the sheet does not say" : "because the build file does not say");
        Map<String, List<DefaultUsed>> byWhat = answer.defaults().stream()
                .collect(Collectors.groupingBy(DefaultUsed::what, LinkedHashMap::new, Collectors.toList()));
        int left = all ? Integer.MAX_VALUE : SHORT_LIST;
        List<Map.Entry<String, List<DefaultUsed>>> widest = byWhat.entrySet().stream()
                .sorted(Comparator.comparing(e -> -e.getValue().size()))
                .limit(left)
                .toList();
        for (Map.Entry<String, List<DefaultUsed>> group : widest) {
            List<String> places = group.getValue().stream()
                    .map(DefaultUsed::where)
                    .filter(w -> !w.isBlank())
                    .distinct()
                    .toList();
            String where = all ? String.join(", ", places) : shortly(places);
            page.item(INDENT, group.getKey() + (where.isEmpty() ? "" : " (" + where + ")"), Integer.MAX_VALUE);
            if (all) {
                String sources = group.getValue().stream()
                        .map(DefaultUsed::source)
                        .distinct()
                        .collect(Collectors.joining("; "));
                page.ifAny(2 * INDENT, "source:", sources);
            }
        }
        more(byWhat.size(), SHORT_LIST);
    }

    private static String shortly(List<String> places) {
        return places.size() <= SHORT_LIST
                ? String.join(", ", places)
                : String.join(", ", places.subList(0, SHORT_LIST - 1)) + " and " + (places.size() - SHORT_LIST + 1)
                        + " more";
    }

    private void next() {
        if (answer.next().isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "READ NEXT", "what cuts the doubt most for the time it takes");
        int rank = 0;
        String before = "";
        for (NextReading reading : some(answer.next(), SHORT_LIST)) {
            page.hanging(
                    INDENT,
                    Ink.STRONG,
                    ++rank + ". " + reading.read().label(),
                    Ink.PLAIN,
                    "(" + reading.read().path() + "), " + reading.with().replace('_', ' ') + ", about "
                            + minutes(reading.minutes()));
            page.ifAny(2 * INDENT + 1, "how:", reading.how().equals(before) ? "as the one above" : reading.how());
            before = reading.how();
            page.ifAny(
                    2 * INDENT + 1, "brings:", brings(reading) + (reading.why().isBlank() ? "" : "; " + reading.why()));
        }
        more(answer.next().size(), SHORT_LIST);
    }

    private static String minutes(double minutes) {
        return minutes < 1.5 ? "1 minute" : (long) Math.ceil(minutes) + " minutes";
    }

    private String brings(NextReading reading) {
        if (Double.isNaN(reading.now()) || Double.isNaN(reading.after())) {
            return "settles the disagreement";
        }
        double near =
                answer.value(reading.target()).map(v -> v.figure().value()).orElse(0.0);
        String after = Doubt.text(printer, reading.target().dimension(), near, reading.after());
        String now = Double.isFinite(reading.now())
                ? Doubt.text(printer, reading.target().dimension(), near, reading.now())
                : "unknown";
        return reading.target().label() + " from " + now + " to " + after;
    }

    private <T> List<T> some(List<T> entries, int most) {
        return all || entries.size() <= most ? entries : entries.subList(0, most);
    }

    private void more(int size, int most) {
        if (!all && size > most) {
            page.hanging(INDENT, Ink.QUIET, "", Ink.QUIET, "and " + (size - most) + " more: --all");
        }
    }

    /** What the answer holds, counted, in one sentence. */
    private static final class Tally {
        private static String of(Answer answer) {
            long suspects = answer.findings().stream()
                    .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                    .count();
            long open = Disputed.undecided(answer).values().stream()
                    .filter(v -> Disputed.isPerhapsNotMeant(v)
                            || v.stream()
                                    .anyMatch(other -> other.state() != v.get(0).state()))
                    .count();
            String verdicts = Arrays.stream(longthrow.core.answer.Verdict.State.values())
                    .map(state -> counted(answer, state))
                    .filter(s -> !s.isEmpty())
                    .collect(Collectors.joining(", "));
            return (answer.stops().isEmpty() ? "" : some(answer.stops().size(), "stop") + "; ")
                    + (suspects == 0 ? "no suspect reading" : some(suspects, "suspect reading"))
                    + (verdicts.isEmpty() ? "" : "; rules: " + verdicts)
                    + (open == 0 ? "" : "; " + some(open, "rule") + " open")
                    + (answer.unknowns().isEmpty()
                            ? ""
                            : "; " + some(answer.unknowns().size(), "figure") + " unknown")
                    + ".";
        }

        private static String ofSearch(Answer answer) {
            String stops = answer.stops().isEmpty()
                    ? ""
                    : some(answer.stops().size(), "stop")
                            + (answer.candidates().isEmpty() ? "; " : " for the best of them; ");
            return stops
                    + (answer.candidates().isEmpty()
                            ? (answer.rejections().isEmpty()
                                            && answer.findings().stream()
                                                    .noneMatch(f -> f.where().equals("search"))
                                    ? "nothing was searched."
                                    : "nothing on offer is known to fit.")
                            : some(answer.candidates().size(), "way") + " that "
                                    + (answer.candidates().size() == 1 ? "fits" : "fit")
                                    + " below, best first; the best fits "
                                    + answer.candidates().get(0).sureness().label() + ".");
        }

        private static String counted(Answer answer, longthrow.core.answer.Verdict.State state) {
            long count = answer.verdicts().stream()
                    .filter(v -> v.chosen() && v.state() == state)
                    .count();
            return count == 0 ? "" : count + " " + state.label();
        }

        private static String some(long count, String what) {
            return count + " " + what + (count == 1 ? "" : "s");
        }
    }
}
