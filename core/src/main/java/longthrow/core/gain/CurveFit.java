package longthrow.core.gain;

import java.util.Arrays;
import java.util.List;
import longthrow.core.measurement.NotConvergedException;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;

/**
 * Least squares on a curve of one's own, by the library's Levenberg and Marquardt.
 * @param coefficients      found
 * @param standardErrors    of them, the curve taken as straight about there
 * @param sumOfSquares      left over
 * @param residualDeviation with the freedom left
 */
public record CurveFit(
        List<Double> coefficients, List<Double> standardErrors, double sumOfSquares, double residualDeviation) {
    private static final int MOST_STEPS = 5000;
    private static final double CLOSE = 1e-14;

    public CurveFit {
        coefficients = List.copyOf(coefficients);
        standardErrors = List.copyOf(standardErrors);
    }

    /** A curve with its slopes. */
    @FunctionalInterface
    public interface Curve {
        /**
         * The curve at x.
         * @param slopes filled with its derivatives to the coefficients
         */
        double at(double x, double[] coefficients, double[] slopes);
    }

    /**
     * Fits.
     * @param start where to begin, one for each coefficient
     * @throws NotConvergedException if it does not settle
     */
    public static CurveFit of(Curve curve, double[] x, double[] y, double... start) {
        int n = x.length;
        int p = start.length;
        if (y.length != n || n <= p) {
            throw new IllegalArgumentException(n + " readings of x and " + y.length + " of y for " + p
                    + " coefficients; give as many of both, and more than there are coefficients");
        }
        LeastSquaresOptimizer.Optimum optimum;
        try {
            optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(CLOSE)
                    .withParameterRelativeTolerance(CLOSE)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .target(y)
                            .lazyEvaluation(false)
                            .maxEvaluations(MOST_STEPS)
                            .maxIterations(MOST_STEPS)
                            .model(at -> values(curve, x, at), at -> slopes(curve, x, at))
                            .build());
        } catch (MathIllegalStateException unsettled) {
            throw new NotConvergedException("fitting a curve of " + p + " coefficients", MOST_STEPS, Double.NaN, CLOSE);
        }
        double squares = optimum.getCost() * optimum.getCost();
        double deviation = Math.sqrt(squares / (n - p));
        double[] found = optimum.getPoint().toArray();
        double[][] inverse = new QRDecomposition(optimum.getJacobian())
                .getSolver()
                .getInverse()
                .getData();
        List<Double> errors = Arrays.stream(inverse)
                .map(row ->
                        deviation * Math.sqrt(Arrays.stream(row).map(v -> v * v).sum()))
                .toList();
        return new CurveFit(Arrays.stream(found).boxed().toList(), errors, squares, deviation);
    }

    private static double[] values(Curve curve, double[] x, double[] at) {
        double[] slopes = new double[at.length];
        return Arrays.stream(x).map(v -> curve.at(v, at, slopes)).toArray();
    }

    private static double[][] slopes(Curve curve, double[] x, double[] at) {
        double[][] slopes = new double[x.length][at.length];
        for (int i = 0; i < x.length; i++) {
            curve.at(x[i], at, slopes[i]);
        }
        return slopes;
    }
}
