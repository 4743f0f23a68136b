package longthrow.core.life;

/**
 * Forces in the mechanism at one angle [N]. Along the cylinder positive towards the head, across positive towards the side of the crank pin at +90 degrees.
 * @param angle          after firing top dead centre [rad]
 * @param pinAlong       of the piston on the small end of the rod
 * @param pinAcross      the same, across; as large as the side thrust
 * @param sideThrust     of the piston on the cylinder wall
 * @param rodAtSmallEnd  along the rod just at the small end's bore, squeezing positive, pulling negative
 * @param rodShank       along the rod with all that hangs on it from the small end, squeezing positive; big end left out
 * @param capPull        what the bolts of the cap would have to hold together if the cap weighed nothing; 0 while the rod presses on the crankpin
 * @param crankpinAlong  of the rod on the crankpin
 * @param crankpinAcross the same, across
 * @param mainsAlong     of the crank on its main bearings, both together
 * @param mainsAcross    the same, across
 * @param torque         on the crank [N m], in the direction of rotation
 */
public record Load(
        double angle,
        double pinAlong,
        double pinAcross,
        double sideThrust,
        double rodAtSmallEnd,
        double rodShank,
        double capPull,
        double crankpinAlong,
        double crankpinAcross,
        double mainsAlong,
        double mainsAcross,
        double torque) {

    /** Size of the load on the piston pin. */
    public double pin() {
        return Math.hypot(pinAlong, pinAcross);
    }

    /** Size of the load on the crankpin. */
    public double crankpin() {
        return Math.hypot(crankpinAlong, crankpinAcross);
    }

    /** Size of the load on both main bearings together; by their distances from the crankpin each takes its share. */
    public double mains() {
        return Math.hypot(mainsAlong, mainsAcross);
    }
}
