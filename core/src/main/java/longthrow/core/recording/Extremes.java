package longthrow.core.recording;

import java.util.Arrays;

/**
 * A column of a recording as a picture of so many columns of pixels can show it: of each its least and greatest figure, so that however many rows fall into one, no extreme is lost.
 */
public final class Extremes {
    private final double[] least; // NaN where no row with a figure falls into the pixel
    private final double[] greatest;
    private final boolean[] falls; // whether the greatest came before the least

    private Extremes(int pixels) {
        least = new double[pixels];
        greatest = new double[pixels];
        falls = new boolean[pixels];
        Arrays.fill(least, Double.NaN);
        Arrays.fill(greatest, Double.NaN);
    }

    /**
     * Thins figures.
     * @param time   where each row stands
     * @param values one a row; NaN where a row says nothing
     * @param from   left edge of the picture [as time]
     * @param to     right edge, behind the left; a row at it belongs to the last pixel
     * @param pixels columns of the picture, 1 or more
     * @throws IllegalArgumentException for an edge or a number of pixels that is none
     */
    public static Extremes of(RunningTime time, double[] values, double from, double to, int pixels) {
        if (!(to > from) || pixels < 1 || values.length != time.rows()) {
            throw new IllegalArgumentException("a picture of " + values.length + " figures from " + from + " to " + to
                    + " in " + pixels + " pixels beside " + time.rows() + " rows");
        }
        Extremes extremes = new Extremes(pixels);
        double each = pixels / (to - from);
        for (int row = time.firstFrom(from); row < values.length && time.at(row) <= to; row++) {
            extremes.take(Math.min(pixels - 1, (int) ((time.at(row) - from) * each)), values[row]);
        }
        return extremes;
    }

    private void take(int pixel, double value) {
        if (Double.isNaN(value)) {
            return;
        }
        if (!(value >= least[pixel])) { // the first as well
            falls[pixel] = !Double.isNaN(least[pixel]);
            least[pixel] = value;
        }
        if (!(value <= greatest[pixel])) {
            falls[pixel] = false;
            greatest[pixel] = value;
        }
    }

    /** How many columns of pixels there are. */
    public int pixels() {
        return least.length;
    }

    /** Whether no row with a figure falls into it. */
    public boolean isEmpty(int pixel) {
        return Double.isNaN(least[pixel]);
    }

    /** Least figure in it; NaN where there is none. */
    public double least(int pixel) {
        return least[pixel];
    }

    /** Greatest figure in it; NaN where there is none. */
    public double greatest(int pixel) {
        return greatest[pixel];
    }

    /** Whether its greatest figure came before its least. */
    public boolean falls(int pixel) {
        return falls[pixel];
    }
}
