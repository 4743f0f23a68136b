package longthrow.core.pipe;

import longthrow.core.quantity.Require;

/**
 * What an open end loses where gas comes in; where it goes out, the jet's speed is lost outside and the end stands at the pressure outside (an effective area as wide as the pipe).
 * @param loss of pressure at rest over the dynamic pressure in the pipe, 0 or above
 */
public record Mouth(double loss) {
    /** Idelchik, Handbook of Hydraulic Resistance, diagram 3-1, far out from any wall, by thickness of the pipe's wall over its inner diameter. */
    private static final double[] WALLS = {0, 0.004, 0.008, 0.012, 0.016, 0.02, 0.024, 0.03, 0.04, 0.05};

    private static final double[] PLAIN = {1, 0.94, 0.88, 0.83, 0.77, 0.72, 0.68, 0.61, 0.54, 0.5};

    /** The same book, rounded without a wall's end, by radius over inner diameter: the table for a mouth in a wall. */
    private static final double[] RADII = {0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2};

    private static final double[] ROUNDED = {0.5, 0.44, 0.37, 0.31, 0.26, 0.22, 0.2, 0.15, 0.09, 0.06, 0.03};

    public Mouth {
        Require.notNegative("loss of a mouth", loss);
    }

    /**
     * Cut off square, standing free. Other handbooks say 0.78 whatever the wall.
     * @param wallThickness [m], 0 or above
     * @param diameter      inside [m], above 0
     */
    public static Mouth plain(double wallThickness, double diameter) {
        Require.notNegative("thickness of a pipe's wall [m]", wallThickness);
        return new Mouth(Tabled.at(wallThickness / Require.positive("diameter [m]", diameter), WALLS, PLAIN));
    }

    /** Cut off square in a wall, flush with it: 0.5 by the same table. */
    public static Mouth flush() {
        return new Mouth(ROUNDED[0]);
    }

    /**
     * A bell, or a rounded edge in a wall; from a fifth of the diameter on it loses the least, 0.03.
     * @param radius   of the edge [m], 0 or above
     * @param diameter of the pipe inside [m], above 0
     */
    public static Mouth rounded(double radius, double diameter) {
        Require.notNegative("radius of a mouth's edge [m]", radius);
        return new Mouth(Tabled.at(radius / Require.positive("diameter [m]", diameter), RADII, ROUNDED));
    }

    /** Without any loss. */
    public static Mouth ideal() {
        return new Mouth(0);
    }

    /** Effective area over the pipe's where gas comes in: with the pressure in the pipe's face that of the throat, 1 / root (1 + loss) loses just that in slow flow. */
    public double shareIn() {
        return 1 / Math.sqrt(1 + loss);
    }
}
