package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.ReferenceRows.GridCell;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.formula.Interval;
import longthrow.core.quantity.Units;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The exact slider-crank against the reference rows: Heywood (1988) section 2.2, Khurmi and Gupta chapter 15, Fourier terms. Speeds and
 * accelerations are slopes of the travel formula. Inputs of each case stand in its rows.
 */
class SliderCrankValidationTest {
    /**
     * Approximations in the ratio of crank radius to rod, which nothing here uses: two-term speed and acceleration of the textbook and
     * series of the Fourier terms. Motion is exact here; the terms of the series matter where shaking forces are balanced.
     */
    private static final Set<String> SERIES = Set.of(
            "SLC-04.1",
            "SLC-04.2",
            "SLC-05.1",
            "SLC-05.2",
            "SLC-05.3",
            "SLC-06.2",
            "SLC-06.4",
            "SLC-06.6",
            "SLC-07.2",
            "SLC-07.4",
            "SLC-07.6");

    private static final Expression ANGLE = Expression.input("angle");
    private static final ReferenceRows ROWS = ReferenceRows.of("02_slider_crank");
    private static final Crank A = new Crank(27, 84, 0);
    private static final Crank B = new Crank(27, 84, 1);
    private static final Crank D = new Crank(27, 98, 0.5);
    private static final Expression BORE = mm(68);
    private static final Expression SWEPT = A.crank.sweptVolume(BORE);
    private static final Expression CLEARANCE = SWEPT.dividedBy(8.5 - 1);
    private static final Formula VOLUME = Formula.of("volume", A.crank.cylinderVolume(BORE, CLEARANCE, ANGLE));
    private static final Formula WALL =
            Formula.of("wall", A.crank.wallArea(BORE, Cylinder.area(BORE), Cylinder.area(BORE), ANGLE));
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void motionIsWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(76);
        assertThat(COMPUTED.leftOut(SERIES)).isEmpty();
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        exact(to, "SLC-01", A, 6000);
        exact(to, "SLC-02", B, 6000);
        exact(to, "SLC-03", D, 8000);
        Crank khurmi = new Crank(300, 1000, 0);
        double fastest = khurmi.root(1.0, 1.6);
        to.put("SLC-04.3", Math.toDegrees(fastest));
        to.put("SLC-04.4", Units.RPM.toSi(200) * khurmi.slope(fastest));
        Crank second = new Crank(300, 1500, 0);
        double speed = Units.RPM.toSi(180);
        to.put("SLC-05.4", speed * second.slope(Math.toRadians(40)));
        to.put("SLC-05.5", speed * speed * second.bend(Math.toRadians(40)));
        fourier(to, "SLC-06", new Crank(27, 84, 0));
        fourier(to, "SLC-07", new Crank(25, 100, 0));
        volumes(to);
        Crank unit = new Crank(100, 350, 0);
        int row = 1;
        for (double degrees : new double[] {45, 60, 90, 120}) {
            double mean = at(Timing.meanPistonSpeed(unit.crank.stroke(), Expression.constant(1)));
            to.put("SLC-09." + row++, unit.slope(Math.toRadians(degrees)) / mean);
        }
        return to;
    }

    /** A crank of millimetres with its formulas by the angle [rad, m]. */
    private static final class Crank {
        final SliderCrank crank;
        final Formula travel;
        final Formula slope;
        final Formula rodAngle;

        Crank(double crankRadius, double rodLength, double offset) {
            crank = new SliderCrank(mm(crankRadius), mm(rodLength), mm(offset));
            travel = Formula.of("travel", crank.travel(ANGLE));
            slope = Formula.of("slope", crank.travelSlope(ANGLE));
            rodAngle = Formula.of("rod angle", crank.rodAngle(ANGLE));
        }

        double slope(double angle) {
            return slope.at(angle);
        }

        /** Second derivative of the travel, by the exact gradient of its slope. */
        double bend(double angle) {
            double[] bend = new double[1];
            slope.gradient(new double[] {angle}, bend);
            return bend[0];
        }

        /** Where the piston is fastest: the slope has no slope. */
        double root(double from, double to) {
            return new BrentSolver(1e-15, 1e-14).solve(200, this::bend, from, to);
        }
    }

    private static Expression mm(double millimetres) {
        return Expression.constant(Units.MILLIMETRE.toSi(millimetres));
    }

    private static double at(Expression expression) {
        return Formula.of("reference", expression).at();
    }

    private static void exact(ComputedRows to, String caseId, Crank of, double rpm) {
        double speed = Units.RPM.toSi(rpm);
        SliderCrank crank = of.crank;
        double top = at(crank.topDeadCentre());
        double bottom = at(crank.bottomDeadCentre());
        double down = of.root(top + 0.5, top + 2);
        double up = of.root(bottom + 1, bottom + 2.6);
        to.putFrom(
                caseId,
                1,
                Units.MILLIMETRE.fromSi(at(crank.stroke())),
                Math.toDegrees(top),
                Math.toDegrees(bottom),
                at(Timing.meanPistonSpeed(crank.stroke(), Expression.constant(speed))),
                Math.toDegrees(down),
                speed * of.slope(down),
                Math.toDegrees(up),
                -speed * of.slope(up),
                -speed * speed * of.bend(top),
                -speed * speed * of.bend(bottom));
        int row = 11;
        for (double degrees : new double[] {30, 60, 90, 135}) {
            to.put(caseId + "." + row++, Units.MILLIMETRE.fromSi(of.travel.at(Math.toRadians(degrees))));
        }
    }

    /** Even harmonics by the trapezoidal rule on 64 points, exact to rounding here: the 62nd harmonic is below 1e-16. */
    private static void fourier(ComputedRows to, String caseId, Crank of) {
        double radius = at(of.crank.stroke().half());
        DoubleUnaryOperator acceleration = angle -> of.bend(angle) / radius;
        to.put(caseId + ".1", harmonic(acceleration, 2));
        to.put(caseId + ".3", harmonic(acceleration, 4));
        to.put(caseId + ".5", harmonic(acceleration, 6));
        to.put(caseId + ".7", harmonic(acceleration, 1));
    }

    private static double harmonic(DoubleUnaryOperator function, int order) {
        int points = 64;
        double sum = 0;
        for (int k = 0; k < points; k++) {
            double angle = 2 * Math.PI * k / points;
            sum += function.applyAsDouble(angle) * Math.cos(order * angle);
        }
        return 2 * sum / points;
    }

    private static double volume(double degrees) {
        return Units.CUBIC_CENTIMETRE.fromSi(VOLUME.at(Math.toRadians(degrees)));
    }

    private static double volumeSlope(double degrees) {
        double[] slope = new double[1];
        VOLUME.gradient(new double[] {Math.toRadians(degrees)}, slope);
        return Units.CUBIC_CENTIMETRE.fromSi(slope[0]);
    }

    private static void volumes(ComputedRows to) {
        to.putFrom(
                "SLC-08",
                1,
                volume(0),
                volume(30),
                volumeSlope(30),
                volume(90),
                volumeSlope(90),
                volume(150),
                Units.CUBIC_CENTIMETRE.fromSi(at(SWEPT)));
    }

    static List<GridCell> volumeGrid() {
        return ReferenceRows.grid("02_volume_68x54_rc8p5", ROWS.row("SLC-08.1"), 1e-11, true);
    }

    /** Tolerance of the volumes of SLC-08, which name the grid. */
    @ParameterizedTest
    @MethodSource("volumeGrid")
    void volumeAndWallAreWhatTheGridSays(GridCell cell) {
        double degrees = cell.argument();
        cell.row()
                .check(
                        switch (cell.column()) {
                            case "V_cm3" -> volume(degrees);
                            case "dV_dtheta_cm3_per_rad" -> volumeSlope(degrees);
                            case "wall_area_mm2" -> Units.SQUARE_MILLIMETRE.fromSi(WALL.at(Math.toRadians(degrees)));
                            default -> throw new IllegalStateException("unknown column " + cell.column());
                        });
    }

    @Test
    void allGridsAreWhole() {
        assertThat(volumeGrid()).hasSize(37 * 3);
        assertThat(motionGrids()).hasSize(3 * 25 * 7);
    }

    /** A cell and the crank and speed [rad/s] of its grid. */
    record MotionCell(GridCell cell, Crank crank, double speed) {
        @Override
        public String toString() {
            return cell.toString();
        }
    }

    static Stream<MotionCell> motionGrids() {
        return Stream.of(
                        grid("02_grid_A_68x54_rod84_no_offset", "SLC-01.11", A, 6000),
                        grid("02_grid_B_68x54_rod84_offset_plus1", "SLC-02.11", B, 6000),
                        grid("02_grid_D_54stroke_rod98_offset_plus0p5", "SLC-03.11", D, 8000))
                .flatMap(List::stream);
    }

    private static List<MotionCell> grid(String topic, String row, Crank crank, double rpm) {
        return ReferenceRows.grid(topic, ROWS.row(row), 1e-10, true).stream()
                .map(cell -> new MotionCell(cell, crank, Units.RPM.toSi(rpm)))
                .toList();
    }

    /** Tolerance of the travels of SLC-01 to SLC-03, whose geometries these are. */
    @ParameterizedTest
    @MethodSource("motionGrids")
    void motionIsWhatTheGridSays(MotionCell at) {
        double angle = Math.toRadians(at.cell.argument());
        Crank of = at.crank;
        double got = switch (at.cell.column()) {
            case "travel_from_TDC_mm" -> Units.MILLIMETRE.fromSi(of.travel.at(angle));
            case "travel/stroke" -> of.travel.at(angle) / at(of.crank.stroke());
            case "dx/dtheta_mm_per_rad" -> -Units.MILLIMETRE.fromSi(of.slope(angle));
            case "d2x/dtheta2_mm_per_rad2" -> -Units.MILLIMETRE.fromSi(of.bend(angle));
            case "velocity_m_s(+x)" -> -at.speed * of.slope(angle);
            case "acceleration_m_s2(+x)" -> -at.speed * at.speed * of.bend(angle);
            case "rod_angle_deg" -> Math.toDegrees(of.rodAngle.at(angle));
            default -> throw new IllegalStateException("unknown column " + at.cell.column());
        };
        at.cell.row().check(got);
    }

    /** The slope as it is written is the derivative of the travel as it is written. */
    @Test
    void slopeIsTheDerivativeOfTravel() {
        for (Crank of : List.of(A, B, D, new Crank(27, 84, -3))) {
            for (int degrees = -180; degrees <= 360; degrees += 7) {
                double angle = Math.toRadians(degrees);
                double[] derivative = new double[1];
                of.travel.gradient(new double[] {angle}, derivative);
                assertThat(of.slope(angle)).as("%d°", degrees).isCloseTo(derivative[0], within(1e-15));
            }
        }
    }

    /** At the true dead centres the travel is nothing and the whole stroke, and stands still. */
    @Test
    void deadCentresBoundTheTravel() {
        for (Crank of : List.of(A, B, D, new Crank(27, 84, -3))) {
            double top = at(of.crank.topDeadCentre());
            double bottom = at(of.crank.bottomDeadCentre());
            assertThat(of.travel.at(top)).isCloseTo(0, within(1e-16));
            assertThat(of.travel.at(bottom)).isCloseTo(at(of.crank.stroke()), within(1e-16));
            assertThat(of.slope(top)).isCloseTo(0, within(1e-16));
            assertThat(of.slope(bottom)).isCloseTo(0, within(1e-16));
        }
    }

    /** The range of the volume over the first half turn runs from dead centre to dead centre. */
    @Test
    void volumeOverAnIntervalHoldsBothEnds() {
        Interval range = VOLUME.rangeOver(new Interval(Math.toRadians(40), Math.toRadians(60)))
                .interval();
        assertThat(range.lo())
                .isLessThanOrEqualTo(VOLUME.at(Math.toRadians(40)))
                .isCloseTo(55.670_917_131_149_64e-6, within(1e-9));
        assertThat(range.hi())
                .isGreaterThanOrEqualTo(VOLUME.at(Math.toRadians(60)))
                .isCloseTo(87.233_259_286_558_79e-6, within(1e-9));
    }
}
