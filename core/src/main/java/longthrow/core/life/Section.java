package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * Cross-section of a rod's beam. Geometry; Roark's Formulas for Stress and Strain, table A.1.
 * @param area   [m2]
 * @param strong second moment about the axis it resists most, parallel to the crankpin for a rod: bending in the plane it swings in [m4]
 * @param weak   about the other axis: bending sideways [m4]
 */
public record Section(Expression area, Expression strong, Expression weak) {
    /**
     * H or I: two flanges and the web between them. For a rod the height is seen from the flywheel's end.
     * @param height over both flanges
     * @param width  of the flanges
     * @param web    its thickness
     * @param flange thickness of each
     */
    public static Section ofBeam(Expression height, Expression width, Expression web, Expression flange) {
        Expression inside = height.minus(flange.times(2));
        Expression cut = width.minus(web);
        return new Section(
                width.times(height).minus(cut.times(inside)),
                width.times(height.power(3)).minus(cut.times(inside.power(3))).dividedBy(12),
                flange.times(2)
                        .times(width.power(3))
                        .plus(inside.times(web.power(3)))
                        .dividedBy(12));
    }

    /** Full rectangle. */
    public static Section ofRectangle(Expression height, Expression width) {
        return new Section(
                height.times(width),
                width.times(height.power(3)).dividedBy(12),
                height.times(width.power(3)).dividedBy(12));
    }

    /** Round bar or tube; bore 0 for a bar. */
    public static Section ofTube(Expression diameter, Expression bore) {
        Expression second = diameter.power(4).minus(bore.power(4)).times(Math.PI / 64);
        return new Section(diameter.squared().minus(bore.squared()).times(Math.PI / 4), second, second);
    }

    /** Radius of gyration about the strong axis. */
    public Expression strongRadius() {
        return strong.dividedBy(area).squareRoot();
    }

    /** Radius of gyration about the weak axis. */
    public Expression weakRadius() {
        return weak.dividedBy(area).squareRoot();
    }

    /** Mean stress of an axial load [Pa]. */
    public Expression axialStress(Expression load) {
        return load.dividedBy(area);
    }

    /** Stress at the flanges of a moment about the strong axis [Pa]. */
    public Expression bendingStress(Expression moment, Expression height) {
        return moment.times(height.half()).dividedBy(strong);
    }
}
