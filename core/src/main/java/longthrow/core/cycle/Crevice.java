package longthrow.core.cycle;

import longthrow.core.gas.PublishedValue;
import longthrow.core.quantity.Require;

/**
 * The narrow rooms of the chamber that no flame enters: above and behind the top ring first of all, then gasket, plug thread and valve seats. Gas in them has the pressure of the cylinder and the temperature of the wall, so that
 * near the peak they hold several times their share of the volume. M. Namazian and J. B. Heywood, SAE 820088 (1982); Heywood (1988), 8.6 and 11.4.3 (both from memory).
 *
 * <p>What goes in is the charge that the flame has not reached as long as there is some, then burned gas. What comes back from it burns where the gas it meets is hotter than {@link #BURNS_ABOVE}; what never burns stands in
 * {@link CombustionEfficiency#BURNS}. Past the rings nothing is lost here.
 * @param volume      [m3]
 * @param temperature of its walls [K]
 */
public record Crevice(double volume, double temperature) {
    /**
     * Of the volume that is swept: the room at the rings does not know the chamber above it, so that a higher ratio has more of it in its clearance. Published is 1 to 2 % of the clearance volume of car engines; with the ratio
     * of 8.5 that they had (judgement) the swept volume is 7.5 times that.
     */
    public static final PublishedValue SHARE = new PublishedValue(
            0.015 / 7.5,
            0.01 / 7.5,
            0.02 / 7.5,
            "Heywood (1988), 8.6 and 11.4.3: 1 to 2 % of the clearance volume, from memory; taken at a ratio of 8.5");

    /** Charge that comes out of crevices burns within a few degrees in gas hotter than this [K]: Heywood (1988), 11.4.3, from memory. */
    static final double BURNS_ABOVE = 1400;

    /** With less than this of the charge unburned, burned gas stands at the rings; judgement. */
    static final double REACHED = 0.05;

    public Crevice {
        Require.notNegative("volume of the crevices [m3]", volume);
        Require.positive("temperature of the crevices' walls [K]", temperature);
    }

    /** None, as textbooks have it. */
    static Crevice none() {
        return new Crevice(0, 400);
    }

    /**
     * Between piston and sleeve, as warm as the mean of the two.
     * @param share of the volume that is swept
     */
    static Crevice of(double share, CylinderSpace space, Walls walls) {
        return new Crevice(share * space.displacement(), 0.5 * (walls.crown() + walls.sleeve()));
    }
}
