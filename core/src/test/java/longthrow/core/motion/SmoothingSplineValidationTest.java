package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import longthrow.core.ReferenceRows;
import longthrow.core.ReferenceRows.GridCell;
import org.junit.jupiter.api.Test;

/** Smoothing splines against the reference rows DYN-20 and DYN-21 (Reinsch 1967; Wahba 1990) and the table of acceptance case S3. */
class SmoothingSplineValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("10_dyno_statistics");

    private static double[] column(List<GridCell> cells, String name) {
        return cells.stream()
                .filter(c -> c.column().equals(name))
                .mapToDouble(c -> c.row().value())
                .toArray();
    }

    private static void check(String grid, String caseId, double smoothing, int middle) {
        List<GridCell> cells = ReferenceRows.grid(grid, ROWS.row(caseId + ".2"), 1e-6, false);
        double[] x = cells.stream()
                .filter(c -> c.column().equals("y"))
                .mapToDouble(GridCell::argument)
                .toArray();
        double[] weights = new double[x.length];
        Arrays.fill(weights, 1);
        SmoothingSpline spline = SmoothingSpline.of(Knots.natural(x), column(cells, "y"), weights, smoothing, 1);
        ROWS.row(caseId + ".1").check(spline.residualSquares());
        ROWS.row(caseId + ".2").check(spline.at(x[0]));
        ROWS.row(caseId + ".3").check(spline.at(x[middle]));
        ROWS.row(caseId + ".4").check(spline.at(x[x.length - 1]));
        ROWS.row(caseId + ".5").check(spline.slope(x[middle]));
        double[] fitted = column(cells, "f");
        for (int i = 0; i < x.length; i++) {
            assertThat(spline.at(x[i])).as("%s point %d", grid, i).isCloseTo(fitted[i], within(1e-6));
        }
    }

    @Test
    void smoothsAsTheTableSays() {
        check("10_smoothing_spline_lam0.01", "DYN-20", 0.01, 12);
        check("10_smoothing_spline_lam0.2", "DYN-21", 0.2, 15);
    }

    /** Table of S3: lift at 0 to 120 degrees from the peak, mirrored, 0 from 140 on; once in two turns. */
    static SmoothingSpline pellowdene(double[] deviations) {
        double[] lift = new double[36];
        double[] angle = new double[36];
        double[] half = {8.20, 7.71, 6.35, 4.46, 2.51, 0.96, 0.15};
        for (int k = 0; k < 36; k++) {
            angle[k] = Math.toRadians(-360 + 20 * k);
            int away = Math.abs(-18 + k);
            lift[k] = away < half.length ? half[away] : 0;
        }
        return SmoothingSpline.interpolating(Knots.periodic(Math.toRadians(720), angle), lift, deviations);
    }

    /** S3: "-8.32 mm/rad2 at the nose" by the interpolating periodic cubic spline; half the last digit. */
    @Test
    void noseOfTheAcceptanceCaseDecelerates() {
        double[] deviations = new double[36];
        Arrays.fill(deviations, 0.01);
        SmoothingSpline spline = pellowdene(deviations);
        assertThat(spline.bend(0)).isCloseTo(-8.32, within(0.005));
        assertThat(spline.at(Math.toRadians(60))).isCloseTo(4.46, within(1e-12));
        // S3: 0.01 mm on each reading moves the nose load of about 336 N by about 20 N, either at the same coverage
        assertThat(spline.bendScatter(0)).isCloseTo(8.32 * 20 / 336, within(0.0125));
    }
}
