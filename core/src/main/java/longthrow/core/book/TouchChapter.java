package longthrow.core.book;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Verdict;
import longthrow.core.clear.ReliefCut;
import longthrow.core.quantity.Percent;

/**
 * What touches.
 * @param summary how many pairs stand how
 * @param least   for the wall: the least gap that is known, its pair, and how many are not
 * @param unknown until mocked up, that with the least missing first
 * @param told    the others, the gravest first, then the narrowest
 */
public record TouchChapter(String summary, String least, List<Open> unknown, List<Told> told) {
    public TouchChapter {
        unknown = List.copyOf(unknown);
        told = List.copyOf(told);
    }

    /**
     * A pair that is unknown until mocked up.
     * @param pair    the two parts
     * @param why     nothing can be said
     * @param missing readings that would tell; empty where mocking up alone tells
     * @param how     the gap is read when it is mocked up
     */
    public record Open(String pair, String why, List<Rung.Missing> missing, String how) {
        public Open {
            missing = List.copyOf(missing);
        }
    }

    /**
     * A pair whose gap is known.
     * @param key     stable
     * @param pair    the two parts
     * @param state   how they stand to each other
     * @param isGrave whether they touch, or may
     * @param isHeld  whether they hold a run back
     * @param least   the smaller of its gaps, in a few words
     * @param cold    at 20 °C
     * @param running warm, at the wanted speed; empty when it cannot be said
     * @param notWarm what would have to be read for that, or why it is not told; empty when it is
     * @param wanted  by the trade, each with whether it is kept
     * @param mend    what to take off and where, or change instead; empty when it clears
     * @param leaves  what is left of the part behind the cut, or that it is not known; empty where none is cut to an outline
     * @param how     the gap is read when it is mocked up
     */
    public record Told(
            String key,
            String pair,
            String state,
            boolean isGrave,
            boolean isHeld,
            String least,
            Side cold,
            Optional<Side> running,
            String notWarm,
            List<String> wanted,
            String mend,
            String leaves,
            String how) {
        public Told {
            wanted = List.copyOf(wanted);
        }
    }

    /**
     * A least gap.
     * @param gap     at the best estimates with its 95 % interval
     * @param worst   with every figure behind it at its worst
     * @param contact probability that they touch
     * @param angle   of the crank from firing top dead centre; empty where none decides
     */
    public record Side(String gap, String worst, String contact, String angle) {}

    static TouchChapter of(Answer clear, Words words) {
        List<Clearance> pairs = clear.clearances();
        return new TouchChapter(
                summary(pairs),
                least(pairs, words),
                pairs.stream()
                        .filter(p -> p.state() == State.UNKNOWN)
                        .map(p -> new Open(name(p), p.why(), p.missing(), p.how()))
                        .toList(),
                pairs.stream()
                        .filter(p -> p.state() != State.UNKNOWN)
                        .map(p -> told(p, words))
                        .toList());
    }

    private static String name(Clearance pair) {
        return pair.one() + " to " + pair.other();
    }

    private static String summary(List<Clearance> pairs) {
        if (pairs.isEmpty()) {
            return "No pair can be looked at: the readings make no engine together.";
        }
        List<String> parts = new ArrayList<>();
        for (State state :
                List.of(State.TOUCHES, State.MAY_TOUCH, State.CLOSE, State.UNKNOWN, State.CLEARS_COLD, State.CLEARS)) {
            long count = pairs.stream().filter(p -> p.state() == state).count();
            if (count > 0) {
                parts.add(count + " " + state.label());
            }
        }
        return pairs.size() + " pairs looked at: " + String.join("; ", parts) + ".";
    }

    private static String least(List<Clearance> pairs, Words words) {
        long unknown = pairs.stream().filter(p -> p.state() == State.UNKNOWN).count();
        String open = unknown == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        isLeftToItsMaker(pairs)
                                ? " Not read: %d of %d pairs, for which the maker's word on the engine as he made it stands, up to his speed."
                                : " Unknown until mocked up: %d of %d pairs.",
                        unknown,
                        pairs.size());
        return pairs.stream()
                .filter(p -> p.cold().isPresent())
                .min(Comparator.comparingDouble(TouchChapter::narrowest))
                .map(p -> "Least gap: " + name(p) + " " + tightest(p, words) + at(tighter(p)) + ", "
                        + p.state().label() + "." + open)
                .orElse(isLeftToItsMaker(pairs) ? open.strip() : "No gap is known." + open);
    }

    /** Whether the maker vouches for every pair that nobody read. */
    private static boolean isLeftToItsMaker(List<Clearance> pairs) {
        return pairs.stream().filter(p -> p.state() == State.UNKNOWN).allMatch(p -> p.hold() == Clearance.Hold.NOTHING);
    }

    private static double narrowest(Clearance pair) {
        return tighter(pair).value();
    }

    private static Clearance.Gap tighter(Clearance pair) {
        Clearance.Gap cold = pair.cold().orElseThrow();
        return pair.running().filter(warm -> warm.value() < cold.value()).orElse(cold);
    }

    private static String tightest(Clearance pair, Words words) {
        Clearance.Gap gap = tighter(pair);
        boolean isWarm = pair.running().filter(gap::equals).isPresent();
        return words.gap(gap) + (isWarm ? " running" : " cold");
    }

    private static String at(Clearance.Gap gap) {
        return angle(gap).isEmpty() ? "" : " at " + angle(gap);
    }

    private static String angle(Clearance.Gap gap) {
        boolean isMockedUp = gap.way() == Clearance.Way.MOCKED_UP || gap.way() == Clearance.Way.AT_LEAST;
        return isMockedUp || Double.isNaN(gap.angle())
                ? ""
                : String.format(Locale.ROOT, "%.0f°", Math.toDegrees(gap.angle()));
    }

    private static Told told(Clearance pair, Words words) {
        return new Told(
                pair.key(),
                name(pair),
                pair.state().label(),
                pair.state() == State.TOUCHES || pair.state() == State.MAY_TOUCH,
                pair.hold() != Clearance.Hold.NOTHING,
                tightest(pair, words),
                side(pair.cold().orElseThrow(), words),
                pair.running().map(gap -> side(gap, words)),
                pair.running().isPresent()
                        ? ""
                        : String.join(
                                ", ",
                                pair.notWarm().stream().map(Rung.Missing::what).toList()),
                pair.limits().stream().map(l -> wanted(l, words)).toList(),
                pair.mend(),
                pair.removal()
                        .flatMap(Clearance.Removal::leaves)
                        .map(words::gap)
                        .orElse(ReliefCut.isIntoTheUnknown(pair) ? ReliefCut.LEAVES_UNKNOWN : ""),
                pair.how());
    }

    private static Side side(Clearance.Gap gap, Words words) {
        return new Side(words.gap(gap), words.gap(gap.worst()), Percent.ofShare(gap.contact()), angle(gap));
    }

    private static String wanted(Clearance.Limit limit, Words words) {
        return limit.label() + " wants " + words.gap(limit.least()) + ": "
                + (limit.state() == Verdict.State.MEETS
                        ? "kept"
                        : limit.state() == Verdict.State.FAILS
                                ? "not kept"
                                : "kept with " + Percent.ofShare(limit.keeps()))
                + (limit.decides() ? "" : ", not the one chosen");
    }
}
