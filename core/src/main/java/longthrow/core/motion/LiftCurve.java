package longthrow.core.motion;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * Lift against crank angle as read with degree wheel and dial, smoothed (docs/decisions/0007-smoothing.md), where the dial stood. Angles [rad] as
 * written, lift [m]. What is asked of it carries the doubt of the table's scatter and of the tools, the latter shared with all that was read with them.
 */
public final class LiftCurve {
    private static final double SEARCH_STEP = Math.toRadians(0.2);
    private static final int HALVINGS = 60;
    /** Reach of a second difference to each side: ten degrees of the camshaft, long against scatter, short against a nose; a judgement. */
    private static final double REACH = Math.toRadians(20);
    /** The wider one that shows how much the reach matters, times {@link #REACH}; a judgement. */
    private static final double WIDER = 1.4;

    private final SmoothingSpline spline;
    private final String place;
    private final String label;
    private final Bench bench;
    private final double first;
    private final double last;
    private final double step;
    private final double peak;
    private final double[] before;
    private final double[] after;
    private final double steepestUp;
    private final double steepestDown;

    /** NaN where the table is too short to tell. */
    private final double sharpestAt;

    /**
     * How the table was read.
     * @param liftScatter  standard deviation of one lift [m], &gt; 0
     * @param freedom      degrees of freedom behind it
     * @param angleScatter standard deviation of setting the wheel to one row [rad]; the flank turns it into lift
     * @param wheel        errors that move every angle alike, by source, standard uncertainty [rad]
     * @param dial         errors that move every lift alike, by source [m]
     * @param gain         errors that stretch every lift, by source, as a share
     */
    public record Bench(
            double liftScatter,
            double freedom,
            double angleScatter,
            Map<Source, Double> wheel,
            Map<Source, Double> dial,
            Map<Source, Double> gain) {
        public Bench {
            if (!(liftScatter > 0) || !(freedom > 0) || !(angleScatter >= 0)) {
                throw new IllegalArgumentException(
                        "scatter of lift " + liftScatter + " m, degrees of freedom " + freedom + ", scatter of angle "
                                + angleScatter + " rad: the first two must be above 0, the last not below");
            }
            wheel = Map.copyOf(wheel);
            dial = Map.copyOf(dial);
            gain = Map.copyOf(gain);
        }
    }

    /**
     * Where the curve passes a lift on the way up and on the way down.
     * @param opens  angle on the way up [rad]
     * @param closes angle on the way down [rad]
     */
    public record Span(Measured opens, Measured closes) {
        /** Halfway, equal lift each side. */
        public Measured centre() {
            return combined(0.5, 0.5);
        }

        public Measured duration() {
            return combined(-1, 1);
        }

        private Measured combined(double a, double b) {
            Map<Source, Double> sum = new LinkedHashMap<>();
            opens.contributions().forEach((source, c) -> sum.merge(source, a * c, Double::sum));
            closes.contributions().forEach((source, c) -> sum.merge(source, b * c, Double::sum));
            return Measured.withContributions(a * opens.value() + b * closes.value(), sum);
        }
    }

    private LiftCurve(
            SmoothingSpline spline, String place, String label, Bench bench, double[] angles, boolean fromPeak) {
        this.spline = spline;
        this.place = place;
        this.label = label;
        this.bench = bench;
        this.last = angles[angles.length - 1];
        this.first = fromPeak ? -last : angles[0];
        this.step = (last - angles[0]) / (angles.length - 1);
        this.peak = fromPeak ? 0 : highest();
        this.before = lifts(-1);
        this.after = lifts(1);
        this.steepestUp = steepestAngle(1);
        this.steepestDown = steepestAngle(-1);
        this.sharpestAt = sharpestAngle();
    }

    /** Lifts from the peak outward, a search step apart: crossings are asked for again and again. */
    private double[] lifts(int direction) {
        int count = 1 + (int) Math.floor((direction < 0 ? peak - first : last - peak) / SEARCH_STEP);
        double[] lifts = new double[count];
        for (int k = 0; k < count; k++) {
            lifts[k] = spline.at(peak + direction * SEARCH_STEP * k);
        }
        return lifts;
    }

    /**
     * Through a table.
     * @param place    in the build file, the name of its scatter
     * @param label    whose doubt it is, for people
     * @param angles   rising [rad]
     * @param fromPeak whether angles count from the peak and the other flank is taken as the mirror of this one; then the first must be 0
     * @throws IllegalArgumentException when there are fewer than four rows or the angles do not rise
     */
    public static LiftCurve of(
            String place, String label, double[] angles, double[] lifts, boolean fromPeak, Bench bench) {
        if (angles.length < 4) {
            throw new IllegalArgumentException(place + " has " + angles.length + " rows; a curve needs 4 at least");
        }
        if (fromPeak && angles[0] != 0) {
            throw new IllegalArgumentException(
                    place + " counts from the peak but starts at " + angles[0] + " rad; it must start at 0");
        }
        Knots knots = fromPeak ? Knots.mirrored(angles) : Knots.natural(angles);
        double[] deviations = new double[angles.length];
        java.util.Arrays.fill(deviations, bench.liftScatter);
        SmoothingSpline first = SmoothingSpline.likeliest(knots, lifts, deviations, bench.freedom);
        for (int k = 0; k < deviations.length; k++) {
            deviations[k] = Math.hypot(bench.liftScatter, first.slope(angles[k]) * bench.angleScatter);
        }
        SmoothingSpline spline = SmoothingSpline.likeliest(knots, lifts, deviations, bench.freedom);
        return new LiftCurve(spline, place, label, bench, angles, fromPeak);
    }

    /** Lift at an angle between the first and the last row. */
    public double at(double angle) {
        return spline.at(angle);
    }

    /** Slope of the lift [m/rad]; times the speed of the crank it is the velocity. */
    public double slope(double angle) {
        return spline.slope(angle);
    }

    /** Second derivative of the lift [m/rad2]; times the speed of the crank squared it is the acceleration at steady speed. */
    public double bend(double angle) {
        return spline.bend(angle);
    }

    /** Standard uncertainty of the lift by scatter and by what lies between the rows; tools left out. */
    public double deviation(double angle) {
        return spline.deviation(angle);
    }

    /** As {@link SmoothingSpline#slopeDeviation}. */
    public double slopeDeviation(double angle) {
        return spline.slopeDeviation(angle);
    }

    /** As {@link SmoothingSpline#bendScatter}. */
    public double bendScatter(double angle) {
        return spline.bendScatter(angle);
    }

    /** Scatter found in the table over the scatter stated. */
    public double scatterRatio() {
        return spline.scatterRatio();
    }

    /** Angle of the highest lift. */
    public double peakAngle() {
        return peak;
    }

    /** Highest lift. Its angle does not matter: there the curve is level. */
    public Measured peak() {
        double lift = spline.at(peak);
        Map<Source, Double> errors = stretched("peak", spline.deviation(peak), lift);
        bench.dial.forEach((source, c) -> errors.merge(source, c, Double::sum));
        return Measured.withContributions(lift, errors);
    }

    /** Whether the table reaches this angle. */
    public boolean reaches(double angle) {
        return angle >= first && angle <= last;
    }

    /**
     * Lift where a true angle stands, tools included.
     * @param angle within the table, with its own doubt
     */
    public Measured lift(Measured angle) {
        double at = angle.value();
        double lift = spline.at(at);
        double slope = spline.slope(at);
        Map<Source, Double> errors = stretched("lift", spline.deviation(at), lift);
        bench.dial.forEach((source, c) -> errors.merge(source, c, Double::sum));
        bench.wheel.forEach((source, c) -> errors.merge(source, -slope * c, Double::sum));
        angle.contributions().forEach((source, c) -> errors.merge(source, slope * c, Double::sum));
        return Measured.withContributions(lift, errors);
    }

    /** Steepest slope on the way up or down, whichever is greater [m/rad]. A wrong zero of the dial or the wheel is not in it. */
    public Measured steepest() {
        double at =
                Math.abs(spline.slope(steepestUp)) >= Math.abs(spline.slope(steepestDown)) ? steepestUp : steepestDown;
        double slope = Math.abs(spline.slope(at));
        return Measured.withContributions(slope, stretched("slope", spline.slopeDeviation(at), slope));
    }

    /**
     * Most negative second derivative over the nose, that is between the steepest places of the two flanks [m/rad2]. Found as a second difference of lifts so
     * far apart that scatter hardly counts, of which the walk gives the band that it does not give of a second derivative at a point; such a difference falls
     * short of the extreme by about the square of its reach, so a wider one tells by how much: that is put right, and stands in the doubt as a whole
     * (docs/decisions/0010-lift-tables-as-readings.md). Empty where the table is too short.
     */
    public Optional<Measured> sharpest() {
        return Double.isNaN(sharpestAt) ? Optional.empty() : Optional.of(bendByDifference(sharpestAt, "nose", 0));
    }

    private double sharpestAngle() {
        double from = Math.max(steepestUp, first + WIDER * REACH);
        double to = Math.min(steepestDown, last - WIDER * REACH);
        if (from > to) {
            return Double.NaN;
        }
        double best = from;
        for (double at = from; at <= to; at += SEARCH_STEP) {
            best = difference(at, REACH) < difference(best, REACH) ? at : best;
        }
        return best;
    }

    /**
     * Second derivative at a place that is slowed down [m/rad2], between the steepest places of the flanks: as {@link #bendWithDoubt}, or as a difference over
     * {@link #sharpest}'s reach where that is surer, as it is of a table of many rows that scatter: each row more tells the spline's own second derivative worse.
     */
    public Measured bendWhereSlowed(double angle) {
        Measured atPlace = bendWithDoubt(angle);
        boolean isInReach = angle >= Math.max(steepestUp, first + WIDER * REACH)
                && angle <= Math.min(steepestDown, last - WIDER * REACH);
        if (!isInReach) {
            return atPlace;
        }
        Measured byDifference = bendByDifference(angle, "bend", Math.abs(shortBy(sharpestAt)));
        return byDifference.standardUncertainty() < atPlace.standardUncertainty() ? byDifference : atPlace;
    }

    /** By how much the difference at a place falls short of the second derivative there, by a wider one. */
    private double shortBy(double at) {
        return (difference(at, WIDER * REACH) - difference(at, REACH)) / (WIDER * WIDER - 1);
    }

    /** @param shape what the shape of the lobe may hide at least [m/rad2]: at a flank, where the difference bends one way and the other, what it hides at the nose */
    private Measured bendByDifference(double at, String which, double shape) {
        double bend = difference(at, REACH);
        double shortBy = shortBy(at);
        Map<Source, Double> errors = stretched(which, extremeDeviation(at), bend - shortBy);
        Source reach = Source.rectangular(
                place + " shape of the nose",
                Source.Kind.ASSUMED,
                "shape of the nose",
                Math.max(shape, Math.abs(shortBy)));
        errors.put(reach, reach.standardUncertainty());
        return Measured.withContributions(bend - shortBy, errors);
    }

    /** Second difference of the lift over the square of its reach. */
    private double difference(double at, double reach) {
        return (spline.at(at + reach) - 2 * spline.at(at) + spline.at(at - reach)) / (reach * reach);
    }

    /** Standard deviation of the extreme by the walk: of {@link #difference} and its wider sister, put together. */
    private double extremeDeviation(double at) {
        double wider = WIDER * REACH;
        double share = 1 / (WIDER * WIDER - 1);
        double near = (1 + share) / (REACH * REACH);
        double far = -share / (wider * wider);
        double[] x = {at - wider, at - REACH, at, at + REACH, at + wider};
        double[] factor = {far, near, -2 * (near + far), near, far};
        double variance = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < x.length; j++) {
                variance += factor[i] * factor[j] * spline.covariance(x[i], 0, x[j], 0);
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /**
     * Second derivative at an angle with the doubt of scatter, of what stretches the lifts (gain and direction of the dial), of the wheel, which shows the
     * place elsewhere, and of the smoothing as far as smoothing twice shows it. What the true curve does between the readings is not in it: no bound for that is
     * known (docs/decisions/0010-lift-tables-as-readings.md).
     */
    public Measured bendWithDoubt(double angle) {
        double bend = spline.bend(angle);
        Map<Source, Double> errors = stretched("bend", spline.bendScatter(angle), bend);
        double pull = Math.abs(spline.bendPull(angle));
        if (pull > 0) {
            Source smoothing =
                    Source.rectangular(place + " smoothing", Source.Kind.ASSUMED, "smoothing of the " + label, pull);
            errors.put(smoothing, smoothing.standardUncertainty());
        }
        double before = Math.max(first, angle - step);
        double after = Math.min(last, angle + step);
        double jerk = (spline.bend(after) - spline.bend(before)) / (after - before);
        bench.wheel.forEach((source, c) -> errors.merge(source, -jerk * c, Double::sum));
        return Measured.withContributions(bend, errors);
    }

    /** Scatter, and what stretches every lift and so its slope and bend by the same share. */
    private Map<Source, Double> stretched(String which, double deviation, double figure) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        errors.put(scatter(which), deviation);
        bench.gain.forEach((source, share) -> errors.merge(source, share * figure, Double::sum));
        return errors;
    }

    /** Where the flank before (sign 1) or after (sign -1) the peak is steepest. */
    private double steepestAngle(int sign) {
        double best = peak;
        double end = sign > 0 ? first : last;
        for (double at = peak; sign > 0 ? at >= end : at <= end; at -= sign * SEARCH_STEP) {
            best = sign * spline.slope(at) > sign * spline.slope(best) ? at : best;
        }
        return best;
    }

    /**
     * Where the curve passes this lift, going out from the peak; empty when the table does not come down to it on both sides.
     * @param level above the base circle [m], with its own doubt
     */
    public Optional<Span> at(Measured level) {
        double up = crossing(level.value(), -1);
        double down = crossing(level.value(), 1);
        if (Double.isNaN(up) || Double.isNaN(down)) {
            return Optional.empty();
        }
        double slopeUp = spline.slope(up);
        double slopeDown = spline.slope(down);
        double varianceUp = spline.covariance(up, 0, up, 0) / (slopeUp * slopeUp);
        double together = spline.covariance(up, 0, down, 0) / (slopeUp * slopeDown);
        double varianceDown = spline.covariance(down, 0, down, 0) / (slopeDown * slopeDown);
        double own = Math.sqrt(Math.max(0, varianceDown - together * together / varianceUp));
        Map<Source, Double> opens = tools(level, slopeUp);
        Map<Source, Double> closes = tools(level, slopeDown);
        // two independent sources that make both errors and their correlation (Cholesky)
        opens.put(scatter("up"), Math.sqrt(varianceUp));
        closes.put(scatter("up"), together / Math.sqrt(varianceUp));
        closes.put(scatter("down"), own);
        return Optional.of(new Span(Measured.withContributions(up, opens), Measured.withContributions(down, closes)));
    }

    /** A lift read too high is passed too early on the way up and too late on the way down. */
    private Map<Source, Double> tools(Measured level, double slope) {
        Map<Source, Double> errors = new LinkedHashMap<>(bench.wheel);
        level.contributions().forEach((source, c) -> errors.merge(source, c / slope, Double::sum));
        bench.dial.forEach((source, c) -> errors.merge(source, -c / slope, Double::sum));
        bench.gain.forEach((source, share) -> errors.merge(source, -share * level.value() / slope, Double::sum));
        return errors;
    }

    private Source scatter(String which) {
        return new Source(place + " scatter " + which, Source.Kind.SCATTER, label, 1, spline.freedom(), 1, place);
    }

    private double crossing(double level, int direction) {
        double[] lifts = direction < 0 ? before : after;
        int k = 0;
        while (k < lifts.length && lifts[k] > level) {
            k++;
        }
        if (k == 0 || k == lifts.length) {
            return Double.NaN;
        }
        double inner = peak + direction * SEARCH_STEP * (k - 1);
        double outer = peak + direction * SEARCH_STEP * k;
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middle = 0.5 * (inner + outer);
            if (spline.at(middle) > level) {
                inner = middle;
            } else {
                outer = middle;
            }
        }
        return 0.5 * (inner + outer);
    }

    private double highest() {
        double best = first;
        for (double at = first; at <= last; at += SEARCH_STEP) {
            best = spline.at(at) > spline.at(best) ? at : best;
        }
        double low = Math.max(first, best - SEARCH_STEP);
        double high = Math.min(last, best + SEARCH_STEP);
        if (!(spline.slope(low) > 0 && spline.slope(high) < 0)) {
            return best;
        }
        for (int k = 0; k < HALVINGS; k++) {
            double middle = 0.5 * (low + high);
            if (spline.slope(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
