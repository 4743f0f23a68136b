package longthrow.core.cycle;

import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * The room above the piston. Angles [rad] from true top dead centre.
 * @param bore      [m]
 * @param crank     what moves the piston
 * @param clearance volume above the piston at top dead centre [m3]
 * @param headArea  of the chamber's surface, valves included [m2]
 * @param crownArea of the piston's crown [m2]
 */
public record CylinderSpace(double bore, CrankMotion crank, double clearance, double headArea, double crownArea) {
    public CylinderSpace {
        Require.positive("bore [m]", bore);
        Require.positive("clearance volume [m3]", clearance);
        Require.positive("surface of the chamber [m2]", headArea);
        Require.positive("surface of the crown [m2]", crownArea);
    }

    /** With a flat crown and a chamber of the bore's area: the surface textbooks take. */
    public static CylinderSpace flat(double bore, CrankMotion crank, double compressionRatio) {
        double area = 0.25 * Math.PI * bore * bore;
        if (!(compressionRatio > 1)) {
            throw new IllegalArgumentException("compression ratio is " + compressionRatio + "; it must be above 1");
        }
        return new CylinderSpace(bore, crank, area * crank.stroke() / (compressionRatio - 1), area, area);
    }

    /** [m2]. */
    public double pistonArea() {
        return 0.25 * Math.PI * bore * bore;
    }

    /** [m3]. */
    public double displacement() {
        return pistonArea() * crank.stroke();
    }

    /** [m3]. */
    public double volume(double angle) {
        return clearance + pistonArea() * crank.travel(angle + crank.topDeadCentre());
    }

    /** Of the sleeve that the piston has uncovered, by the volume above the piston [m2]. */
    public double sleeveArea(double volume) {
        return 4 * (volume - clearance) / bore;
    }

    /** [m/s] by the crank's speed [rad/s]. */
    public double meanPistonSpeed(double speed) {
        return crank.stroke() * speed / Math.PI;
    }
}
