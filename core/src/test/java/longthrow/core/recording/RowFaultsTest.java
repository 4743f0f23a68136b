package longthrow.core.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults put into invented records are found, and nothing else is. */
class RowFaultsTest {
    private static final int ROWS = 5000;
    private static final double STEP = 0.01; // 100 rows a second, 50 s

    private static Recording recording(double[] time, double[] engine, double[] drum) {
        return new Recording(
                List.of(
                        column(Channel.TIME, Units.SECOND),
                        column(Channel.ENGINE_SPEED, Units.RADIAN_PER_SECOND),
                        column(Channel.DRUM_SPEED, Units.RADIAN_PER_SECOND)),
                new double[][] {time, engine, drum},
                RowLines.from(2, time.length));
    }

    private static Recording.Column column(Channel channel, Unit unit) {
        return new Recording.Column("", channel, Optional.of(unit), Sureness.TOLD, "", List.of());
    }

    private static double[] rows(IntToDoubleFunction figure) {
        double[] rows = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            rows[i] = figure.applyAsDouble(i);
        }
        return rows;
    }

    private static double[] time() {
        return rows(i -> i * STEP);
    }

    /** Up in 8 s, down in 12 s, over and over, with scatter. */
    private static double[] speed(double scale, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return rows(i -> {
            double at = i * STEP % 20;
            double v = at < 8 ? 200 + 600 * at / 8 : 800 - 600 * (at - 8) / 12;
            return scale * (v + (random.nextDouble() + random.nextDouble() - 1) * 2);
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aSoundRecordHasNone(long seed) {
        assertThat(RowFaults.of(recording(time(), speed(1, seed), speed(0.5, seed + 100))))
                .isEmpty();
    }

    @Test
    void aSpikeADropoutAndAStuckFigureAreFoundWithTheirRows() {
        double[] engine = speed(1, 1);
        engine[700] += 150;
        engine[1500] = 0;
        engine[1501] = 0;
        engine[2300] = Double.NaN;
        for (int i = 3001; i < 3030; i++) {
            engine[i] = engine[3000];
        }
        List<RowFault> faults = RowFaults.of(recording(time(), engine, speed(0.5, 2)));
        assertThat(faults)
                .extracting(f -> f.kind() + " " + f.column() + " " + f.from() + "-" + f.to())
                .containsExactly("SPIKE 1 700-700", "DROPOUT 1 1500-1501", "DROPOUT 1 2300-2300", "STUCK 1 3000-3029");
        assertThat(faults)
                .allMatch(f -> f.rule().contains("no source") && !f.why().isBlank());
    }

    @Test
    void timeThatStandsRunsBackStartsAnewOrLeapsIsFound() {
        double[] time = time();
        time[400] = time[399];
        time[800] = time[700];
        for (int i = 2000; i < ROWS; i++) {
            time[i] += 5;
        }
        for (int i = 4000; i < ROWS; i++) {
            time[i] = (i - 4000) * STEP;
        }
        assertThat(RowFaults.of(recording(time, speed(1, 1), speed(0.5, 2))))
                .extracting(f -> f.kind() + " " + f.from() + "-" + f.to())
                .containsExactly(
                        "TIME_REPEATED 400-400",
                        "TIME_BACKWARD 800-800",
                        "TIME_GAP 2000-2000",
                        "TIME_RESTART 4000-4000");
    }

    @Test
    void slipIsFoundWhereTheEngineRunsAheadOfTheLockedRatio() {
        double[] engine = speed(1, 1);
        double[] drum = rows(i -> engine[i] / 3);
        for (int i = 1000; i < 1160; i++) {
            drum[i] /= 1.04;
        }
        List<RowFault> faults = RowFaults.of(recording(time(), engine, drum));
        assertThat(faults).extracting(RowFault::kind).containsExactly(FaultKind.CLUTCH_SLIP);
        assertThat(faults.get(0).from()).isBetween(984, 1000); // blocks of 16 rows
        assertThat(faults.get(0).to()).isBetween(1159, 1175);
        assertThat(faults.get(0).why()).contains("locked 3.0000");
    }

    @Test
    void aRatioThatNeverRestsIsSaidAndNotTakenForSlip() {
        double[] engine = speed(1, 1);
        double[] drum = rows(i -> engine[i] / (2 + 2.0 * i / ROWS));
        assertThat(RowFaults.of(recording(time(), engine, drum)))
                .extracting(RowFault::kind)
                .containsExactly(FaultKind.NO_FIXED_RATIO);
    }

    @Test
    void whatIsSetAsideIsTheOwnersWord() {
        double[] engine = speed(1, 1);
        engine[700] += 150;
        Recording recording = recording(time(), engine, speed(0.5, 2));
        List<RowFault> faults = RowFaults.of(recording);
        boolean[] kept = RowFaults.rowsKept(recording, faults, Set.of(), Set.of());
        assertThat(kept[700]).isFalse();
        Recording rest = recording.only(kept);
        assertThat(rest.rows()).isEqualTo(ROWS - 1);
        assertThat(rest.lines().lineOf(700)).isEqualTo(703);
        assertThat(RowFaults.rowsKept(recording, faults, Set.copyOf(faults), Set.of())[700])
                .isTrue();
    }

    @Test
    void runsAndCoastDownsBeginAndEndWhereSpeedTurns() {
        List<Stretch> stretches = Stretches.of(recording(time(), speed(1, 1), speed(0.5, 2)));
        assertThat(stretches)
                .extracting(Stretch::kind)
                .containsExactly(
                        Stretch.Kind.PULL,
                        Stretch.Kind.COAST,
                        Stretch.Kind.PULL,
                        Stretch.Kind.COAST,
                        Stretch.Kind.PULL);
        assertThat(stretches.get(0).to()).isBetween(780, 820); // two blocks of a tenth of a second
        assertThat(stretches.get(1).to()).isBetween(1980, 2020);
        assertThat(stretches.get(0).endSpeed()).isCloseTo(400, within(15.0));
    }

    @Test
    void pointsOnABrakeAreSteadyStretches() {
        SplittableRandom random = new SplittableRandom(9);
        double[] speed = rows(i -> 200 + 100 * Math.floor(i * STEP / 10) + random.nextDouble());
        List<Stretch> stretches = Stretches.of(recording(time(), speed, speed));
        assertThat(stretches).extracting(Stretch::kind).containsOnly(Stretch.Kind.STEADY);
        assertThat(stretches).hasSize(5);
        assertThat(stretches.get(2).startSpeed()).isCloseTo(400.5, within(0.5));
    }

    @Test
    void noWordOfTheTradeMeansTwoChannels() {
        for (Channel one : Channel.values()) {
            for (String word : one.words()) {
                assertThat(Channel.answeringTo(word)).as(word).contains(one);
            }
        }
        assertThat(Channel.answeringTo("Engine_Speed")).contains(Channel.ENGINE_SPEED);
        assertThat(Channel.answeringTo("MotorDrehzahl")).contains(Channel.ENGINE_SPEED);
        assertThat(LoggedUnits.find(Channel.ENGINE_SPEED.dimension(), "U/min")).contains(Units.RPM);
    }

    /** A head at 80 to 95 °C that reads 300 °C once: what jumps is told in the unit of the file, and a difference without the offset of its scale. */
    @Test
    void whatIsWrongIsToldInTheUnitOfTheFile() {
        SplittableRandom random = new SplittableRandom(5);
        double[] head = rows(i -> 353.15 + 15.0 * i / ROWS + 0.01 * random.nextInt(9));
        double before = head[699];
        head[700] = 573.15;
        Recording recording = new Recording(
                List.of(column(Channel.TIME, Units.SECOND), column(Channel.HEAD_TEMPERATURE, Units.CELSIUS)),
                new double[][] {time(), head},
                RowLines.from(2, ROWS));
        List<RowFault> faults = RowFaults.of(recording);
        assertThat(faults).hasSize(1);
        assertThat(faults.get(0).why())
                .isEqualTo("jumps by "
                        + new java.math.BigDecimal(573.15 - before)
                                .round(new java.math.MathContext(5))
                                .toPlainString()
                        + " °C and back");
        assertThat(faults.get(0).rule()).matches("further than 0\\.\\d+ °C: 10 usual steps or 6 of the least, .*");
        assertThat(recording.columns().get(1).told(573.15)).isEqualTo("300 °C");
        assertThat(recording.columns().get(1).told(Double.NaN)).isEqualTo("no figure");
    }
}
