package longthrow.core.power;

import java.util.Objects;

/**
 * What sort of engine it is: all that the usual figures may go by beside bore, stroke and compression.
 * @param use      what it was made for
 * @param cooling  of the cylinder
 * @param layout   of the valves
 * @param intakes  number of intake valves
 * @param exhausts number of exhaust valves
 * @param basis    how its torque is or was told
 */
public record Kind(Use use, Cooling cooling, Layout layout, int intakes, int exhausts, Basis basis) {
    public Kind {
        Objects.requireNonNull(use);
        Objects.requireNonNull(cooling);
        Objects.requireNonNull(layout);
        Objects.requireNonNull(basis);
        if (intakes < 1 || intakes > 3 || exhausts < 1 || exhausts > 2) {
            throw new IllegalArgumentException("an engine of " + intakes + " intake and " + exhausts
                    + " exhaust valves; 1 to 3 and 1 to 2 are told of");
        }
    }

    /** Two valves. */
    public static Kind of(Use use, Cooling cooling, Layout layout, Basis basis) {
        return new Kind(use, cooling, layout, 1, 1, basis);
    }

    /** What it was made for. */
    public enum Use {
        /** Drives a machine at one governed speed. */
        UTILITY,
        /** Moves a vehicle on the road or a trail. */
        ROAD,
        /** Made to win. */
        COMPETITION
    }

    public enum Cooling {
        /** By a fan on the flywheel. */
        FAN,
        /** By the wind of driving. */
        WIND,
        LIQUID
    }

    public enum Layout {
        SIDE_VALVE,
        PUSHROD,
        OVERHEAD_CAM
    }

    /** With what on it, and in which air, torque is told. */
    public enum Basis {
        /** Without air filter and silencer (SAE J1995, formerly J607), 15.6 °C and 101.3 kPa. */
        GROSS,
        /**
         * A maker's own "gross maximum": in the air of J607 (15.6 °C, 101.3 kPa); what was on the engine is not told, so it is taken as it is sold.
         */
        MAKER_GROSS,
        /** As it is sold, filter and silencer on it (SAE J1349), 25 °C and 99 kPa dry. */
        NET,
        /** A vehicle maker's figure at the crankshaft, filter and silencer on it (DIN 70020 and its like), 20 °C and 101.3 kPa. */
        MAKER
    }
}
