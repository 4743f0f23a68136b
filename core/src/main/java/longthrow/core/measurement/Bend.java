package longthrow.core.measurement;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.formula.Formula;
import longthrow.core.formula.Interval;

/**
 * The 95 % interval of a figure that is the largest (or the smallest) of several smooth ones, such as the larger of two tapers by size. The largest of
 * noisy figures is too large on average, more so the more of them stand close together, and its size is never below zero. Trials about the figures found
 * repeat that error instead of mending it, so they hold the truth too seldom.
 * <p>Here the pieces that stand within {@link #CLOSE} standard uncertainties of the winner count as tied with it (after the moment selection of Andrews
 * and Soares 2010, Econometrica 78, 119; from memory), and every tied piece gets an interval so much wider that the largest of that many independent
 * figures of equal truth is held 95 times in 100 (Saxena and Tong 1969, J. Amer. Statist. Assoc. 64, 296; from memory). One piece alone keeps its own
 * 95 % interval; two tied ones do too, as their errors to either side make up for each other.
 */
final class Bend {
    /** Standard uncertainties of a difference under which two pieces cannot be told apart. */
    private static final double CLOSE = 1.5;

    private final List<Piece> tied;
    private final int pairs;
    private final boolean largest;
    private final boolean size;

    private Bend(List<Measured> figures, boolean largest) {
        List<Piece> all = all(figures, largest ? 1 : -1);
        this.tied = tied(all);
        this.pairs = opposites(tied);
        this.largest = largest;
        this.size = pairs > 0 && 2 * opposites(all) == all.size();
    }

    /** One smooth piece, with the sign that makes the figure the largest of all. */
    private record Piece(Measured figure, double value) {}

    /**
     * The pieces of a figure.
     * @param first the figure by first order
     * @return empty when it is neither the largest nor the smallest of its pieces
     */
    static Optional<Bend> of(Formula formula, Measured first, Function<String, Measured> inputs) {
        List<Measured> figures = new ArrayList<>();
        formula.pieces().forEach(piece -> figures.add(Measured.through(piece, inputs)));
        if (figures.isEmpty()) {
            return Optional.empty();
        }
        double tolerance = 1e-9 * first.standardUncertainty();
        if (figures.stream().allMatch(f -> f.value() <= first.value() + tolerance)) {
            return Optional.of(new Bend(figures, true));
        }
        return figures.stream().allMatch(f -> f.value() >= first.value() - tolerance)
                ? Optional.of(new Bend(figures, false))
                : Optional.empty();
    }

    /** Interval of the figure. */
    Interval interval(double coverage) {
        double probability = wide(coverage, pairs, tied.size() - 2 * pairs);
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Piece piece : tied) {
            double half = piece.figure().halfWidth(probability);
            low = Math.max(low, piece.value() - half);
            high = Math.max(high, piece.value() + half);
        }
        if (size) {
            low = Math.max(low, 0);
        }
        return largest ? new Interval(low, high) : new Interval(-high, -low);
    }

    private static List<Piece> all(List<Measured> figures, double sign) {
        return figures.stream().map(f -> new Piece(f, sign * f.value())).toList();
    }

    private static List<Piece> tied(List<Piece> pieces) {
        Piece winner = pieces.get(0);
        for (Piece piece : pieces) {
            winner = piece.value() > winner.value() ? piece : winner;
        }
        List<Piece> tied = new ArrayList<>();
        for (Piece piece : pieces) {
            if (piece.equals(winner)
                    || winner.value() - piece.value() <= CLOSE * difference(winner.figure(), piece.figure(), -1)) {
                tied.add(piece);
            }
        }
        return tied;
    }

    /** Standard uncertainty of one figure plus so many times the other. */
    private static double difference(Measured one, Measured other, double times) {
        Map<Source, Double> sum = new HashMap<>(one.contributions());
        other.contributions().forEach((source, c) -> sum.merge(source, times * c, Double::sum));
        double variance = 0;
        for (double c : sum.values()) {
            variance += c * c;
        }
        return Math.sqrt(variance);
    }

    /** How many pairs of pieces are each other's negative. */
    private static int opposites(List<Piece> pieces) {
        int pairs = 0;
        for (int i = 0; i < pieces.size(); i++) {
            for (int k = 0; k < i; k++) {
                Piece a = pieces.get(i);
                Piece b = pieces.get(k);
                double u = a.figure().standardUncertainty();
                if (Math.abs(a.value() + b.value()) <= 1e-9 * u && difference(a.figure(), b.figure(), 1) <= 1e-6 * u) {
                    pairs++;
                }
            }
        }
        return pairs;
    }

    /** Two-sided probability for each tied piece so that the largest of all is held with the coverage: independent, of equal truth, a pair being a size. */
    private static double wide(double coverage, int pairs, int singles) {
        double low = coverage;
        double high = 1;
        for (int k = 0; k < 40; k++) {
            double probability = 0.5 * (low + high);
            double below = 0.5 + probability / 2;
            double held = Math.pow(probability, pairs) * Math.pow(below, singles)
                    - (pairs > 0 ? 0 : Math.pow(1 - below, singles));
            if (held < coverage) {
                low = probability;
            } else {
                high = probability;
            }
        }
        return high;
    }
}
