package longthrow.core.motion;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Where a cubic spline has its knots, and all of it that does not depend on the figures: with natural ends (no curvature beyond them) or periodic.
 * Second derivatives follow from the values as R^-1 Q' g and the roughness, the integral of the squared second derivative, is g' Q R^-1 Q' g
 * (Reinsch, Numer. Math. 10 (1967) 177; Green and Silverman, Nonparametric Regression and Generalized Linear Models (1994), section 2.1).
 *
 * <p>A spline is also the mean of what is known of an integrated random walk (Wahba 1978, 1983); {@link #between} is what that walk does between the
 * knots, so that a reading half a step away from the next knows less than one on it.
 */
final class Knots {
    /** What happens at the ends. */
    private enum Ends {
        NATURAL,
        PERIODIC,
        /** The curve is its own mirror image about the first knot. */
        MIRRORED
    }

    private final double[] x;
    private final Ends ends;
    private final double period; // 0 where there is none
    /** Second derivatives at the knots as weights of the values there. */
    private final RealMatrix bends;

    private final RealMatrix roughness;
    private final double[][] walk; // covariance of the walk between knots

    private Knots(double[] x, Ends ends, double period) {
        this.x = x;
        this.ends = ends;
        this.period = period;
        int n = x.length;
        boolean round = ends == Ends.PERIODIC;
        int first = ends == Ends.NATURAL ? 1 : 0;
        int inner = round ? n : n - 1 - first;
        Array2DRowRealMatrix q = new Array2DRowRealMatrix(n, inner);
        Array2DRowRealMatrix r = new Array2DRowRealMatrix(inner, inner);
        for (int j = 0; j < inner; j++) {
            int at = j + first;
            double after = step(at);
            q.addToEntry(at, j, -1 / after);
            q.addToEntry((at + 1) % n, j, 1 / after);
            r.addToEntry(j, j, after / 3);
            if (at > 0 || round) { // on a mirror the slope before the knot is nothing
                int left = Math.floorMod(at - 1, n);
                double before = step(left);
                q.addToEntry(left, j, 1 / before);
                q.addToEntry(at, j, -1 / before);
                r.addToEntry(j, j, before / 3);
            }
            if (round || j + 1 < inner) {
                r.addToEntry(j, (j + 1) % inner, after / 6);
                r.addToEntry((j + 1) % inner, j, after / 6);
            }
        }
        RealMatrix innerBends = new LUDecomposition(r).getSolver().solve(q.transpose());
        RealMatrix all = new Array2DRowRealMatrix(n, n);
        all.setSubMatrix(innerBends.getData(), first, 0);
        this.bends = all;
        RealMatrix k = q.multiply(innerBends);
        this.roughness = k.add(k.transpose()).scalarMultiply(0.5);
        this.walk = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                walk[i][j] = walk(x[i], x[j], 0, 0);
            }
        }
    }

    /** Natural ends: straight beyond the first and the last knot. */
    static Knots natural(double... x) {
        return new Knots(checked(x, 3), Ends.NATURAL, 0);
    }

    /**
     * Periodic.
     * @param period longer than from the first knot to the last
     */
    static Knots periodic(double period, double... x) {
        double[] copy = checked(x, 4);
        if (!(period > copy[copy.length - 1] - copy[0])) {
            throw new IllegalArgumentException("period is " + period + "; it must be longer than the "
                    + (copy[copy.length - 1] - copy[0]) + " from the first knot to the last");
        }
        return new Knots(copy, Ends.PERIODIC, period);
    }

    /** Mirrored about the first knot; a natural end at the last. */
    static Knots mirrored(double... x) {
        return new Knots(checked(x, 3), Ends.MIRRORED, 0);
    }

    private static double[] checked(double[] x, int least) {
        if (x.length < least) {
            throw new IllegalArgumentException(
                    "a spline of this kind needs at least " + least + " knots, not " + x.length);
        }
        for (int i = 1; i < x.length; i++) {
            if (!(x[i] > x[i - 1])) {
                throw new IllegalArgumentException(
                        "knot " + x[i] + " does not follow " + x[i - 1] + "; knots must rise");
            }
        }
        return x.clone();
    }

    int count() {
        return x.length;
    }

    double x(int i) {
        return x[i];
    }

    /** How many shapes have no roughness: a constant, and a slope where the ends are free. */
    int smoothShapes() {
        return ends == Ends.NATURAL ? 2 : 1;
    }

    RealMatrix roughness() {
        return roughness;
    }

    /** From knot i to the next. */
    private double step(int i) {
        return i + 1 < x.length ? x[i + 1] - x[i] : x[0] + period - x[i];
    }

    /**
     * The spline at a point, or a derivative of it, as weights of its values at the knots.
     * @param order 0 value, 1 slope, 2 second derivative
     */
    double[] weights(double at, int order) {
        int n = x.length;
        if (ends == Ends.MIRRORED && at < x[0]) {
            double[] image = weights(2 * x[0] - at, order);
            return order == 1 ? negated(image) : image;
        }
        boolean round = ends == Ends.PERIODIC;
        double t = round ? x[0] + modulo(at - x[0]) : at;
        double[] weights = new double[n];
        if (!round && (t < x[0] || t > x[n - 1])) {
            return straightOn(t, order, weights);
        }
        int found = Arrays.binarySearch(x, t);
        int i = found >= 0 ? found : -found - 2;
        i = round ? i : Math.min(i, n - 2);
        int next = (i + 1) % n;
        double h = step(i);
        double b = (t - x[i]) / h;
        double a = 1 - b;
        double ga;
        double gb;
        double wa;
        double wb;
        switch (order) {
            case 0 -> {
                wa = a;
                wb = b;
                ga = (a * a * a - a) * h * h / 6;
                gb = (b * b * b - b) * h * h / 6;
            }
            case 1 -> {
                wa = -1 / h;
                wb = 1 / h;
                ga = -(3 * a * a - 1) * h / 6;
                gb = (3 * b * b - 1) * h / 6;
            }
            case 2 -> {
                wa = 0;
                wb = 0;
                ga = a;
                gb = b;
            }
            default -> throw new IllegalArgumentException("order is " + order + "; a cubic spline has 0, 1 and 2");
        }
        for (int k = 0; k < n; k++) {
            weights[k] = ga * bends.getEntry(i, k) + gb * bends.getEntry(next, k);
        }
        weights[i] += wa;
        weights[next] += wb;
        return weights;
    }

    private static double[] negated(double[] weights) {
        for (int k = 0; k < weights.length; k++) {
            weights[k] = -weights[k];
        }
        return weights;
    }

    private double[] straightOn(double t, int order, double[] weights) {
        if (order == 2) {
            return weights;
        }
        double end = t < x[0] ? x[0] : x[x.length - 1];
        double[] slope = weights(end, 1);
        if (order == 1) {
            return slope;
        }
        double[] value = weights(end, 0);
        for (int k = 0; k < weights.length; k++) {
            weights[k] = value[k] + slope[k] * (t - end);
        }
        return weights;
    }

    private double modulo(double distance) {
        return distance - period * Math.floor(distance / period);
    }

    /**
     * Covariance of what the walk does at two points when its values at the knots are known, for a walk of unit strength.
     * @param orderT 0 value or 1 slope; the second derivative of the walk is white noise and has no variance
     */
    double between(double t, int orderT, double u, int orderU) {
        double[] a = weights(t, orderT);
        double[] b = weights(u, orderU);
        double sum = walk(t, u, orderT, orderU);
        for (int i = 0; i < x.length; i++) {
            double row = 0;
            for (int j = 0; j < x.length; j++) {
                row += walk[i][j] * b[j];
            }
            sum += a[i] * row - a[i] * walk(x[i], u, 0, orderU) - b[i] * walk(t, x[i], orderT, 0);
        }
        return sum;
    }

    /**
     * Covariance of the walk at two points, up to the shapes without roughness: |d|3 / 12 of their distance, with its mirror image added on a mirror,
     * or for a period P3 times minus the fourth Bernoulli polynomial over 24 (Wahba, Spline Models for Observational Data (1990), section 2.1).
     */
    private double walk(double t, double u, int orderT, int orderU) {
        int order = orderT + orderU;
        double sign = orderU == 1 ? -1 : 1; // each slope by the second point turns the sign
        return switch (ends) {
            case NATURAL -> sign * apart(t - u, order);
            case MIRRORED -> sign * apart(t - u, order) + apart(t + u - 2 * x[0], order);
            case PERIODIC -> sign * around(modulo(t - u) / period, order);
        };
    }

    private static double apart(double d, int order) {
        double size = Math.abs(d);
        return switch (order) {
            case 0 -> size * size * size / 12;
            case 1 -> d * size / 4;
            default -> size / 2;
        };
    }

    /** By the share of the period. */
    private double around(double s, int order) {
        return switch (order) {
            case 0 -> -period * period * period * (s * s * (s - 1) * (s - 1) - 1 / 30.0) / 24;
            case 1 -> -period * period * s * (s - 0.5) * (s - 1) / 6;
            default -> -period * (s * s - s + 1 / 6.0) / 2;
        };
    }
}
