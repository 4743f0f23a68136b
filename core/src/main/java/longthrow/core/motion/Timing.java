package longthrow.core.motion;

import longthrow.core.formula.Expression;

/** Cam events and the spark, in crank angle [rad]; speeds [rad/s, m/s]. */
public final class Timing {
    /**
     * Acceleration times ring thickness at which old-type rings begin to flutter [m2/s2]: 40,000 ft/s2 at 0.125 in, 80,000 at 0.0625 in, that is
     * 38,700 m/s2 over the thickness in mm; Jennings' table after Dykes, from memory, to two digits.
     */
    public static final double RING_FLUTTER = 38.7;

    private Timing() {}

    /**
     * Crank degrees after top dead centre (before, for the exhaust) at which a lobe stands halfway between its events.
     * @param opens  before top dead centre (intake) or before bottom dead centre (exhaust), positive
     * @param closes after bottom dead centre (intake) or after top dead centre (exhaust), positive
     */
    public static Expression intakeLobeCentre(Expression opens, Expression closes) {
        return closes.plus(Math.PI).minus(opens).half();
    }

    /** As {@link #intakeLobeCentre}, before top dead centre. */
    public static Expression exhaustLobeCentre(Expression opens, Expression closes) {
        return opens.plus(Math.PI).minus(closes).half();
    }

    /** Opening to closing. */
    public static Expression duration(Expression opens, Expression closes) {
        return opens.plus(closes).plus(Math.PI);
    }

    /** Cam angle between the peaks: half the crank angle between them. */
    public static Expression lobeSeparation(Expression intakeLobeCentre, Expression exhaustLobeCentre) {
        return intakeLobeCentre.plus(exhaustLobeCentre).half();
    }

    /** Intake opening to exhaust closing. */
    public static Expression overlap(Expression intakeOpens, Expression exhaustCloses) {
        return intakeOpens.plus(exhaustCloses);
    }

    /**
     * Crank angle by which an overhead camshaft on chain or toothed belt runs ahead once its head stands higher, lagging when it comes down: 4 h / D.
     * <p>With the crank held, the run that pulls, from the cam sprocket down to the crank sprocket, is taut; the tensioner sits on the other. Raised by h
     * the two sprockets stand h further apart, and the taut run must be longer by h. It is held by the teeth of the crank sprocket, so the length comes
     * off the cam sprocket, which turns with the chain, the way it runs: forward by h over its pitch radius. The crank turns twice for each turn of the cam.
     * A head that comes down gives the taut run h too much; the tensioner on the slack run draws it round the cam sprocket, backward.
     * <p>Exact for a taut run along the cylinder. Where it leans by an angle, as between a small crank sprocket and one of twice its teeth, the figure is
     * times the cosine of that angle: 1.5 % less at 10 degrees. A guide that bows the taut run adds nothing of first order.
     * @param rise          of the head away from the crank axis [m]
     * @param pitchDiameter of the cam sprocket [m]
     */
    public static Expression headShift(Expression rise, Expression pitchDiameter) {
        return rise.times(4).dividedBy(pitchDiameter);
    }

    /** Angle that a key step turns the wheel on its taper: arc over radius at mid key. */
    public static Expression keyShift(Expression keyOffset, Expression taperDiameter) {
        return keyOffset.dividedBy(taperDiameter.half());
    }

    /**
     * Two strokes a turn.
     * @param speed of the crank [rad/s]
     */
    public static Expression meanPistonSpeed(Expression stroke, Expression speed) {
        return stroke.times(speed).dividedBy(Math.PI);
    }

    /**
     * Rim of a wheel.
     * @param speed of the crank [rad/s]
     */
    public static Expression rimSpeed(Expression diameter, Expression speed) {
        return diameter.half().times(speed);
    }

    /**
     * Acceleration of the piston at top dead centre, pin path through the crank axis: r w2 (1 + r / l), Heywood (1988) eq. (2.11) at its top.
     * @param speed of the crank [rad/s]
     */
    public static Expression topAcceleration(Expression crankRadius, Expression rodLength, Expression speed) {
        return crankRadius
                .times(speed.squared())
                .times(crankRadius.dividedBy(rodLength).plus(1));
    }

    /** The speed at which that acceleration is reached [rad/s]. */
    public static Expression speedOfTopAcceleration(
            Expression crankRadius, Expression rodLength, Expression acceleration) {
        return acceleration
                .dividedBy(crankRadius)
                .dividedBy(crankRadius.dividedBy(rodLength).plus(1))
                .squareRoot();
    }

    /** Acceleration beyond which an old-type ring of this axial thickness may flutter: {@link #RING_FLUTTER} over the thickness. */
    public static Expression ringBears(Expression ringThickness) {
        return Expression.constant(RING_FLUTTER).dividedBy(ringThickness);
    }
}
