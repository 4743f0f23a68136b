package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * h = 130 V^-0.06 p^0.8 T^-0.4 (Sp + 1.4)^0.8 with p in bar and V in m3: G. F. Hohenberg, SAE 790825 (1979), constants from memory. One form for the whole cycle. Made from diesel engines
 * of several sizes.
 */
public final class Hohenberg implements WallHeat {
    private static final double BAR = 1e5;

    private final double factor;

    /**
     * At one speed.
     * @param pistonSpeed mean, [m/s], above 0
     */
    public Hohenberg(double pistonSpeed) {
        this.factor = 130 * Math.pow(Require.positive("mean piston speed [m/s]", pistonSpeed) + 1.4, 0.8);
    }

    @Override
    public double coefficient(GasAtWall gas) {
        return factor
                * Math.exp(0.8 * Math.log(gas.pressure / BAR)
                        - 0.4 * Math.log(gas.temperature)
                        - 0.06 * Math.log(gas.volume));
    }
}
