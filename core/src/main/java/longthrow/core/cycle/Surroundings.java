package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * What the engine breathes from and into.
 * @param pressure          of the air [Pa]
 * @param intakeTemperature of what enters the mouth of the intake [K]: air, cooled by the fuel that evaporates in it
 * @param airTemperature    [K]
 */
public record Surroundings(double pressure, double intakeTemperature, double airTemperature) {
    public Surroundings {
        Require.positive("pressure of the air [Pa]", pressure);
        Require.positive("temperature of what is breathed in [K]", intakeTemperature);
        Require.positive("temperature of the air [K]", airTemperature);
    }
}
