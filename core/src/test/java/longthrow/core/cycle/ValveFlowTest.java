package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import longthrow.core.ReferenceRows;
import longthrow.core.cycle.BenchTable.Basis;
import longthrow.core.cycle.BenchTable.Entry;
import longthrow.core.cycle.BenchTable.Remark;
import longthrow.core.cycle.BenchTable.Row;
import longthrow.core.cycle.BenchTable.Scale;
import longthrow.core.gas.MoistAir;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ValveFlowTest {
    private static final Scale KNOWN_ROOM = new Scale.VolumeFlow(OptionalDouble.of(295.15), OptionalDouble.of(101_325));
    private static final double DROP = 6974.49; // 28 inches of water

    /** The valve of GAS-08. */
    private static final ValveGroup VALVE = new ValveGroup(
            1, 0.025, 0.0055, OptionalDouble.of(0.022), Optional.of(new ValveGroup.Seat(Math.PI / 4, 1.2e-3)));

    private static BenchTable bench(Scale scale, Entry entry, double... liftsAndValues) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < liftsAndValues.length; i += 2) {
            rows.add(new Row(liftsAndValues[i], liftsAndValues[i + 1], DROP));
        }
        return new BenchTable(true, rows, scale, entry, BenchTable.USUAL_METER_DOUBT);
    }

    /** The published rows, ranges_valve_flow of the references: lift over head diameter, curtain coefficient in and out. */
    @Test
    void publishedCoefficientsComeBackWhereNothingNarrowsThem() {
        ValveGroup valve = ValveGroup.of(0.030);
        ValveFlow flow = ValveFlow.usual(valve, true);
        double[][] rows = {
            {0.05, 0.70, 0.70},
            {0.10, 0.68, 0.70},
            {0.15, 0.65, 0.68},
            {0.20, 0.60, 0.63},
            {0.25, 0.54, 0.57},
            {0.30, 0.48, 0.50}
        };
        for (double[] row : rows) {
            double lift = row[0] * 0.030;
            assertThat(flow.into(lift) / valve.curtainArea(lift)).isCloseTo(row[1], within(1e-12));
            assertThat(flow.outOf(lift) / valve.curtainArea(lift)).isCloseTo(row[2], within(1e-12));
        }
        assertThat(flow.into(0)).isZero();
        assertThat(flow.into(0.02)).isEqualTo(flow.into(0.009)).isEqualTo(flow.into(flow.lastLift()));
        // 0.06 over the mean of six coefficients, 0.6083 and 0.63
        assertThat(flow.intoDoubt()).isCloseTo(0.0986, within(5e-5));
        assertThat(flow.outOfDoubt()).isCloseTo(Math.hypot(0.06 / 0.63, 0.10), within(1e-9));
        assertThat(ValveFlow.usual(valve, false).outOfDoubt()).isCloseTo(0.06 / 0.63, within(1e-9));
    }

    @Test
    void noMorePassesThanTheNarrowestSection() {
        ValveFlow flow = ValveFlow.usual(VALVE, true);
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        rows.row("GAS-08.3").check(flow.into(0.5e-3) * 1e6); // below the published coefficient there
        rows.row("GAS-08.4").check(flow.into(1.5e-3) * 1e6);
        assertThat(flow.into(4e-3)).isLessThan(227.7722531e-6); // GAS-08.6
        ValveGroup choked = new ValveGroup(2, 0.030, 0, OptionalDouble.of(0.014), Optional.empty());
        assertThat(ValveFlow.usual(choked, true).into(0.009))
                .isCloseTo(2 * Math.PI * 0.25 * 0.014 * 0.014, within(1e-15));
    }

    /** GAS-38, brought from the row's gas constant to that of dry air: the area goes with its inverse root. */
    @Test
    void flowOfABenchBecomesAnArea() {
        ValveGroup valve = new ValveGroup(1, 0.030, 0, OptionalDouble.empty(), Optional.empty());
        ValveFlow flow = ValveFlow.read(
                bench(KNOWN_ROOM, Entry.RADIUSED, 0, 0, 2e-3, 0.012, 4e-3, 0.022, 6e-3, 0.03), valve, true);
        double toRow = Math.sqrt(MoistAir.DRY.gasConstant() / 287.05);
        ReferenceRows.of("06_gas_dynamics").row("GAS-38.3").check(flow.into(6e-3) * 1e6 * toRow);
        assertThat(flow.into(8e-3)).isEqualTo(flow.into(6e-3));
        assertThat(flow.lastLift()).isEqualTo(6e-3);
    }

    @Test
    void oneFlowReadByAnyDepressionAndBasisIsOneArea() {
        double[] lifts = {2e-3, 4e-3, 6e-3, 7e-3};
        double[] areas = {95e-6, 180e-6, 240e-6, 255e-6};
        double perArea = 0.03 / 288.630858220324e-6 * Math.sqrt(MoistAir.DRY.gasConstant() / 287.05);
        List<Row> strong = new ArrayList<>();
        List<Row> curtain = new ArrayList<>();
        List<Row> head = new ArrayList<>();
        List<Row> throat = new ArrayList<>();
        for (int i = 0; i < lifts.length; i++) {
            strong.add(new Row(lifts[i], areas[i] * perArea, DROP));
            curtain.add(new Row(lifts[i], areas[i] / VALVE.curtainArea(lifts[i]), 0));
            head.add(new Row(lifts[i], areas[i] / VALVE.headArea(), 0));
            throat.add(new Row(lifts[i], areas[i] / VALVE.throatArea(), 0));
        }
        Stream.of(
                        new BenchTable(true, strong, KNOWN_ROOM, Entry.RADIUSED, 0.01),
                        new BenchTable(true, curtain, new Scale.Coefficient(Basis.CURTAIN), Entry.RADIUSED, 0.01),
                        new BenchTable(true, head, new Scale.Coefficient(Basis.HEAD), Entry.RADIUSED, 0.01),
                        new BenchTable(true, throat, new Scale.Coefficient(Basis.THROAT), Entry.RADIUSED, 0.01))
                .forEach(table -> {
                    ValveFlow flow = ValveFlow.read(table, VALVE, true);
                    for (int i = 0; i < lifts.length; i++) {
                        assertThat(flow.into(lifts[i])).isCloseTo(areas[i], within(1e-9 * areas[i]));
                    }
                    // a coefficient may or may not have the air's compression in it, 4 % at 28 inches
                    double compression = table.scale() instanceof Scale.Coefficient ? 0.04 / Math.sqrt(3) : 0;
                    assertThat(flow.intoDoubt()).isCloseTo(Math.hypot(0.01, compression), within(1e-12));
                    // against its way by the published coefficients, 0.68 to 0.65 in 0.15 of the head, with their doubt
                    assertThat(flow.outOf(6e-3) / flow.into(6e-3)).isBetween(1.03, 1.06);
                    assertThat(flow.outOfDoubt()).isCloseTo(Math.hypot(flow.intoDoubt(), 0.10), within(1e-12));
                });
    }

    @Test
    void whatWasNotWrittenDownIsDoubtAndNotCorrection() {
        double[] table = {2e-3, 0.010, 4e-3, 0.019, 6e-3, 0.025};
        BenchTable said = bench(KNOWN_ROOM, Entry.RADIUSED, table);
        BenchTable unsaid =
                bench(new Scale.VolumeFlow(OptionalDouble.empty(), OptionalDouble.empty()), Entry.NOT_SAID, table);
        assertThat(said.doubt(VALVE)).isCloseTo(0.02, within(1e-12));
        // share of the throat s, an entrance loss of 0.5: 1 - 1/sqrt(1 + s2/2), over root 3; 10 K in 293 and 5 kPa in
        // 98, halved by the root, over root 3
        double share = ValveFlow.read(unsaid, VALVE, true).into(6e-3) / VALVE.throatArea();
        double edge = 1 - 1 / Math.sqrt(1 + 0.5 * share * share);
        double sum = 0.02 * 0.02 + (edge * edge + Math.pow(5 / 293.15, 2) + Math.pow(2.5 / 98, 2)) / 3;
        assertThat(unsaid.doubt(VALVE)).isCloseTo(Math.sqrt(sum), within(1e-12));
        // 22 degrees and 1013 hPa against 20 and 980: the root of the temperatures, and nearly nothing by the pressure
        assertThat(ValveFlow.read(unsaid, VALVE, true).into(4e-3)
                        / ValveFlow.read(said, VALVE, true).into(4e-3))
                .isCloseTo(Math.sqrt(295.15 / 293.15) * Math.sqrt(980 / 1013.25), within(0.02));
        assertThat(ValveFlow.read(unsaid, VALVE, true).taken())
                .anyMatch(words -> words.contains("not written down"))
                .anyMatch(words -> words.contains("held at that of the last row"));
    }

    @Test
    void tablesThatCannotBeAreRefusedByRow() {
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 4e-3, 0.019), "2 rows");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 0, 1e-3, 2e-3, 0.010, 4e-3, 0.019, 6e-3, 0.02), "row 1", "leaks");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 2e-3, 0.019, 6e-3, 0.02), "row 2", "must rise");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 4e-3, 0.019, 6e-3, 0.016), "row 3", "below");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 4e-3, Double.NaN, 6e-3, 0.016), "row 2", "NaN");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 4e-3, 0, 6e-3, 0.016), "row 2", "no flow");
        refused(bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.10, 4e-3, 0.19, 6e-3, 0.25), "row 1", "without any loss");
        refused(
                bench(new Scale.Coefficient(Basis.HEAD), Entry.RADIUSED, 2e-3, 0.7, 4e-3, 0.71, 6e-3, 0.72),
                "row 1",
                "basis");
        BenchTable inches = new BenchTable(
                true,
                List.of(new Row(2e-3, 0.01, 28), new Row(4e-3, 0.019, 28), new Row(6e-3, 0.025, 28)),
                KNOWN_ROOM,
                Entry.RADIUSED,
                0.02);
        refused(inches, "row 1", "28.0 Pa", "another unit");
    }

    private static void refused(BenchTable bench, String... parts) {
        assertThatThrownBy(() -> ValveFlow.read(bench, VALVE, true))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContainingAll(parts);
    }

    @Test
    void aPortThatStallsIsToldAndKept() {
        BenchTable bench = bench(KNOWN_ROOM, Entry.RADIUSED, 2e-3, 0.010, 4e-3, 0.019, 6e-3, 0.022, 7e-3, 0.0215);
        assertThat(bench.remarks(VALVE)).filteredOn(Remark::refuses).isEmpty();
        assertThat(bench.remarks(VALVE))
                .anyMatch(remark -> remark.row() == 3 && remark.words().contains("2.3 %"));
        ValveFlow flow = ValveFlow.read(bench, VALVE, true);
        assertThat(flow.into(7e-3)).isLessThan(flow.into(6e-3)).isGreaterThan(flow.into(4e-3));
    }

    static Stream<ValveGroup> randomValves() {
        SplittableRandom random = new SplittableRandom(20261127);
        return Stream.generate(() -> {
                    double head = 0.015 + 0.03 * random.nextDouble();
                    double throat = head * (0.6 + 0.4 * random.nextDouble());
                    double stem = throat * 0.4 * random.nextDouble();
                    return new ValveGroup(
                            1 + random.nextInt(2),
                            head,
                            stem,
                            random.nextBoolean() ? OptionalDouble.of(throat) : OptionalDouble.empty(),
                            random.nextBoolean()
                                    ? Optional.of(
                                            new ValveGroup.Seat(random.nextDouble(), head * 0.08 * random.nextDouble()))
                                    : Optional.empty());
                })
                .limit(300);
    }

    @ParameterizedTest
    @MethodSource("randomValves")
    void areaRisesWithoutKinkFromNothing(ValveGroup valves) {
        ValveFlow flow = ValveFlow.usual(valves, true);
        rises(flow::into, valves);
        rises(flow::outOf, valves);
        assertThat(flow.into(1)).isLessThanOrEqualTo(valves.throatArea());
    }

    private static void rises(DoubleUnaryOperator area, ValveGroup valves) {
        double last = 0.4 * valves.head();
        double steepest = Math.PI * valves.count() * valves.head();
        double before = area.applyAsDouble(0);
        assertThat(before).isZero();
        for (int i = 1; i <= 2000; i++) {
            double lift = last * i / 2000;
            double here = area.applyAsDouble(lift);
            assertThat(here).isGreaterThanOrEqualTo(before * (1 - 1e-14)).isLessThanOrEqualTo(valves.curtainArea(lift));
            before = here;
            double h = 1e-8 * valves.head() * 10; // a kink would leave its whole jump of slope, however small the step
            double jump = area.applyAsDouble(lift + h) - 2 * here + area.applyAsDouble(lift - h);
            assertThat(Math.abs(jump / h)).isLessThan(1e-3 * steepest);
        }
    }

    @Test
    void machIndexIsTaylorsRatio() {
        // (bore / inlet)2 s / (C a) with 66 and 27 mm, 10 m/s, C 0.35, 343 m/s: 0.498 by hand
        double piston = 0.25 * Math.PI * 0.066 * 0.066;
        double inlet = 0.35 * 0.25 * Math.PI * 0.027 * 0.027;
        assertThat(ValveFlow.machIndex(piston, inlet, 10, 343)).isCloseTo(0.4977, within(1e-4));
    }
}
