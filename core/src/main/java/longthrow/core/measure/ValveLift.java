package longthrow.core.measure;

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

    /**
     * One place.
     * @param angle of the crank, from a zero of its own [rad]
     * @param lift  of the valve [m]
     * @param bend  second derivative of the lift by crank angle [m/rad2], with its doubt at this one place
     */
    public record Place(double angle, double lift, Measured bend) {}
}
