package longthrow.core.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class IntervalTest {
    private static final double INFINITY = Double.POSITIVE_INFINITY;

    @Test
    void exactResultsAreNotWidened() {
        Interval a = new Interval(1, 2);
        Interval b = new Interval(-3, 4);
        assertThat(a.plus(b)).isEqualTo(new Interval(-2, 6));
        assertThat(a.minus(b)).isEqualTo(new Interval(-3, 5));
        assertThat(a.times(b)).isEqualTo(new Interval(-6, 8));
        assertThat(b.dividedBy(a)).isEqualTo(new Interval(-3, 4));
        assertThat(b.squared()).isEqualTo(new Interval(0, 16));
        assertThat(new Interval(4, 9).squareRoot()).isEqualTo(new Interval(2, 3));
        assertThat(b.absolute()).isEqualTo(new Interval(0, 4));
        assertThat(b.negated()).isEqualTo(new Interval(-4, 3));
        assertThat(a.min(b)).isEqualTo(new Interval(-3, 2));
        assertThat(a.max(b)).isEqualTo(new Interval(1, 4));
    }

    /** The exact sums, products and quotients are found in decimal arithmetic, which is exact for doubles. */
    @Test
    void endsHoldTheExactResultOfEveryPairOfEnds() {
        SplittableRandom random = new SplittableRandom(3);
        for (int trial = 0; trial < 30_000; trial++) {
            Interval a = random(random);
            Interval b = random(random);
            for (double x : new double[] {a.lo(), a.hi()}) {
                for (double y : new double[] {b.lo(), b.hi()}) {
                    BigDecimal p = new BigDecimal(x);
                    BigDecimal q = new BigDecimal(y);
                    assertHolds(a.plus(b), p.add(q));
                    assertHolds(a.minus(b), p.subtract(q));
                    assertHolds(a.times(b), p.multiply(q));
                    if (!b.contains(0)) {
                        Interval quotient = a.dividedBy(b); // lo <= p / q <= hi without dividing
                        int sign = q.signum();
                        assertThat(new BigDecimal(quotient.lo()).multiply(q).compareTo(p) * sign)
                                .isLessThanOrEqualTo(0);
                        assertThat(new BigDecimal(quotient.hi()).multiply(q).compareTo(p) * sign)
                                .isGreaterThanOrEqualTo(0);
                    }
                }
            }
            Interval root = a.absolute().squareRoot();
            assertThat(new BigDecimal(root.lo()).pow(2))
                    .isLessThanOrEqualTo(new BigDecimal(a.absolute().lo()));
            assertThat(new BigDecimal(root.hi()).pow(2))
                    .isGreaterThanOrEqualTo(new BigDecimal(a.absolute().hi()));
            assertHolds(a.squared(), new BigDecimal(a.lo()).pow(2));
        }
    }

    private static void assertHolds(Interval interval, BigDecimal exact) {
        assertThat(exact).isBetween(new BigDecimal(interval.lo()), new BigDecimal(interval.hi()));
    }

    /** Whole numbers and halves often enough that the exact paths are met as well. */
    private static Interval random(SplittableRandom random) {
        double lo = random.nextBoolean() ? random.nextInt(-8, 8) / 2.0 : random.nextDouble(-10, 10);
        return new Interval(lo, lo + (random.nextBoolean() ? random.nextInt(4) : random.nextDouble(5)));
    }

    @Test
    void divisionByAnIntervalWithZeroIsUnbounded() {
        Interval one = Interval.point(1);
        assertThat(one.dividedBy(new Interval(-1, 2))).isEqualTo(Interval.WHOLE);
        assertThat(one.dividedBy(new Interval(0, 2))).isEqualTo(new Interval(0.5, INFINITY));
        assertThat(one.dividedBy(new Interval(-4, 0))).isEqualTo(new Interval(-INFINITY, -0.25));
        assertThat(one.dividedBy(Interval.point(0))).isEqualTo(Interval.WHOLE);
        assertThat(Interval.WHOLE.times(Interval.point(0))).isEqualTo(Interval.point(0));
        assertThat(new Interval(0, INFINITY).plus(Interval.WHOLE)).isEqualTo(Interval.WHOLE);
    }

    @Test
    void overflowStaysSound() {
        Interval huge = Interval.point(1e200);
        assertThat(huge.times(huge)).isEqualTo(new Interval(Double.MAX_VALUE, INFINITY));
        assertThat(huge.squared().negated()).isEqualTo(new Interval(-INFINITY, -Double.MAX_VALUE));
        assertThat(Interval.point(1e-200).squared().contains(0)).isTrue();
        assertThat(Interval.point(1e-200).squared().hi()).isEqualTo(Double.MIN_VALUE);
        assertThat(Interval.point(800).exponential())
                .isEqualTo(new Interval(Math.nextDown(Double.MAX_VALUE), INFINITY));
    }

    @Test
    void wavesKnowTheirCrestsAndTroughs() {
        assertThat(new Interval(0, Math.PI).sine().hi()).isEqualTo(1);
        assertThat(new Interval(4, 5).sine().lo()).isEqualTo(-1);
        assertThat(new Interval(-1, 1).cosine().hi()).isEqualTo(1);
        assertThat(new Interval(2, 4).cosine().lo()).isEqualTo(-1);
        assertThat(new Interval(0.1, 0.2).sine().hi()).isLessThan(0.2);
        assertThat(new Interval(1e9, 1e9 + 1).sine()).isEqualTo(new Interval(-1, 1));
        assertThat(Interval.WHOLE.cosine()).isEqualTo(new Interval(-1, 1));
    }

    @Test
    void outsideTheDomainIsRefusedWithTheReason() {
        assertThatThrownBy(() -> new Interval(-1, 2).squareRoot())
                .isInstanceOf(OutsideDomainException.class)
                .hasMessageContaining("the square root is asked over -1.0 to 2.0; it is defined for 0 or more");
        assertThatThrownBy(() -> new Interval(-1, 2).logarithm()).hasMessageContaining("more than 0");
        assertThatThrownBy(() -> new Interval(0.5, 2).arcSine()).hasMessageContaining("-1 to 1");
        assertThatThrownBy(() -> new Interval(-1, 2).power(0.5)).hasMessageContaining("0 or more");
        assertThat(new Interval(0, 1).logarithm()).isEqualTo(new Interval(-INFINITY, 0));
        assertThatThrownBy(() -> new Interval(2, 1)).hasMessageContaining("holds no number");
        assertThatThrownBy(() -> Interval.point(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> Interval.point(INFINITY)).hasMessageContaining("holds no number");
        Formula root = Formula.of("rod angle", Expression.input("x").squareRoot());
        assertThatThrownBy(() -> root.over(new Interval(-1, 1))).hasMessageStartingWith("in the formula rod angle, ");
    }

    @Test
    void powersFollowSignAndParity() {
        Interval acrossZero = new Interval(-2, 1);
        assertThat(acrossZero.power(2).contains(new Interval(0, 4))).isTrue();
        assertThat(acrossZero.power(2).lo()).isZero();
        assertThat(acrossZero.power(3).contains(new Interval(-8, 1))).isTrue();
        assertThat(acrossZero.power(-1)).isEqualTo(Interval.WHOLE);
        assertThat(acrossZero.power(0)).isEqualTo(Interval.point(1));
        assertThat(new Interval(0, 4).power(-0.5).contains(new Interval(0.5, INFINITY)))
                .isTrue();
    }

    @Test
    void widthMiddleAndHull() {
        assertThat(new Interval(1, 3).middle()).isEqualTo(2);
        assertThat(Interval.point(5).width()).isZero();
        assertThat(new Interval(1, 3).width()).isBetween(2.0, Math.nextUp(2.0));
        assertThat(Interval.point(1).hull(Interval.point(4))).isEqualTo(new Interval(1, 4));
        assertThat(Interval.WHOLE.middle()).isZero();
        assertThat(new Interval(2, INFINITY).middle()).isEqualTo(2);
        assertThat(new Interval(-INFINITY, -2).middle()).isEqualTo(-2);
        assertThat(Interval.around(1, 0.1).contains(new Interval(0.9, 1.1))).isTrue();
    }
}
