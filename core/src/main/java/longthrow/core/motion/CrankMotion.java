package longthrow.core.motion;

/**
 * {@link SliderCrank} in plain numbers, for what asks a million times. Angles [rad], lengths [m]; signs, source and limits as there. A test
 * holds the two against each other.
 * @param crankRadius crank axis to crank pin, &gt; 0
 * @param rodLength   centre to centre, longer than crank radius and offset together
 * @param offset      path of the piston pin from the crank axis, positive to the side of the crank pin at +90 degrees
 */
public record CrankMotion(double crankRadius, double rodLength, double offset) {
    public CrankMotion {
        if (!(crankRadius > 0) || !Double.isFinite(crankRadius)) {
            throw new IllegalArgumentException(
                    "crank radius is " + crankRadius + " m; it must be above 0: half the stroke, in metres");
        }
        double shortest = crankRadius + Math.abs(offset);
        if (!(rodLength > shortest) || !Double.isFinite(rodLength)) { // written positively, so that NaN fails too
            throw new IllegalArgumentException("rod length is " + rodLength + " m; with crank radius " + crankRadius
                    + " m and offset " + offset + " m it must exceed " + shortest
                    + " m or the crank cannot turn. Give the rod length centre to centre, in metres");
        }
    }

    private double side(double angle) {
        return crankRadius * Math.sin(angle) - offset;
    }

    /** Piston pin above crank pin. */
    private double rodRise(double side) {
        return Math.sqrt(rodLength * rodLength - side * side);
    }

    /** Piston pin above the crank axis, along the cylinder. */
    public double pinHeight(double angle) {
        return crankRadius * Math.cos(angle) + rodRise(side(angle));
    }

    /** Pin height at top dead centre. */
    public double highestPin() {
        double reach = rodLength + crankRadius;
        return Math.sqrt(reach * reach - offset * offset);
    }

    /** Pin height at bottom dead centre. */
    public double lowestPin() {
        double reach = rodLength - crankRadius;
        return Math.sqrt(reach * reach - offset * offset);
    }

    /** True stroke. */
    public double stroke() {
        return highestPin() - lowestPin();
    }

    /** Angle of true top dead centre, 0 without offset. */
    public double topDeadCentre() {
        return Math.asin(offset / (rodLength + crankRadius));
    }

    /** Angle of true bottom dead centre, half a turn without offset. */
    public double bottomDeadCentre() {
        return Math.PI + Math.asin(offset / (rodLength - crankRadius));
    }

    /** Piston below true top dead centre. */
    public double travel(double angle) {
        return highestPin() - pinHeight(angle);
    }

    /** Travel gained per angle [m/rad], positive going down; times the angular speed it is the piston's speed. */
    public double travelSlope(double angle) {
        double side = side(angle);
        return crankRadius * (Math.sin(angle) + Math.cos(angle) * side / rodRise(side));
    }

    /**
     * Slope of {@link #travelSlope} [m/rad2]; times the angular speed squared it is the acceleration away from the head at steady speed.
     * Derived by hand: d(side/rise) = r cos (rise2 + side2) / rise3 = r cos l2 / rise3.
     */
    public double travelBend(double angle) {
        double side = side(angle);
        double rise = rodRise(side);
        double cosine = Math.cos(angle);
        double sine = Math.sin(angle);
        double leverage = side / rise;
        double leverageSlope = crankRadius * cosine * rodLength * rodLength / (rise * rise * rise);
        return crankRadius * (cosine - sine * leverage + cosine * leverageSlope);
    }

    /** Angle of the rod to the cylinder, positive with the crank pin on the side where it is at +90 degrees. */
    public double rodAngle(double angle) {
        return Math.asin(side(angle) / rodLength);
    }

    /** As {@link SliderCrank#sideThrust}. */
    public double sideThrust(double angle, double downForce) {
        double side = side(angle);
        return -downForce * side / rodRise(side);
    }
}
