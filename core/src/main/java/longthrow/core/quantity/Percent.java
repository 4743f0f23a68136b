package longthrow.core.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Shares and probabilities in per cent. */
public final class Percent {
    /** Digits that a double computed in a few steps surely has: 0.29 * 100 is 28.999999999999996 and stands for 29. */
    private static final int SURE_PLACES = 12;

    private Percent() {}

    /** A share; what is there is never printed as nothing, what is not all never as all. */
    public static String ofShare(double share) {
        if (share > 0 && share < 0.01) {
            return "under 1 %";
        }
        return share > 0.99 && share < 1 - 1e-9 ? "over 99 %" : Math.round(share * 100) + " %";
    }

    /**
     * A probability, cut towards even odds so that it is never printed surer than it is, with one decimal from 1 to 10 and from 90 to
     * 99 %: 94.99 % stands as 94.9 % beside a rule that asks for 95 %.
     */
    public static String ofProbability(double probability) {
        if (probability >= 0.99) {
            return "over 99 %";
        }
        if (probability <= 0.01) {
            return "under 1 %";
        }
        int places = probability < 0.1 || probability >= 0.9 ? 1 : 0;
        RoundingMode towardsEven = probability >= 0.5 ? RoundingMode.FLOOR : RoundingMode.CEILING;
        return BigDecimal.valueOf(probability)
                        .setScale(SURE_PLACES, RoundingMode.HALF_EVEN)
                        .movePointRight(2)
                        .setScale(places, towardsEven)
                        .toPlainString()
                + " %";
    }
}
