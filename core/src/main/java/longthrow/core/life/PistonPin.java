package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A hollow pin between two bosses with the rod in the middle. Beam theory: load spread evenly over the small end, reactions in the middle of what
 * lies in each boss; stiff bosses carry nearer the inside, so this is on the safe side. Loads [N], lengths [m], stresses [Pa].
 * @param diameter outside
 * @param bore     hole through it, 0 and up
 * @param length   of the pin
 * @param rodWidth of the small end
 * @param bossGap  between the bosses
 */
public record PistonPin(
        Expression diameter, Expression bore, Expression length, Expression rodWidth, Expression bossGap) {
    private Section section() {
        return Section.ofTube(diameter, bore);
    }

    /** Largest bending moment, in the middle [N m]. */
    public Expression moment(Expression load) {
        Expression arm = bossGap.plus(length).dividedBy(4).minus(rodWidth.dividedBy(4));
        return load.half().times(arm);
    }

    /** Stress of it at the outside. */
    public Expression bendingStress(Expression load) {
        return section().bendingStress(moment(load), diameter);
    }

    /**
     * Bending stress with the bosses pressing hardest at their inner edges and falling to nothing at the ends of the pin, so that each acts a third of the way in: the moment is
     * F (l + 2 b - 1.5 a) / 12. Kolchin and Demidov, Design of Automotive Engines, piston pin; from memory.
     */
    public Expression bendingStressTapering(Expression load) {
        Expression arm = length.plus(bossGap.times(2)).dividedBy(6).minus(rodWidth.dividedBy(4));
        return section().bendingStress(load.half().times(arm), diameter);
    }

    /** Mean shear stress between rod and boss. */
    public Expression meanShear(Expression load) {
        return load.half().dividedBy(section().area());
    }

    /** Largest shear stress of a thick tube: the mean times 4/3 (D2 + D d + d2) / (D2 + d2). Roark, chapter 8; from memory. */
    public Expression largestShear(Expression load) {
        Expression squares = diameter.squared().plus(bore.squared());
        Expression shape = squares.plus(diameter.times(bore)).dividedBy(squares);
        return meanShear(load).times(shape).times(4.0 / 3);
    }

    /** Pressure in the bosses, load over projected area. */
    public Expression bossPressure(Expression load) {
        return load.dividedBy(diameter.times(length.minus(bossGap)));
    }

    /** Pressure in the small end. */
    public Expression rodPressure(Expression load) {
        return load.dividedBy(diameter.times(rodWidth));
    }

    private Expression wall() {
        return diameter.minus(bore).half();
    }

    private Expression meanRadius() {
        return diameter.plus(bore).dividedBy(4);
    }

    /**
     * How much the pin is squeezed out of round along the load: a ring pressed between two points, (pi/4 - 2/pi) F R3 / (E I), the whole length taking part.
     * Roark's Formulas for Stress and Strain, table 9.2, case 1; from memory. Bosses and rod press over a width, so the true figure is smaller; a thick
     * wall adds shear that this leaves out.
     * @param modulus Young's [Pa]
     */
    public Expression ovalisation(Expression load, Expression modulus) {
        Expression second = length.times(wall().power(3)).dividedBy(12);
        return load.times(meanRadius().power(3))
                .times(Math.PI / 4 - 2 / Math.PI)
                .dividedBy(modulus.times(second));
    }

    /** Stress of that at the inside under the load: moment F R / pi on the wall. As {@link #ovalisation}. */
    public Expression ovalStress(Expression load) {
        Expression modulus = length.times(wall().squared()).dividedBy(6);
        return load.times(meanRadius()).dividedBy(Math.PI).dividedBy(modulus);
    }
}
