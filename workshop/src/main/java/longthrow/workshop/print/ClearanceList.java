package longthrow.workshop.print;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Rung;
import longthrow.core.clear.ReliefCut;

/** What may touch: first what is unknown until mocked up, then what is told, the gravest first. */
final class ClearanceList {
    private static final int INDENT = 2;
    /** Missing readings named on a line before the rest is left to {@code --all}; layout. */
    private static final int SHORT_LIST = 4;
    /** Owners of a doubt that are named; layout. */
    private static final int OWNERS = 3;

    private final Answer answer;
    private final Page page;
    private final boolean all;

    ClearanceList(Answer answer, Page page, boolean all) {
        this.answer = answer;
        this.page = page;
        this.all = all;
    }

    void print() {
        List<Clearance> unknown = answer.clearances().stream()
                .filter(c -> c.state() == State.UNKNOWN)
                .toList();
        if (!unknown.isEmpty()) {
            page.heading(
                    Ink.DOUBTFUL,
                    "UNKNOWN UNTIL MOCKED UP",
                    unknown.size() + " of " + answer.clearances().size() + " pairs");
            unknown.forEach(this::unknown);
        }
        List<Clearance> told = answer.clearances().stream()
                .filter(c -> c.state() != State.UNKNOWN)
                .toList();
        if (!told.isEmpty()) {
            page.heading(Ink.STRONG, "GAPS", "through two turns, the gravest first; no gap sees a bent part");
            told.forEach(this::told);
        }
    }

    private void unknown(Clearance pair) {
        page.hanging(INDENT, Ink.DOUBTFUL, name(pair), Ink.PLAIN, pair.why() + missing(pair.missing()));
        mocked(pair);
        if (all) {
            page.ifAny(2 * INDENT + 1, "how:", pair.how());
            holdsBack(pair);
            pair.missing().forEach(m -> page.ifAny(2 * INDENT + 1, "read:", m.what() + ": " + m.how()));
        }
    }

    private void mocked(Clearance pair) {
        pair.mocked()
                .forEach(m -> page.ifAny(
                        2 * INDENT + 1,
                        "mocked up:",
                        m.way() + ", " + m.read() + " (" + m.place() + ")" + (m.counts() ? ", counts" : "")
                                + (m.said().isEmpty() ? "" : ": " + m.said())));
    }

    private String missing(List<Rung.Missing> missing) {
        if (missing.isEmpty()) {
            return "";
        }
        List<Rung.Missing> shown = all || missing.size() <= SHORT_LIST ? missing : missing.subList(0, SHORT_LIST);
        return "; read " + shown.stream().map(Rung.Missing::what).collect(Collectors.joining(", "))
                + (shown.size() < missing.size() ? " and " + (missing.size() - shown.size()) + " more" : "");
    }

    private static String name(Clearance pair) {
        return pair.one() + " to " + pair.other() + ":";
    }

    private void told(Clearance pair) {
        page.hanging(INDENT, ink(pair.state()), pair.state().label() + ":", Ink.PLAIN, name(pair) + " " + pair.why());
        mocked(pair);
        page.ifAny(2 * INDENT + 1, "do this:", pair.mend());
        page.ifAny(
                2 * INDENT + 1,
                "leaves:",
                pair.removal()
                        .flatMap(Clearance.Removal::leaves)
                        .map(left -> String.format(Locale.ROOT, "%.2f mm", 1e3 * left))
                        .orElse(ReliefCut.isIntoTheUnknown(pair) ? ReliefCut.LEAVES_UNKNOWN : ""));
        if (all) {
            pair.cold()
                    .ifPresent(gap -> page.ifAny(
                            2 * INDENT + 1,
                            "doubt by:",
                            gap.shares().stream()
                                    .limit(OWNERS)
                                    .map(s -> String.format(Locale.ROOT, "%s %.0f %%", s.owner(), 100 * s.share()))
                                    .collect(Collectors.joining(", "))));
            page.ifAny(
                    2 * INDENT + 1,
                    "camshaft late:",
                    pair.phases().stream().map(Clearance.AtPhase::said).collect(Collectors.joining(", ")));
            page.ifAny(2 * INDENT + 1, "hangs on:", String.join(", ", pair.hangsOn()));
            pair.notWarm().forEach(m -> page.ifAny(2 * INDENT + 1, "for running:", m.what() + ": " + m.how()));
            page.ifAny(2 * INDENT + 1, "check:", pair.how());
            holdsBack(pair);
        }
    }

    private void holdsBack(Clearance pair) {
        if (pair.hold() != Clearance.Hold.NOTHING) {
            page.ifAny(2 * INDENT + 1, "holds back:", pair.hold().label());
        }
    }

    private static Ink ink(State state) {
        return switch (state) {
            case TOUCHES, MAY_TOUCH -> Ink.BAD;
            case UNKNOWN, CLOSE -> Ink.DOUBTFUL;
            case CLEARS_COLD, CLEARS -> Ink.GOOD;
        };
    }
}
