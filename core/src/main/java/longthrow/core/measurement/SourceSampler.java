package longthrow.core.measurement;

import java.util.HashMap;
import java.util.Map;
import longthrow.core.formula.SampleSource;

/**
 * Draws errors of sources in units of their standard uncertainty: rectangular, normal, or t with few degrees of freedom (JCGM 101:2008 6.4).
 * Sources of one ensemble are drawn as a joint t: normals over one common chi (JCGM 101:2008 6.4.8 and 6.4.9).
 */
final class SourceSampler {
    private static final Law RECTANGULAR = new Law.Rectangular(-Math.sqrt(3), Math.sqrt(3));
    private static final Law NORMAL = new Law.Normal(0, 1);

    private final SampleSource random;
    private final Map<String, double[]> stretch = new HashMap<>();

    SourceSampler(SampleSource random) {
        this.random = random;
    }

    /** To be called before each block of trials: ensembles are drawn anew. */
    void nextBlock() {
        stretch.clear();
    }

    /** Fills out[0] to out[count - 1] with the error of the source divided by its standard uncertainty; count the same all over a block. */
    void fill(Source source, double[] out, int count) {
        law(source).fill(random, out, count);
        if (isJoint(source)) {
            double[] common =
                    stretch.computeIfAbsent(source.ensemble(), name -> stretches(source.degreesOfFreedom(), count));
            for (int k = 0; k < count; k++) {
                out[k] *= common[k];
            }
        }
    }

    private static Law law(Source source) {
        if (source.kind().isRectangular()) {
            return RECTANGULAR;
        }
        return Double.isFinite(source.degreesOfFreedom()) && !isJoint(source)
                ? new Law.ScaledT(source.degreesOfFreedom(), 0, 1)
                : NORMAL;
    }

    private static boolean isJoint(Source source) {
        return !source.ensemble().isEmpty()
                && !source.kind().isRectangular()
                && Double.isFinite(source.degreesOfFreedom());
    }

    private double[] stretches(double degreesOfFreedom, int count) {
        double[] stretches = new double[count];
        for (int k = 0; k < count; k++) {
            stretches[k] = Math.sqrt(degreesOfFreedom / random.nextChiSquared(degreesOfFreedom));
        }
        return stretches;
    }
}
