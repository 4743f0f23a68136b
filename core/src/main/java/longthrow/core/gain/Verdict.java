package longthrow.core.gain;

/**
 * Whether a change did anything.
 * @param outcome  which
 * @param chance   how often chance alone gives as much, after Holm where several changes were tried on one baseline
 * @param tries    how many changes were tried on the baseline
 * @param aim      what was wanted
 * @param sessions further sessions that would tell, change and baseline in turns; 0 unless more runs are asked for
 * @param pulls    in all of them, each one's first counted; 0 unless more runs are asked for
 */
public record Verdict(Outcome outcome, double chance, int tries, Aim aim, int sessions, int pulls) {
    /** In the order in which it is said. */
    public enum Outcome {
        /** More than chance and any drift between baselines explain. */
        REAL_GAIN,
        /** Less by more than those explain. */
        REAL_LOSS,
        /** Not shown, and a gain as large as the aim is ruled out. */
        NOT_SHOWN,
        /** Not shown, nor ruled out; {@link Verdict#pulls} more would tell. */
        TAKE_MORE,
        /** Not shown, nor ruled out, and it cannot be told this way with any number of runs that could be asked. */
        CANNOT_BE_TOLD,
        /** The baseline was not run again behind the change: what the engine drifted is not known. */
        BASELINE_NOT_REPEATED
    }

    static Verdict of(Outcome outcome, double chance, int tries, Aim aim) {
        return new Verdict(outcome, chance, tries, aim, 0, 0);
    }
}
