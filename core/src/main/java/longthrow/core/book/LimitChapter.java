package longthrow.core.book;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;

/**
 * What lets go first.
 * @param verdict refused, not approved or approved
 * @param said    the verdict in one sentence
 * @param reasons why, gravest first, where it is not a limit that stands below
 * @param unlocks what would lift it, in the order in which to do or buy it
 * @param instead what can be had instead; empty when approved
 * @param limits  in the way first, then the weakest
 * @param start   whether it will start
 */
public record LimitChapter(
        Approval.State verdict,
        String said,
        List<String> reasons,
        List<Approval.Unlock> unlocks,
        String instead,
        List<Line> limits,
        Start start) {
    /** Owners of a doubt that are named; layout. */
    private static final int OWNERS = 3;

    public LimitChapter {
        reasons = List.copyOf(reasons);
        unlocks = List.copyOf(unlocks);
        limits = List.copyOf(limits);
    }

    /**
     * A limit.
     * @param key       stable
     * @param label     what gives up
     * @param kind      in what way
     * @param isGuide   whether it is said and decides nothing
     * @param state     how it stands at the speed asked for
     * @param isInTheWay whether it keeps that speed from being approved
     * @param speed     at which it gives up, with its 95 % band; empty when not known, or when no speed decides
     * @param why       how it stands, in words
     * @param source    material, grade, rule or formula with where it comes from
     * @param doubt     whose it mostly is; empty where there is no speed
     * @param hangsOn   places in the build file that it was asked of
     * @param missing   what would have to be read or asked
     * @param unlock    what would mend it; empty when it holds
     */
    public record Line(
            String key,
            String label,
            String kind,
            boolean isGuide,
            String state,
            boolean isInTheWay,
            String speed,
            String why,
            String source,
            String doubt,
            List<String> hangsOn,
            List<Rung.Missing> missing,
            String unlock) {
        public Line {
            hangsOn = List.copyOf(hangsOn);
            missing = List.copyOf(missing);
        }
    }

    /**
     * Turning it over by hand.
     * @param figures   pull, work, speeds of kick-back
     * @param missing   what would have to be read for the rest
     * @param sentences what it comes to
     */
    public record Start(List<Book.Figure> figures, List<Rung.Missing> missing, List<String> sentences) {
        public Start {
            figures = List.copyOf(figures);
            missing = List.copyOf(missing);
            sentences = List.copyOf(sentences);
        }
    }

    static LimitChapter of(LimitLadder ladder, Words words) {
        Approval approval = ladder.approval();
        LimitLadder.Start start = ladder.start();
        return new LimitChapter(
                approval.verdict(),
                approval.said(),
                approval.reasons().stream()
                        .filter(reason ->
                                ladder.rungs().stream().noneMatch(r -> reason.equals(r.label() + ": " + r.why())))
                        .toList(),
                approval.unlocks(),
                approval.instead(),
                ladder.rungs().stream().map(r -> line(r, words)).toList(),
                new Start(
                        start.figures().stream()
                                .map(f -> new Book.Figure(f.label(), words.line(f.dimension(), f.figure())))
                                .toList(),
                        start.missing(),
                        start.sentences()));
    }

    /** For the wall: what may be run, or what can be had instead, and what is past its limit of wear. What is approved stands on top, and is not said twice. */
    public String line() {
        String worn = limits.stream()
                .filter(l ->
                        l.kind().equals(Rung.Kind.WEAR.label()) && l.state().equals(Rung.State.EXCEEDED.label()))
                .map(Line::label)
                .collect(Collectors.joining(", "));
        String first = verdict == Approval.State.APPROVED
                ? "What lets go first: as the verdict on top says"
                : verdict.label() + ": " + said;
        return first + (instead.isEmpty() ? "" : "; instead: " + instead)
                + (worn.isEmpty() ? "" : "; past its limit: " + worn) + ".";
    }

    private static Line line(Rung rung, Words words) {
        return new Line(
                rung.key(),
                rung.label(),
                rung.kind().label(),
                rung.weight() == Rung.Weight.TELLS,
                rung.state().label(),
                rung.isInTheWay(),
                rung.speed().map(s -> words.line(Dimension.ROTATIONAL_SPEED, s)).orElse(""),
                rung.why(),
                rung.source(),
                rung.speed().map(LimitChapter::owners).orElse(""),
                rung.hangsOn(),
                rung.missing(),
                rung.unlock());
    }

    private static String owners(Measured speed) {
        return String.join(
                ", ",
                speed.shares().stream()
                        .limit(OWNERS)
                        .map(s -> String.format(Locale.ROOT, "%s %.0f %%", s.owner(), 100 * s.share()))
                        .toList());
    }
}
