package longthrow.core.pipe;

/** How much narrower than its sharp-edged opening a stream becomes behind it. */
public final class Contraction {
    /** Weisbach's coefficients for a plate with an opening in a pipe, by opening's area over the pipe's from 0 in tenths (19th century; as textbooks of hydraulics print them, from memory); none: Kirchhoff's pi / (pi + 2). */
    private static final double[] WEISBACH = {
        Math.PI / (Math.PI + 2), 0.624, 0.632, 0.643, 0.659, 0.681, 0.712, 0.755, 0.813, 0.892, 1.0
    };

    private Contraction() {}

    /**
     * Area of the stream over that of a sharp-edged opening: a restrictor plate, or a sudden step down. Found with water; gas near the speed of sound contracts less, which is not reckoned with.
     * @param opening its area over that of the pipe before it, 0 to 1
     */
    public static double sharp(double opening) {
        if (!(opening >= 0 && opening <= 1)) {
            throw new IllegalArgumentException(
                    "an opening is " + opening + " of the pipe before it; it must be 0 to 1");
        }
        return Tabled.at(opening * 10, WEISBACH);
    }

    /** A venturi, a rounded throttle plate's shaft aside, a step with a radius: the stream fills it. Common practice, no source. */
    public static double rounded() {
        return 1;
    }
}
