package longthrow.core.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import longthrow.core.formula.Range.Quality;
import org.junit.jupiter.api.Test;

class RangeTest {
    private static final Expression X = Expression.input("x");
    private static final Expression Y = Expression.input("y");

    /** A hundred thousand boxes: whatever value is taken inside, the interval holds it. */
    @Test
    void noSampledValueIsEverExcluded() {
        SplittableRandom random = new SplittableRandom(17);
        for (int f = 0; f < 1000; f++) {
            Formula formula = RandomFormula.of(random, 3, 12, true);
            for (int b = 0; b < 100; b++) {
                Interval[] box = RandomFormula.box(random, formula.inputs().size(), b % 2 == 0 ? 0.5 : 1e-6);
                Interval natural = formula.over(box);
                for (int k = 0; k < 3; k++) {
                    double[] point = RandomFormula.point(random, box);
                    assertHolds(natural, formula.at(point), formula);
                }
            }
        }
    }

    /**
     * The value is computed in rounded numbers, its own error some units in the last place of the largest value met, so
     * it may lie that far outside an interval that holds the true value.
     */
    private static void assertHolds(Interval interval, double value, Formula formula) {
        double rounding = 1e-13 * (1 + Math.abs(value));
        assertThat(value).as("%s", formula.steps()).isBetween(interval.lo() - rounding, interval.hi() + rounding);
    }

    /** Where the range is called exact, it is what trying every corner gives; where not, it holds all corners. */
    @Test
    void exactRangesAreTheCornersAndOthersHoldThem() {
        SplittableRandom random = new SplittableRandom(23);
        int exact = 0;
        for (int trial = 0; trial < 1500; trial++) {
            Formula formula = RandomFormula.of(random, 3, 8, true);
            Interval[] box = RandomFormula.box(random, formula.inputs().size(), 0.05);
            Range range = formula.rangeOver(box);
            double lowest = Double.POSITIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            for (int corner = 0; corner < 1 << box.length; corner++) {
                double[] at = new double[box.length];
                for (int i = 0; i < at.length; i++) {
                    at[i] = (corner >> i & 1) == 0 ? box[i].lo() : box[i].hi();
                }
                lowest = Math.min(lowest, formula.at(at));
                highest = Math.max(highest, formula.at(at));
            }
            double rounding = 1e-12 * (1 + Math.abs(lowest) + Math.abs(highest));
            assertThat(range.interval().lo()).as("%s", formula.steps()).isLessThanOrEqualTo(lowest + rounding);
            assertThat(range.interval().hi()).as("%s", formula.steps()).isGreaterThanOrEqualTo(highest - rounding);
            assertThat(range.interval().contains(range.attained())).isTrue();
            for (int k = 0; k < 20; k++) {
                assertHolds(range.interval(), formula.at(RandomFormula.point(random, box)), formula);
            }
            if (range.quality() == Quality.EXACT) {
                exact++;
                assertThat(range.interval().lo()).as("%s", formula.steps()).isCloseTo(lowest, within(rounding));
                assertThat(range.interval().hi()).as("%s", formula.steps()).isCloseTo(highest, within(rounding));
                assertThat(range.excess()).isLessThan(2 * rounding);
            }
        }
        assertThat(exact).isGreaterThan(1000);
    }

    /** x / (x + y) rises with x and falls with y: on [1, 2] x [1, 2] from 1/3 to 2/3; step by step 1/4 to 1 (by hand). */
    @Test
    void anInputUsedTwiceIsNotCountedTwice() {
        Formula share = Formula.of("share", X.dividedBy(X.plus(Y)));
        Interval[] box = {new Interval(1, 2), new Interval(1, 2)};
        assertThat(share.over(box)).isEqualTo(new Interval(0.25, 1));
        Range range = share.rangeOver(box);
        assertThat(range.quality()).isEqualTo(Quality.EXACT);
        assertThat(range.interval().lo()).isCloseTo(1.0 / 3, within(1e-15));
        assertThat(range.interval().hi()).isCloseTo(2.0 / 3, within(1e-15));
    }

    /** x (1 - x) on [0, 1] is 0 to 1/4, the top inside; step by step 0 to 1 (by hand). */
    @Test
    void aTopInsideTheBoxIsFoundOrEnclosedTightly() {
        Formula hill = Formula.of("hill", X.times(Expression.constant(1).minus(X)));
        Range range = hill.rangeOver(new Interval(0, 1));
        assertThat(hill.over(new Interval(0, 1))).isEqualTo(new Interval(0, 1));
        assertThat(range).isEqualTo(new Range(new Interval(0, 0.25), new Interval(0, 0.25), Quality.EXACT));
        Range elsewhere = hill.rangeOver(new Interval(0, 0.9)); // halving never meets the top
        assertThat(elsewhere.quality()).isEqualTo(Quality.ENCLOSURE);
        assertThat(elsewhere.interval().lo()).isZero();
        assertThat(elsewhere.interval().hi()).isBetween(0.25, 0.25 + 2e-9);
        assertThat(elsewhere.excess()).isLessThan(2e-9);
    }

    @Test
    void kinksKeepExactRanges() {
        Formula least = Formula.of("least", Expression.min(X, Y));
        Range range = least.rangeOver(new Interval(0, 2), new Interval(1, 3));
        assertThat(range).isEqualTo(new Range(new Interval(0, 2), new Interval(0, 2), Quality.EXACT));
        Formula distance = Formula.of("distance", X.absolute());
        assertThat(distance.rangeOver(new Interval(-1, 2)).interval().hi()).isEqualTo(2);
        assertThat(distance.rangeOver(new Interval(-1, 2)).interval().lo()).isBetween(-1e-8, 0.0);
    }

    /** The slope of 1/x is negative throughout, yet across the pole the corners say nothing. */
    @Test
    void aPoleInTheBoxIsUnboundedNotTheCorners() {
        Formula inverse = Formula.of("inverse", Expression.constant(1).dividedBy(X));
        Range range = inverse.rangeOver(new Interval(-1, 1));
        assertThat(range.interval()).isEqualTo(Interval.WHOLE);
        assertThat(range.quality()).isEqualTo(Quality.ENCLOSURE);
        assertThat(range.excess()).isInfinite();
        Formula never = Formula.of("never", Expression.constant(1).dividedBy(X.minus(Expression.input("x"))));
        assertThatThrownBy(() -> never.rangeOver(new Interval(-1, 1))).isInstanceOf(OutsideDomainException.class);
    }

    @Test
    void aConstantAndAPointHaveExactRanges() {
        assertThat(Formula.of("c", Expression.constant(3)).rangeOver().interval())
                .isEqualTo(Interval.point(3));
        Range point = Formula.of("f", X.sine().plus(X)).rangeOver(Interval.point(1));
        assertThat(point.quality()).isEqualTo(Quality.EXACT);
        assertThat(point.interval().contains(Math.sin(1) + 1)).isTrue();
        assertThat(point.interval().width()).isLessThan(1e-14);
    }
}
