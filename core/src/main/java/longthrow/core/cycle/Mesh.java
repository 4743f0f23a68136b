package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * How finely an engine is cut up.
 * @param cell   longest cell of a pipe with burned gas in it [m]; a pipe with fresh charge, in which news travels slower, has cells shorter by {@link #FRESH}
 * @param degree longest step, in crank angle [rad]
 */
public record Mesh(double cell, double degree) {
    /** Cells of the intake over those of the exhaust: about as the sound speeds of 300 and 900 K, so that news crosses both in one time. */
    static final double FRESH = 0.6;

    public Mesh {
        Require.positive("length of a cell [m]", cell);
        Require.positive("longest step [rad]", degree);
    }

    /** Half of both. */
    public Mesh halved() {
        return new Mesh(cell / 2, degree / 2);
    }
}
