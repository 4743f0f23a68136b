package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.api.Test;

class SecondOrderTest {
    private static final Expression X = Expression.input("x");

    private static Measured normal(double value, double u) {
        return Measured.of(value, List.of(Source.known("x", Source.Kind.TYPED, "x", u)));
    }

    private static SecondOrder of(Expression expression, Measured x) {
        return SecondOrder.of(Formula.of("curve", expression), name -> x);
    }

    /** A squared normal about zero is chi-squared of one degree of freedom: variance 2 u^4, first order 0. */
    @Test
    void squareAboutZeroHasTheVarianceOfChiSquared() {
        double u = 0.3;
        SecondOrder second = of(X.squared(), normal(0, u));
        assertThat(second.variance()).isCloseTo(2 * Math.pow(u, 4), within(1e-14));
        assertThat(second.added()).isCloseTo(second.variance(), within(1e-14));
    }

    /** Moments of a normal: the cube of x0 + u z has the variance 9 x0^4 u^2 + 36 x0^2 u^4 + 15 u^6; the last is of third order. */
    @Test
    void cubeNeedsTheThirdDerivative() {
        SecondOrder second = of(X.times(X).times(X), normal(2, 0.01));
        assertThat(second.added()).isCloseTo(36 * 4 * 1e-8, within(1e-12));
    }

    @Test
    void straightFormulaAddsNothing() {
        assertThat(of(X.times(3).plus(1), normal(2, 0.5)).added()).isZero();
    }

    /** x - x^3 about zero: 1 - 6 u^2 in units of u^2, below zero from u = 0.41. */
    @Test
    void seriesThatDoesNotHoldIsRefused() {
        SecondOrder second = of(X.minus(X.power(3)), normal(0, 0.5));
        assertThat(second.variance()).isCloseTo(0.25 * (1 - 6 * 0.25), within(1e-4));
        assertThatThrownBy(second::standardUncertainty).hasMessageContaining("bends too much");
    }

    @Test
    void trialsOfTheUnknownAreRefused() {
        Measured vague = Measured.of(1, List.of(Source.known("x", Source.Kind.UNKNOWN, "x", 1)));
        Formula formula = Formula.of("line", X.times(2));
        assertThatThrownBy(() -> MonteCarlo.summary(formula, name -> vague, 1000, 0.95))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("unknown");
    }

    /** For t and for samples the interval of another coverage agrees at 95 % with the one that is printed. */
    @Test
    void otherCoveragesMeetTheUsualOne() {
        Source few = new Source("few", Source.Kind.SCATTER, "few", 0.1, 4.5, 0.1);
        Measured plain = Measured.of(1, List.of(few));
        assertThat(plain.expanded(Measured.COVERAGE)).isCloseTo(plain.expanded(), within(1e-15));
        assertThat(plain.expandedTruncated(0.95)).isCloseTo(StudentT.factor(0.95, 4) * 0.1, within(1e-15));
        Measured bent = MonteCarlo.through(Formula.of("bent", X.absolute()), name -> plain);
        assertThat(bent.expanded(Measured.COVERAGE)).isCloseTo(bent.expanded(), within(1e-15));
        assertThat(bent.expanded(0.5)).isBetween(0.0, bent.expanded());
        assertThat(Measured.exact(3).expandedTruncated(0.95)).isZero();
        assertThat(Measured.exact(3).correlationWith(plain)).isZero();
    }
}
