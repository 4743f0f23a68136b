package longthrow.core.reduce;

/**
 * A curve through scattered points by local polynomials, with how sure it is at each place and between two places.
 *
 * <p>Points are in the order of time. What is drawn against the abscissa (a speed) is either their ordinate or the slope of their ordinate in time: an inertia drum
 * tells torque by how its speed grows. Then a parabola through a few neighbours gives the slope at each point, and the curve is drawn through those slopes; both are
 * weighted sums, so the curve at each place is one weighted sum of what was read, and its doubt is that of the sum ({@link Noise}). Smoothing the slope in time alone
 * would need one width for the quick and the slow parts of a run; torque is a function of speed, and that is where it is smooth.
 *
 * <p>Weights by distance: tricube (Cleveland 1979). Width by cross-validation of local lines, leaving out around each point a block of neighbours, because they share
 * its noise (Chu and Marron 1991); the curve itself is a local parabola of the same width. What a line of the best width has left in bias, a parabola takes away, so
 * that the band is where the curve is and not beside it (Calonico, Cattaneo and Farrell 2018).
 */
final class LocalFit implements Drawn {
    /** Tries of a width: each this much wider than the one before. Fine enough that the doubt moves by an eighth between two. */
    private static final double NEXT_WIDTH = 1.25;
    /** Places at which a width is tried. */
    private static final int TRIED_AT = 40;
    /** Fewest points that a width reaches to each side, over the block that is left out. */
    private static final int REACH_OVER_GAP = 5;
    /** Share of lingering noise that is passed on between points, where it is not a sum of steps. LocalFitCover has it cover what lingers for 0 to 0.15 s; for 0.3 s it does not (LocalFitFresh). */
    private static final double LINGERS = 0.7;
    /** Points summed for the long sum of squares, of values and of slopes: longer than the noise lingers, shorter than the curve bends. By simulation. */
    private static final int VALUES_TOGETHER = 7;

    private static final int SLOPES_TOGETHER = 9;
    /** Neighbours on each side of a point that share its noise and are left out with it, where values are drawn; slopes share what they are made of, and one more. */
    private static final int VALUES_GAP = 5;
    /** A width of so many times the span weighs all points alike, within one in ten thousand, and makes one parabola of the curve. */
    private static final double ALL = 30;
    /** A determinant below this share of its terms is nought but for rounding. */
    private static final double SINGULAR = 1e-12;
    /** Fewer points than this, and a slope is made of three and not of five. */
    private static final int FEW = 60;

    private final double[] x;
    private final double[] drawn; // what is drawn, by point
    private final int half; // neighbours to each side that make a slope; 0 where the ordinate itself is drawn
    private final double[][] slopeWeights; // by point, 2 half + 1 weights of the ordinates around it
    private final int first; // first and last point that has what is drawn
    private final int last;
    private final double[]
            highestSoFar; // of the abscissa, and lowest from here on: what a place can reach lies between two of them
    private final double[] lowestFromHere;
    private final double width;
    private final Noise noise;

    private final double[] places;
    private final double[] values;
    private final double[][] weights; // by place, of each ordinate
    private final int[] from; // by place, the ordinates that have weights
    private final int[] to;
    private final double[] squares; // by place, sums over the weights
    private final double[] lingering;
    private final boolean isDrawn;

    /** What to say of points through which no curve can be drawn. */
    static final String TOO_FEW =
            "too few rows are left at different speeds to draw a curve through: log a longer pull that goes through all speeds, with more rows per second";

    /** The points and how the curve is to be drawn. */
    private LocalFit(
            double[] time, double[] abscissa, double[] ordinate, boolean slope, double[] places, boolean oneParabola) {
        int n = ordinate.length;
        half = !slope ? 0 : n < FEW ? 1 : 2;
        first = half;
        last = n - 1 - half;
        slopeWeights = new double[n][];
        x = slope ? new double[n] : abscissa.clone();
        drawn = new double[n];
        for (int i = first; i <= last; i++) {
            if (slope) {
                slopeWeights[i] = slopeWeights(time, i);
            } else {
                slopeWeights[i] = new double[] {1};
            }
            for (int k = -half; k <= half; k++) {
                drawn[i] += slopeWeights[i][k + half] * ordinate[i + k];
                if (slope) {
                    x[i] += abscissa[i + k] / (2 * half + 1); // not a number where a neighbour is to be left out
                }
            }
        }
        highestSoFar = new double[n];
        lowestFromHere = new double[n];
        running();
        this.places = places.clone();
        width = oneParabola ? ALL * span() : bestWidth();
        boolean drawable = span() > 0;
        noise = drawable ? measured(slope ? 1 : LINGERS) : Noise.of(NOTHING, NOTHING, 1);
        values = new double[places.length];
        weights = new double[places.length][];
        from = new int[places.length];
        to = new int[places.length];
        squares = new double[places.length];
        lingering = new double[places.length];
        double[] local = new double[n];
        for (int g = 0; g < places.length && drawable; g++) {
            drawable = draw(g, local);
        }
        isDrawn = drawable;
    }

    private static final Noise.Squares NOTHING = new Noise.Squares(0, 1, 1, 1);

    /** Whether there are points enough at every place: where not, nothing of the curve may be asked for, and {@link #TOO_FEW} says why. */
    boolean isDrawn() {
        return isDrawn;
    }

    private void running() {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = first; i <= last; i++) {
            highest = x[i] > highest ? x[i] : highest;
            highestSoFar[i] = highest;
        }
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = last; i >= first; i--) {
            lowest = x[i] < lowest ? x[i] : lowest;
            lowestFromHere[i] = lowest;
        }
    }

    /** The first point that may lie above. */
    private int firstAbove(double low) {
        int a = first;
        int b = last + 1;
        while (a < b) {
            int middle = (a + b) >>> 1;
            if (highestSoFar[middle] > low) {
                b = middle;
            } else {
                a = middle + 1;
            }
        }
        return a;
    }

    /** One after the last point that may lie below. */
    private int afterLastBelow(double high) {
        int a = first;
        int b = last + 1;
        while (a < b) {
            int middle = (a + b) >>> 1;
            if (lowestFromHere[middle] < high) {
                a = middle + 1;
            } else {
                b = middle;
            }
        }
        return a;
    }

    private boolean draw(int g, double[] local) {
        double reach = width;
        while (!weigh(places[g], reach, local)) { // in a hole, or beyond the ends
            reach *= NEXT_WIDTH;
            if (!(reach > 0 && reach <= ALL * span())) {
                return false;
            }
        }
        int[] ends = {firstAbove(places[g] - reach), afterLastBelow(places[g] + reach)};
        for (int i = ends[0]; i < ends[1]; i++) {
            values[g] += local[i] * drawn[i];
        }
        weights[g] = ordinates(local, ends);
        from[g] = ends[0];
        to[g] = ends[1];
        squares[g] = Noise.squares(weights[g], from[g], to[g]);
        lingering[g] = Noise.lingering(weights[g], from[g], to[g], noise.share());
        return true;
    }

    /** A curve through the ordinates themselves. */
    static LocalFit ofValues(double[] abscissa, double[] ordinate, double[] places) {
        return new LocalFit(ordinate, abscissa, ordinate, false, places, false);
    }

    /** A curve through the slopes of the ordinates in time. */
    static LocalFit ofSlopes(double[] time, double[] abscissa, double[] ordinate, double[] places) {
        return new LocalFit(time, abscissa, ordinate, true, places, false);
    }

    /** One parabola through all slopes of the ordinates in time. */
    static LocalFit parabolaOfSlopes(double[] time, double[] abscissa, double[] ordinate, double[] places) {
        return new LocalFit(time, abscissa, ordinate, true, places, true);
    }

    @Override
    public double width() {
        return width;
    }

    @Override
    public double looks() {
        return 1 + span() / width;
    }

    @Override
    public double freedom(int place) {
        return noise.freedom(squares[place], lingering[place]);
    }

    @Override
    public double value(int place) {
        return values[place];
    }

    @Override
    public double standardUncertainty(int place) {
        return Math.sqrt(noise.variance(squares[place], lingering[place]));
    }

    @Override
    public double ofDifference(int place, double factor, int other, double otherFactor) {
        int low = Math.min(from[place], from[other]);
        int high = Math.max(to[place], to[other]);
        double[] difference = new double[high];
        for (int k = from[place]; k < to[place]; k++) {
            difference[k] += factor * weights[place][k];
        }
        for (int k = from[other]; k < to[other]; k++) {
            difference[k] -= otherFactor * weights[other][k];
        }
        return Math.sqrt(noise.variance(difference, low, high));
    }

    private double span() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = first; i <= last; i++) {
            low = x[i] < low ? x[i] : low; // passes over what is not a number
            high = x[i] > high ? x[i] : high;
        }
        return high - low;
    }

    /** Slope of the straight line through a point and its neighbours; a parabola has the same where times are even. */
    private double[] slopeWeights(double[] time, int i) {
        double mean = 0;
        for (int k = -half; k <= half; k++) {
            mean += time[i + k] / (2 * half + 1);
        }
        double squares = 0;
        for (int k = -half; k <= half; k++) {
            squares += (time[i + k] - mean) * (time[i + k] - mean);
        }
        double[] w = new double[2 * half + 1];
        for (int k = -half; k <= half; k++) {
            w[k + half] = (time[i + k] - mean) / squares;
        }
        return w;
    }

    /** Points to each side of one that share its noise. */
    private int gap() {
        return half == 0 ? VALUES_GAP : 2 * half + 1;
    }

    private double bestWidth() {
        double span = span();
        int points = last - first + 1;
        double width = Math.min(1, (gap() + REACH_OVER_GAP) * 1.0 / points) * span;
        double best = width;
        double least = Double.POSITIVE_INFINITY;
        for (; width < NEXT_WIDTH * span; width *= NEXT_WIDTH) {
            double sum = 0;
            int step = Math.max(1, points / TRIED_AT);
            for (int i = first + step / 2; i <= last; i += step) {
                if (Double.isNaN(x[i])) {
                    continue;
                }
                double off = lineAt(x[i], width, i - gap(), i + gap() + 1) - drawn[i];
                sum += off * off;
            }
            if (sum < least) { // not where a place had too few points: then it is not a number
                least = sum;
                best = width;
            }
        }
        return best;
    }

    /** What the local line is at a place, points from outFrom to before outTo left out; not a number where there are too few points. */
    private double lineAt(double place, double reach, int outFrom, int outTo) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double y0 = 0;
        double y1 = 0;
        int end = afterLastBelow(place + reach);
        double scale = 1 / reach;
        for (int i = firstAbove(place - reach); i < end; i++) {
            double d = (x[i] - place) * scale;
            double a = Math.abs(d);
            if (!(a < 1) || (i >= outFrom && i < outTo)) { // not a number too
                continue;
            }
            double c = 1 - a * a * a;
            double w = c * c * c;
            double wd = w * d;
            s0 += w;
            s1 += wd;
            s2 += wd * d;
            y0 += w * drawn[i];
            y1 += wd * drawn[i];
        }
        double determinant = s0 * s2 - s1 * s1;
        return determinant > SINGULAR * s0 * s2 ? (s2 * y0 - s1 * y1) / determinant : Double.NaN;
    }

    /**
     * Weights of the drawn points for the value at a place of the local parabola, from the first point above its reach to the last below.
     * @return whether there are points enough
     */
    private boolean weigh(double place, double reach, double[] local) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        double s4 = 0;
        int used = 0;
        int begin = firstAbove(place - reach);
        int end = afterLastBelow(place + reach);
        double scale = 1 / reach;
        for (int i = begin; i < end; i++) {
            double d = (x[i] - place) * scale;
            double a = Math.abs(d);
            if (!(a < 1)) { // not a number too
                local[i] = 0;
                continue;
            }
            double c = 1 - a * a * a;
            double w = c * c * c;
            local[i] = w;
            used++;
            double wd = w * d;
            double wd2 = wd * d;
            s0 += w;
            s1 += wd;
            s2 += wd2;
            s3 += wd2 * d;
            s4 += wd2 * d * d;
        }
        // first row of the inverse of the matrix of moments
        double m0 = s2 * s4 - s3 * s3;
        double m1 = s2 * s3 - s1 * s4;
        double m2 = s1 * s3 - s2 * s2;
        double determinant = s0 * m0 + s1 * m1 + s2 * m2;
        if (used <= 3 || !(determinant > SINGULAR * s0 * s2 * s4)) {
            return false;
        }
        double c0 = m0 / determinant;
        double c1 = m1 / determinant;
        double c2 = m2 / determinant;
        for (int i = begin; i < end; i++) {
            if (local[i] != 0) {
                double d = (x[i] - place) * scale;
                local[i] *= c0 + d * (c1 + d * c2);
            }
        }
        return true;
    }

    /** From weights of the drawn points between two ends to weights of the ordinates; the ends become theirs. */
    private double[] ordinates(double[] local, int[] ends) {
        double[] all = new double[x.length];
        for (int i = ends[0]; i < ends[1]; i++) {
            double weight = local[i];
            if (weight != 0) {
                double[] own = slopeWeights[i];
                for (int k = 0; k < own.length; k++) {
                    all[i - half + k] += weight * own[k];
                }
            }
        }
        ends[0] -= half;
        ends[1] += half;
        return all;
    }

    /** Sizes of the noise from what the curve leaves over, point by point and summed over a few. */
    private Noise measured(double share) {
        int n = x.length;
        double[] local = new double[n];
        double[][] left = new double[n][];
        int[] lows = new int[n];
        int[] highs = new int[n];
        double[] residual = new double[n];
        double seen = 0;
        double own = 0;
        double lingering = 0;
        int points = 0;
        for (int i = first; i <= last; i++) {
            if (Double.isNaN(x[i])) {
                continue;
            }
            double told = 0;
            if (!weigh(x[i], width, local)) {
                x[i] = Double.NaN; // stands alone: it tells nothing of what scatters
                continue;
            }
            points++;
            int[] ends = {firstAbove(x[i] - width), afterLastBelow(x[i] + width)};
            for (int k = ends[0]; k < ends[1]; k++) {
                told += local[k] * drawn[k];
                local[k] = -local[k];
            }
            local[i] += 1;
            residual[i] = drawn[i] - told;
            left[i] = ordinates(local, ends);
            lows[i] = ends[0];
            highs[i] = ends[1];
            seen += residual[i] * residual[i];
            own += Noise.squares(left[i], ends[0], ends[1]);
            lingering += Noise.lingering(left[i], ends[0], ends[1], share);
        }
        double swallowed = span() / width;
        double freedom = Math.max(1.5, 0.8 * (points - 1.5 * swallowed));
        return Noise.of(
                new Noise.Squares(seen, own, lingering, freedom),
                together(left, lows, highs, residual, share, swallowed),
                share);
    }

    /** Sum of squares of what is left over, summed over a few points; half of each stretch is in the next one too. */
    private Noise.Squares together(
            double[][] left, int[] lows, int[] highs, double[] residual, double share, double swallowed) {
        int together = half == 0 ? VALUES_TOGETHER : SLOPES_TOGETHER;
        double[] sum = new double[x.length];
        double seen = 0;
        double own = 0;
        double lingering = 0;
        int stretches = 0;
        for (int i = first; i + together <= last + 1; i += together / 2) {
            java.util.Arrays.fill(sum, 0);
            double r = 0;
            int low = sum.length;
            int high = 0;
            for (int m = 0; m < together; m++) {
                if (Double.isNaN(x[i + m])) {
                    r = Double.NaN;
                    break;
                }
                r += residual[i + m];
                double[] of = left[i + m];
                low = Math.min(low, lows[i + m]);
                high = Math.max(high, highs[i + m]);
                for (int k = lows[i + m]; k < highs[i + m]; k++) {
                    sum[k] += of[k];
                }
            }
            if (Double.isNaN(r)) {
                continue;
            }
            stretches++;
            seen += r * r;
            own += Noise.squares(sum, low, high);
            lingering += Noise.lingering(sum, low, high, share);
        }
        // stretches that lap over by half are worth 2/3 of their number (Welch 1967, from memory), less what the curve
        // swallows
        double freedom = Math.max(1.5, 2.0 / 3 * stretches - 0.5 * swallowed);
        return new Noise.Squares(seen, own, lingering, freedom);
    }
}
