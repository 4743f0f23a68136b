package longthrow.core.clear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Stop;

/** What touches counts for what may be run: no limit of speed approves an engine whose parts meet. */
public final class Touching {
    private Touching() {}

    /** The stops of pairs that touch or may touch, as {@link Clear} gives them. */
    public static List<Stop> stops(Answer clear) {
        return clear.stops().stream()
                .filter(s -> s.what().startsWith(Clear.NOT_BY_STARTER))
                .sorted(Comparator.comparing(Stop::refused).reversed())
                .toList();
    }

    /**
     * The answer to {@code life} with that to {@code clear} heeded: refused where parts touch, not approved where they may, and what would mend that first among
     * what would lift it.
     * @param life  to a build
     * @param clear to the same build
     */
    public static Answer heeded(Answer life, Answer clear) {
        List<Stop> found = stops(clear);
        if (found.isEmpty() || life.ladder().isEmpty()) {
            return life;
        }
        LimitLadder ladder = life.ladder().get();
        Approval was = ladder.approval();
        boolean touches = found.get(0).refused();
        Approval.State verdict = touches || was.verdict() == Approval.State.REFUSED
                ? Approval.State.REFUSED
                : Approval.State.NOT_APPROVED;
        List<String> reasons = new ArrayList<>();
        List<Approval.Unlock> unlocks = new ArrayList<>();
        for (Stop stop : found) {
            reasons.add(stop.what() + ": " + stop.why());
            unlocks.add(new Approval.Unlock(stop.wayRound(), stop.what(), "", ""));
        }
        reasons.addAll(was.reasons());
        unlocks.addAll(was.unlocks());
        String said = was.verdict() == Approval.State.REFUSED
                ? was.said()
                : touches
                        ? "refused: parts of it touch"
                        : was.verdict() == Approval.State.APPROVED ? "not approved: parts of it may touch" : was.said();
        Set<Stop> stops = new LinkedHashSet<>(found);
        stops.addAll(life.stops());
        return life.withStops(List.copyOf(stops))
                .withLadder(new LimitLadder(
                        new Approval(
                                verdict,
                                was.asked(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                said,
                                reasons,
                                unlocks,
                                "nothing at any speed before nothing touches: "
                                        + found.get(0).what().substring(Clear.NOT_BY_STARTER.length())),
                        ladder.rungs(),
                        ladder.start()));
    }
}
