package longthrow.core.fit;

import longthrow.core.answer.Verdict;
import longthrow.core.measurement.Normal;

/**
 * How surely a dimension with its tolerance lies in its window.
 * <p>For sure: at every corner of the box of tolerances. By probability: with 95 in 100 ({@link Verdict#SURE}), the inputs independent. With selection:
 * some pieces within their tolerances would do, so they must be measured. No: none would.
 */
public enum Certainty {
    SURE("for sure"),
    PROBABLE("by probability"),
    SELECTION("only with selection"),
    NO("does not fit");

    private final String label;

    Certainty(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }

    static Certainty worse(Certainty a, Certainty b) {
        return a.compareTo(b) >= 0 ? a : b;
    }

    /**
     * Of a value with its box in a window; any unit, the same for all.
     * @param half        of the box, 0 or more
     * @param uncertainty standard
     */
    static Certainty of(long value, long half, double uncertainty, long least, long most) {
        if (value - half >= least && value + half <= most) {
            return SURE;
        }
        if (value + half < least || value - half > most) {
            return NO;
        }
        return byProbability((double) (value - least), (double) (most - value), uncertainty);
    }

    /** By how far the value stands inside each end, negative outside. */
    static Certainty byProbability(double aboveLeast, double belowMost, double uncertainty) {
        double kept = uncertainty == 0
                ? (aboveLeast >= 0 && belowMost >= 0 ? 1 : 0)
                : Normal.atMost(aboveLeast / uncertainty) + Normal.atMost(belowMost / uncertainty) - 1;
        return kept >= Verdict.SURE ? PROBABLE : SELECTION;
    }
}
