package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
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

    private static final String WHOLE = Running.replaced(
            LadderMutationTest.WHOLE, "wanted_speed: 5200 rpm", "wanted_speed: 5200 rpm\n  idle_speed: 1700 rpm");

    private static Build whole() {
        return BuildFile.read(WHOLE.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
    }

    /** From idle to above the speed wanted, each at 0.8 of the next or more: hardest at 3450 rpm, where it pulls hardest. */
    private static final List<String> EVERY_FIFTH = List.of("5300", "4300", "3450", "2800", "2300", "1900");

    static GasReading[] sweep(double share, GasReading.Cycles cycles) {
        return EVERY_FIFTH.stream()
                .map(rpm -> trace(rpm, rpm.equals("3450") ? share : 0.8 * share, cycles))
                .toArray(GasReading[]::new);
    }

    /** The bounding trace of this engine, what fire makes of it lowered to a share. */
    static GasReading trace(String rpm, double share, GasReading.Cycles cycles) {
        Answer answer = Running.limitsAlone(whole());
        CrankMotion crank = new CrankMotion(55.40e-3 / 2, 85.20e-3, 0);
        double ratio =
                answer.value(Term.COMPRESSION_RATIO).orElseThrow().figure().value();
        BoundingGas bound = BoundingGas.of(crank, ratio);
        List<GasReading.Row> rows = new ArrayList<>();
        for (int degrees = -180; degrees <= 180; degrees += 2) {
            double gauge = bound.gauge(Math.toRadians(degrees));
            // burnt at top dead centre, not from 40 degrees before it as the bound takes it: an engine that made
            // nothing would fire so
            double compressed = GasTrace.STANDARD_ATMOSPHERE
                    * (Math.pow(
                                    volume(crank, ratio, Math.PI) / volume(crank, ratio, Math.toRadians(degrees)),
                                    BoundingGas.COMPRESSION)
                            - 1);
            double absolute = GasTrace.STANDARD_ATMOSPHERE + (degrees < 0 ? compressed : share * gauge);
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

    private static double volume(CrankMotion crank, double ratio, double angle) {
        return 1 + (ratio - 1) * crank.travel(angle) / crank.stroke();
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
        Answer measured = with(sweep(1, GasReading.Cycles.STRONGEST));
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
        Answer measured = with(sweep(0.5, GasReading.Cycles.STRONGEST));
        for (String key : List.of("rod_beam_fatigue", "pin_bending")) {
            assertThat(rung(bounding, key).state()).as(key).isEqualTo(State.NEAR);
            Rung now = rung(measured, key);
            assertThat(now.state()).as(now.why()).isEqualTo(State.HOLDS);
            assertThat(now.why())
                    .contains("the gas trace measured at 3450 rpm (gas_traces[3])", "% of the bounding one");
            assertThat(now.hangsOn()).contains("gas_traces[1]", "gas_traces[3]");
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
        double mean = rung(with(sweep(0.6, GasReading.Cycles.MEAN)), "rod_beam_fatigue")
                .probability();
        double strongest = rung(with(sweep(0.6, GasReading.Cycles.STRONGEST)), "rod_beam_fatigue")
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

    /** A trace speaks for a fifth of its speed and no farther down: one alone says nothing of slower running, and a gap between two leaves the bound standing. */
    @Test
    void whereNoTraceSpeaksTheBoundingOneStands() {
        Answer bounding = Running.limitsAlone(whole());
        Answer alone = with(trace("5300", 0.5, GasReading.Cycles.STRONGEST));
        isTheSame(rung(alone, "pin_bending"), rung(bounding, "pin_bending"));
        assertThat(alone.findings())
                .anyMatch(f ->
                        f.where().equals("gas_traces[1]") && f.message().contains("nothing of running below 4240 rpm"));
        List<GasReading> all = new ArrayList<>(List.of(sweep(0.5, GasReading.Cycles.STRONGEST)));
        all.remove(2);
        Answer gap = with(all.toArray(GasReading[]::new));
        isTheSame(rung(gap, "pin_bending"), rung(bounding, "pin_bending"));
        assertThat(gap.findings()).anyMatch(f -> f.message().contains("nothing of running below 3440 rpm"));
        Answer fast = with(trace("9000", 0.5, GasReading.Cycles.STRONGEST));
        BY_GAS.forEach(key -> isTheSame(rung(fast, key), rung(bounding, key)));
        assertThat(fast.findings())
                .anyMatch(
                        f -> f.message().contains("taken at 9000 rpm and speaks for speeds from that down to 7200 rpm")
                                && f.message().contains("5200 rpm is asked for"));
    }

    /** Without an idle speed nobody knows how far down the traces must reach. */
    @Test
    void withoutAnIdleSpeedTracesSpeakOnlyWhereTheBoundHolds() {
        Build build = BuildFile.read(LadderMutationTest.WHOLE.getBytes(StandardCharsets.UTF_8))
                .build()
                .orElseThrow();
        Answer answer = Running.limitsAlone(build.withGas(List.of(sweep(0.5, GasReading.Cycles.STRONGEST))));
        isTheSame(rung(answer, "pin_bending"), rung(Running.limitsAlone(build), "pin_bending"));
        assertThat(answer.findings()).anyMatch(f -> f.mend().contains("use.idle_speed"));
    }

    /** A limit that the bounding trace holds up to some speed needs no traces slower than that. */
    @Test
    void tracesNeedReachNoFartherDownThanTheBoundHolds() {
        String wanted = "8800";
        String text = Running.replaced(WHOLE, "wanted_speed: 5200 rpm", "wanted_speed: " + wanted + " rpm");
        Build fast =
                BuildFile.read(text.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
        Rung bound = rung(Running.limitsAlone(fast), "crankpin_bending");
        assertThat(bound.state()).isNotEqualTo(State.HOLDS);
        double low = Units.RPM.fromSi(bound.speed().orElseThrow().low());
        assertThat(low)
                .isBetween(4600.0, 5600.0); // 8000 ± 2800 rpm: three traces reach below it, and none is near idle
        GasReading[] three = List.of(wanted, "7100", "5700").stream()
                .map(rpm -> trace(rpm, 0.4, GasReading.Cycles.STRONGEST))
                .toArray(GasReading[]::new);
        Answer now = Running.limitsAlone(fast.withGas(List.of(three)));
        assertThat(rung(now, "crankpin_bending").why()).contains("by the gas trace measured at");
        Answer two = Running.limitsAlone(fast.withGas(List.of(three[0], three[1])));
        isTheSame(rung(two, "crankpin_bending"), bound);
        isTheSame(
                rung(now, "pin_bending"), // which the bounding trace does not hold at any speed
                rung(Running.limitsAlone(fast), "pin_bending"));
    }

    /** What burns in the cylinder, by how much the pressure of compression is raised after firing. */
    private static GasReading motored(String rpm, double times) {
        double ratio = Running.limitsAlone(whole())
                .value(Term.COMPRESSION_RATIO)
                .orElseThrow()
                .figure()
                .value();
        CrankMotion crank = new CrankMotion(55.40e-3 / 2, 85.20e-3, 0);
        List<GasReading.Row> rows = new ArrayList<>();
        for (int degrees = -180; degrees <= 180; degrees += 5) {
            double kilopascal = 98
                    * Math.pow(volume(crank, ratio, Math.PI) / volume(crank, ratio, Math.toRadians(degrees)), 1.3)
                    * (degrees > 0 ? times : 1);
            rows.add(new GasReading.Row(
                    Quantity.of(String.valueOf(degrees), Units.DEGREE),
                    Quantity.of(String.format(Locale.ROOT, "%.3f", kilopascal), Units.KILOPASCAL)));
        }
        return new GasReading(
                Quantity.of(rpm, Units.RPM),
                GasReading.Reference.ABSOLUTE,
                null,
                GasReading.Cycles.STRONGEST,
                Quantity.of("3", Units.PERCENT),
                "",
                rows);
    }

    /** A motored engine, one that is scaled up after firing, and a weak burn are not an engine at work, at whatever speed each is taken. */
    @ParameterizedTest
    @CsvSource({"1, 0.0 bar", "1.02, 0.1 bar", "1.8, 2."})
    void whatDidNotFireAtFullThrottleIsNotUsed(double times, String found) {
        Answer bounding = Running.limitsAlone(whole());
        Answer answer =
                with(EVERY_FIFTH.stream().map(rpm -> motored(rpm, times)).toArray(GasReading[]::new));
        BY_GAS.forEach(key -> isTheSame(rung(answer, key), rung(bounding, key)));
        assertThat(answer.findings().stream()
                        .filter(f -> f.where().startsWith("gas_traces"))
                        .toList())
                .hasSize(EVERY_FIFTH.size())
                .allMatch(f -> f.message().contains(found)
                        && f.message().contains("5 bar at least")
                        && f.mend().contains("full throttle"));
    }

    /** A trace that is late or early by tens of degrees can have work enough and still not be a fire. */
    @Test
    void gasThatBurntStandsAboveWhatWasCompressed() {
        GasReading fine = trace("5300", 0.7, GasReading.Cycles.STRONGEST);
        GasReading dips = withRows(
                fine,
                r -> Math.abs(Math.toDegrees(r.angle().si()) - 80) < 3
                        ? new GasReading.Row(r.angle(), Quantity.of("105", Units.KILOPASCAL))
                        : r);
        assertThat(with(dips).findings()).anyMatch(f -> f.message().contains("times the pressure of compression"));
        assertThat(with(fine).findings()).noneMatch(f -> f.message().contains("not used"));
    }

    @Test
    void aTraceAboveTheBoundOrWrongPeggedIsNotUsed() {
        Answer bounding = Running.limitsAlone(whole());
        Answer high = with(trace("5300", 1.3, GasReading.Cycles.STRONGEST));
        BY_GAS.forEach(key -> isTheSame(rung(high, key), rung(bounding, key)));
        assertThat(high.findings())
                .anyMatch(f -> f.message().contains("not used") && f.message().contains("bounding"));
        GasReading fine = trace("5300", 0.5, GasReading.Cycles.STRONGEST);
        GasReading late = withRows(
                fine,
                r -> new GasReading.Row(
                        r.angle(), Quantity.of(String.valueOf(r.pressure().si() / 1e3 - 60), Units.KILOPASCAL)));
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

    private static GasReading withRows(GasReading of, UnaryOperator<GasReading.Row> row) {
        return new GasReading(
                of.speed(),
                of.pressure(),
                null,
                of.cycles(),
                of.within(),
                "",
                of.rows().stream().map(row).toList());
    }
}
