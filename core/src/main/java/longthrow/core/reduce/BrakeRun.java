package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Units;
import longthrow.core.reduce.RunRows.Column;
import org.jspecify.annotations.Nullable;

/** A run on a brake: swept through its speeds, or held at one after the other. */
public final class BrakeRun {
    /** A steady stretch is cut into so many parts, whose means are far enough apart to scatter by themselves; fewer rows are taken one by one. */
    static final int PARTS = 10;
    /** Speed may wander by this share of itself over a stretch that counts as steady. Common practice, no source. */
    private static final double STEADY = 0.03;

    private final BrakeBench bench;
    private final Optional<SpeedGrid> wanted;
    private final List<Remark> remarks = new ArrayList<>();

    private BrakeRun(BrakeBench bench, Optional<SpeedGrid> wanted) {
        this.bench = bench;
        this.wanted = wanted;
    }

    /**
     * A stretch of rows at one speed.
     * @param from the first row
     * @param to   one after the last
     */
    public record Steady(int from, int to) {}

    /**
     * A sweep: speed rises or falls all through the rows, which need engine speed (or the brake's own as drum speed) and force or torque; time too where what turns is to count.
     * @param wanted the speeds to tell it at; empty for those that {@link SpeedGrid#between} gives
     */
    public static Reduced sweep(RunRows rows, BrakeBench bench, Optional<SpeedGrid> wanted) {
        return new BrakeRun(bench, wanted).swept(rows);
    }

    /** Stretches held at a speed each, of the columns of one recording. */
    public static Reduced steady(RunRows rows, List<Steady> stretches, BrakeBench bench, Optional<SpeedGrid> wanted) {
        return new BrakeRun(bench, wanted).held(rows, stretches);
    }

    private Reduced refused(String why) {
        return Reduced.refused(remarks, why);
    }

    private static @Nullable Column speedOf(RunRows rows) {
        return rows.has(Column.ENGINE_SPEED)
                ? Column.ENGINE_SPEED
                : rows.has(Column.DRUM_SPEED) ? Column.DRUM_SPEED : null;
    }

    private static @Nullable Column loadOf(RunRows rows) {
        return rows.has(Column.FORCE) ? Column.FORCE : rows.has(Column.TORQUE) ? Column.TORQUE : null;
    }

    private double engineSpeed(Column column, double speed) {
        return column == Column.ENGINE_SPEED ? speed : speed * bench.ratio().value();
    }

    private Optional<String> lacks(RunRows rows) {
        if (speedOf(rows) == null) {
            return Optional.of("No speed among the columns: name the column of engine speed");
        }
        if (loadOf(rows) == null) {
            return Optional.of("Neither force nor torque among the columns: name the column of the brake's cell");
        }
        if (loadOf(rows) == Column.TORQUE && bench.calibration().isPresent()) {
            return Optional.of(
                    "The column is torque, and the calibration is of a cell that reads force: name the column force, or take the calibration away");
        }
        return Optional.empty();
    }

    private void whatIsNotKnown() {
        if (bench.calibration().isEmpty() && bench.scale().standardUncertainty() == 0) {
            remarks.add(
                    Remark.warning(
                            "The cell is not calibrated and no doubt of it is told: how far the whole curve may be off is not known. Hang known weights on the arm, up and down"));
        }
        if (!bench.onCrank() && bench.driveEfficiency().isEmpty()) {
            remarks.add(
                    Remark.warning(
                            "What chain or belt between engine and brake takes is not known: the curve is what reaches the brake"));
        }
    }

    private Reduced swept(RunRows rows) {
        Optional<String> lacks = lacks(rows);
        Column speedColumn = speedOf(rows);
        Column loadColumn = loadOf(rows);
        if (lacks.isPresent() || speedColumn == null || loadColumn == null) {
            return refused(lacks.orElse("No speed or no load among the columns"));
        }
        boolean timed = rows.has(Column.TIME);
        Thinned points =
                timed ? rows.thinned(speedColumn, loadColumn, Column.TIME) : rows.thinned(speedColumn, loadColumn);
        if (points.rowsLeftOut() > 0) {
            remarks.add(Remark.note(points.rowsLeftOut() + " of " + rows.rows()
                    + " rows lack a number for speed, load or time and are not counted"));
        }
        if (points.points() < Thinned.FEWEST) {
            return refused("The run has " + points.points() + " rows with speed and load; at least " + Thinned.FEWEST
                    + " are needed for a sweep. Enter a few steady points as a table instead");
        }
        double[] speed = Arrays.stream(points.column(0))
                .map(v -> engineSpeed(speedColumn, v))
                .toArray();
        double low = Arrays.stream(speed).min().orElse(0);
        double high = Arrays.stream(speed).max().orElse(0);
        Optional<SpeedGrid> grid = CurveMaker.grid(wanted, low, high, remarks);
        if (grid.isEmpty() || !(high > low)) {
            return refused(CurveMaker.noSpeeds(low, high));
        }
        whatIsNotKnown();
        double[] places = CurveMaker.places(grid.get());
        LocalFit fit = LocalFit.ofValues(speed, points.column(1), places);
        LocalFit speedingUp = acceleration(timed ? points.column(2) : null, speed, places);
        if (!fit.isDrawn() || (speedingUp != null && !speedingUp.isDrawn())) {
            return refused("In this run " + LocalFit.TOO_FEW);
        }
        Optional<String> far = beyondCalibration(fit, places);
        if (far.isPresent()) {
            return refused(far.get());
        }
        CurveMaker maker = new CurveMaker(
                grid.get(),
                speedingUp == null ? fit : new WithInertia(fit, speedingUp),
                new ByBrake(places, speedingUp));
        return new Reduced(
                Optional.of(maker.curve(
                        bench.taken(), beside(rows, speedColumn, grid.get()), fuel(rows, speedColumn, grid.get()))),
                remarks);
    }

    private @Nullable LocalFit acceleration(double @Nullable [] time, double[] speed, double[] places) {
        if (time == null || bench.engineInertia().isEmpty()) {
            remarks.add(
                    Remark.warning(
                            "What speeds the engine's own flywheel up during the sweep is not counted: that takes its inertia and the time of each row. A sweep that rises tells too little by it, one that falls too much"));
            return null;
        }
        for (int i = 1; i < time.length; i++) {
            if (!(time[i] > time[i - 1])) {
                remarks.add(Remark.warning(String.format(
                        Locale.ROOT,
                        "Time does not run forward at %.4g s: what speeds the engine's flywheel up is not counted",
                        time[i])));
                return null;
            }
        }
        return LocalFit.ofSlopes(time, speed, speed, places);
    }

    private double[] engineSpeeds(RunRows rows, Column column) {
        double[] speeds = rows.column(column);
        if (speeds == null) {
            throw new IllegalStateException("no speed");
        }
        return column == Column.ENGINE_SPEED
                ? speeds
                : Arrays.stream(speeds).map(v -> engineSpeed(column, v)).toArray();
    }

    private List<AlongCurve> beside(RunRows rows, Column column, SpeedGrid grid) {
        return rows.beside().isEmpty() ? List.of() : CurveMaker.beside(rows, engineSpeeds(rows, column), grid, remarks);
    }

    private Optional<AlongCurve> fuel(RunRows rows, Column column, SpeedGrid grid) {
        double[] flow = rows.column(Column.FUEL_FLOW);
        return flow == null
                ? Optional.empty()
                : CurveMaker.along(
                        Column.FUEL_FLOW.words(), rows.thinned(engineSpeeds(rows, column), flow), grid, remarks);
    }

    /** Warns where the cell was loaded beyond its calibration. @return what stands against any curve */
    private Optional<String> beyondCalibration(Drawn fit, double[] places) {
        return bench.calibration().flatMap(cell -> {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < places.length; k++) {
                double force = bench.force(fit.value(k)).value();
                low = Math.min(low, force);
                high = Math.max(high, force);
            }
            String loads = String.format(
                    Locale.ROOT,
                    "The run loads the cell with %.4g to %.4g N, the calibration reaches from %.4g to %.4g N: ",
                    low,
                    high,
                    cell.lowLoad(),
                    cell.highLoad());
            if (cell.isFarBeyond(low) || cell.isFarBeyond(high)) {
                return Optional.of(
                        loads
                                + "so far beyond it tells nothing. Look at the units of column and calibration, and hang as much as the engine pulls");
            }
            if (!cell.covers(low) || !cell.covers(high)) {
                remarks.add(Remark.warning(
                        loads + "beyond, the line is only carried on. Hang as much as the engine pulls"));
            }
            return Optional.empty();
        });
    }

    private Reduced held(RunRows rows, List<Steady> stretches) {
        Optional<String> lacks = lacks(rows);
        Column speedColumn = speedOf(rows);
        Column loadColumn = loadOf(rows);
        if (lacks.isPresent() || speedColumn == null || loadColumn == null) {
            return refused(lacks.orElse("No speed or no load among the columns"));
        }
        double[] speeds = rows.column(speedColumn);
        double[] loads = rows.column(loadColumn);
        if (speeds == null || loads == null) {
            throw new IllegalStateException("columns went");
        }
        List<double[]> points = new ArrayList<>(); // speed, load, standard uncertainty, degrees of freedom
        for (Steady stretch : stretches) {
            if (stretch.from < 0 || stretch.to > Math.min(speeds.length, loads.length) || stretch.to <= stretch.from) {
                return refused("A steady stretch goes from row " + stretch.from + " to " + stretch.to
                        + ", which the recording does not have");
            }
            mean(stretch, speeds, loads, speedColumn).ifPresent(points::add);
        }
        points.sort(Comparator.comparingDouble(p -> p[0]));
        whatIsNotKnown();
        Reduced reduced = PointsRun.reduced(
                points, bench.taken(), new ByBrake(new double[0], null), wanted, remarks, this::beyondCalibration);
        double[] engine = engineSpeeds(rows, speedColumn);
        return HeldBeside.with(reduced, rows, stretches, engine);
    }

    private Optional<double[]> mean(Steady stretch, double[] speeds, double[] loads, Column column) {
        int rows = stretch.to - stretch.from;
        int parts = rows >= 2 * PARTS ? PARTS : rows;
        double speed = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        Thinned thin = Thinned.inParts(stretch.from, stretch.to, parts, speeds, loads);
        double[] part = thin.column(1);
        if (part.length < 2) {
            remarks.add(Remark.warning("The steady stretch from row " + stretch.from + " to " + stretch.to
                    + " has fewer than two rows with speed and load: its scatter is not known, and it is left out"));
            return Optional.empty();
        }
        for (double v : thin.column(0)) {
            speed += v / part.length;
            least = Math.min(least, v);
            most = Math.max(most, v);
        }
        double mean = Arrays.stream(part).average().orElse(0);
        double squares = Arrays.stream(part).map(p -> (p - mean) * (p - mean)).sum();
        if (most - least > STEADY * speed) {
            remarks.add(Remark.warning(String.format(
                    Locale.ROOT,
                    "Speed wanders from %.0f to %.0f rpm in the stretch from row %d to %d: not steady, and what turns gives or takes torque there",
                    Units.RPM.fromSi(engineSpeed(column, least)),
                    Units.RPM.fromSi(engineSpeed(column, most)),
                    stretch.from,
                    stretch.to)));
        }
        int n = part.length;
        return Optional.of(new double[] {engineSpeed(column, speed), mean, Math.sqrt(squares / (n - 1) / n), n - 1.0});
    }

    /** The sweep's cell, and what speeds the engine up: both scatter. */
    private final class WithInertia implements Drawn {
        private final LocalFit cell;
        private final LocalFit acceleration;
        private final double readingPerAcceleration;

        WithInertia(LocalFit cell, LocalFit acceleration) {
            this.cell = cell;
            this.acceleration = acceleration;
            this.readingPerAcceleration =
                    bench.engineInertia().map(Measured::value).orElse(0.0) / bench.torquePerReading();
        }

        @Override
        public double value(int place) {
            return cell.value(place);
        }

        @Override
        public double standardUncertainty(int place) {
            return Math.hypot(
                    cell.standardUncertainty(place), readingPerAcceleration * acceleration.standardUncertainty(place));
        }

        @Override
        public double freedom(int place) {
            return Math.min(cell.freedom(place), acceleration.freedom(place));
        }

        @Override
        public double ofDifference(int place, double factor, int other, double otherFactor) {
            return Math.hypot(
                    cell.ofDifference(place, factor, other, otherFactor),
                    readingPerAcceleration * acceleration.ofDifference(place, factor, other, otherFactor));
        }

        @Override
        public double width() {
            return cell.width();
        }

        @Override
        public double looks() {
            return cell.looks();
        }
    }

    /** The cell's reading as torque of the engine. */
    private final class ByBrake implements CurveMaker.Bench {
        private final double[] places;
        private final @Nullable LocalFit speedingUp;

        ByBrake(double[] places, @Nullable LocalFit speedingUp) {
            this.places = places;
            this.speedingUp = speedingUp;
        }

        private double acceleration(double speed) {
            return speedingUp == null ? 0 : speedingUp.value(Arrays.binarySearch(places, speed));
        }

        @Override
        public Measured torque(double speed, double drawn) {
            return bench.torque(drawn, acceleration(speed));
        }

        @Override
        public Measured power(double speed, double drawn) {
            return bench.power(drawn, acceleration(speed), speed);
        }

        @Override
        public double torqueValue(double speed, double drawn) {
            return bench.torque(drawn, acceleration(speed)).value();
        }

        @Override
        public double torquePerUnit(double speed) {
            return bench.torquePerReading();
        }

        @Override
        public double workingSpeed(double speed) {
            return speed;
        }
    }
}
