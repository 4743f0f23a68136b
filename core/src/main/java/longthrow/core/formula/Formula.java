package longthrow.core.formula;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * A recorded formula: a flat list of elementary steps over named inputs, written once and evaluated as a number, as an
 * exact gradient, as an interval and on blocks of samples.
 *
 * <p>Values are numbered: the inputs in order of {@link #inputs()}, then one value per step; a step reads only values
 * before it. Outside the domain of a step (square root of a negative number, division by zero) numbers and samples give
 * NaN or infinity as plain Java does; intervals refuse or become unbounded.
 */
public final class Formula {
    private static final int MOST_PIECES = 64;

    private final String name;
    private final List<String> inputs;
    private final List<Step> steps;
    private final int result;
    private final BlockProgram blocks;
    private final List<Formula> pieces;

    private Formula(String name, List<String> inputs, List<Step> steps, int result, Expression expression) {
        this.name = name;
        this.inputs = inputs;
        this.steps = steps;
        this.result = result;
        this.blocks = BlockProgram.of(inputs.size(), steps, result);
        this.pieces = hasKink()
                ? expression.smoothPieces(MOST_PIECES).stream()
                        .map(piece -> Formula.of(name, piece))
                        .toList()
                : List.of();
    }

    /** Records the expression. Equal steps on equal values are recorded once, whether or not they were one object. */
    public static Formula of(String name, Expression expression) {
        List<Expression> order = expression.inOrder();
        Map<String, Integer> inputNumbers = new LinkedHashMap<>();
        for (Expression node : order) {
            if (node.operation() == Operation.INPUT) {
                inputNumbers.putIfAbsent(node.name(), inputNumbers.size());
            }
        }
        List<Step> steps = new ArrayList<>();
        Map<Step, Integer> known = new HashMap<>();
        IdentityHashMap<Expression, Integer> numbers = new IdentityHashMap<>();
        for (Expression node : order) {
            Integer number = inputNumbers.get(node.name());
            if (number == null) {
                Step step = step(node, numbers);
                number = known.get(step);
                if (number == null) {
                    number = inputNumbers.size() + steps.size();
                    steps.add(step);
                    known.put(step, number);
                }
            }
            numbers.put(node, number);
        }
        return new Formula(
                name,
                List.copyOf(inputNumbers.keySet()),
                List.copyOf(steps),
                numberOf(expression, numbers),
                expression);
    }

    private static Step step(Expression node, IdentityHashMap<Expression, Integer> numbers) {
        List<Expression> operands = node.operands();
        int left = operands.isEmpty() ? -1 : numberOf(operands.get(0), numbers);
        int right = operands.size() < 2 ? -1 : numberOf(operands.get(1), numbers);
        if (node.operation() == Operation.TIMES && left == right) {
            return new Step(Operation.SQUARED, left, -1, 0);
        }
        return new Step(node.operation(), left, right, node.constantValue());
    }

    private static int numberOf(Expression node, IdentityHashMap<Expression, Integer> numbers) {
        Integer number = numbers.get(node);
        if (number == null) {
            throw new IllegalStateException("operand not recorded before its use: " + node);
        }
        return number;
    }

    public String name() {
        return name;
    }

    /** Equal for formulas that do the same sums on inputs of the same names, whatever they are called; to remember results by. */
    public Object sums() {
        return List.of(inputs, steps, result);
    }

    /** Names of the inputs, in order of first use. Every array of inputs below follows this order. */
    public List<String> inputs() {
        return inputs;
    }

    /** The elementary steps, in order of evaluation. */
    public List<Step> steps() {
        return steps;
    }

    /** Number of the value that is the result. */
    public int result() {
        return result;
    }

    /** Whether a derivative jumps somewhere (min, max, absolute): a doubt carried through by first derivatives may lie. */
    public boolean hasKink() {
        return steps.stream().anyMatch(step -> step.operation().hasKink());
    }

    /**
     * The smooth formulas that a formula with kinks follows, now one, now another: the largest of two, for example, is always one of them. Empty
     * without a kink, or with too many.
     */
    public List<Formula> pieces() {
        return pieces;
    }

    /** The value at these inputs, given in order of {@link #inputs()}. */
    public double at(double... inputValues) {
        return values(inputValues)[result];
    }

    /** The value where {@code source} gives each input by its name. */
    public double at(ToDoubleFunction<String> source) {
        return at(inputs.stream().mapToDouble(source).toArray());
    }

    /**
     * The value and its exact derivatives by every input (reverse accumulation; Griewank &amp; Walther, Evaluating
     * Derivatives, 2nd ed., SIAM 2008, ch. 3; from memory). At a kink one side is taken: the derivative of the operand
     * written first where two are equal in min or max, and +1 for the absolute value of zero.
     *
     * @param gradientOut filled with d result / d input, in order of {@link #inputs()}
     * @return the value
     */
    public double gradient(double[] inputValues, double[] gradientOut) {
        if (gradientOut.length != inputs.size()) {
            throw wrongCount("the gradient has room for", gradientOut.length);
        }
        double[] values = values(inputValues);
        double[] adjoints = new double[values.length];
        adjoints[result] = 1;
        for (int s = steps.size() - 1; s >= 0; s--) {
            int number = inputs.size() + s;
            if (adjoints[number] != 0) {
                pushBack(steps.get(s), values, number, adjoints);
            }
        }
        System.arraycopy(adjoints, 0, gradientOut, 0, inputs.size());
        return values[result];
    }

    /** Adds the adjoint of a step's value, times the step's partial derivatives, to the adjoints of its operands. */
    private static void pushBack(Step step, double[] values, int number, double[] adjoints) {
        if (step.left() < 0) {
            return;
        }
        int left = step.left();
        int right = step.right();
        double a = values[left];
        double b = right < 0 ? 0 : values[right];
        double c = step.constant();
        double v = values[number];
        double adjoint = adjoints[number];
        switch (step.operation()) {
            case INPUT, CONSTANT -> {}
            case PLUS -> {
                adjoints[left] += adjoint;
                adjoints[right] += adjoint;
            }
            case MINUS -> {
                adjoints[left] += adjoint;
                adjoints[right] -= adjoint;
            }
            case TIMES -> {
                adjoints[left] += adjoint * b;
                adjoints[right] += adjoint * a;
            }
            case OVER -> {
                adjoints[left] += adjoint / b;
                adjoints[right] -= adjoint * v / b;
            }
            case PLUS_CONSTANT -> adjoints[left] += adjoint;
            case CONSTANT_MINUS, NEGATED -> adjoints[left] -= adjoint;
            case TIMES_CONSTANT -> adjoints[left] += adjoint * c;
            case OVER_CONSTANT -> adjoints[left] += adjoint / c;
            case CONSTANT_OVER -> adjoints[left] -= adjoint * v / a;
            case SQUARED -> adjoints[left] += adjoint * 2 * a;
            case SQUARE_ROOT -> adjoints[left] += adjoint * 0.5 / v;
            case SINE -> adjoints[left] += adjoint * Math.cos(a);
            case COSINE -> adjoints[left] -= adjoint * Math.sin(a);
            case ARC_SINE -> adjoints[left] += adjoint / Math.sqrt((1 - a) * (1 + a));
            case ARC_TANGENT -> adjoints[left] += adjoint / (1 + a * a);
            case EXPONENTIAL -> adjoints[left] += adjoint * v;
            case LOGARITHM -> adjoints[left] += adjoint / a;
            case POWER -> adjoints[left] += c == 0 ? 0 : adjoint * c * Math.pow(a, c - 1);
            case ABSOLUTE -> adjoints[left] += a >= 0 ? adjoint : -adjoint;
            case MINIMUM -> adjoints[a <= b ? left : right] += adjoint;
            case MAXIMUM -> adjoints[a >= b ? left : right] += adjoint;
        }
    }

    private double[] values(double[] inputValues) {
        if (inputValues.length != inputs.size()) {
            throw wrongCount("it was given", inputValues.length);
        }
        double[] values = Arrays.copyOf(inputValues, inputs.size() + steps.size());
        int number = inputs.size();
        for (Step step : steps) {
            double a = step.left() < 0 ? 0 : values[step.left()];
            double b = step.right() < 0 ? 0 : values[step.right()];
            values[number++] = step.operation().apply(a, b, step.constant());
        }
        return values;
    }

    /**
     * An interval that holds the result for all inputs taken from the box: the steps done one by one in interval
     * arithmetic. Where an input is used more than once it is wider than the truth; {@link #rangeOver} is not.
     *
     * @throws OutsideDomainException if a step may leave its domain somewhere in the box
     */
    public Interval over(Interval... box) {
        return new IntervalEvaluation(this, box).result();
    }

    /**
     * The range of the result over the box. If the interval gradient shows that the result only rises or only falls with
     * each input, the range runs from one corner to another: exact, however often an input is used. Otherwise the box
     * is split along the inputs in question (bounded work) and what is left unknown is inside the enclosure.
     *
     * @throws OutsideDomainException if a step may leave its domain somewhere in the box
     */
    public Range rangeOver(Interval... box) {
        return new RangeSearch(this).over(box);
    }

    /**
     * The result on a stretch of samples, bit for bit what {@link #at} gives for each.
     *
     * @param samples samples[input][sample], inputs in order of {@link #inputs()}
     * @param from    first sample, &gt;= 0
     * @param count   how many samples, &gt;= 0
     * @param out     out[from] to out[from + count - 1] are filled; may not be one of the inputs
     */
    public void samples(double[][] samples, int from, int count, double[] out) {
        samples(samples, from, count, out, new Workspace());
    }

    /**
     * As {@link #samples(double[][], int, int, double[])}, with scratch that is kept between calls. Fastest with
     * {@code from} 0 and {@code count} up to {@link Workspace#BLOCK}: then nothing is copied.
     */
    public void samples(double[][] samples, int from, int count, double[] out, Workspace workspace) {
        if (samples.length != inputs.size()) {
            throw wrongCount("it was given sample arrays for", samples.length);
        }
        if (from < 0 || count < 0 || from > out.length - count) {
            throw outside("the result", out.length, from, count);
        }
        for (int i = 0; i < samples.length; i++) {
            if (from > samples[i].length - count) {
                throw outside("the input " + inputs.get(i), samples[i].length, from, count);
            }
        }
        blocks.run(samples, from, count, out, workspace);
    }

    /**
     * The result on so many samples, drawn block by block, so that neither inputs nor scratch leave the cache and only the
     * results take memory.
     */
    public double[] sampled(int count, InputBlock source) {
        if (count < 0) {
            throw new IllegalArgumentException("the formula " + name + " is asked for " + count + " samples");
        }
        double[][] block = new double[inputs.size()][Workspace.BLOCK];
        double[] out = new double[Workspace.BLOCK];
        double[] all = new double[count];
        Workspace workspace = new Workspace();
        for (int done = 0; done < count; done += Workspace.BLOCK) {
            int size = Math.min(Workspace.BLOCK, count - done);
            source.fill(block, size);
            samples(block, 0, size, out, workspace);
            System.arraycopy(out, 0, all, done, size);
        }
        return all;
    }

    /** Draws the inputs of a formula, one block of samples after the other. */
    @FunctionalInterface
    public interface InputBlock {
        /**
         * Fills inputs[i][0] to inputs[i][count - 1] for every input, in order of {@link Formula#inputs()}. The arrays
         * are the same from call to call, at most {@link Workspace#BLOCK} long; nothing else may be kept of them.
         */
        void fill(double[][] inputs, int count);
    }

    private IllegalArgumentException wrongCount(String what, int found) {
        return new IllegalArgumentException(String.format(
                Locale.ROOT, "the formula %s has %d inputs %s, but %s %d", name, inputs.size(), inputs, what, found));
    }

    private IllegalArgumentException outside(String what, int length, int from, int count) {
        return new IllegalArgumentException(String.format(
                Locale.ROOT,
                "the formula %s is asked for %d samples from number %d, but the array of %s holds %d",
                name,
                count,
                from,
                what,
                length));
    }

    @Override
    public String toString() {
        return name + inputs + ": " + steps.size() + " steps";
    }

    /** Scratch for evaluating blocks of samples, for any formula. Belongs to one thread. */
    public static final class Workspace {
        /** Samples evaluated at a time. Measured: smaller blocks pay for loop starts, larger ones leave the first-level cache. */
        public static final int BLOCK = 512;

        private double[][] slots = new double[0][];

        /** At least so many arrays of {@link #BLOCK} doubles, kept from call to call. */
        double[][] slots(int wanted) {
            int had = slots.length;
            if (had < wanted) {
                slots = Arrays.copyOf(slots, wanted);
                for (int i = had; i < wanted; i++) {
                    slots[i] = new double[BLOCK];
                }
            }
            return slots;
        }
    }
}
