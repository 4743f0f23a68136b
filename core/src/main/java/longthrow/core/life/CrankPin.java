package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * Crankpin as a beam on the two main bearings, free to turn there, the load in the middle and as wide as the rod: on the safe side, since cheeks and mains hold
 * it straighter. Beam theory. The fillet's stress concentration is the caller's, unknown unless its radius is known. Lengths [m], stresses [Pa].
 * @param diameter of the pin
 * @param bore     oil hole along it, 0 where solid
 * @param span     between the middles of the main bearings
 * @param rodWidth of the big end
 */
public record CrankPin(Expression diameter, Expression bore, Expression span, Expression rodWidth) {
    private Section section() {
        return Section.ofTube(diameter, bore);
    }

    /** Bending moment in the middle [N m]. */
    public Expression moment(Expression load) {
        return load.dividedBy(4).times(span.minus(rodWidth.half()));
    }

    /** Bending stress in the middle. */
    public Expression bendingStress(Expression load) {
        return section().bendingStress(moment(load), diameter);
    }

    /** Shear stress of a torque through the pin. */
    public Expression torsionStress(Expression torque) {
        return torque.times(diameter.half()).dividedBy(section().strong().times(2));
    }

    /** Both as one stress: von Mises, sqrt(s2 + 3 t2). */
    public Expression combined(Expression bending, Expression shear) {
        return bending.squared().plus(shear.squared().times(3)).squareRoot();
    }

    /** Load over projected area of the bearing. */
    public Expression bearingPressure(Expression load) {
        return load.dividedBy(diameter.times(rodWidth));
    }
}
