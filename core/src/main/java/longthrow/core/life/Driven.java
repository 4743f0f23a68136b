package longthrow.core.life;

import java.util.List;
import longthrow.core.formula.Expression;
import longthrow.core.measure.Carried;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.SliderCrank;
import longthrow.core.term.Term;

/**
 * What every sum on rod, bolts and pin asks for: the crank, the masses on it, and how hard gas may push or draw.
 * @param of who is asked
 */
record Driven(Asked of) {
    /** Pressure above the crankcase at its lowest, throttle shut [Pa]. */
    static final Expression DRAWN = Expression.constant(-GasTrace.STANDARD_ATMOSPHERE);

    static final String OVERRUN =
            "throttle shut on the overrun: the gas draws the piston up with one whole atmosphere, more than any engine does";

    static final String BOUND =
            "gas on the piston as the bounding trace has it, which no sound unblown engine of this ratio on petrol or alcohol rises above; a real one reaches "
                    + "about 0.6 of it, its quickest cycles 0.7";

    static final String BOUND_SOURCE =
            "Heywood, Internal Combustion Engine Fundamentals (1988), section 5.5.3; see BoundingGas";

    private static final List<Term> SWEPT = List.of(Term.STROKE, Term.ROD_LENGTH, Term.BORE, Term.COMPRESSION_RATIO);

    /** Angles of half a turn, for the largest torque. */
    private static final int ANGLES = 720;

    SliderCrank crank() {
        return SliderCrank.inLine(of.figure(Term.STROKE).half(), of.figure(Term.ROD_LENGTH));
    }

    /** Piston, pin, rings. */
    Expression pistonAssembly() {
        return of.sum(Term.PISTON_MASS, Term.PIN_MASS, Term.RING_MASS);
    }

    Expression reciprocating() {
        return pistonAssembly().plus(of.figure(Term.ROD_SMALL_END_MASS));
    }

    /** With nothing of the cap carried by the crankpin, which is on the safe side. */
    DeadCentre deadCentre() {
        return new DeadCentre(
                crank(),
                reciprocating(),
                of.figure(Term.ROD_BIG_END_MASS),
                Expression.constant(0),
                of.figure(Term.BORE));
    }

    Expression boreArea() {
        return of.figure(Term.BORE).squared().times(Math.PI / 4);
    }

    /**
     * Largest push of the gas on the piston [N], see {@link BoundingGas#peak}.
     * @param share of it that is counted: 1 for the bound
     */
    Expression largestPush(double share) {
        return largestPush().times(share);
    }

    /** What {@link #jerk} hangs on. */
    void asksForJerk() {
        SWEPT.forEach(of::figure);
    }

    /**
     * Largest torque of the bounding gas on the crank, standing nearly still [N m].
     * @throws java.util.NoSuchElementException unless all that was asked for is there
     */
    Measured jerk() {
        of.takes("life", BOUND, BOUND_SOURCE);
        return Carried.through(
                Driven::jerk, SWEPT.stream().map(t -> of.value(t).orElseThrow()).toList());
    }

    private static double jerk(double[] x) {
        CrankMotion crank = new CrankMotion(x[0] / 2, x[1], 0);
        BoundingGas gas = BoundingGas.of(crank, x[3]);
        double area = Math.PI / 4 * x[2] * x[2];
        double most = 0;
        for (int k = 0; k < ANGLES; k++) {
            double angle = Math.PI * k / ANGLES; // half a turn after firing
            most = Math.max(most, gas.gauge(angle) * area * crank.travelSlope(angle));
        }
        return most;
    }

    private Expression largestPush() {
        of.takes("life", BOUND, BOUND_SOURCE);
        return of.figure(Term.COMPRESSION_RATIO)
                .times(BoundingGas.BURNT / BoundingGas.COLD_CHARGE)
                .minus(1)
                .times(GasTrace.STANDARD_ATMOSPHERE)
                .times(boreArea());
    }

    /** Turns within the hours wanted at a speed [1]. */
    Expression turns() {
        of.takes(
                Term.LIFE_WANTED.path(),
                "all the hours wanted are counted at the speed itself",
                "on the safe side: Palmgren and Miner's sum for a duty of one step");
        return SpeedSought.speed().times(of.figure(Term.LIFE_WANTED)).dividedBy(2 * Math.PI);
    }
}
