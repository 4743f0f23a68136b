package longthrow.core.reduce;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The rows of one run: columns of a recording and the stretch of them that is the run. Columns are not copied, since a recording may hold millions of rows: who made
 * them must not change them. A number that is missing is NaN.
 */
public final class RunRows {
    /** What a column is. */
    public enum Column {
        /** Since any moment [s]. */
        TIME("time"),
        /** Of the crankshaft [rad/s]. */
        ENGINE_SPEED("engine speed"),
        /** Of an inertia drum, or of what is braked where that is not the crankshaft [rad/s]. */
        DRUM_SPEED("drum speed"),
        /** At the brake's cell: newtons, or its reading where a calibration turns it into newtons. */
        FORCE("force"),
        /** At the brake's shaft [N m]. */
        TORQUE("torque"),
        /** Over ground [m/s]. */
        ROAD_SPEED("road speed"),
        /** [kg/s]. */
        FUEL_FLOW("fuel flow");

        private final String words;

        Column(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private final int from;
    private final int to;
    private final Map<Column, double[]> columns = new EnumMap<>(Column.class);
    private final Map<String, double[]> beside = new LinkedHashMap<>();

    private RunRows(int from, int to) {
        this.from = from;
        this.to = to;
    }

    /**
     * The rows from one to before another.
     * @throws IllegalArgumentException where there are none
     */
    public static RunRows between(int from, int to) {
        if (from < 0 || to <= from) {
            throw new IllegalArgumentException("rows " + from + " to " + to + ": there must be one at least");
        }
        return new RunRows(from, to);
    }

    /** The same rows with a column. */
    public RunRows with(Column column, double[] values) {
        RunRows more = copy(values);
        more.columns.put(column, values);
        return more;
    }

    /** The same rows with something else to be told by speed: lambda, exhaust temperature. */
    public RunRows beside(String name, double[] values) {
        RunRows more = copy(values);
        more.beside.put(name, values);
        return more;
    }

    private RunRows copy(double[] values) {
        if (values.length < to) {
            throw new IllegalArgumentException("column of " + values.length + " rows; the run ends at row " + to);
        }
        RunRows more = new RunRows(from, to);
        more.columns.putAll(columns);
        more.beside.putAll(beside);
        return more;
    }

    int rows() {
        return to - from;
    }

    boolean has(Column column) {
        return columns.containsKey(column);
    }

    double @Nullable [] column(Column column) {
        return columns.get(column);
    }

    Map<String, double[]> beside() {
        return beside;
    }

    /** Means of a few rows each. */
    Thinned thinned(Column... wanted) {
        double[][] found = new double[wanted.length][];
        for (int c = 0; c < wanted.length; c++) {
            double[] column = columns.get(wanted[c]);
            if (column == null) {
                throw new IllegalStateException("no column " + wanted[c] + " among " + Arrays.toString(wanted));
            }
            found[c] = column;
        }
        return Thinned.of(from, to, found);
    }

    /** The same of a column that is told beside the curve. */
    Thinned thinned(double[] speed, double[] values) {
        return Thinned.of(from, to, speed, values);
    }
}
