package longthrow.core.pipe;

import longthrow.core.gas.PipeGas;

/** A mixture of the two gases of a pipe at one temperature, reckoned again and again without making anything new. */
final class Gas {
    private final double gasFresh;
    private final double gasMore;
    private final double aFresh;
    private final double aMore;
    private final double bFresh;
    private final double bMore;

    /** [J/(kg K)]. */
    double gasConstant;

    /** Ratio of specific heats. */
    double gamma;

    /** [K]. */
    double temperature;

    private double a;
    private double b;

    Gas(PipeGases gases) {
        PipeGas fresh = gases.fresh();
        PipeGas burned = gases.burned();
        gasFresh = fresh.gasConstant();
        gasMore = burned.gasConstant() - gasFresh;
        aFresh = fresh.a();
        aMore = burned.a() - aFresh;
        bFresh = fresh.b();
        bMore = burned.b() - bFresh;
    }

    private void mix(double burned) {
        gasConstant = gasFresh + gasMore * burned;
        a = aFresh + aMore * burned;
        b = bFresh + bMore * burned;
    }

    void atTemperature(double burned, double warmth) {
        mix(burned);
        temperature = warmth;
        gamma = 1 + gasConstant / (a + b * warmth);
    }

    void atDensity(double burned, double density, double pressure) {
        mix(burned);
        temperature = pressure / (density * gasConstant);
        gamma = 1 + gasConstant / (a + b * temperature);
    }

    /** By enthalpy over 0 K of the law [J/kg]. */
    void atEnthalpy(double burned, double enthalpy) {
        mix(burned);
        double c = a + gasConstant;
        temperature = 2 * enthalpy / (c + Math.sqrt(c * c + 2 * b * enthalpy));
        gamma = 1 + gasConstant / (a + b * temperature);
    }

    /** Of this mixture at any temperature, over 0 K of the law [J/kg]. */
    double energy(double warmth) {
        return warmth * (a + 0.5 * b * warmth);
    }

    double enthalpy(double warmth) {
        return warmth * (a + gasConstant + 0.5 * b * warmth);
    }

    /** By energy over 0 K of the law [J/kg]. */
    void atEnergy(double burned, double energy) {
        mix(burned);
        temperature = 2 * energy / (a + Math.sqrt(a * a + 2 * b * energy));
        gamma = 1 + gasConstant / (a + b * temperature);
    }
}
