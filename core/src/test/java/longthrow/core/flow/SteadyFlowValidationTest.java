package longthrow.core.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import longthrow.core.ReferenceRows;
import longthrow.core.ReferenceRows.Row;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows of topic 06 that are formulas: printed tables of NACA Report 1135 and Shapiro, and sums made apart from ours. */
class SteadyFlowValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("06_gas_dynamics");
    private static final Pattern NUMBER = Pattern.compile("[0-9.]+");

    private static double gamma(Row row) {
        return named(row.inputs(), "gamma");
    }

    private static double named(String inputs, String name) {
        Matcher matcher =
                Pattern.compile("\\b" + Pattern.quote(name) + "=([0-9.]+)").matcher(inputs);
        if (!matcher.find()) {
            throw new IllegalArgumentException("no " + name + " in " + inputs);
        }
        return Double.parseDouble(Objects.requireNonNull(matcher.group(1)));
    }

    /** What follows the last sign of equality in the name of a quantity: "T/T* M=0.5". */
    private static double mach(Row row) {
        String of = row.quantity().contains("M=") ? row.quantity() : row.inputs();
        return named(of, "M");
    }

    private static Stream<Row> rows(String... cases) {
        return ROWS.cases(cases).stream();
    }

    static Stream<Row> isentropic() {
        return rows("GAS-01");
    }

    @ParameterizedTest
    @MethodSource
    void isentropic(Row row) {
        double m = mach(row);
        row.check(
                switch (row.quantity().split(" ", -1)[0]) {
                    case "p/p0" -> Isentropic.pressure(1.4, m);
                    case "rho/rho0" -> Isentropic.density(1.4, m);
                    case "T/T0" -> Isentropic.temperature(1.4, m);
                    case "A/A*" -> Isentropic.area(1.4, m);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** The whole grid for three gammas; its digits. */
    @ParameterizedTest
    @ValueSource(strings = {"1.4", "1.35", "1.3"})
    void theGridOfNozzleFlow(String gamma) {
        double g = Double.parseDouble(gamma);
        var cells = ReferenceRows.gridOfEach("06_isentropic", gamma, ROWS.row("GAS-01.1"), 1e-12);
        assertThat(cells).hasSize(50);
        for (var cell : cells) {
            double m = cell.argument();
            cell.row()
                    .check(
                            switch (cell.column()) {
                                case "p/p0" -> Isentropic.pressure(g, m);
                                case "rho/rho0" -> Isentropic.density(g, m);
                                case "T/T0" -> Isentropic.temperature(g, m);
                                case "A/A*" -> Isentropic.area(g, m);
                                default -> Isentropic.massFlow(g, m);
                            });
        }
    }

    static Stream<Row> choking() {
        return rows("GAS-02", "GAS-03");
    }

    @ParameterizedTest
    @MethodSource
    void choking(Row row) {
        double g = gamma(row);
        row.check(row.id().endsWith(".1") ? Isentropic.criticalPressure(g) : Isentropic.massFlow(g, 1));
    }

    @ParameterizedTest
    @CsvSource({
        "GAS-04, 101325, 300, 90000, 4e-4, 0.65, 1.4, 287",
        "GAS-05, 101325, 300, 50000, 4e-4, 0.65, 1.4, 287",
        "GAS-06, 450000, 1100, 105000, 2.5e-4, 0.7, 1.3, 287.5",
        "GAS-07, 100000, 310, 99000, 5e-4, 0.6, 1.4, 287",
    })
    void valvesAndOrifices(
            String id, double p0, double t0, double p, double area, double cd, double gamma, double gas) {
        Nozzle nozzle = new Nozzle(p0, t0, gas, gamma);
        ROWS.row(id + ".1").check(cd * area * nozzle.flow(p));
        ROWS.row(id + ".2").check(nozzle.throatSpeed(p));
        ROWS.row(id + ".3").check(nozzle.throatTemperature(p));
    }

    @Test
    void thePoppetValveHasThreeWays() {
        PoppetWay valve = new PoppetWay(25e-3, 1.2e-3, Math.toRadians(45), 22e-3, 5.5e-3);
        ROWS.row("GAS-08.1").check(valve.firstEnds() * 1e3);
        ROWS.row("GAS-08.2").check(valve.secondEnds() * 1e3);
        for (Row row : ROWS.cases("GAS-08")) {
            if (row.quantity().startsWith("minimum")) {
                Matcher lift = NUMBER.matcher(row.quantity());
                assertThat(lift.find()).isTrue();
                row.check(valve.area(Double.parseDouble(lift.group()) * 1e-3) * 1e6);
            }
        }
        ROWS.row("GAS-08.9").check(valve.curtain(7e-3) * 1e6);
        assertThat(valve.area(0)).isZero();
        double before = 0;
        for (double lift = 0; lift < 9e-3; lift += 1e-6) { // no step from one way to the next, nor less with more lift
            assertThat(valve.area(lift)).isBetween(before, before + 1.2e-7);
            before = valve.area(lift);
        }
        assertThatThrownBy(() -> new PoppetWay(25e-3, 1.2e-3, Math.toRadians(45), 5e-3, 5.5e-3))
                .hasMessageContaining("port diameter less stem diameter");
    }

    static Stream<Row> shocks() {
        return rows("GAS-16");
    }

    @ParameterizedTest
    @MethodSource
    void shocks(Row row) {
        double m = named(row.quantity(), "M1");
        row.check(
                switch (row.quantity().split(" ", -1)[0]) {
                    case "M2" -> NormalShock.machBehind(1.4, m);
                    case "p2/p1" -> NormalShock.pressure(1.4, m);
                    case "rho2/rho1" -> NormalShock.density(1.4, m);
                    case "T2/T1" -> NormalShock.temperature(1.4, m);
                    case "p02/p01" -> NormalShock.stagnationPressure(1.4, m);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @ParameterizedTest
    @ValueSource(strings = {"GAS-17", "GAS-18", "GAS-19"})
    void aWallThrowsShocksBack(String id) {
        String inputs = ROWS.row(id + ".1").inputs();
        double g = named(inputs, "gamma");
        double ratio = named(inputs, "p2/p1");
        ROWS.row(id + ".1").check(NormalShock.mach(g, ratio));
        ROWS.row(id + ".2").check(NormalShock.thrownBack(g, ratio));
        ROWS.row(id + ".3").check(NormalShock.thrownBack(g, ratio) * ratio);
    }

    static Stream<Row> friction() {
        return rows("GAS-25", "GAS-26", "GAS-27");
    }

    @ParameterizedTest
    @MethodSource
    void friction(Row row) {
        double g = gamma(row);
        double m = mach(row);
        row.check(
                switch (row.quantity().split(" ", -1)[0]) {
                    case "T/T*" -> Fanno.temperature(g, m);
                    case "p/p*" -> Fanno.pressure(g, m);
                    case "p0/p0*" -> Fanno.stagnationPressure(g, m);
                    case "4fL*/D" -> Fanno.length(g, m);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    static Stream<Row> heat() {
        return rows("GAS-28", "GAS-29");
    }

    @ParameterizedTest
    @MethodSource
    void heat(Row row) {
        double g = gamma(row);
        double m = mach(row);
        row.check(
                switch (row.quantity().split(" ", -1)[0]) {
                    case "p/p*" -> Rayleigh.pressure(g, m);
                    case "T/T*" -> Rayleigh.temperature(g, m);
                    case "T0/T0*" -> Rayleigh.stagnationTemperature(g, m);
                    case "p0/p0*" -> Rayleigh.stagnationPressure(g, m);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** GAS-30 and 31: the row's Mach numbers belong together by the pipe's length, the reservoirs and what flows. */
    @ParameterizedTest
    @CsvSource({"GAS-30, 120000, 100000, 0.025, 0.5, 0.006", "GAS-31, 300000, 100000, 0.02, 1, 0.005"})
    void aPipeWithFrictionBetweenReservoirs(
            String id, double p0, double behind, double diameter, double length, double factor) {
        double in = ROWS.row(id + ".1").value();
        double out = ROWS.row(id + ".2").value();
        double reached = Fanno.length(1.4, in) - Fanno.length(1.4, out);
        assertThat(reached / (4 * factor * length / diameter)).isCloseTo(1, within(1e-7));
        double exit = p0 * Isentropic.pressure(1.4, in) * Fanno.pressure(1.4, out) / Fanno.pressure(1.4, in);
        if (out < 1) {
            assertThat(exit / behind).isCloseTo(1, within(1e-7));
        } else {
            assertThat(exit).isGreaterThan(behind);
        }
        double area = 0.25 * Math.PI * diameter * diameter;
        ROWS.row(id + ".3").check(area * p0 / Math.sqrt(287 * 300.0) * Isentropic.massFlow(1.4, in));
    }

    @ParameterizedTest
    @CsvSource({"GAS-32, 0.3, 2", "GAS-33, 0.3, 0.7"})
    void aPipeThatWidensOrNarrowsWithoutLoss(String id, double m1, double areas) {
        double m2 = Isentropic.machBefore(1.4, Isentropic.throat(1.4, m1) / areas);
        ROWS.row(id + ".1").check(m2);
        ROWS.row(id + ".2").check(Isentropic.pressure(1.4, m2) / Isentropic.pressure(1.4, m1));
        ROWS.row(id + ".3").check(Isentropic.temperature(1.4, m2) / Isentropic.temperature(1.4, m1));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.05, 1.2, 1.3, 1.4, 1.67})
    void theMachNumberBeforeAThroatIsTheInverse(double gamma) {
        for (double m : new double[] {1e-9, 1e-4, 0.01, 0.2, 0.5, 0.9, 0.99, 0.9999}) {
            assertThat(Isentropic.machBefore(gamma, Isentropic.throat(gamma, m)) / m)
                    .isCloseTo(1, within(1e-11));
        }
        assertThat(Isentropic.machBefore(gamma, 1)).isEqualTo(1);
        assertThat(Isentropic.machBefore(gamma, 1 - 1e-16)).isCloseTo(1, within(2e-8));
        assertThat(Isentropic.machBefore(gamma, 0)).isZero();
    }

    @Test
    void aFlowBenchIsReadAtOtherDepressions() {
        ROWS.row("GAS-36.1").check(FlowBench.at(28, 60, 10));
        ROWS.row("GAS-37.1").check(FlowBench.at(28, 95, 25));
        FlowBench bench = new FlowBench(0.03, 6974.49, 101325, 22 + 273.15, 287.05, 1.4);
        ROWS.row("GAS-38.1").check(bench.effectiveAreaUncompressed() / 4.2e-4);
        ROWS.row("GAS-38.2").check(bench.effectiveArea() / 4.2e-4);
        ROWS.row("GAS-38.3").check(bench.effectiveArea() * 1e6);
        assertThatThrownBy(() -> new FlowBench(0.03, 101326, 101325, 295, 287, 1.4))
                .hasMessageContaining("pressure of the room less the depression");
    }

    /** GAS-22 to 24. */
    @Test
    void whatSounds() {
        double c = 343.2;
        ROWS.row("GAS-22.1").check(Sounding.closedAtOneEnd(c, 0.4, 1));
        ROWS.row("GAS-22.2").check(Sounding.closedAtOneEnd(c, 0.4, 2));
        ROWS.row("GAS-22.3").check(Sounding.closedAtOneEnd(c, 0.4 + EndCorrection.FREE.length(0.012), 1));
        ROWS.row("GAS-22.4").check(Sounding.alikeAtBothEnds(c, 0.5, 1));
        double neck = Math.PI * 0.012 * 0.012;
        ROWS.row("GAS-22.5").check(Sounding.volumeAndNeck(c, 250e-6, neck, 0.18));
        double longer = 0.18
                + 0.85 * 0.012
                + EndCorrection.FREE.length(0.012); // the handbook's rounded 0.85; ours is 8 / (3 pi)
        ROWS.row("GAS-22.6").check(Sounding.volumeAndNeck(c, 250e-6, neck, longer));
        assertThat(EndCorrection.PISTON.length(1)).isCloseTo(0.85, within(0.002));
        ROWS.row("GAS-22.7").check(Sounding.closedAtOneEnd(Math.sqrt(1.35 * 287 * 750), 0.75, 1));
        double[] areas = {0.25, 0.5, 2, 4};
        for (int n = 0; n < areas.length; n++) {
            ROWS.row("GAS-23." + (2 * n + 1)).check(Sounding.thrownBack(1, areas[n]));
            ROWS.row("GAS-23." + (2 * n + 2)).check(Sounding.letThrough(1, areas[n]));
        }
        double sound = Math.sqrt(1.4 * 287 * 300);
        ROWS.row("GAS-24.2").check(sound);
        ROWS.row("GAS-24.1").check(1.2 / sound * 1e3, 1e-9);
    }
}
