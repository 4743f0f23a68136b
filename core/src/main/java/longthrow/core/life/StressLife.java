package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * Stress against number of swings: straight on logarithmic paper from f times the ultimate strength at a thousand swings to the fatigue strength at
 * the knee. Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 6-8; from memory. Stresses without mean [Pa], see
 * {@link MeanStress#reversed}.
 * @param ultimate  strength
 * @param fraction  f, of the ultimate strength borne a thousand times; 0.9 where nothing better is known ({@link #USUAL_FRACTION})
 * @param endurance fatigue strength of the part at the knee
 * @param knee      swings there: {@link #STEEL_KNEE}, {@link #ALUMINIUM_KNEE}
 */
public record StressLife(Expression ultimate, double fraction, Expression endurance, double knee) {
    /** Shigley fig. 6-18 gives 0.9 to 0.77 for steels of 480 to 1400 MPa. */
    public static final double USUAL_FRACTION = 0.9;

    /** Swings after which sound steel and iron in steady use break no more. */
    public static final double STEEL_KNEE = 1e6;

    /** Swings for which fatigue strengths of aluminium are stated; it has no knee, the line goes on. Aluminum Association; from memory. */
    public static final double ALUMINIUM_KNEE = 5e8;

    private static final double FIRST = 1e3;

    /** Exponent b of S = a N^b, below 0. */
    public Expression exponent() {
        return ultimate.times(fraction)
                .dividedBy(endurance)
                .logarithm()
                .dividedBy(Math.log(knee / FIRST))
                .negated();
    }

    /** Factor a of S = a N^b [Pa]. */
    public Expression factor() {
        return exponent().times(Math.log(FIRST)).negated().exponential().times(ultimate.times(fraction));
    }

    /**
     * Swings until it breaks, on the line, which is also drawn on beyond the knee: steel then lasts for good in steady use, but not once
     * heavier swings have come between, so damage is counted by the line (the most careful of the usual ways; Haibach's is half as steep).
     * @param reversed swing without mean, above 0 [Pa]
     */
    public Expression swings(Expression reversed) {
        return logarithmOfSwings(reversed).exponential();
    }

    /** Logarithm of {@link #swings}, whose doubt is the one that is even on both sides. */
    public Expression logarithmOfSwings(Expression reversed) {
        return reversed.dividedBy(factor()).logarithm().dividedBy(exponent());
    }
}
