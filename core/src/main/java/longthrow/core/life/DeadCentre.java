package longthrow.core.life;

import longthrow.core.formula.Expression;
import longthrow.core.motion.SliderCrank;

/**
 * The worst pull on rod and bolts, at top dead centre between exhaust and intake, as formulas that carry doubt: {@link Loads} at one angle. The rod then stands
 * in one line with the crank; its lean out of the cylinder's line by an offset, a ten-thousandth in the force, is left out. Masses [kg], loads [N], speeds
 * [rad/s].
 * @param crank         throw, rod and offset
 * @param reciprocating piston assembly and small end
 * @param bigEnd        of the rod, cap and bolts in it
 * @param cap           with what of the bolts is below the joint: the crankpin swings it round, not the bolts
 * @param bore          [m]
 */
public record DeadCentre(
        SliderCrank crank, Expression reciprocating, Expression bigEnd, Expression cap, Expression bore) {
    /** Acceleration of the piston over the square of speed [m]. */
    private Expression bend() {
        return crank.travelBend(crank.topDeadCentre());
    }

    private Expression ofGas(Expression gauge) {
        return gauge.times(bore.squared()).times(Math.PI / 4);
    }

    /** Load per square of speed that hangs on the bolts. */
    private Expression onBolts() {
        Expression round = bigEnd.minus(cap).times(crank.crankRadius());
        return reciprocating.times(bend()).plus(round);
    }

    /**
     * Pull in the shank of the rod.
     * @param gauge pressure on the piston above the crankcase [Pa]; minus one atmosphere bounds a closed throttle, see {@link GasTrace#overrun}
     */
    public Expression shankPull(Expression speed, Expression gauge) {
        return reciprocating.times(bend()).times(speed.squared()).minus(ofGas(gauge));
    }

    /** Pull on all bolts of the cap together; as {@link #shankPull}. */
    public Expression boltPull(Expression speed, Expression gauge) {
        return onBolts().times(speed.squared()).minus(ofGas(gauge));
    }

    /** Speed at which the bolts together are pulled so hard; not a number when the gas alone pulls harder. */
    public Expression speedOfBoltPull(Expression pull, Expression gauge) {
        return pull.plus(ofGas(gauge)).dividedBy(onBolts()).squareRoot();
    }

    /** Speed at which the shank is pulled so hard. */
    public Expression speedOfShankPull(Expression pull, Expression gauge) {
        return pull.plus(ofGas(gauge)).dividedBy(reciprocating.times(bend())).squareRoot();
    }
}
