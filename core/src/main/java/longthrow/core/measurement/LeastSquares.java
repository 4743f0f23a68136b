package longthrow.core.measurement;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.formula.Formula;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * Generalised least squares over a few readings, all at once: Gauss-Newton steps, errors of shared sources correlated, normal equations
 * avoided by QR. Each figure sought carries its vanishing pull. Cost grows with the cube of the readings; {@link Reconciliation} brings
 * here only those that check each other.
 * <p>Plain arrays, [row][column]: the matrices are small and their elements are touched one by one.
 */
final class LeastSquares {
    private static final int MOST_STEPS = 40;
    /** A step below this share of the pull's width is the end; far below any doubt that matters. */
    private static final double SMALL_STEP = 1e-12;

    private final List<Observation> observations;
    private final List<Reconciliation.Sought> sought;
    private final int n;
    private final int p;
    private final int[][] columns; // by reading, the figure of each input of its formula

    /** By figure sought. */
    final double[] figure;
    /** Inverse of the Cholesky factor of the covariance of the readings; lower triangle. */
    final double[][] whiten;
    /** Figures x readings: d(figure) / d(reading). */
    final double[][] gainOfReadings;
    /** Figures x figures: d(figure) / d(centre of pull). */
    final double[][] gainOfPulls;
    /** Readings x (readings + figures): how the whitened residuals move when one reading is moved by one unit. */
    final double[][] residualPerUnit;
    /** Readings first, then pulls. */
    final double[] whitenedResidual;

    /**
     * @param point null to step until the figures settle; else where the formulas are taken as straight lines and one step is made
     */
    LeastSquares(
            List<Observation> observations, List<Reconciliation.Sought> sought, @Nullable Map<String, Double> point) {
        this.observations = List.copyOf(observations);
        this.sought = List.copyOf(sought);
        n = this.observations.size();
        p = this.sought.size();
        columns = columns();
        figure = new double[p];
        for (int j = 0; j < p; j++) {
            Reconciliation.Sought s = this.sought.get(j);
            figure[j] = point == null ? s.centre() : point.getOrDefault(s.name(), s.centre());
        }
        gainOfReadings = new double[p][n];
        gainOfPulls = new double[p][p];
        residualPerUnit = new double[n][n + p];
        whitenedResidual = new double[n + p];
        if (p == 0) { // nothing checks anything; the matrix library has no empty matrix
            whiten = new double[0][0];
            return;
        }
        whiten = whitener();
        if (point == null) {
            settle();
        } else {
            stepOnce();
        }
    }

    private int[][] columns() {
        Map<String, Integer> column = new HashMap<>();
        for (int j = 0; j < p; j++) {
            column.put(sought.get(j).name(), j);
        }
        int[][] all = new int[n][];
        for (int i = 0; i < n; i++) {
            all[i] = observations.get(i).formula().inputs().stream()
                    .mapToInt(name -> java.util.Objects.requireNonNull(column.get(name)))
                    .toArray();
        }
        return all;
    }

    private double width(int j) {
        return sought.get(j).width();
    }

    private void settle() {
        double[][] slopes = new double[n][p];
        QRDecomposition qr = decompose(slopes);
        double step = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_STEPS && step > SMALL_STEP; k++) {
            double[] residual = linearise(slopes);
            qr = decompose(slopes);
            double[] move = move(qr, residual);
            step = 0;
            for (int j = 0; j < p; j++) {
                figure[j] += move[j] * width(j);
                step = Math.max(step, Math.abs(move[j]));
            }
        }
        if (step > 1e-6) {
            throw new NotConvergedException("bringing the readings together", MOST_STEPS, step, SMALL_STEP);
        }
        whitenResidual(linearise(slopes));
        gains(qr, slopes);
    }

    private void stepOnce() {
        double[][] slopes = new double[n][p];
        double[] residual = linearise(slopes);
        QRDecomposition qr = decompose(slopes);
        double[] move = move(qr, residual);
        whitenResidual(residual);
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                for (int j = 0; j < p; j++) {
                    whitenedResidual[i] -= whiten[i][k] * slopes[k][j] * move[j] * width(j);
                }
            }
        }
        for (int j = 0; j < p; j++) {
            whitenedResidual[n + j] -= move[j];
        }
        gains(qr, slopes);
    }

    /** Fills the slopes and returns reading minus formula. */
    private double[] linearise(double[][] slopes) {
        double[] residual = new double[n];
        for (int i = 0; i < n; i++) {
            Formula formula = observations.get(i).formula();
            double[] x = new double[columns[i].length];
            for (int k = 0; k < x.length; k++) {
                x[k] = figure[columns[i][k]];
            }
            double[] slope = new double[x.length];
            residual[i] = observations.get(i).value() - formula.gradient(x, slope);
            for (int k = 0; k < x.length; k++) {
                slopes[i][columns[i][k]] = slope[k];
            }
        }
        return residual;
    }

    /** Whitened slopes over the pulls, in units of the widths of the pulls. */
    private QRDecomposition decompose(double[][] slopes) {
        double[][] stacked = new double[n + p][p];
        for (int i = 0; i < n; i++) {
            whitenRow(i, slopes, stacked[i]);
            for (int j = 0; j < p; j++) {
                stacked[i][j] *= width(j);
            }
        }
        for (int j = 0; j < p; j++) {
            stacked[n + j][j] = 1;
        }
        return new QRDecomposition(new Array2DRowRealMatrix(stacked, false));
    }

    private void whitenRow(int i, double[][] rows, double[] out) {
        for (int k = 0; k <= i; k++) {
            double w = whiten[i][k];
            if (w != 0) {
                for (int j = 0; j < out.length; j++) {
                    out[j] += w * rows[k][j];
                }
            }
        }
    }

    /** Step of the figures, in widths of their pulls. */
    private double[] move(QRDecomposition qr, double[] residual) {
        double[] misfit = new double[n + p];
        for (int i = 0; i < n; i++) {
            misfit[i] = whitened(i, residual);
        }
        for (int j = 0; j < p; j++) {
            misfit[n + j] = (sought.get(j).centre() - figure[j]) / width(j);
        }
        return qr.getSolver()
                .solve(new org.hipparchus.linear.ArrayRealVector(misfit, false))
                .toArray();
    }

    private double whitened(int i, double[] residual) {
        double sum = 0;
        for (int k = 0; k <= i; k++) {
            sum += whiten[i][k] * residual[k];
        }
        return sum;
    }

    private void whitenResidual(double[] residual) {
        for (int i = 0; i < n; i++) {
            whitenedResidual[i] = whitened(i, residual);
        }
        for (int j = 0; j < p; j++) {
            whitenedResidual[n + j] = (sought.get(j).centre() - figure[j]) / width(j);
        }
    }

    private void gains(QRDecomposition qr, double[][] slopes) {
        double[][] rightSides = new double[n + p][n + p];
        for (int i = 0; i < n; i++) {
            System.arraycopy(whiten[i], 0, rightSides[i], 0, n);
        }
        for (int j = 0; j < p; j++) {
            rightSides[n + j][n + j] = 1;
        }
        double[][] gain = qr.getSolver()
                .solve(new Array2DRowRealMatrix(rightSides, false))
                .getData();
        for (int j = 0; j < p; j++) {
            for (int i = 0; i < n; i++) {
                gainOfReadings[j][i] = gain[j][i] * width(j);
            }
            for (int k = 0; k < p; k++) {
                gainOfPulls[j][k] = gain[j][n + k] * width(j) / width(k);
            }
        }
        for (int i = 0; i < n; i++) {
            double[] whitenedSlopes = new double[p];
            whitenRow(i, slopes, whitenedSlopes);
            for (int k = 0; k < n; k++) {
                double explained = 0;
                for (int j = 0; j < p; j++) {
                    explained += whitenedSlopes[j] * gainOfReadings[j][k];
                }
                residualPerUnit[k][i] = whiten[i][k] - explained;
            }
        }
        for (int j = 0; j < p; j++) {
            for (int k = 0; k < n; k++) {
                residualPerUnit[k][n + j] = -gainOfReadings[j][k] / width(j);
            }
        }
    }

    /** Inverse of the Cholesky factor of the readings' covariance, from the sources they share. */
    private double[][] whitener() {
        if (n == 0) {
            return new double[0][0];
        }
        double[][] covariance = covariance();
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(covariance[i][i]);
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                covariance[i][k] *= scale[i] * scale[k];
            }
        }
        RealMatrix factor = new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false), 1e-12, 1e-14).getL();
        double[][] l = factor.getData();
        double[][] inverse = new double[n][n];
        for (int column = 0; column < n; column++) {
            for (int i = column; i < n; i++) {
                double sum = i == column ? 1 : 0;
                for (int k = column; k < i; k++) {
                    sum -= l[i][k] * inverse[k][column];
                }
                inverse[i][column] = sum / l[i][i];
            }
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                inverse[i][k] *= scale[k];
            }
        }
        return inverse;
    }

    private double[][] covariance() {
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                Map<Source, Double> other = observations.get(k).errors();
                double sum = 0;
                for (Map.Entry<Source, Double> e : observations.get(i).errors().entrySet()) {
                    Double there = other.get(e.getKey());
                    if (there != null) {
                        double u = e.getKey().forWeights();
                        sum += e.getValue() * there * u * u;
                    }
                }
                covariance[i][k] = sum;
                covariance[k][i] = sum;
            }
        }
        return covariance;
    }
}
