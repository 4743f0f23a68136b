package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Place;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Where the curve, its band and the zones without power lie, by hand: curves and cycles are invented. */
class TorqueChartTest {
    private static final Pattern SPOT = Pattern.compile("<circle class=\"lit\" cx=\"([\\d.]+)\" cy=\"([\\d.]+)\"");
    private static final Pattern BAND = Pattern.compile("class=\"band\" d=\"M ([\\d.]+) ([\\d.]+) L");

    private static final Pattern CROSS = Pattern.compile("class=\"measured\" d=\"M ([\\d.]+) ([\\d.]+) L");

    private static Measured newtonMetres(double value, double half) {
        return half == 0
                ? Measured.exact(value)
                : Measured.of(value, List.of(Source.at95("t", Source.Kind.ASSUMED, "t", half)));
    }

    private static Row told(double rpm, Standing standing, double torque, double half) {
        double speed = Units.RPM.toSi(rpm);
        return new Row(
                speed,
                standing,
                "as told",
                List.of(
                        new Shaking.Figure("torque", "torque", Dimension.TORQUE, newtonMetres(torque, half)),
                        new Shaking.Figure(
                                "power", "power", Dimension.POWER, newtonMetres(torque * speed, half * speed))),
                List.of(),
                Optional.empty());
    }

    private static Row untold(double rpm, Standing standing) {
        return new Row(Units.RPM.toSi(rpm), standing, "why not", List.of(), List.of(), Optional.empty());
    }

    private static TorqueCurve curve(Row... rows) {
        return new TorqueCurve(
                "",
                List.of(rows),
                List.of(),
                Double.NaN,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** Two approved, two not, one held by the governor, two refused. */
    private static TorqueCurve all() {
        return curve(
                told(1500, Standing.APPROVED, 10, 1),
                told(2000, Standing.APPROVED, 12, 1),
                told(2500, Standing.NOT_APPROVED, 11, 1.5),
                told(3000, Standing.NOT_APPROVED, 9, 2),
                untold(3500, Standing.GOVERNED),
                untold(4000, Standing.REFUSED),
                untold(4500, Standing.REFUSED));
    }

    private static List<double[]> found(Pattern pattern, String chart) {
        List<double[]> all = new ArrayList<>();
        Matcher found = pattern.matcher(chart);
        while (found.find()) {
            all.add(new double[] {Double.parseDouble(found.group(1)), Double.parseDouble(found.group(2))});
        }
        return all;
    }

    /** Axis from 46 to 348 pixels over 1500 to 4500 rpm and 2 % of that at either end; torque from 0 to 15 N·m over 206 to 62 pixels. */
    @Test
    void pointsAndBandStandWhereTheScaleSays() {
        String chart = TorqueChart.of(all(), UnitSystem.METRIC_FIRST, "c");
        double first = 46 + 302 * 60 / 3120.0;
        double second = 46 + 302 * 560 / 3120.0;
        List<double[]> spots = found(SPOT, chart);
        assertThat(spots)
                .as("two approved in each panel, and one in the legend")
                .hasSize(5);
        assertThat(spots.get(0)).containsExactly(new double[] {first, 206 - 144 * 10 / 15.0}, within(0.06));
        assertThat(spots.get(1)).containsExactly(new double[] {second, 206 - 144 * 12 / 15.0}, within(0.06));
        assertThat(found(BAND, chart).get(0))
                .as("begins at 11 of 15")
                .containsExactly(new double[] {first, 206 - 144 * 11 / 15.0}, within(0.06));
    }

    private static Overlay.At at(double rpm, double torque) {
        return new Overlay.At(Units.RPM.toSi(rpm), torque, 0.5, Double.NaN, Double.NaN, "none");
    }

    private static Overlay overlay(Overlay.Held... held) {
        return new Overlay("sheet", true, "ISO", "at the crank", List.of(), List.of(held));
    }

    private static Overlay.Held held(String name, Dimension figure, Overlay.At... points) {
        return new Overlay.Held(
                name,
                "the mean of 3 runs",
                figure,
                Overlay.Verdict.AGREES,
                1,
                0.1,
                1,
                1,
                List.of(points),
                List.of("so it is"));
    }

    /** What was measured at a refused speed is drawn there, as measured: dashed, with crosses and bars; what is predicted keeps its place and its hatching. */
    @Test
    void whatWasMeasuredLiesOverItAndMovesNothing() {
        TorqueCurve over =
                all().withOverlays(List.of(overlay(held("stock <1>", Dimension.TORQUE, at(2000, 11), at(4000, 12)))));
        String bare = TorqueChart.of(all(), UnitSystem.METRIC_FIRST, "c");
        String chart = TorqueChart.of(over, UnitSystem.METRIC_FIRST, "c");
        assertThat(found(SPOT, chart).subList(0, 2))
                .usingRecursiveComparison()
                .isEqualTo(found(SPOT, bare).subList(0, 2));
        assertThat(found(BAND, chart).get(0)).containsExactly(found(BAND, bare).get(0));
        double second = 46 + 302 * 560 / 3120.0;
        assertThat(found(CROSS, chart).get(0))
                .as("11 of 15 at 2000 rpm, a cross of 4.2 either way")
                .containsExactly(new double[] {second - 4.2, 206 - 144 * 11 / 15.0 - 4.2}, within(0.06));
        assertThat(chart.split("class=\"measured\"", -1))
                .as("two marks in each panel, one in the legend")
                .hasSize(6);
        assertThat(Drawing.of(chart).words()).contains("measured: stock <1>");
        assertThat(chart)
                .contains("Measured over it: stock &lt;1&gt;, the mean of 3 runs, agrees")
                .doesNotContain("<1>");
    }

    /** A peak of which no speed was written is a level, in the panel of its own figure alone. */
    @Test
    void aPeakAloneIsALevel() {
        Overlay.Held peak =
                held("header", Dimension.POWER, new Overlay.At(Double.NaN, 3000, Double.NaN, 2900, 300, ""));
        String chart = TorqueChart.of(all().withOverlays(List.of(overlay(peak))), UnitSystem.METRIC_FIRST, "c");
        assertThat(chart.split("class=\"mean\"", -1))
                .as("once, and in the legend")
                .hasSize(3);
        assertThat(chart).doesNotContain("NaN");
    }

    /** By shape and by word, in the picture and in its description. */
    @Test
    void howASpeedStandsIsToldByShapeAndWord() {
        String chart = TorqueChart.of(all(), UnitSystem.METRIC_FIRST, "c");
        assertThat(chart.split("class=\"open\"", -1))
                .as("two in each panel, one in the legend")
                .hasSize(6);
        assertThat(Drawing.of(chart).words())
                .contains(
                        "torque, N·m",
                        "power, kW",
                        "crank speed, rpm",
                        "approved",
                        "not approved",
                        "held by the governor",
                        "refused",
                        "no power is told",
                        "12.0 ± 1.0 N·m");
        assertThat(chart)
                .contains(
                        "Most torque 12.0 ± 1.0 N·m at 2000 rpm",
                        "1500 rpm to 2000 rpm: approved, told at 2",
                        "2500 rpm to 3000 rpm: not approved, told at 2",
                        "3500 rpm: held by the governor, no power told",
                        "4000 rpm to 4500 rpm: refused, no power told");
    }

    /** The hatching begins where power is last told, for nobody knows how far beyond that it goes. */
    @Test
    void noCurveIsDrawnWhereNoPowerIsTold() {
        String chart = TorqueChart.of(all(), UnitSystem.METRIC_FIRST, "c");
        double last = 46 + 302 * 1560 / 3120.0;
        Matcher zone = Pattern.compile("class=\"doubt\" d=\"M ([\\d.]+) 62 h ([\\d.]+) v 144")
                .matcher(chart);
        assertThat(zone.find()).isTrue();
        assertThat(Double.parseDouble(zone.group(1))).isCloseTo(last, within(0.06));
        for (double[] spot : found(Pattern.compile("class=\"lit\" d=\"M ([\\d.]+) ([\\d.]+) [^\"]*\""), chart)) {
            assertThat(spot[0]).isLessThanOrEqualTo(last);
        }
    }

    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void everyPictureIsWholeAndCanBeReadAloud(UnitSystem units) {
        List<TorqueCurve> curves = List.of(
                all(),
                curve(told(3000, Standing.APPROVED, 9, 0)),
                curve(told(1500, Standing.NOT_APPROVED, -2, 1), told(3000, Standing.NOT_APPROVED, 160, 30)),
                curve(untold(1500, Standing.NOT_RECKONED), told(3000, Standing.APPROVED, 9, 1)),
                curve(untold(1500, Standing.REFUSED), untold(2000, Standing.REFUSED)));
        for (TorqueCurve curve : curves) {
            assertThat(Drawing.of(TorqueChart.of(curve, units, "c")).faults("c"))
                    .isEmpty();
        }
        assertThat(Drawing.of(CycleChart.loop(cycle(), units, "l")).faults("l")).isEmpty();
        assertThat(Drawing.of(CycleChart.valves(cycle(), units, "v")).faults("v"))
                .isEmpty();
    }

    @Test
    void theUnitsAreTheOwners() {
        assertThat(Drawing.of(TorqueChart.of(all(), UnitSystem.INCH_FIRST, "c")).words())
                .contains("torque, lb-in", "power, hp")
                .doesNotContain("N·m");
        assertThat(Drawing.of(CycleChart.loop(cycle(), UnitSystem.INCH_FIRST, "l"))
                        .words())
                .contains("psi", "cu in");
        assertThat(Drawing.of(CycleChart.valves(cycle(), UnitSystem.INCH_FIRST, "v"))
                        .words())
                .contains("valve lift, in", "psi");
    }

    /** Isentropic air between 20 and 200 cc, peak 4 MPa; lifts 7 and 6 mm. */
    private static List<Place> cycle() {
        List<Place> cycle = new ArrayList<>();
        for (int degree = -180; degree <= 540; degree += 2) {
            double angle = Math.toRadians(degree);
            double volume = 110e-6 - 90e-6 * Math.cos(angle);
            double closed = 1e5 * Math.pow(200e-6 / volume, 1.4);
            double pressure = degree < 180 ? closed * (degree > 0 ? 1.6 : 1) : degree < 360 ? 1.05e5 : 0.95e5;
            cycle.add(new Place(
                    angle,
                    volume,
                    pressure,
                    900,
                    degree > 350 ? 7e-3 * Math.abs(Math.sin(angle)) : 0,
                    degree > 170 && degree < 370 ? 6e-3 * Math.abs(Math.sin(angle)) : 0,
                    0.97e5 + 2e3 * Math.sin(3 * angle),
                    1.03e5 + 4e3 * Math.cos(2 * angle)));
        }
        return cycle;
    }

    @Test
    void theCycleSaysItsHighestPressureAndWhereTheValvesStandOpen() {
        assertThat(CycleChart.loop(cycle(), UnitSystem.METRIC_FIRST, "l"))
                .contains("Highest pressure", "bar", "least volume 20", "largest 200");
        Drawing valves = Drawing.of(CycleChart.valves(cycle(), UnitSystem.METRIC_FIRST, "v"));
        assertThat(valves.words()).contains("fires", "tdc", "bdc", "-180°", "540°", "intake", "exhaust");
    }

    @Test
    void withoutFiguresThereIsNoPicture() {
        assertThatThrownBy(() -> TorqueChart.of(curve(), UnitSystem.METRIC_FIRST, "c"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CycleChart.loop(List.of(), UnitSystem.METRIC_FIRST, "c"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CycleChart.valves(List.of(), UnitSystem.METRIC_FIRST, "c"))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
