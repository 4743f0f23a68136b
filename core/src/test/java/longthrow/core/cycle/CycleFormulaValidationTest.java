package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Burn curve, wall heat, friction and knock against every reference row of theirs. Ideal cycles and polytropic compression are no part of the product and are reckoned here, from the
 * gas that is.
 */
class CycleFormulaValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("07_combustion_heat_friction");

    /** Closed cycles: the cylinder's. */
    private static final List<String> OF_THE_CYLINDER = List.of("CYC-28", "CYC-29", "CYC-30", "CYC-31", "CYC-32");

    private static final double RPM = Math.PI / 30;
    private static final double BAR = 1e5;
    private static final double ATMOSPHERE = 101325;

    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void formulaGivesWhatTheRowSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(151);
        Set<String> cylinder = ROWS.all().stream()
                .map(ReferenceRows.Row::id)
                .filter(id -> OF_THE_CYLINDER.contains(id.replaceFirst("\\..*", "")))
                .collect(Collectors.toSet());
        assertThat(COMPUTED.leftOut(cylinder)).isEmpty();
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        wiebe(to, "CYC-01", 5, 2);
        wiebe(to, "CYC-02", 6.908, 2);
        wiebe(to, "CYC-03", 6.908, 3.2);
        woschni(to);
        hohenberg(to);
        annand(to);
        friction(to);
        knock(to);
        otto(to);
        return to;
    }

    private static void wiebe(ComputedRows to, String id, double a, double m) {
        BurnCurve curve = new BurnCurve(a, m, 0, 1);
        to.putFrom(
                id,
                1,
                curve.share(0.1),
                curve.share(0.25),
                curve.share(0.5),
                curve.share(0.75),
                curve.share(0.9),
                curve.share(1),
                curve.angle(0.1),
                curve.angle(0.5),
                curve.angle(0.9),
                curve.angle(0.9) - curve.angle(0.1),
                curve.fastest(),
                curve.rate(curve.fastest()));
    }

    private static GasAtWall gas(GasAtWall.Phase phase, double pressure, double temperature) {
        GasAtWall gas = new GasAtWall();
        gas.phase = phase;
        gas.pressure = pressure;
        gas.temperature = temperature;
        return gas;
    }

    private static void woschni(ComputedRows to) {
        double small = 0.00019611;
        GasAtWall hot = gas(GasAtWall.Phase.BURNING, 3e6, 2200);
        reference(hot, 1e5, 360, 0.0002223, 1.4e6);
        woschni(to, "CYC-04", 0.068, small, 0.054, 3600, hot);
        woschni(to, "CYC-05", 0.068, small, 0.054, 3600, gas(GasAtWall.Phase.GAS_EXCHANGE, 1e5, 350));
        GasAtWall fast = gas(GasAtWall.Phase.BURNING, 4.5e6, 2450);
        reference(fast, 95e3, 370, 0.000238, 1.6e6);
        woschni(to, "CYC-06", 0.070, 0.00021166, 0.055, 6000, fast);
    }

    private static void reference(GasAtWall gas, double p, double t, double volume, double motored) {
        gas.referencePressure = p;
        gas.referenceTemperature = t;
        gas.referenceVolume = volume;
        gas.motoredPressure = motored;
    }

    private static void woschni(
            ComputedRows to, String id, double bore, double displacement, double stroke, double rpm, GasAtWall gas) {
        double pistonSpeed = 2 * stroke * rpm / 60;
        Woschni heat = new Woschni(bore, displacement, pistonSpeed);
        to.putFrom(id, 1, pistonSpeed, heat.gasSpeed(gas), heat.coefficient(gas));
    }

    private static void hohenberg(ComputedRows to) {
        hohenberg(to, "CYC-07.1", 6e-5, gas(GasAtWall.Phase.BURNING, 30 * BAR, 2200), 6.48);
        hohenberg(to, "CYC-08.1", 0.000222, gas(GasAtWall.Phase.GAS_EXCHANGE, BAR, 350), 6.48);
        hohenberg(to, "CYC-09.1", 4e-5, gas(GasAtWall.Phase.BURNING, 45 * BAR, 2450), 11);
    }

    private static void hohenberg(ComputedRows to, String id, double volume, GasAtWall gas, double pistonSpeed) {
        gas.volume = volume;
        to.put(id, new Hohenberg(pistonSpeed).coefficient(gas));
    }

    private static void annand(ComputedRows to) {
        annand(to, "CYC-10", new Annand(0.49, 0.068, 6.48), gas(GasAtWall.Phase.BURNING, 3e6, 2200), 450);
        annand(to, "CYC-11", new Annand(0.35, 0.07, 11), gas(GasAtWall.Phase.BURNING, 4.5e6, 2450), 470);
    }

    private static void annand(ComputedRows to, String id, Annand heat, GasAtWall gas, double wall) {
        gas.wallTemperature = wall;
        double flux = heat.coefficient(gas) * (gas.temperature - wall);
        to.putFrom(id, 1, heat.reynolds(gas), flux / 1e3);
    }

    private static void friction(ComputedRows to) {
        to.put("CYC-12.1", Friction.barnesMoss(2000 * RPM) / BAR);
        to.put("CYC-13.1", Friction.barnesMoss(3600 * RPM) / BAR);
        to.put("CYC-14.1", Friction.barnesMoss(5000 * RPM) / BAR);
        to.put("CYC-15.1", Friction.chenFlynn(45 * BAR, 6.48) / BAR);
        to.put("CYC-16.1", Friction.chenFlynn(60 * BAR, 11) / BAR);
        Friction.Engine engine = new Friction.Engine(
                0.068,
                0.054,
                0.030,
                new Bearing.Plain(0.030, 0.025, 2),
                new Bearing.Plain(0.030, 0.022, 1),
                new Friction.Valves(ValveGear.PUSHROD_FLAT, 2, 0.006, 2),
                Optional.empty());
        Friction.Running running = new Friction.Running(3600 * RPM, 8.5, 1, 10e-6);
        Friction friction = Friction.of(Friction.Edition.PATTON_1989, engine, running);
        to.putFrom(
                "CYC-17",
                1,
                friction.mep(Friction.Part.SEALS) / 1e3,
                friction.mep(Friction.Part.MAIN_BEARINGS) / 1e3,
                friction.mep(Friction.Part.OIL_DRAG) / 1e3,
                friction.mep(Friction.Part.SKIRT) / 1e3,
                friction.mep(Friction.Part.RINGS) / 1e3,
                friction.mep(Friction.Part.BIG_END) / 1e3,
                friction.mep(Friction.Part.GAS_LOAD) / 1e3,
                Friction.auxiliaries(3600 * RPM) / 1e3);
    }

    private static void knock(ComputedRows to) {
        to.put("CYC-18.1", 1e3 * Knock.delay(87, 20 * ATMOSPHERE, 750));
        to.put("CYC-19.1", 1e3 * Knock.delay(91, 30 * ATMOSPHERE, 800));
        to.put("CYC-20.1", 1e3 * Knock.delay(95, 40 * ATMOSPHERE, 850));
        Motored mild = new Motored(10, 3000, 350, 1.35);
        to.putFrom("CYC-21", 1, mild.knock(0).integral(90), mild.knock(30).integral(90));
        Motored hot = new Motored(12, 2000, 380, 1.33);
        to.putFrom("CYC-22", 1, hot.knock(0).integral(87), hot.knock(30).integral(87));
    }

    /** Isentropic from 100 kPa at -140 degrees in a 68 x 54 mm cylinder with a rod of 84 mm. */
    private record Motored(double ratio, double rpm, double temperature, double gamma) {
        private double height(double degrees) {
            double r = 0.027;
            double rod = 0.084;
            double theta = Math.toRadians(degrees);
            double side = r * Math.sin(theta);
            double travel = r * (1 - Math.cos(theta)) + rod - Math.sqrt(rod * rod - side * side);
            return 2 * r / (ratio - 1) + travel;
        }

        /** Steps of a hundredth of a degree: trapezoids are then within 1e-7. */
        Knock knock(double upTo) {
            Knock knock = new Knock();
            double start = -140;
            int steps = (int) Math.round((upTo - start) * 100);
            double time = 0.01 / (6 * rpm);
            knock.begin(1e5, temperature);
            for (int k = 1; k <= steps; k++) {
                double squeeze = height(start) / height(start + k * 0.01);
                knock.add(time, 1e5 * Math.pow(squeeze, gamma), temperature * Math.pow(squeeze, gamma - 1));
            }
            return knock;
        }
    }

    private static void otto(ComputedRows to) {
        otto(to, "CYC-23", 8, 1.4);
        otto(to, "CYC-24", 9.5, 1.3);
        ottoOfAir(to);
        polytropic(to, "CYC-26", 8.5, 1.3, 95, 330);
        polytropic(to, "CYC-27", 7, 1.25, 100, 310);
        double hot = (60 + 459.67) * Math.pow(9, 0.4);
        double hottest = hot + 20000 / (16 * 0.172);
        double pressure = 8 * Math.pow(9, 1.4) * hottest / hot;
        to.putFrom("CYC-33", 1, 100 * (1 - Math.pow(9, -0.4)), hot, hottest, pressure);
    }

    private static void otto(ComputedRows to, String id, double ratio, double gamma) {
        double r = 0.287;
        double cv = r / (gamma - 1);
        double t2 = 300 * Math.pow(ratio, gamma - 1);
        double t3 = t2 + 1800 / cv;
        double t4 = t3 * Math.pow(ratio, 1 - gamma);
        double efficiency = 1 - Math.pow(ratio, 1 - gamma);
        double p2 = 100 * Math.pow(ratio, gamma);
        double swept = r * 300 / 100 * (1 - 1 / ratio);
        to.putFrom(id, 1, efficiency, t2, t3, t4, p2, p2 * t3 / t2, 1800 * efficiency / swept);
    }

    /** Cengel and Boles, Example 9-2: real heat capacities of air. */
    private static void ottoOfAir(ComputedRows to) {
        Mixture air = Mixture.air(MoistAir.DRY);
        double ratio = 8;
        double p1 = 100e3;
        double t1 = 290.15;
        double t2 = root(t -> air.entropy(t, p1 * ratio * t / t1) - air.entropy(t1, p1), t1, 1500);
        double t3 = air.temperatureOfEnergy(air.internalEnergy(t2) + 800e3);
        double p3 = p1 * ratio * t3 / t1;
        double t4 = root(t -> air.entropy(t, p3 / ratio * t / t3) - air.entropy(t3, p3), t1, t3);
        double work = 800e3 - (air.internalEnergy(t4) - air.internalEnergy(t1));
        double swept = air.gasConstant() * t1 / p1 * (1 - 1 / ratio);
        to.putFrom("CYC-25", 1, t3, p3 / 1e6, work / 1e3, work / 800e3, work / swept / 1e3);
    }

    private static double root(DoubleUnaryOperator rising, double low, double high) {
        double from = low;
        double to = high;
        for (int k = 0; k < 100; k++) {
            double middle = 0.5 * (from + to);
            if (rising.applyAsDouble(middle) > 0) {
                to = middle;
            } else {
                from = middle;
            }
        }
        return 0.5 * (from + to);
    }

    private static void polytropic(ComputedRows to, String id, double ratio, double n, double p1, double t1) {
        double p2 = p1 * Math.pow(ratio, n);
        to.putFrom(id, 1, p2, t1 * Math.pow(ratio, n - 1), (p2 - 101.325) * 1e3 / 6894.757293168361);
    }
}
