package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Recording;
import longthrow.core.recording.Stretch;
import longthrow.core.recording.Stretches;
import longthrow.core.reduce.BrakeBench;
import longthrow.core.reduce.BrakeRun;
import longthrow.core.reduce.CellCalibration;
import longthrow.core.reduce.CoastDown;
import longthrow.core.reduce.DrumBench;
import longthrow.core.reduce.DrumRun;
import longthrow.core.reduce.FallingMass;
import longthrow.core.reduce.Reduced;
import longthrow.core.reduce.Remark;
import longthrow.core.reduce.RoadBench;
import longthrow.core.reduce.RoadRun;
import longthrow.core.reduce.RunRows;
import longthrow.core.reduce.RunRows.Column;

/** The bench of a sheet with its doubts, and a run on it brought to a curve. */
final class Benches {
    /** 95 %, of scales that loads were weighed on, and of a cell or meter that tells newtons or newton metres itself; common practice, no source. */
    private static final double SCALES = 0.005;

    private static final double CELL = 0.01;

    /** A load below this share of the greatest is as good as none. Judgement. */
    private static final double NO_LOAD = 0.05;

    private static final String PRACTICE = "common practice, no source";

    private final DynoSheet.Bench bench;
    private final Optional<Recording> coastDown;
    private final Optional<Recording> withDisc;
    private final DrumInertia inertia;
    private final Set<DefaultUsed> defaults;
    private final List<Remark> remarks = new ArrayList<>();

    /** Why the calibration that was written cannot be used; empty where it can, or where there is none. */
    private String uncalibrated = "";

    /**
     * The bench of a sheet.
     * @param coastDown the rows of its run-down, set free of faults; empty where there is none
     * @param withDisc  those of its run-down with a known disc on the drum; likewise
     * @param defaults  takes what is taken for granted
     */
    Benches(
            DynoSheet.Bench bench,
            Optional<Recording> coastDown,
            Optional<Recording> withDisc,
            Set<DefaultUsed> defaults) {
        this.withDisc = withDisc;
        this.inertia = new DrumInertia(bench, this::figure, defaults, remarks);
        this.bench = bench;
        this.coastDown = coastDown;
        this.defaults = defaults;
    }

    /** What is to be said of the bench itself. */
    List<Remark> remarks() {
        return List.copyOf(remarks);
    }

    /** One stretch of a recording, brought to a curve. */
    Reduced reduce(Recording recording, Stretch stretch) {
        RunRows rows = rows(recording, stretch);
        return switch (bench.kind()) {
            case INERTIA_DRUM ->
                drum().map(b -> DrumRun.reduce(rows, b, Optional.empty()))
                        .orElseGet(
                                () -> refused(
                                        "the inertia of the drum is not known: write bench.drum_inertia, or what it is found by: falling_mass, added_disc, or the mass and diameter of a plain drum"));
            case BRAKE ->
                brake(recording)
                        .map(b -> BrakeRun.sweep(rows, b, Optional.empty()))
                        .orElseGet(this::noBrake);
            case TABLE -> BrakeRun.sweep(rows, told(), Optional.empty());
            case ROAD ->
                road().map(b -> RoadRun.reduce(rows, b, Optional.empty()))
                        .orElseGet(() -> refused("the mass of vehicle and driver is not known: write bench.mass"));
        };
    }

    /** Points held on a brake. */
    Reduced steady(Recording recording, List<Stretch> points) {
        RunRows rows = rows(recording, new Stretch(Stretch.Kind.STEADY, 0, recording.rows() - 1, 0, 0));
        List<BrakeRun.Steady> held = points.stream()
                .map(p -> new BrakeRun.Steady(p.from(), p.to() + 1))
                .toList();
        Optional<BrakeBench> on = bench.kind() == BenchKind.BRAKE ? brake(recording) : Optional.of(told());
        return on.map(b -> BrakeRun.steady(rows, held, b, Optional.empty())).orElseGet(this::noBrake);
    }

    private Reduced noBrake() {
        return refused(
                uncalibrated.isEmpty()
                        ? "the arm of the brake is not known: write bench.arm, or log its torque"
                        : uncalibrated
                                + ". What is written is not used and not passed over: no torque is told until it can be, or until bench.calibration is taken out");
    }

    private static Reduced refused(String why) {
        return new Reduced(Optional.empty(), List.of(new Remark(Remark.Weight.NO_CURVE, why)));
    }

    private static RunRows rows(Recording recording, Stretch stretch) {
        RunRows rows = RunRows.between(stretch.from(), stretch.to() + 1);
        for (Map.Entry<Channel, Column> one : COLUMNS.entrySet()) {
            Optional<double[]> values = recording.values(one.getKey());
            if (values.isPresent()) {
                rows = rows.with(one.getValue(), values.get());
            }
        }
        Optional<double[]> power = recording.values(Channel.POWER);
        Optional<double[]> speed = recording.values(Channel.ENGINE_SPEED);
        if (recording.values(Channel.TORQUE).isEmpty() && power.isPresent() && speed.isPresent()) {
            double[] torque = new double[power.get().length];
            for (int i = 0; i < torque.length; i++) {
                torque[i] = power.get()[i] / speed.get()[i];
            }
            rows = rows.with(Column.TORQUE, torque);
        }
        for (Channel beside : BESIDE) {
            Optional<double[]> values = recording.values(beside);
            if (values.isPresent()) {
                rows = rows.beside(beside.label(), values.get());
            }
        }
        return rows;
    }

    private static final Map<Channel, Column> COLUMNS = Map.of(
            Channel.TIME, Column.TIME,
            Channel.ENGINE_SPEED, Column.ENGINE_SPEED,
            Channel.DRUM_SPEED, Column.DRUM_SPEED,
            Channel.FORCE, Column.FORCE,
            Channel.TORQUE, Column.TORQUE,
            Channel.ROAD_SPEED, Column.ROAD_SPEED,
            Channel.FUEL_FLOW, Column.FUEL_FLOW);

    private static final List<Channel> BESIDE = List.of(
            Channel.LAMBDA,
            Channel.AIR_FUEL_RATIO,
            Channel.EXHAUST_TEMPERATURE,
            Channel.HEAD_TEMPERATURE,
            Channel.OIL_TEMPERATURE);

    // ---- figures

    private Optional<Measured> figure(BenchFigure figure) {
        Optional<Stated> stated = Optional.ofNullable(bench.figures().get(figure));
        if (stated.filter(s -> s.expandedDoubt().isEmpty()).isPresent()) {
            defaults.add(withoutDoubt(figure));
        }
        return stated.map(s -> RunFigures.measured(s, figure.meaning()));
    }

    /** What is said of a figure that has no ±. */
    static DefaultUsed withoutDoubt(BenchFigure figure) {
        return new DefaultUsed(
                "bench." + figure.key(),
                "exact, for no ± is written: torque and power are less sure than their ± says; a gain hardly is,"
                        + " since all runs share it",
                "no source: write it with its ±");
    }

    private Optional<DrumBench> drum() {
        Optional<CoastDown> bare = runDown(coastDown, CoastDown::ofDrum, "coast-down");
        Optional<CoastDown> with = runDown(withDisc, CoastDown::ofDrum, "coast-down with the added disc");
        return inertia.found(bare, with)
                .map(i -> new DrumBench(
                        i,
                        figure(BenchFigure.ENGINE_INERTIA),
                        figure(BenchFigure.ENGINE_TURNS),
                        bare.map(c -> c.of(i)),
                        figure(BenchFigure.DRIVE_EFFICIENCY)));
    }

    /** How a run-down is read. */
    private interface Read {
        CoastDown.Read of(RunRows rows, String name);
    }

    private Optional<CoastDown> runDown(Optional<Recording> recording, Read read, String name) {
        if (recording.isEmpty()) {
            return Optional.empty();
        }
        Recording rows = recording.get();
        CoastDown.Read found = read.of(rows(rows, fall(rows)), name);
        found.remarks().forEach(r -> {
            Remark said = r.weight() == Remark.Weight.NO_CURVE ? new Remark(Remark.Weight.WARNING, r.text()) : r;
            if (!remarks.contains(said)) {
                remarks.add(said);
            }
        });
        return found.coastDown();
    }

    /**
     * Where drum or vehicle runs down: from where speed is first seen to fall to the next pull or the end, less the rows at its end that are all but at rest. A drum that runs long loses too little in a
     * second for the whole of it to be seen as one stretch.
     */
    private static Stretch fall(Recording rows) {
        List<Stretch> all = Stretches.of(rows);
        int from = all.stream()
                .filter(s -> s.kind() == Stretch.Kind.COAST)
                .mapToInt(Stretch::from)
                .findFirst()
                .orElse(0);
        int to = all.stream()
                .filter(s -> s.kind() == Stretch.Kind.PULL && s.from() > from)
                .mapToInt(s -> s.from() - 1)
                .findFirst()
                .orElse(rows.rows() - 1);
        double[] speed = rows.values(Channel.DRUM_SPEED)
                .or(() -> rows.values(Channel.ROAD_SPEED))
                .or(() -> rows.values(Channel.ENGINE_SPEED))
                .orElse(new double[0]);
        while (to > from && speed.length > to && !(speed[to] > AT_REST * speed[from])) {
            to--;
        }
        return new Stretch(Stretch.Kind.COAST, from, to, 0, 0);
    }

    /** Share of the speed that a run-down begins with, below which it tells nothing; common practice, no source. */
    private static final double AT_REST = 0.1;

    private Measured shared(String id, String what, double half) {
        return Measured.of(1, List.of(Source.at95("dyno " + id, Source.Kind.INSTRUMENT, what, half)));
    }

    private Optional<BrakeBench> brake(Recording recording) {
        boolean tellsTorque = recording.values(Channel.TORQUE).isPresent()
                || recording.values(Channel.POWER).isPresent();
        Optional<Measured> arm = tellsTorque ? Optional.of(Measured.exact(1)) : figure(BenchFigure.ARM);
        if (arm.isEmpty()) {
            return Optional.empty();
        }
        Optional<CellCalibration> calibration = tellsTorque ? Optional.empty() : calibration(shownIn(recording));
        if (!uncalibrated.isEmpty()) {
            return Optional.empty();
        }
        Measured scale = Measured.exact(1);
        if (calibration.isEmpty()) {
            defaults.add(new DefaultUsed(
                    "bench.calibration", "cell or meter is right to ± 1 % (95 %), all runs alike", PRACTICE));
            if (!tellsTorque) {
                remarks.add(
                        new Remark(
                                Remark.Weight.WARNING,
                                "No calibration of the load cell is written: zero and slope of cells are found 5 to 15 % off (common practice, no source), and the ± holds 1 % only. A gain hardly suffers, the level does. Hang known loads on the arm and write bench.calibration"));
            }
            scale = shared("cell", "cell or meter, not calibrated", CELL);
        }
        Measured ratio = figure(BenchFigure.ENGINE_TURNS).orElse(Measured.exact(1));
        if (!bench.figures().containsKey(BenchFigure.ENGINE_TURNS)) {
            defaults.add(new DefaultUsed("bench.engine_turns", "the brake turns with the crank", PRACTICE));
        }
        return Optional.of(new BrakeBench(
                arm.get(),
                calibration,
                scale,
                ratio,
                figure(BenchFigure.DRIVE_EFFICIENCY),
                ratio.value() == 1,
                figure(BenchFigure.ENGINE_INERTIA)));
    }

    private BrakeBench told() {
        return new BrakeBench(
                Measured.exact(1),
                Optional.empty(),
                Measured.exact(1),
                Measured.exact(1),
                figure(BenchFigure.DRIVE_EFFICIENCY),
                true,
                Optional.empty());
    }

    /** What one of the logger's own numbers for the cell is in newtons: its column's unit. A calibration written in bare numbers is in these. */
    private static double shownIn(Recording recording) {
        return recording.columns().stream()
                .filter(c -> c.channel() == Channel.FORCE)
                .findFirst()
                .flatMap(Recording.Column::unit)
                .map(u -> u.toSi(1) - u.toSi(0))
                .orElse(1.0);
    }

    private static double newtons(Quantity force, double ofBare) {
        return switch (force.dimension()) {
            case MASS -> force.si() * FallingMass.gravity().value();
            case RATIO -> force.si() * ofBare;
            default -> force.si();
        };
    }

    private Optional<CellCalibration> calibration(double ofBare) {
        if (bench.calibration().isEmpty()) {
            return Optional.empty();
        }
        List<CellCalibration.Load> loads = new ArrayList<>();
        double before = Double.NEGATIVE_INFINITY;
        for (DynoSheet.Hung hung : bench.calibration()) {
            double newtons = newtons(hung.load(), 1);
            loads.add(new CellCalibration.Load(
                    newtons,
                    newtons(hung.shown(), ofBare),
                    newtons >= before ? CellCalibration.Way.UP : CellCalibration.Way.DOWN));
            before = newtons;
        }
        CellCalibration.Read read = CellCalibration.of(loads, shared("weights", "loads hung on the cell", SCALES));
        uncalibrated = read.calibration().isPresent()
                ? ""
                : read.remarks().stream().map(Remark::text).findFirst().orElse("The calibration cannot be used");
        if (!uncalibrated.isEmpty()) {
            return Optional.empty();
        }
        defaults.add(new DefaultUsed(
                "bench.calibration", "the loads hung on the cell are right to ± 0.5 % (95 %), all alike", PRACTICE));
        double most =
                loads.stream().mapToDouble(l -> Math.abs(l.newtons())).max().orElse(0);
        if (loads.stream().noneMatch(l -> Math.abs(l.newtons()) < NO_LOAD * most)) {
            remarks.add(
                    new Remark(
                            Remark.Weight.WARNING,
                            "No line of the calibration is without a load: what the cell shows then is only carried on. Is it written the right way round, load hung first, then what the cell showed?"));
        }
        read.remarks().stream().filter(r -> !remarks.contains(r)).forEach(remarks::add);
        return read.calibration();
    }

    private Optional<RoadBench> road() {
        Optional<Measured> radius = figure(BenchFigure.ROLL_OUT).map(r -> Times.of(r, 0.5 / Math.PI));
        Optional<Measured> turning = radius.flatMap(r ->
                figure(BenchFigure.WHEEL_INERTIA).map(i -> Times.of(i, 1 / (r.value() * r.value()))));
        Optional<Measured> ratio =
                radius.flatMap(r -> figure(BenchFigure.ENGINE_TURNS).map(t -> Times.of(t, 1 / r.value())));
        return figure(BenchFigure.MASS)
                .map(mass -> new RoadBench(
                        mass,
                        turning,
                        figure(BenchFigure.ENGINE_INERTIA),
                        ratio,
                        radius,
                        runDown(coastDown, CoastDown::ofVehicle, "coast-down"),
                        Optional.empty(),
                        RoadBench.Way.NOT_TOLD,
                        figure(BenchFigure.WIND),
                        figure(BenchFigure.SLOPE)));
    }
}
