package longthrow.core.reduce;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.reduce.RunRows.Column;
import org.junit.jupiter.api.Test;

/** Pulls and run-downs of an invented drum whose truth is known. */
class DrumRunTest {
    private static final double DRUM = 3.6;
    private static final double ENGINE = 0.006;
    private static final double RATIO = 5.2;
    private static final Measured DRUM_READ =
            Measured.of(DRUM, List.of(Source.known("drum", Source.Kind.TYPED, "inertia of the drum", 0.036)));

    private static double torque(double engineSpeed) {
        double u = (engineSpeed - 420) / 200;
        return 13 - u * u;
    }

    /** Bearings, grease and air of the drum [N m]. */
    private static double drag(double drumSpeed) {
        return 0.8 + 0.01 * drumSpeed + 2e-4 * drumSpeed * drumSpeed;
    }

    /** Columns of a pull from 210 to 650 rad/s of the engine: time, drum speed, engine speed. */
    private static double[][] pull(double pickup, Random random) {
        int most = 20_000;
        double[][] columns = new double[3][most];
        double dt = 0.01;
        double engine = 210;
        int n = 0;
        while (engine < 650 && n < most) {
            columns[0][n] = n * dt;
            columns[1][n] = engine / RATIO + pickup / RATIO * random.nextGaussian();
            columns[2][n] = engine + pickup * random.nextGaussian();
            n++;
            for (int step = 0; step < 10; step++) {
                double inertia = DRUM / (RATIO * RATIO) + ENGINE;
                engine += (torque(engine) - drag(engine / RATIO) / RATIO) / inertia * dt / 10;
            }
        }
        int rows = n;
        return Arrays.stream(columns).map(c -> Arrays.copyOf(c, rows)).toArray(double[][]::new);
    }

    private static double[][] runDown(double inertia, double pickup, Random random) {
        double[][] columns = new double[2][3000];
        double speed = 130;
        for (int i = 0; i < 3000; i++) {
            columns[0][i] = 0.05 * i;
            columns[1][i] = speed + pickup * random.nextGaussian();
            for (int step = 0; step < 10; step++) {
                speed -= drag(speed) / inertia * 0.005;
            }
        }
        return columns;
    }

    private static CoastDown read(double[][] columns, String name) {
        RunRows rows = RunRows.between(0, columns[0].length)
                .with(Column.TIME, columns[0])
                .with(Column.DRUM_SPEED, columns[1]);
        return CoastDown.ofDrum(rows, name).coastDown().orElseThrow();
    }

    private static RunRows rows(double[][] columns, boolean engine) {
        RunRows rows = RunRows.between(0, columns[0].length)
                .with(Column.TIME, columns[0])
                .with(Column.DRUM_SPEED, columns[1]);
        return engine ? rows.with(Column.ENGINE_SPEED, columns[2]) : rows;
    }

    private static DrumBench bench() {
        CoastDown down = read(runDown(DRUM, 0.05, new Random(5)), "run-down");
        return new DrumBench(
                DRUM_READ,
                Optional.of(Measured.exact(ENGINE)),
                Optional.empty(),
                Optional.of(down.of(DRUM_READ)),
                Optional.of(Measured.exact(1)));
    }

    private static String words(Reduced reduced) {
        return reduced.remarks().toString();
    }

    @Test
    void torqueOfTheEngineIsFoundAgain() {
        Reduced reduced = DrumRun.reduce(rows(pull(0.5, new Random(1)), true), bench(), Optional.empty());
        RunCurve curve = reduced.curve().orElseThrow();
        assertThat(reduced.remarks()).isEmpty();
        assertThat(curve.taken()).isEqualTo(RunCurve.Taken.CRANK);
        assertThat(curve.size()).isGreaterThanOrEqualTo(25);
        for (int i = 0; i < curve.size(); i++) {
            RunCurve.At at = curve.at(i);
            assertThat(at.torque().value())
                    .as("%d rpm", curve.grid().rpm(i))
                    .isCloseTo(torque(at.speed()), within(0.25));
            assertThat(at.power().value())
                    .isCloseTo(
                            at.torque().value() * at.speed(),
                            within(1e-9 * at.power().value()));
            // 1 % of the drum's share of the torque, the same way at every speed
            assertThat(at.torque().standardUncertainty())
                    .isBetween(0.003 * at.torque().value(), 0.015 * at.torque().value());
        }
        assertThat(curve.torquePeak().standing()).isEqualTo(Peak.Standing.SHOWN);
        assertThat(420.0)
                .isBetween(curve.torquePeak().lowSpeed(), curve.torquePeak().highSpeed());
        assertThat(curve.benchDoubtOfTorque().keySet()).anyMatch(s -> s.id().equals("drum"));
    }

    /** The engine spins up by a third over the drum for the first second and a half: no curve there, and said. */
    @Test
    void slipIsNoPower() {
        double[][] columns = pull(0.5, new Random(2));
        for (int i = 0; i < 150; i++) {
            columns[2][i] *= 1.35 - 0.35 * i / 150;
        }
        Reduced reduced = DrumRun.reduce(rows(columns, true), bench(), Optional.empty());
        RunCurve curve = reduced.curve().orElseThrow();
        assertThat(words(reduced)).contains("Slip in").contains("no curve");
        assertThat(curve.grid().firstRpm()).isGreaterThan(2050);
        for (int i = 0; i < curve.size(); i++) {
            assertThat(curve.at(i).torque().value())
                    .isCloseTo(torque(curve.at(i).speed()), within(0.35));
        }
    }

    @Test
    void whatIsNotKnownIsSaid() {
        DrumBench bare =
                new DrumBench(DRUM_READ, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        Reduced reduced = DrumRun.reduce(rows(pull(0.5, new Random(3)), false), bare, Optional.empty());
        assertThat(reduced.curve().orElseThrow().taken()).isEqualTo(RunCurve.Taken.DRUM);
        assertThat(words(reduced)).contains("Inertia of what turns", "bearings and air", "cannot be seen");
        Reduced geared =
                DrumRun.reduce(rows(pull(0.5, new Random(3)), true), bare, Optional.of(new SpeedGrid(200, 1000, 40)));
        assertThat(geared.curve().orElseThrow().taken()).isEqualTo(RunCurve.Taken.BEHIND_DRIVE);
        assertThat(words(geared)).contains("of the speeds asked for only");
    }

    @Test
    void badRowsAreToldAndNotThrown() {
        double[][] columns = pull(0.5, new Random(4));
        RunRows noTime = RunRows.between(0, 100).with(Column.DRUM_SPEED, columns[1]);
        assertThat(words(DrumRun.reduce(noTime, bench(), Optional.empty()))).contains("No column of time");
        RunRows few = RunRows.between(0, 8).with(Column.TIME, columns[0]).with(Column.DRUM_SPEED, columns[1]);
        assertThat(words(DrumRun.reduce(few, bench(), Optional.empty()))).contains("8 rows");
        double[] backward = columns[0].clone();
        Arrays.fill(backward, 200, backward.length, 0.5);
        RunRows wrong =
                RunRows.between(0, backward.length).with(Column.TIME, backward).with(Column.DRUM_SPEED, columns[1]);
        assertThat(words(DrumRun.reduce(wrong, bench(), Optional.empty()))).contains("does not run forward");
        double[] gaps = columns[1].clone();
        Arrays.fill(gaps, 100, 130, Double.NaN);
        Reduced withGaps = DrumRun.reduce(
                RunRows.between(0, gaps.length)
                        .with(Column.TIME, columns[0])
                        .with(Column.DRUM_SPEED, gaps)
                        .with(Column.ENGINE_SPEED, columns[2]),
                bench(),
                Optional.empty());
        assertThat(words(withGaps)).contains("30 of");
        assertThat(withGaps.curve()).isPresent();
        double[] still = new double[columns[1].length];
        Arrays.fill(still, 50);
        assertThat(words(DrumRun.reduce(
                        RunRows.between(0, still.length)
                                .with(Column.TIME, columns[0])
                                .with(Column.DRUM_SPEED, still),
                        bench(),
                        Optional.empty())))
                .contains("no pull");
        double[] nothing = new double[columns[1].length];
        Arrays.fill(nothing, Double.NaN);
        assertThat(DrumRun.reduce(
                                RunRows.between(0, nothing.length)
                                        .with(Column.TIME, columns[0])
                                        .with(Column.DRUM_SPEED, nothing),
                                bench(),
                                Optional.empty())
                        .curve())
                .isEmpty();
    }

    /** Torque of the drum's drag within three times its doubt, at speeds it was read at. */
    @Test
    void runDownTellsTheDrag() {
        Parasitic drag = read(runDown(DRUM, 0.05, new Random(6)), "run-down").of(Measured.exact(DRUM));
        assertThat(drag.highest()).isCloseTo(130, within(1.0));
        for (double v = 45; v < 128; v += 10) {
            assertThat(drag.at(v).value())
                    .isCloseTo(drag(v), within(3 * drag.at(v).standardUncertainty()));
            assertThat(drag.at(v).standardUncertainty()).isLessThan(0.05 * drag(v));
        }
    }

    @Test
    void inertiaByAnAddedOne() {
        CoastDown bare = read(runDown(DRUM, 0.05, new Random(7)), "bare");
        CoastDown with = read(runDown(DRUM + 0.9, 0.05, new Random(8)), "with");
        Measured found = bare.inertiaByAdded(with, Measured.exact(0.9)).orElseThrow();
        assertThat(found.value()).isCloseTo(DRUM, within(3 * found.standardUncertainty()));
        assertThat(found.standardUncertainty()).isBetween(0.001, 0.4);
        assertThat(with.inertiaByAdded(bare, Measured.exact(0.9)))
                .isEmpty(); // the heavier slows less: taken the wrong way round
    }

    /** By hand: I = 3.6, friction 1.5 N m, radius 0.2 m, so acceleration (m g r - friction) / (I + m r^2). */
    @Test
    void inertiaByAFallingMass() {
        double g = FallingMass.gravity().value();
        double a5 = (5 * g * 0.2 - 1.5) / (3.6 + 5 * 0.04);
        double a10 = (10 * g * 0.2 - 1.5) / (3.6 + 10 * 0.04);
        Measured r = Measured.exact(0.2);
        Measured five = Measured.exact(5);
        Measured byTwo = FallingMass.byTwo(r, Measured.exact(10), Measured.exact(a10), five, Measured.exact(a5))
                .orElseThrow();
        assertThat(byTwo.value()).isCloseTo(3.6, within(1e-9));
        assertThat(byTwo.standardUncertainty()).isGreaterThan(0); // gravity of the place
        assertThat(FallingMass.andCoast(r, five, Measured.exact(a5), Measured.exact(1.5 / 3.6))
                        .orElseThrow()
                        .value())
                .isCloseTo(3.6, within(1e-9));
        assertThat(FallingMass.byTwo(r, five, Measured.exact(a10), Measured.exact(10), Measured.exact(a5)))
                .isEmpty();
        assertThat(FallingMass.acceleration(Measured.exact(1), Measured.exact(2), r)
                        .value())
                .isCloseTo(2.5, within(1e-12));
    }

    /** A drum of a shell and two end discs: sum of m (r1^2 + r2^2) / 2; steel by its density comes to the same. */
    @Test
    void inertiaByShape() {
        Measured shell =
                new TurningPart.Weighed(Measured.exact(90), Measured.exact(0.18), Measured.exact(0.2)).inertia();
        assertThat(shell.value()).isCloseTo(90 * (0.0324 + 0.04) / 2, within(1e-12));
        double mass = 7850 * Math.PI * (0.04 - 0.0324) * 0.5;
        Measured steel = new TurningPart.OfMaterial(
                        Measured.exact(7850), Measured.exact(0.5), Measured.exact(0.18), Measured.exact(0.2))
                .inertia();
        assertThat(steel.value()).isCloseTo(mass * (0.0324 + 0.04) / 2, within(1e-12));
        Measured all = TurningPart.together(List.of(
                new TurningPart.Known(shell), new TurningPart.Known(DRUM_READ), new TurningPart.Known(DRUM_READ)));
        assertThat(all.value()).isCloseTo(shell.value() + 7.2, within(1e-12));
        assertThat(all.standardUncertainty())
                .isCloseTo(0.072, within(1e-12)); // one source, counted with its sign twice
    }

    @Test
    void whatElseWasWrittenIsToldBySpeed() {
        double[][] columns = pull(0.2, new Random(9));
        double[] lambda = new double[columns[0].length];
        double[] fuel = new double[columns[0].length];
        Random random = new Random(10);
        for (int i = 0; i < lambda.length; i++) {
            lambda[i] = 0.85 + 1e-4 * columns[2][i] + 0.005 * random.nextGaussian();
            fuel[i] = 1e-7 * torque(columns[2][i]) * columns[2][i] * (1 + 0.01 * random.nextGaussian());
        }
        RunRows rows = rows(columns, true).beside("lambda", lambda).with(Column.FUEL_FLOW, fuel);
        RunCurve curve = DrumRun.reduce(rows, bench(), Optional.empty()).curve().orElseThrow();
        AlongCurve along = curve.beside().get(0);
        assertThat(along.name()).isEqualTo("lambda");
        for (int i = 2; i < curve.size() - 2; i++) {
            assertThat(along.value(i)).isCloseTo(0.85 + 1e-4 * curve.at(i).speed(), within(0.004));
            assertThat(along.standardUncertainty(i)).isBetween(1e-5, 0.004);
            Measured consumption = curve.consumption(Measured.exact(1)).get(i).orElseThrow();
            assertThat(consumption.value()).isCloseTo(1e-7, within(3e-9)); // 360 g/(kW h)
        }
    }
}
