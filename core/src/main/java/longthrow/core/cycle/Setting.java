package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * How an engine runs.
 * @param speed        mean, of the crankshaft [rad/s]
 * @param spark        before firing top dead centre [rad]
 * @param surroundings what it breathes
 */
public record Setting(double speed, double spark, Surroundings surroundings) {
    public Setting {
        Require.positive("speed of the crankshaft [rad/s]", speed);
        Require.within("spark before top dead centre [rad]", spark, -0.5, 1.5);
    }

    public Setting sparkedAt(double spark) {
        return new Setting(speed, spark, surroundings);
    }
}
