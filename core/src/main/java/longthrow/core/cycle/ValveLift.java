package longthrow.core.cycle;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.motion.LobeCurve;
import longthrow.core.motion.ValveMotion;
import longthrow.core.quantity.Require;

/**
 * Lift of a valve over two turns, by crank angle from firing top dead centre [rad], any number of turns, in the direction of rotation. Sampled once, every half degree, with its slope; between, cubic: as smooth
 * as a lookup needs, off by less than a micrometre for what a camshaft can do. A lookup makes nothing new.
 */
public final class ValveLift {
    /** Two turns [rad]. */
    public static final double PERIOD = 4 * Math.PI;

    /**
     * Relative standard uncertainty of the area under a lift curve whose flanks are assumed: the published motion functions, made to the same peak and duration at the same checking lift, hold 0 to 9 % more
     * than the one assumed, so real lobes are likelier fuller than leaner.
     */
    public static final double FLANK_DOUBT = 0.05;

    private static final int PLACES = 1440;
    private static final double PER_RADIAN = PLACES / PERIOD;

    /** A shut valve is one closer to its seat than this [m]: less than seats and lash are known to. */
    private static final double SHUT = 1e-9;

    private final double[] lift = new double[PLACES + 1];
    /** By place, not by angle. */
    private final double[] slope = new double[PLACES + 1];

    private final double peak;
    private final double peakAngle;
    private final boolean assumed;
    private final double carriedOn;

    private ValveLift(DoubleUnaryOperator at, DoubleUnaryOperator slopeAt, boolean assumed, double carriedOn) {
        int highest = 0;
        boolean shuts = false;
        for (int i = 0; i < PLACES; i++) {
            double angle = i / PER_RADIAN;
            double here = at.applyAsDouble(angle);
            if (!(here >= 0) || Double.isInfinite(here)) {
                throw new IllegalArgumentException("lift of a valve at " + Math.toDegrees(angle) + " degrees is " + here
                        + " m; it must be 0 or above");
            }
            lift[i] = here > SHUT ? here : 0;
            slope[i] = here > SHUT
                    ? Require.finite("slope of the lift [m/rad]", slopeAt.applyAsDouble(angle)) / PER_RADIAN
                    : 0;
            highest = lift[i] > lift[highest] ? i : highest;
            shuts |= lift[i] == 0;
        }
        lift[PLACES] = lift[0];
        slope[PLACES] = slope[0];
        if (!(lift[highest] > 0)) {
            throw new IllegalArgumentException(
                    "a valve whose lash is never taken up: lash is more than the lobe lifts; check lash, ratio and lift");
        }
        if (!shuts) {
            throw new IllegalArgumentException(
                    "a valve that never shuts over two turns; check lash, duration and the angle the table counts from");
        }
        this.peak = lift[highest];
        this.peakAngle = highest / PER_RADIAN;
        this.assumed = assumed;
        this.carriedOn = carriedOn;
    }

    /**
     * As it was read. Where the table ends before the valve is shut, its flank is carried on to the seat as a parabola that meets it level: {@link #carriedOn} says from what lift.
     * @param motion at the valve
     * @param first  angle of the first row, and last of the last one, as the table counts [rad]
     * @param zero   what stands on that scale at firing top dead centre [rad]; its angles grow with the rotation
     */
    public static ValveLift read(ValveMotion motion, double first, double last, double zero) {
        return read(motion::at, motion::slope, first, last, zero);
    }

    /**
     * The same of lift and slope as functions of the table's angle.
     * @param lift  at the valve [m]
     * @param slope of it [m/rad]
     */
    public static ValveLift read(
            DoubleUnaryOperator lift, DoubleUnaryOperator slope, double first, double last, double zero) {
        if (!(last > first && last - first < PERIOD)) {
            throw new IllegalArgumentException("the table reaches from " + first + " to " + last
                    + " rad; the last angle must be above the first, by less than two turns");
        }
        double middle = 0.5 * (first + last);
        End opening = End.of(lift.applyAsDouble(first), slope.applyAsDouble(first), "opens");
        End closing = End.of(lift.applyAsDouble(last), -slope.applyAsDouble(last), "closes");
        DoubleUnaryOperator onTable = angle -> middle + remainder(angle + zero - middle);
        return new ValveLift(
                angle -> {
                    double at = onTable.applyAsDouble(angle);
                    return at < first
                            ? opening.lift(first - at)
                            : at > last ? closing.lift(at - last) : lift.applyAsDouble(at);
                },
                angle -> {
                    double at = onTable.applyAsDouble(angle);
                    return at < first
                            ? -opening.slope(first - at)
                            : at > last ? closing.slope(at - last) : slope.applyAsDouble(at);
                },
                false,
                Math.max(opening.lift, closing.lift));
    }

    /**
     * From the end of a table down to the seat.
     * @param lift  at the end [m]
     * @param reach angle it still takes [rad]
     */
    private record End(double lift, double reach) {
        /** @param rise slope of the lift towards the peak [m/rad] */
        static End of(double lift, double rise, String what) {
            if (lift <= SHUT) {
                return new End(0, 1);
            }
            if (!(rise > 0)) {
                throw new IllegalArgumentException("a lift table ends at " + lift + " m where the valve " + what
                        + ", and does not fall there; read on until the valve is shut");
            }
            return new End(lift, 2 * lift / rise);
        }

        double lift(double beyond) {
            double left = Math.max(0, 1 - beyond / reach);
            return lift * left * left;
        }

        double slope(double beyond) {
            return -2 * lift / reach * Math.max(0, 1 - beyond / reach);
        }
    }

    /**
     * From a cam card's figures, the flanks assumed ({@link LobeCurve#ASSUMED}).
     * @param lobe  its centre counted from firing top dead centre, see {@link #intakeCentre} and {@link #exhaustCentre}
     * @param ratio lift of the valve over that of the lobe, above 0
     * @param lash  gap at the valve [m], 0 or above
     */
    public static ValveLift assumed(LobeCurve lobe, double ratio, double lash) {
        Require.positive("rocker ratio", ratio);
        Require.notNegative("lash [m]", lash);
        if (!(lobe.halfWidth() < 0.5 * PERIOD)) {
            throw new IllegalArgumentException("a lobe that is " + Math.toDegrees(2 * lobe.halfWidth())
                    + " degrees wide; it must be less than 720");
        }
        DoubleUnaryOperator onLobe = angle -> lobe.centre() + remainder(angle - lobe.centre());
        return new ValveLift(
                angle -> Math.max(0, ratio * lobe.at(onLobe.applyAsDouble(angle)) - lash),
                angle -> {
                    double at = onLobe.applyAsDouble(angle);
                    return ratio * lobe.at(at) > lash ? ratio * lobe.slope(at) : 0;
                },
                true,
                0);
    }

    /** Angle from firing top dead centre of an intake lobe centre that is told after top dead centre [rad]. */
    public static double intakeCentre(double afterTop) {
        return 0.5 * PERIOD + afterTop;
    }

    /** The same of an exhaust lobe centre that is told before top dead centre. */
    public static double exhaustCentre(double beforeTop) {
        return 0.5 * PERIOD - beforeTop;
    }

    /** Nearest to nothing, whole periods left out. */
    private static double remainder(double angle) {
        return Math.IEEEremainder(angle, PERIOD);
    }

    /** Lift [m], 0 while shut. */
    public double at(double angle) {
        double place = angle * PER_RADIAN;
        place -= PLACES * Math.floor(place / PLACES);
        int i = Math.min((int) place, PLACES - 1);
        double t = place - i;
        double s = 1 - t;
        double here =
                s * s * ((1 + 2 * t) * lift[i] + t * slope[i]) + t * t * ((3 - 2 * t) * lift[i + 1] - s * slope[i + 1]);
        return here < 0 ? 0 : here; // what is no number stays none
    }

    /** Highest lift [m], to the half degree. */
    public double peak() {
        return peak;
    }

    /** Where it is [rad], 0 to two turns, to the half degree. */
    public double peakAngle() {
        return peakAngle;
    }

    /** Whether flanks are assumed. */
    public boolean isAssumed() {
        return assumed;
    }

    /** Lift up to which a table that stops short of the seat was carried on [m]; 0 where it did not. */
    public double carriedOn() {
        return carriedOn;
    }

    /**
     * Where the valve passes a lift on the way up [rad]: below {@link #peakAngle}, perhaps below 0.
     * @param checking lift [m], 0 (its seat) or above, below the peak
     */
    public double opens(double checking) {
        return crossing(checking, -1);
    }

    /** The same on the way down, above {@link #peakAngle}. */
    public double closes(double checking) {
        return crossing(checking, 1);
    }

    private double crossing(double checking, int direction) {
        if (!(checking >= 0 && checking < peak)) {
            throw new IllegalArgumentException("checking lift is " + checking
                    + " m; it must be 0 or above and below the peak lift, " + peak + " m");
        }
        int steps = 0;
        while (at(peakAngle + direction * (steps + 1) / PER_RADIAN) > checking) {
            steps++;
        }
        double open = peakAngle + direction * steps / PER_RADIAN;
        double shut = peakAngle + direction * (steps + 1) / PER_RADIAN;
        for (int n = 0; n < 50; n++) {
            double middle = 0.5 * (open + shut);
            if (at(middle) > checking) {
                open = middle;
            } else {
                shut = middle;
            }
        }
        return 0.5 * (open + shut);
    }

    /** Mean over two turns of an area that depends on the lift, as of {@link ValveFlow#into} [m2]. */
    public double mean(DoubleUnaryOperator area) {
        double sum = 0;
        for (int i = 0; i < PLACES; i++) {
            sum += area.applyAsDouble(lift[i]);
        }
        return sum / PLACES;
    }
}
