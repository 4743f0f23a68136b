package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * Temperatures of what surrounds the gas, mean over the cycle [K].
 * @param head   with the valves in it
 * @param crown  of the piston
 * @param sleeve that the piston uncovers
 */
public record Walls(double head, double crown, double sleeve) {
    public Walls {
        Require.positive("temperature of the head [K]", head);
        Require.positive("temperature of the crown [K]", crown);
        Require.positive("temperature of the sleeve [K]", sleeve);
    }

    /** All of one temperature [K]. */
    public static Walls of(double temperature) {
        return new Walls(temperature, temperature, temperature);
    }
}
