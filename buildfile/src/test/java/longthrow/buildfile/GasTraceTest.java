package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.build.Build;
import longthrow.core.build.GasReading;
import longthrow.core.life.BoundingGas;
import longthrow.core.life.GasTrace;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Measured gas on the whole invented engine of {@link LadderMutationTest}, wanted for 5200 rpm: what it sharpens, what it leaves alone, what is refused. */
class GasTraceTest {
    private static final List<String> BY_GAS = List.of(
            "rod_beam_fatigue", "rod_beam_buckling", "pin_bending", "pin_shear", "crankpin_bending", "flywheel_taper");
    private static final List<String> ON_THE_OVERRUN =
            List.of("rod_beam_yield", "rod_bolts_gaping", "rod_bolts_strip", "rod_bolts_fatigue");

    private static Build whole() {
        return BuildFile.read(LadderMutationTest.WHOLE.getBytes(StandardCharsets.UTF_8))
                .build()
                .orElseThrow();
    }

    /** The bounding trace of this engine, what fire makes of it lowered to a share. */
    static GasReading trace(String rpm, double share, GasReading.Cycles cycles) {
        Answer answer = Running.limitsAlone(whole());
        CrankMotion crank = new CrankMotion(55.40e-3 / 2, 85.20e-3, 0);
        BoundingGas bound = BoundingGas.of(
                crank,
                answer.value(Term.COMPRESSION_RATIO).orElseThrow().figure().value());
        List<GasReading.Row> rows = new ArrayList<>();
        for (int degrees = -180; degrees <= 180; degrees += 2) {
            double gauge = bound.gauge(Math.toRadians(degrees));
            double absolute = GasTrace.STANDARD_ATMOSPHERE + (degrees < -40 ? gauge : share * gauge);
            rows.add(new GasReading.Row(
                    Quantity.of(String.valueOf(degrees), Units.DEGREE),
                    Quantity.of(String.format(Locale.ROOT, "%.3f", absolute / 1e3), Units.KILOPASCAL)));
        }
        return new GasReading(
                Quantity.of(rpm, Units.RPM),
                GasReading.Reference.ABSOLUTE,
                null,
                cycles,
                Quantity.of("0.001", Units.PERCENT),
                "",
                rows);
    }

    private static Answer with(GasReading... traces) {
        return Running.limitsAlone(whole().withGas(List.of(traces)));
    }

    private static Rung rung(Answer answer, String key) {
        return answer.ladder().orElseThrow().rung(key).orElseThrow(() -> new AssertionError(key));
    }

    private static double rpm(Rung rung) {
        return Units.RPM.fromSi(rung.speed().orElseThrow().value());
    }

    private static void isTheSame(Rung now, Rung before) {
        assertThat(now.state()).as(now.key()).isEqualTo(before.state());
        assertThat(now.weight()).as(now.key()).isEqualTo(before.weight());
        assertThat(now.why()).as(now.key()).isEqualTo(before.why());
        assertThat(now.hangsOn()).as(now.key()).isEqualTo(before.hangsOn());
    }

    @Test
    void aTraceEqualToTheBoundingOneGivesTheSameSpeeds() {
        Answer bounding = Running.limitsAlone(whole());
        Answer measured = with(trace("5300", 1, GasReading.Cycles.STRONGEST));
        for (String key : BY_GAS) {
            Rung by = rung(bounding, key);
            Rung now = rung(measured, key);
            assertThat(now.speed().isPresent()).as(key).isEqualTo(by.speed().isPresent());
            by.speed()
                    .ifPresent(s -> assertThat(rpm(now)).as(key).isCloseTo(Units.RPM.fromSi(s.value()), within(1e-6)));
            assertThat(now.state() == State.HOLDS).as(key).isEqualTo(by.state() == State.HOLDS);
        }
    }

    /** Half of the bound, and the bolts do not hear of it; faster than it was taken it promises nothing. */
    @Test
    void aLowerTraceSharpensAndLeavesTheOverrunAlone() {
        Answer bounding = Running.limitsAlone(whole());
        Answer measured = with(trace("5300", 0.5, GasReading.Cycles.STRONGEST));
        for (String key : List.of("rod_beam_fatigue", "pin_bending")) {
            assertThat(rung(bounding, key).state()).as(key).isEqualTo(State.NEAR);
            Rung now = rung(measured, key);
            assertThat(now.state()).as(now.why()).isEqualTo(State.HOLDS);
            assertThat(now.why())
                    .contains("the gas trace measured at 5300 rpm (gas_traces[1])", "% of the bounding one");
            assertThat(now.hangsOn()).contains("gas_traces[1]");
            assertThat(rpm(now)).as(key).isCloseTo(5300, within(1e-6));
        }
        for (String key : ON_THE_OVERRUN) {
            isTheSame(rung(measured, key), rung(bounding, key));
        }
        assertThat(rung(bounding, "crankpin_bending").why()).contains("by the bounding gas trace");
    }

    /** A mean is raised by what the quickest cycles add, so it never does better than the strongest of the same height. */
    @Test
    void aMeanOfCyclesCountsForMore() {
        double mean = rung(with(trace("5300", 0.75, GasReading.Cycles.MEAN)), "rod_beam_fatigue")
                .probability();
        double strongest = rung(with(trace("5300", 0.75, GasReading.Cycles.STRONGEST)), "rod_beam_fatigue")
                .probability();
        assertThat(mean).isLessThan(strongest);
    }

    @Test
    void aboveTheFastestTheBoundingOneCounts() {
        Answer bounding = Running.limitsAlone(whole());
        Answer slow = with(trace("4000", 0.5, GasReading.Cycles.STRONGEST));
        BY_GAS.forEach(key -> isTheSame(rung(slow, key), rung(bounding, key)));
        assertThat(slow.findings())
                .anyMatch(f -> f.message().contains("the fastest at 4000 rpm: the bounding one counts"));
    }

    /** An engine runs through the slower speeds: the hardest of what was taken counts. */
    @Test
    void theHardestOfTheTracesCounts() {
        Answer both =
                with(trace("5300", 0.5, GasReading.Cycles.STRONGEST), trace("3000", 0.7, GasReading.Cycles.STRONGEST));
        assertThat(rung(both, "pin_bending").why()).contains("measured at 3000 rpm (gas_traces[2])");
    }

    @Test
    void aTraceAboveTheBoundOrWrongPeggedIsNotUsed() {
        Answer bounding = Running.limitsAlone(whole());
        Answer high = with(trace("5300", 1.3, GasReading.Cycles.STRONGEST));
        BY_GAS.forEach(key -> isTheSame(rung(high, key), rung(bounding, key)));
        assertThat(high.findings())
                .anyMatch(f -> f.message().contains("not used") && f.message().contains("bounding"));
        GasReading fine = trace("5300", 0.5, GasReading.Cycles.STRONGEST);
        GasReading late = new GasReading(
                fine.speed(),
                fine.pressure(),
                null,
                fine.cycles(),
                fine.within(),
                "",
                fine.rows().stream()
                        .map(r -> new GasReading.Row(
                                r.angle(),
                                Quantity.of(String.valueOf(r.pressure().si() / 1e3 - 60), Units.KILOPASCAL)))
                        .toList());
        assertThat(with(late).findings()).anyMatch(f -> f.message().contains("exponent"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed: 3000 rpm, pressure: gauge, cycles: mean, within: 3 % | without the pressure of the air",
                "speed: 3000 rpm, pressure: absolute, air: 99 kPa, cycles: mean, within: 3 % | no place beside absolute",
                "speed: 30 rpm, pressure: absolute, cycles: mean, within: 3 % | no speed of such an engine",
                "speed: 3000 rpm, pressure: absolute, cycles: mean, within: 80 % | says nothing",
                "speed: 3000 rpm, pressure: absolute, cycles: some, within: 3 % | not one of the words",
                "speed: 3000 rpm, pressure: absolute, cycles: mean, within: 3 % | neither two whole turns nor"
            })
    void nonsenseIsRefusedWithWhatIsWrong(String head, String said) {
        String text = LadderMutationTest.WHOLE + "gas_traces: [{" + head + ", rows: {0°: 100 kPa, 10°: 3000 kPa}}]\n";
        ReadBuild read = BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
        assertThat(read.build()).isEmpty();
        assertThat(read.faults())
                .anyMatch(f -> f.message().contains(said) && f.message().contains("gas_traces[1]"));
    }

    @ParameterizedTest
    @CsvSource({"90, no engine fires there", "-30, no engine fires there", "10, "})
    void thePeakIsWhereAnEngineFires(int peak, String said) {
        StringBuilder rows = new StringBuilder();
        for (int degrees = -180; degrees <= 180; degrees += 5) {
            rows.append(rows.isEmpty() ? "" : ", ")
                    .append(degrees)
                    .append("°: ")
                    .append(Math.round(100 + 3000 * Math.exp(-Math.pow((degrees - peak) / 30.0, 2))))
                    .append(" kPa");
        }
        ReadBuild read = BuildFile.read((LadderMutationTest.WHOLE
                        + "gas_traces: [{speed: 3000 rpm, pressure: absolute, cycles: mean, within: 3 %, rows: {" + rows
                        + "}}]\n")
                .getBytes(StandardCharsets.UTF_8));
        if (said == null) {
            assertThat(read.faults()).isEmpty();
        } else {
            assertThat(read.faults()).anyMatch(f -> f.message().contains(said));
        }
    }

    @Test
    void rowsOfALoggerAreReadHoweverTheyAreParted() {
        for (String text : List.of(
                "angle;pressure\n-5;101,5\n0;102\n", "-5, 101.5\n0, 102", "-5\t101,5\n0\t102\n", "-5 101.5\n\n0 102")) {
            GasTraceText.Rows rows = GasTraceText.read(text, Units.KILOPASCAL);
            assertThat(rows.faults()).as(text).isEmpty();
            assertThat(rows.rows()).extracting(r -> r.pressure().si()).containsExactly(101_500.0, 102_000.0);
        }
        assertThat(GasTraceText.read("-5;101\nfive;102", Units.BAR).faults())
                .singleElement()
                .asString()
                .contains("line 2", "'five;102'");
        assertThat(GasTraceText.read("", Units.BAR).faults()).isNotEmpty();
        GasTraceText.Rows fine = GasTraceText.read("0;1\n0.2;9\n0.4;2\n1;3\n", Units.BAR);
        assertThat(fine.rows()).extracting(r -> r.pressure().si()).containsExactly(900_000.0, 300_000.0);
    }
}
