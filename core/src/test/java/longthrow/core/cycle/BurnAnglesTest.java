package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import longthrow.core.ReferenceRows;
import longthrow.core.gas.Fuel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Burn angles against the published ranges for typical engines, and which way they move. */
class BurnAnglesTest {
    private static final ReferenceRows RANGES = ReferenceRows.of("ranges_friction_combustion");
    private static final FlameSpeed PETROL = FlameSpeed.of(Fuel.petrol());
    private static final double RPM = Math.PI / 30;

    /** A single of invented size, compressed from 0.95 bar and 340 K with n = 1.32. */
    private record Single(Chamber chamber, double bore, double stroke, double ratio, double sparkDegrees) {
        private double height(double degrees) {
            double turned = 1 - Math.cos(Math.toRadians(degrees));
            return stroke / (ratio - 1) + 0.5 * stroke * turned * 1.25;
        }

        BurnAngles.Place place() {
            return place(chamber.usualTravel());
        }

        BurnAngles.Place place(double travel) {
            return new BurnAngles.Place(
                    chamber,
                    bore,
                    stroke,
                    travel * bore,
                    Math.toRadians(-sparkDegrees),
                    angle -> height(Math.toDegrees(angle)));
        }

        BurnAngles.Charge charge(double phi, double burned) {
            double squeeze = 0.92 * stroke * ratio / (ratio - 1) / height(sparkDegrees);
            return new BurnAngles.Charge(phi, burned, 340 * Math.pow(squeeze, 0.32), 0.95e5 * Math.pow(squeeze, 1.32));
        }

        BurnAngles at(double rpm) {
            return BurnAngles.of(place(), charge(1.1, 0.07), PETROL, rpm * RPM).orElseThrow();
        }
    }

    /** Typical of each chamber: slow industrial to fast small engines. Within the range, or out of it by less than the standard uncertainty told. */
    @ParameterizedTest
    @CsvSource({
        "SIDE_VALVE, 0.065, 0.055, 6.5, 2000, RNG-04.3", "SIDE_VALVE, 0.075, 0.065, 6.5, 3600, RNG-04.3",
        "WEDGE, 0.068, 0.054, 8.5, 1800, RNG-04.2", "WEDGE, 0.068, 0.054, 8.5, 3600, RNG-04.2",
        "WEDGE, 0.088, 0.064, 8.3, 3600, RNG-04.2", "WEDGE, 0.070, 0.058, 9.5, 6000, RNG-04.2",
        "HEMISPHERE, 0.0524, 0.0579, 9.3, 4000, RNG-04.2", "HEMISPHERE, 0.0573, 0.0578, 9.5, 7500, RNG-04.2",
        "PENT_ROOF, 0.063, 0.048, 11, 5000, RNG-04.1", "PENT_ROOF, 0.077, 0.0536, 12.5, 8000, RNG-04.1"
    })
    void typicalEnginesBurnWithinThePublishedRanges(
            Chamber chamber, double bore, double stroke, double ratio, double rpm, String range) {
        BurnAngles angles = new Single(chamber, bore, stroke, ratio, 25).at(rpm);
        within(RANGES.row(range), Math.toDegrees(angles.rapid()), angles.rapidDoubt());
        within(RANGES.row("RNG-03.1"), Math.toDegrees(angles.development()), angles.developmentDoubt());
    }

    private static void within(ReferenceRows.Row row, double got, double relativeDoubt) {
        row.check(got, row.allowed() + relativeDoubt * got);
    }

    /** The anchor is the middle of the ranges, by construction. */
    @Test
    void theAnchorHasTheMiddleOfTheRanges() {
        BurnAngles anchor = BurnAngles.of(BurnAngles.ANCHOR_PLACE, BurnAngles.ANCHOR, PETROL, BurnAngles.ANCHOR_SPEED)
                .orElseThrow();
        assertThat(Math.toDegrees(anchor.rapid())).isCloseTo(32.5, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(Math.toDegrees(anchor.development())).isCloseTo(22.5, org.assertj.core.api.Assertions.within(0.02));
        assertThat(anchor.known()).isTrue();
    }

    /** Reference of 1978 as kept in the ranges: burn angle as the cube root of speed. */
    @Test
    void anglesGrowAsTheCubeRootOfSpeed() {
        Single engine = new Single(Chamber.WEDGE, 0.068, 0.054, 8.5, 25);
        assertThat(engine.at(8000).rapid() / engine.at(1000).rapid())
                .isCloseTo(2, org.assertj.core.api.Assertions.within(1e-12));
        BurnAngles.Place still = new BurnAngles.Place(
                Chamber.WEDGE, 0.068, 0.054, 0.05, -0.4, angle -> 0.009); // a gas that nothing squeezes
        assertThat(BurnAngles.of(still, engine.charge(1.1, 0.07), PETROL, 8000 * RPM)
                                .orElseThrow()
                                .development()
                        / BurnAngles.of(still, engine.charge(1.1, 0.07), PETROL, 1000 * RPM)
                                .orElseThrow()
                                .development())
                .isCloseTo(2, org.assertj.core.api.Assertions.within(1e-12));
    }

    @Test
    void movesAsItsCausesSay() {
        int slow = 0;
        SplittableRandom random = new SplittableRandom(20261127);
        Chamber[] chambers = Chamber.values();
        for (int k = 0; k < 2000; k++) {
            double bore = random.nextDouble(0.045, 0.1);
            Single engine = new Single(
                    chambers[random.nextInt(chambers.length)],
                    bore,
                    bore * random.nextDouble(0.6, 1.2),
                    random.nextDouble(6, 13),
                    random.nextDouble(10, 40));
            double speed = random.nextDouble(1500, 10000) * RPM;
            double phi = random.nextDouble(0.8, 1.3);
            double burned = random.nextDouble(0.02, 0.2);
            BurnAngles.Charge charge = engine.charge(phi, burned);
            BurnAngles.Place place = engine.place();
            if (BurnAngles.of(place, charge, PETROL, speed).isEmpty()) {
                slow++;
                continue;
            }
            BurnAngles angles = BurnAngles.of(place, charge, PETROL, speed).orElseThrow();
            assertThat(angles.development()).isFinite().isPositive();
            assertThat(angles.rapid()).isFinite().isPositive();
            assertThat(angles.curve(-0.4).form()).isFinite().isGreaterThan(-1);
            if (BurnAngles.of(place, engine.charge(phi, burned + 0.05), PETROL, speed)
                    .isEmpty()) {
                slow++; // its flame does not develop in time
                continue;
            }
            BurnAngles diluted = BurnAngles.of(place, engine.charge(phi, burned + 0.05), PETROL, speed)
                    .orElseThrow();
            assertThat(diluted.development()).isGreaterThan(angles.development());
            assertThat(diluted.rapid()).isGreaterThan(angles.rapid());
            BurnAngles.Charge hotter = new BurnAngles.Charge(phi, burned, charge.temperature() + 30, charge.pressure());
            assertThat(BurnAngles.of(place, hotter, PETROL, speed).orElseThrow().development())
                    .isLessThan(angles.development());
            BurnAngles central =
                    BurnAngles.of(engine.place(0.5), charge, PETROL, speed).orElseThrow();
            BurnAngles atWall =
                    BurnAngles.of(engine.place(1), charge, PETROL, speed).orElseThrow();
            assertThat(central.rapid() / atWall.rapid())
                    .isCloseTo(Math.sqrt(0.5), org.assertj.core.api.Assertions.within(1e-12));
            Single tighter =
                    new Single(engine.chamber, engine.bore, engine.stroke, engine.ratio + 1, engine.sparkDegrees);
            assertThat(BurnAngles.of(tighter.place(), tighter.charge(phi, burned), PETROL, speed)
                            .orElseThrow()
                            .development())
                    .isLessThan(angles.development());
        }
        assertThat(slow).isLessThan(100);
    }

    @Test
    void leanBurnsSlowerThanSlightlyRichAndNothingBurnsInBurnedGas() {
        Single engine = new Single(Chamber.WEDGE, 0.068, 0.054, 8.5, 25);
        double speed = 3600 * RPM;
        BurnAngles lean = BurnAngles.of(engine.place(), engine.charge(0.8, 0.07), PETROL, speed)
                .orElseThrow();
        BurnAngles rich = BurnAngles.of(engine.place(), engine.charge(1.15, 0.07), PETROL, speed)
                .orElseThrow();
        assertThat(lean.rapid()).isGreaterThan(1.2 * rich.rapid());
        assertThat(BurnAngles.of(engine.place(), engine.charge(1, 0.5), PETROL, speed))
                .isEmpty();
        assertThat(BurnAngles.of(engine.place(), engine.charge(0.2, 0.05), PETROL, speed))
                .isEmpty();
    }
}
