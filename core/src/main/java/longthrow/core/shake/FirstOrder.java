package longthrow.core.shake;

import longthrow.core.formula.Expression;

/**
 * The force that comes once a turn, and what a counterweight makes of it: it takes from along the cylinder what it gives across, one for
 * one. Seen as two arrows, one turning with the crank and one against it, the counterweight changes the first alone; the arrow against the crank stays
 * half the primary whatever is bolted to the crank, and so does everything of second order. Den Hartog, Mechanical Vibrations, chapter 5; from memory.
 * @param reciprocating mass [kg]
 * @param radius        of the crank [m]
 * @param speed         of the crank [rad/s]
 * @param factor        balance factor: share of the reciprocating mass balanced, the rotating mass wholly
 */
public record FirstOrder(Expression reciprocating, Expression radius, Expression speed, Expression factor) {
    private Expression primary() {
        return reciprocating.times(radius).times(speed.squared());
    }

    private Expression unbalancedShare() {
        return Expression.constant(1).minus(factor);
    }

    /** Amplitude along the cylinder [N]. */
    public Expression along() {
        return primary().times(unbalancedShare().absolute());
    }

    /** Amplitude across the cylinder [N]. */
    public Expression across() {
        return primary().times(factor.absolute());
    }

    /** Largest in any direction [N]: the force runs round an ellipse that stands along or across. */
    public Expression largest() {
        return Expression.max(along(), across());
    }

    /** Arrow that turns with the crank [N]; none at a factor of one half. */
    public Expression withCrank() {
        return primary().times(unbalancedShare().minus(factor).half().absolute());
    }

    /** Arrow that turns against the crank [N]: what no counterweight on the crank can cancel. */
    public Expression againstCrank() {
        return primary().half();
    }

    /** Moment of a shaft turning against the crank at its speed that cancels {@link #againstCrank} [kg m]. */
    public Expression shaftMoment() {
        return reciprocating.times(radius).half();
    }

    /**
     * Amplitude along the cylinder with a shaft turning against the crank, its weight down at top dead centre [N].
     * @param moment of the shaft, mass times radius [kg m]
     */
    public Expression alongWithShaft(Expression moment) {
        return primary().times(unbalancedShare()).minus(shaft(moment)).absolute();
    }

    /** As {@link #alongWithShaft}, across the cylinder. */
    public Expression acrossWithShaft(Expression moment) {
        return primary().times(factor).minus(shaft(moment)).absolute();
    }

    /** Rocking couple that such a shaft adds because it stands this far from the crank axis [N m], amplitude. */
    public Expression shaftCouple(Expression moment, Expression distance) {
        return shaft(moment).times(distance);
    }

    private Expression shaft(Expression moment) {
        return moment.times(speed.squared());
    }
}
