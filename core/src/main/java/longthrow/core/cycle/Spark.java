package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/** When the spark jumps. */
public sealed interface Spark {
    /** Earliest and latest that is sought [rad before top dead centre]: 60 degrees is more than any petrol engine of this size was given, common practice, no source. */
    double EARLIEST = Math.toRadians(60) * (1 + 1e-12); // 60 degrees as written may come out a last digit higher

    double LATEST = Math.toRadians(-10) * (1 + 1e-12);

    /** First guess where it is sought. */
    double FIRST = Math.toRadians(28);

    /**
     * By the key, or a map read at one speed.
     * @param before firing top dead centre [rad]
     */
    record Fixed(double before) implements Spark {
        public Fixed {
            Require.within("spark before top dead centre [rad]", before, LATEST, EARLIEST);
        }
    }

    /**
     * Wherever half of the charge has burned at this angle, as it has with the spark that gives most torque.
     * @param after firing top dead centre [rad]
     */
    record HalfBurnedAt(double after) implements Spark {
        /** 7 to 10 degrees (ranges of references/engines, Heywood 1988, 9.2, from memory): the middle. */
        public static final double BEST = Math.toRadians(8.5);

        public HalfBurnedAt {
            Require.within("half burned after top dead centre [rad]", after, 0, 0.6);
        }

        /** For most torque. */
        public static HalfBurnedAt best() {
            return new HalfBurnedAt(BEST);
        }
    }

    /** Fixed, in degrees before top dead centre. */
    static Spark degrees(double before) {
        return new Fixed(Math.toRadians(before));
    }
}
