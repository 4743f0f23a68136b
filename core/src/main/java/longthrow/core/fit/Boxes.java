package longthrow.core.fit;

import longthrow.core.answer.Sureness;
import longthrow.core.answer.Verdict;
import longthrow.core.measurement.Normal;

/** A value with its box of tolerance held against a window. */
final class Boxes {
    private Boxes() {}

    /**
     * Of a value in a window; any unit, the same for all.
     * @param half        of the box, 0 or more
     * @param uncertainty standard
     */
    static Sureness of(long value, long half, double uncertainty, long least, long most) {
        if (value - half >= least && value + half <= most) {
            return Sureness.SURE;
        }
        if (value + half < least || value - half > most) {
            return Sureness.NO;
        }
        return byProbability((double) (value - least), (double) (most - value), uncertainty);
    }

    /** By how far the value stands inside each end, negative outside. */
    static Sureness byProbability(double aboveLeast, double belowMost, double uncertainty) {
        double kept = uncertainty == 0
                ? (aboveLeast >= 0 && belowMost >= 0 ? 1 : 0)
                : Normal.atMost(aboveLeast / uncertainty) + Normal.atMost(belowMost / uncertainty) - 1;
        return kept >= Verdict.SURE ? Sureness.PROBABLE : Sureness.SELECTION;
    }
}
