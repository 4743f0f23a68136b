package longthrow.core.pipe;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.quantity.Require;

/** A pipe cut into cells of one length. Areas at the faces between cells are those of the pipe there; that of a cell is its volume over its length. */
public final class PipeShape {
    private final double length;
    private final double[] faceArea;
    private final double[] cellArea;

    private PipeShape(double length, double[] faceArea, double[] cellArea) {
        this.length = length;
        this.faceArea = faceArea;
        this.cellArea = cellArea;
    }

    /**
     * Of any round pipe.
     * @param length   [m], above 0
     * @param cells    3 at least: fewer tell no slope
     * @param diameter inside, by the distance from the left end [m], above 0 everywhere
     * @throws IllegalArgumentException with what is wrong and what is allowed
     */
    public static PipeShape of(double length, int cells, DoubleUnaryOperator diameter) {
        Require.positive("length of the pipe [m]", length);
        if (cells < 3) {
            throw new IllegalArgumentException("a pipe is cut into " + cells + " cells; it needs 3 at least");
        }
        double step = length / cells;
        double[] faceArea = new double[cells + 1];
        double[] cellArea = new double[cells];
        for (int i = 0; i <= cells; i++) {
            faceArea[i] = area(diameter.applyAsDouble(i * step), i * step);
        }
        for (int i = 0; i < cells; i++) {
            double middle = area(diameter.applyAsDouble((i + 0.5) * step), (i + 0.5) * step);
            cellArea[i] = (faceArea[i] + 4 * middle + faceArea[i + 1]) / 6; // Simpson: exact for a cone
        }
        return new PipeShape(length, faceArea, cellArea);
    }

    public static PipeShape straight(double length, int cells, double diameter) {
        return of(length, cells, x -> diameter);
    }

    private static double area(double diameter, double at) {
        if (!(diameter > 0) || Double.isInfinite(diameter)) {
            throw new IllegalArgumentException(
                    "the pipe is " + diameter + " m wide at " + at + " m from its left end; it must be above 0");
        }
        return 0.25 * Math.PI * diameter * diameter;
    }

    public int cells() {
        return cellArea.length;
    }

    /** [m]. */
    public double length() {
        return length;
    }

    /** Of one cell [m]. */
    public double step() {
        return length / cellArea.length;
    }

    /**
     * [m2].
     * @param face from 0 at the left end to {@link #cells} at the right
     */
    public double faceArea(int face) {
        return faceArea[face];
    }

    /** Volume over length [m2]. */
    public double cellArea(int cell) {
        return cellArea[cell];
    }

    /** Of a cell, as round [m]. */
    public double diameter(int cell) {
        return Math.sqrt(4 * cellArea[cell] / Math.PI);
    }

    /** Of its middle from the left end [m]. */
    public double middle(int cell) {
        return (cell + 0.5) * step();
    }
}
