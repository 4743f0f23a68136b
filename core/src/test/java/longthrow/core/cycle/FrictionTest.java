package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction of typical singles against the published ranges, and which way each part moves; figures are in {@link CycleFormulaValidationTest}. */
class FrictionTest {
    private static final ReferenceRows RANGES = ReferenceRows.of("ranges_friction_combustion");
    private static final double RPM = Math.PI / 30;
    private static final double WARM = Friction.referenceOil(Friction.REFERENCE_OIL_TEMPERATURE);

    private static Friction.Engine plain(double bore, double stroke, Optional<Friction.Fan> fan) {
        return new Friction.Engine(
                bore,
                stroke,
                0.025,
                new Bearing.Plain(0.028, 0.025, 2),
                new Bearing.Plain(0.030, 0.022, 1),
                new Friction.Valves(ValveGear.PUSHROD_FLAT, 2, 0.006, 2),
                fan);
    }

    private static Friction.Engine rolling(double bore, double stroke) {
        return new Friction.Engine(
                bore,
                stroke,
                0.025,
                new Bearing.Rolling(Bearing.Kind.BALL, 0.025, 0.0385, 2, 1500),
                new Bearing.Rolling(Bearing.Kind.NEEDLE, 0.030, 0.034, 1, 1500),
                new Friction.Valves(ValveGear.OVERHEAD_CAM_ROCKER, 2, 0.0075, 2),
                Optional.empty());
    }

    /** Within the range, or out of it by less than the standard uncertainty told. The fan is left out at 16 m/s, where no engine turns an industrial one. */
    @ParameterizedTest
    @CsvSource({
        "0.068, 0.054, 3, 0.19, RNG-01.1", "0.0573, 0.0578, 3, 0, RNG-01.1", "0.088, 0.064, 3, 0.22, RNG-01.1",
        "0.068, 0.054, 8, 0.19, RNG-01.2", "0.0573, 0.0578, 8, 0, RNG-01.2", "0.088, 0.064, 8, 0.22, RNG-01.2",
        "0.068, 0.054, 16, 0, RNG-01.3", "0.0573, 0.0578, 16, 0, RNG-01.3"
    })
    void typicalSinglesRubWithinThePublishedRanges(
            double bore, double stroke, double pistonSpeed, double fan, String range) {
        Friction.Running running = new Friction.Running(Math.PI * pistonSpeed / stroke, 9, 1, WARM);
        Optional<Friction.Fan> blower = fan == 0 ? Optional.empty() : Optional.of(new Friction.Fan(fan, 1.15));
        ReferenceRows.Row row = RANGES.row(range);
        for (Friction.Engine engine : List.of(plain(bore, stroke, blower), rolling(bore, stroke))) {
            Friction friction = Friction.of(engine, running);
            row.check(friction.total() / 1e5, row.allowed() + friction.doubt() / 1e5);
        }
    }

    @Test
    void pistonAndRingsHaveTheShareThatWasMeasured() {
        Friction friction = Friction.of(
                plain(0.068, 0.054, Optional.of(new Friction.Fan(0.19, 1.15))),
                new Friction.Running(3600 * RPM, 8.5, 1, WARM));
        double share = (friction.mep(Friction.Part.SKIRT)
                        + friction.mep(Friction.Part.RINGS)
                        + friction.mep(Friction.Part.GAS_LOAD))
                / friction.total();
        RANGES.row("RNG-02.1").check(100 * share);
    }

    /** Car engines with all their auxiliaries and pumping bound a single's rubbing from above; the fit for a diesel single lies near. */
    @Test
    void otherFormulasAgreeAsFarAsTheyMay() {
        for (double rpm : new double[] {1800, 3600, 5000}) {
            Friction friction =
                    Friction.of(plain(0.068, 0.054, Optional.empty()), new Friction.Running(rpm * RPM, 8.5, 1, WARM));
            assertThat(friction.total()).isLessThan(Friction.barnesMoss(rpm * RPM));
            assertThat(friction.total() / Friction.chenFlynn(45e5, 2 * 0.054 * rpm / 60))
                    .isBetween(0.7, 1.35);
        }
    }

    @Test
    void partsAddUpAndMoveAsTheirCausesSay() {
        SplittableRandom random = new SplittableRandom(20261127);
        ValveGear[] gears = ValveGear.values();
        for (int k = 0; k < 3000; k++) {
            double bore = random.nextDouble(0.045, 0.1);
            double stroke = bore * random.nextDouble(0.6, 1.2);
            Friction.Engine engine = new Friction.Engine(
                    bore,
                    stroke,
                    random.nextDouble(0, 0.04),
                    random.nextBoolean()
                            ? new Bearing.Plain(random.nextDouble(0.02, 0.04), random.nextDouble(0.015, 0.03), 2)
                            : new Bearing.Rolling(Bearing.Kind.ROLLER, 0.025, 0.04, 2, random.nextDouble(0, 5000)),
                    new Bearing.Plain(random.nextDouble(0.02, 0.04), random.nextDouble(0.015, 0.03), 1),
                    new Friction.Valves(gears[random.nextInt(gears.length)], 2, random.nextDouble(0.004, 0.01), 2),
                    random.nextBoolean() ? Optional.of(new Friction.Fan(0.2, 1.1)) : Optional.empty());
            double speed = random.nextDouble(800, 10000) * RPM;
            double oil = random.nextDouble(4e-6, 4e-4);
            double ratio = random.nextDouble(5, 13);
            Friction friction = Friction.of(engine, new Friction.Running(speed, ratio, 1, oil));
            assertThat(friction.losses()).allSatisfy(loss -> {
                assertThat(loss.mep()).isPositive().isFinite();
                assertThat(loss.doubt()).isPositive().isLessThan(loss.mep());
            });
            double sum =
                    friction.losses().stream().mapToDouble(Friction.Loss::mep).sum();
            assertThat(friction.total()).isCloseTo(sum, within(1e-9 * sum)).isLessThan(20e5);
            assertThat(friction.doubt()).isGreaterThan(0.1 * friction.total()).isLessThan(0.5 * friction.total());
            assertThat(Friction.of(engine, new Friction.Running(speed, ratio, 1, oil * 1.1))
                            .total())
                    .isGreaterThan(friction.total());
            assertThat(Friction.of(engine, new Friction.Running(speed, ratio, 0.5, oil))
                            .mep(Friction.Part.GAS_LOAD))
                    .isCloseTo(0.5 * friction.mep(Friction.Part.GAS_LOAD), within(1e-6));
            assertThat(Friction.of(engine, new Friction.Running(speed * 1.1, ratio, 1, oil))
                            .mep(Friction.Part.SKIRT))
                    .isGreaterThan(friction.mep(Friction.Part.SKIRT));
        }
    }

    /**
     * By hand from the formulas in the class, oil as in the revision's reference: 68 x 54 mm, 3600 rpm, two camshaft bearings, two valves with 6 mm. Camshaft 244 x 3600 x 2 / 249 696 + 4.12 = 11.156 kPa; followers
     * 400 x 1.13889 x 2 / 54 = 16.872; rockers 2 x (0.5 x 14.697 x 60 / 3672 + 32.1 x 1.13889 x 6 / 54) = 8.364; rings 40 600 x 1.13889 / 4624 = 9.9998; gas 6.89 x (0.748 + 0.182 x 8.5^1.021552) = 16.316.
     */
    @Test
    void partsOfTheRevisionAsReckonedByHand() {
        Friction friction =
                Friction.of(plain(0.068, 0.054, Optional.empty()), new Friction.Running(3600 * RPM, 8.5, 1, WARM));
        assertThat(friction.mep(Friction.Part.CAMSHAFT)).isCloseTo(11_156, within(1.0));
        assertThat(friction.mep(Friction.Part.FOLLOWERS)).isCloseTo(16_872, within(1.0));
        assertThat(friction.mep(Friction.Part.VALVE_MOTION)).isCloseTo(8_364, within(1.0));
        assertThat(friction.mep(Friction.Part.RINGS)).isCloseTo(9_999.8, within(1.0));
        assertThat(friction.mep(Friction.Part.GAS_LOAD)).isCloseTo(16_316, within(1.0));
    }

    /** Fan laws: power by the cube of speed, so mean effective pressure by its square, and by the fifth power of diameter. */
    @Test
    void fanFollowsTheFanLaws() {
        double slow = fan(0.2, 3000);
        assertThat(fan(0.2, 6000)).isCloseTo(4 * slow, within(1e-9 * slow));
        assertThat(fan(0.22, 3000)).isCloseTo(slow * Math.pow(1.1, 5), within(1e-9 * slow));
        double power = slow * Math.PI / 4 * 0.068 * 0.068 * 0.054 * 3000 / 120;
        assertThat(power).isCloseTo(2 * 1.15 * Math.pow(50, 3) * Math.pow(0.2, 5), within(1e-9));
    }

    private static double fan(double diameter, double rpm) {
        Friction.Engine engine = plain(0.068, 0.054, Optional.of(new Friction.Fan(diameter, 1.15)));
        return Friction.of(engine, new Friction.Running(rpm * RPM, 8.5, 1, WARM))
                .mep(Friction.Part.FAN);
    }

    /** By hand: ball bearings of 25 mm bore under 2 kN, mu 0.00125: 0.03125 N m; oil of 12.303 mm2/s at 3600 rpm on 38.5 mm, f0 1.5, two of them: 0.0213 N m; 4 pi M / 0.1961 l. */
    @Test
    void rollingBearingsAsReckonedByHand() {
        Friction.Engine engine = new Friction.Engine(
                0.068,
                0.054,
                0,
                new Bearing.Rolling(Bearing.Kind.BALL, 0.025, 0.0385, 2, 2000),
                new Bearing.Plain(0.03, 0.022, 1),
                new Friction.Valves(ValveGear.SIDE_VALVE, 2, 0.006, 2),
                Optional.empty());
        Friction friction = Friction.of(engine, new Friction.Running(3600 * RPM, 8.5, 1, WARM));
        double byHand = 4 * Math.PI * (0.03125 + 0.021456) / 1.96113e-4;
        assertThat(friction.mep(Friction.Part.MAIN_BEARINGS)).isCloseTo(byHand, within(0.005 * byHand));
        assertThat(friction.mep(Friction.Part.OIL_DRAG)).isZero();
        assertThat(friction.mep(Friction.Part.SEALS)).isZero();
        assertThat(friction.losses())
                .extracting(Friction.Loss::part)
                .doesNotContain(Friction.Part.OIL_DRAG, Friction.Part.FAN);
    }

    @Test
    void coldOilRubsMoreByTheRevisionAndNotByTheModelOf1989() {
        Friction.Engine engine = plain(0.068, 0.054, Optional.empty());
        Friction.Running warm = new Friction.Running(3600 * RPM, 8.5, 1, WARM);
        Friction.Running cold = new Friction.Running(3600 * RPM, 8.5, 1, Friction.referenceOil(293.15));
        assertThat(Friction.of(engine, cold).total())
                .isGreaterThan(1.4 * Friction.of(engine, warm).total());
        assertThat(Friction.of(Friction.Edition.PATTON_1989, engine, cold).total())
                .isEqualTo(
                        Friction.of(Friction.Edition.PATTON_1989, engine, warm).total());
        assertThatThrownBy(() -> new Friction.Running(100, 1, 1, WARM)).hasMessageContaining("above 1");
        assertThatThrownBy(() -> new Bearing.Rolling(Bearing.Kind.BALL, 0.025, 0.02, 2, 0))
                .hasMessageContaining("half of bore and outer diameter");
    }
}
