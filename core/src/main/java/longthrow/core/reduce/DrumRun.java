package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Units;
import longthrow.core.reduce.RunRows.Column;
import org.jspecify.annotations.Nullable;

/**
 * A pull on an inertia drum. Torque follows from how the drum's speed grows in time, and is drawn against the engine's speed ({@link LocalFit}).
 */
public final class DrumRun {
    /**
     * A point whose ratio of engine to drum is off the run's own by more than this share has a clutch, belt or tyre slipping. Common practice, no source: belts creep by
     * 1 to 2 %.
     */
    public static final double SLIP = 0.03;
    /** Unless the ratio scatters so much that so many standard deviations are more. */
    private static final double SCATTERS = 4;
    /** The run's own ratio is the median of the faster so many of its points: clutches slip at the start. */
    private static final double LOCKED = 0.5;
    /** A ratio that was told and one that the rows show differ for a reason when by more than this. Common practice, no source. */
    private static final double SAME_RATIO = 0.005;
    /** Beyond this share one of the two ratios is a mistake, and no torque follows from either. Judgement, no source. */
    private static final double MISTAKEN_RATIO = 0.1;

    private final RunRows rows;
    private final DrumBench bench;
    private final Optional<SpeedGrid> wanted;
    private final List<Remark> remarks = new ArrayList<>();

    private final boolean road;
    private final boolean ratioOfEngine;

    private DrumRun(RunRows rows, DrumBench bench, Optional<SpeedGrid> wanted, boolean road, boolean ratioOfEngine) {
        this.road = road;
        this.ratioOfEngine = ratioOfEngine;
        this.rows = rows;
        this.bench = bench;
        this.wanted = wanted;
    }

    /**
     * Brings a pull to a curve. The rows need time and drum speed, or engine speed where the ratio is told; with both speeds, slip is seen and left out.
     * @param wanted the speeds to tell it at; empty for those that {@link SpeedGrid#between} gives
     */
    public static Reduced reduce(RunRows rows, DrumBench bench, Optional<SpeedGrid> wanted) {
        return new DrumRun(rows, bench, wanted, false, true).reduced();
    }

    /** A vehicle for a drum: its mass for the inertia, its speed for the drum's; {@link RoadRun} has said what that needs. */
    static Reduced ofVehicle(
            RunRows rows, DrumBench bench, Optional<SpeedGrid> wanted, boolean ratioOfEngine, List<Remark> said) {
        DrumRun run = new DrumRun(rows, bench, wanted, true, ratioOfEngine);
        run.remarks.addAll(said);
        return run.reduced();
    }

    private Reduced refused(String why) {
        return Reduced.refused(remarks, why);
    }

    private Reduced reduced() {
        boolean drum = rows.has(Column.DRUM_SPEED);
        boolean engine = rows.has(Column.ENGINE_SPEED);
        if (!rows.has(Column.TIME)) {
            return refused(
                    "No column of time: how fast the drum speeds up cannot be told. Name the column, or state the rows per second");
        }
        if (!drum && !(engine && bench.ratio().isPresent())) {
            return refused(
                    engine
                            ? "Engine speed alone: with the ratio of engine speed to drum speed the drum's speed follows from it. State the ratio, or name the column of drum speed"
                            : "Neither drum speed nor engine speed among the columns. Name the column");
        }
        Thinned points = drum && engine
                ? rows.thinned(Column.TIME, Column.DRUM_SPEED, Column.ENGINE_SPEED)
                : rows.thinned(Column.TIME, drum ? Column.DRUM_SPEED : Column.ENGINE_SPEED);
        if (points.rowsLeftOut() > 0) {
            remarks.add(Remark.note(points.rowsLeftOut() + " of " + rows.rows()
                    + " rows lack a number for time or speed and are not counted"));
        }
        if (points.points() < Thinned.FEWEST) {
            return refused("The run has " + points.points() + " rows with time and speed; at least " + Thinned.FEWEST
                    + " are needed, and 60 or more make a fair curve. Log more rows per second, or a longer pull");
        }
        double[] time = points.column(0);
        for (int i = 1; i < time.length; i++) {
            if (!(time[i] > time[i - 1])) {
                return refused(String.format(
                        Locale.ROOT,
                        "Time does not run forward in this run: %.4g s comes after %.4g s. Mend or set aside those rows",
                        time[i],
                        time[i - 1]));
            }
        }
        double[] drumSpeed = points.column(1);
        Measured ratio;
        boolean[] slips = new boolean[time.length];
        if (drum && engine) {
            Measured seen = seenRatio(drumSpeed, points.column(2));
            if (!(seen.value() > 0)) {
                return refused(
                        "Engine or drum stands still in half of the run or more; no ratio can be told. Begin the run where both turn");
            }
            Optional<String> mistaken = compare(seen);
            if (mistaken.isPresent()) {
                return refused(mistaken.get());
            }
            ratio = bench.ratio().orElse(seen);
            slips = slipping(drumSpeed, points.column(2), seen, time);
            if (slips.length == 0) {
                return refused(
                        "Clutch, belt or tyre slips through most of the run: ratio of engine to drum is off by more than "
                                + Math.round(100 * SLIP)
                                + " %. What reaches the drum then is no torque of the engine at a speed");
            }
        } else {
            ratio = bench.ratio().orElse(Measured.exact(1));
            if (!drum) {
                drumSpeed = Arrays.stream(drumSpeed).map(v -> v / ratio.value()).toArray();
            }
            if (!road || ratioOfEngine) {
                remarks.add(
                        Remark.warning(
                                "Only one speed is in the rows: whether a clutch, belt or tyre slipped cannot be seen. Slip puts torque at the wrong speed, and takes some of it away"));
            }
        }
        RunCurve.Taken taken = taken((drum && engine) || bench.ratio().isPresent());
        whatIsNotKnown();
        return drawn(time, drumSpeed, slips, ratio, taken);
    }

    private RunCurve.Taken taken(boolean ratioKnown) {
        if (road && !rows.has(Column.ENGINE_SPEED) && !ratioOfEngine) {
            return RunCurve.Taken.WHEEL;
        }
        if (!ratioKnown) {
            return RunCurve.Taken.DRUM;
        }
        return bench.driveEfficiency().isPresent() ? RunCurve.Taken.CRANK : RunCurve.Taken.BEHIND_DRIVE;
    }

    private void whatIsNotKnown() {
        if (bench.engineInertia().isEmpty() && !road) {
            remarks.add(
                    Remark.warning(
                            "Inertia of what turns with the engine (flywheel, crank, clutch) is not told: what speeds it up is missing from the curve, which is too low by that"));
        }
        if (bench.parasitic().isEmpty() && !road) {
            remarks.add(
                    Remark.warning(
                            "What the drum's bearings and air take is not told: it is missing from the curve, which is too low by that. Let the drum run down freely and log it"));
        }
    }

    private static Measured seenRatio(double[] drum, double[] engine) {
        int begin = (int) (drum.length * (1 - LOCKED));
        double[] ratios = new double[drum.length - begin];
        for (int i = begin; i < drum.length; i++) {
            ratios[i - begin] = drum[i] > 0 ? engine[i] / drum[i] : Double.NaN;
        }
        double[] sorted =
                Arrays.stream(ratios).filter(Double::isFinite).sorted().toArray();
        if (sorted.length < 2 || sorted.length < ratios.length / 2) {
            return Measured.exact(0);
        }
        double median = sorted[sorted.length / 2];
        // half of normal errors lie within 0.6745 deviations; a median's error is 1.2533 times a mean's
        double[] off =
                Arrays.stream(sorted).map(r -> Math.abs(r - median)).sorted().toArray();
        double u = 1.2533 * off[off.length / 2] / 0.6745 / Math.sqrt(sorted.length);
        return Measured.of(
                median,
                List.of(new Source(
                        "drum ratio scatter",
                        Source.Kind.SCATTER,
                        "ratio of engine to drum",
                        u,
                        Math.max(1, sorted.length - 1.0),
                        u)));
    }

    /** Warns where the ratio that was told is not what the rows show. @return what stands against any curve */
    private Optional<String> compare(Measured seen) {
        return bench.ratio().flatMap(told -> {
            double off = Math.abs(seen.value() / told.value() - 1);
            String both = String.format(
                    Locale.ROOT,
                    "The rows show %.3f turns of the engine for one of the drum, not the %.3f that was told: another gear, a slipping clutch, a pickup that counts wrong, or the ratio the wrong way round.",
                    seen.value(),
                    told.value());
            if (off > MISTAKEN_RATIO) {
                return Optional.of(both + " No torque follows until one of them is mended");
            }
            if (off > SAME_RATIO) {
                remarks.add(Remark.warning(both + " Torque goes by what was told"));
            }
            return Optional.empty();
        });
    }

    /** Which points slip; none at all to tell where too many do. */
    private boolean[] slipping(double[] drum, double[] engine, Measured ratio, double[] time) {
        // the ratio's own scatter: what its median is unsure by, times the root of how many points that median is of
        double scatter = ratio.standardUncertainty() / 1.2533 * Math.sqrt(drum.length * LOCKED) / ratio.value();
        double allowed = Math.max(SLIP, SCATTERS * scatter);
        boolean[] slips = new boolean[drum.length];
        int count = 0;
        int first = 0;
        int last = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (int i = 0; i < drum.length; i++) {
            slips[i] = !(Math.abs(engine[i] / (drum[i] * ratio.value()) - 1) <= allowed);
            if (slips[i]) {
                first = count == 0 ? i : first;
                last = i;
                count++;
                low = Math.min(low, engine[i]);
                high = Math.max(high, engine[i]);
            }
        }
        if (count > 0) {
            remarks.add(Remark.warning(String.format(
                    Locale.ROOT,
                    "Slip in %.0f %% of the run, between %.4g s and %.4g s and %.0f and %.0f rpm of the engine: turns of the engine for one of the drum are more than %.1f %% off the %.3f of the rest. A slipping clutch hands on what a flywheel gives up, which is no power: those rows make no curve",
                    100.0 * count / drum.length,
                    time[first],
                    time[last],
                    Units.RPM.fromSi(low),
                    Units.RPM.fromSi(high),
                    100 * allowed,
                    ratio.value())));
        }
        return drum.length - count >= Math.max(Thinned.FEWEST, drum.length / 2) ? slips : new boolean[0];
    }

    private Reduced drawn(double[] time, double[] drumSpeed, boolean[] slips, Measured ratio, RunCurve.Taken taken) {
        double[] speed = new double[drumSpeed.length];
        for (int i = 0; i < speed.length; i++) {
            speed[i] = slips[i] ? Double.NaN : drumSpeed[i] * ratio.value();
        }
        double low = Arrays.stream(speed).filter(Double::isFinite).min().orElse(0);
        double high = Arrays.stream(speed).filter(Double::isFinite).max().orElse(0);
        if (!(meanOfLast(drumSpeed) > meanOfFirst(drumSpeed))) {
            return refused(
                    (road ? "The vehicle" : "The drum")
                            + " is no faster at the end than at the beginning: this is no pull. Mark the run where it speeds up");
        }
        Optional<SpeedGrid> grid = CurveMaker.grid(wanted, low, high, remarks);
        if (grid.isEmpty()) {
            return refused(CurveMaker.noSpeeds(low, high));
        }
        if (!road) {
            beyondCoastDown(grid.get(), ratio.value());
        }
        LocalFit fit = LocalFit.ofSlopes(time, speed, drumSpeed, CurveMaker.places(grid.get()));
        if (!fit.isDrawn()) {
            return refused("In this run " + LocalFit.TOO_FEW);
        }
        CurveMaker maker = new CurveMaker(grid.get(), fit, new ByDrum(ratio));
        return new Reduced(
                Optional.of(maker.curve(taken, beside(ratio.value(), grid.get()), fuelFlow(ratio.value(), grid.get()))),
                remarks);
    }

    private static double meanOfFirst(double[] speed) {
        return Arrays.stream(speed, 0, speed.length / 4).average().orElse(0);
    }

    private static double meanOfLast(double[] speed) {
        return Arrays.stream(speed, speed.length - speed.length / 4, speed.length)
                .average()
                .orElse(0);
    }

    private void beyondCoastDown(SpeedGrid grid, double ratio) {
        bench.parasitic().ifPresent(p -> {
            double low = Units.RPM.toSi(grid.firstRpm()) / ratio;
            double high = Units.RPM.toSi(grid.lastRpm()) / ratio;
            if (low < 0.9 * p.lowest() || high > 1.1 * p.highest()) {
                remarks.add(Remark.warning(String.format(
                        Locale.ROOT,
                        "The drum turns at %.0f to %.0f rpm in this run; what its bearings and air take was read at %.0f to %.0f rpm. Beyond, it is a guess: let it run down from as fast as it is used",
                        Units.RPM.fromSi(low),
                        Units.RPM.fromSi(high),
                        Units.RPM.fromSi(p.lowest()),
                        Units.RPM.fromSi(p.highest()))));
            }
        });
    }

    /** A column of engine speed for what is told beside the curve, whatever speed was logged. */
    private double[] engineSpeeds(double ratio) {
        double[] engine = rows.column(Column.ENGINE_SPEED);
        if (engine != null) {
            return engine;
        }
        double @Nullable [] drum = rows.column(Column.DRUM_SPEED);
        if (drum == null) {
            throw new IllegalStateException("no speed");
        }
        return Arrays.stream(drum).map(v -> v * ratio).toArray();
    }

    private List<AlongCurve> beside(double ratio, SpeedGrid grid) {
        return rows.beside().isEmpty() ? List.of() : CurveMaker.beside(rows, engineSpeeds(ratio), grid, remarks);
    }

    private Optional<AlongCurve> fuelFlow(double ratio, SpeedGrid grid) {
        double[] fuel = rows.column(Column.FUEL_FLOW);
        return fuel == null
                ? Optional.empty()
                : CurveMaker.along(Column.FUEL_FLOW.words(), rows.thinned(engineSpeeds(ratio), fuel), grid, remarks);
    }

    /** The drum's acceleration as torque of the engine. */
    private final class ByDrum implements CurveMaker.Bench {
        private final Measured ratio;

        ByDrum(Measured ratio) {
            this.ratio = ratio;
        }

        @Override
        public Measured torque(double speed, double drawn) {
            return bench.torque(ratio, speed / ratio.value(), drawn);
        }

        @Override
        public Measured power(double speed, double drawn) {
            return bench.power(ratio, speed / ratio.value(), drawn);
        }

        @Override
        public double torqueValue(double speed, double drawn) {
            return bench.torqueValue(ratio.value(), speed / ratio.value(), drawn);
        }

        @Override
        public double torquePerUnit(double speed) {
            return bench.torquePerAcceleration(ratio.value());
        }

        @Override
        public double workingSpeed(double speed) {
            return speed;
        }
    }
}
