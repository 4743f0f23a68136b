package longthrow.core.clear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Gap;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Given;
import longthrow.core.build.MockedUp.EndPlay;
import longthrow.core.clearance.ClearanceDoubt;
import longthrow.core.clearance.Closest;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Sweep;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import longthrow.core.term.Term;

/** Makes of a pair what is told of it: its gap where all is known, what is missing where it is not. */
final class Telling {
    /** Angles of a curve over two turns; layout. */
    private static final int ANGLES = 180;
    /** Crank degrees by which a camshaft is tried early and late. */
    private static final List<Integer> PHASES = List.of(-8, -4, 0, 4, 8);

    /** Cuts are told in steps of this [m], upwards: as fine as a file or a mill is worked to here; common practice, no source. */
    private static final double CUT = 0.05e-3;

    private static final double COVERAGE = 0.95;
    private final Known known;
    private final GapWords words;
    private final MockUps mockUps;
    private final Holding holding;
    private final Set<DefaultUsed> taken = new LinkedHashSet<>();
    private final List<Finding> findings = new ArrayList<>();

    Telling(Known known, Holding holding) {
        this.known = known;
        this.holding = holding;
        this.words = new GapWords(known.build().units());
        this.mockUps = new MockUps(known);
    }

    /** What was taken for granted of all that was told so far. */
    List<DefaultUsed> taken() {
        return List.copyOf(taken);
    }

    /** What was noticed of the mock-up on the way. */
    List<Finding> findings() {
        return List.copyOf(findings);
    }

    Clearance tell(Plan plan) {
        Clearance told = notByGuess(noMoreThanRead(plan, heeded(plan, drawn(plan))));
        return told.withHold(holding.of(plan, told));
    }

    /** Nothing clears on a guess: what hangs on one is close at best, and said so. */
    private Clearance notByGuess(Clearance told) {
        List<String> guessed = told.hangsOn().stream()
                .flatMap(place -> Term.at(place).stream())
                .filter(term -> known.build().of(term).stream().anyMatch(Given.Assumed.class::isInstance))
                .map(Term::label)
                .toList();
        boolean isCleared = told.state() == State.CLEARS || told.state() == State.CLEARS_COLD;
        return isCleared && !guessed.isEmpty()
                ? told.withState(State.CLOSE)
                        .withMend("read what is only guessed: " + String.join(", ", guessed) + "; or mock it up: "
                                + told.how())
                : told;
    }

    private Clearance drawn(Plan plan) {
        try {
            if (plan instanceof Plan.Outlines outlines) {
                return outlines(outlines);
            } else if (plan instanceof Plan.Told told) {
                return told(told);
            } else {
                Plan.OnlyMockedUp only = (Plan.OnlyMockedUp) plan;
                return unknown(only.head(), List.of(), List.of(), only.why() + ": only mocking up tells");
            }
        } catch (IllegalArgumentException e) {
            // sizes within their doubt that make no crank, no outline
            return unknown(plan.head(), List.of(), List.of(), "the sizes read do not go together: " + e.getMessage());
        }
    }

    // ---- gaps

    /** A gap and how probable it is that it keeps each limit. */
    private record Seen(Gap gap, List<Double> keeps, Asked of) {}

    private Seen inPlane(Asked of, Function<Sizes, Pair> drawn, Wanted want) {
        Sourced.Found found = new Sourced(of.figures(), drawn).found(want.leasts());
        ClearanceDoubt doubt = found.gap();
        Closest nearest = doubt.nominal();
        Gap gap = new Gap(
                nearest.gap(),
                Math.min(doubt.low(), nearest.gap()),
                Math.max(doubt.high(), nearest.gap()),
                Math.min(doubt.worst(), doubt.low()),
                nearest.angle(),
                doubt.contact(),
                Way.IN_PLANE,
                Optional.of(new Clearance.Place(
                        nearest.onOne().x(),
                        nearest.onOne().y(),
                        nearest.onOther().x(),
                        nearest.onOther().y())),
                found.shares());
        return new Seen(gap, doubt.below().stream().map(below -> 1 - below).toList(), of);
    }

    private static Seen of(Measured figure, Way way, double angle, Wanted want, Asked of) {
        Gap gap = new Gap(
                figure.value(),
                figure.low(),
                figure.high(),
                Math.min(Sourced.worst(figure), figure.low()),
                angle,
                1 - figure.probabilityAtLeast(0),
                way,
                Optional.empty(),
                figure.shares());
        return new Seen(
                gap, want.leasts().stream().map(figure::probabilityAtLeast).toList(), of);
    }

    private Clearance outlines(Plan.Outlines plan) {
        Plan.Head head = plan.head();
        Asked of = new Asked(known);
        Function<Sizes, Pair> drawn = plan.drawing().of(of, false);
        plan.larger().ifPresent(larger -> of.takes(larger.where(), larger.what(), "on the safe side"));
        Asked along = new Asked(known);
        Optional<Double> gap =
                plan.beside().isPresent() && of.isWhole() ? Optional.of(nominal(of, drawn)) : Optional.empty();
        boolean isClear = gap.filter(g -> g > head.want().most()).isPresent();
        Optional<Seen> beside = plan.beside().isPresent() && !isClear
                ? beside(plan.beside().get(), along, head.want())
                : Optional.empty();
        if (gap.filter(g -> g <= 0).isPresent() && beside.isEmpty()) {
            return unknown(
                    head,
                    along.missing(),
                    along.hangsOn(),
                    "whether one passes beside the other is not read; "
                            + plan.larger()
                                    .map(larger -> larger.what() + ", they overlap by ")
                                    .orElse("if it does not they touch, for seen along the crankshaft they overlap by ")
                            + GapWords.length(-gap.get()));
        }
        // where one surely passes beside the other, what the plane shows is of no matter and takes long
        boolean isEnough = beside.filter(seen -> keepsAll(seen, head.want())).isPresent();
        Optional<Seen> plane =
                of.isWhole() && !isEnough ? Optional.of(inPlane(of, drawn, head.want())) : Optional.empty();
        if (plane.isEmpty() && beside.filter(b -> b.gap().worst() > 0).isEmpty()) {
            List<Rung.Missing> missing = new ArrayList<>(of.missing());
            return unknown(plan.head(), missing, of.hangsOn(), "not all that it hangs on is known");
        }
        if (plane.filter(p -> p.gap().worst() <= 0).isPresent() && plan.beside().isPresent() && beside.isEmpty()) {
            return unknown(
                    plan.head(),
                    along.missing(),
                    along.hangsOn(),
                    "seen along the crankshaft they come to "
                            + words.length(plane.get().gap()) + ", so it hangs on whether one passes beside the other");
        }
        boolean isBeside = beside.isPresent()
                && (plane.isEmpty()
                        || beside.get().gap().worst() > plane.get().gap().worst());
        return isBeside
                ? said(
                        head,
                        beside.get(),
                        Optional.empty(),
                        Running.notWorkedOut("room along the crankshaft is not worked out warm"),
                        List.of(),
                        List.of(),
                        List.of())
                : inPlane(plan, head, plane.orElseThrow(), drawn);
    }

    /** The gap that the plane alone shows, at the best estimates [m]. */
    private static double nominal(Asked of, Function<Sizes, Pair> drawn) {
        return Sweep.least(drawn.apply(new Sourced(of.figures(), drawn).best()))
                .orElseThrow()
                .gap();
    }

    private static Optional<Seen> beside(Plan.Beside way, Asked along, Wanted want) {
        way.asks().accept(along);
        if (!along.isWhole()) {
            return Optional.empty();
        }
        Measured gap = new Sourced(along.figures(), s -> {
                    throw new IllegalStateException("nothing is drawn along the crankshaft");
                })
                .told(way.gap());
        return Optional.of(of(gap, Way.BESIDE, Double.NaN, want, along));
    }

    private Clearance inPlane(Plan.Outlines plan, Plan.Head head, Seen cold, Function<Sizes, Pair> drawn) {
        Asked hot = new Asked(known);
        Function<Sizes, Pair> running = plan.drawing().of(hot, true);
        Running.asks(hot, plan.warm());
        Optional<Seen> warm = hot.isWhole() ? Optional.of(inPlane(hot, running, Wanted.NOTHING)) : Optional.empty();
        List<Clearance.AtAngle> warmCurve =
                warm.isPresent() ? curve(running.apply(new Sourced(hot.figures(), running).best())) : List.of();
        warm.ifPresent(w -> taken.addAll(hot.taken()));
        Sizes best = new Sourced(cold.of().figures(), drawn).best();
        List<Clearance.AtPhase> phases = plan.hasCam() ? phases(later -> drawn.apply(best.later(later))) : List.of();
        return said(head, cold, warm, hot.missing(), phases, curve(drawn.apply(best)), warmCurve);
    }

    private static List<Clearance.AtAngle> curve(Pair pair) {
        return Sweep.curve(pair, ANGLES).stream()
                .map(at -> new Clearance.AtAngle(at.angle(), at.gap()))
                .toList();
    }

    /** Camshaft a little early and late, and a tooth out either way where its wheel's teeth are counted. */
    private List<Clearance.AtPhase> phases(DoubleFunction<Pair> byPhase) {
        List<Clearance.AtPhase> phases = new ArrayList<>();
        for (int degrees : PHASES) {
            phases.add(phase(byPhase, Math.toRadians(degrees), 0));
        }
        known.figure(Term.CAM_GEAR_TEETH).ifPresent(teeth -> {
            double tooth = Sweep.oneToothOut((int) Math.round(teeth.value()));
            phases.add(phase(byPhase, -tooth, -1));
            phases.add(phase(byPhase, tooth, 1));
        });
        phases.sort(Comparator.comparingDouble(Clearance.AtPhase::later));
        return phases;
    }

    private static Clearance.AtPhase phase(DoubleFunction<Pair> byPhase, double later, int teeth) {
        return new Clearance.AtPhase(
                later, Sweep.least(byPhase.apply(later)).orElseThrow().gap(), teeth);
    }

    private Clearance told(Plan.Told plan) {
        Asked of = new Asked(known);
        Expression expression = plan.figure().apply(of);
        if (!of.isWhole()) {
            return unknown(plan.head(), of.missing(), of.hangsOn(), "not all that it hangs on is known");
        }
        Measured figure = Measured.through(Formula.of(plan.head().key(), expression), of.inputs());
        return said(
                plan.head(),
                of(figure, plan.way(), plan.angle(), plan.head().want(), of),
                Optional.empty(),
                Running.notWorkedOut(plan.notWarm()),
                List.of(),
                List.of(),
                List.of());
    }

    // ---- the mock-up

    /** The pair with what the mock-up told of it: of drawing and reading the surer counts where they agree, the smaller gap where they do not. */
    private Clearance heeded(Plan plan, Clearance drawn) {
        List<MockUps.Told> told = mockUps.of(plan, drawn.hangsOn());
        told.forEach(t -> {
            taken.addAll(t.taken());
            findings.addAll(t.findings());
        });
        Optional<MockUps.Told> best = MockUps.counting(told);
        best.ifPresent(b -> findings.addAll(MockUps.quarrels(b, told, words)));
        boolean showsNothing = showsNothing(plan, drawn);
        if (best.isEmpty()) {
            return (showsNothing ? notShown(plan, drawn) : drawn)
                    .withMocked(
                            entries(told, "", ""),
                            told.isEmpty() ? "" : told.get(0).brief());
        }
        // where nothing is drawn that tells of the rest of it, the rest is not known
        MockUps.Told read = best.get().isOfOnePlace(plan) && drawn.cold().isEmpty()
                ? best.get().withReserve("it was read at the bolts, and the rest of the rod was not")
                : best.get();
        Optional<Gap> before = drawn.cold();
        Gap gap = read.gap(before);
        boolean isAtLeast = plan.larger().isPresent(); // a body drawn too large makes gaps small, never large
        // of one place nothing says that another is not nearer
        boolean isElsewhere = read.isOfOnePlace(plan)
                && before.filter(d -> gap.value() > d.value() && !agree(d, gap)).isPresent();
        boolean agrees = before.map(d -> isElsewhere
                        || agree(d, gap)
                        || (isAtLeast && gap.value() > d.value())
                        || (gap.value() > d.value() && agree(atItsMost(plan, d), gap)))
                .orElse(true);
        boolean counts = before.map(d -> !isElsewhere && ((showsNothing && agrees) || countsBefore(gap, d, agrees)))
                .orElse(true);
        String beside = before.filter(d -> !(showsNothing && agrees))
                .map(d -> (counts ? "drawn " + words.length(d) : "mocked up " + words.length(gap))
                        + (isElsewhere
                                ? " at the bolts, and the rest of the rod comes nearer"
                                : agrees ? ", which agrees" : ", which does not agree: the smaller gap counts"))
                .orElse("");
        if (!agrees) {
            findings.add(disagreement(plan.head(), drawn, read, gap));
        }
        List<Clearance.Mocked> entries = entries(told, counts ? read.place() : "", beside);
        if (!counts) {
            return drawn.withMocked(entries, beside);
        }
        return byReading(plan.head(), drawn, read, gap)
                .withMocked(
                        entries,
                        Stream.of(read.brief(), beside)
                                .filter(said -> !said.isEmpty())
                                .collect(Collectors.joining("; ")));
    }

    /**
     * The pair with the gap that a feeler read of it: no drawing and no mock-up makes more of it than was read. Where a larger one does not agree, or none is told
     * and what was read is too small, the reading is told.
     */
    private Clearance noMoreThanRead(Plan plan, Clearance told) {
        Optional<Term> least = plan.head().pair().gapsRead().stream()
                .filter(term -> known.figure(term).isPresent())
                .min(Comparator.comparingDouble(
                        term -> known.figure(term).orElseThrow().value()));
        if (least.isEmpty()) {
            return told;
        }
        Term term = least.get();
        Measured read = known.figure(term).orElseThrow();
        boolean hasTouched = read.value() <= 0;
        Asked of = new Asked(known);
        of.figure(term);
        Seen seen = of(read, Way.READ, Double.NaN, plan.head().want(), of);
        boolean isMore = told.cold()
                .filter(gap -> gap.value() > read.value() && !agree(gap, seen.gap()))
                .isPresent();
        boolean isTooSmall =
                told.cold().isEmpty() && !keepsAll(seen, plan.head().want());
        if (!isMore && !isTooSmall && !(hasTouched && told.state() != State.TOUCHES)) {
            return told;
        }
        if (isMore) {
            findings.add(new Finding(
                    Finding.Kind.SUSPECT,
                    term.path(),
                    plan.head().pair().label() + ": " + term.label() + " is read as " + words.length(seen.gap())
                            + ", and as drawn or mocked up it comes to "
                            + words.length(told.cold().orElseThrow())
                            + ", which cannot be more than was read. The smaller counts",
                    "read it again, and the other readings, the outline or the mock-up of the pair: "
                            + String.join(
                                    ", ",
                                    told.hangsOn().stream().map(Telling::named).toList())));
        }
        Clearance smaller = said(
                        plan.head(),
                        seen,
                        closed(told, seen.gap()).map(g -> new Seen(g, List.of(), of)),
                        told.notWarm().isEmpty() ? Running.notWorkedOut("it was read cold") : told.notWarm(),
                        List.of(),
                        told.curve(),
                        told.warmCurve())
                .withMocked(told.mocked(), "");
        return hasTouched ? smaller.withState(State.TOUCHES) : smaller;
    }

    /** Whether a pair does not clear, and only by a body that is drawn larger than it can be: then nothing is known of it. */
    private static boolean showsNothing(Plan plan, Clearance drawn) {
        boolean isClear = drawn.state() == State.CLEARS || drawn.state() == State.CLEARS_COLD;
        boolean isCloseBeside = drawn.state() == State.CLOSE
                && drawn.cold().filter(gap -> gap.way() == Way.BESIDE).isPresent();
        return plan.larger().isPresent() && drawn.cold().isPresent() && !isClear && !isCloseBeside;
    }

    private Clearance notShown(Plan plan, Clearance drawn) {
        Plan.Larger larger = plan.larger().orElseThrow();
        Gap gap = drawn.running()
                .filter(warm -> warm.value() < drawn.cold().orElseThrow().value())
                .orElse(drawn.cold().orElseThrow());
        return unknown(
                        plan.head(),
                        List.of(),
                        drawn.hangsOn(),
                        larger.what() + ", it comes to " + words.length(gap)
                                + (drawn.cold().filter(gap::equals).isPresent() ? "" : " running")
                                + ", which shows neither a touch nor a gap: mock it up"
                                + larger.known().map(how -> ", or " + how).orElse(""))
                .withMend("mock it up: " + plan.head().how()
                        + larger.known().map(how -> "; or " + how).orElse(""));
    }

    private Clearance byReading(Plan.Head ofPair, Clearance drawn, MockUps.Told read, Gap gap) {
        Asked of = new Asked(known);
        of.restsOn(read.place());
        boolean isOnlyFree = read.isFree() && gap.value() == 0;
        Plan.Head head = isOnlyFree // how far apart is not known, so no limit can be held against it
                ? ofPair.withoutLimits()
                : ofPair;
        Seen cold = new Seen(gap, read.keeps(head.want()), of);
        Optional<Seen> warm = closed(drawn, gap).map(g -> new Seen(g, List.of(), of));
        Clearance said = said(
                head,
                cold,
                warm,
                drawn.notWarm().isEmpty() ? Running.notWorkedOut("it was read cold, turned by hand") : drawn.notWarm(),
                List.of(),
                drawn.curve(),
                drawn.warmCurve());
        if (read.touches()) {
            return said.withState(State.TOUCHES)
                    .withMend(head.cut()
                                    .what()
                                    .replace(
                                            "{x}",
                                            head.want().most() > 0
                                                    ? "more than "
                                                            + GapWords.length(
                                                                    head.want().most())
                                                    : "as much as it takes")
                            + "; how deep they touch is not told by a mark, so mock it up again after");
        }
        if (isOnlyFree) {
            boolean isSure = !head.pair().hangsOnEndPlay() || read.mocked().endPlay() == EndPlay.BOTH_WAYS;
            return said.withState(isSure ? State.CLOSE : State.MAY_TOUCH)
                    .withMend("pass a wire or a feeler between them, so that it is known by how much they stay apart: "
                            + read.again(head.how()));
        }
        boolean isBetter = said.state() == State.CLEARS || said.state() == State.CLEARS_COLD;
        return isBetter && !read.reserves().isEmpty()
                ? said.withState(State.CLOSE).withMend("mock it up again: " + read.again(head.how()))
                : said;
    }

    private static double half(Gap gap) {
        return Math.max(gap.high() - gap.value(), gap.value() - gap.low());
    }

    /**
     * A gap as drawn, up to what it may be where nothing is off of all that nobody read. An offset that is taken as 0 ± so much makes a gap between two sides smaller either
     * way, so the drawing's own 95 % ends where it is 0: what was taken for granted says nothing against a reading.
     */
    private Gap atItsMost(Plan plan, Gap drawn) {
        if (!(plan instanceof Plan.Outlines outlines) || drawn.way() != Way.IN_PLANE) {
            return drawn;
        }
        Asked of = new Asked(known);
        Function<Sizes, Pair> drawing = outlines.drawing().of(of, false);
        Map<String, Measured> still = new LinkedHashMap<>();
        of.figures()
                .forEach((name, figure) ->
                        still.put(name, isTakenForGranted(name, figure) ? Measured.exact(figure.value()) : figure));
        double high = new Sourced(still, drawing).found(List.of()).gap().high();
        return drawn.withHigh(Math.max(drawn.high(), high));
    }

    /** Whether a figure is of no reading and no outline. */
    private static boolean isTakenForGranted(String name, Measured figure) {
        return Term.at(name).isEmpty()
                && !Outlined.isError(name)
                && figure.contributions().keySet().stream().allMatch(source -> source.kind() == Source.Kind.ASSUMED);
    }

    /** Within their joint 95 %. What only passed free disagrees with no gap that is larger. */
    private static boolean agree(Gap drawn, Gap read) {
        double by = read.value() - drawn.value();
        double joint = by < 0
                ? Math.hypot(drawn.value() - drawn.low(), read.high() - read.value())
                : Math.hypot(drawn.high() - drawn.value(), read.value() - read.low());
        return Math.abs(by) <= joint || (read.way() == Way.AT_LEAST && by < 0);
    }

    private static boolean countsBefore(Gap read, Gap drawn, boolean agrees) {
        if (!agrees) {
            return read.value() < drawn.value();
        }
        return read.contact() >= 1
                || (read.way() == Way.AT_LEAST ? read.worst() > drawn.worst() : half(read) < half(drawn));
    }

    /** The gap as read, running: less by what the drawing closes from cold to running, and never more than it was cold at the worst. */
    private static Optional<Gap> closed(Clearance drawn, Gap read) {
        if (drawn.cold().isEmpty()
                || drawn.running().isEmpty()
                || drawn.cold().get().value() <= 0) {
            return Optional.empty(); // of what overlaps as drawn, depths are no gaps
        }
        Gap cold = drawn.cold().get();
        Gap warm = drawn.running().get();
        double closes = cold.value() - warm.value();
        double closesAtWorst = Math.max(0, Math.max(closes, cold.worst() - warm.worst()));
        double added = Math.sqrt(Math.max(0, half(warm) * half(warm) - half(cold) * half(cold)));
        double half = Math.hypot(half(read), added);
        double value = read.value() - closes;
        double spread = half / Source.NORMAL_95;
        double contact = spread > 0 ? StudentT.atMost(-value / spread, Double.POSITIVE_INFINITY) : value > 0 ? 0 : 1;
        return Optional.of(new Gap(
                value,
                value - half,
                value + half,
                Math.min(read.worst() - closesAtWorst, value - half),
                warm.angle(),
                Math.max(contact, read.contact()),
                read.way(),
                Optional.empty(),
                warm.shares()));
    }

    private Finding disagreement(Plan.Head head, Clearance drawn, MockUps.Told read, Gap gap) {
        Gap before = drawn.cold().orElseThrow();
        boolean isSmaller = gap.value() < before.value();
        return new Finding(
                Finding.Kind.SUSPECT,
                read.place(),
                head.pair().label() + ": mocked up by " + read.mocked().way().label() + " " + words.length(gap)
                        + ", drawn from its figures " + words.length(before)
                        + ". One of the two is wrong; the smaller counts",
                (isSmaller
                                ? firstOfDrawing(before)
                                        .map(first -> first + "; then mock it up again")
                                        .orElse("mock it up again")
                                : "mock it up again first: if it comes again, "
                                        + firstOfDrawing(before)
                                                .map(first -> first.replace(" first,", ","))
                                                .orElse("one of the readings behind the drawing is wrong"))
                        + "; the drawing hangs on "
                        + String.join(
                                ", ",
                                drawn.hangsOn().stream().map(Telling::named).toList()));
    }

    /** Of the readings behind a drawing, that which owns the most of its doubt; empty where no single one does. */
    private static Optional<String> firstOfDrawing(Gap drawn) {
        return drawn.shares().stream()
                .findFirst()
                .filter(share -> Stream.of(Term.values())
                        .anyMatch(t ->
                                share.owner().equals(t.label()) || share.owner().startsWith(t.label() + ", ")))
                .map(share -> {
                    String owner = share.owner();
                    boolean isRead = !owner.contains(", not read");
                    String figure = owner.contains(", ") ? owner.substring(0, owner.indexOf(", ")) : owner;
                    return "read " + figure + (isRead ? " again" : "")
                            + " first, which owns the most of the drawing's doubt";
                });
    }

    private static String named(String place) {
        return Term.at(place).map(Term::label).orElse(place);
    }

    private static List<Clearance.Mocked> entries(List<MockUps.Told> told, String counting, String beside) {
        return told.stream()
                .map(t -> new Clearance.Mocked(
                        t.place(),
                        t.mocked().way().label(),
                        t.mocked().found().written(),
                        t.place().equals(counting),
                        t.place().equals(counting) && !beside.isEmpty()
                                ? Stream.of(t.sentence(), beside)
                                        .filter(said -> !said.isEmpty())
                                        .collect(Collectors.joining("; "))
                                : t.sentence()))
                .toList();
    }

    // ---- words

    private static boolean keepsAll(Seen seen, Wanted want) {
        return seen.gap().worst() > 0
                && limits(seen, want).stream()
                        .filter(Clearance.Limit::decides)
                        .allMatch(limit -> limit.state() == Verdict.State.MEETS);
    }

    private static List<Clearance.Limit> limits(Seen seen, Wanted want) {
        List<Clearance.Limit> limits = new ArrayList<>();
        for (int k = 0; k < want.rows().size(); k++) {
            limits.add(want.rows().get(k).at(seen.keeps().get(k)));
        }
        return limits;
    }

    private static Clearance unknown(Plan.Head head, List<Rung.Missing> missing, List<String> hangsOn, String why) {
        return new Clearance(
                head.key(),
                head.one(),
                head.other(),
                State.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                hangsOn,
                List.of(),
                missing,
                List.of(),
                List.of(),
                head.how(),
                why,
                "mock it up: " + head.how(),
                Clearance.Hold.ANY_RUN);
    }

    private Clearance said(
            Plan.Head head,
            Seen cold,
            Optional<Seen> warm,
            List<Rung.Missing> notWarm,
            List<Clearance.AtPhase> phases,
            List<Clearance.AtAngle> curve,
            List<Clearance.AtAngle> warmCurve) {
        taken.addAll(cold.of().taken());
        List<Clearance.Limit> limits = limits(cold, head.want());
        State state = state(cold, warm, head.want());
        Optional<Clearance.Removal> removal =
                state == State.CLEARS || state == State.CLEARS_COLD ? Optional.empty() : removal(head, cold, warm);
        return new Clearance(
                head.key(),
                head.one(),
                head.other(),
                state,
                Optional.of(cold.gap()),
                warm.map(Seen::gap),
                limits,
                removal,
                phases,
                curve,
                warmCurve,
                cold.of().hangsOn(),
                cold.of().from(),
                List.of(),
                warm.isPresent() ? List.of() : notWarm,
                List.of(),
                head.how(),
                words.why(cold.gap(), warm.map(Seen::gap), limits, notWarm)
                        + cold.of().asPlanned(),
                removal.map(Clearance.Removal::what).orElse(""),
                Clearance.Hold.ANY_RUN);
    }

    private static State state(Seen cold, Optional<Seen> warm, Wanted want) {
        double contact =
                Math.max(cold.gap().contact(), warm.map(w -> w.gap().contact()).orElse(0.0));
        double worst =
                Math.min(cold.gap().worst(), warm.map(w -> w.gap().worst()).orElse(Double.POSITIVE_INFINITY));
        if (contact >= COVERAGE) {
            return State.TOUCHES;
        }
        if (!(worst > 0)) {
            return State.MAY_TOUCH;
        }
        if (!keepsAll(cold, want)) {
            return State.CLOSE;
        }
        return warm.isPresent() ? State.CLEARS : State.CLEARS_COLD;
    }

    /** Enough for every limit that decides cold, and for no touch at the worst running. */
    private Optional<Clearance.Removal> removal(Plan.Head head, Seen cold, Optional<Seen> warm) {
        double limit = head.want().most();
        double at = Math.max(0, limit - cold.gap().value());
        double surely =
                Math.max(at, limit > 0 ? limit - cold.gap().low() : -cold.gap().worst());
        surely = Math.max(
                surely,
                Math.max(-cold.gap().worst(), warm.map(w -> -w.gap().worst()).orElse(0.0)));
        surely = CUT * Math.ceil(Math.max(surely, 0) / CUT - 1e-9);
        Clearance.Removal cut = new Clearance.Removal(
                head.cut().what().replace("{x}", GapWords.length(surely)),
                at,
                surely,
                leaves(head.cut(), surely),
                cold.gap().way() == Way.IN_PLANE ? shaped(head) : "");
        return Optional.of(Cuttable.of(known, cold.of().hangsOn(), cut));
    }

    private static String shaped(Plan.Head head) {
        return switch (head.cut().shaped()) {
            case ONE -> head.one();
            case OTHER -> head.other();
            case NEITHER -> "";
        };
    }

    private Optional<Double> leaves(Plan.Cut cut, double amount) {
        double left = -amount;
        for (Term part : cut.part()) {
            Optional<Measured> figure = known.figure(part);
            if (figure.isEmpty()) {
                return Optional.empty();
            }
            left += figure.get().low();
        }
        for (Term gone : cut.taken()) {
            Optional<Measured> figure = known.figure(gone);
            if (figure.isEmpty()) {
                return Optional.empty();
            }
            left -= figure.get().high();
        }
        return cut.part().isEmpty() ? Optional.empty() : Optional.of(left);
    }
}
