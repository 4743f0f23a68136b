package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.LiftCurve;
import longthrow.core.motion.LobeCurve;
import longthrow.core.motion.RiseFunction;
import longthrow.core.motion.ValveMotion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ValveLiftTest {
    private static final double DEGREE = Math.PI / 180;

    @Test
    void aCamCardGivesItsOwnFiguresBack() {
        // 6.2 mm at the lobe, 224 degrees at 1.27 mm, centre 106 after top dead centre, ratio 1.1, lash 0.1 mm: at the
        // lobe's 1.27 the valve has 1.297
        LobeCurve lobe = LobeCurve.of(6.2e-3, 1.27e-3, 224 * DEGREE, ValveLift.intakeCentre(106 * DEGREE));
        ValveLift lift = ValveLift.assumed(lobe, 1.1, 0.1e-3);
        double checking = 1.1 * 1.27e-3 - 0.1e-3;
        assertThat(lift.closes(checking) - lift.opens(checking)).isCloseTo(224 * DEGREE, within(1e-5));
        assertThat(lift.opens(checking)).isCloseTo((360 + 106 - 112) * DEGREE, within(1e-5));
        assertThat(lift.peak()).isCloseTo(1.1 * 6.2e-3 - 0.1e-3, within(1e-12));
        assertThat(lift.peakAngle()).isCloseTo(466 * DEGREE, within(1e-12));
        assertThat(lift.isAssumed()).isTrue();
        assertThat(ValveLift.exhaustCentre(108 * DEGREE)).isCloseTo(252 * DEGREE, within(1e-12));
    }

    private static ValveMotion table(
            double firstDegrees,
            double lastDegrees,
            double stepDegrees,
            double peakDegrees,
            double ratio,
            double lash) {
        int n = (int) Math.round((lastDegrees - firstDegrees) / stepDegrees) + 1;
        LobeCurve lobe = new LobeCurve(6e-3, 140 * DEGREE, peakDegrees * DEGREE);
        double[] angles = new double[n];
        double[] lifts = new double[n];
        for (int i = 0; i < n; i++) {
            angles[i] = (firstDegrees + i * stepDegrees) * DEGREE;
            lifts[i] = lobe.at(angles[i]);
        }
        LiftCurve curve = LiftCurve.of(
                "table", "table", angles, lifts, false, new LiftCurve.Bench(2e-6, 50, 0, Map.of(), Map.of(), Map.of()));
        return new ValveMotion(curve, Measured.exact(ratio), Measured.exact(lash));
    }

    @Test
    void aTableGivesTheValveItsLiftAtItsAngle() {
        ValveMotion motion = table(-40, 260, 5, 106, 1.05, 0.08e-3);
        // the table's 0 is top dead centre of the gas exchange: a turn after firing
        ValveLift lift = ValveLift.read(motion, -40 * DEGREE, 260 * DEGREE, -360 * DEGREE);
        for (double degrees = -40; degrees <= 260; degrees += 0.13) {
            assertThat(lift.at((360 + degrees) * DEGREE)).isCloseTo(motion.at(degrees * DEGREE), within(1e-6));
        }
        assertThat(lift.at(0)).isZero();
        assertThat(lift.peakAngle()).isCloseTo(466 * DEGREE, within(1 * DEGREE));
        assertThat(lift.carriedOn()).isZero();
        assertThat(lift.isAssumed()).isFalse();
    }

    @Test
    void aTableThatStopsShortIsCarriedToItsSeatAndSaysSo() {
        ValveMotion motion = table(16, 196, 5, 106, 1, 0); // 90 of 140 degrees to each side: 1.2 mm left
        ValveLift lift = ValveLift.read(motion, 16 * DEGREE, 196 * DEGREE, -360 * DEGREE);
        assertThat(lift.carriedOn()).isBetween(1.0e-3, 1.4e-3);
        assertThat(lift.at((360 + 196) * DEGREE)).isGreaterThan(1e-3);
        double shuts = lift.closes(0) / DEGREE - 360;
        assertThat(shuts).isBetween(215.0, 246.0); // the lobe itself shuts at 246; a parabola is blunter than its flank
        assertThat(lift.at((360 + 250) * DEGREE)).isZero();
    }

    @Test
    void whatCannotBeAValveIsRefused() {
        LobeCurve lobe = new LobeCurve(6e-3, 140 * DEGREE, 466 * DEGREE);
        assertThatThrownBy(() -> ValveLift.assumed(lobe, 1, 7e-3)).hasMessageContaining("lash");
        assertThatThrownBy(() -> ValveLift.assumed(lobe, 1, -1e-3)).hasMessageContaining("lash");
        assertThatThrownBy(() -> ValveLift.assumed(new LobeCurve(6e-3, 400 * DEGREE, 0), 1, 0))
                .hasMessageContaining("720");
        assertThatThrownBy(() -> ValveLift.assumed(lobe, 1, 0).opens(6e-3)).hasMessageContaining("peak lift");
        ValveMotion top = table(66, 146, 5, 106, 1, 0);
        assertThatThrownBy(() -> ValveLift.read(table(76, 106, 5, 106, 1, 0), 76 * DEGREE, 106 * DEGREE, 0))
                .hasMessageContaining("read on until the valve is shut");
        assertThatThrownBy(() -> ValveLift.read(top, 146 * DEGREE, 66 * DEGREE, 0))
                .hasMessageContaining("above the first");
    }

    static Stream<ValveLift> randomLifts() {
        SplittableRandom random = new SplittableRandom(11271);
        return Stream.generate(() -> {
                    double peak = 3e-3 + 9e-3 * random.nextDouble();
                    return ValveLift.assumed(
                            new LobeCurve(peak, (95 + 80 * random.nextDouble()) * DEGREE, 20 * random.nextDouble() - 5),
                            0.8 + random.nextDouble(),
                            0.3e-3 * random.nextDouble());
                })
                .limit(200);
    }

    @ParameterizedTest
    @MethodSource("randomLifts")
    void liftRepeatsNeverFallsBelowTheSeatAndHasNoKinkOverHalfAMicrometre(ValveLift lift) {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 500; i++) {
            double angle = 50 * (random.nextDouble() - 0.5);
            double here = lift.at(angle);
            assertThat(here).isBetween(0.0, lift.peak() * (1 + 2e-5));
            assertThat(lift.at(angle + 3 * ValveLift.PERIOD)).isCloseTo(here, within(1e-12));
            double h = 1e-6;
            double jump = Math.abs(lift.at(angle + h) - 2 * here + lift.at(angle - h)) / h;
            assertThat(jump)
                    .isLessThan(
                            3e-4); // [m/rad]; the lash is taken up at up to this slope over half a degree, curvature
            // adds h times some 0.03
        }
        double mid = 0.5 * lift.peak();
        assertThat(lift.at(lift.opens(mid))).isCloseTo(mid, within(1e-9));
        assertThat(lift.at(lift.closes(mid))).isCloseTo(mid, within(1e-9));
        assertThat(lift.opens(mid)).isLessThan(lift.opens(0.8 * lift.peak()));
    }

    /** Published functions against the assumed one at one peak, checking lift and duration: what {@link ValveLift#FLANK_DOUBT} rests on. */
    @Test
    void publishedFlanksHoldUpToTwiceTheDoubtMore() {
        double[][] cards = {{6.2e-3, 1.27e-3, 224}, {8e-3, 1e-3, 250}, {5e-3, 1.27e-3, 200}, {6.2e-3, 0.25e-3, 260}};
        for (double[] card : cards) {
            double duration = card[2] * DEGREE;
            ValveLift assumed = ValveLift.assumed(LobeCurve.of(card[0], card[1], duration, 8), 1, 0);
            double area = assumed.mean(x -> x) * ValveLift.PERIOD;
            for (RiseFunction function : RiseFunction.values()) {
                double more = area(function, card[0], card[1], duration) / area - 1;
                assertThat(more).isBetween(-0.005, 2 * ValveLift.FLANK_DOUBT);
            }
        }
    }

    /** Under a rise and a fall by this function [m rad]: both hold half their width times the peak, as each is odd about its middle. */
    private static double area(RiseFunction function, double peak, double checking, double duration) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 80; i++) {
            double middle = 0.5 * (low + high);
            if (function.at(middle, 0) < checking / peak) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return peak * 0.5 * duration / (1 - low);
    }

    @Test
    void whatIsNoNumberStaysNone() {
        ValveLift lift = ValveLift.assumed(new LobeCurve(6e-3, 140 * DEGREE, 466 * DEGREE), 1, 0);
        assertThat(lift.at(Double.NaN)).isNaN();
        assertThat(ValveFlow.usual(ValveGroup.of(0.03), true).into(Double.NaN)).isNaN();
    }

    /** A mean of the lift itself: of a 3-4-5-6 lobe without lash 16/35 of peak times its width over two turns, by the integral of (1 - u2)3. */
    @Test
    void meanIsTheIntegralOverTwoTurns() {
        ValveLift lift = ValveLift.assumed(new LobeCurve(6e-3, 140 * DEGREE, 466 * DEGREE), 1, 0);
        assertThat(lift.mean(x -> x)).isCloseTo(16.0 / 35 * 6e-3 * 280 / 720, within(1e-9));
    }
}
