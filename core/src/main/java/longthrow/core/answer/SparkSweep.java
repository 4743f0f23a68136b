package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.measurement.Measured;

/**
 * What the spark does at one speed and full throttle. Angles of the crank, before top dead centre positive [rad]; torque is told as if it did not knock.
 * @param speed       of the crank [rad/s]
 * @param set         spark as it was read; empty where it was not
 * @param points      that were run, by rising advance
 * @param best        advance of most torque
 * @param limited     advance at which the octane number wanted reaches that of the fuel
 * @param margin      limited less set
 * @param octaneDoubt what the doubt of the knocking formula's octane number is worth at the limit, standard [rad]; NaN where no limit was found
 * @param steps       of offset keys as the trade sells them
 * @param missing     what would have to be told for the margin; empty where it is known
 * @param said        what it comes to, in plain words
 */
public record SparkSweep(
        double speed,
        Optional<Measured> set,
        List<Point> points,
        Spot best,
        Spot limited,
        Spot margin,
        double octaneDoubt,
        List<Step> steps,
        List<Rung.Missing> missing,
        String said) {
    public SparkSweep {
        points = List.copyOf(points);
        steps = List.copyOf(steps);
        missing = List.copyOf(missing);
    }

    /**
     * One advance that was run.
     * @param advance            [rad]
     * @param torque             [N m]
     * @param octaneWanted       NaN where none is told of the fuel
     * @param halfBurned         after top dead centre [rad]
     * @param peakPressure       [Pa]
     * @param exhaustTemperature as it leaves the cylinder [K]
     */
    public record Point(
            double advance,
            double torque,
            double octaneWanted,
            double halfBurned,
            double peakPressure,
            double exhaustTemperature) {}

    /** Where something lies to what was run. */
    public enum Side {
        /** Within what was run. */
        AT("at"),
        /** Beyond the earliest spark that was run; a margin is larger. */
        EARLIER_THAN("earlier than"),
        /** Beyond the latest spark that was run; a margin is smaller. */
        LATER_THAN("later than"),
        UNKNOWN("unknown");

        private final String label;

        Side(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * An angle that was sought.
     * @param angle it, or the end of what was run that it lies beyond [rad]; empty where unknown
     */
    public record Spot(Side side, Optional<Measured> angle) {
        public static final Spot UNKNOWN = new Spot(Side.UNKNOWN, Optional.empty());

        public Spot {
            if ((side == Side.UNKNOWN) == angle.isPresent()) {
                throw new IllegalArgumentException("a spot " + side.label() + " with angle " + angle);
            }
        }
    }

    /**
     * An offset key.
     * @param shift   from the straight key, earlier positive [rad]
     * @param advance with it [rad]
     * @param gain    torque with it over torque now, less 1
     * @param spare   octane number of the fuel less that wanted with it; empty where either is not known
     * @param against what speaks against it; empty where it is not earlier than now, or surely (at 95 %) has octane number to spare
     */
    public record Step(double shift, double advance, double gain, Optional<Measured> spare, String against) {
        /** Whether nothing speaks against it at this speed. */
        public boolean isAllowed() {
            return against.isEmpty();
        }
    }
}
