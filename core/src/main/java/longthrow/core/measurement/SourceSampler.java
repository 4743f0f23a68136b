package longthrow.core.measurement;

import longthrow.core.formula.SampleSource;

/** Draws errors of sources in units of their standard uncertainty: rectangular, normal, or t with few degrees of freedom (JCGM 101:2008 6.4). */
final class SourceSampler {
    private static final double SQRT3 = Math.sqrt(3);

    private final SampleSource random;

    SourceSampler(SampleSource random) {
        this.random = random;
    }

    /** Fills with the error of the source divided by its standard uncertainty. */
    void fill(Source source, double[] out) {
        if (source.kind().isRectangular()) {
            random.fillUniform(out, 0, out.length, -SQRT3, SQRT3);
        } else if (Double.isFinite(source.degreesOfFreedom())) {
            random.fillT(out, 0, out.length, source.degreesOfFreedom(), 0, 1);
        } else {
            random.fillNormal(out, 0, out.length);
        }
    }
}
