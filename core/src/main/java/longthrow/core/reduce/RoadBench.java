package longthrow.core.reduce;

import java.util.Optional;
import longthrow.core.measurement.Measured;

/**
 * A vehicle on a road, as a bench. What is not known stays empty, and is said of every curve.
 * @param mass          of vehicle and rider as they ran [kg], above 0
 * @param turningMass   what wheels and tyres add as they spin up, as mass at the road: inertia over radius squared [kg]
 * @param engineInertia of what turns with the engine [kg m2]
 * @param engineRatio   engine speed for a metre per second [rad/m]; by the rows where engine speed is in them
 * @param wheelRadius   of the driven wheel, rolling [m]: without engine speed or ratio, torque is told at the wheel, by the wheel's speed
 * @param out           a run-down out of gear, the same way along the same road as the run
 * @param back          one the other way
 * @param way           which way the run went
 * @param wind          along the road, 0 with its doubt [m/s]; counts where only one way was run down
 * @param rise          of the road, metre per metre, 0 with its doubt; counts likewise
 */
public record RoadBench(
        Measured mass,
        Optional<Measured> turningMass,
        Optional<Measured> engineInertia,
        Optional<Measured> engineRatio,
        Optional<Measured> wheelRadius,
        Optional<CoastDown> out,
        Optional<CoastDown> back,
        Way way,
        Optional<Measured> wind,
        Optional<Measured> rise) {
    /** Which way a run went. */
    public enum Way {
        /** As the run-down called out. */
        OUT,
        /** As the run-down called back. */
        BACK,
        /** Not told. */
        NOT_TOLD
    }

    public RoadBench {
        if (!(mass.value() > 0)) {
            throw new IllegalArgumentException("mass is " + mass.value() + " kg; it must be above 0");
        }
    }
}
