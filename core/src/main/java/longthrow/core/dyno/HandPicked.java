package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.gain.Aim;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.Comparison;
import longthrow.core.gain.Gain;
import longthrow.core.gain.GainSentences;
import longthrow.core.gain.Run;
import longthrow.core.gain.Session;
import longthrow.core.gain.Verdict;

/** What a verdict hangs on runs that their owner set aside: with them back in it is reckoned again, and said. Who picks runs until something is real finds something. */
final class HandPicked {
    private final List<String> said = new ArrayList<>();
    private boolean turns;

    HandPicked(Campaign campaign, Comparison comparison) {
        long picked = comparison.dropped().stream()
                .filter(d -> d.rule() == Campaign.Rule.OWNER)
                .count();
        if (picked == 0) {
            return;
        }
        Comparison whole = Comparison.of(
                new Campaign(
                        campaign.baseline(),
                        campaign.speedsRpm(),
                        campaign.sessions().stream().map(HandPicked::whole).toList()),
                Aim.USUAL);
        for (Gain gain : comparison.gains()) {
            whole.gains().stream()
                    .filter(g -> g.setup().equals(gain.setup()))
                    .findFirst()
                    .ifPresent(g -> say(picked, gain, g));
        }
    }

    private void say(long picked, Gain gain, Gain whole) {
        boolean isOther = kind(whole) != kind(gain);
        turns |= isOther;
        said.add((picked == 1 ? "1 run was" : picked + " runs were")
                + " set aside by hand. With "
                + (picked == 1 ? "it" : "them")
                + " back in the figures say: "
                + GainSentences.verdict(whole)
                + (isOther
                        ? " So the verdict hangs on what was set aside: a run is set aside for what went wrong with it, never for what it shows."
                        : ""));
    }

    /** Whether a verdict is another with the runs back in: then this is said before it. */
    boolean turns() {
        return turns;
    }

    /** What comes out with the runs back in; empty where nothing was set aside by hand. */
    List<String> sentences() {
        return List.copyOf(said);
    }

    private static int kind(Gain gain) {
        Verdict.Outcome outcome = gain.verdict().outcome();
        return outcome == Verdict.Outcome.REAL_GAIN ? 1 : outcome == Verdict.Outcome.REAL_LOSS ? -1 : 0;
    }

    private static Session whole(Session session) {
        return new Session(
                session.name(),
                session.setup(),
                session.air(),
                session.runs().stream().map(Run::takenBack).toList());
    }
}
