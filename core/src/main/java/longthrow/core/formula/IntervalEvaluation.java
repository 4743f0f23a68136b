package longthrow.core.formula;

import java.util.Arrays;
import java.util.List;

/** A formula evaluated over one box: every value as an interval, and backward the interval gradient. */
final class IntervalEvaluation {
    private final int inputs;
    private final List<Step> steps;
    private final int resultNumber;
    private final Interval[] values;
    private boolean continuous = true;

    IntervalEvaluation(Formula formula, Interval[] box) {
        this.inputs = formula.inputs().size();
        this.steps = formula.steps();
        this.resultNumber = formula.result();
        if (box.length != inputs) {
            throw new IllegalArgumentException("the formula " + formula.name() + " has " + inputs + " inputs "
                    + formula.inputs() + ", but the box has " + box.length);
        }
        this.values = Arrays.copyOf(box, inputs + steps.size());
        try {
            for (int s = 0; s < steps.size(); s++) {
                values[inputs + s] = value(steps.get(s));
            }
        } catch (OutsideDomainException e) {
            throw new OutsideDomainException(formula.name(), e);
        }
    }

    Interval result() {
        return values[resultNumber];
    }

    /** Whether no step divided by an interval that holds zero: only then does the gradient say anything. */
    boolean isContinuous() {
        return continuous;
    }

    private Interval value(Step step) {
        Interval a = step.left() < 0 ? Interval.ZERO : values[step.left()];
        Interval b = step.right() < 0 ? Interval.ZERO : values[step.right()];
        double c = step.constant();
        return switch (step.operation()) {
            case INPUT -> throw new IllegalStateException("an input is given, not computed");
            case CONSTANT -> Interval.point(c);
            case PLUS -> a.plus(b);
            case MINUS -> step.left() == step.right() && a.isBounded() ? Interval.ZERO : a.minus(b);
            case TIMES -> a.times(b);
            case OVER -> a.dividedBy(notZero(b));
            case PLUS_CONSTANT -> a.plus(Interval.point(c));
            case CONSTANT_MINUS -> Interval.point(c).minus(a);
            case TIMES_CONSTANT -> a.times(Interval.point(c));
            case OVER_CONSTANT -> a.dividedBy(Interval.point(c));
            case CONSTANT_OVER -> Interval.point(c).dividedBy(notZero(a));
            case NEGATED -> a.negated();
            case SQUARED -> a.squared();
            case SQUARE_ROOT -> a.squareRoot();
            case SINE -> a.sine();
            case COSINE -> a.cosine();
            case ARC_SINE -> a.arcSine();
            case ARC_TANGENT -> a.arcTangent();
            case EXPONENTIAL -> a.exponential();
            case LOGARITHM -> notZero(a).logarithm();
            case POWER -> (c < 0 ? notZero(a) : a).power(c);
            case ABSOLUTE -> a.absolute();
            case MINIMUM -> a.min(b);
            case MAXIMUM -> a.max(b);
        };
    }

    private Interval notZero(Interval divisor) {
        continuous &= !divisor.contains(0);
        return divisor;
    }

    /**
     * Intervals that hold every derivative of the result by each input in the box; at kinks, every slope between the
     * two sides (the generalised gradient of Clarke), so that a sign kept throughout still means rising or falling.
     */
    Interval[] gradient() {
        Interval[] adjoints = new Interval[values.length];
        Arrays.fill(adjoints, Interval.ZERO);
        adjoints[resultNumber] = Interval.ONE;
        for (int s = steps.size() - 1; s >= 0; s--) {
            Step step = steps.get(s);
            Interval adjoint = adjoints[inputs + s];
            boolean idle = adjoint.lo() == 0 && adjoint.hi() == 0;
            if (!idle && step.left() >= 0) {
                add(adjoints, step.left(), adjoint.times(leftSlope(step, values[inputs + s])));
                if (step.right() >= 0) {
                    add(adjoints, step.right(), adjoint.times(rightSlope(step, values[inputs + s])));
                }
            }
        }
        return Arrays.copyOf(adjoints, inputs);
    }

    private static void add(Interval[] adjoints, int value, Interval more) {
        adjoints[value] = adjoints[value].plus(more);
    }

    private Interval leftSlope(Step step, Interval v) {
        Interval a = values[step.left()];
        double c = step.constant();
        return switch (step.operation()) {
            case INPUT, CONSTANT -> Interval.ZERO;
            case PLUS, MINUS, PLUS_CONSTANT -> Interval.ONE;
            case TIMES -> values[step.right()];
            case OVER -> Interval.ONE.dividedBy(values[step.right()]);
            case CONSTANT_MINUS, NEGATED -> Interval.point(-1);
            case TIMES_CONSTANT -> Interval.point(c);
            case OVER_CONSTANT -> Interval.ONE.dividedBy(Interval.point(c));
            case CONSTANT_OVER -> v.dividedBy(a).negated();
            case SQUARED -> a.times(Interval.point(2));
            case SQUARE_ROOT -> Interval.point(0.5).dividedBy(v);
            case SINE -> a.cosine();
            case COSINE -> a.sine().negated();
            case ARC_SINE ->
                Interval.ONE.dividedBy(Interval.ONE
                        .minus(a)
                        .times(Interval.ONE.plus(a))
                        .max(Interval.ZERO)
                        .squareRoot());
            case ARC_TANGENT -> Interval.ONE.dividedBy(a.squared().plus(Interval.ONE));
            case EXPONENTIAL -> v;
            case LOGARITHM -> Interval.ONE.dividedBy(a);
            case POWER -> c == 0 ? Interval.ZERO : a.power(c - 1).times(Interval.point(c));
            case ABSOLUTE -> a.lo() >= 0 ? Interval.ONE : a.hi() <= 0 ? Interval.point(-1) : Interval.ONE_OR_MINUS_ONE;
            case MINIMUM -> leftIsChosen(a, values[step.right()]);
            case MAXIMUM -> leftIsChosen(values[step.right()], a);
        };
    }

    private Interval rightSlope(Step step, Interval v) {
        Interval b = values[step.right()];
        return switch (step.operation()) {
            case PLUS -> Interval.ONE;
            case MINUS -> Interval.point(-1);
            case TIMES -> values[step.left()];
            case OVER -> v.dividedBy(b).negated();
            case MINIMUM -> leftIsChosen(b, values[step.left()]);
            case MAXIMUM -> leftIsChosen(values[step.left()], b);
            default -> throw new IllegalStateException(step + " reads no second value");
        };
    }

    /** Slope of min(smaller, larger) by the first: 1 where it is surely the smaller, 0 where surely not, else between. */
    private static Interval leftIsChosen(Interval first, Interval second) {
        if (first.hi() < second.lo()) {
            return Interval.ONE;
        }
        return second.hi() < first.lo() ? Interval.ZERO : Interval.ZERO_TO_ONE;
    }
}
