package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;

/**
 * What a brake's cell reads under known loads: a straight line through the readings by least squares, turned round. Its doubts are those of the line, of the weights that
 * were hung, and of what the cell reads more or less when unloaded than when loaded.
 */
public final class CellCalibration {
    private static final int FEWEST = 3;
    private static final Formula FORCE = Formula.of("force by the cell", force());

    private final double centreLoad;
    private final double lowLoad;
    private final double highLoad;
    private final Measured level; // reading at the centre load
    private final Measured gain; // reading per newton
    private final Measured weights; // 1 with the doubt they share
    private final Measured hysteresis; // 0 with its doubt [N]
    private final double zero;
    private final double gap;

    private CellCalibration(
            double[] loads,
            double centreLoad,
            Measured level,
            Measured gain,
            Measured weights,
            double gap,
            boolean both) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double load : loads) {
            low = Math.min(low, load);
            high = Math.max(high, load);
        }
        this.centreLoad = centreLoad;
        this.lowLoad = low;
        this.highLoad = high;
        this.level = level;
        this.gain = gain;
        this.weights = weights;
        this.gap = both ? gap : Double.NaN;
        this.hysteresis = both && gap != 0
                ? Measured.of(
                        0,
                        List.of(Source.rectangular(
                                "cell hysteresis",
                                Source.Kind.INSTRUMENT,
                                "what the cell reads on the way down",
                                Math.abs(gap) / 2)))
                : Measured.exact(0);
        this.zero = level.value() - gain.value() * centreLoad;
    }

    /** Which way the load was changed to come to it. */
    public enum Way {
        /** Weight put on. */
        UP,
        /** Weight taken off. */
        DOWN
    }

    /**
     * One line of the sheet.
     * @param newtons hung, less than nought where it pulls the other way
     * @param reading of the cell, in whatever it reads
     */
    public record Load(double newtons, double reading, Way way) {}

    /**
     * What came of a sheet.
     * @param calibration empty where a remark says why
     * @param remarks     what to know
     */
    public record Read(Optional<CellCalibration> calibration, List<Remark> remarks) {
        public Read {
            remarks = List.copyOf(remarks);
        }
    }

    private static Expression force() {
        Expression load = Expression.input("reading")
                .minus(Expression.input("level"))
                .dividedBy(Expression.input("gain"))
                .plus(Expression.input("centre"));
        return load.times(Expression.input("weights")).plus(Expression.input("hysteresis"));
    }

    /**
     * Reads a calibration sheet.
     * @param weights 1, with the relative doubt that all loads share: scales they were weighed on, gravity, arm they hung from
     */
    public static Read of(List<Load> loads, Measured weights) {
        int n = loads.size();
        long different = loads.stream().map(Load::newtons).distinct().count();
        if (n < FEWEST || different < 3) {
            return refused(String.format(
                    Locale.ROOT,
                    "The calibration has %d line%s at %d load%s; at least %d lines at 3 loads are needed to tell a line and its scatter. Hang more, up and down",
                    n,
                    n == 1 ? "" : "s",
                    different,
                    different == 1 ? "" : "s",
                    FEWEST));
        }
        double[] x = loads.stream().mapToDouble(Load::newtons).toArray();
        double[] y = loads.stream().mapToDouble(Load::reading).toArray();
        double centre = 0;
        double mean = 0;
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                return refused("Line " + (i + 1) + " of the calibration has no number for load or reading");
            }
            centre += x[i] / n;
            mean += y[i] / n;
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            xx += (x[i] - centre) * (x[i] - centre);
            xy += (x[i] - centre) * (y[i] - mean);
        }
        double slope = xy / xx;
        double[] left = new double[n];
        double squares = 0;
        for (int i = 0; i < n; i++) {
            left[i] = y[i] - mean - slope * (x[i] - centre);
            squares += left[i] * left[i];
        }
        double s = Math.sqrt(squares / (n - 2));
        double ofSlope = s / Math.sqrt(xx);
        if (!(Math.abs(slope) > StudentT.factor(0.95, n - 2.0) * ofSlope) || slope == 0) {
            return refused("The cell's readings do not follow the loads: check the columns of the calibration sheet");
        }
        List<Remark> remarks = new ArrayList<>();
        notStraight(x, left, centre, xx, s, remarks);
        double[] byWay = byWay(loads, left);
        boolean both = Double.isFinite(byWay[0]) && Double.isFinite(byWay[1]);
        double gap = (byWay[1] - byWay[0]) / slope;
        if (!both) {
            remarks.add(
                    Remark.warning(
                            "Loads were hung one way only: what the cell reads more or less when load comes off is not known and not in the doubt. Take the weights off one by one and read again"));
        }
        CellCalibration made = new CellCalibration(
                x,
                centre,
                figure(mean, "cell level", "line of the calibration, level", s / Math.sqrt(n), n - 2.0),
                figure(slope, "cell gain", "line of the calibration, slope", ofSlope, n - 2.0),
                weights,
                gap,
                both);
        return new Read(Optional.of(made), remarks);
    }

    private static Read refused(String why) {
        return new Read(Optional.empty(), List.of(new Remark(Remark.Weight.NO_CURVE, why)));
    }

    private static Measured figure(double value, String id, String label, double u, double freedom) {
        return u > 0
                ? Measured.of(value, List.of(new Source(id, Source.Kind.SCATTER, label, u, freedom, u)))
                : Measured.exact(value);
    }

    /** Means of what the line leaves over, on the way up and on the way down, over loads that were read both ways. */
    private static double[] byWay(List<Load> loads, double[] left) {
        double[] sum = new double[2];
        int[] count = new int[2];
        for (int i = 0; i < left.length; i++) {
            Load load = loads.get(i);
            boolean otherWay = loads.stream().anyMatch(l -> l.newtons() == load.newtons() && l.way() != load.way());
            if (otherWay) {
                int way = load.way() == Way.UP ? 0 : 1;
                sum[way] += left[i];
                count[way]++;
            }
        }
        return new double[] {sum[0] / count[0], sum[1] / count[1]};
    }

    /** Whether a parabola would fit better than chance has it: t test of its coefficient. */
    private static void notStraight(
            double[] x, double[] left, double centre, double xx, double s, List<Remark> remarks) {
        int n = x.length;
        double cubes = 0;
        for (double v : x) {
            cubes += Math.pow(v - centre, 3);
        }
        double bendBend = 0;
        double bendLeft = 0;
        double[] bend = new double[n];
        for (int i = 0; i < n; i++) {
            double d = x[i] - centre;
            bend[i] = d * d - xx / n - d * cubes / xx;
            bendBend += bend[i] * bend[i];
            bendLeft += bend[i] * left[i];
        }
        if (n < 5 || !(bendBend > 0) || s == 0) {
            return;
        }
        double c = bendLeft / bendBend;
        double rest = Math.max(0, s * s * (n - 2) - c * bendLeft) / (n - 3);
        if (Math.abs(c) > StudentT.factor(0.99, n - 3.0) * Math.sqrt(rest / bendBend)) {
            double most = 0;
            for (double b : bend) {
                most = Math.max(most, Math.abs(c * b));
            }
            remarks.add(Remark.warning(String.format(
                    Locale.ROOT,
                    "The cell's line is not straight: readings bend away from it by up to %.3g. Check what the arm rests on and whether the cell is overloaded; the doubt of the line covers part of it only",
                    most)));
        }
    }

    /** By a reading [N]. */
    public Measured force(double reading) {
        return Measured.through(FORCE, name -> switch (name) {
            case "reading" -> Measured.exact(reading);
            case "level" -> level;
            case "gain" -> gain;
            case "centre" -> Measured.exact(centreLoad);
            case "weights" -> weights;
            default -> hysteresis;
        });
    }

    double newtonsPerReading() {
        return weights.value() / gain.value();
    }

    /** Whether a force lies between the loads that were hung. */
    public boolean covers(double newtons) {
        double margin = 1e-9 * (highLoad - lowLoad);
        return newtons >= lowLoad - margin && newtons <= highLoad + margin;
    }

    /**
     * Whether a force lies so far outside the loads that were hung that the line says nothing of it: further than the loads reach, once more. Judgement, no source.
     */
    boolean isFarBeyond(double newtons) {
        double reach = highLoad - lowLoad;
        return newtons > highLoad + reach || newtons < lowLoad - reach;
    }

    /** What the line reads without load. */
    public double zero() {
        return zero;
    }

    /** Reading for a newton. */
    public Measured gain() {
        return gain;
    }

    /** How many newtons more the cell tells on the way down than on the way up; NaN where that was not read. */
    public double hysteresis() {
        return gap;
    }

    double highLoad() {
        return highLoad;
    }

    double lowLoad() {
        return lowLoad;
    }
}
