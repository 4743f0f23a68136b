package longthrow.core.measure;

import java.util.Comparator;
import java.util.List;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Part;

/**
 * How far and how hard one valve is moved, place by place, for sums on springs and loads.
 * @param valve    intake or exhaust
 * @param from     place of the lift table in the build file, or {@link longthrow.core.answer.ValveMovement#LOBE_FIGURES}
 * @param places   where the valve is off its seat, by rising angle, closely
 * @param full     lift [m]
 * @param nose     most negative second derivative over the nose, by crank angle [m/rad2], with the doubt of the extreme
 * @param defaults what is taken for granted of the motion
 */
public record ValveLift(
        Part valve, String from, List<Place> places, Measured full, Measured nose, List<DefaultUsed> defaults) {
    public ValveLift {
        places = List.copyOf(places);
        defaults = List.copyOf(defaults);
    }

    /** Angle of the first place off the seat; there must be one. */
    public double first() {
        return places.get(0).angle();
    }

    /** Of the last. */
    public double last() {
        return places.get(places.size() - 1).angle();
    }

    /** Where it lifts most; 0 where nothing lifts. */
    public double peakAngle() {
        return places.stream()
                .max(Comparator.comparingDouble(Place::lift))
                .map(Place::angle)
                .orElse(0.0);
    }

    /** Lift [m] at an angle as the places count, straight between them; 0 beyond. */
    public double at(double angle) {
        if (places.size() < 2 || !(angle >= first() && angle <= last())) {
            return 0;
        }
        int low = 0;
        int high = places.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (places.get(middle).angle() <= angle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Place a = places.get(low);
        Place b = places.get(high);
        return a.lift() + (b.lift() - a.lift()) * (angle - a.angle()) / (b.angle() - a.angle());
    }

    /** Slope of the lift [m/rad] at an angle between the first place and the last, by the places beside it. */
    public double slope(double angle) {
        double step = (last() - first()) / (places.size() - 1);
        double low = Math.max(first(), angle - step);
        double high = Math.min(last(), angle + step);
        return (at(high) - at(low)) / (high - low);
    }

    /**
     * One place.
     * @param angle of the crank, from a zero of its own [rad]
     * @param lift  of the valve [m]
     * @param bend  second derivative of the lift by crank angle [m/rad2], with its doubt at this one place
     */
    public record Place(double angle, double lift, Measured bend) {}
}
