package longthrow.core.life;

import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * Turning an engine over by hand: the pull through compression, with and without a release, and whether it can kick back. Quasi-steady gas at
 * cranking speed; friction is left out and comes on top. A rope that is snatched back breaks fingers and wrists: what is said here is the least to
 * reckon with, never leave to stand close.
 *
 * @param crank            motion of the piston
 * @param bore             [m], &gt; 0
 * @param compressionRatio static, &gt; 1
 * @param closes           before top dead centre, where the last of intake valve and release shuts and compression begins [rad], 0 to half a turn
 */
public record Starting(CrankMotion crank, double bore, double compressionRatio, double closes) {
    /** Exponent of cold compression at cranking speed; 1.3 to 1.4 less leaks and walls: the isentropic one is the hardest pull. */
    public static final double EXPONENT = BoundingGas.COMPRESSION;

    /** Gas constant of air [J/(kg K)]; ISO 2533. */
    private static final double AIR = 287.053;

    private static final double SUPPLY = GasTrace.STANDARD_ATMOSPHERE;

    /** Steps of the crank for sums over compression [rad]. */
    private static final double STEP = Math.toRadians(0.1);

    public Starting {
        Require.positive("bore [m]", bore);
        if (!(compressionRatio > 1) || !Double.isFinite(compressionRatio)) {
            throw new IllegalArgumentException("compression ratio is " + compressionRatio + "; it must be above 1");
        }
        Require.within("closing before top dead centre [rad]", closes, 0, Math.PI);
    }

    private double area() {
        return Math.PI / 4 * bore * bore;
    }

    /** Volume above the piston at an angle before top dead centre [m3]. */
    public double volume(double before) {
        double clearance = area() * crank.stroke() / (compressionRatio - 1);
        return clearance + area() * crank.travel(crank.topDeadCentre() - before);
    }

    /** Pressure left above the atmosphere at an angle before top dead centre, nothing leaking [Pa]; 0 before it closes. */
    public double gauge(double before) {
        if (before >= closes) {
            return 0;
        }
        return SUPPLY * (Math.pow(volume(closes) / volume(before), EXPONENT) - 1);
    }

    /** Torque to hold the crank there [N m]. */
    public double torque(double before) {
        return -gauge(before) * area() * crank.travelSlope(crank.topDeadCentre() - before);
    }

    /** Largest of it on the way up [N m]. */
    public double hardestTorque() {
        double hardest = 0;
        for (double before = closes; before >= 0; before -= STEP) {
            hardest = Math.max(hardest, torque(before));
        }
        return hardest;
    }

    /**
     * Pull on the rope that turns it over slowly [N]; a flywheel at speed lowers it.
     * @param pulleyRadius of the rope [m], &gt; 0
     */
    public double hardestPull(double pulleyRadius) {
        return hardestTorque() / Require.positive("radius of the rope pulley [m]", pulleyRadius);
    }

    /** Work from closing to top dead centre against the air outside [J], closed form of the same line. */
    public double work() {
        return work(SUPPLY, closes, EXPONENT);
    }

    private double work(double pressure, double before, double exponent) {
        double from = volume(before);
        double to = volume(0);
        double squeezing = pressure * from / (exponent - 1) * (Math.pow(from / to, exponent - 1) - 1);
        return squeezing - SUPPLY * (from - to);
    }

    /**
     * Work from the spark to top dead centre if all the charge burnt the moment it fired, by the same heat as {@link BoundingGas} [J]: more than any
     * flame asks, which takes thousandths of a second. Without fire it is what is left of {@link #work}.
     * @param spark before top dead centre [rad]
     */
    public double workAfterSpark(double spark, boolean burning) {
        double pressure = gauge(spark) + SUPPLY;
        if (burning) {
            double trapped = volume(Math.max(closes, spark));
            pressure = SUPPLY * trapped / volume(spark) * BoundingGas.BURNT / BoundingGas.COLD_CHARGE;
        }
        return Math.max(0, work(pressure, spark, EXPONENT));
    }

    /**
     * Crank speed at the spark from which the flywheel carries it over top dead centre [rad/s]. With {@code burning} it cannot kick back above this; below the speed
     * without, it does not even pass the compression; between them it depends on how fast the flame is.
     * @param inertia of all that turns [kg m2], &gt; 0
     */
    public double speedToPass(double inertia, double spark, boolean burning) {
        return Math.sqrt(2 * workAfterSpark(spark, burning) / Require.positive("inertia [kg m2]", inertia));
    }

    /**
     * Pressure at top dead centre while a release leaks all the way, above the atmosphere [Pa]. Air as a perfect gas through a round-edged hole, choked where it must be: Saint-Venant and
     * Wantzel; Heywood, Internal Combustion Engine Fundamentals (1988), appendix C. Nothing is lost to the walls.
     * @param leak  effective area: of the gap times its flow coefficient [m2], &ge; 0
     * @param speed of cranking [rad/s], &gt; 0
     */
    public double gaugeWithRelease(double leak, double speed) {
        return released(leak, speed).gauge;
    }

    /** Hardest torque on the way up while a release leaks all the way [N m]; as {@link #gaugeWithRelease}. */
    public double hardestTorqueWithRelease(double leak, double speed) {
        return released(leak, speed).torque;
    }

    private record Released(double gauge, double torque) {}

    private Released released(double leak, double speed) {
        Require.notNegative("effective area of the release [m2]", leak);
        Require.positive("cranking speed [rad/s]", speed);
        double pressure = SUPPLY;
        double hardest = 0;
        double mass = SUPPLY * volume(closes) / (AIR * BoundingGas.COLD_CHARGE);
        int steps = (int) Math.ceil(closes / STEP);
        double step = closes / Math.max(1, steps);
        for (int k = 0; k < steps; k++) {
            double before = closes - k * step;
            double volume = volume(before);
            double next = volume(before - step);
            double squeezed = pressure * Math.pow(volume / next, EXPONENT);
            double temperature = squeezed * next / (AIR * mass);
            double lost = Math.min(0.5 * mass, outflow(squeezed, temperature, leak) * step / speed);
            double left = mass - lost;
            pressure = Math.max(SUPPLY, squeezed * Math.pow(left / mass, EXPONENT));
            mass = pressure > SUPPLY ? left : Math.min(mass, SUPPLY * next / (AIR * BoundingGas.COLD_CHARGE));
            double slope = crank.travelSlope(crank.topDeadCentre() - before + step);
            hardest = Math.max(hardest, -(pressure - SUPPLY) * area() * slope);
        }
        return new Released(pressure - SUPPLY, hardest);
    }

    /** Mass flow to the open air [kg/s]. */
    private static double outflow(double pressure, double temperature, double leak) {
        double gamma = EXPONENT;
        double ratio = Math.max(SUPPLY / pressure, Math.pow(2 / (gamma + 1), gamma / (gamma - 1)));
        if (ratio >= 1) {
            return 0;
        }
        double shape = 2 * gamma / (gamma - 1) * (Math.pow(ratio, 2 / gamma) - Math.pow(ratio, (gamma + 1) / gamma));
        return leak * pressure * Math.sqrt(shape / (AIR * temperature));
    }

    /**
     * Gap of a valve held open a little, seen as a ring at its seat [m2]: pi d lift, times a flow coefficient.
     * @param coefficient 0.6 to 0.7 at such lifts; Heywood (1988), section 6.3.2; from memory
     */
    public static double releaseArea(double seatDiameter, double lift, double coefficient) {
        return Math.PI * seatDiameter * lift * coefficient;
    }
}
