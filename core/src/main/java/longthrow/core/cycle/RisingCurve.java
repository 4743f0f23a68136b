package longthrow.core.cycle;

/**
 * A curve through points that has no more hills than they have and no kink: cubic pieces whose slopes at the points are the harmonic means of F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300.
 * Starts with the slope of its first piece; ends level and stays so, since nothing is known beyond.
 */
final class RisingCurve {
    private final double[] x;
    private final double[] y;
    private final double[] slope;

    /**
     * @param x rising, two at least
     * @param y as many
     */
    RisingCurve(double[] x, double[] y) {
        this.x = x.clone();
        this.y = y.clone();
        int n = x.length;
        slope = new double[n];
        for (int i = 1; i < n - 1; i++) {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            double rise = (y[i] - y[i - 1]) / before;
            double next = (y[i + 1] - y[i]) / after;
            if (rise * next > 0) {
                double share = (before + 2 * after) / (3 * (before + after));
                slope[i] = rise * next / (share * next + (1 - share) * rise);
            }
        }
        slope[0] = (y[1] - y[0]) / (x[1] - x[0]);
    }

    double at(double where) {
        int last = x.length - 1;
        if (where <= x[0]) { // what is no number goes on, and comes out as none
            return y[0];
        }
        if (where >= x[last]) {
            return y[last];
        }
        int low = 0;
        int high = last;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (x[middle] <= where) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double h = x[high] - x[low];
        double t = (where - x[low]) / h;
        double s = 1 - t;
        return y[low] + t * t * (3 - 2 * t) * (y[high] - y[low]) + s * t * h * (s * slope[low] - t * slope[high]);
    }
}
