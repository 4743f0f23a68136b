package longthrow.core.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.analysis.differentiation.Gradient;
import org.junit.jupiter.api.Test;

class FormulaTest {
    private static final Expression X = Expression.input("x");
    private static final Expression Y = Expression.input("y");

    @Test
    void inputsStandInOrderOfFirstUseAndOncePerName() {
        Formula formula = Formula.of("f", Y.plus(Expression.input("x")).times(Expression.input("y")));
        assertThat(formula.inputs()).containsExactly("y", "x");
        assertThat(formula.at(3, 2)).isEqualTo(15);
        assertThat(formula.at(Map.of("x", 2.0, "y", 3.0)::get)).isEqualTo(15);
    }

    @Test
    void whatIsWrittenTwiceIsDoneOnce() {
        Expression sum = X.plus(Y);
        assertThat(Formula.of("one object", sum.times(sum)).steps()).hasSize(2);
        assertThat(Formula.of("equal text", X.plus(Y).times(X.plus(Y))).steps())
                .extracting(Step::operation)
                .containsExactly(Operation.PLUS, Operation.SQUARED);
    }

    @Test
    void constantsAreFoldedIntoTheStep() {
        Expression two = Expression.constant(2);
        assertThat(Formula.of("f", two.times(two).plus(X)).steps())
                .containsExactly(new Step(Operation.PLUS_CONSTANT, 0, -1, 4));
        assertThat(Formula.of("f", two.minus(X)).steps()).containsExactly(new Step(Operation.CONSTANT_MINUS, 0, -1, 2));
        assertThat(Formula.of("f", two.dividedBy(X)).at(8)).isEqualTo(0.25);
        assertThat(Formula.of("f", two).at()).isEqualTo(2);
        assertThat(Formula.of("f", X).at(7)).isEqualTo(7);
        assertThat(Formula.of("f", X).steps()).isEmpty();
    }

    @Test
    void formulasAreComposedBySubstitution() {
        Expression circle = Expression.input("diameter").squared().times(Math.PI / 4);
        Expression two = circle.substitute(Map.of("diameter", X.plus(Y)));
        assertThat(Formula.of("f", two).inputs()).containsExactly("x", "y");
        assertThat(Formula.of("f", two).at(1, 2)).isEqualTo(9 * (Math.PI / 4));
        assertThat(circle.substitute(Map.of("other", X))).isSameAs(circle);
        Expression swapped = X.minus(Y).substitute(Map.of("x", Y, "y", X));
        assertThat(Formula.of("f", swapped).at(Map.of("x", 1.0, "y", 5.0)::get)).isEqualTo(4);
    }

    @Test
    void aChainOfAHundredThousandStepsDoesNotExhaustTheStack() {
        Expression chain = X;
        for (int i = 0; i < 100_000; i++) {
            chain = chain.plus(Y);
        }
        Formula formula = Formula.of("chain", chain.substitute(Map.of("x", Y.half())));
        assertThat(formula.at(2)).isEqualTo(200_001);
        double[] gradient = new double[1];
        formula.gradient(new double[] {2}, gradient);
        assertThat(gradient[0]).isEqualTo(100_000.5);
        assertThat(formula.over(new Interval(1, 2))).isEqualTo(new Interval(100_000.5, 200_001));
    }

    @Test
    void knowsWhetherItHasAKink() {
        assertThat(Formula.of("f", X.sine().plus(Y)).hasKink()).isFalse();
        assertThat(Formula.of("f", X.minus(Y).absolute()).hasKink()).isTrue();
        assertThat(Formula.of("f", Expression.min(X, Y)).hasKink()).isTrue();
        assertThat(Formula.of("f", Expression.max(X, Y)).hasKink()).isTrue();
    }

    /** Hipparchus, an independent implementation of forward differentiation; tolerance: rounding of some 20 steps. */
    @Test
    void gradientAgreesWithForwardDifferentiation() {
        SplittableRandom random = new SplittableRandom(20240601);
        for (int trial = 0; trial < 3000; trial++) {
            Formula formula = RandomFormula.of(random, 3, 15, true);
            double[] at = RandomFormula.point(
                    random, RandomFormula.box(random, formula.inputs().size(), 0.5));
            double[] gradient = new double[at.length];
            double value = formula.gradient(at, gradient);
            Gradient forward = forward(formula, at);
            assertThat(value).as("%s", formula.steps()).isEqualTo(formula.at(at));
            for (int i = 0; i < at.length; i++) {
                double expected = forward.getPartialDerivative(i);
                assertThat(gradient[i])
                        .as("trial %s by input %s of %s", trial, i, formula.steps())
                        .isCloseTo(expected, within(1e-9 * (1 + Math.abs(expected))));
            }
        }
    }

    private static Gradient forward(Formula formula, double[] at) {
        Gradient[] values = new Gradient[at.length + formula.steps().size()];
        for (int i = 0; i < at.length; i++) {
            values[i] = Gradient.variable(at.length, i, at[i]);
        }
        int number = at.length;
        for (Step step : formula.steps()) {
            Gradient zero = Gradient.constant(at.length, 0);
            Gradient a = step.left() < 0 ? zero : values[step.left()];
            Gradient b = step.right() < 0 ? zero : values[step.right()];
            double c = step.constant();
            values[number++] = switch (step.operation()) {
                case INPUT -> throw new IllegalStateException();
                case CONSTANT -> zero.add(c);
                case PLUS -> a.add(b);
                case MINUS -> a.subtract(b);
                case TIMES -> a.multiply(b);
                case OVER -> a.divide(b);
                case PLUS_CONSTANT -> a.add(c);
                case CONSTANT_MINUS -> a.negate().add(c);
                case TIMES_CONSTANT -> a.multiply(c);
                case OVER_CONSTANT -> a.divide(c);
                case CONSTANT_OVER -> a.reciprocal().multiply(c);
                case NEGATED -> a.negate();
                case SQUARED -> a.multiply(a);
                case SQUARE_ROOT -> a.sqrt();
                case SINE -> a.sin();
                case COSINE -> a.cos();
                case ARC_SINE -> a.asin();
                case ARC_TANGENT -> a.atan();
                case EXPONENTIAL -> a.exp();
                case LOGARITHM -> a.log();
                case POWER -> a.pow(c);
                case ABSOLUTE -> a.getValue() < 0 ? a.negate() : a;
                case MINIMUM -> a.getValue() <= b.getValue() ? a : b;
                case MAXIMUM -> a.getValue() >= b.getValue() ? a : b;
            };
        }
        return values[formula.result()];
    }

    /** Central differences with h = 1e-6: error of order h^2 plus rounding 1e-16 / h, times the curvature. */
    @Test
    void gradientAgreesWithDifferences() {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 500; trial++) {
            Formula formula = RandomFormula.of(random, 3, 10, false);
            double[] at = RandomFormula.point(
                    random, RandomFormula.box(random, formula.inputs().size(), 0.5));
            double[] gradient = new double[at.length];
            formula.gradient(at, gradient);
            for (int i = 0; i < at.length; i++) {
                double[] up = at.clone();
                double[] down = at.clone();
                up[i] += 1e-6;
                down[i] -= 1e-6;
                double difference = (formula.at(up) - formula.at(down)) / (up[i] - down[i]);
                assertThat(gradient[i])
                        .as("trial %s by input %s of %s", trial, i, formula.steps())
                        .isCloseTo(difference, within(1e-5 * (1 + Math.abs(difference))));
            }
        }
    }

    @Test
    void atAKinkTheDocumentedSideIsTaken() {
        assertThat(gradient(X.absolute(), 0)).containsExactly(1);
        assertThat(gradient(X.absolute(), -2)).containsExactly(-1);
        assertThat(gradient(Expression.min(X, Y), 3, 3)).containsExactly(1, 0);
        assertThat(gradient(Expression.max(X, Y), 3, 3)).containsExactly(1, 0);
        assertThat(gradient(Expression.max(X, Y), 3, 4)).containsExactly(0, 1);
    }

    private static double[] gradient(Expression expression, double... at) {
        double[] gradient = new double[at.length];
        Formula.of("f", expression).gradient(at, gradient);
        return gradient;
    }

    /** The plain twin of the block kernels is {@link Formula#at}. */
    @Test
    void blocksAreBitForBitWhatSingleSamplesAre() {
        SplittableRandom random = new SplittableRandom(5);
        Formula.Workspace workspace = new Formula.Workspace();
        for (int trial = 0; trial < 300; trial++) {
            Formula formula = RandomFormula.of(random, 1 + random.nextInt(5), 1 + random.nextInt(40), true);
            int inputs = formula.inputs().size();
            int from = trial % 3 == 0 ? 0 : random.nextInt(700);
            int count = random.nextInt(1500);
            double[][] samples = new double[inputs][from + count + 3];
            for (double[] row : samples) {
                java.util.Arrays.setAll(row, k -> random.nextDouble(0.5, 3));
            }
            double[][] given =
                    java.util.Arrays.stream(samples).map(double[]::clone).toArray(double[][]::new);
            double[] out = new double[from + count + 3];
            java.util.Arrays.fill(out, -77);
            formula.samples(samples, from, count, out, workspace);
            assertThat(samples).as("inputs are left alone").isDeepEqualTo(given);
            for (int k = 0; k < out.length; k++) {
                double expected = -77;
                if (k >= from && k < from + count) {
                    double[] one = new double[inputs];
                    for (int i = 0; i < inputs; i++) {
                        one[i] = samples[i][k];
                    }
                    expected = formula.at(one);
                }
                assertThat(Double.doubleToRawLongBits(out[k]))
                        .as("trial %s sample %s of %s", trial, k, formula.steps())
                        .isEqualTo(Double.doubleToRawLongBits(expected));
            }
        }
    }

    @Test
    void drawingBlockByBlockMissesNoSample() {
        for (int count : new int[] {0, 1, 511, 512, 513, 2000}) {
            int[] drawn = {0};
            double[] all = Formula.of("f", X.plus(Y)).sampled(count, (block, size) -> {
                for (int k = 0; k < size; k++) {
                    block[0][k] = drawn[0]++;
                    block[1][k] = 0.5;
                }
            });
            assertThat(all).hasSize(count);
            for (int k = 0; k < count; k++) {
                assertThat(all[k]).isEqualTo(k + 0.5);
            }
        }
    }

    @Test
    void blocksOfAnInputOrAConstantAloneWorkToo() {
        double[] out = new double[3];
        Formula.of("f", X).samples(new double[][] {{1, 2, 3}}, 1, 2, out);
        assertThat(out).containsExactly(0, 2, 3);
        Formula.of("f", Expression.constant(4)).samples(new double[0][], 0, 2, out);
        assertThat(out).containsExactly(4, 4, 3);
    }

    @Test
    void aWrongCallSaysWhatWasFoundAndWanted() {
        Formula formula = Formula.of("swept volume", X.times(Y));
        assertThatThrownBy(() -> formula.at(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the formula swept volume has 2 inputs [x, y], but it was given 1");
        assertThatThrownBy(() -> formula.gradient(new double[2], new double[3]))
                .hasMessageContaining("the gradient has room for 3");
        assertThatThrownBy(() -> formula.over(Interval.point(1)))
                .hasMessageContaining("2 inputs [x, y], but the box has 1");
        assertThatThrownBy(() -> formula.samples(new double[2][5], 3, 3, new double[6]))
                .hasMessageContaining("3 samples from number 3, but the array of the input x holds 5");
        assertThatThrownBy(() -> formula.samples(new double[2][5], -1, 3, new double[6]))
                .hasMessageContaining("from number -1");
        assertThatThrownBy(() -> formula.samples(new double[1][5], 0, 3, new double[6]))
                .hasMessageContaining("2 inputs [x, y]");
        assertThatThrownBy(() -> Expression.input(" ")).hasMessageContaining("no name");
        assertThatThrownBy(() -> Expression.constant(Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> X.dividedBy(0)).hasMessageContaining("constant 0");
    }

    @Test
    void printsItsNameInputsAndLength() {
        assertThat(Formula.of("f", X.plus(Y).squared())).hasToString("f[x, y]: 2 steps");
        assertThat(List.of(X, Expression.constant(2), X.plus(Y))).hasToString("[x, 2.0, PLUS(...)]");
    }
}
