package longthrow.workshop.print;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.fit.Fit;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** Ways that go together, best first, and why the others do not. */
final class CandidateList {
    private static final int INDENT = 2;
    private static final int INNER = 5;
    /** Candidates told in full unless all is asked for; the rest in a few lines each. */
    private static final int IN_FULL = 1;
    /** Rejections before the rest is left to {@code --all}. */
    private static final int SHORT_LIST = 12;

    private static final Set<Term> STACK =
            Set.of(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT, Term.GASKET_THICKNESS);
    /** Said by others beside them. */
    private static final Set<Term> LEFT_OUT = Set.of(Term.RING_BEARS, Term.CLEARANCE_VOLUME);

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    CandidateList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        if (!answer.candidates().isEmpty()) {
            page.heading(Ink.STRONG, "FITS", "best first");
            page.ifAny(INDENT, "best first:", Fit.order(answer));
            int rank = 0;
            for (Candidate candidate : answer.candidates()) {
                candidate(++rank, candidate, all || rank <= IN_FULL);
            }
        }
        rejections();
    }

    private void candidate(int rank, Candidate c, boolean full) {
        boolean fails = c.verdicts().stream().anyMatch(v -> v.chosen() && v.state() == Verdict.State.FAILS);
        page.hanging(
                INDENT,
                Ink.STRONG,
                rank + ". " + c.title() + ":",
                fails ? Ink.BAD : Ink.PLAIN,
                "fits " + c.sureness().label() + (fails ? ", but fails a rule" : "") + "; " + total(c.total()));
        if (!full) {
            page.ifAny(INNER, "figures:", shortly(c));
            aims(c);
            page.ifAny(
                    INNER,
                    "fails:",
                    c.verdicts().stream()
                            .filter(v -> v.chosen() && v.state() == Verdict.State.FAILS)
                            .map(Verdict::label)
                            .distinct()
                            .collect(Collectors.joining("; ")));
            pieces(c);
            page.ifAny(
                    INNER,
                    "sources differ, none chosen:",
                    c.splits().stream()
                            .map(s -> s.label() + " (" + s.refuse().size() + " of " + s.sources() + " against)")
                            .collect(Collectors.joining("; ")));
            list(
                    "mind:",
                    c.unknowns().stream()
                            .filter(f -> f.where().startsWith("NOT JUDGED"))
                            .toList());
            list(
                    "mind:",
                    c.forces().stream()
                            .filter(f ->
                                    f.where().equals("refused") || f.where().equals("not approved"))
                            .toList());
            return;
        }
        figures(c.values());
        c.notKnown()
                .forEach(u -> page.hanging(INNER, Ink.DOUBTFUL, u.term().label() + " not known:", Ink.PLAIN, u.why()));
        aims(c);
        pieces(c);
        rules(c);
        list("changes:", c.changes());
        list("asks for:", c.forces());
        list("unknown:", c.unknowns());
        page.ifAny(
                INNER,
                "also needed, not in the sum:",
                String.join("; ", c.total().forgotten()));
    }

    /** What is aimed at, and limits of the owner's own that are not surely kept. */
    private void aims(Candidate c) {
        for (Aimed aim : c.openAims()) {
            boolean misses = aim.state() == Aimed.State.MISSES;
            page.hanging(
                    INNER,
                    misses ? Ink.BAD : aim.state() == Aimed.State.WITHIN_DOUBT ? Ink.PLAIN : Ink.DOUBTFUL,
                    "aim, " + (misses ? "MISSED" : aim.state().label()) + ":",
                    Ink.PLAIN,
                    (aim.isOneFigure() ? aim.term().label() + " " : "") + aim.said());
        }
    }

    private String shortly(Candidate c) {
        return c.values().stream()
                .filter(v -> List.of("engine.squish", "engine.compression_ratio")
                        .contains(v.term().path()))
                .map(v -> v.term().label() + " " + line(v))
                .collect(Collectors.joining(", "));
    }

    private String line(Result value) {
        return printer.print(
                        value.term().dimension(),
                        value.figure().value(),
                        value.figure().expanded())
                .line();
    }

    /** What adds up, in a line; the rest below each other. */
    private void figures(List<Result> all) {
        String stack = all.stream()
                .filter(v -> STACK.contains(v.term()))
                .map(v -> v.term().label() + " " + line(v))
                .collect(Collectors.joining(", "));
        page.ifAny(INNER, "stack:", stack);
        List<Result> values = all.stream()
                .filter(v -> !STACK.contains(v.term()) && (this.all || !LEFT_OUT.contains(v.term())))
                .toList();
        int widest = values.stream()
                .mapToInt(v -> PlainText.width(v.term().label()))
                .max()
                .orElse(0);
        for (Result value : values) {
            String label = value.term().label();
            page.hanging(INNER, Ink.PLAIN, label + " ".repeat(widest - PlainText.width(label)), Ink.PLAIN, line(value));
        }
    }

    private void pieces(Candidate c) {
        for (Candidate.Piece piece : c.pieces()) {
            String lead = piece.leadDays().isPresent() ? ", " + piece.leadDays().getAsInt() + " days" : "";
            page.hanging(
                    INNER,
                    Ink.QUIET,
                    piece.kind().replace('_', ' ') + ":",
                    Ink.PLAIN,
                    piece.code() + (piece.name().isEmpty() ? "" : ", " + piece.name())
                            + (piece.vendor().isEmpty() ? "" : ", " + piece.vendor())
                            + ", " + money(piece.price(), piece.currency()) + lead
                            + (piece.note().isEmpty() ? "" : "; " + piece.note()));
        }
    }

    private void rules(Candidate c) {
        c.verdicts().stream()
                .filter(v -> v.state() == Verdict.State.FAILS || v.state() == Verdict.State.NEAR)
                .filter(v -> all || v.chosen())
                .filter(v -> c.aims().stream()
                        .noneMatch(a -> a.term() == v.term() && a.wish().equals(v.label())))
                .sorted(Comparator.comparing((Verdict v) -> v.chosen() ? 0 : 1)
                        .thenComparing(v -> v.state() == Verdict.State.FAILS ? 0 : 1))
                .forEach(v -> page.hanging(
                        INNER,
                        v.state() == Verdict.State.FAILS ? Ink.BAD : Ink.DOUBTFUL,
                        (v.state() == Verdict.State.FAILS ? "FAILS" : "near") + (v.chosen() ? "" : ", by others") + ":",
                        Ink.PLAIN,
                        v.label() + ": " + v.why() + (v.cure().isEmpty() ? "" : ". Cure: " + v.cure())));
        c.splits()
                .forEach(s -> page.hanging(
                        INNER,
                        Ink.DOUBTFUL,
                        "sources differ, none chosen, so the mildest decides:",
                        Ink.PLAIN,
                        s.label() + " " + s.said()));
        others(c);
    }

    /** What other sources say of the figures, in a line, where they say otherwise. */
    private void others(Candidate c) {
        if (all) {
            return;
        }
        String others = c.verdicts().stream()
                .filter(v -> !v.chosen() && v.state() == Verdict.State.FAILS && isPassedByAnother(c, v))
                .filter(v -> c.splits().stream().noneMatch(s -> s.rule().equals(rule(v)) && s.term() == v.term()))
                .map(Verdict::label)
                .distinct()
                .collect(Collectors.joining("; "));
        page.ifAny(INNER, "by other sources it fails:", others);
        String all = c.verdicts().stream()
                .filter(v -> !v.chosen() && v.state() == Verdict.State.FAILS && !isPassedByAnother(c, v))
                .map(Verdict::label)
                .distinct()
                .collect(Collectors.joining("; "));
        page.ifAny(INNER, "by no source is it usual:", all);
    }

    /** Whether another alternative of the same rule is kept, surely or perhaps. */
    private static boolean isPassedByAnother(Candidate c, Verdict failed) {
        String rule = rule(failed);
        return c.verdicts().stream()
                .anyMatch(v ->
                        rule(v).equals(rule) && (v.state() == Verdict.State.MEETS || v.state() == Verdict.State.NEAR));
    }

    private static String rule(Verdict verdict) {
        int dot = verdict.rule().indexOf('.');
        return dot < 0 ? verdict.rule() : verdict.rule().substring(0, dot);
    }

    private void list(String lead, List<Finding> findings) {
        for (Finding finding : findings) {
            page.hanging(
                    INNER,
                    finding.kind() == Finding.Kind.WARNING ? Ink.DOUBTFUL : Ink.QUIET,
                    lead,
                    Ink.PLAIN,
                    finding.where() + ": " + finding.message()
                            + (finding.mend().isEmpty() ? "" : ". " + finding.mend()));
        }
    }

    private static String total(Candidate.Total total) {
        if (total.currency().isEmpty() && total.notPriced().isEmpty()) {
            return "nothing to buy";
        }
        String known = total.currency().isEmpty() ? "" : money(OptionalLong.of(total.known()), total.currency());
        String costs = String.join(", ", total.notPriced()) + (total.notPriced().size() == 1 ? " costs" : " cost");
        String more = total.notPriced().isEmpty()
                ? ""
                : known.isEmpty() ? "what " + costs + " is not said" : " and what " + costs;
        String budget = total.toSpend().isEmpty() ? "" : ", of " + total.toSpend() + " to spend";
        return known + more + budget;
    }

    private static String money(OptionalLong hundredths, String currency) {
        return hundredths.isEmpty()
                ? "price not said"
                : String.format(Locale.ROOT, "%.2f", hundredths.getAsLong() / 100.0)
                        + (currency.isEmpty() ? "" : " " + currency);
    }

    private void rejections() {
        if (answer.rejections().isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "DOES NOT FIT", "the first thing in the way, as the parts are");
        int left = all ? Integer.MAX_VALUE : SHORT_LIST;
        answer.rejections().stream()
                .sorted(Comparator.comparing(Rejection::count).reversed())
                .limit(left)
                .forEach(this::rejection);
        if (answer.rejections().size() > left) {
            page.hanging(
                    INDENT,
                    Ink.QUIET,
                    "",
                    Ink.QUIET,
                    "and " + (answer.rejections().size() - left) + " more: --all");
        }
    }

    private void rejection(Rejection r) {
        String many = r.count() == 1 ? "" : String.format(Locale.ROOT, "%,d × ", r.count());
        String lead = r.count() == 1 && !r.example().isEmpty() ? r.example() + ": " : "";
        page.item(INDENT, many + lead + r.reason(), Integer.MAX_VALUE);
        if (r.count() > 1) {
            page.ifAny(INNER, "such as:", r.example());
        }
        page.ifAny(INNER, "why:", r.why());
        page.ifAny(INNER, "cure:", r.cure());
    }
}
