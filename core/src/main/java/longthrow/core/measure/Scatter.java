package longthrow.core.measure;

import java.util.List;

/**
 * The scatter within a set, its true size unknown about the table's: what does not change while mistakes are tried.
 * @param squares about the mean, of the readings as they stand [SI]
 * @param least   of such squares, by the step of the instrument [SI]
 * @param table   what the table of pooled repeatability weighs [SI]
 * @param weight  of the logarithm
 */
record Scatter(List<Double> values, double mean, double squares, double least, double table, double weight) {
    /** None: nothing scatters. */
    private static final Scatter NONE = new Scatter(List.of(), 0, 0, 0, 1, 0);

    static Scatter of(Readings.Entry entry) {
        ReadingSet set = entry.set();
        if (set == null || set.count() < 2) {
            return NONE;
        }
        double step = set.instrument().resolution();
        return new Scatter(
                set.values(),
                set.mean(),
                set.squares(),
                (set.count() - 1) * step * step / 12,
                set.pooledFreedom() * set.pooled() * set.pooled(),
                -0.5 * (set.pooledFreedom() + set.count() - 1));
    }

    /** Log-likelihood of the readings as they stand. */
    double asItStands() {
        return weighed(squares);
    }

    /** Log-likelihood when one is moved; -1 for all, which changes nothing between them. */
    double moved(int reading, double move) {
        int n = values.size();
        if (reading < 0 || n == 0) {
            return asItStands();
        }
        double distance = values.get(reading) - mean;
        return weighed(squares + 2 * move * distance + move * move * (n - 1) / n);
    }

    /** Not log1p, ten times slower: to a sum of such terms the digits it keeps for small arguments are nothing. */
    private double weighed(double squaresNow) {
        return weight == 0 ? 0 : weight * Math.log(1 + Math.max(squaresNow, least) / table);
    }
}
