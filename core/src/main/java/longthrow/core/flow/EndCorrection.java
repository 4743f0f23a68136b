package longthrow.core.flow;

/**
 * How much longer than it is a pipe sounds for the air that swings with it beyond an open end, by the pipe's radius; for sound whose wave is long against the radius. A pipe is reckoned with this length added at the end, area as
 * the end's.
 */
public enum EndCorrection {
    /** A pipe that ends in the open: tail pipes, stacks and trumpets that stand free. Levine and Schwinger, Physical Review 73 (1948) 383. */
    FREE(0.6133),
    /** A pipe that ends in a wall, flush: into an air box, a silencer, a flat face. Nomura, Yamamura and Inawashiro, Journal of the Physical Society of Japan 15 (1960) 510; from memory. */
    FLUSH(0.8217),
    /** A piston in a wall, 8 / (3 pi): what handbooks round to 0.85 for the inner end of a resonator's neck (Kinsler et al., 4th ed., chapter 10). */
    PISTON(8 / (3 * Math.PI)),
    /** Nothing swings beyond: closed ends, valves, and what only stands for a pipe that goes on. */
    NONE(0);

    private final double radii;

    EndCorrection(double radii) {
        this.radii = radii;
    }

    /** [m]. */
    public double length(double radius) {
        return radii * radius;
    }
}
