package longthrow.core.formula;

import java.util.Arrays;

/**
 * The k-th smallest of many samples, without sorting them all: two passes sort the samples into bins of equal width,
 * and only bins that hold a wanted rank are sorted. Samples whose bulk falls in few bins (one far outlier) cost up to a
 * full sort; the answer is the same.
 */
final class OrderStatistics {
    private static final int BINS = 4096;

    private final double[] sorted;
    /** first[b]: rank of the first sample of bin b. */
    private final int[] first;
    /** place[b]: where bin b begins in {@link #sorted}, or -1 if it was not wanted. */
    private final int[] place;

    /**
     * @param samples finite numbers
     * @param lo      the smallest sample
     * @param hi      the largest sample
     * @param ranges  pairs of ranks: first and last wanted, 0 is the smallest sample
     */
    OrderStatistics(double[] samples, int from, int count, double lo, double hi, int... ranges) {
        double scale = hi > lo ? BINS / (hi - lo) : 0;
        if (!Double.isFinite(scale) || !(scale > 0)) {
            scale = 0;
        }
        first = new int[BINS + 2];
        int[] counts = new int[BINS + 1];
        for (int k = from; k < from + count; k++) {
            counts[(int) ((samples[k] - lo) * scale)]++;
        }
        for (int b = 0; b <= BINS; b++) {
            first[b + 1] = first[b] + counts[b];
        }
        place = new int[BINS + 1];
        int wanted = choose(counts, ranges);
        sorted = new double[wanted];
        int[] next = place.clone();
        for (int k = from; k < from + count; k++) {
            int bin = (int) ((samples[k] - lo) * scale);
            if (next[bin] >= 0) {
                sorted[next[bin]++] = samples[k];
            }
        }
        for (int b = 0; b <= BINS; b++) {
            if (place[b] >= 0) {
                Arrays.sort(sorted, place[b], next[b]);
            }
        }
    }

    /** Marks the bins that hold wanted ranks and lays them out one after the other. */
    private int choose(int[] counts, int[] ranges) {
        int total = 0;
        for (int b = 0; b <= BINS; b++) {
            place[b] = -1;
            for (int r = 0; r < ranges.length && place[b] < 0; r += 2) {
                if (counts[b] > 0 && first[b] <= ranges[r + 1] && ranges[r] < first[b + 1]) {
                    place[b] = total;
                    total += counts[b];
                }
            }
        }
        return total;
    }

    /** The sample of this rank, one of those asked for; 0 is the smallest. */
    double at(int rank) {
        int found = Arrays.binarySearch(first, rank);
        int bin = found >= 0 ? found : -found - 2;
        while (bin < BINS && first[bin + 1] <= rank) { // skip empty bins, which begin at the same rank
            bin++;
        }
        if (place[bin] < 0) {
            throw new IllegalStateException("rank " + rank + " was not asked for");
        }
        return sorted[place[bin] + rank - first[bin]];
    }
}
