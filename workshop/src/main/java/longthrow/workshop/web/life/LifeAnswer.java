package longthrow.workshop.web.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Finding;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.workshop.draw.RungBar;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Around;
import longthrow.workshop.web.Frame;
import longthrow.workshop.web.ToRead;
import longthrow.workshop.web.Ways;

/**
 * What lets go first, laid out.
 * @param verdict   empty where nothing can be said
 * @param readFirst what most of the unknown limits wait for, that of most first
 * @param unknown   limits of which something is missing
 * @param scale     of the bars, as SVG; empty where no limit has a speed
 * @param limits    all others, those in the way first
 * @param start     whether it will start
 * @param traces    why gas traces that were measured are not used
 * @param around    what stands around every answer
 */
public record LifeAnswer(
        Optional<Verdict> verdict,
        List<ToRead.Awaited> readFirst,
        List<Unknown> unknown,
        String scale,
        List<Limit> limits,
        Start start,
        List<Unused> traces,
        Around around) {
    /** Where something is said of the gas traces. */
    private static final Pattern TRACE = Pattern.compile("gas_traces(?:\\[(\\d+)])?");

    /** Owners of a doubt that are named; layout. */
    private static final int OWNERS = 3;

    /** A share of a doubt that is named, at least; layout. */
    private static final double LEAST_SHARE = 0.01;

    /** So many readings are named to begin with; layout. */
    private static final int MOST_FIRST = 6;

    /** So many unknown limits stand open; the rest is folded; layout. */
    private static final int MOST_OPEN = 6;

    /** So many reasons, and things that would lift them, stand open, the gravest; the rest is folded; layout. */
    private static final int MOST_REASONS = 3;

    public LifeAnswer {
        readFirst = List.copyOf(readFirst);
        unknown = List.copyOf(unknown);
        limits = List.copyOf(limits);
        traces = List.copyOf(traces);
    }

    /**
     * A gas trace that is not used, or one of several.
     * @param number of the trace; 0 for all
     * @param why    with what would mend it
     */
    public record Unused(int number, String why) {}

    /** Why a trace is not used; empty where it is, or nothing is said of it. */
    public String notUsed(int number) {
        return traces.stream()
                .filter(unused -> unused.number() == number || unused.number() == 0)
                .map(Unused::why)
                .collect(Collectors.joining("; "));
    }

    /** How many limits are unknown, and how many of them only guide, which are in nobody's way. */
    public String unknownSaid() {
        long guides = unknown.stream().filter(Unknown::guide).count();
        return (unknown.size() == 1 ? "1 limit is" : unknown.size() + " limits are")
                + " unknown until more is read"
                + (guides == 0
                        ? ""
                        : ": " + (unknown.size() - guides) + " in the way, " + guides
                                + (guides == 1 ? " only a guide" : " only guides"));
    }

    /** Unknown limits that stand there at once. */
    public List<Unknown> unknownFirst() {
        return first(unknown, MOST_OPEN);
    }

    /** The other unknown limits. */
    public List<Unknown> unknownMore() {
        return rest(unknown, MOST_OPEN);
    }

    /** How many they are. */
    public String unknownMoreSaid() {
        return counted(unknownMore().size(), "more limit is unknown", "more limits are unknown");
    }

    /** The one with the least missing. */
    public String unknownMoreLeast() {
        return unknownMore().stream()
                .min(Comparator.comparingInt(limit -> limit.readings().size()))
                .map(limit -> "the nearest to being known: " + limit.name() + ", "
                        + counted(limit.readings().size(), "reading", "readings") + " missing")
                .orElseThrow();
    }

    /** Limits that do not hold, or not surely, and decide. */
    public List<Limit> open() {
        return limits.stream()
                .filter(limit -> !limit.isKept() && !limit.guide())
                .toList();
    }

    /** Guides that are passed, or not surely kept. */
    public List<Limit> guides() {
        return limits.stream().filter(limit -> !limit.isKept() && limit.guide()).toList();
    }

    /** How many they are. */
    public String guidesSaid() {
        return counted(guides().size(), "guide is not surely kept", "guides are not surely kept")
                + ", which decides nothing";
    }

    /** What they are of. */
    public String guidesLeast() {
        return "the first: " + guides().get(0).name() + guides().get(0).atItsSpeed();
    }

    /** Limits that hold, or that a maker's word covers. */
    public List<Limit> holds() {
        return limits.stream().filter(Limit::isKept).toList();
    }

    /** How many hold, and how many of them are covered. */
    public String holdsSaid() {
        long covered = holds().stream()
                .filter(limit -> limit.state().equals(State.COVERED.key()))
                .count();
        long hold = holds().size() - covered;
        String byMaker = counted(
                (int) covered, "limit is covered by the maker's word", "limits are covered by the maker's word");
        return covered == 0
                ? counted((int) hold, "limit holds", "limits hold")
                : hold == 0 ? byMaker : counted((int) hold, "limit holds", "limits hold") + ", " + byMaker;
    }

    /** The first to go of those that a speed decides; empty where none does. */
    public String holdsLeast() {
        return holds().stream()
                .filter(limit -> !limit.speed().isEmpty())
                .findFirst()
                .map(limit -> "the first to go: " + limit.name() + limit.atItsSpeed())
                .orElse("");
    }

    private static <T> List<T> first(List<T> all, int most) {
        return all.subList(0, Math.min(most, all.size()));
    }

    private static <T> List<T> rest(List<T> all, int most) {
        return all.subList(Math.min(most, all.size()), all.size());
    }

    private static String counted(int count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }

    /**
     * Of the whole.
     * @param state   as a key for the style sheet
     * @param reasons why, gravest first, but for limits that are unknown
     * @param blocked how many limits that are unknown keep it from being approved
     * @param unlocks what would lift it, in the order in which to do or buy it, but for what is only to be read
     * @param instead what can be had instead; empty for nothing
     */
    public record Verdict(
            String state,
            String label,
            String said,
            List<String> reasons,
            long blocked,
            List<Unlock> unlocks,
            String instead) {
        public Verdict {
            reasons = List.copyOf(reasons);
            unlocks = List.copyOf(unlocks);
        }

        /** The gravest reasons. */
        public List<String> reasonsFirst() {
            return first(reasons, MOST_REASONS);
        }

        /** The other reasons. */
        public List<String> reasonsMore() {
            return rest(reasons, MOST_REASONS);
        }

        /** How many they are. */
        public String reasonsMoreSaid() {
            return counted(reasonsMore().size(), "more reason", "more reasons");
        }

        /** The first of them, by what it is about. */
        public String reasonsMoreFirst() {
            String reason = reasonsMore().get(0);
            return "the first: " + (reason.contains(": ") ? reason.substring(0, reason.indexOf(": ")) : reason);
        }

        /** What would lift it first. */
        public List<Unlock> unlocksFirst() {
            return first(unlocks, MOST_REASONS);
        }

        /** And after that. */
        public List<Unlock> unlocksMore() {
            return rest(unlocks, MOST_REASONS);
        }

        /** How many they are. */
        public String unlocksMoreSaid() {
            return counted(unlocksMore().size(), "more thing to do or buy", "more things to do or buy");
        }
    }

    /** One thing that would help; no price where nothing is bought. */
    public record Unlock(String what, String why, String price) {}

    /** A limit that is not known; a guide decides nothing. */
    public record Unknown(String key, String name, boolean guide, String kind, List<ToRead> readings, String source) {
        public Unknown {
            readings = List.copyOf(readings);
        }
    }

    /**
     * One limit that is known.
     * @param state   as a key for the style sheet
     * @param verdict for people
     * @param guide   whether it decides nothing
     * @param speed   in words; empty where no speed decides
     * @param band    from where to where it lies with 95 in 100; empty where no speed decides, or it was stated
     * @param bar     as SVG; empty where no speed decides
     * @param mend    what to do; empty when it holds
     * @param lines   what else there is to say
     * @param hangsOn what it was asked of
     * @param from    entries besides that it rests on
     */
    public record Limit(
            String key,
            String state,
            String verdict,
            boolean guide,
            String name,
            String why,
            String speed,
            String band,
            String bar,
            String mend,
            List<String> lines,
            List<Frame.Place> hangsOn,
            List<Frame.Place> from) {
        public Limit {
            lines = List.copyOf(lines);
            hangsOn = List.copyOf(hangsOn);
            from = List.copyOf(from);
        }

        private String atItsSpeed() {
            return speed.isEmpty() ? "" : " at " + speed;
        }

        private boolean isKept() {
            return state.equals(State.HOLDS.key()) || state.equals(State.COVERED.key());
        }
    }

    /** Turning it over by hand. */
    public record Start(List<String> figures, List<ToRead> toRead, List<String> sentences) {
        public Start {
            figures = List.copyOf(figures);
            toRead = List.copyOf(toRead);
            sentences = List.copyOf(sentences);
        }

        public boolean isEmpty() {
            return figures.isEmpty() && toRead.isEmpty() && sentences.isEmpty();
        }
    }

    static LifeAnswer of(Answer answer, String base) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        Optional<LimitLadder> ladder = answer.ladder();
        List<Rung> rungs = ladder.map(LimitLadder::rungs).orElse(List.of());
        List<Rung> unknown =
                rungs.stream().filter(r -> r.state() == State.UNKNOWN).toList();
        Optional<RungBar> bars = ladder.filter(
                        l -> rungs.stream().anyMatch(r -> r.speed().isPresent()))
                .map(RungBar::of);
        return new LifeAnswer(
                ladder.map(l -> verdict(l.approval(), unknown)),
                ToRead.first(unknown.stream().map(Rung::missing), base, MOST_FIRST),
                unknown.stream()
                        .map(r -> new Unknown(
                                r.key(),
                                r.label(),
                                r.weight() == Rung.Weight.TELLS,
                                r.kind().label(),
                                ToRead.of(r.missing(), base),
                                r.source()))
                        .toList(),
                bars.map(b -> b.scale(speed -> rounded(printer, speed), "ladder-scale"))
                        .orElse(""),
                rungs.stream()
                        .filter(r -> r.state() != State.UNKNOWN)
                        .map(r -> limit(r, bars, printer, base))
                        .toList(),
                ladder.map(l -> start(l.start(), printer, base)).orElse(new Start(List.of(), List.of(), List.of())),
                unused(answer),
                Around.of(answer, base));
    }

    private static List<Unused> unused(Answer answer) {
        List<Unused> unused = new ArrayList<>();
        for (Finding finding : answer.findings()) {
            Matcher place = TRACE.matcher(finding.where());
            if (place.matches()) {
                unused.add(new Unused(
                        place.group(1) == null ? 0 : Integer.parseInt(place.group(1)),
                        PageWords.said(finding.message() + ". Do this: " + finding.mend())));
            }
        }
        return unused;
    }

    /** What is unknown is told once, by itself: neither as so many reasons nor as so many things to do. */
    private static Verdict verdict(Approval approval, List<Rung> unknown) {
        Set<String> notKnown =
                unknown.stream().map(r -> r.label() + ": " + r.why()).collect(Collectors.toSet());
        Set<String> toRead =
                unknown.stream().map(r -> r.label() + ": " + r.unlock()).collect(Collectors.toSet());
        return new Verdict(
                approval.verdict().key(),
                approval.verdict().label(),
                approval.said(),
                approval.reasons().stream()
                        .filter(reason -> !notKnown.contains(reason))
                        .map(PageWords::said)
                        .toList(),
                unknown.stream().filter(Rung::isInTheWay).count(),
                approval.unlocks().stream()
                        .filter(u -> !toRead.contains(u.why() + ": " + u.what()))
                        .map(u -> new Unlock(PageWords.said(u.what()), PageWords.said(u.why()), u.price()))
                        .toList(),
                PageWords.said(approval.instead()));
    }

    private static Limit limit(Rung rung, Optional<RungBar> bars, FigurePrinter printer, String base) {
        Optional<Measured> speed = rung.speed();
        String said = speed.map(s -> printed(printer, s)).orElse("");
        List<String> lines = new ArrayList<>();
        lines.add("Kind: " + rung.kind().label() + ".");
        lines.add("By: " + PageWords.said(rung.source()) + ".");
        speed.filter(s -> !s.shares().isEmpty()).ifPresent(s -> lines.add("Whose doubt it is: " + owners(s) + "."));
        return new Limit(
                rung.key(),
                state(rung),
                verdict(rung),
                rung.weight() == Rung.Weight.TELLS,
                rung.label(),
                PageWords.said(rung.why()),
                said,
                speed.filter(s -> s.standardUncertainty() > 0)
                        .map(s -> band(printer, s))
                        .orElse(""),
                bars.filter(b -> speed.isPresent())
                        .map(b -> b.bar(rung, verdict(rung) + "; " + said, "bar-" + rung.key()))
                        .orElse(""),
                PageWords.said(rung.unlock()),
                lines,
                rung.hangsOn().stream().map(where -> Ways.input(where, base)).toList(),
                rung.from().stream()
                        .filter(where -> !rung.hangsOn().contains(where))
                        .map(where -> Ways.input(where, base))
                        .toList());
    }

    private static String state(Rung rung) {
        return rung.isRefused()
                ? "refused"
                : rung.isInTheWay() ? "in_the_way" : rung.state().key();
    }

    private static String verdict(Rung rung) {
        String meaning = rung.isRefused()
                ? ", refused"
                : rung.isInTheWay() ? ", not approved" : rung.weight() == Rung.Weight.TELLS ? ", a guide" : "";
        return rung.state().label() + meaning;
    }

    private static String owners(Measured speed) {
        return speed.shares().stream()
                .filter(s -> s.share() >= LEAST_SHARE)
                .limit(OWNERS)
                .map(s -> String.format(Locale.ROOT, "%s %.0f %%", PageWords.place(s.owner()), 100 * s.share()))
                .collect(Collectors.joining(", "));
    }

    private static Start start(LimitLadder.Start start, FigurePrinter printer, String base) {
        return new Start(
                start.figures().stream()
                        .map(f -> f.label() + ": "
                                + printer.print(
                                                f.dimension(),
                                                f.figure().value(),
                                                f.figure().expanded())
                                        .line())
                        .toList(),
                ToRead.of(start.missing(), base),
                start.sentences().stream().map(PageWords::said).toList());
    }

    private static String printed(FigurePrinter printer, Measured speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, speed.value(), speed.expanded())
                .line();
    }

    /** Ends of the band, each to the place that the doubt supports. */
    private static String band(FigurePrinter printer, Measured speed) {
        double half = speed.expanded();
        return printer.print(Dimension.ROTATIONAL_SPEED, Math.max(0, speed.low()), half)
                        .first()
                        .value()
                + " to "
                + rounded(printer, speed.high(), half);
    }

    private static String rounded(FigurePrinter printer, double speed) {
        return rounded(printer, speed, speed * 5e-3);
    }

    private static String rounded(FigurePrinter printer, double speed, double half) {
        var figure = printer.print(Dimension.ROTATIONAL_SPEED, speed, half).first();
        return figure.value() + " " + figure.unit();
    }
}
