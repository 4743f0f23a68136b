package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.pipe.PlainKernel;
import org.junit.jupiter.api.Test;

/** How an invented utility engine of 70 by 52 mm leans on what is not sure of it. */
class LeaningTest {
    private static final double SPEED = 3000 * Math.PI / 30;

    private static final Runner RUNNER = Runner.inTurn(PlainKernel::new, () -> true);

    private static Figures figures() {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        known.put(Needed.BORE, Measured.exact(0.070));
        known.put(Needed.STROKE, Measured.exact(0.052));
        known.put(
                Needed.COMPRESSION_RATIO,
                Measured.of(8.6, List.of(Source.known("ratio", Source.Kind.ASSUMED, "ratio", 0.2))));
        return Figures.of(
                Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET), Fuel.petrol(), known);
    }

    private static final Figures FIGURES = figures();

    private static List<Run.Outcome> outcomes(List<Run> runs) {
        return RUNNER.all(runs).orElseThrow();
    }

    @Test
    void doubtAndLeversComeFromTheSameRuns() {
        Leaning.Plan plan = new Leaning.Plan(FIGURES, SPEED, Optional.empty());
        List<Run.Outcome> all = outcomes(plan.runs());
        Leaning leaning = plan.of(all).orElseThrow();
        double torque = all.get(0).point().orElseThrow().torque();
        Measured doubted = Leaning.doubted(List.of(leaning), Told.TORQUE, SPEED, torque);
        // the sum of squares of what each figure moves, none of which shares a source with another
        double square =
                leaning.moves().values().stream().mapToDouble(m -> m * m).sum();
        assertThat(doubted.standardUncertainty()).isCloseTo(Math.sqrt(square), within(1e-9));
        assertThat(doubted.standardUncertainty() / torque).isBetween(0.04, 0.15);
        Measured power = Leaning.doubted(List.of(leaning), Told.POWER, SPEED, torque * SPEED);
        assertThat(power.standardUncertainty())
                .isCloseTo(SPEED * doubted.standardUncertainty(), within(1e-9 * torque * SPEED));
        // less friction gives more torque, by a tenth of what rubs
        double friction = all.get(0).point().orElseThrow().friction();
        double bmep = Told.BMEP.of(all.get(0).point().orElseThrow());
        assertThat(of(leaning.gains(), Lever.FRICTION)).isBetween(0.07 * friction / bmep, 0.11 * friction / bmep);
        // a wider air filter and more flow of the intake never take torque from an engine that breathes through both
        assertThat(of(leaning.gains(), Lever.FILTER)).isPositive();
        // a small straight line: what the spark gives earlier it takes later, but for the bend
        double bend = of(leaning.gains(), Lever.EARLIER) + of(leaning.gains(), Lever.LATER);
        assertThat(bend).isBetween(-0.02, 0.002);
        // octane wanted keeps the doubt of its own formula
        assertThat(Leaning.doubted(List.of(leaning), Told.OCTANE_WANTED, SPEED, 80)
                        .standardUncertainty())
                .isGreaterThan(4);
        assertThat(leaning.moves()).doesNotContainKey(Needed.BORE).containsKey(Needed.COMPRESSION_RATIO);
    }

    @Test
    void aCoarserMeshTellsTheSameMoves() {
        for (Needed needed : List.of(Needed.FRICTION, Needed.INTAKE_CLOSES, Needed.FILTER, Needed.SPARK)) {
            double moved =
                    FIGURES.number(needed) + FIGURES.value(needed).orElseThrow().standardUncertainty();
            Figures other = FIGURES.with(needed, moved);
            List<Run> runs = List.of(
                    new Run(FIGURES, SPEED, Curve.MESH),
                    new Run(other, SPEED, Curve.MESH),
                    new Run(FIGURES, SPEED, Leaning.MESH),
                    new Run(other, SPEED, Leaning.MESH));
            List<Double> torque = new ArrayList<>();
            outcomes(runs).forEach(o -> torque.add(o.point().orElseThrow().torque()));
            double fine = torque.get(1) / torque.get(0) - 1;
            double coarse = torque.get(3) / torque.get(2) - 1;
            assertThat(coarse).as(needed.label()).isCloseTo(fine, within(0.0015));
        }
    }

    /** Air at rest, or what stood in the engine before a figure of it was moved: the moves are the same, and take fewer cycles. */
    @Test
    void begunWithTheUnmovedEngineTheMovesAreTheSame() {
        Curve.Point unmoved = outcomes(List.of(new Run(FIGURES, SPEED, Curve.MESH)))
                .get(0)
                .point()
                .orElseThrow();
        Leaning.Plan cold = new Leaning.Plan(FIGURES, SPEED, Optional.empty());
        Leaning.Plan warm = new Leaning.Plan(FIGURES, SPEED, Optional.of(unmoved.end()));
        List<Run.Outcome> fromCold = outcomes(cold.runs());
        List<Run.Outcome> fromWarm = outcomes(warm.runs());
        Map<Needed, Double> moves = cold.of(fromCold).orElseThrow().moves();
        Map<Needed, Double> same = warm.of(fromWarm).orElseThrow().moves();
        assertThat(same.keySet()).isEqualTo(moves.keySet());
        same.forEach((needed, move) ->
                assertThat(move).as(needed.label()).isCloseTo(of(moves, needed), within(0.0015 * unmoved.torque())));
        assertThat(cycles(fromWarm)).isLessThan(0.7 * cycles(fromCold));
    }

    private static double cycles(List<Run.Outcome> outcomes) {
        return outcomes.stream()
                .flatMap(o -> o.point().stream())
                .mapToInt(p -> p.point().effort().cycles())
                .sum();
    }

    /** The gas of an engine that rubs more is the same gas. */
    @Test
    void whatOnlyRubsIsToldWithoutARunAsWithOne() {
        for (Needed needed : Needed.values()) {
            if (needed.rubsAlone()) {
                Figures told = FIGURES.has(needed) ? FIGURES : withCrankcase(needed == Needed.BREATHER_OPEN);
                Curve.Point as = outcomes(List.of(new Run(told, SPEED, Leaning.MESH)))
                        .get(0)
                        .point()
                        .orElseThrow();
                Figures other = told.with(needed, 1.05 * told.number(needed));
                Curve.Point ran = outcomes(List.of(new Run(other, SPEED, Leaning.MESH)))
                        .get(0)
                        .point()
                        .orElseThrow();
                assertThat(ran.torque()).as(needed.label()).isNotEqualTo(as.torque());
                assertThat(Curve.rubbing(other, as).torque()).as(needed.label()).isEqualTo(ran.torque());
            }
        }
    }

    private static Figures withCrankcase(boolean isOpen) {
        return FIGURES.without(Needed.CRANKCASE)
                .read(Needed.CASE_VOLUME, Measured.exact(600e-6))
                .read(isOpen ? Needed.BREATHER_OPEN : Needed.BREATHER_VALVE, Measured.exact(0.006));
    }

    @Test
    void betweenTwoSpeedsDoubtGoesAlongAStraightLine() {
        Figures sure = sure();
        Leaning low = leaned(sure, 200);
        Leaning high = leaned(sure, 400);
        List<Leaning> both = List.of(low, high);
        double atLow = doubt(both, 200);
        double atHigh = doubt(both, 400);
        assertThat(atLow).isEqualTo(Math.abs(of(low.moves(), Needed.FRICTION)));
        assertThat(atHigh).isNotEqualTo(atLow);
        assertThat(doubt(both, 250)).isCloseTo(0.75 * atLow + 0.25 * atHigh, within(1e-12));
        assertThat(doubt(both, 100)).isEqualTo(atLow);
        assertThat(doubt(both, 500)).isEqualTo(atHigh);
        double gain = of(Leaning.gains(both, 250), Lever.FRICTION);
        assertThat(gain)
                .isCloseTo(
                        0.75 * of(low.gains(), Lever.FRICTION) + 0.25 * of(high.gains(), Lever.FRICTION),
                        within(1e-12));
    }

    @Test
    void whereNothingWasLeanedOnTheDoubtIsNotKnown() {
        assertThat(Leaning.doubted(List.of(), Told.TORQUE, 300, 10).isUnknown()).isTrue();
        assertThat(Leaning.doubted(List.of(), Told.TORQUE, 300, 10).value()).isEqualTo(10);
        assertThat(Leaning.gains(List.of(), 300)).isEmpty();
    }

    @Test
    void anEngineThatDoesNotRunWithAFigureMovedIsNotLeanedOn() {
        Leaning.Plan plan = new Leaning.Plan(sureBut(Needed.INTAKE_CLOSES), 300, Optional.empty());
        List<Run.Outcome> all = new ArrayList<>(outcomes(plan.runs()));
        all.set(1, new Run.Outcome(Optional.empty(), "stalls"));
        assertThat(plan.of(all)).isEmpty();
        assertThatThrownBy(() -> plan.of(all.subList(0, 2))).hasMessageContaining("2 outcomes");
    }

    /** All exact but friction, for which no gas is run again. */
    private static Figures sure() {
        return sureBut(Needed.FRICTION);
    }

    private static Figures sureBut(Needed doubted) {
        Figures sure = FIGURES;
        for (Needed needed : Needed.values()) {
            if (needed != doubted && sure.has(needed)) {
                sure = sure.with(needed, sure.number(needed));
            }
        }
        return sure;
    }

    private static Leaning leaned(Figures figures, double speed) {
        Leaning.Plan plan = new Leaning.Plan(figures, speed, Optional.empty());
        return plan.of(outcomes(plan.runs())).orElseThrow();
    }

    private static <K> double of(Map<K, Double> map, K key) {
        assertThat(map).containsKey(key);
        return map.getOrDefault(key, Double.NaN);
    }

    private static double doubt(List<Leaning> leanings, double speed) {
        return Leaning.doubted(leanings, Told.TORQUE, speed, 10).standardUncertainty();
    }
}
