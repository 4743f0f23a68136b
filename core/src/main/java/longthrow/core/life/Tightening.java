package longthrow.core.life;

import longthrow.core.formula.Expression;
import longthrow.core.quantity.Require;

/**
 * How a bolt was drawn up: what clamp the torque gave, and within what. Most of the torque goes into friction, so the clamp is never known to better than
 * this. Torque over nut factor and diameter: Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. (8-27) and table 8-15; scatter: NSTS 08307
 * (NASA, criteria for preloaded bolts); all from memory. Where lubricant, grade, thread metal or number of tightenings is not known, nothing
 * is reckoned: that is for whoever asks.
 */
public enum Tightening {
    TORQUE_DRY("by torque, dry, not plated", 0.30, 0.35),
    TORQUE_ZINC("by torque, dry, zinc plated", 0.20, 0.35),
    TORQUE_OILED("by torque, oiled", 0.18, 0.30),
    TORQUE_CADMIUM("by torque, cadmium plated", 0.16, 0.30),
    TORQUE_PASTE("by torque, anti-seize paste", 0.12, 0.25),
    /** Drawn up by its measured stretch, whatever the torque: no nut factor. */
    STRETCH("by measured stretch", Double.NaN, 0.10);

    /**
     * Added to the scatter for each tightening after the first: threads bed in and are roughened, and the factor moves either way. Common practice, no
     * source.
     */
    public static final double EACH_AGAIN = 0.02;

    /** Tightenings after which a rod bolt is replaced: part-maker sheets; certainty C, as {@code engine.Fastener} says. */
    public static final int MOST = 5;

    private final String label;
    private final double nutFactor;
    private final double scatter;

    Tightening(String label, double nutFactor, double scatter) {
        this.label = label;
        this.nutFactor = nutFactor;
        this.scatter = scatter;
    }

    public String label() {
        return label;
    }

    /** Whether a torque tells the clamp at all. */
    public boolean isByTorque() {
        return this != STRETCH;
    }

    /**
     * Clamp that a torque gives [N], in the middle of its scatter.
     * @param torque   [N m]
     * @param diameter outside, of the thread [m]
     * @throws IllegalStateException when it was not drawn up by torque
     */
    public Expression preload(Expression torque, Expression diameter) {
        if (!isByTorque()) {
            throw new IllegalStateException(
                    "a bolt drawn up by its stretch has no clamp by torque; give the stretch instead");
        }
        return torque.dividedBy(diameter.times(nutFactor));
    }

    /** Torque for a clamp, Shigley eq. (8-27) [N m]. */
    public static Expression torque(Expression nutFactor, Expression preload, Expression diameter) {
        return nutFactor.times(preload).times(diameter);
    }

    /**
     * Half-width of the clamp as a share of its middle, nearly all bolts within it.
     * @param tightenings of this bolt, this one included: 1 to {@value #MOST}
     * @throws IllegalArgumentException when it was drawn up more often and must be replaced
     */
    public double scatter(int tightenings) {
        Require.within("tightenings of a rod bolt", tightenings, 1, MOST);
        return scatter + EACH_AGAIN * (tightenings - 1);
    }

    /** Clamp by stretch [N]: stretch times stiffness. */
    public static Expression preloadByStretch(Expression stretch, Expression boltStiffness) {
        return stretch.times(boltStiffness);
    }
}
