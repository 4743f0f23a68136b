package longthrow.core.life;

import java.util.List;
import longthrow.core.engine.LineContact;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.motion.FlatFollower;
import longthrow.core.quantity.Require;

/**
 * Pressure between lobe and flat tappet over the lift: line contact of the lobe's curvature at each place with the force that spring and inertia make there.
 * Johnson, Contact Mechanics (1985), section 4.2, through {@code engine.LineContact}. The spring alone presses hardest on the nose when it turns slowly.
 * @param baseRadius of the lobe's base circle [m], &gt; 0
 * @param face       width in touch [m], &gt; 0
 * @param ratio      valve travel over tappet travel, &gt; 0
 * @param modulus    E* of both materials [Pa], &gt; 0, see {@code engine.LineContact}
 */
public record LobeContact(double baseRadius, double face, double ratio, double modulus) {
    private static final Formula PRESSURE = Formula.of(
            "lobe pressure",
            LineContact.largestPressure(
                    Expression.input("load"),
                    Expression.input("radius"),
                    Expression.input("length"),
                    Expression.input("modulus")));

    public LobeContact {
        Require.positive("radius of the base circle [m]", baseRadius);
        Require.positive("width of the lobe in touch [m]", face);
        Require.positive("rocker ratio", ratio);
        Require.positive("elastic modulus of the contact [Pa]", modulus);
    }

    /** Radius of curvature of the lobe where it touches [m]; crank angles count twice those of the cam. At or below 0 no flat tappet can follow. */
    public double radius(ValveTrain.Place place) {
        return FlatFollower.curvatureRadius(baseRadius, place.lift() / ratio, 4 * place.bend() / ratio);
    }

    /**
     * Largest pressure at a place [Pa]; 0 where the train is apart, infinite where the lobe comes to a point.
     * @param speed of the crank [rad/s]
     */
    public double pressure(ValveTrain train, ValveTrain.Place place, double speed) {
        double load = ValveTrain.belowRocker(train.contactForce(place, speed), ratio);
        if (load <= 0) {
            return 0;
        }
        double radius = radius(place);
        return radius > 0
                ? PRESSURE.at(input -> switch (input) {
                    case "load" -> load;
                    case "radius" -> radius;
                    case "length" -> face;
                    default -> modulus;
                })
                : Double.POSITIVE_INFINITY;
    }

    /** Largest over the lift [Pa]. */
    public double largest(ValveTrain train, List<ValveTrain.Place> places, double speed) {
        return places.stream()
                .mapToDouble(place -> pressure(train, place, speed))
                .max()
                .orElseThrow(() -> new IllegalArgumentException("a lift curve without places has no largest pressure"));
    }
}
