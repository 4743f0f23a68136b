package longthrow.core.reduce;

import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;

/**
 * An inertia drum. What is not known stays empty, and is said of every curve.
 * @param drumInertia     of drum, shaft and what turns with them [kg m2], above 0
 * @param engineInertia   of flywheel, crank, clutch and what turns with the engine [kg m2]
 * @param ratio           engine speed over drum speed, above 0; by the rows where both speeds are in them
 * @param parasitic       what the drum itself takes
 * @param driveEfficiency share of the engine's torque that reaches the drum, above 0 up to 1
 */
public record DrumBench(
        Measured drumInertia,
        Optional<Measured> engineInertia,
        Optional<Measured> ratio,
        Optional<Parasitic> parasitic,
        Optional<Measured> driveEfficiency) {
    private static final Formula TORQUE = Formula.of("torque by drum", torque());
    private static final Formula POWER = Formula.of("power by drum", power());

    public DrumBench {
        positive("inertia of the drum [kg m2]", drumInertia);
        ratio.ifPresent(r -> positive("ratio of engine to drum", r));
        driveEfficiency.ifPresent(e -> positive("share that the drive passes on", e));
    }

    private static void positive(String what, Measured figure) {
        if (!(figure.value() > 0)) {
            throw new IllegalArgumentException(what + " is " + figure.value() + "; it must be above 0");
        }
    }

    /** Torque at the engine: what speeds the drum up and what the drum takes, by way of ratio and drive, and what speeds the engine's own parts up. */
    private static Expression torque() {
        Expression ratio = Expression.input("ratio");
        Expression acceleration = Expression.input("acceleration");
        Expression atDrum =
                Rotation.torque(Expression.input("drum inertia"), acceleration).plus(Expression.input("parasitic"));
        return atDrum.dividedBy(ratio.times(Expression.input("efficiency")))
                .plus(Rotation.torque(Expression.input("engine inertia"), acceleration.times(ratio)));
    }

    private static Expression power() {
        return Rotation.power(torque(), Expression.input("drum speed").times(Expression.input("ratio")));
    }

    /** Of an engine at a speed of the drum that grows by so much, both in rad and s. */
    Measured torque(Measured ratioUsed, double drumSpeed, double acceleration) {
        return Measured.through(TORQUE, name -> input(name, ratioUsed, drumSpeed, acceleration));
    }

    Measured power(Measured ratioUsed, double drumSpeed, double acceleration) {
        return Measured.through(POWER, name -> input(name, ratioUsed, drumSpeed, acceleration));
    }

    double torqueValue(double ratioUsed, double drumSpeed, double acceleration) {
        return torquePerAcceleration(ratioUsed) * acceleration
                + parasitic.map(p -> p.value(drumSpeed)).orElse(0.0) / (ratioUsed * efficiency());
    }

    /** Torque at the engine for a unit of acceleration of the drum. */
    double torquePerAcceleration(double ratioUsed) {
        return drumInertia.value() / (ratioUsed * efficiency())
                + engineInertia.map(Measured::value).orElse(0.0) * ratioUsed;
    }

    private double efficiency() {
        return driveEfficiency.map(Measured::value).orElse(1.0);
    }

    private Measured input(String name, Measured ratioUsed, double drumSpeed, double acceleration) {
        return switch (name) {
            case "ratio" -> ratioUsed;
            case "acceleration" -> Measured.exact(acceleration);
            case "drum speed" -> Measured.exact(drumSpeed);
            case "drum inertia" -> drumInertia;
            case "parasitic" -> parasitic.map(p -> p.at(drumSpeed)).orElse(Measured.exact(0));
            case "efficiency" -> driveEfficiency.orElse(Measured.exact(1));
            case "engine inertia" -> engineInertia.orElse(Measured.exact(0));
            default -> throw new IllegalStateException(name);
        };
    }
}
