package longthrow.core.engine;

import longthrow.core.formula.Expression;
import longthrow.core.motion.Cylinder;
import longthrow.core.motion.SliderCrank;

/**
 * Displacement, clearance volume and compression ratio. Lengths [m], volumes [m3].
 * Ratio after Heywood, Internal Combustion Engine Fundamentals (1988), eq. (2.1): largest over smallest cylinder volume.
 */
public final class Compression {
    private Compression() {}

    /** Area of a circle by its diameter [m2]. */
    public static Expression area(Expression diameter) {
        return Cylinder.area(diameter);
    }

    /** Bore area times stroke. */
    public static Expression sweptVolume(Expression bore, Expression stroke) {
        return Cylinder.volume(bore, stroke);
    }

    /** Space in the hole of the crushed gasket. */
    public static Expression gasketVolume(Expression gasketBore, Expression gasketThickness) {
        return area(gasketBore).times(gasketThickness);
    }

    /** Space between crown rim and deck; negative when the piston stands proud. */
    public static Expression deckVolume(Expression bore, Expression deckClearance) {
        return area(bore).times(deckClearance);
    }

    /** Ring of space between top land and bore, above the top ring. */
    public static Expression creviceVolume(Expression bore, Expression topLandDiameter, Expression topLandHeight) {
        return area(bore).minus(area(topLandDiameter)).times(topLandHeight);
    }

    /** All the space above the piston at top dead centre, ring-land crevice left out. Crown volume: dish positive, dome negative. */
    public static Expression clearanceVolume(
            Expression chamber, Expression gasketVolume, Expression deckVolume, Expression crownVolume) {
        return Expression.sum(chamber, gasketVolume, deckVolume, crownVolume);
    }

    /**
     * As {@link #clearanceVolume(Expression, Expression, Expression, Expression)} with what else stands open to the chamber.
     * @param small ring-land crevice, plug recess and the like
     */
    public static Expression clearanceVolume(
            Expression chamber,
            Expression gasketVolume,
            Expression deckVolume,
            Expression crownVolume,
            Expression small) {
        return clearanceVolume(chamber, gasketVolume, deckVolume, crownVolume).plus(small);
    }

    /** The clearance volume that gives this ratio. */
    public static Expression clearanceForRatio(Expression sweptVolume, Expression ratio) {
        return sweptVolume.dividedBy(ratio.minus(1));
    }

    /**
     * Ratio from the closing of the inlet valve: cylinder volume there over the smallest. Geometry alone; what the cylinder really holds
     * then is another matter.
     * @param sweptAfterClosing volume between the piston at closing and at top dead centre, see {@link SliderCrank#volumeSwept}
     */
    public static Expression effectiveRatio(Expression sweptAfterClosing, Expression clearanceVolume) {
        return ratio(sweptAfterClosing, clearanceVolume);
    }

    /**
     * Spherical cap, for a dish or a dome: pi h (3 a2 + h2) / 6 (mensuration of the sphere). Exact for any height up to the whole sphere.
     * @param rimRadius a of the circle the cap stands on
     * @param height    h from that circle to the top (or the bottom of a dish), &ge; 0
     */
    public static Expression sphericalCap(Expression rimRadius, Expression height) {
        return height.times(rimRadius.squared().times(3).plus(height.squared())).times(Math.PI / 6);
    }

    /** Static compression ratio: (swept + clearance) / clearance, written so that each volume stands once. */
    public static Expression ratio(Expression sweptVolume, Expression clearanceVolume) {
        return sweptVolume.dividedBy(clearanceVolume).plus(1);
    }

    /** Depth off a head (or deck) that takes this volume away [m]. */
    public static Expression cutForVolume(Expression volume, Expression planArea) {
        return volume.dividedBy(planArea);
    }
}
