package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import longthrow.core.answer.DynoRuns;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Stated;

/** What one run read, before the weather's correction: a curve, or its peak alone. */
interface RunFigures {
    /** Whether there is a curve; else there is a peak alone. */
    boolean isCurve();

    /** Lowest and highest speed of the curve [rad/s]. */
    double[] reach();

    /** Speeds at which it was read [rad/s], rising; empty where it is a curve at any speed. */
    List<Double> speeds();

    /** Torque at a speed [N m]; NaN outside what was read. */
    double torque(double speed);

    /** The highest torque or power as read; empty where it is not told. */
    Optional<DynoRuns.Peak> peak(Dimension dimension);

    /** Whether the highest lies inside of what was read: at an end of a curve it may lie beyond, and is no peak. */
    boolean hasPeakInside(Dimension dimension);

    /** Doubt of the bench and of the run at a speed, 95 % half-width [N m]; NaN where it is not known. */
    double half(double speed);

    /** What else was logged, and fuel for the work done, by speed; as read, not corrected. */
    default List<DynoRuns.Beside> beside() {
        return List.of();
    }

    /**
     * Of a peak as it was written down.
     * @param handedOn share of the crank's power that reached what was written down; empty where it is not told
     */
    static RunFigures ofPeak(Stated figure, Optional<Measured> handedOn) {
        return new PeakAlone(figure, handedOn);
    }

    /** A figure behind the drive brought to the crank; as it stands where what the drive hands on is not told. */
    static Measured atCrank(Measured behind, Optional<Measured> handedOn) {
        return handedOn.map(share -> Times.over(behind, share)).orElse(behind);
    }

    /** A figure as a dynamometer told it: with its typed ±, else of a doubt that is not known. */
    static Measured told(Stated stated, String what) {
        double value = stated.value().si();
        return stated.expandedDoubt().isPresent()
                ? measured(stated, what)
                : Measured.of(
                        value,
                        List.of(Source.known(
                                "dyno, no ± of " + what,
                                Source.Kind.UNKNOWN,
                                what + ", of which no ± is written",
                                value)));
    }

    /** A figure with its typed ±, exact where there is none: then it has to be said. */
    static Measured measured(Stated stated, String what) {
        double half = stated.expandedDoubt().map(d -> d.si()).orElse(0.0);
        return half == 0
                ? Measured.exact(stated.value().si())
                : Measured.of(stated.value().si(), List.of(Source.at95("dyno " + what, Source.Kind.TYPED, what, half)));
    }

    /** Straight between the nearest two of rising speeds; NaN outside of them. */
    static double between(double[] speeds, IntToDoubleFunction of, double speed) {
        double slack = SAME * speeds[speeds.length - 1];
        if (!(speed >= speeds[0] - slack && speed <= speeds[speeds.length - 1] + slack)) {
            return Double.NaN;
        }
        if (speeds.length == 1) {
            return of.applyAsDouble(0);
        }
        int i = 0;
        while (i < speeds.length - 2 && speed > speeds[i + 1]) {
            i++;
        }
        double share = (speed - speeds[i]) / (speeds[i + 1] - speeds[i]);
        return of.applyAsDouble(i) * (1 - share) + of.applyAsDouble(i + 1) * share;
    }

    /** Two speeds are one within rounding. */
    double SAME = 1e-9;

    /** Highest power or torque alone. */
    record PeakAlone(Stated figure, Optional<Measured> handedOn) implements RunFigures {
        @Override
        public boolean isCurve() {
            return false;
        }

        @Override
        public double[] reach() {
            return new double[] {Double.NaN, Double.NaN};
        }

        @Override
        public List<Double> speeds() {
            return List.of();
        }

        @Override
        public double torque(double speed) {
            return Double.NaN;
        }

        @Override
        public double half(double speed) {
            return Double.NaN;
        }

        @Override
        public boolean hasPeakInside(Dimension dimension) {
            return true;
        }

        @Override
        public Optional<DynoRuns.Peak> peak(Dimension dimension) {
            return figure.value().dimension() == dimension
                    ? Optional.of(new DynoRuns.Peak(
                            atCrank(told(figure, "the dynamometer's figures"), handedOn),
                            Double.NaN,
                            Double.NaN,
                            Double.NaN,
                            ""))
                    : Optional.empty();
        }
    }
}
