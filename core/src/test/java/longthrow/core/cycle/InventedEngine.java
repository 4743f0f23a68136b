package longthrow.core.cycle;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.LobeCurve;
import longthrow.core.pipe.PlainKernel;

/** An engine for the tests, invented: 196 cc, two valves, a pipe on each side or silencer and airbox. */
final class InventedEngine {
    static final double RPM = Math.PI / 30;
    static final Mesh MESH = new Mesh(0.02, Math.toRadians(1));
    static final WorkingGases GASES = WorkingGases.of(Fuel.petrol(), MoistAir.DRY, 1.12);
    static final Surroundings AIR = new Surroundings(101_325, 290, 298.15);

    private InventedEngine() {}

    static Engine open(double inertia) {
        return of(
                new Duct(List.of(Tube.cone(0.18, 0.023, 0.020, 325)), 0.9),
                new Duct(List.of(Tube.straight(0.35, 0.025, 600)), 1),
                inertia);
    }

    static Engine silenced() {
        return of(
                new Duct(List.of(Tube.cone(0.18, 0.022, 0.020, 330), Plenum.of(5e-4), Plate.hole(0.018)), 1),
                new Duct(
                        List.of(Tube.straight(0.1, 0.023, 600), new Plenum(1.2e-3, 0.08, 500, 20), Plate.hole(0.014)),
                        1),
                Double.POSITIVE_INFINITY);
    }

    private static Engine of(Duct intake, Duct exhaust, double inertia) {
        return new Engine(
                CylinderSpace.flat(0.068, new CrankMotion(0.027, 0.084, 0), 8.5),
                passage(0.025, 0.006, 355, 575),
                passage(0.024, 0.006, 140, 365),
                intake,
                exhaust,
                new Walls(480, 520, 430),
                new Engine.Firing(Chamber.WEDGE, 0.75 * 0.068, 1, 1, 1, 0.97, 0.002),
                inertia);
    }

    /** Open above half a millimetre from one angle to the other [deg]. */
    private static Passage passage(double head, double lift, double opens, double closes) {
        double centre = Math.toRadians(0.5 * (opens + closes));
        LobeCurve lobe = LobeCurve.of(lift, 5e-4, Math.toRadians(closes - opens), centre);
        ValveLift over = ValveLift.assumed(lobe, 1, 0);
        ValveFlow flow = ValveFlow.usual(ValveGroup.of(head), true);
        DoubleUnaryOperator area = angle -> flow.into(over.at(angle));
        return Passage.of(area, area);
    }

    static Setting at(double rpm) {
        return new Setting(rpm * RPM, Spark.degrees(25), AIR);
    }

    static OperatingPoint run(Engine engine, Setting setting, Mesh mesh) {
        return OperatingPoint.run(engine, setting, GASES, mesh, PlainKernel::new, () -> true)
                .orElseThrow();
    }
}
