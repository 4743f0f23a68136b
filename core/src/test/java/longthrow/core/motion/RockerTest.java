package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The rocker's formulas against a rocker of three points moved in the plane: pivot on an upright stud at 0, cup on the left, tip on the right, heights
 * counted up from the head's face [mm]. Nothing of the formulas is used to place it.
 */
class RockerTest {
    private static final double CUP = 16.5;
    private static final double TIP = 25.5;
    private static final double LIFT = 6.4;

    private static double value(Expression expression) {
        return Formula.of("test", expression).at();
    }

    private static Expression of(double value) {
        return Expression.constant(value);
    }

    private static Rocker rocker() {
        return new Rocker(of(CUP), of(TIP));
    }

    /** A rigid rocker turned by an angle, valve end down positive, about a pivot at a height; extra offsets of its ends square to the line of the arms. */
    private record Placed(double pivot, double angle, double cupBelow, double tipBelow) {
        double cupHeight() {
            return pivot + CUP * Math.sin(angle) - cupBelow * Math.cos(angle);
        }

        double tipHeight() {
            return pivot - TIP * Math.sin(angle) - tipBelow * Math.cos(angle);
        }

        double tipAcross() {
            return TIP * Math.cos(angle) - tipBelow * Math.sin(angle);
        }

        /** Turned until the cup stands at this height. */
        Placed withCupAt(double height) {
            double found = root(a -> new Placed(pivot, a, cupBelow, tipBelow).cupHeight() - height);
            return new Placed(pivot, found, cupBelow, tipBelow);
        }

        /** Valve travel over pushrod travel for a small push. */
        double ratio() {
            double push = 1e-4;
            Placed up = withCupAt(cupHeight() + push);
            Placed down = withCupAt(cupHeight() - push);
            return (down.tipHeight() - up.tipHeight()) / (2 * push);
        }
    }

    private static double root(DoubleUnaryOperator of) {
        double low = -1;
        double high = 1;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            if (of.applyAsDouble(middle) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** The nut brings pivot and angle to where tip and cup are met: the tip at its valve, the cup lower than it was by the rise. */
    private static Placed byNut(double tipHeight, double cupHeight) {
        double angle = root(a -> cupHeight - CUP * Math.sin(a) - (tipHeight + TIP * Math.sin(a)) > 0 ? -1 : 1);
        return new Placed(tipHeight + TIP * Math.sin(angle), angle, 0, 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.2, -0.5, 0.3, 0.9})
    void aNutAtThePivotLetsTheRockerLeanAndKeepsTheRatio(double rise) {
        Placed before = byNut(0, 0);
        Placed after = byNut(0, -rise);
        Rocker rocker = rocker();
        assertThat(before.angle() - after.angle()).isCloseTo(value(rocker.lean(of(rise))), within(1e-12));
        assertThat(before.pivot() - after.pivot()).isCloseTo(value(rocker.pivotDrop(of(rise))), within(1e-12));
        for (double cup : new double[] {0, 1, 3}) {
            assertThat(after.withCupAt(-rise + cup).ratio()).isCloseTo(TIP / CUP, within(1e-7));
        }
    }

    /** Square at half lift before: at the seat the tip stands half the lift higher, at full lift half the lift lower. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.8, 0.6})
    void theTipTouchesElsewhere(double rise) {
        double cupAtSeat = -LIFT / 2 * CUP / TIP;
        Placed after = byNut(LIFT / 2, cupAtSeat - rise);
        Placed open = after.withCupAt(after.cupHeight() + LIFT * CUP / TIP);
        assertThat(open.tipHeight()).isCloseTo(-LIFT / 2, within(1e-9));
        Rocker rocker = rocker();
        Expression full = rocker.fullLiftSine(of(LIFT));
        Expression off = rocker.offSquare(of(rise));
        assertThat(after.tipAcross()).isCloseTo(value(rocker.touch(full.plus(off))), within(1e-9));
        assertThat(open.tipAcross()).isCloseTo(value(rocker.touch(full.minus(off))), within(1e-9));
    }

    /** Left alone, the pivot stays to its head and the cup drops by the rise: the tip leaves the valve. */
    @Test
    void theGapGrowsByTheRiseTimesTheRatio() {
        double rise = 0.02;
        Placed left = new Placed(0, 0, 0, 0).withCupAt(-rise);
        assertThat(left.tipHeight()).isPositive().isCloseTo(value(rocker().gapGain(of(rise))), within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.2, -0.4, 0.5, 1.0})
    void aScrewAtThePushrodEndKeepsTheAngleAndBendsTheRatio(double out) {
        Expression full = rocker().fullLiftSine(of(LIFT));
        for (int side : new int[] {-1, 0, 1}) {
            double angle = side * Math.asin(LIFT / 2 / TIP);
            Placed placed = new Placed(0, angle, out, 0);
            assertThat(value(rocker().ratioWithPushrodScrew(full.times(side), of(out))))
                    .isCloseTo(placed.ratio(), within(1e-7));
        }
        assertThat(new Placed(0, 0, out, 0).cupHeight()).isEqualTo(-out);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.2, -0.4, 0.5, 1.0})
    void aScrewAtTheValveEndLeansTheRockerOverItsPushrodArm(double rise) {
        Placed leant = new Placed(0, 0, 0, 0).withCupAt(-rise);
        double sine = -value(rocker().offSquareWithValveScrew(of(rise)));
        assertThat(leant.angle()).isCloseTo(Math.asin(sine), within(1e-12));
        double out = 0.7;
        assertThat(value(rocker().ratioWithValveScrew(of(sine), of(out))))
                .isCloseTo(new Placed(0, leant.angle(), 0, out).ratio(), within(1e-7));
    }

    /** Pushrod arm bent off the line by 10 degrees: its height is the sine of the two angles together. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.12, 0, 0.2})
    void aBentRockerHasTheRatioOfItsPerpendicularArms(double angle) {
        double off = Math.toRadians(10);
        double step = 1e-5;
        double tip = TIP * (Math.sin(angle + step) - Math.sin(angle - step));
        double cup = CUP * (Math.sin(angle + step + off) - Math.sin(angle - step + off));
        assertThat(value(rocker().ratio(of(angle), of(off)))).isCloseTo(tip / cup, within(1e-8));
    }
}
