package longthrow.workshop.print;

import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.quantity.FigurePrinter;

/** The verdict of the whole, what would lift it, and every limit: those in the way first. */
final class LadderList {
    private static final int INDENT = 2;

    /** Reasons and unlocks before the rest is left to {@code --all}; layout. */
    private static final int SHORT_LIST = 5;

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    LadderList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        answer.ladder().ifPresent(this::print);
    }

    private void print(LimitLadder ladder) {
        verdict(ladder.approval());
        if (!ladder.rungs().isEmpty()) {
            page.heading(Ink.STRONG, "LIMITS", "what is in the way first, then the weakest; no limit sees a crack");
            ladder.rungs().forEach(this::rung);
        }
        start(ladder.start());
    }

    private void verdict(Approval approval) {
        boolean isGood = approval.verdict() == Approval.State.APPROVED;
        page.heading(isGood ? Ink.GOOD : Ink.BAD, "VERDICT", "");
        page.hanging(
                INDENT, isGood ? Ink.GOOD : Ink.BAD, approval.verdict().label() + ":", Ink.STRONG, approval.said());
        some(approval.reasons()).forEach(reason -> page.ifAny(2 * INDENT + 1, "why:", reason));
        more(approval.reasons().size());
        page.ifAny(2 * INDENT + 1, "instead:", approval.instead());
        if (!approval.unlocks().isEmpty()) {
            page.heading(Ink.STRONG, "WHAT WOULD LIFT IT", "in the order in which to do or buy it");
            int rank = 0;
            for (Approval.Unlock unlock : some(approval.unlocks())) {
                page.hanging(
                        INDENT,
                        Ink.STRONG,
                        ++rank + ".",
                        Ink.PLAIN,
                        unlock.what() + (unlock.price().isEmpty() ? "" : "; " + unlock.price()) + " (" + unlock.why()
                                + ")");
            }
            more(approval.unlocks().size());
        }
    }

    private void rung(Rung rung) {
        page.hanging(
                INDENT,
                ink(rung),
                rung.state().label() + ":",
                Ink.PLAIN,
                rung.label() + (rung.weight() == Rung.Weight.TELLS ? " (a guide)" : "") + ": " + rung.why());
        if (all) {
            page.ifAny(2 * INDENT + 1, "kind:", rung.kind().label());
            page.ifAny(2 * INDENT + 1, "by:", rung.source());
            page.ifAny(2 * INDENT + 1, "hangs on:", String.join(", ", rung.hangsOn()));
            page.ifAny(2 * INDENT + 1, "do this:", rung.unlock());
            rung.missing().forEach(m -> page.ifAny(2 * INDENT + 1, "how:", m.what() + ": " + m.how()));
            rung.speed()
                    .ifPresent(s -> page.ifAny(
                            2 * INDENT + 1,
                            "doubt by:",
                            s.shares().stream()
                                    .limit(3)
                                    .map(share -> String.format(
                                            java.util.Locale.ROOT, "%s %.0f %%", share.owner(), 100 * share.share()))
                                    .collect(Collectors.joining(", "))));
        }
    }

    private static Ink ink(Rung rung) {
        if (rung.isRefused()) {
            return Ink.BAD;
        }
        return rung.isInTheWay() ? Ink.DOUBTFUL : rung.state() == Rung.State.HOLDS ? Ink.GOOD : Ink.QUIET;
    }

    private void start(LimitLadder.Start start) {
        if (start.figures().isEmpty() && start.sentences().isEmpty()) {
            return;
        }
        page.heading(Ink.STRONG, "WILL IT START", "turning it over by hand");
        start.figures()
                .forEach(f -> page.hanging(
                        INDENT,
                        Ink.STRONG,
                        f.label() + ":",
                        Ink.PLAIN,
                        printer.print(
                                        f.dimension(),
                                        f.figure().value(),
                                        f.figure().expanded())
                                .line()));
        if (!start.missing().isEmpty()) {
            page.hanging(
                    INDENT,
                    Ink.DOUBTFUL,
                    "not known:",
                    Ink.PLAIN,
                    "read "
                            + start.missing().stream()
                                    .map(m -> m.what() + " (" + m.where() + ")")
                                    .collect(Collectors.joining("; ")));
        }
        start.sentences().forEach(s -> page.paragraph(INDENT, s));
    }

    private <T> List<T> some(List<T> entries) {
        return all || entries.size() <= SHORT_LIST ? entries : entries.subList(0, SHORT_LIST);
    }

    private void more(int size) {
        if (!all && size > SHORT_LIST) {
            page.hanging(INDENT, Ink.QUIET, "", Ink.QUIET, "and " + (size - SHORT_LIST) + " more: --all");
        }
    }
}
