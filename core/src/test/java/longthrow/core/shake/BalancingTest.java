package longthrow.core.shake;

import static longthrow.core.Plain.number;
import static longthrow.core.Plain.value;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.RodMass;
import longthrow.core.motion.CrankMotion;
import org.junit.jupiter.api.Test;

/** What can be moved where: hand sums and twins by brute force; engines invented. */
class BalancingTest {
    private static final double RADIUS = 0.028;
    private static final double SPEED = 600;

    /** 0.35 kg hung with 0.15 kg of big end leaves 0.2 of 0.4 kg: half. A piston 50 g lighter, same crank: 0.2 of 0.35. */
    @Test
    void lighterPistonRaisesTheFactor() {
        assertThat(value(BalanceFactor.ofBobWeight(number(0.35), number(0.15), number(0.40))))
                .isCloseTo(0.5, within(1e-15));
        BalanceFactor.Weights before = new BalanceFactor.Weights(number(0.15), number(0.40));
        BalanceFactor.Weights after = new BalanceFactor.Weights(number(0.15), number(0.35));
        double factor = value(BalanceFactor.afterChange(number(0.5), before, after));
        assertThat(factor).isCloseTo(0.2 / 0.35, within(1e-15));
        assertThat(value(BalanceFactor.bobWeight(number(factor), number(0.15), number(0.35))))
                .isCloseTo(0.35, within(1e-15));
        double moment = value(BalanceFactor.momentToRemove(number(factor), number(0.5), number(0.35), number(RADIUS)));
        assertThat(moment).isCloseTo((0.2 - 0.175) * RADIUS, within(1e-15));
        assertThat(value(BalanceFactor.afterRemoval(number(factor), number(moment), number(0.35), number(RADIUS))))
                .isCloseTo(0.5, within(1e-15));
    }

    /** Steel 7850, two holes of 10 mm, 20 mm deep at 40 mm, 15 degrees aside, against slices of the hole summed one by one. */
    @Test
    void holesTakeOffWhatTheirSlicesWeigh() {
        double aside = Math.toRadians(15);
        Drilling drilling = new Drilling(number(2), number(0.010), number(aside), number(0.040), number(7850));
        double tip = 0.005 / Math.tan(Math.toRadians(59));
        double parallel = 0;
        double radial = 0;
        int slices = 200_000;
        double depth = 0.020;
        double thick = (depth + tip) / slices;
        for (int k = 0; k < slices; k++) {
            double x = (k + 0.5) * thick;
            double r = x < depth ? 0.005 : 0.005 * (depth + tip - x) / tip;
            double mass = 2 * 7850 * Math.PI * r * r * thick * Math.cos(aside);
            parallel += mass * 0.040;
            radial += mass * (0.040 - x);
        }
        assertThat(value(drilling.momentParallel(number(depth)))).isCloseTo(parallel, within(1e-9 * parallel));
        assertThat(value(drilling.momentRadial(number(depth)))).isCloseTo(radial, within(1e-9 * radial));
        assertThat(value(drilling.depthParallel(number(parallel)))).isCloseTo(depth, within(1e-10));
        assertThat(value(drilling.depthRadial(number(radial)))).isCloseTo(depth, within(1e-10));
        Formula depthFor = Formula.of("depth", drilling.depthRadial(Expression.input("moment")));
        assertThat(depthFor.at(1)).isNaN(); // more than the rim has
        assertThat(value(drilling.wallLeft(number(depth), number(0.026)))).isCloseTo(0.006 - tip, within(1e-15));
        assertThat(value(drilling.rimLeft(number(0.050)))).isCloseTo(0.005, within(1e-15));
    }

    /** The first order of the exact force, whatever the factor, keeps an arrow of half the primary against the crank; a shaft takes it away. */
    @Test
    void noCounterweightTouchesTheArrowAgainstTheCrank() {
        for (double factor : new double[] {0, 0.3, 0.5, 0.65, 1}) {
            double withCrank = 0;
            double against = 0;
            Hodograph hodograph =
                    Hodograph.of(new CrankMotion(RADIUS, 0.1, 0), Hodograph.Masses.ofFactor(0.3, factor), SPEED, 720);
            for (Hodograph.Point p : hodograph.points()) {
                double c = Math.cos(p.angle());
                double s = Math.sin(p.angle());
                withCrank += (p.along() * c + p.across() * s) / 720;
                against += (p.along() * c - p.across() * s) / 720;
            }
            FirstOrder order = new FirstOrder(number(0.3), number(RADIUS), number(SPEED), number(factor));
            assertThat(value(order.againstCrank())).isCloseTo(against, within(1e-9));
            assertThat(value(order.withCrank())).isCloseTo(Math.abs(withCrank), within(1e-9));
            assertThat(value(order.againstCrank())).isCloseTo(0.5 * 0.3 * RADIUS * SPEED * SPEED, within(1e-9));
        }
        FirstOrder half = new FirstOrder(number(0.3), number(RADIUS), number(SPEED), number(0.5));
        assertThat(value(half.alongWithShaft(half.shaftMoment()))).isZero();
        assertThat(value(half.acrossWithShaft(half.shaftMoment()))).isZero();
        assertThat(value(half.shaftCouple(half.shaftMoment(), number(0.05))))
                .isCloseTo(0.05 * value(half.againstCrank()), within(1e-9));
    }

    /** Against the forced motion integrated step by step until it repeats: m x" + c x' + k x = F cos wt. */
    @Test
    void mountMovesAsItsEquationSays() {
        double m = 20;
        double k = 90_000;
        double zeta = 0.06;
        for (double w : new double[] {30, 60, 120, 300}) {
            Mount mount = new Mount(number(m), number(k), number(zeta));
            double c = 2 * zeta * Math.sqrt(k * m);
            double x = 0;
            double v = 0;
            double largest = 0;
            double dt = 1e-5;
            for (int n = 0; n < 700_000; n++) {
                double half = n * dt + dt / 2;
                double middle = x + v * dt / 2;
                v = (v * (m / dt - c / 2) + 500 * Math.cos(w * half) - k * middle) / (m / dt + c / 2);
                x = middle + v * dt / 2;
                largest = n * dt > 6 ? Math.max(largest, Math.abs(x)) : 0;
            }
            assertThat(value(mount.amplitude(number(500), number(w))))
                    .as("%s rad/s", w)
                    .isCloseTo(largest, within(1e-3 * largest));
        }
        Mount mount = new Mount(number(m), number(k), number(zeta));
        double edge = Math.sqrt(2) * value(mount.naturalFrequency());
        assertThat(value(mount.transmitted(number(edge)))).isCloseTo(1, within(1e-12));
    }

    /** Statics without the smallness: lever arms of the tilted rod turned out in full. */
    @Test
    void unlevelRodFoolsTheScale() {
        RodMass rod = new RodMass(number(0.165), number(0.084), number(0.024));
        for (double tilt : new double[] {-0.1, 0.03, 0.09}) {
            double c = Math.cos(tilt);
            double s = Math.sin(tilt);
            double exact = 0.165 * (0.024 * c + (0.001 - 0.016) * s) / (0.084 * c + (0.009 - 0.016) * s);
            double error = value(rod.unlevelError(number(tilt), number(0.009), number(0.016), number(0.001)));
            assertThat(error).isCloseTo(exact - value(rod.smallEnd()), within(0.012 * Math.abs(error)));
        }
        assertThat(value(rod.unlevelError(number(0.09), number(0), number(0), number(0))))
                .isZero();
        RodMass hung = RodMass.ofEnds(rod.smallEnd(), rod.bigEnd(), number(0.084));
        assertThat(value(hung.centre())).isCloseTo(0.024, within(1e-15));
    }

    /** 12 g m at 20 mm against 10 g m at 22 mm, 600 rad/s: (0.24 - 0.22) g m2 x 360,000 = 7.2 N m. */
    @Test
    void unequalWebsRockTheCrank() {
        WebCouple webs = new WebCouple(number(0.012), number(0.020), number(0.010), number(0.022));
        assertThat(value(webs.couple(number(SPEED)))).isCloseTo(7.2, within(1e-9));
        assertThat(value(webs.onBearings(number(SPEED), number(0.09)))).isCloseTo(80, within(1e-9));
        Expression less = number(0.012).minus(webs.tooMuchAtFlywheelEnd());
        WebCouple mended = new WebCouple(less, number(0.020), number(0.010), number(0.022));
        assertThat(value(mended.couple(number(SPEED)))).isCloseTo(0, within(1e-9));
    }

    @Test
    void refusesWhatIsNotAMass() {
        assertThatThrownBy(() -> new Hodograph.Masses(0, 0.1))
                .hasMessageContaining("reciprocating mass [kg] is 0.0; it must be above 0");
        assertThatThrownBy(() ->
                        Hodograph.of(new CrankMotion(RADIUS, 0.1, 0), new Hodograph.Masses(0.3, 0), Double.NaN, 36))
                .hasMessageContaining("speed [rad/s] is NaN");
    }
}
