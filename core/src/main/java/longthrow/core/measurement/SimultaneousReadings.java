package longthrow.core.measurement;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Several quantities read together, set by set, so that what disturbs one disturbs the others (JCGM 100:2008 5.2.3 and H.2): the means with
 * the doubt and the correlations seen in the readings.
 */
public final class SimultaneousReadings {
    private static final int FEWEST_SETS = 2;

    private SimultaneousReadings() {}

    /**
     * The mean of each quantity. Each set of readings is a source whose part in a mean is the deviation seen in it, so that variances and
     * covariances are those of JCGM 100:2008 eqs. (5) and (17); the sources are one ensemble of n - 1 degrees of freedom.
     * @param place    unique, names the sources
     * @param label    for people: whose doubt this is
     * @param readings for each quantity its readings, the sets in the same order
     * @throws IllegalArgumentException with fewer than two sets, or different numbers of readings
     */
    public static Map<String, Measured> means(String place, String label, Map<String, double[]> readings) {
        Map<String, Measured> means = new LinkedHashMap<>();
        int sets = readings.values().stream().mapToInt(r -> r.length).max().orElse(0);
        readings.forEach((name, values) -> {
            if (values.length != sets || sets < FEWEST_SETS) {
                throw new IllegalArgumentException(place + ": " + name + " has " + values.length
                        + " readings and the longest row has " + sets + "; give the same number for each, at least "
                        + FEWEST_SETS);
            }
            means.put(name, mean(place, label, values));
        });
        return means;
    }

    private static Measured mean(String place, String label, double[] values) {
        int n = values.length;
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double mean = sum / n;
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (int k = 0; k < n; k++) {
            contributions.put(set(place, label, k, n - 1), (values[k] - mean) / Math.sqrt(n * (n - 1.0)));
        }
        return Measured.withContributions(mean, contributions);
    }

    private static Source set(String place, String label, int k, double degreesOfFreedom) {
        return new Source(
                place + " set " + (k + 1), Source.Kind.SCATTER, label, 1, degreesOfFreedom, 1, place + " sets");
    }
}
