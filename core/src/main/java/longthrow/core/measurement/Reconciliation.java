package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.formula.Formula;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * The figures that agree best with everything that was read: generalised least squares with the errors of shared instruments correlated,
 * by Gauss-Newton steps (JCGM 100:2008 5.1.2 and F.1.2.4; normal equations avoided by QR).
 * <p>Each figure sought also carries a vanishing pull towards the middle of its believable range, a source of kind {@link Source.Kind#UNKNOWN}.
 * Where readings determine a figure the pull is some 1e-9 of its doubt; where they do not, the doubt is the pull's, and the figure says
 * {@link Measured#isUnknown()}. So nothing needs to be known of which readings suffice for what.
 * <p>Readings are weighed by pooled scatter; the doubt of the result is carried from the doubt of each reading itself.
 */
public final class Reconciliation {
    /** Id of the source of kind unknown for a figure sought: this, followed by its name. */
    public static final String NOTHING_READ = "nothing read for ";

    private static final int MOST_STEPS = 40;
    /** A step below this share of the pull's width is the end; far below any doubt that matters. */
    private static final double SMALL_STEP = 1e-12;

    private final List<Observation> observations;
    private final List<Sought> sought;
    private final double[] figure;
    private final RealMatrix gainOfReadings; // sought x observations: d(figure)/d(reading)
    private final RealMatrix gainOfPulls; // sought x sought: d(figure)/d(centre of pull)
    private final RealMatrix
            residualOperator; // (observations + sought) x observations: d(whitened residual)/d(reading)
    private final double[] whitenedResidual;
    private final Map<String, Measured> measured = new LinkedHashMap<>();

    /**
     * A figure that is looked for.
     * @param name   input name in formulas
     * @param label  for people
     * @param centre where the vanishing pull points [SI], also the start of the search
     * @param width  of the pull [SI], far beyond any believable value, &gt; 0
     */
    public record Sought(String name, String label, double centre, double width) {}

    private Reconciliation(List<Observation> observations, List<Sought> sought, @Nullable Map<String, Double> point) {
        this.observations = List.copyOf(observations);
        this.sought = List.copyOf(sought);
        int n = this.observations.size();
        int p = this.sought.size();
        RealMatrix whiten = whitener();
        figure = new double[p];
        for (int j = 0; j < p; j++) {
            Sought s = this.sought.get(j);
            figure[j] = point == null ? s.centre() : point.getOrDefault(s.name(), s.centre());
        }
        int mostSteps = point == null ? MOST_STEPS : 1;
        RealMatrix slopes = new Array2DRowRealMatrix(Math.max(n, 1), p);
        double[] misfit = new double[n + p];
        QRDecomposition qr = null;
        RealMatrix whitenedSlopes = slopes;
        double step = Double.POSITIVE_INFINITY;
        double[] move = new double[p];
        for (int k = 0; k < mostSteps && step > SMALL_STEP; k++) {
            double[] residual = linearise(slopes);
            whitenedSlopes = n == 0 ? slopes : whiten.multiply(slopes);
            double[] whitened = n == 0 ? residual : whiten.operate(residual);
            RealMatrix stacked = new Array2DRowRealMatrix(n + p, p);
            for (int i = 0; i < n; i++) {
                misfit[i] = whitened[i];
                for (int j = 0; j < p; j++) {
                    stacked.setEntry(i, j, whitenedSlopes.getEntry(i, j) * width(j));
                }
            }
            for (int j = 0; j < p; j++) {
                misfit[n + j] = (this.sought.get(j).centre() - figure[j]) / width(j);
                stacked.setEntry(n + j, j, 1);
            }
            qr = new QRDecomposition(stacked);
            move = qr.getSolver()
                    .solve(new org.hipparchus.linear.ArrayRealVector(misfit, false))
                    .toArray();
            step = 0;
            for (int j = 0; j < p; j++) {
                figure[j] += move[j] * width(j);
                step = Math.max(step, Math.abs(move[j]));
            }
        }
        if (point == null && step > 1e-6) {
            throw new NotConvergedException("bringing the readings together", MOST_STEPS, step, SMALL_STEP);
        }
        if (point != null) {
            for (int j = 0; j < p; j++) {
                figure[j] -= move[j] * width(j);
            }
        }
        double[] residual = linearise(slopes);
        double[] whitened = n == 0 ? residual : whiten.operate(residual);
        whitenedResidual = new double[n + p];
        System.arraycopy(whitened, 0, whitenedResidual, 0, n);
        RealMatrix rightSides = new Array2DRowRealMatrix(n + p, n + p);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                rightSides.setEntry(i, j, whiten.getEntry(i, j));
            }
        }
        for (int j = 0; j < p; j++) {
            whitenedResidual[n + j] = (this.sought.get(j).centre() - figure[j]) / width(j);
            rightSides.setEntry(n + j, n + j, 1);
        }
        if (point != null) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < p; j++) {
                    whitenedResidual[i] -= whitenedSlopes.getEntry(i, j) * move[j] * width(j);
                }
            }
            for (int j = 0; j < p; j++) {
                whitenedResidual[n + j] -= move[j];
            }
        }
        RealMatrix gain = java.util.Objects.requireNonNull(qr).getSolver().solve(rightSides);
        gainOfReadings = new Array2DRowRealMatrix(p, Math.max(n, 1));
        gainOfPulls = new Array2DRowRealMatrix(p, p);
        for (int j = 0; j < p; j++) {
            for (int i = 0; i < n; i++) {
                gainOfReadings.setEntry(j, i, gain.getEntry(j, i) * width(j));
            }
            for (int i = 0; i < p; i++) {
                gainOfPulls.setEntry(j, i, gain.getEntry(j, n + i) * width(j) / width(i));
            }
        }
        residualOperator = new Array2DRowRealMatrix(n + p, Math.max(n, 1));
        if (n > 0) {
            RealMatrix explained = whitenedSlopes.multiply(gainOfReadings);
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    residualOperator.setEntry(i, k, whiten.getEntry(i, k) - explained.getEntry(i, k));
                }
            }
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < n; k++) {
                    residualOperator.setEntry(n + j, k, -gainOfReadings.getEntry(j, k) / width(j));
                }
            }
        }
        collect();
    }

    /**
     * Brings the readings together.
     * @param sought every input of every observation's formula
     * @throws NotConvergedException when the steps do not settle, which only happens with formulas far outside their range
     */
    public static Reconciliation of(List<Observation> observations, List<Sought> sought) {
        Set<String> names = new LinkedHashSet<>();
        sought.forEach(s -> names.add(s.name()));
        for (Observation o : observations) {
            for (String input : o.formula().inputs()) {
                if (!names.contains(input)) {
                    throw new IllegalArgumentException("observation " + o.id() + " depends on " + input
                            + ", which is not among the figures sought");
                }
            }
        }
        return new Reconciliation(observations, sought, null);
    }

    /**
     * The same to first order about a point: the formulas are taken as straight lines there and one step is made. Wanted where some reading is wildly
     * wrong, so that the figures that fit all readings best are no place to judge the others from.
     * @param point value of each figure sought [SI]
     */
    public static Reconciliation linearisedAt(
            List<Observation> observations, List<Sought> sought, Map<String, Double> point) {
        return new Reconciliation(observations, sought, point);
    }

    private double width(int j) {
        return sought.get(j).width();
    }

    /** Fills the slopes and returns reading minus formula. */
    private double[] linearise(RealMatrix slopes) {
        Map<String, Integer> column = new LinkedHashMap<>();
        for (int j = 0; j < sought.size(); j++) {
            column.put(sought.get(j).name(), j);
        }
        double[] residual = new double[observations.size()];
        for (int i = 0; i < residual.length; i++) {
            Formula formula = observations.get(i).formula();
            List<String> inputs = formula.inputs();
            double[] x = new double[inputs.size()];
            for (int k = 0; k < x.length; k++) {
                x[k] = figure[java.util.Objects.requireNonNull(column.get(inputs.get(k)))];
            }
            double[] slope = new double[x.length];
            residual[i] = observations.get(i).value() - formula.gradient(x, slope);
            for (int j = 0; j < sought.size(); j++) {
                slopes.setEntry(i, j, 0);
            }
            for (int k = 0; k < x.length; k++) {
                slopes.setEntry(i, java.util.Objects.requireNonNull(column.get(inputs.get(k))), slope[k]);
            }
        }
        return residual;
    }

    /** Inverse of the Cholesky factor of the readings' covariance, from the sources they share. */
    private RealMatrix whitener() {
        int n = observations.size();
        if (n == 0) {
            return new Array2DRowRealMatrix(1, 1);
        }
        RealMatrix covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            Map<Source, Double> a = observations.get(i).errors();
            for (int k = 0; k <= i; k++) {
                Map<Source, Double> b = observations.get(k).errors();
                double sum = 0;
                for (Map.Entry<Source, Double> e : a.entrySet()) {
                    Double other = b.get(e.getKey());
                    if (other != null) {
                        double u = e.getKey().forWeights();
                        sum += e.getValue() * other * u * u;
                    }
                }
                covariance.setEntry(i, k, sum);
                covariance.setEntry(k, i, sum);
            }
        }
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(covariance.getEntry(i, i));
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                covariance.multiplyEntry(i, k, scale[i] * scale[k]);
            }
        }
        RealMatrix l = new CholeskyDecomposition(covariance, 1e-12, 1e-14).getL();
        RealMatrix inverse = new Array2DRowRealMatrix(n, n);
        for (int column = 0; column < n; column++) {
            for (int i = column; i < n; i++) {
                double sum = i == column ? 1 : 0;
                for (int k = column; k < i; k++) {
                    sum -= l.getEntry(i, k) * inverse.getEntry(k, column);
                }
                inverse.setEntry(i, column, sum / l.getEntry(i, i));
            }
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                inverse.multiplyEntry(i, k, scale[k]);
            }
        }
        return inverse;
    }

    private void collect() {
        for (int j = 0; j < sought.size(); j++) {
            Map<Source, Double> contributions = new LinkedHashMap<>();
            for (int i = 0; i < observations.size(); i++) {
                double gain = gainOfReadings.getEntry(j, i);
                observations
                        .get(i)
                        .errors()
                        .forEach((source, factor) ->
                                contributions.merge(source, gain * factor * source.standardUncertainty(), Double::sum));
            }
            for (int k = 0; k < sought.size(); k++) {
                Sought other = sought.get(k);
                Source pull =
                        Source.known(NOTHING_READ + other.name(), Source.Kind.UNKNOWN, other.label(), other.width());
                contributions.merge(pull, gainOfPulls.getEntry(j, k) * other.width(), Double::sum);
            }
            measured.put(sought.get(j).name(), Measured.withContributions(figure[j], contributions));
        }
    }

    /**
     * The figure found for a name; ask it whether it is unknown.
     * @throws IllegalArgumentException for a name not sought
     */
    public Measured figure(String name) {
        Measured found = measured.get(name);
        if (found == null) {
            throw new IllegalArgumentException(name + " was not among the figures sought");
        }
        return found;
    }

    /** All figures as inputs for formulas. */
    public Function<String, Measured> figures() {
        return this::figure;
    }

    public List<Observation> observations() {
        return observations;
    }

    public List<Sought> sought() {
        return sought;
    }

    /** Weighted sum of squared residuals; chi-squared distributed with {@link #redundancy()} degrees of freedom when nothing is wrong. */
    public double chiSquared() {
        double sum = 0;
        for (double r : whitenedResidual) {
            sum += r * r;
        }
        return sum;
    }

    /** How many readings there are beyond those that are needed. */
    public int redundancy() {
        double explained = 0;
        for (int j = 0; j < sought.size(); j++) {
            explained += 1 - gainOfPulls.getEntry(j, j);
        }
        return (int) Math.round(observations.size() - explained);
    }

    /** Probability of so large a disagreement with no mistake in the readings; 1 when nothing is redundant. */
    public double agreement() {
        int freedom = redundancy();
        return freedom <= 0 ? 1 : 1 - new ChiSquaredDistribution(freedom).cumulativeProbability(chiSquared());
    }

    /** Whitened residuals: readings first, then pulls. */
    public double[] whitenedResidual() {
        return whitenedResidual.clone();
    }

    /** How the whitened residuals move when one reading is moved by one unit [1/SI]. */
    public double[] residualPerUnitOf(int observation) {
        return residualOperator.getColumn(observation);
    }

    /**
     * Chi-squared if some readings had been other than they are, to first order.
     * @param moves for each observation index how much is added to it [SI]
     */
    public double chiSquaredWith(Map<Integer, Double> moves) {
        double[] r = whitenedResidual();
        moves.forEach((i, move) -> {
            double[] column = residualPerUnitOf(i);
            for (int k = 0; k < r.length; k++) {
                r[k] += move * column[k];
            }
        });
        double sum = 0;
        for (double x : r) {
            sum += x * x;
        }
        return sum;
    }

    /** How much of an error of one unit in this reading shows in the residuals [1/SI]: 0 for a reading nothing else checks. */
    public double sensitivityTo(int observation) {
        double sum = 0;
        for (double x : residualPerUnitOf(observation)) {
            sum += x * x;
        }
        return Math.sqrt(sum);
    }

    /** The move of this reading that would mend the disagreement best, to first order [SI], and the chi-squared it would save. */
    public Mend bestMove(int observation) {
        double[] column = residualPerUnitOf(observation);
        double a = 0;
        double b = 0;
        for (int k = 0; k < column.length; k++) {
            a += column[k] * column[k];
            b -= column[k] * whitenedResidual[k];
        }
        return a > 0 ? new Mend(b / a, b * b / a) : new Mend(0, 0);
    }

    /**
     * What moving one reading would do.
     * @param move added to the reading [SI]
     * @param saved chi-squared saved by it
     */
    public record Mend(double move, double saved) {}

    /** The observations as a list that may be changed and solved again. */
    public List<Observation> copyOfObservations() {
        return new ArrayList<>(observations);
    }
}
