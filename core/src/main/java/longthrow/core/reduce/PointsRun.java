package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import longthrow.core.quantity.Units;

/** A curve through a few points, however they came to be. */
final class PointsRun {
    /** Fewest points of a curve: two make a line, on which nothing is highest. */
    private static final int FEWEST = 3;

    private PointsRun() {}

    /**
     * The curve.
     * @param points  by rising speed: speed [rad/s], what was read, its standard uncertainty, degrees of freedom
     * @param looked  what looks at the curve before it is told; gives what stands against any
     */
    static Reduced reduced(
            List<double[]> points,
            RunCurve.Taken taken,
            CurveMaker.Bench bench,
            Optional<SpeedGrid> wanted,
            List<Remark> remarks,
            BiFunction<Drawn, double[], Optional<String>> looked) {
        List<double[]> apart = new ArrayList<>();
        for (double[] point : points) {
            if (!apart.isEmpty() && !(point[0] > apart.get(apart.size() - 1)[0])) {
                return Reduced.refused(
                        remarks,
                        String.format(
                                Locale.ROOT,
                                "Two points stand at %.0f rpm: give their mean as one, with its ±",
                                Units.RPM.fromSi(point[0])));
            }
            apart.add(point);
        }
        if (apart.size() < FEWEST) {
            return Reduced.refused(
                    remarks,
                    "There are " + apart.size() + " points; at least " + FEWEST + " at different speeds make a curve");
        }
        int n = apart.size();
        double[][] columns = new double[3][n];
        double freedom = Double.POSITIVE_INFINITY;
        for (int i = 0; i < n; i++) {
            for (int c = 0; c < 3; c++) {
                columns[c][i] = apart.get(i)[c];
            }
            freedom = Math.min(freedom, apart.get(i)[3]);
        }
        Optional<SpeedGrid> grid = CurveMaker.grid(wanted, columns[0][0], columns[0][n - 1], remarks);
        if (grid.isEmpty()) {
            return Reduced.refused(remarks, CurveMaker.noSpeeds(columns[0][0], columns[0][n - 1]));
        }
        double[] places = CurveMaker.places(grid.get());
        PointFit fit = new PointFit(columns[0], columns[1], columns[2], freedom, places);
        Optional<String> against = looked.apply(fit, places);
        if (against.isPresent()) {
            return Reduced.refused(remarks, against.get());
        }
        remarks.add(
                Remark.note(
                        "The curve goes through " + n
                                + " points; between them it is drawn, not measured, and its doubt there is what two ways of drawing differ by"));
        return new Reduced(
                Optional.of(new CurveMaker(grid.get(), fit, bench).curve(taken, List.of(), Optional.empty())), remarks);
    }
}
