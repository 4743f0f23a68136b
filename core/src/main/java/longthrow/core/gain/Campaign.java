package longthrow.core.gain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Sessions in the order in which they were made, to find out what a change does.
 *
 * <p>One rule for warm-up: the first pull of <em>every</em> session is dropped, whatever it shows ({@link #WARM_UP}). Nothing else is dropped but what its owner set aside and what slipped;
 * {@link #dropped} tells each.
 * @param baseline  the setup that the others are held against
 * @param speedsRpm the common grid, ascending; empty where there are peaks alone
 * @param sessions  in order
 */
public record Campaign(String baseline, List<Double> speedsRpm, List<Session> sessions) {
    /** Pulls at the head of a session that are warm-up. Common practice, no source. */
    public static final int WARM_UP = 1;

    /**
     * A pull that does not count.
     * @param session in which
     * @param run     which
     * @param rule    by which rule
     * @param why     in words
     */
    public record Dropped(String session, String run, Rule rule, String why) {}

    /** Why a pull does not count. */
    public enum Rule {
        /** First of its session. */
        WARM_UP,
        /** Its owner's word. */
        OWNER,
        /** Seen by the ratio of engine and drum. */
        SLIPPED,
        /** Far from the other pulls of its session. */
        ODD
    }

    /**
     * A kept run.
     * @param session its session's place
     * @param order   its place among all pulls of the campaign, dropped ones counted: what drifts, drifts with every pull
     * @param run     itself
     */
    record Kept(int session, int order, Run run) {}

    public Campaign {
        speedsRpm = List.copyOf(speedsRpm);
        sessions = List.copyOf(sessions);
        int size = Math.max(1, speedsRpm.size());
        for (int i = 1; i < speedsRpm.size(); i++) {
            if (!(speedsRpm.get(i) > speedsRpm.get(i - 1))) {
                throw new IllegalArgumentException("speed " + speedsRpm.get(i) + " follows " + speedsRpm.get(i - 1)
                        + "; give the grid's speeds ascending, each once");
            }
        }
        for (Session session : sessions) {
            for (Run run : session.runs()) {
                if (run.size() != size) {
                    throw new IllegalArgumentException("run " + run.name() + " of session " + session.name() + " has "
                            + run.size() + " figures; the grid has " + size);
                }
            }
        }
    }

    /** Of peaks alone. */
    public static Campaign ofPeaks(String baseline, List<Session> sessions) {
        return new Campaign(baseline, List.of(), sessions);
    }

    /** How many figures a run has. */
    int size() {
        return Math.max(1, speedsRpm.size());
    }

    /** Setups held against the baseline, in the order in which they first came. */
    public List<String> candidates() {
        return sessions.stream()
                .map(Session::setup)
                .distinct()
                .filter(s -> !s.equals(baseline))
                .toList();
    }

    /** Every pull that does not count, with the rule and why. */
    public List<Dropped> dropped() {
        List<Dropped> dropped = new ArrayList<>();
        for (Session session : sessions) {
            for (int i = 0; i < session.runs().size(); i++) {
                Run run = session.runs().get(i);
                rule(run, i)
                        .ifPresent(rule -> dropped.add(
                                new Dropped(session.name(), run.name(), rule, GainSentences.why(rule, run))));
            }
        }
        return dropped;
    }

    private static Optional<Rule> rule(Run run, int place) {
        if (place < WARM_UP) {
            return Optional.of(Rule.WARM_UP);
        }
        if (run.reason().isPresent()) {
            return Optional.of(Rule.OWNER);
        }
        if (run.isSlipped()) {
            return Optional.of(Rule.SLIPPED);
        }
        return run.oddity().isPresent() ? Optional.of(Rule.ODD) : Optional.empty();
    }

    /** What lies outside what the standard of correction is meant for, by session. */
    List<String> beyond() {
        return sessions.stream()
                .flatMap(s -> s.air().stream().flatMap(a -> a.beyond().stream()).map(b -> s.name() + ": " + b))
                .toList();
    }

    List<Kept> kept() {
        return counted(false);
    }

    /** All pulls, as if there were no rule; for showing what the rule does. */
    List<Kept> all() {
        return counted(true);
    }

    private List<Kept> counted(boolean all) {
        List<Kept> kept = new ArrayList<>();
        int order = 0;
        for (int s = 0; s < sessions.size(); s++) {
            List<Run> runs = sessions.get(s).runs();
            for (int i = 0; i < runs.size(); i++) {
                order++;
                if (all || rule(runs.get(i), i).isEmpty()) {
                    kept.add(new Kept(s, order, runs.get(i)));
                }
            }
        }
        return kept;
    }

    /**
     * What stands against comparing at all, in words; empty where nothing does. A bad campaign is told, not thrown.
     */
    public List<String> troubles() {
        List<String> troubles = new ArrayList<>();
        if (sessions.stream().noneMatch(s -> s.setup().equals(baseline))) {
            troubles.add(GainSentences.noBaseline(baseline));
        }
        if (candidates().isEmpty()) {
            troubles.add(GainSentences.nothingToCompare(baseline));
        }
        if (sessions.stream()
                        .map(s -> s.air().map(AirCorrection::standard))
                        .distinct()
                        .count()
                > 1) {
            troubles.add(GainSentences.mixedStandards());
        }
        List<Kept> kept = kept();
        for (int s = 0; s < sessions.size(); s++) {
            int at = s;
            if (kept.stream().noneMatch(k -> k.session() == at)) {
                troubles.add(GainSentences.nothingKept(sessions.get(s)));
            }
        }
        if (kept.size() - sessions.size() < Comparison.LEAST_FREEDOM) {
            troubles.add(GainSentences.tooFewRuns(kept.size(), sessions.size()));
        }
        return troubles;
    }
}
