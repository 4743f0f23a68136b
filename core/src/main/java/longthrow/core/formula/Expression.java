package longthrow.core.formula;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * A value in a formula being written: an input, a constant, or something computed from other expressions. Immutable;
 * an expression used in several places is evaluated once.
 *
 * <pre>{@code
 * Expression bore = Expression.input("bore");
 * Expression swept = bore.squared().times(Math.PI / 4).times(Expression.input("stroke"));
 * }</pre>
 *
 * Record it with {@link Formula#of} to evaluate it.
 */
public final class Expression {
    private final Operation operation;
    private final List<Expression> operands;
    private final double constant;
    private final String name;

    private Expression(Operation operation, double constant, String name, List<Expression> operands) {
        this.operation = operation;
        this.constant = constant;
        this.name = name;
        this.operands = operands;
    }

    /** The input of this name; the same name is the same input wherever it is written. */
    public static Expression input(String name) {
        if (name.isBlank()) {
            throw new IllegalArgumentException("an input of a formula has no name; give the key of the quantity it is");
        }
        return new Expression(Operation.INPUT, 0, name, List.of());
    }

    /** A finite constant. */
    public static Expression constant(double value) {
        return new Expression(Operation.CONSTANT, finite(value), "", List.of());
    }

    /** This + other. */
    public Expression plus(Expression other) {
        if (other.isConstant()) {
            return plus(other.constant);
        }
        return isConstant() ? other.plus(constant) : node(Operation.PLUS, other);
    }

    /** This + value. */
    public Expression plus(double value) {
        return node(Operation.PLUS_CONSTANT, value);
    }

    /** This - other. */
    public Expression minus(Expression other) {
        if (other.isConstant()) {
            return plus(-other.constant);
        }
        return isConstant() ? other.node(Operation.CONSTANT_MINUS, constant) : node(Operation.MINUS, other);
    }

    /** This - value. */
    public Expression minus(double value) {
        return plus(-value);
    }

    /** This times other; an expression times itself is its square, which an interval then knows to be positive. */
    public Expression times(Expression other) {
        if (other == this) {
            return squared();
        }
        if (other.isConstant()) {
            return times(other.constant);
        }
        return isConstant() ? other.times(constant) : node(Operation.TIMES, other);
    }

    /** This times value. */
    public Expression times(double value) {
        return node(Operation.TIMES_CONSTANT, value);
    }

    /** This / other. */
    public Expression dividedBy(Expression other) {
        if (other.isConstant()) {
            return dividedBy(other.constant);
        }
        return isConstant() ? other.node(Operation.CONSTANT_OVER, constant) : node(Operation.OVER, other);
    }

    /** This / value, value not zero. */
    public Expression dividedBy(double value) {
        if (value == 0) {
            throw new IllegalArgumentException("a formula divides by the constant 0; give a divisor that is not zero");
        }
        return node(Operation.OVER_CONSTANT, value);
    }

    /** Minus this. */
    public Expression negated() {
        return node(Operation.NEGATED);
    }

    /** This squared. */
    public Expression squared() {
        return node(Operation.SQUARED);
    }

    /** Half of this, exactly. */
    public Expression half() {
        return times(0.5);
    }

    /** Square root; this >= 0. */
    public Expression squareRoot() {
        return node(Operation.SQUARE_ROOT);
    }

    /** Sine of this angle [rad]. */
    public Expression sine() {
        return node(Operation.SINE);
    }

    /** Cosine of this angle [rad]. */
    public Expression cosine() {
        return node(Operation.COSINE);
    }

    /** The angle [rad], -pi/2 to pi/2, whose sine this is; this from -1 to 1. */
    public Expression arcSine() {
        return node(Operation.ARC_SINE);
    }

    /** The angle [rad], -pi/2 to pi/2, whose tangent this is. */
    public Expression arcTangent() {
        return node(Operation.ARC_TANGENT);
    }

    /** e to the power of this. */
    public Expression exponential() {
        return node(Operation.EXPONENTIAL);
    }

    /** Natural logarithm; this > 0. */
    public Expression logarithm() {
        return node(Operation.LOGARITHM);
    }

    /** This to a constant power; with a power that is not whole, this >= 0. */
    public Expression power(double exponent) {
        if (exponent == 1) {
            return this;
        }
        return exponent == 2 ? squared() : node(Operation.POWER, exponent);
    }

    /** |this|; has a kink at zero. */
    public Expression absolute() {
        return node(Operation.ABSOLUTE);
    }

    /** The smallest of all; has a kink where two are equally small. */
    public static Expression min(Expression first, Expression second, Expression... more) {
        return chain(Operation.MINIMUM, first, second, more);
    }

    /** The largest of all; has a kink where two are equally large. */
    public static Expression max(Expression first, Expression second, Expression... more) {
        return chain(Operation.MAXIMUM, first, second, more);
    }

    /** The terms added from first to last. */
    public static Expression sum(Expression first, Expression... more) {
        Expression sum = first;
        for (Expression term : more) {
            sum = sum.plus(term);
        }
        return sum;
    }

    /**
     * This expression with inputs replaced, so that formulas are composed of others. Names that are not mentioned stay
     * inputs. The replacements are taken as they stand: an input inside a replacement is not replaced again.
     */
    public Expression substitute(Map<String, Expression> replacements) {
        IdentityHashMap<Expression, Expression> done = new IdentityHashMap<>();
        for (Expression node : inOrder()) {
            if (node.operation == Operation.INPUT) {
                done.put(node, replacements.getOrDefault(node.name, node));
            } else {
                List<Expression> replaced = new ArrayList<>(node.operands.size());
                boolean same = true;
                for (Expression operand : node.operands) {
                    Expression now = image(done, operand);
                    replaced.add(now);
                    same &= now == operand;
                }
                done.put(node, same ? node : node.withOperands(replaced));
            }
        }
        return image(done, this);
    }

    /**
     * The smooth expressions that this one follows, now one, now another: each absolute value, minimum and maximum replaced by one of the operands it
     * can be, in every combination. This alone where nothing bends; empty where there are more than {@code most}.
     */
    List<Expression> smoothPieces(int most) {
        IdentityHashMap<Expression, List<Expression>> pieces = new IdentityHashMap<>();
        for (Expression node : inOrder()) {
            List<Expression> made = new ArrayList<>();
            if (node.operands.isEmpty()) {
                made.add(node);
            } else {
                for (Expression left : piecesOf(pieces, node.operands.get(0))) {
                    switch (node.operation) {
                        case ABSOLUTE -> made.addAll(List.of(left, left.negated()));
                        case MINIMUM, MAXIMUM -> made.add(left);
                        default -> {
                            if (node.operands.size() == 1) {
                                made.add(node.withOperands(List.of(left)));
                            } else {
                                for (Expression right : piecesOf(pieces, node.operands.get(1))) {
                                    made.add(node.withOperands(List.of(left, right)));
                                }
                            }
                        }
                    }
                }
                if (node.operation == Operation.MINIMUM || node.operation == Operation.MAXIMUM) {
                    made.addAll(piecesOf(pieces, node.operands.get(1)));
                }
            }
            if (made.size() > most) {
                return List.of();
            }
            pieces.put(node, made);
        }
        return piecesOf(pieces, this);
    }

    private static List<Expression> piecesOf(IdentityHashMap<Expression, List<Expression>> pieces, Expression node) {
        return java.util.Objects.requireNonNull(pieces.get(node), "operand met before it was built");
    }

    private static Expression image(IdentityHashMap<Expression, Expression> done, Expression node) {
        Expression image = done.get(node);
        if (image == null) {
            throw new IllegalStateException("operand met before it was built: " + node);
        }
        return image;
    }

    /** The same operation on other operands, through the public doors so that constants fold as if written so. */
    private Expression withOperands(List<Expression> operands) {
        Expression a = operands.get(0);
        return switch (operation) {
            case INPUT, CONSTANT -> this;
            case PLUS -> a.plus(operands.get(1));
            case MINUS -> a.minus(operands.get(1));
            case TIMES -> a.times(operands.get(1));
            case OVER -> a.dividedBy(operands.get(1));
            case MINIMUM, MAXIMUM -> a.node(operation, operands.get(1));
            case PLUS_CONSTANT, CONSTANT_MINUS, TIMES_CONSTANT, OVER_CONSTANT, CONSTANT_OVER, POWER ->
                a.node(operation, constant);
            case NEGATED, SQUARED, SQUARE_ROOT, SINE, COSINE, ARC_SINE, ARC_TANGENT, EXPONENTIAL, LOGARITHM, ABSOLUTE ->
                a.node(operation);
        };
    }

    /**
     * Every expression this one rests on, each once (by identity), operands before their users, left before right; this
     * comes last. Iterative, so that a chain of any length is walked without exhausting the stack.
     */
    List<Expression> inOrder() {
        List<Expression> order = new ArrayList<>();
        IdentityHashMap<Expression, Boolean> finished = new IdentityHashMap<>();
        Deque<Expression> open = new ArrayDeque<>();
        open.push(this);
        while (!open.isEmpty()) {
            Expression node = open.peek();
            Boolean state = finished.get(node);
            if (state == null) {
                finished.put(node, false);
                for (int i = node.operands.size() - 1; i >= 0; i--) {
                    if (!finished.containsKey(node.operands.get(i))) {
                        open.push(node.operands.get(i));
                    }
                }
            } else {
                open.pop();
                if (!state) {
                    finished.put(node, true);
                    order.add(node);
                }
            }
        }
        return order;
    }

    Operation operation() {
        return operation;
    }

    List<Expression> operands() {
        return operands;
    }

    double constantValue() {
        return constant;
    }

    String name() {
        return name;
    }

    private boolean isConstant() {
        return operation == Operation.CONSTANT;
    }

    private Expression node(Operation made) {
        return node(made, 0);
    }

    private Expression node(Operation made, double value) {
        finite(value);
        if (isConstant()) {
            return constant(made.apply(constant, 0, value));
        }
        return new Expression(made, value, "", List.of(this));
    }

    private Expression node(Operation made, Expression other) {
        if (isConstant() && other.isConstant()) {
            return constant(made.apply(constant, other.constant, 0));
        }
        return new Expression(made, 0, "", List.of(this, other));
    }

    private static Expression chain(Operation made, Expression first, Expression second, Expression[] more) {
        Expression chain = first.node(made, second);
        for (Expression next : more) {
            chain = chain.node(made, next);
        }
        return chain;
    }

    private static double finite(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(
                    "a constant of a formula is " + value + "; constants must be finite numbers");
        }
        return value;
    }

    /** The top of the expression; operands that are computed themselves show as dots. */
    @Override
    public String toString() {
        return switch (operation) {
            case INPUT -> name;
            case CONSTANT -> Double.toString(constant);
            default -> operation + "(...)";
        };
    }
}
