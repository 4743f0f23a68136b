package longthrow.core.cycle;

import longthrow.core.gas.PublishedValue;
import longthrow.core.pipe.Contraction;

/** A plate with a hole, put between two pipes to hold an engine down: what flows through it over its own area. */
public final class Restrictor {
    /** What the stream of a thin plate may be off from water's in a clean new one: worn edges, and gas that goes fast contracts less. Judgement, no source. */
    private static final double THIN_EITHER = 0.03;

    /** Square hole that is long enough for the stream to fill it again: 0.80 to 0.85, textbooks of hydraulics for short pipes, from memory. */
    private static final double THICK = 0.82;

    private static final double THICK_EITHER = 0.05;

    /** Nozzles of flow meters: 0.94 to 0.99 (ISO 5167-3, from memory). */
    private static final double ROUNDED = 0.97;

    private static final double ROUNDED_EITHER = 0.03;

    private Restrictor() {}

    /** How its hole is made, as the gas meets it. */
    public enum Edge {
        /** Square edges, plate thinner than half its hole. */
        THIN,
        /** Square edges, thicker. */
        THICK,
        /** Rounded or coned where the gas comes in. */
        ROUNDED,
        /** Anything of these. */
        NOT_SAID
    }

    /**
     * Effective area over that of the hole.
     * @param opening the hole's area over that of the pipe before it, 0 to 1
     */
    public static PublishedValue coefficient(Edge edge, double opening) {
        double thin = Contraction.sharp(opening);
        return switch (edge) {
            case THIN ->
                within(
                        thin,
                        thin - THIN_EITHER,
                        thin + THIN_EITHER,
                        "Weisbach's contraction behind a sharp edge, from memory");
            case THICK -> {
                double thick = Math.max(thin, THICK);
                yield within(
                        thick,
                        thick - THICK_EITHER,
                        thick + THICK_EITHER,
                        "short pipes, textbooks of hydraulics, from memory");
            }
            case ROUNDED ->
                within(
                        ROUNDED,
                        ROUNDED - ROUNDED_EITHER,
                        ROUNDED + ROUNDED_EITHER,
                        "nozzles of flow meters, ISO 5167-3, from memory");
            case NOT_SAID ->
                within(
                        0.5 * (thin - THIN_EITHER + 1),
                        thin - THIN_EITHER,
                        1,
                        "from a thin plate's sharp edge to a round one");
        };
    }

    private static PublishedValue within(double value, double low, double high, String source) {
        return new PublishedValue(value, low, Math.min(1, high), source);
    }

    /**
     * Diameter of the plain hole that costs as much as two in a row with room for each jet to break up between them: their losses add up [m].
     * @param one   diameter of a plain hole [m]
     * @param other the same
     */
    public static double inARow(double one, double other) {
        return Math.pow(Math.pow(one, -4) + Math.pow(other, -4), -0.25);
    }
}
