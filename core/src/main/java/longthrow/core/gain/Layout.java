package longthrow.core.gain;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * How sessions lie beside each other, and what that makes of their means: each setup has a level and all drift together on one straight line in the order of pulls, fitted to the
 * sessions' means weighted by their runs (QR). With baseline, change, baseline the line goes through both baselines.
 */
final class Layout {
    /** One session as far as the layout goes. */
    record Place(String setup, double order, int runs) {}

    private final List<Place> places;
    private final List<String> setups;
    private final boolean driftKnown;
    private final double[][] solve; // [coefficient][session]: setups' levels at order 0, then drift a pull

    Layout(List<Place> places) {
        this.places = List.copyOf(places);
        this.setups = places.stream().map(Place::setup).distinct().toList();
        this.driftKnown = setups.size() < places.size()
                && places.stream().map(Place::setup).distinct().anyMatch(this::isSpread);
        int p = setups.size() + (driftKnown ? 1 : 0);
        double[][] x = new double[places.size()][p];
        double[] weight = new double[places.size()];
        for (int s = 0; s < x.length; s++) {
            Place place = places.get(s);
            weight[s] = Math.sqrt(place.runs());
            x[s][setups.indexOf(place.setup())] = weight[s];
            if (driftKnown) {
                x[s][p - 1] = weight[s] * place.order();
            }
        }
        RealMatrix inverse = new QRDecomposition(new Array2DRowRealMatrix(x, false))
                .getSolver()
                .getInverse();
        solve = inverse.multiply(new DiagonalMatrix(weight)).getData();
    }

    private boolean isSpread(String setup) {
        return places.stream()
                        .filter(p -> p.setup().equals(setup))
                        .mapToDouble(Place::order)
                        .distinct()
                        .count()
                > 1;
    }

    /** Whether any setup came back, so that the line's slope is known. */
    boolean isDriftKnown() {
        return driftKnown;
    }

    int sessions() {
        return places.size();
    }

    int runs(int session) {
        return places.get(session).runs();
    }

    /** Sessions that check the line and each other: more of them than levels and slope. */
    int freedom() {
        return places.size() - solve.length;
    }

    /** Weights on the sessions' means that give the setup's level at this place in the order. */
    double[] level(String setup, double order) {
        double[] weights = solve[setups.indexOf(setup)].clone();
        if (driftKnown) {
            double[] drift = drift();
            for (int s = 0; s < weights.length; s++) {
                weights[s] += order * drift[s];
            }
        }
        return weights;
    }

    /** Weights on the sessions' means that give the drift a pull. */
    double[] drift() {
        return driftKnown ? solve[solve.length - 1] : new double[places.size()];
    }

    /** Where the setup's sessions lie on the mean, by runs. */
    double centre(String setup) {
        double sum = 0;
        int runs = 0;
        for (Place place : places) {
            if (place.setup().equals(setup)) {
                sum += place.order() * place.runs();
                runs += place.runs();
            }
        }
        return sum / runs;
    }

    /** Squared misfit of the sessions' means beside levels and line, weighted by runs. */
    double misfit(double[] means) {
        double squares = 0;
        for (int s = 0; s < means.length; s++) {
            double left =
                    means[s] - dot(level(places.get(s).setup(), places.get(s).order()), means);
            squares += places.get(s).runs() * left * left;
        }
        return squares;
    }

    /**
     * How far, in pulls, the drift may have run off the line as a standard deviation, where its shape is not known: anywhere between the levels of the baselines before and after
     * (rectangle of half their distance); behind the last baseline, or before the first, by the whole way to it. Mean of the setup's sessions, each by itself.
     */
    double unknownShape(String setup, String baseline) {
        double squares = 0;
        int runs = 0;
        for (Place place : places) {
            if (place.setup().equals(setup)) {
                double half = halfGap(place.order(), baseline);
                squares += (double) place.runs() * place.runs() * half * half / 3;
                runs += place.runs();
            }
        }
        return Math.sqrt(squares) / runs;
    }

    private double halfGap(double order, String baseline) {
        double before = Double.NEGATIVE_INFINITY;
        double after = Double.POSITIVE_INFINITY;
        for (Place place : places) {
            if (place.setup().equals(baseline)) {
                before = place.order() < order ? Math.max(before, place.order()) : before;
                after = place.order() > order ? Math.min(after, place.order()) : after;
            }
        }
        if (Double.isInfinite(before)) {
            return after - order;
        }
        return Double.isInfinite(after) ? order - before : (after - before) / 2;
    }

    /** Whether the baseline was run both before and after some session of the setup. */
    boolean isBracketed(String setup, String baseline) {
        return places.stream()
                .filter(p -> p.setup().equals(setup))
                .anyMatch(p -> places.stream().anyMatch(b -> b.setup().equals(baseline) && b.order() < p.order())
                        && places.stream().anyMatch(b -> b.setup().equals(baseline) && b.order() > p.order()));
    }

    /** The same with further sessions behind, change and baseline in turns, each of one dropped pull and so many kept ones. */
    Layout with(String setup, String baseline, int pairs, int kept) {
        List<Place> more = new ArrayList<>(places);
        double at = lastPull();
        boolean baselineLast = places.get(places.size() - 1).setup().equals(baseline);
        for (int i = 0; i < 2 * pairs; i++) {
            boolean change = (i % 2 == 0) == baselineLast;
            more.add(new Place(change ? setup : baseline, at + Campaign.WARM_UP + (kept + 1) / 2.0, kept));
            at += Campaign.WARM_UP + kept;
        }
        return new Layout(more);
    }

    private double lastPull() {
        Place last = places.get(places.size() - 1);
        return last.order() + (last.runs() - 1) / 2.0;
    }

    /** Runs of a session on the mean, at least two. */
    int usualRuns() {
        return (int) Math.max(
                2, Math.round(places.stream().mapToInt(Place::runs).average().orElse(2)));
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
