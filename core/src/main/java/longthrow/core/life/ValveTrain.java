package longthrow.core.life;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.quantity.Require;

/**
 * Spring against inertia over the whole lift, at the valve, the train taken as stiff. Newton's law; {@code engine.ValveFloat} is the same at one point,
 * with doubt. Real trains bend: they float a little before this says so (common practice, no source).
 * @param mass     that the spring must turn back, see {@link #equivalentMass} [kg], &gt; 0
 * @param seatLoad of the spring, valve shut [N], &gt; 0
 * @param rate     [N/m], &gt; 0
 */
public record ValveTrain(double mass, double seatLoad, double rate) {
    public ValveTrain {
        Require.positive("equivalent mass [kg]", mass);
        Require.positive("seat load [N]", seatLoad);
        Require.positive("rate of the spring [N/m]", rate);
    }

    /** Share of a spring's mass that moves as the retainer does: one third; Shigley section 10-8 for slow motion; from memory. */
    public static final double SPRING_SHARE = 1.0 / 3;

    /**
     * One place of the lift curve.
     * @param angle of the crank [rad]
     * @param lift  of the valve [m]
     * @param bend  second derivative of the lift by crank angle [m/rad2], below 0 where the spring is at work
     */
    public record Place(double angle, double lift, double bend) {}

    /**
     * Where it lets go first.
     * @param place of the lift curve
     * @param speed of the crank at which the spring just follows there [rad/s]
     */
    public record FirstFloat(Place place, double speed) {}

    /**
     * All that moves, as if it sat at the valve [kg].
     * @param rocker      by its inertia over the square of its valve arm, as much as sits at the valve
     * @param pushrodSide pushrod and tappet
     * @param ratio       valve travel over pushrod travel; 1 without rocker
     */
    public static Expression equivalentMass(
            Expression valve,
            Expression retainer,
            Expression spring,
            Expression rocker,
            Expression pushrodSide,
            Expression ratio) {
        return Expression.sum(
                valve, retainer, spring.times(SPRING_SHARE), rocker, pushrodSide.dividedBy(ratio.squared()));
    }

    /** Load of the spring at a lift [N]. */
    public double springLoad(double lift) {
        return seatLoad + rate * lift;
    }

    /**
     * First place to float as speed rises; empty when the valve is never slowed down.
     * @param places over the whole lift
     */
    public Optional<FirstFloat> firstFloat(List<Place> places) {
        return places.stream()
                .filter(place -> place.bend < 0)
                .map(place -> new FirstFloat(place, Math.sqrt(springLoad(place.lift) / (mass * -place.bend))))
                .min(Comparator.comparingDouble(FirstFloat::speed));
    }

    /**
     * Load of the spring over what it takes, less 1, where that is least: 0.2 is a margin of 20 %. Infinite when nothing is taken.
     * @param speed of the crank [rad/s]
     */
    public double margin(List<Place> places, double speed) {
        return firstFloat(places)
                .map(first -> first.speed * first.speed / (speed * speed) - 1)
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Force between valve and rocker, or follower [N]; below 0 the train is apart. */
    public double contactForce(Place place, double speed) {
        return springLoad(place.lift) + mass * place.bend * speed * speed;
    }

    /** Largest of it over the lift: the flank at speed, or the nose when turned over slowly. */
    public double largestContactForce(List<Place> places, double speed) {
        return places.stream()
                .mapToDouble(place -> contactForce(place, speed))
                .max()
                .orElseThrow(() -> new IllegalArgumentException("a lift curve without places has no largest force"));
    }

    /**
     * The same force below the rocker: on pushrod, tappet and lobe [N].
     * @param ratio valve travel over pushrod travel
     */
    public static double belowRocker(double contactForce, double ratio) {
        return contactForce * ratio;
    }
}
