package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A screw thread of 60 degrees by its outside diameter and pitch. Basic profile: ISO 68-1 and ISO 724, the same in ASME B1.1. Lengths [m], areas [m2].
 * @param diameter outside, nominal
 * @param pitch    thread to thread; an inch over the threads per inch
 * @param form     which standard's stress area
 */
public record ScrewThread(Expression diameter, Expression pitch, Form form) {
    /** Standards. They differ in how deep the root of the bolt's thread is. */
    public enum Form {
        /** ISO 898-1: pi/4 (d - 0.9382 P)2. */
        METRIC(0.9382),
        /** ASME B1.1: pi/4 (d - 0.9743 P)2. */
        UNIFIED(0.9743);

        private final double depth;

        Form(double depth) {
            this.depth = depth;
        }
    }

    private static Expression disc(Expression diameter) {
        return diameter.squared().times(Math.PI / 4);
    }

    /** Area that the tensile strength counts on. */
    public Expression stressArea() {
        return disc(diameter.minus(pitch.times(form.depth)));
    }

    /** Area of the plain shank at the full diameter. */
    public Expression shankArea() {
        return disc(diameter);
    }

    /** Diameter at which thread and gap are equally wide: d - 3/8 sqrt 3 P. */
    public Expression pitchDiameter() {
        return diameter.minus(pitch.times(0.375 * Math.sqrt(3)));
    }

    /** Inside diameter of the nut: d - 5/8 sqrt 3 P. */
    public Expression nutDiameter() {
        return diameter.minus(pitch.times(0.625 * Math.sqrt(3)));
    }

    /**
     * Area that shears when the tapped hole strips: at the bolt's outside diameter its thread is 7/8 of the pitch wide. By the basic profile, that is with
     * no clearance: real threads have less, by a tenth or two.
     * @param engaged length of full thread
     */
    public Expression holeShearArea(Expression engaged) {
        return engaged.times(diameter).times(Math.PI * 7 / 8);
    }

    /** Area that shears when the bolt's thread strips: at the hole's inside diameter it is 3/4 of the pitch wide; as {@link #holeShearArea}. */
    public Expression boltShearArea(Expression engaged) {
        return engaged.times(nutDiameter()).times(Math.PI * 3 / 4);
    }

    /**
     * Torque for a preload by both frictions [N m]. VDI 2230-1, F (P / 2 pi + d2 mu / (2 cos 30) + D mu / 2); from memory; its printed 0.159 and 0.578 are these.
     * @param preload        [N]
     * @param threadFriction coefficient
     * @param headFriction   coefficient
     * @param headDiameter   mean of the ring the head rubs on [m]
     */
    public Expression torque(
            Expression preload, Expression threadFriction, Expression headFriction, Expression headDiameter) {
        Expression slope = pitch.dividedBy(2 * Math.PI);
        Expression flanks = pitchDiameter().times(threadFriction).dividedBy(2 * Math.cos(Math.PI / 6));
        Expression head = headDiameter.half().times(headFriction);
        return preload.times(Expression.sum(slope, flanks, head));
    }
}
