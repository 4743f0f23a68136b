package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;

/** The octane number wanted, and which way delays move; figures are in {@link CycleFormulaValidationTest}. */
class KnockTest {
    /** Against a search for the number at which a stored trace's own sum of dt / tau is 1. */
    @Test
    void octaneWantedIsWhereTheIntegralIsOne() {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int round = 0; round < 200; round++) {
            int points = 400;
            double step = random.nextDouble(1e-5, 5e-5);
            double pressure = random.nextDouble(5e5, 15e5);
            double temperature = random.nextDouble(550, 750);
            double[] p = new double[points];
            double[] t = new double[points];
            for (int k = 0; k < points; k++) {
                double hump = Math.sin(Math.PI * k / points);
                p[k] = pressure * (1 + 4 * hump);
                t[k] = temperature * Math.pow(1 + 4 * hump, 0.25);
            }
            Knock knock = new Knock();
            knock.begin(p[0], t[0]);
            for (int k = 1; k < points; k++) {
                knock.add(step, p[k], t[k]);
            }
            double wanted = new BrentSolver(1e-12, 1e-12).solve(1000, octane -> sum(octane, step, p, t) - 1, 1, 1000);
            assertThat(knock.octaneWanted()).isCloseTo(wanted, within(1e-7 * wanted));
            assertThat(knock.integral(wanted)).isCloseTo(1, within(1e-6));
            assertThat(knock.integral(wanted - 1)).isGreaterThan(1);
            assertThat(knock.fitted()).isEqualTo(wanted >= 80 && wanted <= 100);
        }
    }

    private static double sum(double octane, double step, double[] p, double[] t) {
        double sum = 0;
        for (int k = 1; k < p.length; k++) {
            sum += 0.5 * step * (1 / Knock.delay(octane, p[k - 1], t[k - 1]) + 1 / Knock.delay(octane, p[k], t[k]));
        }
        return sum;
    }

    @Test
    void hotterDenserAndPoorerFuelsIgniteSooner() {
        SplittableRandom random = new SplittableRandom(5);
        for (int k = 0; k < 5000; k++) {
            double octane = random.nextDouble(40, 130);
            double p = random.nextDouble(0.3e5, 150e5);
            double t = random.nextDouble(250, 1300);
            double delay = Knock.delay(octane, p, t);
            assertThat(delay).isPositive().isFinite();
            assertThat(Knock.delay(octane + 1, p, t)).isGreaterThan(delay);
            assertThat(Knock.delay(octane, p * 1.01, t)).isLessThan(delay);
            assertThat(Knock.delay(octane, p, t + 1)).isLessThan(delay);
        }
    }

    @Test
    void beginsAnewAndRefusesNonsense() {
        Knock knock = new Knock();
        assertThat(knock.octaneWanted()).isZero();
        knock.begin(20e5, 800);
        knock.add(1e-3, 30e5, 850);
        double once = knock.octaneWanted();
        knock.begin(20e5, 800);
        knock.add(1e-3, 30e5, 850);
        assertThat(knock.octaneWanted()).isEqualTo(once).isPositive();
        assertThatThrownBy(() -> Knock.delay(90, Double.NaN, 800)).hasMessageContaining("pressure");
    }
}
