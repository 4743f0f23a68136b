package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * Something in the way that narrows it for a moment: a throttle, a restrictor plate, the mouth of a silencer's inner pipe.
 * @param area effective, that is with the contraction of the jet in it [m2]
 */
public record Plate(double area) implements Piece {
    public Plate {
        Require.positive("effective area of a plate [m2]", area);
    }

    /** A round hole without contraction, by its diameter [m]. */
    public static Plate hole(double diameter) {
        return new Plate(0.25 * Math.PI * diameter * diameter);
    }
}
