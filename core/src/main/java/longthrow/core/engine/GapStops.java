package longthrow.core.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Stop;

/** What must not be done with an engine because of the gaps in it: one list, whichever question is asked. */
public final class GapStops {
    private static final String NOT_BY_STARTER = "do not turn it with the starter: ";
    /** Pairs that are named; layout. */
    private static final int NAMED = 6;

    private static final String TOO_CLOSE = "do not run it before there is more room: ";
    private static final String READ_POORLY = "do not run it before it is read better: ";

    private GapStops() {}

    /** Whether a stop is of a gap that is known: parts touch, may touch, or come too close. */
    public static boolean isOfAGap(Stop stop) {
        return isOfTouching(stop) || stop.what().startsWith(TOO_CLOSE) || isReadPoorly(stop);
    }

    /** Whether a stop is of parts of which no room is known to be missing, but whose gap was read in a way that leaves something open. */
    public static boolean isReadPoorly(Stop stop) {
        return stop.what().startsWith(READ_POORLY);
    }

    /** Whether a stop is of parts that touch or may touch. */
    public static boolean isOfTouching(Stop stop) {
        return stop.what().startsWith(NOT_BY_STARTER);
    }

    /** Whether a stop is there because of gaps, known or not. */
    public static boolean isOfGaps(Stop stop) {
        return isOfAGap(stop) || isOfTheUnknown(stop);
    }

    /** Whether a stop is there until the engine is mocked up. */
    public static boolean isOfTheUnknown(Stop stop) {
        return stop.what().equals(Stops.NO_POWER_YET);
    }

    /** Which parts a stop of {@link #isOfAGap} is of, and how they stand. */
    public static String pair(Stop stop) {
        String before = isOfTouching(stop) ? NOT_BY_STARTER : isReadPoorly(stop) ? READ_POORLY : TOO_CLOSE;
        return stop.what().substring(before.length());
    }

    /**
     * The stops of an engine with those of its gaps. That of another throw, which is there because nobody looked, goes once every pair is known or vouched for, and
     * names the pairs that are not until then.
     * @param before stops without gaps
     * @param pairs  of parts; none where no pair can be looked at, and the stops stay as they are
     */
    public static List<Stop> together(List<Stop> before, List<Clearance> pairs) {
        if (pairs.isEmpty()) {
            return before;
        }
        List<Stop> stops = new ArrayList<>();
        pairs.stream().filter(is(State.TOUCHES)).map(GapStops::touching).forEach(stops::add);
        before.stream().filter(s -> !isOfTheUnknown(s)).forEach(stops::add);
        pairs.stream().filter(is(State.MAY_TOUCH)).map(GapStops::touching).forEach(stops::add);
        pairs.stream().filter(is(State.CLOSE)).map(GapStops::tooClose).forEach(stops::add);
        List<Clearance> open = pairs.stream().filter(is(State.UNKNOWN)).toList();
        if (!open.isEmpty()) {
            stops.add(notKnown(
                    open, before.stream().filter(GapStops::isOfTheUnknown).findFirst()));
        }
        return stops;
    }

    /**
     * An answer that asked for no gaps, without the stop that is there until the engine is mocked up, where its gaps need none.
     * @param gaps stops of {@code clear} to the same build
     */
    public static Answer settled(Answer answer, List<Stop> gaps) {
        boolean isSettled = gaps.stream().noneMatch(GapStops::isOfTheUnknown);
        return isSettled && answer.stops().stream().anyMatch(GapStops::isOfTheUnknown)
                ? answer.withStops(
                        answer.stops().stream().filter(s -> !isOfTheUnknown(s)).toList())
                : answer;
    }

    /**
     * What the gaps come to, in one sentence: what stands first on every answer to {@code clear}.
     * @param makersSpeed up to which its maker vouches for gaps that nobody read; empty where none is known
     */
    public static String inShort(List<Clearance> pairs, Optional<String> makersSpeed) {
        long touch = pairs.stream().filter(is(State.TOUCHES)).count();
        long may = pairs.stream().filter(is(State.MAY_TOUCH)).count();
        long tooClose = pairs.stream()
                .filter(is(State.CLOSE))
                .filter(Clearance::isRoomDoubtful)
                .count();
        long poorly = pairs.stream().filter(is(State.CLOSE)).count() - tooClose;
        long held = pairs.stream().filter(is(State.UNKNOWN)).count();
        long unknown = pairs.stream().filter(p -> p.state() == State.UNKNOWN).count();
        String ofAll = " of " + pairs.size() + " gaps";
        String open = unknown == 0 ? "" : "; " + unknown + ofAll + " not known";
        if (touch + may > 0) {
            return "not to be turned with the starter: "
                    + Stream.of(
                                    touch == 0 ? "" : touch == 1 ? "1 pair touches" : touch + " pairs touch",
                                    may == 0 ? "" : may == 1 ? "1 pair may touch" : may + " pairs may touch")
                            .filter(said -> !said.isEmpty())
                            .collect(Collectors.joining(", "))
                    + open;
        }
        if (held > 0) {
            boolean isPastMaker =
                    pairs.stream().filter(is(State.UNKNOWN)).allMatch(p -> p.hold() == Clearance.Hold.UNVOUCHED_RUN);
            return "not to be turned under power before " + held + ofAll + (held == 1 ? " is" : " are")
                    + " known" + (isPastMaker ? ": its maker does not vouch for " + (held == 1 ? "it" : "them") : "")
                    + (tooClose == 0 ? "" : "; " + tooClose + " too close, or perhaps so")
                    + (poorly == 0 ? "" : "; " + poorly + " to be read better");
        }
        if (tooClose > 0) {
            return "not to be run before there is more room: " + tooClose + ofAll + " too close, or perhaps so" + open;
        }
        if (poorly > 0) {
            return "not to be run before " + poorly + ofAll + (poorly == 1 ? " is" : " are") + " read better" + open;
        }
        long notWarm = pairs.stream().filter(pair -> pair.running().isEmpty()).count();
        return unknown == 0
                ? "all " + pairs.size() + " gaps known cold"
                        + (notWarm == 0 ? " and running" : ", " + (pairs.size() - notWarm) + " of them running too")
                        + ", and none holds a run back"
                : unknown + ofAll + " not known; the maker vouches for " + (unknown == 1 ? "it" : "them")
                        + makersSpeed.map(speed -> " up to " + speed).orElse(" up to his speed");
    }

    private static Predicate<Clearance> is(State state) {
        return pair -> pair.state() == state && pair.hold() != Clearance.Hold.NOTHING;
    }

    private static String name(Clearance pair) {
        return pair.one() + " and " + pair.other();
    }

    private static Stop touching(Clearance pair) {
        boolean surely = pair.state() == State.TOUCHES;
        return new Stop(
                NOT_BY_STARTER + name(pair) + (surely ? " touch" : " may touch"), pair.why(), pair.mend(), surely);
    }

    private static Stop tooClose(Clearance pair) {
        if (!pair.isRoomDoubtful()) {
            return new Stop(READ_POORLY + name(pair) + " may be closer than was read", pair.why(), pair.mend(), false);
        }
        return new Stop(
                TOO_CLOSE + name(pair) + (pair.isUnderEverySource() ? " come too close" : " may come too close"),
                pair.why(),
                pair.mend(),
                false);
    }

    private static Stop notKnown(List<Clearance> open, Optional<Stop> longer) {
        String named = open.stream()
                .limit(NAMED)
                .map(p -> p.one() + " to " + p.other())
                .collect(Collectors.joining(", "));
        int more = open.size() - Math.min(open.size(), NAMED);
        return new Stop(
                Stops.NO_POWER_YET,
                longer.map(s -> s.why() + "; ").orElse("") + "not known: " + named
                        + (more == 0 ? "" : " and " + more + " more, which clear lists"),
                longer.map(Stop::wayRound)
                        .orElse(
                                "turn it twice by hand with clay or wire there, both ways of the end play, or read what is missing"),
                false);
    }
}
