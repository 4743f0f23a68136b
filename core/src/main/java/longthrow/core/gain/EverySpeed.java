package longthrow.core.gain;

import java.util.Arrays;
import java.util.List;
import longthrow.core.formula.SampleSource;
import longthrow.core.measurement.StudentT;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.QRDecomposition;

/**
 * How much wider a band must be to hold at every speed at once: the max-t method (P. Hall and A. Wilson, Biometrics 47 (1991) 757, and T. Hothorn and others, Biometrical Journal 50 (2008) 346; both from
 * memory), with errors drawn from the runs' own residual curves, which know how speeds go together. Each draw has a difference and its own scatter, as the campaign has.
 */
final class EverySpeed {
    /** The factor then scatters by about 3 %. */
    private static final int DRAWS = 1000;

    /** So many degrees of freedom are as good as known: a scatter drawn from no more makes the factor wider by less than it scatters. */
    private static final int MANY = 100;

    private static final long SEED = 20_261_127L;

    private EverySpeed() {}

    /**
     * Factor on the standard uncertainty. At least the pointwise one, at most what speeds that know nothing of each other would need (Šidák).
     * @param coverage of the band as a whole
     * @param residuals [contrast][speed], differences of runs that scatter as a run does and know nothing of each other; as many as there are degrees of freedom
     */
    static double factor(List<double[]> residuals, double coverage) {
        int freedom = residuals.size();
        int speeds = residuals.get(0).length;
        double pointwise = StudentT.factor(coverage, freedom);
        if (speeds == 1) {
            return pointwise;
        }
        double most = StudentT.factor(Math.pow(coverage, 1.0 / speeds), freedom);
        int drawnFreedom = Math.min(freedom, MANY);
        double[] largest = new double[DRAWS];
        double[][] e = squeezed(scaled(residuals));
        SampleSource random = SampleSource.of(SEED);
        double[] difference = new double[speeds];
        double[] noise = new double[speeds];
        double[] squares = new double[speeds];
        double[] normals = new double[e.length];
        for (int k = 0; k < DRAWS; k++) {
            draw(random, normals, e, difference);
            Arrays.fill(squares, 0);
            for (int i = 0; i < drawnFreedom; i++) {
                draw(random, normals, e, noise);
                for (int j = 0; j < speeds; j++) {
                    squares[j] += noise[j] * noise[j];
                }
            }
            for (int j = 0; j < speeds; j++) {
                double t = difference[j] * difference[j] / squares[j] * drawnFreedom;
                largest[k] = t > largest[k] ? t : largest[k];
            }
        }
        Arrays.sort(largest);
        double found = Math.sqrt(largest[(int) Math.ceil(coverage * DRAWS) - 1]);
        return Math.min(most, Math.max(pointwise, found));
    }

    /** Each speed brought to the same size; a weighted sum of the rows with normal weights has the runs' own covariance. */
    private static double[][] scaled(List<double[]> residuals) {
        int freedom = residuals.size();
        int speeds = residuals.get(0).length;
        double[][] e = new double[residuals.size()][speeds];
        for (int j = 0; j < speeds; j++) {
            double squares = 0;
            for (double[] row : residuals) {
                squares += row[j] * row[j];
            }
            double size = Math.sqrt(squares / freedom);
            for (int i = 0; i < e.length; i++) {
                e[i][j] = residuals.get(i)[j] / size / Math.sqrt(freedom);
            }
        }
        return e;
    }

    /** Rows by the hundred are a few with the same covariance: the triangle of their QR decomposition. */
    private static double[][] squeezed(double[][] e) {
        return e.length <= MANY || e.length <= e[0].length
                ? e
                : new QRDecomposition(new Array2DRowRealMatrix(e, false))
                        .getR()
                        .getSubMatrix(0, e[0].length - 1, 0, e[0].length - 1)
                        .getData();
    }

    private static void draw(SampleSource random, double[] normals, double[][] e, double[] out) {
        random.fillNormal(normals, 0, normals.length);
        Arrays.fill(out, 0);
        for (int i = 0; i < e.length; i++) {
            double[] row = e[i];
            double z = normals[i];
            for (int j = 0; j < out.length; j++) {
                out[j] += z * row[j];
            }
        }
    }
}
