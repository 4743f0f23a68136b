package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * A room in which the gas comes to rest: airbox, silencer.
 * @param volume      [m3]
 * @param surface     of its wall [m2]
 * @param wall        temperature of it [K]
 * @param coefficient of heat to the wall [W/(m2 K)], 0 where that is not counted
 */
public record Plenum(double volume, double surface, double wall, double coefficient) implements Piece {
    public Plenum {
        Require.positive("volume of a plenum [m3]", volume);
        Require.notNegative("surface of a plenum [m2]", surface);
        Require.positive("temperature of a plenum's wall [K]", wall);
        Require.notNegative("coefficient of heat [W/(m2 K)]", coefficient);
    }

    /** No heat counted. */
    public static Plenum of(double volume) {
        return new Plenum(volume, 0, 300, 0);
    }
}
