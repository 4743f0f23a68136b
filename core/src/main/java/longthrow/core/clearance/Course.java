package longthrow.core.clearance;

import java.util.function.DoubleUnaryOperator;

/**
 * A lift [m] or swing [rad] by crank angle over two turns, whatever it came from: laid down every {@link #STEP} and straight between, so that its steepness
 * over any stretch is known for sure. Against a smooth curve that bends by b per radian squared it is off by b times 4e-7 at most: for a valve with 30 mm
 * 0.00001 mm.
 */
public final class Course {
    /** A tenth of a degree [rad]; a judgement. */
    static final double STEP = Math.toRadians(0.1);

    private static final int CELLS = 7200;
    private static final int BLOCK = 10;
    private static final double PERIOD = 4 * Math.PI;
    private static final Course NONE = new Course(new double[0], new double[0], new double[0], 1, 0, 0, false);

    private final double[] value; // CELLS, at multiples of STEP; empty: nothing moves
    private final double[] least; // smallest slope of each block of cells
    private final double[] most;
    private final double ratio;
    private final double lash;
    private final double later;
    private final boolean clipped;

    private Course(
            double[] value, double[] least, double[] most, double ratio, double lash, double later, boolean clipped) {
        this.value = value;
        this.least = least;
        this.most = most;
        this.ratio = ratio;
        this.lash = lash;
        this.later = later;
        this.clipped = clipped;
    }

    /** Nothing moves. */
    public static Course none() {
        return NONE;
    }

    /**
     * Any course over two turns.
     * @param at by crank angle, 0 to 4 pi; the value at 4 pi is taken to be that at 0
     * @throws IllegalArgumentException where it is not a finite number
     */
    public static Course of(DoubleUnaryOperator at) {
        double[] value = new double[CELLS];
        for (int k = 0; k < CELLS; k++) {
            value[k] = at.applyAsDouble(k * STEP);
            if (!Double.isFinite(value[k])) {
                throw new IllegalArgumentException("a course is " + value[k] + " at " + k / 10.0
                        + " degrees of crank; it must be a finite number at every angle of two turns");
            }
        }
        double[] least = new double[CELLS / BLOCK];
        double[] most = new double[CELLS / BLOCK];
        for (int b = 0; b < least.length; b++) {
            least[b] = Double.POSITIVE_INFINITY;
            most[b] = Double.NEGATIVE_INFINITY;
            for (int k = b * BLOCK; k < (b + 1) * BLOCK; k++) {
                double slope = (value[(k + 1) % CELLS] - value[k]) / STEP;
                least[b] = Math.min(least[b], slope);
                most[b] = Math.max(most[b], slope);
            }
        }
        return new Course(value, least, most, 1, 0, 0, false);
    }

    /**
     * What a valve does by this course of its lobe: ratio times lobe lift less the lash, 0 while that is not taken up.
     * @param ratio &gt; 0
     * @param lash  0 or more [m]
     */
    public Course atValve(double ratio, double lash) {
        if (!(ratio > 0) || Double.isInfinite(ratio) || !(lash >= 0) || Double.isInfinite(lash)) {
            throw new IllegalArgumentException("rocker ratio " + ratio + " and lash " + lash
                    + " m: the ratio must be above 0, the lash 0 or more, both finite");
        }
        if (clipped) {
            throw new IllegalStateException("this course is that of a valve already; start from the lobe's");
        }
        return new Course(value, least, most, this.ratio * ratio, lash, later, true);
    }

    /** The same course times a factor: a lift turned into a swing by an arm. */
    public Course times(double factor) {
        if (!(factor > 0) || Double.isInfinite(factor)) {
            throw new IllegalArgumentException("a course is multiplied by " + factor
                    + "; give a finite number above 0, and turn the hand of what it moves instead of its sign");
        }
        return new Course(value, least, most, ratio * factor, lash * factor, later, clipped);
    }

    /** The same course some crank angle later [rad]; earlier where negative. */
    public Course later(double angle) {
        if (!Double.isFinite(angle)) {
            throw new IllegalArgumentException("a course is shifted by " + angle + " rad; it must be a finite number");
        }
        return new Course(value, least, most, ratio, lash, later + angle, clipped);
    }

    private double cell(double angle) {
        double turned = (angle - later) / PERIOD;
        return (turned - Math.floor(turned)) * CELLS;
    }

    /** Where it stands at a crank angle. */
    public double at(double angle) {
        if (value.length == 0) {
            return 0;
        }
        double cell = cell(angle);
        int k = Math.min((int) cell, CELLS - 1);
        double from = value[k];
        double to = value[k + 1 == CELLS ? 0 : k + 1];
        double raw = ratio * (from + (cell - k) * (to - from)) - lash;
        return clipped && raw < 0 ? 0 : raw;
    }

    /** Slope [per rad] of the stretch an angle lies in. */
    double slope(double angle) {
        if (value.length == 0) {
            return 0;
        }
        double cell = cell(angle);
        int k = Math.min((int) cell, CELLS - 1);
        double from = value[k];
        double to = value[k + 1 == CELLS ? 0 : k + 1];
        return clipped && ratio * (from + (cell - k) * (to - from)) < lash ? 0 : ratio * (to - from) / STEP;
    }

    /** Largest change of the slope from a given one within some angle to either side. */
    double spread(double angle, double half, double slope) {
        if (value.length == 0) {
            return 0;
        }
        double lo = clipped ? 0 : Double.POSITIVE_INFINITY;
        double hi = clipped ? 0 : Double.NEGATIVE_INFINITY;
        double from = cell(angle - half);
        int blocks = Math.min(least.length, (int) ((from % BLOCK + 2 * half / STEP) / BLOCK) + 2);
        int b = Math.min((int) from, CELLS - 1) / BLOCK;
        for (int k = 0; k < blocks; k++) {
            lo = Math.min(lo, ratio * least[b]);
            hi = Math.max(hi, ratio * most[b]);
            b = b + 1 == least.length ? 0 : b + 1;
        }
        return Math.max(hi - slope, slope - lo);
    }
}
