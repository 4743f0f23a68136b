package longthrow.core.cycle;

import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * The room under the piston.
 * @param pistonArea      [m2]
 * @param crank           what moves the piston
 * @param smallest        free volume with the piston at the bottom, parts and oil taken out [m3]
 * @param wallTemperature of case and oil [K]
 * @param conductance     heat that gas and walls exchange by kelvin [W/K]; see {@link #usualConductance}
 */
public record Crankcase(
        double pistonArea, CrankMotion crank, double smallest, double wallTemperature, double conductance) {
    /** Of the gas to walls stirred by crank and oil [W/(m2 K)]: as of forced air at some metres a second; a judgement, the loss hardly feels it. */
    public static final double WALL_COEFFICIENT = 50;

    /**
     * Free volume with the piston at the bottom over displacement where it was not read: from a tight motorcycle case to a roomy sump; a judgement.
     */
    public static final double LEAST_FREE = 1;

    public static final double MOST_FREE = 6;

    public Crankcase {
        Require.positive("piston area [m2]", pistonArea);
        Require.positive("free volume of the crankcase [m3]", smallest);
        Require.within("temperature of the crankcase [K]", wallTemperature, 200, 600);
        Require.notNegative("conductance of the crankcase's walls [W/K]", conductance);
    }

    /** {@link #WALL_COEFFICIENT} over the faces of a cube of that volume. */
    public static double usualConductance(double volume) {
        double edge = Math.cbrt(Require.positive("volume of the crankcase [m3]", volume));
        return WALL_COEFFICIENT * 6 * edge * edge;
    }

    /** Swept [m3]. */
    public double displacement() {
        return pistonArea * crank.stroke();
    }

    /** Free volume [m3] by crank angle [rad] from the crank along the cylinder. */
    public double volume(double angle) {
        return smallest + pistonArea * (crank.stroke() - crank.travel(angle));
    }

    /** [m3/rad]. */
    public double volumeSlope(double angle) {
        return -pistonArea * crank.travelSlope(angle);
    }

    Crankcase withSmallest(double volume) {
        return new Crankcase(pistonArea, crank, volume, wallTemperature, conductance);
    }

    /**
     * What the case breathes by.
     * @param out      effective area outwards [m2], 0 or above
     * @param in       inwards; for a check valve that of its leak, 0 if it is tight
     * @param cracking pressure over the outside at which it opens outwards [Pa], 0 for a hole
     */
    public record Breather(double out, double in, double cracking) {
        public Breather {
            Require.notNegative("area of the breather outwards [m2]", out);
            Require.notNegative("area of the breather inwards [m2]", in);
            Require.within("opening pressure of the breather [Pa]", cracking, 0, 50e3);
        }

        /** Open both ways. */
        public static Breather hole(double area) {
            return new Breather(area, area, 0);
        }

        /** Reed or ball that shuts tight. */
        public static Breather checkValve(double area, double cracking) {
            return new Breather(area, 0, cracking);
        }
    }

    /**
     * What is outside, and what comes past the rings.
     * @param pressure    behind the breather [Pa]
     * @param temperature there [K]
     * @param blowBy      past the rings, mean over the cycle [kg/s]
     * @param blowByTemperature as it comes [K]
     */
    public record Around(double pressure, double temperature, double blowBy, double blowByTemperature) {
        public Around {
            Require.positive("pressure outside the breather [Pa]", pressure);
            Require.positive("temperature outside the breather [K]", temperature);
            Require.notNegative("blow-by [kg/s]", blowBy);
            Require.positive("temperature of the blow-by [K]", blowByTemperature);
        }
    }
}
