package longthrow.core.formula;

/**
 * The elementary steps a formula is made of. {@code a} and {@code b} are earlier values, {@code c} is a constant kept
 * in the step.
 */
public enum Operation {
    /** A named input. Never a step of its own: inputs stand in front of the steps. */
    INPUT(0),
    /** c. */
    CONSTANT(0),
    /** a + b. */
    PLUS(2),
    /** a - b. */
    MINUS(2),
    /** a b. */
    TIMES(2),
    /** a / b. */
    OVER(2),
    /** a + c. */
    PLUS_CONSTANT(1),
    /** c - a. */
    CONSTANT_MINUS(1),
    /** c a. */
    TIMES_CONSTANT(1),
    /** a / c. */
    OVER_CONSTANT(1),
    /** c / a. */
    CONSTANT_OVER(1),
    /** -a. */
    NEGATED(1),
    /** a a. */
    SQUARED(1),
    /** Square root, a >= 0. */
    SQUARE_ROOT(1),
    /** Sine, a in radians. */
    SINE(1),
    /** Cosine, a in radians. */
    COSINE(1),
    /** Inverse sine [rad], -1 <= a <= 1. */
    ARC_SINE(1),
    /** Inverse tangent [rad]. */
    ARC_TANGENT(1),
    /** e to the a. */
    EXPONENTIAL(1),
    /** Natural logarithm, a > 0. */
    LOGARITHM(1),
    /** a to the constant power c. */
    POWER(1),
    /** |a|. */
    ABSOLUTE(1),
    /** The smaller of a and b. */
    MINIMUM(2),
    /** The larger of a and b. */
    MAXIMUM(2);

    private final int operands;

    Operation(int operands) {
        this.operands = operands;
    }

    /** How many earlier values the step reads: 0, 1 or 2. */
    public int operands() {
        return operands;
    }

    /** Whether the derivative jumps somewhere although the value does not. */
    public boolean hasKink() {
        return this == ABSOLUTE || this == MINIMUM || this == MAXIMUM;
    }

    /** The step on plain numbers. The block kernels do the same arithmetic in the same order. */
    double apply(double a, double b, double c) {
        return switch (this) {
            case INPUT -> throw new IllegalStateException("an input is given, not computed");
            case CONSTANT -> c;
            case PLUS -> a + b;
            case MINUS -> a - b;
            case TIMES -> a * b;
            case OVER -> a / b;
            case PLUS_CONSTANT -> a + c;
            case CONSTANT_MINUS -> c - a;
            case TIMES_CONSTANT -> a * c;
            case OVER_CONSTANT -> a / c;
            case CONSTANT_OVER -> c / a;
            case NEGATED -> -a;
            case SQUARED -> a * a;
            case SQUARE_ROOT -> Math.sqrt(a);
            case SINE -> Math.sin(a);
            case COSINE -> Math.cos(a);
            case ARC_SINE -> Math.asin(a);
            case ARC_TANGENT -> Math.atan(a);
            case EXPONENTIAL -> Math.exp(a);
            case LOGARITHM -> Math.log(a);
            case POWER -> Math.pow(a, c);
            case ABSOLUTE -> Math.abs(a);
            case MINIMUM -> Math.min(a, b);
            case MAXIMUM -> Math.max(a, b);
        };
    }
}
