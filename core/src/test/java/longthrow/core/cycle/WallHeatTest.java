package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The three formulas of wall heat beside each other; their figures are in {@link CycleFormulaValidationTest}. */
class WallHeatTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("07_combustion_heat_friction");

    private static final double BORE = 0.068;
    private static final double STROKE = 0.054;
    private static final double SWEPT = Math.PI / 4 * BORE * BORE * STROKE;
    private static final double PISTON_SPEED = 2 * STROKE * 60;

    /** Closed cycles of the reference rows with their printed traces, every 5 degrees: inputs as in the rows. */
    private enum Printed {
        B_WOSCHNI("CYC-29.11", 0.068, 0.054, 3600, 8.5, -20, 430, 100e3, 350),
        C_HOHENBERG("CYC-30.11", 0.070, 0.058, 5500, 9.2, -25, 450, 95e3, 360),
        D_VARIABLE_CV("CYC-31.11", 0.068, 0.054, 6000, 9.5, -28, 460, 92e3, 365);

        private final String id;
        private final double bore;
        private final double stroke;
        private final double rpm;
        private final double ratio;
        private final double spark;
        private final double wall;
        private final double pressure;
        private final double temperature;

        Printed(
                String id,
                double bore,
                double stroke,
                double rpm,
                double ratio,
                double spark,
                double wall,
                double pressure,
                double temperature) {
            this.id = id;
            this.bore = bore;
            this.stroke = stroke;
            this.rpm = rpm;
            this.ratio = ratio;
            this.spark = spark;
            this.wall = wall;
            this.pressure = pressure;
            this.temperature = temperature;
        }

        ReferenceRows.Row row() {
            return ROWS.row(id);
        }

        double pistonSpeed() {
            return stroke * rpm / 30;
        }

        double swept() {
            return Math.PI / 4 * bore * bore * stroke;
        }

        /** One column of the trace, by crank angle. */
        private NavigableMap<Double, Double> column(String column) {
            String topic = "07_cycle_" + name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
            return ReferenceRows.grid(topic, row(), 1, false).stream()
                    .filter(cell -> cell.column().equals(column))
                    .collect(Collectors.toMap(
                            ReferenceRows.GridCell::argument,
                            cell -> cell.row().value(),
                            (one, other) -> one,
                            TreeMap::new));
        }

        /** Heat over the trace [J]. */
        double heat(WallHeat formula) {
            NavigableMap<Double, Double> volumes = column("V_cm3");
            NavigableMap<Double, Double> pressures = column("p_bar");
            NavigableMap<Double, Double> temperatures = column("T_K");
            double start = volumes.firstEntry().getValue() * 1e-6;
            GasAtWall gas = new GasAtWall();
            gas.referencePressure = pressure;
            gas.referenceTemperature = temperature;
            gas.referenceVolume = start;
            gas.wallTemperature = wall;
            double heat = 0;
            double before = 0;
            double last = Double.NaN;
            for (Map.Entry<Double, Double> at : volumes.entrySet()) {
                double angle = at.getKey();
                gas.volume = at.getValue() * 1e-6;
                gas.pressure = Objects.requireNonNull(pressures.get(angle)) * 1e5;
                gas.temperature = Objects.requireNonNull(temperatures.get(angle));
                gas.motoredPressure = pressure * Math.pow(start / gas.volume, 1.33);
                gas.phase = angle < spark ? GasAtWall.Phase.COMPRESSION : GasAtWall.Phase.BURNING;
                double area = Math.PI / 2 * bore * bore + 4 * (gas.volume - swept() / (ratio - 1)) / bore;
                double flux = formula.coefficient(gas) * area * (gas.temperature - wall);
                heat += Double.isNaN(last) ? 0 : 0.5 * (flux + before) * (angle - last) / (6 * rpm);
                before = flux;
                last = angle;
            }
            return heat;
        }
    }

    /** Each row's own formula over its printed trace gives the row: trapezoids of 5 degrees are within 1 %. */
    @Test
    void heatOverThePrintedTracesIsTheirs() {
        for (Printed cycle : Printed.values()) {
            WallHeat own = cycle == Printed.C_HOHENBERG
                    ? new Hohenberg(cycle.pistonSpeed())
                    : new Woschni(cycle.bore, cycle.swept(), cycle.pistonSpeed());
            cycle.row().check(cycle.heat(own), 0.01 * cycle.row().value());
        }
    }

    /** The figures that the class states, and that its doubt covers what lies between the formulas. */
    @ParameterizedTest
    @EnumSource
    void theSpreadBetweenThreeFormulasIsTheDoubt(Printed cycle) {
        double middle = cycle.heat(new Hohenberg(cycle.pistonSpeed()));
        double woschni = cycle.heat(new Woschni(cycle.bore, cycle.swept(), cycle.pistonSpeed())) / middle;
        double annand = cycle.heat(new Annand(Annand.USUAL, cycle.bore, cycle.pistonSpeed())) / middle;
        double calm = cycle.heat(new Annand(Annand.CALM, cycle.bore, cycle.pistonSpeed())) / middle;
        assertThat(woschni).isBetween(0.945, 1.065);
        assertThat(calm).isBetween(0.995, 1.035);
        assertThat(annand).isBetween(1.355, 1.405);
        assertThat(WallHeat.DOUBT).isGreaterThan((annand - Math.min(1, woschni)) / (2 * Math.sqrt(3)));
    }

    @Test
    void morePressureMoreHeatAndNeverNaN() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int k = 0; k < 20000; k++) {
            double bore = random.nextDouble(0.03, 0.12);
            double pistonSpeed = random.nextDouble(0.3, 30);
            double swept = random.nextDouble(2e-5, 1e-3);
            GasAtWall gas = new GasAtWall();
            gas.pressure = random.nextDouble(0.1e5, 150e5);
            gas.temperature = random.nextDouble(230, 3300);
            gas.volume = random.nextDouble(0.05, 1.2) * swept;
            gas.motoredPressure = random.nextDouble(0.5e5, 40e5);
            gas.referencePressure = random.nextDouble(0.2e5, 1.5e5);
            gas.referenceTemperature = random.nextDouble(280, 500);
            gas.referenceVolume = swept;
            gas.wallTemperature = random.nextDouble(280, 600);
            gas.phase = random.nextBoolean() ? GasAtWall.Phase.BURNING : GasAtWall.Phase.GAS_EXCHANGE;
            for (WallHeat formula : List.of(
                    new Woschni(bore, swept, pistonSpeed),
                    new Annand(random.nextDouble(0.35, 0.8), bore, pistonSpeed),
                    new Hohenberg(pistonSpeed))) {
                double h = formula.coefficient(gas);
                assertThat(h)
                        .as(formula.getClass().getSimpleName())
                        .isPositive()
                        .isFinite();
                gas.pressure *= 1.01;
                assertThat(formula.coefficient(gas)).isGreaterThan(h);
                gas.pressure /= 1.01;
            }
        }
    }

    @Test
    void onlyTheFireRadiatesAndStirs() {
        GasAtWall gas = new GasAtWall();
        gas.pressure = 30e5;
        gas.temperature = 2200;
        gas.volume = 6e-5;
        gas.motoredPressure = 14e5;
        gas.referencePressure = 1e5;
        gas.referenceTemperature = 360;
        gas.referenceVolume = 2.2e-4;
        gas.wallTemperature = 450;
        Annand annand = new Annand(Annand.USUAL, BORE, PISTON_SPEED);
        Woschni woschni = new Woschni(BORE, SWEPT, PISTON_SPEED);
        gas.phase = GasAtWall.Phase.COMPRESSION;
        double convected = annand.coefficient(gas);
        double calm = woschni.coefficient(gas);
        gas.phase = GasAtWall.Phase.BURNING;
        double radiated = annand.coefficient(gas) - convected;
        assertThat(radiated * (2200 - 450))
                .isCloseTo(0.075 * 5.670374419e-8 * (Math.pow(2200, 4) - Math.pow(450, 4)), within(1e-6));
        assertThat(woschni.coefficient(gas)).isGreaterThan(calm);
        gas.motoredPressure = 40e5; // a misfire falls below the motored trace, and still stirs no less than the piston
        assertThat(woschni.coefficient(gas)).isEqualTo(calm);
        assertThat(WallHeat.usual(PISTON_SPEED)).isInstanceOf(Hohenberg.class);
        assertThatThrownBy(() -> new Annand(0.2, BORE, 5)).hasMessageContaining("0.35");
    }
}
