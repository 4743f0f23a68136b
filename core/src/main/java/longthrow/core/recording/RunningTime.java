package longthrow.core.recording;

import java.util.Arrays;
import java.util.Optional;

/**
 * Where each row of a recording stands along one axis that never runs back, so that all of it can be seen beside each other: seconds since the first row, or rows where there is no time.
 *
 * <p>Where time starts anew, as several runs written into one log do, it goes on from where it was. A row whose time runs back, stands or is not known stands where the row before it does. Nothing is reckoned with
 * it; it only says where to look.
 */
public final class RunningTime {
    private final double[] at; // never falling
    private final boolean counted;
    private final int restarts;

    private RunningTime(double[] at, boolean counted, int restarts) {
        this.at = at;
        this.counted = counted;
        this.restarts = restarts;
    }

    /**
     * Of a recording.
     * @param faults of it, among them where time starts anew
     */
    public static RunningTime of(Recording recording, Iterable<RowFault> faults) {
        Optional<double[]> time = recording.values(Channel.TIME);
        double[] at = new double[recording.rows()];
        if (time.isEmpty() || Arrays.stream(time.get()).allMatch(Double::isNaN)) {
            Arrays.setAll(at, row -> row);
            return new RunningTime(at, true, 0);
        }
        boolean[] anew = new boolean[recording.rows()];
        for (RowFault fault : faults) {
            anew[fault.from()] |= fault.kind() == FaultKind.TIME_RESTART;
        }
        return running(time.get(), anew, at);
    }

    private static RunningTime running(double[] time, boolean[] anew, double[] at) {
        double moved = 0; // what is added to a row's time
        double latest = Double.NaN; // of the rows so far, with what was added
        double step = 0;
        int restarts = 0;
        for (int row = 0; row < at.length; row++) {
            double t = time[row];
            if (Double.isNaN(latest) && !Double.isNaN(t)) {
                moved = -t;
                latest = 0;
            } else if (anew[row] && !Double.isNaN(t)) {
                moved = latest + step - t;
                latest = latest + step;
                restarts++;
            } else if (t + moved > latest) {
                step = t + moved - latest;
                latest = t + moved;
            }
            at[row] = Double.isNaN(latest) ? 0 : latest;
        }
        return new RunningTime(at, false, restarts);
    }

    /** Whether rows are counted, as there is no time. */
    public boolean isCounted() {
        return counted;
    }

    /** How often time starts anew. */
    public int restarts() {
        return restarts;
    }

    /** How many rows there are. */
    public int rows() {
        return at.length;
    }

    /** Where a row stands [s, or rows]. */
    public double at(int row) {
        return at[row];
    }

    /** Where the last row stands; 0 without rows. */
    public double end() {
        return at.length == 0 ? 0 : at[at.length - 1];
    }

    /** The first row that does not stand before a place; as many as there are rows where all do. */
    public int firstFrom(double place) {
        int low = 0;
        int high = at.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (at[middle] < place) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
