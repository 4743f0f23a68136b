package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.Rung;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.SparkSweep.Point;
import longthrow.core.answer.SparkSweep.Side;
import longthrow.core.answer.SparkSweep.Step;
import longthrow.core.cycle.Knock;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.pipe.PlainKernel;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;
import org.junit.jupiter.api.Test;

/**
 * An engine made up so that all can be worked by hand: torque 10 N m less 0.01 N m for each square degree from 29 degrees, 70 octane wanted at 10 degrees and 0.75 more for each degree earlier, half
 * burned 0.8 degrees earlier for each degree that the spark is, from 24 after top dead centre on. The spark is set to 25 degrees, give or take one.
 */
class SparkSweepTest {
    private static final double TIGHT = 1e-9;
    private static final double DEGREE = Math.toRadians(1);
    private static final FigurePrinter PRINTER = new FigurePrinter(UnitSystem.METRIC_FIRST);
    private static final Source LAMP = Source.known("lamp", Source.Kind.ASSUMED, "lamp", DEGREE);
    private static final Source FORMULA = Source.known("formula", Source.Kind.ASSUMED, "formula", 4);
    private static final Source FLAME = Source.known("flame", Source.Kind.ASSUMED, "flame", 2 * DEGREE);
    private static final Rung.Missing OCTANE = new Rung.Missing("use.octane_number", "octane number", "read it", 1);

    private static Point point(double degrees, double octaneAtTen, double best) {
        return new Point(
                degrees * DEGREE,
                10 - 0.01 * (degrees - best) * (degrees - best),
                octaneAtTen + 0.75 * (degrees - 10),
                (32 - 0.8 * degrees) * DEGREE,
                30e5,
                1100);
    }

    private static SparkSweep sweep(double octaneAtTen, double best, Optional<Double> octane, Optional<Double> set) {
        return sweep(300, octaneAtTen, best, octane, set);
    }

    private static SparkSweep sweep(
            double speed, double octaneAtTen, double best, Optional<Double> octane, Optional<Double> set) {
        List<Point> points = new ArrayList<>();
        for (double degrees : new double[] {10, 16, 22, 25, 28, 34, 40, 46}) {
            points.add(point(degrees, octaneAtTen, best));
        }
        SparkSearch.Setting setting = new SparkSearch.Setting(
                speed,
                "",
                set.map(s -> Measured.of(s * DEGREE, List.of(LAMP))),
                25 * DEGREE,
                octane.map(Measured::exact),
                Map.of(FORMULA, 4.0),
                Map.of(FLAME, 2 * DEGREE),
                octane.isPresent() ? List.of() : List.of(OCTANE));
        return new SparkSearch(setting, points, PRINTER).sweep().orElseThrow();
    }

    private static SparkSweep sweep(double octane) {
        return sweep(70, 29, Optional.of(octane), Optional.of(25.0));
    }

    private static String advice(SparkSweep... sweeps) {
        return advice(true, false, sweeps);
    }

    private static String advice(boolean isWhole, boolean isLean, SparkSweep... sweeps) {
        List<String> said = SparkAdvice.sentences(List.of(sweeps), OptionalDouble.of(0.0222), PRINTER, isWhole, isLean);
        assertThat(said).hasSize(1);
        return said.get(0);
    }

    private static double degrees(SparkSweep.Spot spot) {
        return spot.angle().orElseThrow().value() / DEGREE;
    }

    private static double doubt(SparkSweep.Spot spot) {
        return spot.angle().orElseThrow().standardUncertainty() / DEGREE;
    }

    private static Step step(SparkSweep sweep, double shift) {
        return sweep.steps().stream()
                .filter(s -> Math.abs(s.shift() - shift * DEGREE) < TIGHT)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void mostTorqueStandsWhereTheParabolaIsFlat() {
        SparkSweep sweep = sweep(88);
        assertThat(sweep.best().side()).isEqualTo(Side.AT);
        assertThat(degrees(sweep.best())).isCloseTo(29, within(TIGHT));
        // half burned follows by 0.8, so 2 degrees of flame count 1.25 times, as do 1.5 and 0.3 of where it is best
        // (8.8 less 8.5); the runs:
        // 0.15 % of 9.99 N m, sqrt 2 of it over 9 degrees from 25 to 34, over twice the bend of 0.01, over sqrt 3
        double runs = 0.0015 * 9.99 * Math.sqrt(2) / 9 / 0.02 / Math.sqrt(3);
        double half = 1.25 * 1.8 / Math.sqrt(3);
        assertThat(doubt(sweep.best())).isCloseTo(Math.sqrt(6.25 + half * half + runs * runs), within(1e-6));
    }

    @Test
    void theMarginIsTheKnockLimitLessTheSparkThatIsSet() {
        SparkSweep sweep = sweep(88);
        assertThat(degrees(sweep.limited())).isCloseTo(34, within(TIGHT)); // 70 + 0.75 * 24
        assertThat(doubt(sweep.limited())).isCloseTo(4 / 0.75, within(TIGHT));
        assertThat(degrees(sweep.margin())).isCloseTo(9, within(TIGHT));
        assertThat(doubt(sweep.margin())).isCloseTo(Math.hypot(4 / 0.75, 1), within(TIGHT));
        assertThat(sweep.octaneDoubt() / DEGREE).isCloseTo(Knock.DOUBT / 0.75, within(TIGHT));
        assertThat(sweep.said()).contains("begins to knock at 34").contains("6.7°");
    }

    @Test
    void beyondWhatWasRunNothingIsMadeUp() {
        SparkSweep calm = sweep(100); // would knock at 50 degrees
        assertThat(calm.limited().side()).isEqualTo(Side.EARLIER_THAN);
        assertThat(degrees(calm.limited())).isCloseTo(46, within(TIGHT));
        assertThat(degrees(calm.margin())).isCloseTo(21, within(TIGHT));
        assertThat(calm.octaneDoubt()).isNaN();
        SparkSweep fierce = sweep(69);
        assertThat(fierce.limited().side()).isEqualTo(Side.LATER_THAN);
        assertThat(degrees(fierce.margin())).isCloseTo(-15, within(TIGHT));
        SparkSweep slow = sweep(70, 60, Optional.of(88.0), Optional.of(25.0));
        assertThat(slow.best().side()).isEqualTo(Side.EARLIER_THAN);
        assertThat(degrees(slow.best())).isCloseTo(46, within(TIGHT));
        assertThat(slow.said()).contains("earlier than 46");
        SparkSweep quick = sweep(70, 5, Optional.of(88.0), Optional.of(25.0));
        assertThat(quick.best().side()).isEqualTo(Side.LATER_THAN);
        assertThat(degrees(quick.best())).isCloseTo(10, within(TIGHT));
    }

    /** 10 over 9.84 N m: 1.63 %; at 29 degrees 84.25 octane is wanted, so 100 leaves 15.75, doubt sqrt(16 + 0.75²). */
    @Test
    void aKeyIsAdvisedOnlyWhereItSurelyDoesNotKnock() {
        SparkSweep calm = sweep(100);
        Step earlier = step(calm, 4);
        assertThat(earlier.gain()).isCloseTo(10 / 9.84 - 1, within(TIGHT));
        assertThat(earlier.spare().orElseThrow().value()).isCloseTo(15.75, within(TIGHT));
        assertThat(earlier.spare().orElseThrow().standardUncertainty()).isCloseTo(Math.hypot(4, 0.75), within(TIGHT));
        assertThat(earlier.isAllowed()).isTrue();
        assertThat(calm.steps()).hasSize(6); // not the one that is set
        // 4 degrees on a taper of 22.2 mm: 0.775 mm
        SparkSweep slow = sweep(150, 70, 29, Optional.of(100.0), Optional.of(25.0));
        SparkSweep middle = sweep(220, 70, 29, Optional.of(100.0), Optional.of(25.0));
        assertThat(advice(slow, middle, calm))
                .contains("4° earlier")
                .contains("0.77")
                .contains("+1.6 %")
                .contains("knock burns");

        SparkSweep near = sweep(88); // 3.75 to spare, doubt 8 at 95 %
        assertThat(step(near, 4).isAllowed()).isFalse();
        assertThat(step(near, 2).isAllowed()).isFalse();
        assertThat(step(near, -2).isAllowed()).isTrue();
        assertThat(advice(near)).contains("not advised").contains("may knock");
        // at speeds of one's own choice none, and none while the jet reads lean
        assertThat(advice(false, false, slow, middle, calm))
                .contains("no key is advised")
                .contains("all speeds");
        assertThat(advice(true, true, slow, middle, calm))
                .contains("No earlier spark")
                .contains("jet");
        // by too few speeds, or by high ones alone, none
        assertThat(advice(calm)).contains("no key is advised").contains("low speed");
        assertThat(advice(calm, calm, middle)).contains("no key is advised");
        // one speed that does not let it is enough
        assertThat(advice(slow, near, calm)).contains("not advised");
    }

    /** At 33 degrees half has burned at 5.6 degrees, earlier than in any published engine at its best, however good the fuel. */
    @Test
    void noKeyGoesBeyondWhatPublishedEnginesDo() {
        SparkSweep eager = sweep(50, 40, Optional.of(100.0), Optional.of(29.0));
        assertThat(step(eager, 2).isAllowed()).isTrue(); // later than now
        SparkSearch.Setting setting = new SparkSearch.Setting(
                300, "", eager.set(), 29 * DEGREE, Optional.of(Measured.exact(100)), Map.of(), Map.of(), List.of());
        SparkSweep onward =
                new SparkSearch(setting, eager.points(), PRINTER).sweep().orElseThrow();
        assertThat(step(onward, 4).spare().orElseThrow().low()).isPositive();
        assertThat(step(onward, 2).against()).isEmpty(); // 31 degrees: 7.2
        assertThat(step(onward, 4).against()).contains("published");
    }

    @Test
    void withoutTheOctaneNumberNoEarlierSparkIsAdvised() {
        SparkSweep unknown = sweep(70, 29, Optional.empty(), Optional.of(25.0));
        assertThat(unknown.margin()).isEqualTo(SparkSweep.Spot.UNKNOWN);
        assertThat(unknown.limited()).isEqualTo(SparkSweep.Spot.UNKNOWN);
        assertThat(unknown.missing()).containsExactly(OCTANE);
        assertThat(unknown.said())
                .contains("use.octane_number")
                .contains("an octane number of 81") // 70 + 0.75 * 15, printed with a doubt of 8
                .contains("No earlier spark is advised");
        assertThat(unknown.steps().stream().filter(s -> s.shift() > 0))
                .isNotEmpty()
                .noneMatch(Step::isAllowed);
        assertThat(advice(unknown)).contains("not advised").contains("not known");
    }

    @Test
    void whereTheSparkIsNotReadThereIsNoMarginAndNoKey() {
        SparkSweep unread = sweep(70, 29, Optional.of(100.0), Optional.empty());
        assertThat(unread.margin()).isEqualTo(SparkSweep.Spot.UNKNOWN);
        assertThat(degrees(unread.limited())).isCloseTo(46, within(TIGHT));
        assertThat(unread.steps()).isEmpty();
        assertThat(SparkAdvice.sentences(List.of(unread), OptionalDouble.empty(), PRINTER, true, false))
                .isEmpty();
    }

    /** 80 octane are wanted at 23.3 degrees: the key of 2 degrees later asks for 79.75. */
    @Test
    void whereItKnocksTheEarliestKeyThatDoesNotIsNamed() {
        SparkSweep knocks = sweep(80);
        assertThat(degrees(knocks.margin())).isCloseTo(10 / 0.75 + 10 - 25, within(TIGHT));
        assertThat(knocks.said()).contains("which is passed");
        assertThat(advice(knocks)).contains("2° later").doesNotContain("3° later");
        assertThat(advice(sweep(69))).contains("no key that is sold").contains("Do not hold full throttle there");
    }

    /** At 25 degrees, with most torque at 19: 10 over 9.64 N m would take 6 degrees; 4 later gives 9.96. */
    @Test
    void aLaterSparkNeedsNoMargin() {
        SparkSweep late = sweep(70, 19, Optional.empty(), Optional.of(25.0));
        assertThat(step(late, -4).gain()).isCloseTo(9.96 / 9.64 - 1, within(TIGHT));
        assertThat(advice(late)).contains("4° later").contains("exhaust valve");
    }

    @Test
    void whereNoKeyIsWorthItTheSparkStays() {
        assertThat(advice(sweep(70, 26, Optional.of(88.0), Optional.of(25.0)))).contains("leave the spark");
    }

    /** An invented utility engine of 70 by 52 mm. */
    @Test
    void theRunsAreThoseOfTheCurveWithTheSparkMoved() {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        known.put(Needed.BORE, Measured.exact(0.070));
        known.put(Needed.STROKE, Measured.exact(0.052));
        known.put(Needed.COMPRESSION_RATIO, Measured.exact(8.6));
        known.put(Needed.SPARK, Measured.exact(24 * DEGREE));
        Figures figures = Figures.of(
                Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET), Fuel.petrol(), known);
        double speed = 3000 * Math.PI / 30;
        SparkPlan plan = new SparkPlan(figures, speed, 24 * DEGREE, Optional.empty());
        List<Run> runs = plan.runs();
        assertThat(runs).hasSize(8);
        List<Run.Outcome> outcomes =
                Runner.inTurn(PlainKernel::new, () -> true).all(runs).orElseThrow();
        List<Point> points = plan.points(outcomes);
        assertThat(points).hasSize(8).isSortedAccordingTo((a, b) -> Double.compare(a.advance(), b.advance()));
        for (int i = 1; i < points.size(); i++) {
            // an earlier spark wants a better fuel, presses harder and leaves a cooler exhaust
            // until so early that nine tenths are gone before the pressure is highest
            if (points.get(i).halfBurned() > 0) {
                assertThat(points.get(i).octaneWanted())
                        .isGreaterThan(points.get(i - 1).octaneWanted());
            }
            assertThat(points.get(i).peakPressure())
                    .isGreaterThan(points.get(i - 1).peakPressure());
            assertThat(points.get(i).exhaustTemperature())
                    .isLessThan(points.get(i - 1).exhaustTemperature());
        }
        SparkSearch.Setting setting = new SparkSearch.Setting(
                speed,
                "",
                figures.value(Needed.SPARK),
                Double.NaN,
                Optional.of(Measured.exact(90)),
                Map.of(FORMULA, 4.0),
                Map.of(),
                List.of());
        SparkSweep sweep = new SparkSearch(setting, points, PRINTER).sweep().orElseThrow();
        assertThat(sweep.best().side()).isEqualTo(Side.AT);
        // half burned at 7 to 10 degrees with most torque (Heywood 1988, 9.2); the sum's best lies earlier, and its
        // doubt reaches the published range
        double best = degrees(sweep.best());
        double half = Double.NaN;
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (a.advance() <= best * DEGREE && b.advance() > best * DEGREE) {
                double share = (best * DEGREE - a.advance()) / (b.advance() - a.advance());
                half = (a.halfBurned() + share * (b.halfBurned() - a.halfBurned())) / DEGREE;
            }
        }
        assertThat(half).isBetween(2.0, 7.0);
        double follows = (points.get(4).halfBurned() - points.get(6).halfBurned())
                / (points.get(6).advance() - points.get(4).advance());
        assertThat(doubt(sweep.best()) * Math.sqrt(3) * follows).isGreaterThan(8.5 - half);
        assertThat(sweep.said()).contains("rather later");
    }
}
