package longthrow.core.reduce;

import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;

/**
 * A brake with arm and cell, or one that tells torque itself. What is not known stays empty, and is said of every curve.
 * @param arm             from the brake's axis to the cell, square to the force [m], above 0; 1 where the rows tell torque
 * @param calibration     of the cell; empty where the rows are in newtons (or newton metres) already
 * @param scale           1 with the relative doubt of a cell that tells newtons or newton metres itself
 * @param ratio           engine speed over the brake's speed, above 0; 1 on the crankshaft
 * @param driveEfficiency share of the engine's torque that reaches the brake; empty where it is not known
 * @param onCrank         whether the brake sits on the crankshaft, with no drive between
 * @param engineInertia   of what turns with the engine, brake included [kg m2]; counts where speed changes
 */
public record BrakeBench(
        Measured arm,
        Optional<CellCalibration> calibration,
        Measured scale,
        Measured ratio,
        Optional<Measured> driveEfficiency,
        boolean onCrank,
        Optional<Measured> engineInertia) {
    private static final Formula TORQUE = Formula.of("torque by brake", torque());
    private static final Formula POWER =
            Formula.of("power by brake", Rotation.power(torque(), Expression.input("speed")));

    public BrakeBench {
        if (!(arm.value() > 0) || !(ratio.value() > 0) || !(scale.value() > 0)) {
            throw new IllegalArgumentException("arm " + arm.value() + " m, ratio " + ratio.value() + " and scale "
                    + scale.value() + " must all be above 0");
        }
    }

    private static Expression torque() {
        return Rotation.torqueAtArm(Expression.input("force"), Expression.input("arm"))
                .times(Expression.input("scale"))
                .dividedBy(Expression.input("ratio").times(Expression.input("efficiency")))
                .plus(Rotation.torque(Expression.input("engine inertia"), Expression.input("acceleration")));
    }

    /** Of the engine, whose speed grows by so much [rad/s2]. */
    Measured torque(double reading, double acceleration) {
        return Measured.through(TORQUE, name -> input(name, reading, acceleration, 0));
    }

    Measured power(double reading, double acceleration, double speed) {
        return Measured.through(POWER, name -> input(name, reading, acceleration, speed));
    }

    private Measured input(String name, double reading, double acceleration, double speed) {
        return switch (name) {
            case "force" -> force(reading);
            case "arm" -> arm;
            case "scale" -> calibration.isPresent() ? Measured.exact(1) : scale;
            case "ratio" -> ratio;
            case "efficiency" -> driveEfficiency.orElse(Measured.exact(1));
            case "engine inertia" -> engineInertia.orElse(Measured.exact(0));
            case "acceleration" -> Measured.exact(acceleration);
            case "speed" -> Measured.exact(speed);
            default -> throw new IllegalStateException(name);
        };
    }

    Measured force(double reading) {
        return calibration.map(c -> c.force(reading)).orElse(Measured.exact(reading));
    }

    double torquePerReading() {
        return calibration.map(CellCalibration::newtonsPerReading).orElse(scale.value())
                * arm.value()
                / (ratio.value() * driveEfficiency.map(Measured::value).orElse(1.0));
    }

    RunCurve.Taken taken() {
        return onCrank || driveEfficiency.isPresent() ? RunCurve.Taken.CRANK : RunCurve.Taken.BEHIND_DRIVE;
    }
}
