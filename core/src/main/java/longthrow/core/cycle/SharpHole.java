package longthrow.core.cycle;

import longthrow.core.gas.PublishedValue;

/** What flows through a hole that nobody rounded, over its own area: effective areas are what the sums take. */
public final class SharpHole {
    private static final double THIN =
            Restrictor.coefficient(Restrictor.Edge.THIN, 0).value();

    private static final double THICK =
            Restrictor.coefficient(Restrictor.Edge.THICK, 0).value();

    /** From a thin plate's hole far from any wall, 0.61, to the square end of a short pipe, 0.82, as {@link Restrictor} has them; which of both a hole is, nobody was asked. */
    public static final PublishedValue COEFFICIENT = new PublishedValue(
            0.5 * (THIN + THICK),
            THIN,
            THICK,
            "a thin plate's sharp edge to the square end of a short pipe, textbooks of hydraulics, from memory");

    private static final double HELD_OPEN = 0.40;

    /** Of a hole behind a reed, ball or flap that the gas has to hold open: as low as 0.4, judgement, no source. */
    public static final PublishedValue VALVED = new PublishedValue(
            0.5 * (HELD_OPEN + THICK),
            HELD_OPEN,
            THICK,
            "a hole with square edges, as little as " + HELD_OPEN
                    + " where gas holds a flap open; judgement, no source");

    private SharpHole() {}

    /** Diameter of the plain hole that passes as much [m]. */
    public static double plain(double diameter, double coefficient) {
        return diameter * Math.sqrt(coefficient);
    }
}
