package longthrow.core.shake;

import longthrow.core.formula.Expression;

/**
 * Couple that two counterweights make when they do not pull the same about the middle of the crankpin: it rocks the crank from end to end once a turn, at a balance
 * factor as good as any. Statics. Distances along the crank axis from the middle of the crankpin [m].
 * @param flywheelEnd         moment of the counterweight on that side, mass times radius [kg m]
 * @param flywheelEndDistance of its middle
 * @param outputEnd           moment of the other [kg m]
 * @param outputEndDistance   of its middle
 */
public record WebCouple(
        Expression flywheelEnd, Expression flywheelEndDistance, Expression outputEnd, Expression outputEndDistance) {
    private Expression difference() {
        return flywheelEnd.times(flywheelEndDistance).minus(outputEnd.times(outputEndDistance));
    }

    /** Amplitude of the couple [N m]; speed of the crank [rad/s]. */
    public Expression couple(Expression speed) {
        return difference().times(speed.squared()).absolute();
    }

    /** Force it puts on each main bearing, on top of the rest and opposite at the two [N]; bearings this far apart. */
    public Expression onBearings(Expression speed, Expression span) {
        return couple(speed).dividedBy(span);
    }

    /** What to take off the flywheel end to be rid of it [kg m]; below 0 it is to be put on, or taken off the other. */
    public Expression tooMuchAtFlywheelEnd() {
        return difference().dividedBy(flywheelEndDistance);
    }
}
