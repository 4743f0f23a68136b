package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.Function;
import longthrow.core.formula.Formula;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.jspecify.annotations.Nullable;

/**
 * The figures that agree best with everything that was read: generalised least squares with the errors of shared instruments correlated
 * (JCGM 100:2008 5.1.2 and F.1.2.4).
 * <p>Each figure sought also carries a vanishing pull towards the middle of its believable range, a source of kind {@link Source.Kind#UNKNOWN}.
 * Where readings determine a figure the pull is some 1e-9 of its doubt; where they do not, the doubt is the pull's, and the figure says
 * {@link Measured#isUnknown()}. So nothing needs to be known of which readings suffice for what.
 * <p>Readings are weighed by pooled scatter; the doubt of the result is carried from the doubt of each reading itself.
 * <p>A reading that alone says something of a figure is taken last and fixes that figure exactly: it checks nothing, so it cannot pull at the
 * others. Only the readings left over when all such have been taken away ({@link Peeling}) check each other and are solved together; what they
 * show of a shared instrument's error is then taken off the others. The minimum is the same as that of all readings at once, found far sooner.
 */
public final class Reconciliation {
    /** Id of the source of kind unknown for a figure sought: this, followed by its name. */
    public static final String NOTHING_READ = "nothing read for ";

    private static final int MOST_STEPS = 60;
    /** A step below this share of the pull's width is the end; far below any doubt that matters. */
    private static final double SMALL_STEP = 1e-13;

    private final List<Observation> observations;
    private final List<Sought> sought;
    private final Peeling peeling;
    private final LeastSquares checked;
    private final double[] figure;
    private final double[][] gainOfReadings; // [sought][observation]: d(figure)/d(reading)
    private final double[][] gainOfPulls; // [sought][sought]: d(figure)/d(centre of pull)
    private final double[][]
            residualPerUnit; // [observation]: move of the whitened residuals of the checked readings; empty: none
    private final Map<String, Integer> places = new HashMap<>(); // of each name in sought
    private final SharedErrors shared;
    private final @Nullable Peeling.Step[] fixes; // of each figure sought, what is left to do for it; null: nothing
    private final Map<String, Measured> measured = new ConcurrentHashMap<>(); // those asked for so far

    /**
     * A figure that is looked for.
     * @param name   input name in formulas
     * @param label  for people
     * @param centre where the vanishing pull points [SI], also the start of the search
     * @param width  of the pull [SI], far beyond any believable value, &gt; 0
     */
    public record Sought(String name, String label, double centre, double width) {}

    private Reconciliation(
            List<Observation> observations, List<Sought> sought, @Nullable Map<String, Double> point, boolean peel) {
        this.observations = List.copyOf(observations);
        this.sought = List.copyOf(sought);
        int n = this.observations.size();
        int p = this.sought.size();
        peeling = new Peeling(this.observations, this.sought, peel);
        int[] core = peeling.checkedReadings();
        int[] coreFigures = peeling.checkedFigures();
        checked = new LeastSquares(
                Arrays.stream(core).mapToObj(this.observations::get).toList(),
                Arrays.stream(coreFigures).mapToObj(this.sought::get).toList(),
                point);
        figure = this.sought.stream().mapToDouble(Sought::centre).toArray();
        gainOfReadings = new double[p][n];
        gainOfPulls = new double[p][p];
        for (int j = 0; j < p; j++) {
            gainOfPulls[j][j] = 1;
        }
        for (int a = 0; a < coreFigures.length; a++) {
            int j = coreFigures[a];
            figure[j] = checked.figure[a];
            for (int b = 0; b < core.length; b++) {
                gainOfReadings[j][core[b]] = checked.gainOfReadings[a][b];
            }
            for (int b = 0; b < coreFigures.length; b++) {
                gainOfPulls[j][coreFigures[b]] = checked.gainOfPulls[a][b];
            }
        }
        residualPerUnit = new double[n][];
        Arrays.fill(residualPerUnit, new double[0]);
        for (int b = 0; b < core.length; b++) {
            residualPerUnit[core[b]] = checked.residualPerUnit[b];
        }
        shared = new SharedErrors(core);
        fixes = new Peeling.Step[p];
        for (Peeling.Step step : peeling.steps()) {
            fixes[step.figure()] = step;
        }
        for (int j = 0; j < p; j++) {
            places.put(this.sought.get(j).name(), j);
        }
    }

    /** Solves, where that is not done yet, the readings that fix a figure, and before them those of the figures they depend on. */
    private synchronized void find(int figureSought) {
        Peeling.Step step = fixes[figureSought];
        if (step == null) {
            return;
        }
        for (int input : peeling.inputs(step.reading())) {
            if (input != figureSought) {
                find(input);
            }
        }
        fix(step);
        fixes[figureSought] = null;
    }

    private void findAll() {
        for (Peeling.Step step : peeling.steps()) {
            find(step.figure());
        }
    }

    /** Solves one reading for the figure that only it speaks of, all others it depends on being known by now. */
    private void fix(Peeling.Step step) {
        Observation reading = observations.get(step.reading());
        Formula formula = reading.formula();
        int[] inputs = peeling.inputs(step.reading());
        double[] x = new double[inputs.length];
        int at = -1;
        for (int k = 0; k < x.length; k++) {
            x[k] = figure[inputs[k]];
            if (inputs[k] == step.figure()) {
                at = k;
            }
        }
        double[] estimated = shared.with(reading);
        double target = reading.value() - shared.error(estimated);
        double[] slope = new double[x.length];
        double width = sought.get(step.figure()).width();
        double move = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_STEPS && !(Math.abs(move) <= SMALL_STEP * width); k++) {
            move = (target - formula.gradient(x, slope)) / slope[at];
            x[at] += move;
        }
        if (!(Math.abs(move) <= 1e-6 * width)) {
            throw new NotConvergedException(
                    "finding " + sought.get(step.figure()).label() + " from " + reading.id(),
                    MOST_STEPS,
                    Math.abs(move) / width,
                    SMALL_STEP);
        }
        formula.gradient(x, slope);
        figure[step.figure()] = x[at];
        double[] gain = gainOfReadings[step.figure()];
        double[] pulls = gainOfPulls[step.figure()];
        pulls[step.figure()] = 0;
        gain[step.reading()] = 1 / slope[at];
        shared.subtractGain(estimated, gain, 1 / slope[at]);
        for (int k = 0; k < x.length; k++) {
            if (k != at && slope[k] != 0) {
                double factor = slope[k] / slope[at];
                subtract(gain, gainOfReadings[inputs[k]], factor);
                subtract(pulls, gainOfPulls[inputs[k]], factor);
            }
        }
    }

    private static void subtract(double[] from, double[] what, double factor) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= factor * what[i];
        }
    }

    /** What the readings that check each other show of the errors they share with the others: the best estimate given their residuals. */
    private final class SharedErrors {
        private final int[] core;
        private final double[] weighted; // inverse covariance times residuals, by checked reading
        private final double[][] weightedPerUnit; // [checked reading][checked reading moved]
        private final Map<Source, double[]> load =
                new HashMap<>(); // of each source on the checked readings, times its variance

        SharedErrors(int[] core) {
            this.core = core;
            int n = core.length;
            weighted = new double[n];
            weightedPerUnit = new double[n][n];
            for (int i = 0; i < n; i++) {
                for (int k = i; k < n; k++) { // the whitener is lower triangular
                    double w = checked.whiten[k][i];
                    weighted[i] += w * checked.whitenedResidual[k];
                    for (int m = 0; m < n; m++) {
                        weightedPerUnit[i][m] += w * checked.residualPerUnit[m][k];
                    }
                }
                for (Map.Entry<Source, Double> e :
                        observations.get(core[i]).errors().entrySet()) {
                    double u = e.getKey().forWeights();
                    load.computeIfAbsent(e.getKey(), s -> new double[n])[i] += e.getValue() * u * u;
                }
            }
        }

        /** Covariance of this reading with the checked ones; empty when it shares no source with them. */
        double[] with(Observation reading) {
            double[] covariance = new double[0];
            for (Map.Entry<Source, Double> e : reading.errors().entrySet()) {
                double[] other = load.get(e.getKey());
                if (other != null) {
                    covariance = covariance.length == 0 ? new double[core.length] : covariance;
                    subtract(covariance, other, -e.getValue());
                }
            }
            return covariance;
        }

        double error(double[] covariance) {
            double sum = 0;
            for (int i = 0; i < covariance.length; i++) {
                sum += covariance[i] * weighted[i];
            }
            return sum;
        }

        void subtractGain(double[] covariance, double[] gain, double factor) {
            for (int i = 0; i < covariance.length; i++) {
                for (int m = 0; m < core.length; m++) {
                    gain[core[m]] -= factor * covariance[i] * weightedPerUnit[i][m];
                }
            }
        }
    }

    /**
     * Brings the readings together.
     * @param sought every input of every observation's formula
     * @throws NotConvergedException when the steps do not settle, which only happens with formulas far outside their range
     */
    public static Reconciliation of(List<Observation> observations, List<Sought> sought) {
        return of(observations, sought, Reconciliation::findAll);
    }

    /**
     * As the other, for who wants a few figures only: the others are not looked for until they are asked for.
     * @param wanted names among those sought
     */
    public static Reconciliation of(List<Observation> observations, List<Sought> sought, Set<String> wanted) {
        return of(observations, sought, r -> wanted.forEach(name -> r.find(r.place(name))));
    }

    private static Reconciliation of(
            List<Observation> observations, List<Sought> sought, Consumer<Reconciliation> find) {
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
        try {
            Reconciliation peeled = new Reconciliation(observations, sought, null, true);
            find.accept(peeled);
            return peeled;
        } catch (NotConvergedException noSuchFigure) {
            // one reading of several unknown figures, of which one alone cannot give what was read: they share it
            return new Reconciliation(observations, sought, null, false);
        }
    }

    /**
     * The same to first order about a point: the formulas are taken as straight lines there and one step is made, for all readings at once. Wanted
     * where some reading is wildly wrong, so that the figures that fit all readings best are no place to judge the others from.
     * @param point value of each figure sought [SI]
     */
    public static Reconciliation linearisedAt(
            List<Observation> observations, List<Sought> sought, Map<String, Double> point) {
        return new Reconciliation(observations, sought, point, false);
    }

    /** One figure with what each source of doubt moves it by. */
    private Measured collect(int j) {
        find(j);
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int i = 0; i < observations.size(); i++) {
            double gain = gainOfReadings[j][i];
            if (gain != 0) {
                for (Map.Entry<Source, Double> e : observations.get(i).errors().entrySet()) {
                    contributions.merge(
                            e.getKey(), gain * e.getValue() * e.getKey().standardUncertainty(), Double::sum);
                }
            }
        }
        for (int k = 0; k < sought.size(); k++) {
            double gain = gainOfPulls[j][k];
            if (gain != 0) {
                Sought other = sought.get(k);
                Source pull =
                        Source.known(NOTHING_READ + other.name(), Source.Kind.UNKNOWN, other.label(), other.width());
                contributions.merge(pull, gain * other.width(), Double::sum);
            }
        }
        return Measured.withContributions(figure[j], contributions);
    }

    /**
     * The figure found for a name; ask it whether it is unknown.
     * @throws IllegalArgumentException for a name not sought
     */
    public Measured figure(String name) {
        int place = place(name);
        return measured.computeIfAbsent(name, n -> collect(place));
    }

    private int place(String name) {
        Integer place = places.get(name);
        if (place == null) {
            throw new IllegalArgumentException(name + " was not among the figures sought");
        }
        return place;
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
        for (double r : checked.whitenedResidual) {
            sum += r * r;
        }
        return sum;
    }

    /** How many readings there are beyond those that are needed. */
    public int redundancy() {
        findAll();
        double explained = 0;
        for (int j = 0; j < sought.size(); j++) {
            explained += 1 - gainOfPulls[j][j];
        }
        return (int) Math.round(observations.size() - explained);
    }

    /** Probability of so large a disagreement with no mistake in the readings; 1 when nothing is redundant. */
    public double agreement() {
        int freedom = redundancy();
        return freedom <= 0 ? 1 : 1 - new ChiSquaredDistribution(freedom).cumulativeProbability(chiSquared());
    }

    /** Whitened residuals of the readings that check each other, in their order, then of the pulls on what those depend on. */
    public double[] whitenedResidual() {
        return checked.whitenedResidual.clone();
    }

    /** How the whitened residuals move when one reading is moved by one unit [1/SI]; empty for a reading that nothing checks. */
    public double[] residualPerUnitOf(int observation) {
        return residualPerUnit[observation].clone();
    }

    /**
     * Chi-squared if some readings had been other than they are, to first order.
     * @param moves for each observation index how much is added to it [SI]
     */
    public double chiSquaredWith(Map<Integer, Double> moves) {
        double[] r = checked.whitenedResidual.clone();
        moves.forEach((i, move) -> {
            double[] column = residualPerUnit[i];
            for (int k = 0; k < column.length; k++) {
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
        for (double x : residualPerUnit[observation]) {
            sum += x * x;
        }
        return Math.sqrt(sum);
    }

    /** The move of this reading that would mend the disagreement best, to first order [SI], and the chi-squared it would save. */
    public Mend bestMove(int observation) {
        double[] column = residualPerUnit[observation];
        double a = 0;
        double b = 0;
        for (int k = 0; k < column.length; k++) {
            a += column[k] * column[k];
            b -= column[k] * checked.whitenedResidual[k];
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
