package longthrow.core.formula;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * The steps of a formula laid out for blocks of samples: which scratch array each value lives in. An array is given to
 * the next value as soon as its own was used for the last time, most recently used first, so that the working set stays
 * in the first-level cache. Each step is one plain loop over whole arrays with one common index, which the virtual
 * machine's compiler turns into vector instructions.
 */
final class BlockProgram {
    private static final int NONE = -1;

    private final int inputs;
    private final Step[] steps;
    private final int result;
    /** slot[value]: scratch array of each value; inputs have one only to be copied to. */
    private final int[] slot;
    /** loads[s]: inputs read for the first time by step s; copied just before it if they have to be. */
    private final int[][] loads;

    private final int slots;

    private BlockProgram(int inputs, Step[] steps, int result) {
        this.inputs = inputs;
        this.steps = steps;
        this.result = result;
        this.slot = new int[inputs + steps.length];
        this.loads = new int[steps.length][];
        this.slots = allocate();
    }

    static BlockProgram of(int inputs, List<Step> steps, int result) {
        return new BlockProgram(inputs, steps.toArray(Step[]::new), result);
    }

    private int allocate() {
        int[] lastUse = new int[slot.length];
        Arrays.fill(lastUse, NONE);
        for (int s = 0; s < steps.length; s++) {
            use(steps[s].left(), s, lastUse);
            use(steps[s].right(), s, lastUse);
        }
        Arrays.fill(slot, NONE);
        Deque<Integer> free = new ArrayDeque<>();
        int made = 0;
        for (int s = 0; s < steps.length; s++) {
            int left = steps[s].left();
            int right = steps[s].right() == left ? NONE : steps[s].right();
            int[] loaded = Arrays.stream(new int[] {left, right})
                    .filter(value -> value != NONE && value < inputs && slot[value] == NONE)
                    .toArray();
            loads[s] = loaded;
            for (int value : loaded) {
                slot[value] = free.isEmpty() ? made++ : free.pop();
            }
            release(left, s, lastUse, free);
            release(right, s, lastUse, free);
            slot[inputs + s] = free.isEmpty() ? made++ : free.pop();
        }
        return made;
    }

    private static void use(int value, int step, int[] lastUse) {
        if (value != NONE) {
            lastUse[value] = step;
        }
    }

    private void release(int value, int step, int[] lastUse, Deque<Integer> free) {
        if (value != NONE && lastUse[value] == step && value != result) {
            free.push(slot[value]);
        }
    }

    void run(double[][] samples, int from, int count, double[] out, Formula.Workspace workspace) {
        if (result < inputs) {
            System.arraycopy(samples[result], from, out, from, count);
            return;
        }
        double[][] scratch = workspace.slots(slots);
        double[][] where = new double[slot.length][];
        int last = inputs + steps.length - 1;
        for (int done = 0; done < count; done += Formula.Workspace.BLOCK) {
            int start = from + done;
            int size = Math.min(Formula.Workspace.BLOCK, count - done);
            boolean inPlace = start == 0;
            for (int s = 0; s < steps.length; s++) {
                Step step = steps[s];
                for (int input : loads[s]) {
                    if (inPlace) {
                        where[input] = samples[input];
                    } else {
                        where[input] = scratch[slot[input]];
                        System.arraycopy(samples[input], start, where[input], 0, size);
                    }
                }
                int number = inputs + s;
                where[number] = inPlace && number == last ? out : scratch[slot[number]];
                double[] a = step.left() == NONE ? where[number] : where[step.left()];
                double[] b = step.right() == NONE ? a : where[step.right()];
                run(step, a, b, where[number], size);
            }
            if (!inPlace || result != last) {
                System.arraycopy(where[result], 0, out, start, size);
            }
        }
    }

    private static void run(Step step, double[] a, double[] b, double[] to, int count) {
        double c = step.constant();
        switch (step.operation()) {
            case INPUT -> throw new IllegalStateException("an input is given, not computed");
            case CONSTANT -> Arrays.fill(to, 0, count, c);
            case PLUS -> plus(a, b, to, count);
            case MINUS -> minus(a, b, to, count);
            case TIMES -> times(a, b, to, count);
            case OVER -> over(a, b, to, count);
            case PLUS_CONSTANT -> plusConstant(a, c, to, count);
            case CONSTANT_MINUS -> constantMinus(a, c, to, count);
            case TIMES_CONSTANT -> timesConstant(a, c, to, count);
            case OVER_CONSTANT -> overConstant(a, c, to, count);
            case CONSTANT_OVER -> constantOver(a, c, to, count);
            case NEGATED -> negated(a, to, count);
            case SQUARED -> times(a, a, to, count);
            case SQUARE_ROOT -> squareRoot(a, to, count);
            case ABSOLUTE -> absolute(a, to, count);
            case MINIMUM -> minimum(a, b, to, count);
            case MAXIMUM -> maximum(a, b, to, count);
            case SINE, COSINE, ARC_SINE, ARC_TANGENT, EXPONENTIAL, LOGARITHM, POWER ->
                byNumber(step.operation(), a, c, to, count);
        }
    }

    private static void plus(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] + b[k];
        }
    }

    private static void minus(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] - b[k];
        }
    }

    private static void times(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] * b[k];
        }
    }

    private static void over(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] / b[k];
        }
    }

    private static void plusConstant(double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] + c;
        }
    }

    private static void constantMinus(double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = c - a[k];
        }
    }

    private static void timesConstant(double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] * c;
        }
    }

    private static void overConstant(double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = a[k] / c;
        }
    }

    private static void constantOver(double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = c / a[k];
        }
    }

    private static void negated(double[] a, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = -a[k];
        }
    }

    private static void squareRoot(double[] a, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = Math.sqrt(a[k]);
        }
    }

    private static void absolute(double[] a, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = Math.abs(a[k]);
        }
    }

    private static void minimum(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = Math.min(a[k], b[k]);
        }
    }

    private static void maximum(double[] a, double[] b, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = Math.max(a[k], b[k]);
        }
    }

    /** The library functions have no vector form: one at a time. */
    private static void byNumber(Operation operation, double[] a, double c, double[] to, int count) {
        for (int k = 0; k < count; k++) {
            to[k] = operation.apply(a[k], 0, c);
        }
    }
}
