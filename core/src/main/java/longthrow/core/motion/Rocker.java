package longthrow.core.motion;

import longthrow.core.formula.Expression;

/**
 * A rocker between pushrod and valve, and what a head that has moved does to it while the pushrod stays as it is. Lengths [m], angles [rad].
 * <p>The head, with the pivot's stud and the shut valve, rises by h from the crank axis; the pushrod's upper end stays behind by h. The rocker's angle is 0
 * where its valve arm stands square to the valve and grows as the valve opens. Both arms are taken to lie in one line unless an angle off it is given,
 * pushrod and valve to move parallel to each other and to the cylinder; the tip's pad counts by its centre. Plane geometry, exact for that.
 * <p>Lift ratio at any angle is the ratio of the perpendicular arms: of valve line and pushrod line from the pivot.
 * @param pushrodArm pivot to pushrod cup
 * @param valveArm   pivot to tip
 */
public record Rocker(Expression pushrodArm, Expression valveArm) {

    /**
     * Angle by which it leans, pushrod end down for a rise, once a nut at the pivot has taken the gap up: over its whole length it makes up h.
     * From a level stand: its ends, held by valve and pushrod, were level and now differ by h.
     */
    public Expression lean(Expression rise) {
        return offSquare(rise).arcSine();
    }

    /** Sine of that angle: by so much the sine of the rocker's angle falls wherever it stands in its swing. */
    public Expression offSquare(Expression rise) {
        return rise.dividedBy(pushrodArm.plus(valveArm));
    }

    /** How far the pivot goes down its stud for a rise: the tip stays, the cup drops by h, the pivot by the share of its place between them. */
    public Expression pivotDrop(Expression rise) {
        return offSquare(rise).times(valveArm);
    }

    /** What the gap at the valve gains by a rise while the adjuster is left alone. */
    public Expression gapGain(Expression rise) {
        return rise.times(valveArm).dividedBy(pushrodArm);
    }

    /** Sine of the angle at full lift of a rocker that stands square at half lift; at the seat it is as much the other way. */
    public Expression fullLiftSine(Expression lift) {
        return lift.half().dividedBy(valveArm);
    }

    /** Where the tip touches, from the pivot across the valve, by the sine of the angle. */
    public Expression touch(Expression sine) {
        return valveArm.times(cosine(sine));
    }

    /**
     * Lift ratio by angle.
     * @param offLine angle of the pushrod arm off the line of the valve arm
     */
    public Expression ratio(Expression angle, Expression offLine) {
        return valveArm.times(angle.cosine())
                .dividedBy(pushrodArm.times(angle.plus(offLine).cosine()));
    }

    /** Arm of the pushrod by the sine of the angle, with a screw at that end gone out by some length square to the arm. */
    public Expression pushrodArmWithScrew(Expression sine, Expression out) {
        return pushrodArm.times(cosine(sine)).plus(out.times(sine));
    }

    /** Lift ratio with a screw at the pushrod end. */
    public Expression ratioWithPushrodScrew(Expression sine, Expression out) {
        return valveArm.times(cosine(sine)).dividedBy(pushrodArmWithScrew(sine, out));
    }

    /** Sine of the angle by which it leans when a screw at the valve end takes the gap up: the pushrod arm alone makes up h. */
    public Expression offSquareWithValveScrew(Expression rise) {
        return rise.dividedBy(pushrodArm);
    }

    /** Lift ratio with a screw at the valve end, gone out square to the arm. */
    public Expression ratioWithValveScrew(Expression sine, Expression out) {
        return valveArm.times(cosine(sine)).minus(out.times(sine)).dividedBy(pushrodArm.times(cosine(sine)));
    }

    private static Expression cosine(Expression sine) {
        return Expression.constant(1).minus(sine.squared()).squareRoot();
    }
}
