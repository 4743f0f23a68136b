package longthrow.core.shake;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.ReferenceRows.GridCell;
import longthrow.core.formula.Expression;
import longthrow.core.life.Pendulum;
import longthrow.core.life.RodMass;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.SliderCrank;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Shaking force, balance factor, rod masses and forces in the mechanism against the reference rows; each row names its source and carries its inputs. */
class BalanceValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("09_balance");
    private static final int[] ANGLES = {0, 45, 90, 180};
    private static final Engine A = new Engine(0.084, 6000, 0.26, 0.18, 0);
    private static final Engine B = new Engine(0.084, 6000, 0.26, 0.18, 0.5);
    private static final Engine D = new Engine(0.098, 8000, 0.23, 0.175, 1);
    private static final ComputedRows COMPUTED = computed();

    /** Engines of the rows, all with a crank radius of 27 mm. */
    record Engine(double rod, double rpm, double reciprocating, double rotating, double factor) {
        double speed() {
            return Units.RPM.toSi(rpm);
        }

        ShakingForce force() {
            SliderCrank crank = SliderCrank.inLine(number(0.027), number(rod));
            return ShakingForce.ofFactor(crank, number(reciprocating), number(rotating), number(factor));
        }

        Hodograph hodograph(int count) {
            CrankMotion crank = new CrankMotion(0.027, rod, 0);
            return Hodograph.of(crank, Hodograph.Masses.ofFactor(reciprocating, factor), speed(), count);
        }
    }

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void balanceIsWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row, aboutNothing(row));
    }

    /** "rel 1e-9 (abs 1e-6 x primary)": about a force of nothing, the sine of half a turn, the second goes; the primary is the first row of the case. */
    private static double aboutNothing(ReferenceRows.Row row) {
        if (!row.tolerance().contains("x primary")) {
            return row.allowed();
        }
        double primary = ROWS.row(row.id().replaceFirst("[.][0-9]+$", ".1")).value();
        return Math.abs(row.value()) < 1e-6 * primary ? 1e-6 * primary : row.allowed();
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(64);
        assertThat(COMPUTED.leftOut(Set.of())).isEmpty();
        assertThat(hodographs()).hasSize(3 * 25 * 2);
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        shaking(to, "BAL-01", A);
        shaking(to, "BAL-02", B);
        shaking(to, "BAL-03", D);
        firstOrder(to);
        swung(to);
        lumped(to, "BAL-06", 0.165, 0.084, 0.024, 0.00019);
        lumped(to, "BAL-07", 0.12, 0.091, 0.027, 0.00016);
        resolved(to, "BAL-08", 30, 12_000);
        resolved(to, "BAL-09", 80, 4000);
        return to;
    }

    private static void shaking(ComputedRows to, String caseId, Engine engine) {
        ShakingForce force = engine.force();
        Expression speed = number(engine.speed());
        to.putFrom(caseId, 1, value(force.primary(speed)), value(force.secondary(speed)));
        int row = 3;
        for (int degrees : ANGLES) {
            Expression angle = number(Math.toRadians(degrees));
            double along = value(force.along(angle, speed));
            double across = value(force.across(angle, speed));
            to.putFrom(caseId, row, along, across);
            row += 2;
        }
        to.put(caseId + ".11", engine.hodograph(360).largest().size());
    }

    private static void firstOrder(ComputedRows to) {
        int row = 1;
        for (double factor : new double[] {0, 0.25, 0.5, 0.75, 1}) {
            FirstOrder order = new FirstOrder(number(0.260), number(0.027), number(A.speed()), number(factor));
            to.putFrom("BAL-04", row, value(order.along()), value(order.across()));
            row += 2;
            if (factor == 0.5) {
                to.put("BAL-04.11", value(order.largest()));
            }
        }
    }

    private static void swung(ComputedRows to) {
        Pendulum pendulum =
                new Pendulum(number(55), number(0.850 + 0.0375 + 0.050), number(1.83), number(1.68), number(9.81));
        RodMass rod = pendulum.rod(number(0.850), number(0.075));
        double first = value(rod.dynamicSmallEnd(pendulum.inertia()));
        to.putFrom(
                "BAL-05",
                1,
                value(pendulum.belowSmallEdge()),
                value(pendulum.gyration()),
                value(pendulum.inertia()),
                first,
                55 - first,
                value(rod.partnerBeyondCentre(pendulum.inertia())));
    }

    private static void lumped(
            ComputedRows to, String caseId, double mass, double length, double centre, double inertia) {
        RodMass rod = new RodMass(number(mass), number(length), number(centre));
        to.putFrom(
                caseId,
                1,
                value(rod.smallEnd()),
                value(rod.bigEnd()),
                value(rod.inertiaExcess(number(inertia))),
                value(rod.partnerBeyondCentre(number(inertia))));
    }

    private static void resolved(ComputedRows to, String caseId, double degrees, double force) {
        SliderCrank crank = SliderCrank.inLine(number(0.027), number(0.084));
        Expression angle = number(Math.toRadians(degrees));
        double thrust = -value(crank.sideThrust(angle, number(force)));
        double rodForce = force / Math.cos(value(crank.rodAngle(angle)));
        double torque = force * value(crank.travelSlope(angle));
        to.putFrom(caseId, 1, thrust, rodForce, torque);
    }

    /** A cell and the engine it is of. */
    record Cell(GridCell cell, Engine engine) {
        @Override
        public String toString() {
            return cell.toString();
        }
    }

    static List<Cell> hodographs() {
        return Stream.of(
                        Map.entry("09_hodograph_A_bf0", A),
                        Map.entry("09_hodograph_B_bf50", B),
                        Map.entry("09_hodograph_D_bf100", D))
                .flatMap(e -> ReferenceRows.grid(e.getKey(), ROWS.row("BAL-01.3"), 1e-9, true).stream()
                        .map(cell -> new Cell(cell, e.getValue())))
                .toList();
    }

    /** Tolerance of the forces of BAL-01 to BAL-03, of the largest force of a column. */
    @ParameterizedTest
    @MethodSource("hodographs")
    void hodographIsWhatTheGridSays(Cell at) {
        int step = (int) Math.round(at.cell.argument() / 15) % 24;
        Hodograph.Point point = at.engine.hodograph(24).points().get(step);
        at.cell.row().check("FX_N".equals(at.cell.column()) ? point.along() : point.across());
    }

    /** One formula in two forms, offset included; and its Fourier sum holds the refined second order. */
    @Test
    void formulaAndHodographAgreeWithOffset() {
        SliderCrank crank = new SliderCrank(number(0.03), number(0.1), number(0.004));
        ShakingForce force = new ShakingForce(crank, number(0.3), number(0.2), number(0.31));
        Hodograph hodograph =
                Hodograph.of(new CrankMotion(0.03, 0.1, 0.004), new Hodograph.Masses(0.3, -0.11), 500, 36);
        for (Hodograph.Point point : hodograph.points()) {
            assertThat(value(force.along(number(point.angle()), number(500)))).isCloseTo(point.along(), within(1e-9));
            assertThat(value(force.across(number(point.angle()), number(500)))).isCloseTo(point.across(), within(1e-9));
        }
    }

    @Test
    void secondOrderIsTheFourierSumOfTheExactForce() {
        for (double rod : new double[] {0.081, 0.084, 0.108, 0.135}) {
            Engine engine = new Engine(rod, 6000, 0.26, 0.18, 0);
            double sum = 0;
            for (Hodograph.Point point : engine.hodograph(720).points()) {
                sum += point.along() * Math.cos(2 * point.angle()) / 360;
            }
            double primary = value(engine.force().primary(number(engine.speed())));
            double series = value(engine.force().secondaryRefined(number(engine.speed())));
            assertThat(series).as("rod %s", rod).isCloseTo(sum, within(6e-5 * primary));
        }
    }
}
