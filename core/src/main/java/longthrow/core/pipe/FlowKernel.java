package longthrow.core.pipe;

/**
 * The sums over all cells of a pipe, in the order in which {@link PipeFlow} asks for them. Every kernel does the same operations on the same numbers in the same order, so that any two give
 * the same digits: no product and sum in one rounding, nothing that is not exactly rounded.
 */
public interface FlowKernel {
    /** For people. */
    String name();

    /** What follows from mass, momentum, energy and burned mass of every cell. */
    void derive(Cells cells);

    /** Slopes in every cell, half a step forward, and what stands on both sides of every face then. */
    void reconstruct(Cells cells, double dt);

    /** The same without slopes and at the beginning of the step: cells as they are. First order, for what the sharper way cannot do. */
    void flatten(Cells cells);

    /** Through every face between two cells; not through the ends. */
    void flow(Cells cells);

    /** A step forward by what went through the faces, the push of the widening wall, friction and heat: written to what is next. */
    void advance(Cells cells, double dt);

    /** How fast news goes at most [m/s]; not a number where a cell holds what no gas can be. */
    double fastest(Cells cells);
}
