package longthrow.core.motion;

import longthrow.core.formula.Expression;

/**
 * Slider-crank with offset, exact. Angles [rad] run from the crank throw pointing along the cylinder towards the head, positive in the
 * direction of rotation; with an offset that is not top dead centre, see {@link #topDeadCentre}. The offset is positive towards the side
 * where the crank pin stands at +90 degrees. Lengths [m], volumes [m3], areas [m2].
 *
 * <p>Closure of crank, rod and cylinder: Heywood, Internal Combustion Engine Fundamentals (1988), section 2.2, eqs. (2.4) to (2.8), there
 * without offset; with it the side of the triangle is shortened by the offset. Holds for rigid parts without clearance and a rod longer than
 * crank radius plus offset; else the crank cannot turn and the square roots leave their domain.
 *
 * @param crankRadius crank axis to crank pin, half the stroke where there is no offset
 * @param rodLength   centre to centre
 * @param offset      path of the piston pin from the crank axis: cylinder offset plus pin offset
 */
public record SliderCrank(Expression crankRadius, Expression rodLength, Expression offset) {

    /** With the pin's path through the crank axis. */
    public static SliderCrank inLine(Expression crankRadius, Expression rodLength) {
        return new SliderCrank(crankRadius, rodLength, Expression.constant(0));
    }

    /**
     * By the stroke the piston really makes, which is what travel on the bench shows. With an offset the crank radius is a little less than
     * half of it: the two dead centres squared twice give 4 r2 (4 l2 - S2) = S2 (4 l2 - 4 e2 - S2).
     * @param stroke true stroke S, at most twice the rod
     */
    public static SliderCrank ofStroke(Expression stroke, Expression rodLength, Expression offset) {
        Expression square = stroke.squared();
        Expression rods = rodLength.squared().times(4);
        Expression shortened = rods.minus(offset.squared().times(4)).minus(square);
        Expression radius =
                stroke.half().times(shortened.dividedBy(rods.minus(square)).squareRoot());
        return new SliderCrank(radius, rodLength, offset);
    }

    /**
     * The rod that puts the pin this high at top dead centre: rod and crank together and rod less crank are each the long side of a right triangle.
     * @param highestPin pin above the crank axis at top dead centre
     * @param stroke     true stroke
     */
    public static Expression rodFor(Expression highestPin, Expression stroke, Expression offset) {
        Expression reach = highestPin.squared().plus(offset.squared()).squareRoot();
        Expression folded =
                highestPin.minus(stroke).squared().plus(offset.squared()).squareRoot();
        return reach.plus(folded).half();
    }

    /** Crank pin beside the path of the piston pin, positive to the side it is on at +90 degrees. */
    private Expression side(Expression angle) {
        return crankRadius.times(angle.sine()).minus(offset);
    }

    /** Piston pin above crank pin. */
    private Expression rodRise(Expression angle) {
        return rodLength.squared().minus(side(angle).squared()).squareRoot();
    }

    /** Piston pin above the crank axis, along the cylinder. */
    public Expression pinHeight(Expression angle) {
        return crankRadius.times(angle.cosine()).plus(rodRise(angle));
    }

    /** Angle of the rod to the cylinder, positive with the crank pin on the side where it is at +90 degrees. */
    public Expression rodAngle(Expression angle) {
        return side(angle).dividedBy(rodLength).arcSine();
    }

    /** Pin height at top dead centre: rod and crank in one line. */
    public Expression highestPin() {
        return rodLength.plus(crankRadius).squared().minus(offset.squared()).squareRoot();
    }

    /** Pin height at bottom dead centre: rod and crank folded into one line. */
    public Expression lowestPin() {
        return rodLength.minus(crankRadius).squared().minus(offset.squared()).squareRoot();
    }

    /** True stroke; with an offset a little more than twice the crank radius. */
    public Expression stroke() {
        return highestPin().minus(lowestPin());
    }

    /** Angle of true top dead centre, 0 without offset. */
    public Expression topDeadCentre() {
        return offset.dividedBy(rodLength.plus(crankRadius)).arcSine();
    }

    /** Angle of true bottom dead centre, half a turn without offset. */
    public Expression bottomDeadCentre() {
        return offset.dividedBy(rodLength.minus(crankRadius)).arcSine().plus(Math.PI);
    }

    /** Piston below true top dead centre, 0 or more. */
    public Expression travel(Expression angle) {
        return highestPin().minus(pinHeight(angle));
    }

    /**
     * Travel gained per angle [m/rad], positive going down. Times the angular speed it is the piston's speed; its own slope by the angle,
     * times the angular speed squared, is the acceleration away from the head at steady speed.
     */
    public Expression travelSlope(Expression angle) {
        Expression leverage = side(angle).dividedBy(rodRise(angle));
        return crankRadius.times(angle.sine().plus(leverage.times(angle.cosine())));
    }

    /**
     * Slope of {@link #travelSlope} by the angle [m/rad2]; times the angular speed squared it is the acceleration away from the head at steady
     * speed. Derived by hand: d(side/rise) = r cos l2 / rise3.
     */
    public Expression travelBend(Expression angle) {
        Expression rise = rodRise(angle);
        Expression leverage = side(angle).dividedBy(rise);
        Expression leverageSlope =
                crankRadius.times(angle.cosine()).times(rodLength.squared()).dividedBy(rise.power(3));
        Expression inner = angle.cosine()
                .minus(angle.sine().times(leverage))
                .plus(angle.cosine().times(leverageSlope));
        return crankRadius.times(inner);
    }

    /** Displacement by the true stroke. */
    public Expression sweptVolume(Expression bore) {
        return Cylinder.volume(bore, stroke());
    }

    /** Volume between the piston at this angle and at true top dead centre. */
    public Expression volumeSwept(Expression bore, Expression angle) {
        return Cylinder.volume(bore, travel(angle));
    }

    /** Volume above the piston; its slope by the angle is dV/d angle. */
    public Expression cylinderVolume(Expression bore, Expression clearanceVolume, Expression angle) {
        return volumeSwept(bore, angle).plus(clearanceVolume);
    }

    /** Volume gained per angle [m3/rad], positive going down. */
    public Expression volumeSlope(Expression bore, Expression angle) {
        return Cylinder.volume(bore, travelSlope(angle));
    }

    /**
     * Side force of the piston on the cylinder wall, positive towards the side of the crank pin at +90 degrees. The rod carries the force along
     * the cylinder and leans on the wall by the tangent of its angle, so under pressure in the first half turn, with the crank pin on the
     * positive side, it presses the piston on the other: the thrust side.
     * @param downForce on the piston along the cylinder, away from the head positive: gas less inertia
     */
    public Expression sideThrust(Expression angle, Expression downForce) {
        return downForce.times(side(angle)).dividedBy(rodRise(angle)).negated();
    }

    /**
     * Wall that the charge touches: chamber, crown and the cylinder bared by the travel; the low ring of wall above the piston at top dead
     * centre belongs to the chamber's area.
     */
    public Expression wallArea(Expression bore, Expression chamberArea, Expression crownArea, Expression angle) {
        return Expression.sum(chamberArea, crownArea, bore.times(travel(angle)).times(Math.PI));
    }
}
