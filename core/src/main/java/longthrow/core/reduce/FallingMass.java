package longthrow.core.reduce;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * A drum's inertia by a mass that falls on a cord around it: m g r - friction = (I + m r^2) acceleration. Friction drops out between two masses, or between a mass and the
 * free run after it lands, at like speeds. Rigid-body dynamics; the cord neither stretches nor weighs, and r is to its middle: drum radius and half a cord.
 */
public final class FallingMass {
    /** [m/s2]; from equator to poles 9.780 to 9.832, which is within a rectangle of 0.027 about the standard value. Somigliana's formula, GRS 80, from memory. */
    private static final double GRAVITY = 9.80665;

    private static final double GRAVITY_HALF_WIDTH = 0.027;
    private static final Formula ACCELERATION = Formula.of(
            "acceleration by a fall",
            Expression.input("height")
                    .times(2)
                    .dividedBy(Expression.input("radius")
                            .times(Expression.input("seconds").squared())));
    private static final Formula TWO_MASSES = Formula.of(
            "inertia by two masses",
            drive("1")
                    .minus(drive("2"))
                    .dividedBy(Expression.input("acceleration1").minus(Expression.input("acceleration2"))));
    private static final Formula AND_COAST = Formula.of(
            "inertia by a mass and the free run",
            drive("1").dividedBy(Expression.input("acceleration1").plus(Expression.input("deceleration"))));

    private static final Formula RUN_OUT = Formula.of(
            "slowing of a free run",
            Expression.input("acceleration").times(Expression.input("seconds")).dividedBy(Expression.input("stops")));

    private FallingMass() {}

    /** What the cord pulls by: m (g - r acceleration) r. */
    private static Expression drive(String which) {
        Expression radius = Expression.input("radius");
        Expression acceleration = Expression.input("acceleration" + which);
        return Expression.input("mass" + which)
                .times(radius)
                .times(Expression.input("gravity").minus(radius.times(acceleration)));
    }

    /** Standard gravity with what it differs by from place to place [m/s2]. */
    public static Measured gravity() {
        return Measured.of(
                GRAVITY,
                List.of(Source.rectangular(
                        "gravity", Source.Kind.ASSUMED, "gravity of the place", GRAVITY_HALF_WIDTH)));
    }

    /** Of the drum [rad/s2], by the time of a fall from rest. */
    public static Measured acceleration(Measured height, Measured seconds, Measured radius) {
        return through(ACCELERATION, Map.of("height", height, "seconds", seconds, "radius", radius));
    }

    /**
     * How fast the drum slows [rad/s2, above 0], on the mean from the speed that it had when the mass landed to its stand: through the same speeds as the fall.
     * @param acceleration by the fall [rad/s2]
     * @param seconds      of the fall
     * @param stops        from landing to stand [s]
     */
    public static Measured deceleration(Measured acceleration, Measured seconds, Measured stops) {
        return through(RUN_OUT, Map.of("acceleration", acceleration, "seconds", seconds, "stops", stops));
    }

    /**
     * By two masses [kg] on the same radius [m], with the drum's acceleration under each [rad/s2].
     * @return empty where the accelerations do not differ as the masses do
     */
    public static Optional<Measured> byTwo(
            Measured radius, Measured mass, Measured acceleration, Measured otherMass, Measured otherAcceleration) {
        double masses = mass.value() - otherMass.value();
        double accelerations = acceleration.value() - otherAcceleration.value();
        if (!(masses * accelerations > 0)) {
            return Optional.empty();
        }
        return plausible(through(
                TWO_MASSES,
                Map.of(
                        "radius",
                        radius,
                        "gravity",
                        gravity(),
                        "mass1",
                        mass,
                        "acceleration1",
                        acceleration,
                        "mass2",
                        otherMass,
                        "acceleration2",
                        otherAcceleration)));
    }

    /**
     * By one mass, and how fast the drum slows [rad/s2, above 0] once the mass has landed, at the speeds of the fall.
     * @return empty where the mass did not speed it up
     */
    public static Optional<Measured> andCoast(
            Measured radius, Measured mass, Measured acceleration, Measured deceleration) {
        if (!(acceleration.value() > 0 && deceleration.value() >= 0)) {
            return Optional.empty();
        }
        return plausible(through(
                AND_COAST,
                Map.of(
                        "radius",
                        radius,
                        "gravity",
                        gravity(),
                        "mass1",
                        mass,
                        "acceleration1",
                        acceleration,
                        "deceleration",
                        deceleration)));
    }

    private static Optional<Measured> plausible(Measured inertia) {
        return inertia.value() > 0 ? Optional.of(inertia) : Optional.empty();
    }

    private static Measured through(Formula formula, Map<String, Measured> inputs) {
        return Measured.through(formula, name -> Objects.requireNonNull(inputs.get(name), name));
    }
}
