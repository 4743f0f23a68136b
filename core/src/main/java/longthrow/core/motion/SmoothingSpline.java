package longthrow.core.motion;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * Cubic smoothing spline: least sum of w (y - f)2 + smoothing times the integral of f''2 (Reinsch 1967), with the doubt of its value and slope: the
 * posterior of an integrated random walk seen through scatter (Wahba, J. R. Statist. Soc. B 45 (1983) 133; Silverman, ibid. 47 (1985) 1),
 * what lies between the knots included. How the smoothing is chosen and why: docs/decisions/0007-smoothing.md.
 *
 * <p>Immutable. Several hundred knots at most: the work grows with the cube of their number.
 */
public final class SmoothingSpline {
    /** Search for the strength of smoothing, in powers of e about the scale of the roughness. */
    private static final double WIDEST = 40;

    private final Knots knots;
    private final double[] fitted;
    private final double[] y;
    private final double smoothing;
    private final double variance; // of a reading of weight 1
    private final double freedom;
    private final RealMatrix smoother;
    private final RealMatrix covariance; // of the fitted values, posterior
    private final double[] weights;

    private SmoothingSpline(Modes modes, double smoothing, double variance, double freedom) {
        this.knots = modes.knots;
        this.y = modes.y;
        this.weights = modes.weights;
        this.smoothing = smoothing;
        this.variance = variance;
        this.freedom = freedom;
        this.smoother = modes.smoother(smoothing);
        this.fitted = smoother.operate(y);
        int n = y.length;
        this.covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                covariance.setEntry(i, j, variance * smoother.getEntry(i, j) / weights[j]);
            }
        }
    }

    /**
     * With a stated strength of smoothing.
     * @param smoothing 0 interpolates
     * @param variance  of a reading of weight 1; 0 when no doubt is asked for
     */
    static SmoothingSpline of(Knots knots, double[] y, double[] weights, double smoothing, double variance) {
        if (!(smoothing >= 0)) {
            throw new IllegalArgumentException("smoothing is " + smoothing + "; it must be 0 or more");
        }
        return new SmoothingSpline(new Modes(knots, y, weights), smoothing, variance, Double.POSITIVE_INFINITY);
    }

    /**
     * Through every reading, as if they had no scatter.
     * @param deviations standard deviation of each reading, for {@link #bendScatter}
     */
    static SmoothingSpline interpolating(Knots knots, double[] y, double[] deviations) {
        return of(knots, y, weights(deviations), 0, 1);
    }

    /**
     * As smooth as the readings make likely: restricted maximum likelihood of the walk seen through scatter, the scatter itself known from a table as if
     * from so many degrees of freedom, and corrected by the readings.
     * @param deviations      standard deviation of each reading by the table
     * @param tableFreedom    degrees of freedom behind that table
     */
    static SmoothingSpline likeliest(Knots knots, double[] y, double[] deviations, double tableFreedom) {
        Modes modes = new Modes(knots, y, weights(deviations));
        double middle = modes.middle();
        double found = new BrentOptimizer(1e-8, 1e-10)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(v -> modes.unlikeliness(Math.exp(v) / middle, tableFreedom)),
                        GoalType.MINIMIZE,
                        bracket(modes, middle, tableFreedom))
                .getPoint();
        double smoothing = Math.exp(found) / middle;
        double free = modes.free();
        return new SmoothingSpline(modes, smoothing, modes.variance(smoothing, tableFreedom), tableFreedom + free);
    }

    /** Around the best of a coarse row, so that a second, worse dip is not taken for it. */
    private static SearchInterval bracket(Modes modes, double middle, double tableFreedom) {
        double best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (double v = -WIDEST; v <= WIDEST; v++) {
            double here = modes.unlikeliness(Math.exp(v) / middle, tableFreedom);
            if (here < least) {
                least = here;
                best = v;
            }
        }
        return new SearchInterval(best - 1, best + 1, best);
    }

    private static double[] weights(double[] deviations) {
        double[] weights = new double[deviations.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = 1 / (deviations[i] * deviations[i]);
        }
        return weights;
    }

    /** The curve. */
    public double at(double x) {
        return dot(knots.weights(x, 0), fitted);
    }

    /** Its slope. */
    public double slope(double x) {
        return dot(knots.weights(x, 1), fitted);
    }

    /** Its second derivative. */
    public double bend(double x) {
        return dot(knots.weights(x, 2), fitted);
    }

    /** Standard uncertainty of the curve. */
    public double deviation(double x) {
        return Math.sqrt(Math.max(0, covariance(x, 0, x, 0)));
    }

    /** Standard uncertainty of the slope. */
    public double slopeDeviation(double x) {
        return Math.sqrt(Math.max(0, covariance(x, 1, x, 1)));
    }

    /**
     * Covariance of value (order 0) or slope (order 1) at one point with that at another.
     * @throws IllegalStateException for a spline that interpolates: it knows nothing of what lies between
     */
    double covariance(double t, int orderT, double u, int orderU) {
        if (smoothing == 0) {
            throw new IllegalStateException("an interpolating spline does not say how far off it may be");
        }
        double atKnots = dot(knots.weights(t, orderT), covariance.operate(knots.weights(u, orderU)));
        return atKnots + variance / smoothing * knots.between(t, orderT, u, orderU);
    }

    /**
     * Standard deviation of the second derivative by the scatter of the readings alone. What the true curve does between the readings, and the
     * smoothing itself, come on top: a random walk of this kind has no second derivative, so no band for it is claimed.
     */
    public double bendScatter(double x) {
        double[] functional = smoother.preMultiply(knots.weights(x, 2));
        double sum = 0;
        for (int i = 0; i < functional.length; i++) {
            sum += functional[i] * functional[i] / weights[i];
        }
        return Math.sqrt(variance * sum);
    }

    /**
     * How far the smoothing itself pulls the second derivative, as far as the curve can tell: what smoothing it a second time does to it. The first order of
     * the error of smoothing with the curve standing in for the truth; no bound (docs/decisions/0010-lift-tables-as-readings.md).
     */
    double bendPull(double x) {
        double[] again = smoother.operate(fitted);
        for (int i = 0; i < again.length; i++) {
            again[i] -= fitted[i];
        }
        return dot(knots.weights(x, 2), again);
    }

    /** Degrees of freedom behind the doubt. */
    public double freedom() {
        return freedom;
    }

    /** How many parameters the curve is worth: the trace of the smoother. */
    double parameters() {
        return smoother.getTrace();
    }

    /** Scatter found, as a multiple of what was stated. */
    double scatterRatio() {
        return Math.sqrt(variance);
    }

    /** Sum of the squared weighted distances from the readings. */
    double residualSquares() {
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            sum += weights[i] * (y[i] - fitted[i]) * (y[i] - fitted[i]);
        }
        return sum;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** The readings along the shapes of rising roughness (Demmler and Reinsch 1975), in which every strength of smoothing is a sum. */
    private static final class Modes {
        final Knots knots;
        final double[] y;
        final double[] weights;
        private final RealMatrix shapes;
        private final double[] roughness;
        private final double[] along;

        Modes(Knots knots, double[] y, double[] weights) {
            this.knots = knots;
            this.y = y.clone();
            this.weights = weights.clone();
            int n = y.length;
            if (n != knots.count() || weights.length != n) {
                throw new IllegalArgumentException(
                        knots.count() + " knots, " + n + " readings and " + weights.length + " weights");
            }
            RealMatrix scaled = knots.roughness().copy();
            double[] scaledReadings = new double[n];
            for (int i = 0; i < n; i++) {
                if (!(weights[i] > 0) || !Double.isFinite(y[i])) {
                    throw new IllegalArgumentException("reading " + y[i] + " with weight " + weights[i]
                            + ": readings must be finite, weights above 0");
                }
                scaledReadings[i] = Math.sqrt(weights[i]) * y[i];
                for (int j = 0; j < n; j++) {
                    scaled.multiplyEntry(i, j, 1 / Math.sqrt(weights[i] * weights[j]));
                }
            }
            EigenDecompositionSymmetric modes = new EigenDecompositionSymmetric(scaled);
            this.shapes = modes.getV();
            double[] sizes = modes.getEigenvalues().clone();
            for (int k = n - knots.smoothShapes(); k < n; k++) {
                sizes[k] = 0; // largest first; the last are nothing but rounding
            }
            this.roughness = sizes;
            this.along = shapes.preMultiply(scaledReadings);
        }

        int free() {
            return y.length - knots.smoothShapes();
        }

        /** A roughness halfway, by its logarithm. */
        double middle() {
            return Math.sqrt(roughness[0] * roughness[free() - 1]);
        }

        RealMatrix smoother(double smoothing) {
            int n = y.length;
            RealMatrix result = new Array2DRowRealMatrix(n, n);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    double sum = 0;
                    for (int k = 0; k < n; k++) {
                        sum += shapes.getEntry(i, k) * shapes.getEntry(j, k) / (1 + smoothing * roughness[k]);
                    }
                    result.setEntry(i, j, sum * Math.sqrt(weights[j] / weights[i]));
                }
            }
            return result;
        }

        /** What the walk and the scatter leave unexplained, in squares of the scatter. */
        private double unexplained(double smoothing) {
            double sum = 0;
            for (int k = 0; k < free(); k++) {
                double s = smoothing * roughness[k];
                sum += along[k] * along[k] * s / (1 + s);
            }
            return sum;
        }

        /** Likeliest variance of a reading of weight 1, the table's 1 counted with its degrees of freedom. */
        double variance(double smoothing, double tableFreedom) {
            return Double.isInfinite(tableFreedom)
                    ? 1
                    : (tableFreedom + unexplained(smoothing)) / (tableFreedom + free());
        }

        /** Twice the negative logarithm of the restricted likelihood, up to a constant. */
        double unlikeliness(double smoothing, double tableFreedom) {
            double spread = 0;
            for (int k = 0; k < free(); k++) {
                double s = smoothing * roughness[k];
                spread += Math.log1p(1 / s);
            }
            return spread
                    + (Double.isInfinite(tableFreedom)
                            ? unexplained(smoothing)
                            : (tableFreedom + free()) * Math.log(tableFreedom + unexplained(smoothing)));
        }
    }
}
