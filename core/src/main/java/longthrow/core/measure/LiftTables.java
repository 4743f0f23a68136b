package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.LiftTable;
import longthrow.core.quantity.Quantity;

/** Lift tables are kept as they were read; here only what is plainly wrong with one is said. */
public final class LiftTables {
    /** A curve through fewer points cannot be smoothed later. */
    static final int LEAST_ROWS = 12;
    /** Steps wider than this lose the shape of the flank [rad]; readings every 2 to 5 degrees are usual, common practice, no source. */
    static final double WIDEST_STEP = Math.toRadians(10.5);
    /** A second difference this many times the usual one marks a misread row. */
    private static final double OUT_OF_LINE = 6;
    /** Scatter of a lift read by dial [m], the floor of that comparison. */
    private static final double DIAL_SCATTER = 0.01e-3;

    private LiftTables() {}

    /** Whether there are rows enough, each after the last, to put a curve through. */
    static boolean isWhole(LiftTable table) {
        List<LiftTable.Row> rows = table.rows();
        for (int k = 1; k < rows.size(); k++) {
            if (!(rows.get(k).angle().si() > rows.get(k - 1).angle().si())) {
                return false;
            }
        }
        return points(table) >= LEAST_ROWS;
    }

    /** Rows, those of the other flank counted too where it is the mirror of this one. */
    private static int points(LiftTable table) {
        return isFromPeak(table) ? 2 * table.rows().size() - 1 : table.rows().size();
    }

    /** Whether angles count from the peak: the first row stands at 0 and is the highest. */
    static boolean isFromPeak(LiftTable table) {
        List<LiftTable.Row> rows = table.rows();
        return !rows.isEmpty()
                && rows.get(0).angle().si() == 0
                && rows.stream()
                        .allMatch(r -> r.lift().si() <= rows.get(0).lift().si());
    }

    /** What is plainly wrong with each; places as {@code lift_tables[1]}. */
    public static List<Finding> findings(Build build) {
        List<Finding> findings = new ArrayList<>();
        for (int k = 0; k < build.lifts().size(); k++) {
            check(build.lifts().get(k), "lift_tables[" + (k + 1) + "]", findings);
        }
        return findings;
    }

    private static void check(LiftTable table, String place, List<Finding> findings) {
        List<LiftTable.Row> rows = table.rows();
        if (points(table) < LEAST_ROWS) {
            findings.add(warning(
                    place,
                    table.valve() + " lift table has " + rows.size() + " rows",
                    "read at least " + LEAST_ROWS + ", every 5 degrees; 7 where they count from the peak"));
            return;
        }
        for (int k = 1; k < rows.size(); k++) {
            double step = rows.get(k).angle().si() - rows.get(k - 1).angle().si();
            if (!(step > 0)) {
                findings.add(warning(
                        place + " row " + (k + 1),
                        "the angle " + written(rows.get(k).angle()) + " does not follow "
                                + written(rows.get(k - 1).angle()),
                        "write the rows in the order the crank turned, each angle once"));
                return;
            }
            if (step > WIDEST_STEP) {
                findings.add(warning(
                        place + " row " + (k + 1),
                        "a gap from " + written(rows.get(k - 1).angle()) + " to "
                                + written(rows.get(k).angle()),
                        "read between them, every 5 degrees"));
            }
        }
        outOfLine(rows, place, findings);
    }

    /** A row that stands out of the curve through its four neighbours (cubic, uneven steps allowed). */
    private static void outOfLine(List<LiftTable.Row> rows, String place, List<Finding> findings) {
        int n = rows.size();
        double[] off = new double[n];
        for (int k = 2; k < n - 2; k++) {
            off[k] = rows.get(k).lift().si() - between(rows, k);
        }
        double[] sizes = java.util.Arrays.stream(off).map(Math::abs).sorted().toArray();
        double usual = Math.max(sizes[n / 2], DIAL_SCATTER);
        for (int k = 2; k < n - 2; k++) {
            boolean peak = Math.abs(off[k]) >= Math.max(Math.abs(off[k - 1]), Math.abs(off[k + 1]));
            if (peak && Math.abs(off[k]) > OUT_OF_LINE * usual) {
                findings.add(warning(
                        place + " row " + (k + 1),
                        "the lift " + written(rows.get(k).lift()) + " at "
                                + written(rows.get(k).angle()) + " stands out of the curve of its neighbours",
                        "read this row again"));
            }
        }
    }

    /** Lagrange's cubic through the two rows before and the two after. */
    private static double between(List<LiftTable.Row> rows, int k) {
        int[] at = {k - 2, k - 1, k + 1, k + 2};
        double x = rows.get(k).angle().si();
        double sum = 0;
        for (int i : at) {
            double term = rows.get(i).lift().si();
            for (int j : at) {
                if (j != i) {
                    double xi = rows.get(i).angle().si();
                    double xj = rows.get(j).angle().si();
                    term *= (x - xj) / (xi - xj);
                }
            }
            sum += term;
        }
        return sum;
    }

    private static String written(Quantity quantity) {
        return quantity.written();
    }

    private static Finding warning(String place, String message, String mend) {
        return new Finding(Finding.Kind.WARNING, place, message, mend);
    }
}
