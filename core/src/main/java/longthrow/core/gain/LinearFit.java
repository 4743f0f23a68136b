package longthrow.core.gain;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Least squares on a straight line in one or more figures, by QR; never by the normal equations, which lose twice the digits.
 * Each figure is taken from its mean and brought to size one first, so that years and their like cost no digits; the solution is refined once.
 * @param coefficients      constant, then one for each figure
 * @param standardErrors    of them, in the same order
 * @param residualDeviation with the freedom left
 * @param freedom           readings less coefficients
 * @param rSquared          share of the scatter that the line takes
 */
public record LinearFit(
        List<Double> coefficients,
        List<Double> standardErrors,
        double residualDeviation,
        int freedom,
        double rSquared) {
    public LinearFit {
        coefficients = List.copyOf(coefficients);
        standardErrors = List.copyOf(standardErrors);
    }

    /** y on one figure. More than two readings, not all at one x. */
    public static LinearFit line(double[] x, double[] y) {
        return of(Arrays.stream(x).mapToObj(v -> new double[] {v}).toArray(double[][]::new), y);
    }

    /**
     * y on several figures.
     * @param x [reading][figure]
     * @throws IllegalArgumentException if there are no more readings than coefficients, or the figures cannot be told apart
     */
    public static LinearFit of(double[][] x, double[] y) {
        int n = y.length;
        int p = x.length == 0 ? 0 : x[0].length;
        if (x.length != n || n <= p + 1) {
            throw new IllegalArgumentException(n + " readings of y and " + x.length + " of x for " + (p + 1)
                    + " coefficients; give as many of both, and more than there are coefficients");
        }
        double[] centre = new double[p];
        double[] size = new double[p];
        double[][] a = centred(x, centre, size);
        double yMean = Sample.mean(y);
        double[] b = Arrays.stream(y).map(v -> v - yMean).toArray();
        RealMatrix matrix = new Array2DRowRealMatrix(a, false);
        QRDecomposition qr = new QRDecomposition(matrix, 1e-12);
        if (!qr.getSolver().isNonSingular()) {
            throw new IllegalArgumentException(
                    "the figures to fit by cannot be told apart: one is a sum of others or does not change");
        }
        double[] slope = qr.getSolver().solve(new ArrayRealVector(b)).toArray();
        double[] left = residual(a, b, slope);
        double[] more = qr.getSolver().solve(new ArrayRealVector(left)).toArray();
        for (int j = 0; j < p; j++) {
            slope[j] += more[j];
        }
        left = residual(a, b, slope);
        double squares = Arrays.stream(left).map(v -> v * v).sum();
        double total = Arrays.stream(b).map(v -> v * v).sum();
        double deviation = Math.sqrt(squares / (n - p - 1));
        double[][] inverse = qr.getSolver().getInverse().getData(); // p x n
        Double[] coefficients = new Double[p + 1];
        Double[] errors = new Double[p + 1];
        double constant = yMean;
        double[] meanRow = new double[n];
        Arrays.fill(meanRow, 1.0 / n);
        for (int j = 0; j < p; j++) {
            coefficients[j + 1] = slope[j] / size[j];
            errors[j + 1] = deviation * norm(inverse[j]) / size[j];
            constant -= slope[j] / size[j] * centre[j];
            for (int i = 0; i < n; i++) {
                meanRow[i] -= inverse[j][i] / size[j] * centre[j];
            }
        }
        coefficients[0] = constant;
        errors[0] = deviation * norm(meanRow);
        return new LinearFit(List.of(coefficients), List.of(errors), deviation, n - p - 1, 1 - squares / total);
    }

    private static double[][] centred(double[][] x, double[] centre, double[] size) {
        int n = x.length;
        double[][] a = new double[n][centre.length];
        for (int j = 0; j < centre.length; j++) {
            int column = j;
            centre[j] =
                    Sample.mean(Arrays.stream(x).mapToDouble(row -> row[column]).toArray());
            double squares = 0;
            for (int i = 0; i < n; i++) {
                a[i][j] = x[i][j] - centre[j];
                squares += a[i][j] * a[i][j];
            }
            size[j] = squares == 0 ? 1 : Math.sqrt(squares);
            for (int i = 0; i < n; i++) {
                a[i][j] /= size[j];
            }
        }
        return a;
    }

    private static double[] residual(double[][] a, double[] b, double[] slope) {
        double[] left = b.clone();
        for (int i = 0; i < b.length; i++) {
            for (int j = 0; j < slope.length; j++) {
                left[i] = Math.fma(-a[i][j], slope[j], left[i]);
            }
        }
        return left;
    }

    private static double norm(double[] v) {
        return Math.sqrt(Arrays.stream(v).map(x -> x * x).sum());
    }
}
