package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A connecting rod as two masses, at the centres of its ends. For forces along and across the cylinder this is exact: every point of the
 * rod moves as the mean, by distance, of its two ends. Only its turning needs one more figure, {@link #inertiaExcess}. Masses [kg], lengths [m],
 * inertias [kg m2]. Norton, Design of Machinery, section 13.4; from memory.
 * @param mass   whole rod with cap, bolts and shells
 * @param length centre to centre
 * @param centre of mass from the centre of the big end, along the rod
 */
public record RodMass(Expression mass, Expression length, Expression centre) {
    /** By weighing each end with the other one held up at its centre and the rod level. */
    public static RodMass ofEnds(Expression smallEnd, Expression bigEnd, Expression length) {
        Expression mass = smallEnd.plus(bigEnd);
        return new RodMass(mass, length, smallEnd.dividedBy(mass).times(length));
    }

    /** Share of the mass that goes up and down with the piston. */
    public Expression smallEnd() {
        return mass.times(centre).dividedBy(length);
    }

    /** Share of the mass that goes round with the crankpin. */
    public Expression bigEnd() {
        return mass.times(length.minus(centre)).dividedBy(length);
    }

    /**
     * Moment of inertia of the two masses less that of the rod; positive for nearly every rod. It is the couple that the two masses make too
     * much as the rod swings.
     * @param inertia of the rod about its centre of mass
     */
    public Expression inertiaExcess(Expression inertia) {
        return mass.times(centre).times(length.minus(centre)).minus(inertia);
    }

    /**
     * Distance of the second of two masses beyond the centre of mass, when the first sits at the small end and both together turn exactly as
     * the rod does.
     */
    public Expression partnerBeyondCentre(Expression inertia) {
        return inertia.dividedBy(mass.times(length.minus(centre)));
    }

    /** First of those two masses, at the small end. */
    public Expression dynamicSmallEnd(Expression inertia) {
        Expression partner = partnerBeyondCentre(inertia);
        return mass.times(partner).dividedBy(length.minus(centre).plus(partner));
    }

    /**
     * What the scale shows too much at the small end of a rod that hangs by the edges of its bores and is not level. Statics, worked out here: with the
     * small end raised by an angle t, supports stand off the centre line by s and b and the weight off it by h, all towards the top, so their lever arms
     * change by t times those: m t (h - b - a (s - b)/l) / l for small t. Good to 1 % of itself for t up to 0.1 rad. A rod held at the centres
     * of its bores (s = b = h = 0) may lean as it likes. With t not known, {@code tilt} is a doubt about 0.
     * @param tilt         small end higher positive [rad]
     * @param smallSupport point of support above the centre of the small end: half its bore when it hangs from the top
     * @param bigSupport   the same for the big end
     * @param offLine      centre of mass above the line through both centres; 0 for a rod that is its own mirror image
     */
    public Expression unlevelError(
            Expression tilt, Expression smallSupport, Expression bigSupport, Expression offLine) {
        Expression lever =
                offLine.minus(bigSupport).minus(centre.dividedBy(length).times(smallSupport.minus(bigSupport)));
        return mass.times(tilt).times(lever).dividedBy(length);
    }
}
