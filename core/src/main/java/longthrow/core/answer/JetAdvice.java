package longthrow.core.answer;

import java.util.List;
import java.util.Optional;
import longthrow.core.measurement.Measured;

/**
 * What the main jet becomes at the place, in the weather and on the fuel that the engine is to run on, from where the present jet was right. Full throttle, same mixture.
 * @param change   empty where something is missing
 * @param buy      the next jet or drill to be had, to the rich side; empty where the present one's number or bore is not known
 * @param missing  what would have to be written; empty where the change is known
 * @param read     what tells on the engine whether it is right
 * @param cautions that stand beside it
 * @param said     what it comes to, in plain words
 */
public record JetAdvice(
        Optional<Change> change,
        List<Buy> buy,
        List<Rung.Missing> missing,
        List<String> read,
        List<String> cautions,
        String said) {
    public JetAdvice {
        buy = List.copyOf(buy);
        missing = List.copyOf(missing);
        read = List.copyOf(read);
        cautions = List.copyOf(cautions);
        if (change.isPresent() != missing.isEmpty()) {
            throw new IllegalArgumentException("a change of jet with " + missing.size() + " things missing");
        }
    }

    /**
     * After over before, all without unit.
     * @param area       of the jet's hole
     * @param diameter   of it
     * @param air        density of the dry air
     * @param heat       that a kilogram of air sets free with just enough fuel
     * @param volume     of fuel for the same air
     * @param asFlow     number of the jet, where it counts flow
     * @param asDiameter number of the jet, where it counts diameter
     */
    public record Change(
            Measured area,
            Measured diameter,
            double air,
            double heat,
            double volume,
            Numbered asFlow,
            Numbered asDiameter) {}

    /**
     * What to get.
     * @param what      that is counted: hundredths of a millimetre and the like, of the number or of a drill
     * @param present   in that
     * @param next      in that
     * @param fuelShare fuel that it passes over what is wanted, 1 or above
     */
    public record Buy(String what, double present, double next, double fuelShare) {}

    /**
     * Of a jet, after over before.
     * @param physics where to start
     * @param leanest and richest what physics with its doubt at 95 % and the rule of the trade come to
     */
    public record Numbered(double physics, double leanest, double richest) {}
}
