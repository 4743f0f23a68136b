package longthrow.core.reduce;

/**
 * What else a logger wrote, at the speeds of a curve. Owns its numbers.
 */
public final class AlongCurve {
    private final String name;
    private final double[] values;
    private final double[] doubts;

    AlongCurve(String name, double[] values, double[] doubts) {
        this.name = name;
        this.values = values;
        this.doubts = doubts;
    }

    /** As the caller named it. */
    public String name() {
        return name;
    }

    /** At a speed of the curve, in the unit it came in. */
    public double value(int index) {
        return values[index];
    }

    /** Standard uncertainty by the scatter of this run alone; what the instrument itself does is not in it. */
    public double standardUncertainty(int index) {
        return doubts[index];
    }
}
