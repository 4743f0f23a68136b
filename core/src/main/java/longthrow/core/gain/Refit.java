package longthrow.core.gain;

import java.util.Optional;
import longthrow.core.quantity.Require;

/**
 * What taking a part off and putting it on again scatters, as known from earlier campaigns of this engine. Three sessions cannot tell it themselves; with this it is in their doubt.
 * @param deviation standard deviation from session to session beyond that of runs, as a share
 * @param freedom   degrees of freedom behind it
 */
public record Refit(double deviation, double freedom) {
    public Refit {
        Require.notNegative("scatter of refitting [share]", deviation);
        Require.positive("degrees of freedom", freedom);
    }

    /** As an earlier campaign found it; empty where it had no sessions that check each other. */
    public static Optional<Refit> of(Gain earlier) {
        Scatter s = earlier.scatter();
        return s.betweenFreedom() < 1
                ? Optional.empty()
                : Optional.of(new Refit(s.refit() / earlier.overall().baseline(), s.betweenFreedom()));
    }
}
