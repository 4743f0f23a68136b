package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * How an engine runs.
 * @param speed        mean, of the crankshaft [rad/s]
 * @param spark        when it jumps
 * @param surroundings what it breathes
 */
public record Setting(double speed, Spark spark, Surroundings surroundings) {
    public Setting {
        Require.positive("speed of the crankshaft [rad/s]", speed);
    }

    public Setting sparked(Spark spark) {
        return new Setting(speed, spark, surroundings);
    }
}
