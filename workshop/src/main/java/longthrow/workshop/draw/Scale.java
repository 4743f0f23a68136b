package longthrow.workshop.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.UnitSystem;

/** An axis of a chart: a stretch of pixels for a stretch of figures, in the unit that the owner wants first, evenly or by their logarithm. */
final class Scale {
    private static final double[] ROUND = {1, 2, 5};

    /** Ticks nearer than this run together; layout [pixels]. */
    private static final double CLOSEST = 28;

    private final Unit unit;
    private final double low;
    private final double high;
    private final double from;
    private final double to;
    private final boolean logarithmic;
    private final double step; // from one tick to the next; 0 where none is laid down

    /**
     * An axis.
     * @param low         least figure [in the unit]
     * @param high        largest figure [in the unit], greater than the least
     * @param from        pixel of the least
     * @param to          pixel of the largest
     * @param logarithmic whether every tenfold is as long; then the least is above 0
     * @param step        from one tick to the next [in the unit]; 0 where none is laid down
     */
    private Scale(Unit unit, double low, double high, double from, double to, boolean logarithmic, double step) {
        if (!(high > low) || (logarithmic && !(low > 0))) {
            throw new IllegalArgumentException("an axis from " + low + " to " + high + " " + unit);
        }
        this.unit = unit;
        this.low = low;
        this.high = high;
        this.from = from;
        this.to = to;
        this.logarithmic = logarithmic;
        this.step = step;
    }

    /** Evenly from one figure to another [coherent SI], as they are. */
    static Scale between(Dimension dimension, UnitSystem units, double low, double high, double from, double to) {
        Unit unit = unit(dimension, units, Math.max(Math.abs(low), Math.abs(high)));
        return new Scale(unit, unit.fromSi(low), unit.fromSi(high), from, to, false, 0);
    }

    /** Evenly from one figure to another [in the unit], as they are. */
    static Scale plain(Unit unit, double low, double high, double from, double to) {
        return new Scale(unit, low, high, from, to, false, 0);
    }

    /** Evenly over round figures that hold both [in the unit]. */
    static Scale held(Unit unit, double low, double high, double from, double to) {
        double most = high > low ? high : low + 1;
        double step = step(most - low, from, to);
        double bottom = step * Math.floor(low / step + 1e-9);
        double top = Math.max(step * Math.ceil(most / step - 1e-9), bottom + step);
        return new Scale(unit, bottom, top, from, to, false, step);
    }

    /** Evenly over round figures that hold both [coherent SI] and nothing at all. */
    static Scale round(Dimension dimension, UnitSystem units, double low, double high, double from, double to) {
        return held(dimension, units, Math.min(0, low), Math.max(0, high), from, to);
    }

    /** Evenly over round figures that hold both [coherent SI]. */
    static Scale held(Dimension dimension, UnitSystem units, double low, double high, double from, double to) {
        Unit unit = unit(dimension, units, Math.max(Math.abs(low), Math.abs(high)));
        return held(unit, unit.fromSi(low), unit.fromSi(high), from, to);
    }

    /** By the logarithm, a little past both [coherent SI], which are above 0. */
    static Scale logarithmic(Dimension dimension, UnitSystem units, double low, double high, double from, double to) {
        Unit unit = unit(dimension, units, high);
        double room = Math.pow(high / low, 0.04);
        return new Scale(unit, unit.fromSi(low) / room, unit.fromSi(high) * room, from, to, true, 0);
    }

    private static Unit unit(Dimension dimension, UnitSystem units, double largest) {
        BenchUnits both = BenchUnits.of(dimension, largest);
        return units == UnitSystem.METRIC_FIRST ? both.metric() : both.inchTrade();
    }

    /** Round, so that no two ticks stand nearer than {@link #CLOSEST}. */
    private static double step(double range, double from, double to) {
        double least = range * Math.min(1, CLOSEST / Math.abs(to - from));
        double tens = Math.pow(10, Math.floor(Math.log10(least)));
        for (double times : ROUND) {
            if (times * tens >= least * (1 - 1e-9)) {
                return times * tens;
            }
        }
        return 10 * tens;
    }

    /** Where a figure [coherent SI] stands [pixels]; what lies past an end stands at it. */
    double at(double si) {
        return place(unit.fromSi(si));
    }

    private double place(double figure) {
        double share = logarithmic ? Math.log(figure / low) / Math.log(high / low) : (figure - low) / (high - low);
        return from + Math.max(0, Math.min(1, share)) * (to - from);
    }

    /** Symbol of the unit. */
    String unit() {
        return unit.symbol();
    }

    /** A figure of the axis with its place. */
    record Tick(double at, String words) {}

    /** Round figures; such as lie apart enough to be written across at a width each. */
    List<Tick> ticks(double wide) {
        List<Tick> ticks = new ArrayList<>();
        if (logarithmic) {
            for (int tens = (int) Math.floor(Math.log10(low)); Math.pow(10, tens) <= high; tens++) {
                for (double times : ROUND) {
                    double figure = times * Math.pow(10, tens);
                    if (figure >= low && figure <= high) {
                        ticks.add(new Tick(place(figure), words(figure, tens)));
                    }
                }
            }
            return ticks;
        }
        double each = step > 0 ? step : step(high - low, from, from + Math.abs(to - from) * CLOSEST / wide);
        int places = (int) Math.floor(Math.log10(each) + 1e-9);
        for (long k = (long) Math.ceil(low / each - 1e-9); k * each <= high * (1 + 1e-9) + 1e-12; k++) {
            ticks.add(new Tick(place(k * each), words(k * each, places)));
        }
        return ticks;
    }

    private static String words(double figure, int place) {
        return String.format(Locale.ROOT, "%." + Math.max(0, -place) + "f", figure + 0.0);
    }
}
