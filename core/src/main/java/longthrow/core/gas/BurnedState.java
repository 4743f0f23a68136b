package longthrow.core.gas;

/**
 * What a cylinder asks of burned gas at one temperature and pressure, written into its caller's own object so that nothing is allocated. Belongs to one thread.
 * Derivatives are those of the same smooth function as the values.
 */
public final class BurnedState {
    /** Above the elements at 298.15 K [J/kg]. */
    public double internalEnergy;

    /** Its derivative by temperature at constant pressure [J/(kg K)]. */
    public double energyByTemperature;

    /** Its derivative by the logarithm of the pressure at constant temperature [J/kg]. */
    public double energyByLogPressure;

    /** Molar gas constant over the molar mass [J/(kg K)]. */
    public double gasConstant;

    /** Its derivative by temperature at constant pressure [J/(kg K2)]. */
    public double gasConstantByTemperature;

    /** Its derivative by the logarithm of the pressure at constant temperature [J/(kg K)]. */
    public double gasConstantByLogPressure;
}
