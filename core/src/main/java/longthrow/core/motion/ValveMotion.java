package longthrow.core.motion;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * What the valve does when the curve was read at the lobe: rocker ratio times lobe lift, less the lash. The ratio is taken as one figure over the whole
 * lift, which no rocker keeps to better than a few per cent.
 * @param lobe  as read at the lobe or the lifter
 * @param ratio valve lift over lobe lift, &gt; 0
 * @param lash  gap at the valve [m], 0 or more
 */
public record ValveMotion(LiftCurve lobe, Measured ratio, Measured lash) {
    public ValveMotion {
        if (!(ratio.value() > 0) || !(lash.value() >= 0)) {
            throw new IllegalArgumentException("rocker ratio " + ratio.value() + " and lash " + lash.value()
                    + " m: the ratio must be above 0, the lash 0 or more");
        }
    }

    /** For a dial that stood on the valve. */
    public static ValveMotion readAtValve(LiftCurve valve) {
        return new ValveMotion(valve, Measured.exact(1), Measured.exact(0));
    }

    private boolean isOffItsSeat(double angle) {
        return ratio.value() * lobe.at(angle) > lash.value();
    }

    /** Valve lift, 0 while the lash is not taken up. */
    public double at(double angle) {
        return Math.max(0, ratio.value() * lobe.at(angle) - lash.value());
    }

    /** Slope of the valve lift [m/rad]. */
    public double slope(double angle) {
        return isOffItsSeat(angle) ? ratio.value() * lobe.slope(angle) : 0;
    }

    /** Second derivative of the valve lift [m/rad2]. */
    public double bend(double angle) {
        return isOffItsSeat(angle) ? ratio.value() * lobe.bend(angle) : 0;
    }

    /** Highest valve lift. */
    public Measured peak() {
        Measured top = lobe.peak();
        Map<Source, Double> errors = new LinkedHashMap<>();
        add(errors, top, ratio.value());
        add(errors, ratio, top.value());
        add(errors, lash, -1);
        return Measured.withContributions(ratio.value() * top.value() - lash.value(), errors);
    }

    /** Steepest slope of the valve lift [m/rad]. */
    public Measured steepest() {
        return timesRatio(lobe.steepest());
    }

    /** Most negative second derivative of the valve lift over the nose, as {@link LiftCurve#sharpest} means it [m/rad2]. */
    public Optional<Measured> sharpest() {
        return lobe.sharpest().map(this::timesRatio);
    }

    /** Valve lift where a true angle stands; shut valves have 0, with the doubt of what is nearly off its seat. */
    public Measured lift(Measured angle) {
        Measured lift = timesRatio(lobe.lift(angle));
        Map<Source, Double> errors = new LinkedHashMap<>(lift.contributions());
        add(errors, lash, -1);
        return Measured.withContributions(Math.max(0, lift.value() - lash.value()), errors);
    }

    private Measured timesRatio(Measured figure) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        add(errors, figure, ratio.value());
        add(errors, ratio, figure.value());
        return Measured.withContributions(ratio.value() * figure.value(), errors);
    }

    /** Where the valve passes this lift [m]. */
    public Optional<LiftCurve.Span> at(Measured valveLift) {
        double r = ratio.value();
        double level = (valveLift.value() + lash.value()) / r;
        Map<Source, Double> errors = new LinkedHashMap<>();
        add(errors, valveLift, 1 / r);
        add(errors, lash, 1 / r);
        add(errors, ratio, -level / r);
        return lobe.at(Measured.withContributions(level, errors));
    }

    private static void add(Map<Source, Double> to, Measured figure, double factor) {
        figure.contributions().forEach((source, c) -> to.merge(source, factor * c, Double::sum));
    }
}
