package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
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

    /** Doubt of the bench and of the run at a speed, 95 % half-width [N m]; NaN where it is not known. */
    double half(double speed);

    /** What else was logged, and fuel for the work done, by speed; as read, not corrected. */
    default List<DynoRuns.Beside> beside() {
        return List.of();
    }

    /** Of a peak as it was written down. */
    static RunFigures ofPeak(Stated figure) {
        return new PeakAlone(figure);
    }

    /** A figure with its typed ±. */
    static Measured measured(Stated stated, String what) {
        double half = stated.expandedDoubt().map(d -> d.si()).orElse(0.0);
        return half == 0
                ? Measured.exact(stated.value().si())
                : Measured.of(stated.value().si(), List.of(Source.at95("dyno " + what, Source.Kind.TYPED, what, half)));
    }

    /** Highest power or torque alone. */
    record PeakAlone(Stated figure) implements RunFigures {
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
        public Optional<DynoRuns.Peak> peak(Dimension dimension) {
            return figure.value().dimension() == dimension
                    ? Optional.of(new DynoRuns.Peak(measured(figure, "peak"), Double.NaN, Double.NaN, Double.NaN, ""))
                    : Optional.empty();
        }
    }
}
