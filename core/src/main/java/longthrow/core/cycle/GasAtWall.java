package longthrow.core.cycle;

/**
 * What the formulas of wall heat ask of the gas at one moment. A caller keeps one, writes its fields anew at every step and hands it over; nothing is allocated and nothing is
 * checked: all are finite and above 0.
 */
public final class GasAtWall {
    /** [Pa]. */
    public double pressure;

    /** Mean over the mass of all zones [K]. */
    public double temperature;

    /** [m3]. */
    public double volume;

    /** That the cylinder would have now without burning, from the same state at intake closing [Pa]; asked for while burning and expanding only. */
    public double motoredPressure;

    /** Pressure [Pa], temperature [K] and volume [m3] of one moment of the closed cylinder before the spark, such as intake closing. */
    public double referencePressure;

    public double referenceTemperature;
    public double referenceVolume;

    /** Mean over the wall that the gas touches [K]. */
    public double wallTemperature;

    public Phase phase = Phase.GAS_EXCHANGE;

    /** Which constants hold. */
    public enum Phase {
        /** A valve is open. */
        GAS_EXCHANGE,
        /** Closed, before the spark. */
        COMPRESSION,
        /** Closed, from the spark on. */
        BURNING
    }
}
