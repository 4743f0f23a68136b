package longthrow.core.measure;

import java.util.List;
import longthrow.core.build.Instrument;
import longthrow.core.measurement.StudentT;
import longthrow.core.term.Term;

/**
 * Readings of one term taken in one go with one instrument, and what they are worth.
 * @param term       what was read
 * @param place      where it stands in the build file
 * @param values     the readings, brought to 20 °C where a temperature was given [SI]
 * @param instrument they were taken with
 * @param pooled     standard deviation of one reading by the table of pooled repeatability [SI], &gt; 0
 */
record ReadingSet(
        Term term, String place, List<Double> values, Instrument instrument, double pooled, double pooledFreedom) {
    /** From this many readings their own scatter is used alone; below it stands pooled with the table (JCGM 100:2008 4.2.4). */
    static final int OWN_SCATTER_FROM = 3;

    /** Two readings that lie within what hand and scale leave so often do not quarrel. */
    static final double QUARREL = 0.99;

    /** Scatter in half steps from which the rounding of one reading says nothing of the next; a little under 1 as the scatter is an estimate. */
    private static final double AT_RANDOM = 0.8;

    ReadingSet {
        values = List.copyOf(values);
    }

    int count() {
        return values.size();
    }

    double mean() {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum / values.size();
    }

    /** Sum of squared distances from the mean. */
    double squares() {
        double mean = mean();
        double sum = 0;
        for (double v : values) {
            sum += (v - mean) * (v - mean);
        }
        return sum;
    }

    /** Whether there are too few readings to go by their own scatter. */
    boolean usesTable() {
        return count() < OWN_SCATTER_FROM;
    }

    /** Standard deviation of one reading that the doubt is built on; two readings that quarrel are believed before the table. */
    double scatter() {
        double own = count() < 2 ? 0 : Math.sqrt(squares() / (count() - 1));
        if (!usesTable()) {
            return own;
        }
        return quarrels() ? Math.max(own, bestScatter()) : bestScatter();
    }

    /** Whether two readings lie farther apart than hand and scale leave them 99 times in 100: then nothing tells which is right. */
    boolean quarrels() {
        return count() == 2 && Math.abs(values.get(0) - values.get(1)) > mostApart();
    }

    /** How far apart hand and scale leave two readings, 99 times in 100 [SI]. */
    double mostApart() {
        return StudentT.factor(QUARREL, pooledFreedom) * Math.sqrt(2) * pooled + instrument.resolution();
    }

    /** Degrees of freedom of {@link #scatter()}. */
    double freedom() {
        return !usesTable() ? count() - 1 : pooledFreedom + count() - 1;
    }

    /** Scatter of the table and of these readings together: what one more reading may be expected to show, and what readings are weighed by. */
    double bestScatter() {
        return Math.sqrt((pooledFreedom * pooled * pooled + squares()) / (pooledFreedom + count() - 1));
    }

    /**
     * Whether the scatter seen already holds the step of the scale, so that the step must not be counted a second time
     * (ISO 14253-2:2011, the larger of resolution and repeatability; from memory).
     */
    boolean showsItsStep() {
        return !usesTable() && scatter() > instrument.resolution() / Math.sqrt(12);
    }

    /**
     * Half-width of the error that the step of the scale leaves in the mean [SI]. A hand that scatters by half a step or more puts the readings on the
     * steps at random, so that their roundings average out like scatter (Widrow and Kollar, Quantization noise, 2008: the second condition is met
     * from half a step of noise; from memory); a steadier hand repeats the same rounding. Three or more readings that all show the same step have told
     * a little less than that.
     */
    double stepHalfWidth() {
        double half = instrument.resolution() / 2;
        double roundings = usesTable() ? count() : count() - 1;
        return bestScatter() >= half * AT_RANDOM ? half / Math.sqrt(roundings) : half;
    }
}
