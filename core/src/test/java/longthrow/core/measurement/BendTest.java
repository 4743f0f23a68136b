package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.api.Test;

class BendTest {
    private static final Expression A = Expression.input("a");
    private static final Expression B = Expression.input("b");
    private static final Expression C = Expression.input("c");
    /** Two-sided 95 % of a normal error, JCGM 100:2008 table G.1. */
    private static final double Z = 1.960;

    private static Measured through(Expression expression, double a, double b, double c) {
        Map<String, Double> values = Map.of("a", a, "b", b, "c", c);
        return MonteCarlo.through(
                Formula.of("bent", expression),
                name -> Measured.of(
                        values.getOrDefault(name, 0.0), List.of(Source.known(name, Source.Kind.TYPED, name, 1))));
    }

    @Test
    void aFormulaWithKinksIsOneOfItsPieces() {
        Formula size = Formula.of("size", Expression.max(A.absolute(), B.absolute()));
        assertThat(size.pieces().stream().mapToDouble(f -> f.at(name -> name.equals("a") ? 2 : -5)))
                .containsExactlyInAnyOrder(2.0, -2.0, 5.0, -5.0);
        assertThat(Formula.of("smooth", A.plus(B)).pieces()).isEmpty();
    }

    @Test
    void aPieceFarAheadKeepsItsOwnInterval() {
        Measured largest = through(Expression.max(A, B, C), 20, 3, 1);
        assertThat(largest.low()).isCloseTo(20 - Z, within(0.001));
        assertThat(largest.high()).isCloseTo(20 + Z, within(0.001));
        Measured smallest = through(Expression.min(A, B), 20, 3, 0);
        assertThat(smallest.interval().lo()).isCloseTo(3 - Z, within(0.001));
    }

    /** P(largest of two below d) - P(below -d) = F^2 - (1 - F)^2 = 2 F - 1: two ties need no more than one. */
    @Test
    void twoTiedPiecesNeedNoWiderInterval() {
        assertThat(through(Expression.max(A, B), 7, 7, 0).expanded()).isCloseTo(Z, within(0.001));
    }

    /** F^3 - (1 - F)^3 = 0.95 gives F = 0.98305, d = 2.121: by hand. */
    @Test
    void threeTiedPiecesNeedAWiderOne() {
        assertThat(through(Expression.max(A, B, C), 7, 7, 7).expanded()).isCloseTo(2.121, within(0.002));
    }

    /** Two sizes that may both be nothing: (2 F - 1)^2 = 0.95, d = 2.236: by hand. A size is not below nothing. */
    @Test
    void theLargerOfTwoSizesThatMayBeNothing() {
        Measured size = through(Expression.max(A.absolute(), B.absolute()), 0.1, -0.2, 0);
        assertThat(size.value()).isCloseTo(0.2, within(1e-12));
        assertThat(size.low()).isZero();
        assertThat(size.high()).isCloseTo(0.2 + 2.236, within(0.002));
    }

    @Test
    void aDifferenceLessHalfASizeIsTheSmallerOfTwo() {
        Measured smaller = through(A.minus(B.half().absolute()), 5, 8, 0);
        assertThat(smaller.value()).isCloseTo(1, within(1e-12));
        assertThat(smaller.expanded()).isCloseTo(Z * Math.sqrt(1.25), within(0.001));
    }
}
