package longthrow.core.reduce;

import java.util.Arrays;

/**
 * A curve through a few points, each with its own doubt: through the four nearest by a cubic (Lagrange), fewer where there are fewer. What lies between two points nobody read: there the cubic is unsure
 * by what it differs from the straight line, taken as half of a rectangle.
 */
final class PointFit implements Drawn {
    private static final int NEAREST = 4;

    private final double[] doubts;
    private final double freedom;
    private final double[] values;
    private final double[][] weights;
    private final double[] between; // by place, standard uncertainty for what nobody read

    /**
     * Draws it.
     * @param speeds  rising
     * @param heights as many
     * @param doubts  standard uncertainties, as many
     * @param places  from the lowest speed to the highest
     */
    PointFit(double[] speeds, double[] heights, double[] doubts, double freedom, double[] places) {
        this.doubts = doubts.clone();
        this.freedom = freedom;
        values = new double[places.length];
        weights = new double[places.length][];
        between = new double[places.length];
        for (int g = 0; g < places.length; g++) {
            weights[g] = weights(speeds, places[g], NEAREST);
            double[] straight = weights(speeds, places[g], 2);
            double line = 0;
            for (int i = 0; i < speeds.length; i++) {
                values[g] += weights[g][i] * heights[i];
                line += straight[i] * heights[i];
            }
            between[g] = Math.abs(values[g] - line) / Math.sqrt(3);
        }
    }

    /** Weights of the points for the polynomial through those about a place. */
    private static double[] weights(double[] speeds, double place, int most) {
        int n = Math.min(most, speeds.length);
        int after = Arrays.binarySearch(speeds, place);
        after = after >= 0 ? after : -after - 1;
        int begin = Math.max(0, Math.min(speeds.length - n, after - n / 2));
        double[] w = new double[speeds.length];
        for (int i = begin; i < begin + n; i++) {
            w[i] = 1;
            for (int k = begin; k < begin + n; k++) {
                w[i] *= k == i ? 1 : (place - speeds[k]) / (speeds[i] - speeds[k]);
            }
        }
        return w;
    }

    @Override
    public double value(int place) {
        return values[place];
    }

    @Override
    public double standardUncertainty(int place) {
        return ofDifference(place, 1, place, 0);
    }

    @Override
    public double freedom(int place) {
        return freedom;
    }

    @Override
    public double ofDifference(int place, double factor, int other, double otherFactor) {
        double variance = 0;
        for (int i = 0; i < doubts.length; i++) {
            double w = factor * weights[place][i] - otherFactor * weights[other][i];
            variance += w * w * doubts[i] * doubts[i];
        }
        double here = factor * between[place];
        double there = otherFactor * between[other];
        return Math.sqrt(variance + (place == other ? (here - there) * (here - there) : here * here + there * there));
    }

    @Override
    public double width() {
        return 0;
    }

    @Override
    public double looks() {
        return doubts.length;
    }
}
