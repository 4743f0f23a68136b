package longthrow.core.fit;

/** One volume of all parts of a kind [m3]: value, half-width of its tolerance, standard uncertainty. A value that is not said is NaN. */
public final class Volumes {
    final double[] value;
    final double[] half;
    final double[] uncertainty;

    /** Columns of one length; a half-width that is not said is 0. */
    public Volumes(double[] value, double[] half, double[] uncertainty) {
        if (value.length != half.length || value.length != uncertainty.length) {
            throw new IllegalArgumentException("a column has as many tolerances as values");
        }
        this.value = value.clone();
        this.half = half.clone();
        this.uncertainty = uncertainty.clone();
    }

    /** Figures taken as exactly what they say. */
    public static Volumes exact(double... value) {
        return new Volumes(value, new double[value.length], new double[value.length]);
    }
}
