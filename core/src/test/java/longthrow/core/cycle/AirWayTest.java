package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import longthrow.core.cycle.Governor.Flyweights;
import longthrow.core.cycle.Throttle.Butterfly;
import longthrow.core.cycle.Throttle.Slide;
import org.junit.jupiter.api.Test;

/** Air filter, throttle and governor. */
class AirWayTest {
    @Test
    void aFilterCostsBySquares() {
        AirFilter filter = AirFilter.read(0.01, 600, 1.2);
        assertThat(filter.drop(0.012, 1.2)).hasValueCloseTo(600.0, within(1e-9));
        assertThat(filter.drop(0.006, 1.2)).hasValueCloseTo(150.0, within(1e-9));
        assertThat(filter.drop(-0.006, 1.2)).hasValueCloseTo(-150.0, within(1e-9));
        assertThat(filter.drop(0.012, 1.0)).hasValueCloseTo(720.0, within(1e-9));
        assertThat(AirFilter.none().drop(0.02, 1.2)).hasValue(0);
        assertThat(AirFilter.unknown().drop(0.02, 1.2)).isEmpty();
        assertThat(AirFilter.full(0.012, 1.2).drop(0.012, 1.2)).hasValueCloseTo(AirFilter.FULL, within(1e-9));
        assertThatThrownBy(() -> AirFilter.read(0.01, 0, 1.2)).hasMessageContaining("drop over the filter");
    }

    /** By hand: a half sine over 200 of 720 degrees has a mean square of pi2 / 8 x 3.6 = 4.441 times its squared mean; a large room evens it out. */
    @Test
    void pulsesMakeAFilterSeemTighter() {
        double area = 150e-6;
        assertThat(new AirFilter.Breathing(0.004, 1e-9, 314, 100e3, 1.17).pulsing(area))
                .isCloseTo(4.441, within(0.01));
        double before = 4.441;
        for (double room : new double[] {200e-6, 500e-6, 2e-3, 10e-3}) {
            double pulsing = new AirFilter.Breathing(0.004, room, 314, 100e3, 1.17).pulsing(area);
            assertThat(pulsing).isLessThan(before).isGreaterThan(1);
            before = pulsing;
        }
        assertThat(new AirFilter.Breathing(0.004, 10, 314, 100e3, 1.17).pulsing(area))
                .isCloseTo(1, within(1e-3));
        // what a filter of that area would show is read back as that area
        AirFilter.Breathing box = new AirFilter.Breathing(0.004, 500e-6, 314, 100e3, 1.17);
        double even = 0.5 * 1.17 * Math.pow(0.004 / area, 2);
        assertThat(AirFilter.read(box, even * box.pulsing(area)).area()).hasValueCloseTo(area, within(1e-9 * area));
    }

    /** Against the bore cut into strips: each is open outside the plate's ellipse and the shaft. */
    @Test
    void aButterflyOpensWhatStripsSayIsOpen() {
        SplittableRandom random = new SplittableRandom(4);
        for (int k = 0; k < 200; k++) {
            double shaft = 0.3 * random.nextDouble();
            double shut = 0.3 * random.nextDouble();
            double turned = shut + (0.5 * Math.PI - shut) * random.nextDouble();
            double share = new Butterfly(0.02, 0.02 * shaft, shut, turned).area() / (0.25 * Math.PI * 0.02 * 0.02);
            assertThat(share).isCloseTo(stripped(shaft, Math.cos(turned) / Math.cos(shut)), within(2e-4));
        }
    }

    /** Strips along the shaft's normal; x along the shaft, bore's radius 1. */
    private static double stripped(double shaft, double tilt) {
        int n = 20_000;
        double open = 0;
        for (int i = 0; i < n; i++) {
            double x = (i + 0.5) / n;
            double reach = Math.sqrt(1 - x * x);
            open += Math.max(0, reach - Math.max(tilt * reach, shaft));
        }
        return 4 * open / n / Math.PI;
    }

    @Test
    void aButterflyIsShutAtItsStopAndWideOpenBesideItsShaft() {
        assertThat(new Butterfly(0.02, 0.005, 0.1, 0.1).area()).isCloseTo(0, within(1e-12));
        double a = 0.25;
        double strip = 2 / Math.PI * (a * Math.sqrt(1 - a * a) + Math.asin(a));
        assertThat(new Butterfly(0.02, 0.005, 0.1, Math.PI / 2).area())
                .isCloseTo(Math.PI * 1e-4 * (1 - strip), within(1e-12));
        assertThat(new Butterfly(0.02, 0, 0, Math.PI / 2).area()).isCloseTo(Math.PI * 1e-4, within(1e-12));
        double before = -1;
        for (int i = 0; i <= 1000; i++) {
            double effective = new Butterfly(0.02, 0.005, 0.1, 0.1 + (Math.PI / 2 - 0.1) * i / 1000).effectiveArea();
            assertThat(effective).isGreaterThanOrEqualTo(before - 1e-15);
            before = effective;
        }
        assertThatThrownBy(() -> new Butterfly(0.02, 0.005, 0.2, 0.1)).hasMessageContaining("angle of the plate");
    }

    @Test
    void aSlideOpensASegment() {
        double full = 0.25 * Math.PI * 0.02 * 0.02;
        assertThat(new Slide(0.02, 0).area()).isZero();
        assertThat(new Slide(0.02, 0.01).area()).isCloseTo(0.5 * full, within(1e-15));
        assertThat(new Slide(0.02, 0.02).area()).isCloseTo(full, within(1e-15));
        assertThat(new Slide(0.02, 0.05).area()).isCloseTo(full, within(1e-15));
        // a quarter of the height: (acos 1/2 - root 3 / 4) / pi = 0.19550
        assertThat(new Slide(0.02, 0.005).area() / full).isCloseTo(0.195501, within(1e-6));
        assertThat(new Slide(0.02, 0.02).effectiveArea()).isCloseTo(0.95 * full, within(1e-15));
    }

    @Test
    void aGovernorHoldsBetweenTwoSpeeds() {
        Governor governor = Governor.ofNoLoad(400, 0.08);
        assertThat(governor.fullLoad()).isCloseTo(400 / 1.08, within(1e-9));
        assertThat(governor.droop()).isCloseTo(0.08, within(1e-12));
        assertThat(governor.opening(300)).isEqualTo(1);
        assertThat(governor.opening(400)).isZero();
        assertThat(governor.opening(500)).isZero();
        assertThat(governor.opening(0.5 * (governor.fullLoad() + 400))).isCloseTo(0.5, within(1e-12));
        assertThat(governor.letsFullThrottle(370)).isTrue();
        assertThat(governor.letsFullThrottle(371)).isFalse();
        assertThat(Governor.ofFullLoad(377, 0.07).noLoad()).isCloseTo(403.39, within(1e-9));
        assertThatThrownBy(() -> new Governor(400, 400)).hasMessageContaining("hunts");
    }

    /** By hand: two of 20 g at 15 mm, 10 N of spring, sleeve and weight move alike: root(10 / (2 x 0.02 x 0.015)) = 129.1 rad/s of theirs. */
    @Test
    void weightsBalanceTheirSpring() {
        Governor governor = new Flyweights(2, 0.02, 0.015, 0.018, 1, 10, 14, 0.5).governor();
        assertThat(governor.fullLoad()).isCloseTo(258.2, within(0.01));
        assertThat(governor.noLoad()).isCloseTo(2 * Math.sqrt(14 / (2 * 0.02 * 0.018)), within(1e-9));
        assertThatThrownBy(() -> new Flyweights(2, 0.02, 0.015, 0.018, 1, 10, 11, 0.5).governor())
                .hasMessageContaining("hunts");
    }
}
