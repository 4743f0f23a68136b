package longthrow.core.reduce;

import java.util.Arrays;

/**
 * Rows of a run brought down to so many points that a curve can be weighed through them: means of equal numbers of neighbouring rows. Means keep what the rows tell of
 * anything slower than a point, and make an engine's single strokes and a pickup's steps small; a run of 6 s has points of 50 ms.
 */
final class Thinned {
    /** Most points. LocalFitTest has the cover with it: with 200 points noise lingers over more of them than it allows for. */
    static final int MOST = 120;
    /** Fewer rows than this tell no curve: a parabola has 3 figures, and its doubt wants a few more. */
    static final int FEWEST = 12;

    private final double[][] columns;
    private final int rowsLeftOut;

    private Thinned(double[][] columns, int rowsLeftOut) {
        this.columns = columns;
        this.rowsLeftOut = rowsLeftOut;
    }

    /**
     * Means of the rows from one to before another.
     * @param columns each as long as there are rows; a row that lacks a number (NaN) in one of them is left out
     */
    static Thinned of(int from, int to, double[]... columns) {
        return inParts(from, to, Math.min(MOST, to - from), columns);
    }

    /** The same in as many parts as are asked for, no more than there are rows. */
    static Thinned inParts(int from, int to, int points, double[]... columns) {
        int rows = to - from;
        double[][] means = new double[columns.length][points];
        int kept = 0;
        int leftOut = 0;
        for (int p = 0; p < points; p++) {
            int low = from + (int) ((long) rows * p / points);
            int high = from + (int) ((long) rows * (p + 1) / points);
            boolean whole = true;
            for (int c = 0; c < columns.length; c++) {
                means[c][kept] = sum(columns[c], low, high) / (high - low);
                whole &= Double.isFinite(means[c][kept]);
            }
            int used = whole ? high - low : meansOfWhole(low, high, columns, means, kept);
            leftOut += high - low - used;
            kept += used > 0 ? 1 : 0;
        }
        for (int c = 0; c < columns.length; c++) {
            means[c] = Arrays.copyOf(means[c], kept);
        }
        return new Thinned(means, leftOut);
    }

    /** Four sums at once: an addition need not wait for the one before it (3.6 million rows in a third of the time). */
    private static double sum(double[] column, int low, int high) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = low;
        for (; i + 3 < high; i += 4) {
            a += column[i];
            b += column[i + 1];
            c += column[i + 2];
            d += column[i + 3];
        }
        for (; i < high; i++) {
            a += column[i];
        }
        return a + b + (c + d);
    }

    private static int meansOfWhole(int low, int high, double[][] columns, double[][] means, int point) {
        int used = 0;
        double[] sums = new double[columns.length];
        for (int i = low; i < high; i++) {
            boolean whole = true;
            for (double[] column : columns) {
                whole &= Double.isFinite(column[i]);
            }
            if (whole) {
                used++;
                for (int c = 0; c < columns.length; c++) {
                    sums[c] += columns[c][i];
                }
            }
        }
        for (int c = 0; c < columns.length; c++) {
            means[c][point] = sums[c] / used;
        }
        return used;
    }

    int points() {
        return columns[0].length;
    }

    double[] column(int index) {
        return columns[index];
    }

    int rowsLeftOut() {
        return rowsLeftOut;
    }
}
