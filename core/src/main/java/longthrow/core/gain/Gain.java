package longthrow.core.gain;

import java.util.List;
import java.util.Optional;

/**
 * What one change did.
 * @param setup    the change
 * @param baseline against what
 * @param standard by which standard everything was corrected; empty where nothing was
 * @param overall  of the area under the curve over the speeds used, or of the peak where runs are peaks
 * @param atSpeeds at each speed that every kept run has; empty for peaks
 * @param shape    where it gains and where it loses, by the band that holds at every speed; empty for peaks
 * @param drift    of the baseline
 * @param scatter  of runs and sessions, of the overall figure
 * @param others   the same by other ways of reckoning, to be shown beside it
 * @param verdict  on the overall figure
 */
public record Gain(
        String setup,
        String baseline,
        Optional<AirStandard> standard,
        Estimate overall,
        List<Estimate> atSpeeds,
        List<Stretch> shape,
        Drift drift,
        Scatter scatter,
        Others others,
        Verdict verdict) {
    public Gain {
        atSpeeds = List.copyOf(atSpeeds);
        shape = List.copyOf(shape);
    }

    /**
     * Neighbouring speeds at which the change gains, or loses, by the band that holds at every speed at once.
     * @param fromRpm first
     * @param toRpm   last
     * @param gains   whether it gains; else it loses
     */
    public record Stretch(double fromRpm, double toRpm, boolean gains) {}

    /**
     * What the baseline did from its first session to its last, as a share of its level.
     * @param known     whether any setup was run again, so that there is a line
     * @param change    by the line; NaN where not known
     * @param halfWidth 95 %; NaN where not known
     * @param agrees    how often chance alone makes pulls inside sessions run as far from the line as they do; NaN where not known
     */
    public record Drift(boolean known, double change, double halfWidth, double agrees) {}

    /**
     * The same gain by ways that are weaker, as shares: to see what each rule does.
     * @param welchHalfWidth      95 % with each session's scatter by itself, drift a line
     * @param runsAloneHalfWidth  95 % by the scatter of runs alone, drift a line: as if refitting scattered nothing
     * @param againstFirst        against the first baseline session alone: drift is then in the gain
     * @param rawAgainstFirst     uncorrected, all pulls kept, against the first baseline session alone
     * @param allPullsCorrected   all pulls kept, corrected, drift a line
     */
    public record Others(
            double welchHalfWidth,
            double runsAloneHalfWidth,
            double againstFirst,
            double rawAgainstFirst,
            double allPullsCorrected) {}
}
