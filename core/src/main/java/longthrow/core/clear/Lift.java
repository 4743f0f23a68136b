package longthrow.core.clear;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.answer.Rung;
import longthrow.core.clearance.Course;
import longthrow.core.life.Asked;
import longthrow.core.measure.NoSuchPart;
import longthrow.core.measure.ValveLift;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * How far one valve is off its seat by crank angle, taken from its lift table or its lobe figures and brought to where its lobe centre was read.
 * @param valve   intake or exhaust
 * @param nominal full lift the shape was made with [m]
 * @param shape   lift by crank angle from its peak [m], later positive
 * @param course  the same over two turns, peak at 0, never less than what holds it open at all times
 */
record Lift(Part valve, double nominal, DoubleUnaryOperator shape, Course course) {
    /**
     * Compression releases of small engines lift by 0.2 to 1.3 mm; common practice, no source. What is taken of one that was not read [m].
     */
    private static final double UNREAD_RELEASE = 1.3e-3;

    private static final double TURNS = 4 * Math.PI;
    /** No course stays below this share of its nominal: a draw that far out is no valve. */
    private static final double LEAST = 1e-3;

    static Term full(Part valve) {
        return valve == Part.INTAKE_VALVE ? Term.INTAKE_LIFT : Term.EXHAUST_LIFT;
    }

    static Term lash(Part valve) {
        return valve == Part.INTAKE_VALVE ? Term.INTAKE_LASH : Term.EXHAUST_LASH;
    }

    static Term centre(Part valve) {
        return valve == Part.INTAKE_VALVE ? Term.INTAKE_LOBE_CENTRE : Term.EXHAUST_LOBE_CENTRE;
    }

    private static Term duration(Part valve) {
        return valve == Part.INTAKE_VALVE ? Term.INTAKE_DURATION : Term.EXHAUST_DURATION;
    }

    /** Asks for what a valve's motion hangs on; empty while something is missing. */
    static Optional<Lift> of(Asked of, Part valve) {
        of.figure(full(valve));
        of.figure(centre(valve));
        Optional<ValveLift> lift = of.known().lift(valve);
        if (lift.isEmpty()) {
            boolean was = of.isWhole();
            of.figure(Term.CHECKING_LIFT);
            of.figure(duration(valve));
            if (was && of.isWhole()) {
                of.lacks(new Rung.Missing(
                        "lift_tables",
                        valve.label() + " lift table",
                        "read lift every few degrees over the whole lobe, dial on the valve",
                        0));
            }
            return Optional.empty();
        }
        of.takes(lift.get().defaults());
        of.restsOn(lift.get().from());
        double open = valve == Part.EXHAUST_VALVE ? release(of) : 0;
        double peak = lift.get().peakAngle();
        DoubleUnaryOperator shape = angle -> lift.get().at(peak + angle);
        Course course =
                Course.of(angle -> Math.max(open, shape.applyAsDouble(angle > TURNS / 2 ? angle - TURNS : angle)));
        return Optional.of(new Lift(valve, lift.get().full().value(), shape, course));
    }

    /** How far the exhaust valve is held open while the engine is turned over, at every angle: when it is let go is not read. */
    private static double release(Asked of) {
        if (of.value(Term.RELEASE_REACH).filter(NoSuchPart::isSaidBy).isPresent()) {
            of.restsOn(Term.RELEASE_REACH.path());
            return 0;
        }
        Optional<Double> read = of.value(Term.RELEASE_LIFT).map(lift -> lift.high());
        if (read.isPresent()) {
            of.restsOn(Term.RELEASE_LIFT.path());
            return read.get();
        }
        of.takes(
                Term.RELEASE_LIFT.path(),
                "compression release not read: taken to hold the exhaust valve open by 1.3 mm at every angle",
                "the most met on small engines; common practice, no source");
        return UNREAD_RELEASE;
    }

    private double factor(Sizes s) {
        return Math.max(LEAST, s.of(full(valve)) / nominal);
    }

    /** Lift so long after the peak [rad of crank]. */
    double at(Sizes s, double afterPeak) {
        return factor(s) * shape.applyAsDouble(Math.IEEEremainder(afterPeak, TURNS));
    }

    /** Crank angle of the peak: about overlap top dead centre, one turn after the firing one. */
    double peak(Sizes s, double topDeadCentre) {
        double centre = s.of(centre(valve));
        return topDeadCentre + 2 * Math.PI + (valve == Part.INTAKE_VALVE ? centre : -centre) + s.later();
    }

    /** The whole course. */
    Course course(Sizes s, double topDeadCentre) {
        return course.times(factor(s)).later(peak(s, topDeadCentre));
    }
}
