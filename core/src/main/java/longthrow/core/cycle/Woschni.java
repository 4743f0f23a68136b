package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * h = 3.26 B^-0.2 p^0.8 T^-0.55 w^0.8 with p in kPa and w = C1 Sp + C2 Vd Tr / (pr Vr) (p - pm), pm the motored pressure: G. Woschni, SAE 670931 (1967), as in Heywood (1988),
 * eqs. 12.17 to 12.19. C1 is 6.18 in gas exchange and 2.28 in the closed cylinder (no swirl); C2 is 0 but for burning and expansion, there 3.24e-3 m/(s K). Swirl is left out.
 * 6.18 and 2.28 were read in a course text, the rest is from memory. Made from diesel engines.
 */
public final class Woschni implements WallHeat {
    private static final double EXCHANGE_SPEED = 6.18;
    private static final double CLOSED_SPEED = 2.28;

    /** [m/(s K)]. */
    private static final double FIRE_SPEED = 3.24e-3;

    private static final double KILOPASCAL = 1e-3;

    private final double factor;
    private final double displacement;
    private final double pistonSpeed;

    /**
     * At one speed of one engine.
     * @param bore         [m], above 0
     * @param displacement swept volume [m3], above 0
     * @param pistonSpeed  mean, [m/s], above 0
     */
    public Woschni(double bore, double displacement, double pistonSpeed) {
        this.factor = 3.26 * Math.pow(Require.positive("bore [m]", bore), -0.2);
        this.displacement = Require.positive("displacement [m3]", displacement);
        this.pistonSpeed = Require.positive("mean piston speed [m/s]", pistonSpeed);
    }

    /** Mean gas speed w [m/s]. */
    public double gasSpeed(GasAtWall gas) {
        return switch (gas.phase) {
            case GAS_EXCHANGE -> EXCHANGE_SPEED * pistonSpeed;
            case COMPRESSION -> CLOSED_SPEED * pistonSpeed;
            case BURNING ->
                CLOSED_SPEED * pistonSpeed
                        + FIRE_SPEED
                                * displacement
                                * gas.referenceTemperature
                                / (gas.referencePressure * gas.referenceVolume)
                                * Math.max(0, gas.pressure - gas.motoredPressure);
        };
    }

    @Override
    public double coefficient(GasAtWall gas) {
        double stirred = KILOPASCAL * gas.pressure * gasSpeed(gas);
        return factor * Math.exp(0.8 * Math.log(stirred) - 0.55 * Math.log(gas.temperature));
    }
}
