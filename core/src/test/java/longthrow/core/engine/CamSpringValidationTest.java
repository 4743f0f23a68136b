package longthrow.core.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.ReferenceRows.GridCell;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.motion.FlatFollower;
import longthrow.core.motion.RiseFunction;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Cam motion, flat follower, springs, float and contact against the reference rows; each row names its source and carries its inputs. */
class CamSpringValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("13_cam_spring");
    private static final Map<String, RiseFunction> FUNCTIONS = Map.of(
            "simple harmonic", RiseFunction.SIMPLE_HARMONIC,
            "cycloidal", RiseFunction.CYCLOIDAL,
            "3-4-5 polynomial", RiseFunction.POLYNOMIAL_345);
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void camAndSpringAreWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(92);
        assertThat(COMPUTED.leftOut(Set.of())).isEmpty();
        assertThat(motionGrid()).hasSize(63 * 4);
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        rise(to, "CAM-01", RiseFunction.SIMPLE_HARMONIC);
        rise(to, "CAM-02", RiseFunction.CYCLOIDAL);
        rise(to, "CAM-03", RiseFunction.POLYNOMIAL_345);
        peaks(to, "CAM-04", 1, RiseFunction.MODIFIED_TRAPEZOID);
        peaks(to, "CAM-04", 4, RiseFunction.MODIFIED_SINE);
        follower(to, "CAM-05", RiseFunction.CYCLOIDAL, 5.8e-3, 60, 1800);
        follower(to, "CAM-06", RiseFunction.POLYNOMIAL_345, 6.2e-3, 58, 2500);
        flat(to, "CAM-07", RiseFunction.POLYNOMIAL_345, 0.3);
        flat(to, "CAM-08", RiseFunction.CYCLOIDAL, 0.6);
        spring(to, "CAM-09", coil(2.5, 18, 5.5, 7.5), 79_300e6, 160);
        spring(to, "CAM-10", coil(2.8, 20, 4.75, 6.75), 79_300e6, 240);
        spring(to, "CAM-11", coil(3.2, 22.5, 5, 7), 77_200e6, 300);
        Expression load = ValveFloat.springLoad(of(80), of(14e3), of(5.5e-3));
        double cam = at(ValveFloat.limitingSpeed(load, of(0.075), of(16e-3)));
        to.putFrom("CAM-12", 1, Units.RPM.fromSi(cam), Units.RPM.fromSi(2 * cam));
        Expression modulus = LineContact.effectiveModulus(of(110e9), 0.26, of(205e9), 0.29);
        to.put("CAM-13.1", at(LineContact.largestPressure(of(900), of(6e-3), of(10e-3), modulus)) / 1e6);
        return to;
    }

    private static Expression of(double value) {
        return Expression.constant(value);
    }

    private static double at(Expression expression) {
        return Formula.of("reference", expression).at();
    }

    /** Largest size over the rise; the grid is so fine that what it misses is below 1e-8 of the peak. */
    private static double largest(RiseFunction function, int order) {
        double largest = 0;
        for (int k = 0; k <= 40_000; k++) {
            largest = Math.max(largest, Math.abs(function.at(k / 40_000.0, order)));
        }
        return largest;
    }

    private static void peaks(ComputedRows to, String caseId, int first, RiseFunction function) {
        to.putFrom(caseId, first, largest(function, 1), largest(function, 2), largest(function, 3));
    }

    private static void rise(ComputedRows to, String caseId, RiseFunction function) {
        peaks(to, caseId, 1, function);
        int row = 4;
        for (double u : new double[] {0.1, 0.25, 0.4, 0.5, 0.75}) {
            to.putFrom(caseId, row, function.at(u, 0), function.at(u, 1), function.at(u, 2));
            row += 3;
        }
    }

    private static void follower(
            ComputedRows to, String caseId, RiseFunction function, double lift, double degrees, double rpm) {
        double rate = Units.RPM.toSi(rpm) / Math.toRadians(degrees);
        to.putFrom(caseId, 1, lift * rate * largest(function, 1), lift * rate * rate * largest(function, 2));
    }

    private static void flat(ComputedRows to, String caseId, RiseFunction function, double u) {
        double beta = Math.toRadians(60);
        double slope = 5.8e-3 * function.at(u, 1) / beta;
        double bend = 5.8e-3 * function.at(u, 2) / (beta * beta);
        double radius = FlatFollower.curvatureRadius(14e-3, 5.8e-3 * function.at(u, 0), bend);
        to.putFrom(caseId, 1, 1e3 * FlatFollower.contactOffset(slope), 1e3 * radius);
    }

    private static CoilSpring coil(double wire, double mean, double active, double total) {
        return new CoilSpring(of(1e-3 * wire), of(1e-3 * mean), of(active), of(total));
    }

    private static void spring(ComputedRows to, String caseId, CoilSpring spring, double shearModulus, double load) {
        Expression g = of(shearModulus);
        Expression steel = of(7850);
        to.putFrom(
                caseId,
                1,
                at(spring.rate(g)) / 1e3,
                at(spring.index()),
                at(spring.wahlFactor()),
                at(spring.shearStress(of(load))) / 1e6,
                at(spring.activeMass(steel)) * 1e3,
                at(spring.surgeFrequency(g, steel)),
                at(spring.solidLength()) * 1e3);
    }

    /** A cell of the grid and its function. */
    record MotionCell(GridCell cell, RiseFunction function) {
        @Override
        public String toString() {
            return function + " " + cell;
        }
    }

    static List<MotionCell> motionGrid() {
        return Stream.of("simple harmonic,CAM-01.4", "cycloidal,CAM-02.4", "3-4-5 polynomial,CAM-03.4")
                .map(s -> s.split(","))
                .flatMap(s -> ReferenceRows.gridOf("13_motion_functions", s[0], ROWS.row(s[1]), 1e-10).stream()
                        .map(cell -> new MotionCell(cell, Objects.requireNonNull(FUNCTIONS.get(s[0])))))
                .toList();
    }

    /** Tolerance of the values of CAM-01 to CAM-03, of the largest cell of a column. */
    @ParameterizedTest
    @MethodSource("motionGrid")
    void motionIsWhatTheGridSays(MotionCell at) {
        int order = List.of("s", "v", "a", "j").indexOf(at.cell.column());
        at.cell.row().check(at.function.at(at.cell.argument(), order));
    }

    /** Velocity, acceleration and jerk are each the slope of what stands before: central differences, whose error is below 1e-7 here. */
    @ParameterizedTest
    @MethodSource("functions")
    void everyOrderIsTheSlopeOfTheOneBefore(RiseFunction function) {
        double h = 1e-6;
        for (double u = 0.013; u < 1; u += 0.0487) {
            for (int order = 1; order <= 3; order++) {
                double difference = (function.at(u + h, order - 1) - function.at(u - h, order - 1)) / (2 * h);
                assertThat(function.at(u, order))
                        .as("%s order %d at %f", function, order, u)
                        .isCloseTo(difference, within(2e-7));
            }
        }
        assertThat(function.at(0, 0)).isZero();
        assertThat(function.at(1, 0)).isCloseTo(1, within(1e-15));
    }

    static RiseFunction[] functions() {
        return RiseFunction.values();
    }
}
