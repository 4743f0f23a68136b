package longthrow.core.life;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.ReferenceRows;
import longthrow.core.formula.Expression;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.SliderCrank;
import org.junit.jupiter.api.Test;

/** Loads against Newton's laws on the moving rod itself, energy, and a bounding trace against cycles of the references. */
class LoadsTest {
    private static final CrankMotion CRANK = new CrankMotion(0.028, 0.086, 0.003);
    private static final double SPEED = 620;
    private static final double CENTRE = 0.025; // of the rod's mass, from the big end
    private static final double ROD = 0.17;
    private static final double INERTIA = 0.00018;
    private static final double SMALL = ROD * CENTRE / 0.086;
    private static final double EXCESS = ROD * CENTRE * (0.086 - CENTRE) - INERTIA;
    private static final MovingParts PARTS = new MovingParts(0.2, SMALL, ROD - SMALL, EXCESS, -0.004);

    /** Centre of mass of the rod: along, across; and its direction. */
    private static double[] rod(double angle) {
        double pinX = CRANK.crankRadius() * Math.cos(angle);
        double pinY = CRANK.crankRadius() * Math.sin(angle);
        double topX = CRANK.pinHeight(angle);
        double share = CENTRE / CRANK.rodLength();
        return new double[] {
            pinX + share * (topX - pinX),
            pinY + share * (CRANK.offset() - pinY),
            Math.atan2(CRANK.offset() - pinY, topX - pinX)
        };
    }

    /** Second derivative of each by time, from positions alone. */
    private static double[] rodAcceleration(double angle) {
        double h = 1e-3;
        double[] a = rod(angle - h);
        double[] b = rod(angle);
        double[] c = rod(angle + h);
        double[] second = new double[3];
        for (int i = 0; i < 3; i++) {
            second[i] = (a[i] - 2 * b[i] + c[i]) / (h * h) * SPEED * SPEED;
        }
        return second;
    }

    /** Force and moment on the rod as a body, by its motion seen from outside; the tolerance is that of the second differences. */
    @Test
    void newtonHoldsForTheRodAsOneBody() {
        Loads loads = new Loads(CRANK, PARTS, 0.066, BoundingGas.of(CRANK, 9.5), SPEED);
        for (double angle = 0.05; angle < GasTrace.CYCLE; angle += 0.31) {
            Load load = loads.at(angle);
            double[] acceleration = rodAcceleration(angle);
            double[] place = rod(angle);
            double atPinX = -load.crankpinAlong();
            double atPinY = -load.crankpinAcross();
            double scale = 1e-5 * (load.pin() + load.crankpin() + 1000);
            assertThat(load.pinAlong() + atPinX).isCloseTo(ROD * acceleration[0], within(scale));
            assertThat(load.pinAcross() + atPinY).isCloseTo(ROD * acceleration[1], within(scale));
            double topX = CRANK.pinHeight(angle) - place[0];
            double topY = CRANK.offset() - place[1];
            double pinX = CRANK.crankRadius() * Math.cos(angle) - place[0];
            double pinY = CRANK.crankRadius() * Math.sin(angle) - place[1];
            double moment = topX * load.pinAcross() - topY * load.pinAlong() + pinX * atPinY - pinY * atPinX;
            assertThat(moment).as("moment at %f", angle).isCloseTo(INERTIA * acceleration[2], within(0.1 * scale));
            assertThat(load.sideThrust()).isEqualTo(-load.pinAcross());
        }
    }

    /** Work on the crank over a cycle is that of the gas on the piston; inertia gives back what it takes. */
    @Test
    void torqueDoesTheWorkOfTheGas() {
        int count = 7200;
        GasTrace gas = BoundingGas.of(CRANK, 9.5);
        double work = 0;
        double ofGas = 0;
        double area = Math.PI / 4 * 0.066 * 0.066;
        for (Load load : new Loads(CRANK, PARTS, 0.066, gas, SPEED).sweep(count)) {
            work += load.torque() * GasTrace.CYCLE / count;
            ofGas += gas.gauge(load.angle()) * area * CRANK.travelSlope(load.angle()) * GasTrace.CYCLE / count;
        }
        assertThat(work).isCloseTo(ofGas, within(1e-6 * ofGas));
        double idle = new Loads(CRANK, PARTS, 0.066, GasTrace.none(), SPEED)
                .sweep(count).stream().mapToDouble(Load::torque).sum();
        assertThat(idle / count).isCloseTo(0, within(1e-6));
    }

    /** Engine in line at top dead centre: the sums a builder does by hand. */
    @Test
    void overrunIsTheWorstPullOnTheBolts() {
        CrankMotion crank = new CrankMotion(0.027, 0.084, 0);
        MovingParts parts = new MovingParts(0.19, 0.06, 0.11, 0, 0);
        double speed = 7000 * Math.PI / 30;
        Loads firing = new Loads(crank, parts, 0.068, BoundingGas.of(crank, 9), speed);
        Loads overrun = new Loads(crank, parts, 0.068, GasTrace.overrun(), speed);
        List<List<Load>> cases = List.of(firing.sweep(720), overrun.sweep(720));
        double pull = Loads.Range.of(cases, Load::capPull).most();
        double area = Math.PI / 4 * 0.068 * 0.068;
        double byHand = 0.25 * 0.027 * speed * speed * (1 + 0.027 / 0.084)
                + 0.11 * 0.027 * speed * speed
                + GasTrace.STANDARD_ATMOSPHERE * area;
        assertThat(pull).isCloseTo(byHand, within(1e-9 * byHand));
        assertThat(firing.sweep(720).stream().mapToDouble(Load::capPull).max().orElseThrow())
                .isLessThan(pull);
        Load top = overrun.at(0);
        assertThat(overrun.boltPull(top, 0.04)).isCloseTo(byHand - 0.04 * 0.027 * speed * speed, within(1e-9 * byHand));
        Loads.Range shank = Loads.Range.of(cases, Load::rodShank);
        assertThat(shank.alternating() + shank.mean()).isCloseTo(shank.most(), within(1e-9 * byHand));
        assertThat(shank.most()).isPositive();
        assertThat(shank.least()).isNegative();
    }

    /** The formula with doubt is the sweep at top dead centre, offset left out but for a ten-thousandth; and its speeds are those of its pulls. */
    @Test
    void deadCentreIsTheSweepsWorstPull() {
        DeadCentre top = new DeadCentre(
                new SliderCrank(number(0.028), number(0.086), number(0.003)),
                number(PARTS.reciprocating()),
                number(PARTS.bigEnd()),
                number(0.03),
                number(0.066));
        Loads overrun = new Loads(CRANK, PARTS, 0.066, GasTrace.overrun(), SPEED);
        Load worst = overrun.at(CRANK.topDeadCentre());
        Expression gauge = number(-GasTrace.STANDARD_ATMOSPHERE);
        Expression speed = number(SPEED);
        double bolts = overrun.boltPull(worst, 0.03);
        assertThat(value(top.boltPull(speed, gauge))).isCloseTo(bolts, within(1e-3 * bolts));
        assertThat(value(top.shankPull(speed, gauge))).isCloseTo(-worst.rodShank(), within(1e-3 * bolts));
        assertThat(value(top.speedOfBoltPull(top.boltPull(speed, gauge), gauge)))
                .isCloseTo(SPEED, within(1e-9));
        assertThat(value(top.speedOfShankPull(top.shankPull(speed, gauge), gauge)))
                .isCloseTo(SPEED, within(1e-9));
    }

    /** The main bearings carry the crankpin's load and the counterweight's pull. */
    @Test
    void counterweightRelievesTheMains() {
        Loads loads = new Loads(CRANK, PARTS, 0.066, GasTrace.none(), SPEED);
        Load top = loads.at(0);
        assertThat(top.mainsAlong()).isCloseTo(top.crankpinAlong() - 0.004 * SPEED * SPEED, within(1e-9));
        assertThat(top.mains()).isLessThan(top.crankpin());
    }

    /** Fuel-air cycles THM-20 to THM-23: highest pressure with their own charge, by the same sum as the bound. */
    @Test
    void boundLiesAboveTheFuelAirCycles() {
        ReferenceRows rows = ReferenceRows.of("05_thermodynamics");
        double[][] charges = {{8, 350}, {10, 350}, {10, 350}, {11, 340}};
        for (int k = 0; k < charges.length; k++) {
            BoundingGas bound = new BoundingGas(CRANK, charges[k][0], 101_325, charges[k][1]);
            double peak = rows.row("THM-2" + k + ".4").value() * 1e5;
            double end = rows.row("THM-2" + k + ".6").value() * 1e5;
            assertThat(bound.peak()).isBetween(peak, 1.2 * peak);
            assertThat(bound.gauge(CRANK.bottomDeadCentre()) + GasTrace.STANDARD_ATMOSPHERE)
                    .isBetween(end, 1.3 * end);
        }
    }

    /** Pressures every 5 degrees of four closed cycles with Wiebe burning, with and without heat loss (references CYC-28 to CYC-31). */
    @Test
    void boundLiesAboveEveryClosedCycle() {
        ReferenceRows.Row any = ReferenceRows.of("05_thermodynamics").row("THM-20.4");
        String[] grids = {"07_cycle_A_adiabatic", "07_cycle_B_woschni", "07_cycle_C_hohenberg", "07_cycle_D_variable_cv"
        };
        CrankMotion small = new CrankMotion(0.027, 0.084, 0);
        CrankMotion large = new CrankMotion(0.029, 0.091, 0);
        double[] ratios = {8.5, 8.5, 9.2, 9.5};
        for (int k = 0; k < grids.length; k++) {
            BoundingGas bound = BoundingGas.of(k == 2 ? large : small, ratios[k]);
            int cells = 0;
            for (ReferenceRows.GridCell cell : ReferenceRows.grid(grids[k], any, 0, false)) {
                if (!"p_bar".equals(cell.column())) {
                    continue;
                }
                cells++;
                double angle = Math.toRadians(cell.argument());
                double absolute = bound.gauge(angle) + GasTrace.STANDARD_ATMOSPHERE;
                assertThat(absolute)
                        .as("%s at %s", grids[k], cell.argument())
                        .isGreaterThan(cell.row().value() * 1e5);
            }
            assertThat(cells).isGreaterThan(45);
        }
    }

    /** The same cycles where they were near their best timing: what firing reaches in use leaves a fifth above them for quick cycles, and no more than a third. */
    @Test
    void usualShareOfTheBoundLeavesRoomForQuickCycles() {
        ReferenceRows.Row any = ReferenceRows.of("05_thermodynamics").row("THM-20.4");
        String[] grids = {"07_cycle_A_adiabatic", "07_cycle_B_woschni", "07_cycle_C_hohenberg"};
        double[] ratios = {8.5, 8.5, 9.2};
        for (int k = 0; k < grids.length; k++) {
            double peak = ReferenceRows.grid(grids[k], any, 0, false).stream()
                    .filter(cell -> "p_bar".equals(cell.column()))
                    .mapToDouble(cell -> cell.row().value() * 1e5)
                    .max()
                    .orElseThrow();
            double share = peak / BoundingGas.of(CRANK, ratios[k]).peak();
            assertThat(BoundingGas.USUAL_SHARE / share).as(grids[k]).isBetween(1.15, 1.34);
        }
    }

    @Test
    void givenTraceRunsThroughItsPointsAndRoundTheCycle() {
        GivenGas gas = new GivenGas(
                List.of(new GivenGas.Point(0.5, 3e5), new GivenGas.Point(1.0, 5e5), new GivenGas.Point(12, 1e5)));
        double atmosphere = GasTrace.STANDARD_ATMOSPHERE;
        assertThat(gas.gauge(0.75)).isCloseTo(4e5 - atmosphere, within(1e-6));
        assertThat(gas.gauge(1.0)).isCloseTo(5e5 - atmosphere, within(1e-6));
        double gap = GasTrace.CYCLE - 11.5;
        assertThat(gas.gauge(0.25)).isCloseTo(3e5 - 2e5 * 0.25 / gap - atmosphere, within(1e-6));
        assertThat(gas.gauge(0.25 - GasTrace.CYCLE)).isCloseTo(gas.gauge(0.25), within(1e-6));
        assertThat(gas.gauge(12.2)).isCloseTo(1e5 + 2e5 * 0.2 / gap - atmosphere, within(1e-6));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> BoundingGas.of(CRANK, 1)).hasMessageContaining("compression ratio is 1.0");
        assertThatThrownBy(() -> new GivenGas.Point(13, 1e5)).hasMessageContaining("from 0 up to 720 deg");
        assertThatThrownBy(() -> new GivenGas(List.of(new GivenGas.Point(1, 1e5))))
                .hasMessageContaining("1 points; it needs 2");
        assertThatThrownBy(() -> new GivenGas(List.of(new GivenGas.Point(1, 1e5), new GivenGas.Point(1, 1e5))))
                .hasMessageContaining("must rise");
        assertThatThrownBy(() -> new MovingParts(0, 0.1, 0.1, 0, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Loads(CRANK, PARTS, -1, GasTrace.none(), 1))
                .hasMessageContaining("bore [m] is -1.0");
    }
}
