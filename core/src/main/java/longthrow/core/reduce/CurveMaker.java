package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;

/** From a curve drawn through a run's points to the run's torque and power, and where they are highest. */
final class CurveMaker {
    /** Each step of the grid is looked at so often when the highest place is sought. */
    private static final int PLACES_A_STEP = 2;

    /** No engine turns faster [rad/s]. */
    private static final double FASTEST = Channel.ENGINE_SPEED.most();

    /** What a bench makes of what was drawn. */
    interface Bench {
        /** Torque [N m] at a speed [rad/s], with the bench's doubt. */
        Measured torque(double speed, double drawn);

        /** Power [W]. */
        Measured power(double speed, double drawn);

        /** The same torque without doubt. */
        double torqueValue(double speed, double drawn);

        /** Torque for a unit of what was drawn. */
        double torquePerUnit(double speed);

        /** Power per torque: the speed [rad/s] at which the torque works. */
        double workingSpeed(double speed);
    }

    private final SpeedGrid grid;
    private final double[] places;
    private final Drawn fit;
    private final Bench bench;

    CurveMaker(SpeedGrid grid, Drawn fit, Bench bench) {
        this.grid = grid;
        this.places = places(grid);
        this.fit = fit;
        this.bench = bench;
    }

    /** Where a curve must be drawn for this grid [rad/s]. */
    static double[] places(SpeedGrid grid) {
        double[] places = new double[(grid.count() - 1) * PLACES_A_STEP + 1];
        for (int k = 0; k < places.length; k++) {
            places[k] = Units.RPM.toSi(grid.firstRpm() + (double) grid.stepRpm() * k / PLACES_A_STEP);
        }
        return places;
    }

    /** The speeds asked for that a run reaches, or those that the rule gives; empty where there are none. */
    static Optional<SpeedGrid> grid(Optional<SpeedGrid> wanted, double low, double high, List<Remark> remarks) {
        double lowRpm = Units.RPM.fromSi(low);
        double highRpm = Units.RPM.fromSi(high);
        if (!(high <= FASTEST)) {
            return Optional.empty();
        }
        if (wanted.isEmpty()) {
            return SpeedGrid.between(lowRpm, highRpm);
        }
        Optional<SpeedGrid> within = wanted.get().within(lowRpm, highRpm);
        if (within.isPresent() && within.get().count() < wanted.get().count()) {
            remarks.add(Remark.note(String.format(
                    Locale.ROOT,
                    "The run reaches from %.0f to %.0f rpm; of the speeds asked for only %d to %d rpm are told",
                    lowRpm,
                    highRpm,
                    within.get().firstRpm(),
                    within.get().lastRpm())));
        }
        return within;
    }

    static String noSpeeds(double low, double high) {
        if (!(high <= FASTEST)) {
            return String.format(
                    Locale.ROOT,
                    "The engine would turn at %.4g to %.4g rpm in this run, and none turns faster than %.0f rpm: look at the turns of the engine for one of the drum (engine_turns), and at the unit of the speed that was logged",
                    Units.RPM.fromSi(low),
                    Units.RPM.fromSi(high),
                    Units.RPM.fromSi(FASTEST));
        }
        return String.format(
                Locale.ROOT,
                "None of the speeds asked for lies in the run, %.0f to %.0f rpm",
                Units.RPM.fromSi(low),
                Units.RPM.fromSi(high));
    }

    static double[] speeds(SpeedGrid grid) {
        double[] speeds = new double[grid.count()];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = Units.RPM.toSi(grid.rpm(i));
        }
        return speeds;
    }

    RunCurve curve(RunCurve.Taken taken, List<AlongCurve> beside, Optional<AlongCurve> fuelFlow) {
        List<RunCurve.At> at = new ArrayList<>();
        for (int k = 0; k < places.length; k += PLACES_A_STEP) {
            double v = places[k];
            double own = fit.standardUncertainty(k) * Math.abs(bench.torquePerUnit(v));
            at.add(new RunCurve.At(
                    v,
                    bench.torque(v, fit.value(k)),
                    bench.power(v, fit.value(k)),
                    own,
                    own * bench.workingSpeed(v),
                    fit.freedom(k)));
        }
        return new RunCurve(grid, taken, at, peak(false), peak(true), fit.width(), beside, fuelFlow);
    }

    private double height(int k, boolean power) {
        double torque = bench.torqueValue(places[k], fit.value(k));
        return power ? torque * bench.workingSpeed(places[k]) : torque;
    }

    private double factor(int k, boolean power) {
        return bench.torquePerUnit(places[k]) * (power ? bench.workingSpeed(places[k]) : 1);
    }

    /** The highest place, the stretch of places that may be it, and whether the curve falls on both sides by more than chance makes it. */
    private Peak peak(boolean power) {
        int top = 0;
        for (int k = 1; k < places.length; k++) {
            top = height(k, power) > height(top, power) ? k : top;
        }
        double freedom = fit.freedom(top);
        double usual = StudentT.factor(Measured.COVERAGE, freedom);
        double looks = 2 * fit.looks(); // the largest of many falls is looked at, on either side
        double strict = StudentT.factor(1 - (1 - Measured.COVERAGE) / looks, freedom);
        int low = top;
        int high = top;
        boolean risesTo = false;
        boolean fallsAfter = false;
        for (int k = 0; k < places.length; k++) {
            if (k == top) {
                continue;
            }
            double fall = height(top, power) - height(k, power);
            double doubt = fit.ofDifference(top, factor(top, power), k, factor(k, power));
            if (fall <= usual * doubt) {
                low = Math.min(low, k);
                high = Math.max(high, k);
            }
            if (fall > strict * doubt) {
                risesTo |= k < top;
                fallsAfter |= k > top;
            }
        }
        double v = places[top];
        double own = fit.standardUncertainty(top) * Math.abs(factor(top, power));
        Measured ofBench = power ? bench.power(v, fit.value(top)) : bench.torque(v, fit.value(top));
        return new Peak(
                standing(risesTo, fallsAfter),
                v,
                places[low],
                places[high],
                RunCurve.whole(ofBench, own, freedom, v),
                own);
    }

    static Peak.Standing standing(boolean risesTo, boolean fallsAfter) {
        if (risesTo && fallsAfter) {
            return Peak.Standing.SHOWN;
        }
        if (!risesTo && !fallsAfter) {
            return Peak.Standing.NOT_SHOWN;
        }
        return risesTo ? Peak.Standing.MAY_LIE_ABOVE : Peak.Standing.MAY_LIE_BELOW;
    }

    /** What was written beside, drawn at the same speeds. */
    static List<AlongCurve> beside(RunRows rows, double[] speed, SpeedGrid grid, List<Remark> remarks) {
        List<AlongCurve> all = new ArrayList<>();
        for (Map.Entry<String, double[]> entry : rows.beside().entrySet()) {
            along(entry.getKey(), rows.thinned(speed, entry.getValue()), grid, remarks)
                    .ifPresent(all::add);
        }
        return all;
    }

    static Optional<AlongCurve> along(String name, Thinned points, SpeedGrid grid, List<Remark> remarks) {
        if (points.points() < Thinned.FEWEST) {
            remarks.add(Remark.warning(name + " has " + points.points() + " rows with a number in this run; at least "
                    + Thinned.FEWEST + " are needed to tell it by speed. It is left out"));
            return Optional.empty();
        }
        double[] speeds = speeds(grid);
        LocalFit fit = LocalFit.ofValues(points.column(0), points.column(1), speeds);
        if (!fit.isDrawn()) {
            remarks.add(Remark.warning(name + " is left out: " + LocalFit.TOO_FEW));
            return Optional.empty();
        }
        double[] values = new double[speeds.length];
        double[] doubts = new double[speeds.length];
        for (int i = 0; i < speeds.length; i++) {
            values[i] = fit.value(i);
            doubts[i] = fit.standardUncertainty(i);
        }
        return Optional.of(new AlongCurve(name, values, doubts));
    }
}
