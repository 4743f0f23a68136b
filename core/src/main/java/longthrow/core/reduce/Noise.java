package longthrow.core.reduce;

/**
 * What scatters about a curve, as two kinds of noise: one that every point has for itself, and one that lingers. Neighbouring points of a log are not independent, so a doubt that only counts points would
 * be too small.
 *
 * <p>Lingering noise carries a share of itself to the next point (autoregressive of order one); with a share of one it is a sum of steps, as speed is of a torque that trembles. Sizes are found by moments:
 * two sums of squares of what the curve leaves over, point by point and summed over a few points, set equal to what they would be on the mean with the curve's own weights, so that what the curve has
 * swallowed is counted. A size that would be negative is nought. Their degrees of freedom are those of the two sums (Satterthwaite).
 */
final class Noise {
    /**
     * The long sum is taken this many of its standard deviations larger than seen: where lingering noise is too small to be told from none it still widens the band of
     * a curve, and to take none would cover too little. Chosen by simulation (LocalFitCover): with none of it the least of 90 cases covers 88 %.
     */
    private static final double ALLOWANCE = 0.5;

    /** Satterthwaite's rule gives next to nothing where two sums nearly cancel, which is not so: by simulation (LocalFitCover) bands keep their cover with this. */
    private static final double FEWEST_FREEDOM = 4;

    /** Of own noise (row 0) and of lingering noise (row 1), what the short and the long sum of squares add to its variance. */
    private final double[][] parts;

    private final double share;
    private final double shortFreedom;
    private final double longFreedom;

    private Noise(double[][] parts, double share, double shortFreedom, double longFreedom) {
        this.parts = parts;
        this.share = share;
        this.shortFreedom = shortFreedom;
        this.longFreedom = longFreedom;
    }

    /**
     * Sums of squares of what is left over.
     * @param seen        the sum
     * @param byOwn       what it would be for own noise of variance one
     * @param byLingering what it would be for lingering noise whose steps have variance one
     * @param freedom     degrees of freedom of the sum
     */
    record Squares(double seen, double byOwn, double byLingering, double freedom) {}

    static Noise of(Squares shortSum, Squares longSum, double share) {
        double seenLong = longSum.seen * (1 + ALLOWANCE * Math.sqrt(2 / longSum.freedom));
        double determinant = shortSum.byOwn * longSum.byLingering - longSum.byOwn * shortSum.byLingering;
        double[] own = {
            shortSum.seen * longSum.byLingering / determinant, -seenLong * shortSum.byLingering / determinant
        };
        double[] lingering = {-shortSum.seen * longSum.byOwn / determinant, seenLong * shortSum.byOwn / determinant};
        if (!(lingering[0] + lingering[1] > 0)) {
            own = new double[] {shortSum.seen / shortSum.byOwn, 0};
            lingering = new double[2];
        } else if (!(own[0] + own[1] > 0)) {
            own = new double[2];
            lingering = new double[] {0, seenLong / longSum.byLingering};
        }
        return new Noise(new double[][] {own, lingering}, share, shortSum.freedom, longSum.freedom);
    }

    double ownVariance() {
        return parts[0][0] + parts[0][1];
    }

    /** Of the steps of lingering noise. */
    double lingeringVariance() {
        return parts[1][0] + parts[1][1];
    }

    /** Variance of a weighted sum of points. */
    double variance(double[] weights, int from, int to) {
        return variance(squares(weights, from, to), lingering(weights, from, to, share));
    }

    /** The same where the two sums over the weights are known. */
    double variance(double squares, double lingering) {
        return ownVariance() * squares + lingeringVariance() * lingering;
    }

    /** Degrees of freedom of the variance of a weighted sum. */
    double freedom(double squares, double lingering) {
        double fromShort = parts[0][0] * squares + parts[1][0] * lingering;
        double fromLong = parts[0][1] * squares + parts[1][1] * lingering;
        double variance = fromShort + fromLong;
        double freedom =
                variance * variance / (fromShort * fromShort / shortFreedom + fromLong * fromLong / longFreedom);
        return variance > 0 ? Math.max(FEWEST_FREEDOM, freedom) : shortFreedom;
    }

    double share() {
        return share;
    }

    /** Variance of a weighted sum of own noise of variance one. */
    static double squares(double[] weights, int from, int to) {
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += weights[k] * weights[k];
        }
        return sum;
    }

    /** Variance of a weighted sum of lingering noise whose steps have variance one. */
    static double lingering(double[] weights, int from, int to, double share) {
        double carried = 0;
        double sum = 0;
        for (int k = to - 1; k >= from; k--) {
            carried = weights[k] + share * carried;
            sum += carried * carried;
        }
        // what came before the first point still lingers there; with a share of one the weights add up to nothing
        return share < 1 ? sum + carried * carried * share * share / (1 - share * share) : sum;
    }
}
