package longthrow.core.engine;

import java.util.List;
import longthrow.core.formula.Expression;

/** Bores, bearings, rings and sleeves: differences that decide whether a part may stay. Lengths [m]. */
public final class Fits {
    private Fits() {}

    /** Diametral clearance. */
    public static Expression clearance(Expression hole, Expression shaft) {
        return hole.minus(shaft);
    }

    /**
     * Diametral clearance once both are warm; below 0 the shaft is squeezed. Each grows by its expansion [1/K] times its rise of temperature [K].
     */
    public static Expression hotClearance(
            Expression hole, Expression holeGrowth, Expression shaft, Expression shaftGrowth) {
        return hole.times(holeGrowth.plus(1)).minus(shaft.times(shaftGrowth.plus(1)));
    }

    /** Wider at the top positive. */
    public static Expression taper(Expression top, Expression bottom) {
        return top.minus(bottom);
    }

    /** Wider across the pin axis positive. */
    public static Expression outOfRound(Expression thrust, Expression axis) {
        return thrust.minus(axis);
    }

    /** The largest by size of several differences; it bends where they cross and at zero. */
    public static Expression largest(List<Expression> differences) {
        Expression worst = differences.get(0).absolute();
        for (Expression d : differences.subList(1, differences.size())) {
            worst = Expression.max(worst, d.absolute());
        }
        return worst;
    }

    /** Mean of several places. */
    public static Expression mean(List<Expression> places) {
        Expression sum = places.get(0);
        for (Expression place : places.subList(1, places.size())) {
            sum = sum.plus(place);
        }
        return sum.dividedBy(places.size());
    }

    /** Wall of a sleeve if its core stands true. */
    public static Expression sleeveWall(Expression outside, Expression bore) {
        return outside.minus(bore).half();
    }

    /** Big-end clearance left after taking this thickness out on each side of the cap: the bore closes by that much across the split. */
    public static Expression clearanceAfterShims(Expression clearance, Expression removedEachSide) {
        return clearance.minus(removedEachSide);
    }

    /** Between the rims of two round heads. */
    public static Expression rimToRim(Expression centres, Expression oneDiameter, Expression otherDiameter) {
        return centres.minus(oneDiameter.plus(otherDiameter).half());
    }

    /** Rim of a round head to the wall of the bore, seen along the bore. */
    public static Expression rimToWall(Expression bore, Expression fromAxis, Expression diameter) {
        return bore.half().minus(fromAxis).minus(diameter.half());
    }

    /** Load gained per length between seat and full lift [N/m]. */
    public static Expression springRate(Expression seatLoad, Expression openLoad, Expression lift) {
        return openLoad.minus(seatLoad).dividedBy(lift);
    }

    /** Room left before the coils touch at full lift. */
    public static Expression coilBindMargin(Expression installedHeight, Expression lift, Expression solidHeight) {
        return installedHeight.minus(lift).minus(solidHeight);
    }
}
