package longthrow.core.life;

import java.util.Optional;
import longthrow.core.engine.Alternative;
import longthrow.core.formula.Expression;

/** A guide of the trade as a figure with its own doubt: a speed said in whole metres a second is no better known than to half of one. */
final class Guide {
    /** Half of the last digit in which the trade gives its speeds [m/s]. */
    private static final double HALF_A_DIGIT = 0.5;

    private Guide() {}

    /**
     * The most of a guide [m/s], as well as it is said.
     * @param row of a rule, with a most of its own that is not 0
     */
    static Expression metresPerSecond(Asked of, String rule, Alternative row) {
        double most = row.upper().orElseThrow().value(t -> Optional.empty()).orElseThrow();
        return of.spread("the guide " + rule, HALF_A_DIGIT / most).times(most);
    }
}
