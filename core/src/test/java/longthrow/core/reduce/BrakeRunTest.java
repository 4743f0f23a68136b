package longthrow.core.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.reduce.CellCalibration.Load;
import longthrow.core.reduce.CellCalibration.Way;
import longthrow.core.reduce.RunRows.Column;
import org.junit.jupiter.api.Test;

/** Brakes, tables and the road, invented, whose truth is known. */
class BrakeRunTest {
    private static final Measured ONE = Measured.exact(1);

    private static Measured typed(String id, double value, double u) {
        return Measured.of(value, List.of(Source.known(id, Source.Kind.TYPED, id, u)));
    }

    /** Reading 12 + 0.5 per newton, 1 more on the way down than up, so half of it to each side of the line. */
    private static CellCalibration cell() {
        List<Load> loads = new ArrayList<>();
        for (double newtons : new double[] {0, 20, 40, 60, 80, 100}) {
            loads.add(new Load(newtons, 12 + 0.5 * newtons, Way.UP));
            loads.add(new Load(newtons, 13 + 0.5 * newtons, Way.DOWN));
        }
        CellCalibration.Read read = CellCalibration.of(loads, typed("weights", 1, 0.002));
        assertThat(read.remarks()).isEmpty();
        return read.calibration().orElseThrow();
    }

    @Test
    void sheetBecomesALine() {
        CellCalibration cell = cell();
        assertThat(cell.gain().value()).isCloseTo(0.5, within(1e-12));
        assertThat(cell.zero()).isCloseTo(12.5, within(1e-12));
        assertThat(cell.hysteresis()).isCloseTo(2, within(1e-9)); // 1 of reading is 2 N
        assertThat(cell.force(42.5).value()).isCloseTo(60, within(1e-9));
        // scatter of half a reading about the line, hysteresis of 1 N as half a rectangle, weights 0.12 N
        double s = Math.sqrt(12 * 0.25 / 10);
        double line = s / 0.5 * Math.sqrt(1.0 / 12 + 100.0 / 14_000);
        assertThat(cell.force(42.5).standardUncertainty())
                .isCloseTo(Math.sqrt(line * line + 1.0 / 3 + 0.12 * 0.12), within(1e-9));
        assertThat(cell.covers(100)).isTrue();
        assertThat(cell.covers(101)).isFalse();
    }

    @Test
    void sheetThatTellsTooLittleSaysSo() {
        assertThat(CellCalibration.of(List.of(new Load(0, 0, Way.UP), new Load(10, 5, Way.UP)), ONE)
                        .remarks())
                .anyMatch(r -> r.text().contains("at least 3 lines at 3 loads"));
        List<Load> up = new ArrayList<>();
        List<Load> bent = new ArrayList<>();
        List<Load> nothing = new ArrayList<>();
        for (int i = 0; i <= 6; i++) {
            up.add(new Load(10 * i, 5 * i + (i % 2 == 0 ? 0.01 : -0.01), Way.UP));
            bent.add(new Load(10 * i, 5 * i + 0.3 * i * i + (i % 2 == 0 ? 0.01 : -0.01), Way.UP));
            nothing.add(new Load(10 * i, i % 2 == 0 ? 1 : -1, Way.UP));
        }
        assertThat(CellCalibration.of(up, ONE).remarks()).allMatch(r -> r.text().contains("one way only"));
        assertThat(CellCalibration.of(bent, ONE).remarks())
                .anyMatch(r -> r.text().contains("not straight"));
        assertThat(CellCalibration.of(nothing, ONE).calibration()).isEmpty();
    }

    private static double torque(double speed) {
        return 14 - Math.pow((speed - 400) / 100, 2);
    }

    private static BrakeBench bench(Optional<Measured> inertia) {
        return new BrakeBench(
                typed("arm", 0.25, 0.0005), Optional.of(cell()), ONE, ONE, Optional.empty(), true, inertia);
    }

    /** The engine rises by 50 rad/s a second: its wheel of 0.02 kg m2 takes 1 N m that the cell does not see. */
    @Test
    void sweepTellsTorqueWithTheWheelCounted() {
        int n = 800;
        double[] time = new double[n];
        double[] speed = new double[n];
        double[] reading = new double[n];
        Random random = new Random(1);
        for (int i = 0; i < n; i++) {
            time[i] = 0.01 * i;
            double v = 200 + 50 * time[i];
            speed[i] = v + 0.2 * random.nextGaussian();
            reading[i] = 12.5 + 0.5 * (torque(v) - 1) / 0.25 + 0.2 * random.nextGaussian();
        }
        RunRows rows = RunRows.between(0, n)
                .with(Column.TIME, time)
                .with(Column.ENGINE_SPEED, speed)
                .with(Column.FORCE, reading);
        Reduced with = BrakeRun.sweep(rows, bench(Optional.of(Measured.exact(0.02))), Optional.empty());
        RunCurve curve = with.curve().orElseThrow();
        assertThat(with.remarks()).isEmpty();
        for (int i = 0; i < curve.size(); i++) {
            RunCurve.At at = curve.at(i);
            assertThat(at.torque().value()).isCloseTo(torque(at.speed()), within(4 * at.ownTorque() + 0.02));
        }
        assertThat(curve.torquePeak().standing()).isEqualTo(Peak.Standing.SHOWN);
        assertThat(400.0)
                .isBetween(curve.torquePeak().lowSpeed(), curve.torquePeak().highSpeed());
        Reduced without = BrakeRun.sweep(rows, bench(Optional.empty()), Optional.empty());
        assertThat(without.remarks()).anyMatch(r -> r.text().contains("flywheel"));
        assertThat(without.curve().orElseThrow().torquePeak().value().value()).isCloseTo(13, within(0.15));
    }

    @Test
    void loadBeyondTheSheetIsSaid() {
        int n = 200;
        double[] speed = new double[n];
        double[] reading = new double[n];
        for (int i = 0; i < n; i++) {
            speed[i] = 200 + i;
            reading[i] = 12.5 + 0.5 * (110 - 0.1 * i);
        }
        RunRows rows = RunRows.between(0, n).with(Column.ENGINE_SPEED, speed).with(Column.FORCE, reading);
        assertThat(BrakeRun.sweep(rows, bench(Optional.empty()), Optional.empty())
                        .remarks())
                .anyMatch(r -> r.text().contains("only carried on"));
    }

    @Test
    void steadyPointsAreAveraged() {
        Random random = new Random(2);
        int each = 200;
        double[] at = {250, 320, 390, 460, 530};
        double[] speed = new double[each * at.length];
        double[] reading = new double[speed.length];
        List<BrakeRun.Steady> stretches = new ArrayList<>();
        for (int k = 0; k < at.length; k++) {
            for (int i = 0; i < each; i++) {
                speed[k * each + i] = at[k] + 0.5 * random.nextGaussian();
                reading[k * each + i] = 12.5 + 0.5 * torque(at[k]) / 0.25 + 0.4 * random.nextGaussian();
            }
            stretches.add(new BrakeRun.Steady(k * each, (k + 1) * each));
        }
        RunRows rows = RunRows.between(0, speed.length)
                .with(Column.ENGINE_SPEED, speed)
                .with(Column.FORCE, reading);
        RunCurve curve = BrakeRun.steady(rows, stretches, bench(Optional.empty()), Optional.empty())
                .curve()
                .orElseThrow();
        for (int i = 0; i < curve.size(); i++) {
            assertThat(curve.at(i).torque().value())
                    .isCloseTo(torque(curve.at(i).speed()), within(0.1));
            // between two points a straight line would be 0.05 N m lower; that is the doubt, and more than the scatter
            // of 0.014
            assertThat(curve.at(i).ownTorque()).isBetween(0.002, 0.15);
        }
        assertThat(BrakeRun.steady(rows, stretches.subList(0, 2), bench(Optional.empty()), Optional.empty())
                        .remarks())
                .anyMatch(r -> r.text().contains("at least 3"));
    }

    private static final double MASS = 150;

    /** Air, tyres and a wind of 2 m/s from ahead on the way out, from behind on the way back [m/s2]. */
    private static double slowing(double speed, double wind) {
        return 0.25 + 0.0025 * (speed + wind) * (speed + wind);
    }

    private static CoastDown rolledOut(double wind, String name, Random random) {
        int n = 600;
        double[] time = new double[n];
        double[] speed = new double[n];
        double v = 25;
        for (int i = 0; i < n; i++) {
            time[i] = 0.05 * i;
            speed[i] = v + 0.03 * random.nextGaussian();
            v -= slowing(v, wind) * 0.05;
        }
        RunRows rows = RunRows.between(0, n).with(Column.TIME, time).with(Column.ROAD_SPEED, speed);
        return CoastDown.ofVehicle(rows, name).coastDown().orElseThrow();
    }

    @Test
    void roadTellsWhatReachesIt() {
        Random random = new Random(3);
        CoastDown out = rolledOut(2, "out", random);
        CoastDown back = rolledOut(-2, "back", random);
        int n = 200;
        double[] time = new double[n];
        double[] speed = new double[n];
        double v = 8;
        double radius = 0.25;
        int rows = 0;
        while (v < 23 && rows < n) { // force of 300 N less 4 N for each m/s
            time[rows] = 0.05 * rows;
            speed[rows] = v + 0.03 * random.nextGaussian();
            v += ((300 - 4 * v) / MASS - slowing(v, 2)) * 0.05;
            rows++;
        }
        RunRows run = RunRows.between(0, rows).with(Column.TIME, time).with(Column.ROAD_SPEED, speed);
        RunCurve told = roadCurve(run, out, back, RoadBench.Way.OUT, radius);
        RunCurve notTold = roadCurve(run, out, back, RoadBench.Way.NOT_TOLD, radius);
        assertThat(told.taken()).isEqualTo(RunCurve.Taken.WHEEL);
        for (int i = 0; i < told.size(); i++) {
            double wheel = (300 - 4 * told.at(i).speed() * radius) * radius;
            assertThat(told.at(i).torque().value())
                    .isCloseTo(wheel, within(4 * told.at(i).wholeTorque().standardUncertainty()));
            assertThat(Math.abs(notTold.at(i).torque().value() - wheel))
                    .isLessThan(notTold.at(i).wholeTorque().expanded() * 1.6);
            assertThat(notTold.at(i).torque().standardUncertainty())
                    .isGreaterThan(told.at(i).torque().standardUncertainty());
        }
        assertThat(RoadRun.reduce(
                                run,
                                road(Optional.empty(), Optional.empty(), RoadBench.Way.OUT, radius),
                                Optional.empty())
                        .remarks())
                .anyMatch(r -> r.text().contains("No run-down"));
        Reduced oneWay = RoadRun.reduce(
                run, road(Optional.empty(), Optional.of(back), RoadBench.Way.OUT, radius), Optional.empty());
        assertThat(oneWay.remarks()).anyMatch(r -> r.text().contains("not in its doubt"));
        assertThat(oneWay.curve()).isPresent();
    }

    private static RoadBench road(Optional<CoastDown> out, Optional<CoastDown> back, RoadBench.Way way, double radius) {
        return new RoadBench(
                typed("mass", MASS, 0.75),
                Optional.of(Measured.exact(0)),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Measured.exact(radius)),
                out,
                back,
                way,
                Optional.empty(),
                Optional.empty());
    }

    private static RunCurve roadCurve(RunRows run, CoastDown out, CoastDown back, RoadBench.Way way, double radius) {
        return RoadRun.reduce(run, road(Optional.of(out), Optional.of(back), way, radius), Optional.empty())
                .curve()
                .orElseThrow();
    }
}
