package longthrow.core.life;

import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * A gas trace that no sound engine of this compression ratio rises above, from the crank and the ratio alone; the bore enters where the force is made.
 *
 * <p>Why it bounds. The cylinder is full at bottom dead centre with a charge at room temperature and the stated pressure. Compression and expansion
 * leak nothing and warm no wall: {@value #COMPRESSION} is the isentropic exponent of cold air, above that of any mixture; {@value #EXPANSION} is that of
 * equilibrium products between top and bottom dead centre, below that of any real expansion that cools. All the charge is burnt at constant volume, as from
 * {@link #EARLIEST_BURN} before top dead centre on: on the way up the burnt charge follows the same line as on the way down. The heat is that
 * of a petrol and air mixture burnt to equilibrium: p3/p1 times T1 over the ratio comes to 3109 to 3144 K in fuel-air cycles with isooctane and ethanol at
 * ratios of 8 to 11 (Heywood 1988, section 5.5.3, computed with NASA polynomials; the reference rows are in the tests), and {@value #BURNT} K leaves 5 %
 * for rich mixtures and higher ratios. Real flames burn 50 degrees long and lose a tenth to the walls: their peaks are about 0.6 of this.
 *
 * <p>Where it does not bound: knock that rings, nitrous or other oxygen carriers, blowers, and a charge denser than stated. Blowdown and the gas
 * strokes are at crankcase pressure here; where the least gas is the worst, {@link GasTrace#overrun} is the bound.
 *
 * @param crank              motion of the piston
 * @param compressionRatio   static, &gt; 1
 * @param trappedPressure    at bottom dead centre [Pa], &gt; 0
 * @param trappedTemperature at bottom dead centre [K], &gt; 0
 */
public record BoundingGas(CrankMotion crank, double compressionRatio, double trappedPressure, double trappedTemperature)
        implements GasTrace {
    /** Isentropic exponent on the way up. */
    public static final double COMPRESSION = 1.40;

    /** Exponent on the way down; 1.2006 between the two dead centres of the fuel-air cycle at a ratio of 8. */
    public static final double EXPANSION = 1.20;

    /** Burnt gas at constant volume, as if the number of molecules had not changed [K]. */
    public static final double BURNT = 3300;

    /** Before top dead centre [rad]: 40 degrees, past the earliest spark the trade uses (36 with methanol; common practice, no source). */
    public static final double EARLIEST_BURN = Math.toRadians(40);

    /** Room temperature at which the trapped charge is reckoned [K]: colder than any charge that has met a hot cylinder. */
    public static final double COLD_CHARGE = 300;

    /**
     * Share of the bound that firing reaches in use: a full charge burnt at its best timing comes to 0.53 to 0.59 of it (closed cycles by the first law, Heywood
     * 1988, sections 9.2 and 14.4; the reference rows are in the tests), the quickest cycles to about a fifth more (Heywood, section 9.4.2; from memory).
     */
    public static final double USUAL_SHARE = 0.7;

    public BoundingGas {
        if (!(compressionRatio > 1) || !Double.isFinite(compressionRatio)) {
            throw new IllegalArgumentException("compression ratio is " + compressionRatio + "; it must be above 1");
        }
        Require.positive("trapped pressure [Pa]", trappedPressure);
        Require.positive("trapped temperature [K]", trappedTemperature);
    }

    /** Unblown, at sea level. */
    public static BoundingGas of(CrankMotion crank, double compressionRatio) {
        return new BoundingGas(crank, compressionRatio, STANDARD_ATMOSPHERE, COLD_CHARGE);
    }

    /** Highest pressure, absolute [Pa]. */
    public double peak() {
        return trappedPressure * compressionRatio * BURNT / trappedTemperature;
    }

    @Override
    public double gauge(double angle) {
        double turned = Math.IEEEremainder(angle, CYCLE); // half a cycle each side of firing
        double bottom = crank.bottomDeadCentre();
        if (turned > bottom || turned < bottom - 2 * Math.PI) {
            return 0;
        }
        double share = crank.travel(turned) / crank.stroke();
        double shrunk = 1 + (compressionRatio - 1) * share; // volume over clearance volume
        double absolute = turned < -EARLIEST_BURN
                ? trappedPressure * Math.pow(compressionRatio / shrunk, COMPRESSION)
                : peak() * Math.pow(shrunk, -EXPANSION);
        return absolute - STANDARD_ATMOSPHERE;
    }
}
