package longthrow.core.life;

import longthrow.core.quantity.Units;

/** Pressure on the piston through two turns. */
public interface GasTrace {
    /** Pressure of the standard atmosphere [Pa], ISO 2533; taken for the crankcase, whose own is within a tenth of it. */
    double STANDARD_ATMOSPHERE = Units.ATMOSPHERE.toSi(1);

    /** Two turns [rad]. */
    double CYCLE = 4 * Math.PI;

    /**
     * Pressure above the crankcase [Pa], never below minus one atmosphere.
     * @param angle of the crank after firing top dead centre [rad], any; it repeats every two turns
     */
    double gauge(double angle);

    /** No gas at all: inertia alone. */
    static GasTrace none() {
        return angle -> 0;
    }

    /**
     * Closed throttle, engine driven by the load: bounds what pulls on rod and bolts. No cylinder can hold less than nothing, so the piston
     * is never drawn up by more than one atmosphere; this takes all of it all the time.
     */
    static GasTrace overrun() {
        return angle -> -STANDARD_ATMOSPHERE;
    }
}
