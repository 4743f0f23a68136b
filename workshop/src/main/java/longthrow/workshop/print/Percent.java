package longthrow.workshop.print;

/** Shares and probabilities in whole per cent. */
final class Percent {
    private Percent() {}

    /** A share; what is there is never printed as nothing, what is not all never as all. */
    static String ofShare(double share) {
        if (share > 0 && share < 0.01) {
            return "under 1 %";
        }
        return share > 0.99 && share < 1 - 1e-9 ? "over 99 %" : Math.round(share * 100) + " %";
    }

    /**
     * A probability, cut towards even odds so that it is never printed surer than it is: 94.9 % stands as 94 % beside a rule
     * that asks for 95 %.
     */
    static String ofProbability(double probability) {
        if (probability >= 0.99) {
            return "over 99 %";
        }
        if (probability <= 0.01) {
            return "under 1 %";
        }
        // A hair is added first, or 0.29 * 100 = 28.999999999999996 would lose a whole per cent.
        double cut = probability >= 0.5 ? Math.floor(probability * 100 + 1e-9) : Math.ceil(probability * 100 - 1e-9);
        return (int) cut + " %";
    }
}
