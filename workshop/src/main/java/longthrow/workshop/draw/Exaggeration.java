package longthrow.workshop.draw;

/** How many times too large differences are drawn so that they are seen: 1, 2, 5, 10, 20 and so on, and always said. */
final class Exaggeration {
    private static final double[] STEPS = {1, 2, 5};

    private Exaggeration() {}

    /**
     * The largest such factor that keeps a length within its room; 1 where there is nothing to show.
     * @param pixels of the largest difference, drawn true
     * @param room   pixels there are for it
     */
    static int factor(double pixels, double room) {
        if (!(pixels > 0)) {
            return 1;
        }
        int best = 1;
        for (int power = 1; power <= 100_000; power *= 10) {
            for (double step : STEPS) {
                if (pixels * power * step <= room) {
                    best = (int) (power * step);
                }
            }
        }
        return best;
    }
}
