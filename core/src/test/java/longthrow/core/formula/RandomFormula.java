package longthrow.core.formula;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** Formulas made at random for properties that must hold for all: every operation, always inside its domain. */
final class RandomFormula {
    private RandomFormula() {}

    /** A formula of inputs x0, x1 ... whose values are meant to lie between 0.5 and 3. */
    static Formula of(SplittableRandom random, int inputs, int steps, boolean kinks) {
        List<Expression> made = new ArrayList<>();
        for (int i = 0; i < inputs; i++) {
            made.add(Expression.input("x" + i));
        }
        for (int s = 0; s < steps; s++) {
            Expression a = made.get(random.nextInt(made.size()));
            Expression b = made.get(random.nextInt(made.size()));
            made.add(step(random.nextInt(kinks ? 24 : 21), a, b, random.nextDouble(0.5, 2)));
        }
        Expression sum = made.get(made.size() - 1);
        for (int i = 0; i < inputs; i++) {
            sum = sum.plus(made.get(i).times(made.get(made.size() - 1 - i)));
        }
        return Formula.of("random", sum);
    }

    private static Expression step(int kind, Expression a, Expression b, double c) {
        Expression positive = a.squared().plus(c);
        return switch (kind) {
            case 0 -> a.plus(b);
            case 1 -> a.minus(b);
            case 2 -> a.times(b).times(0.3);
            case 3 -> a.dividedBy(b.squared().plus(c));
            case 4 -> a.plus(c);
            case 5 -> Expression.constant(c).minus(a);
            case 6 -> a.minus(c);
            case 7 -> a.times(c);
            case 8 -> a.dividedBy(c);
            case 9 -> Expression.constant(c).dividedBy(positive);
            case 10 -> a.negated();
            case 11 -> a.half().squared();
            case 12 -> positive.squareRoot();
            case 13 -> a.sine();
            case 14 -> a.cosine();
            case 15 -> a.sine().times(0.9).arcSine();
            case 16 -> a.arcTangent();
            case 17 -> a.sine().exponential();
            case 18 -> positive.logarithm();
            case 19 -> positive.power(c - 1.2);
            case 20 -> a.cosine().power(3);
            case 21 -> a.absolute();
            case 22 -> Expression.min(a, b, Expression.constant(c));
            default -> Expression.max(a, b);
        };
    }

    static double[] point(SplittableRandom random, Interval... box) {
        return Arrays.stream(box)
                .mapToDouble(side -> side.isPoint() ? side.lo() : random.nextDouble(side.lo(), side.hi()))
                .toArray();
    }

    static Interval[] box(SplittableRandom random, int inputs, double widest) {
        Interval[] box = new Interval[inputs];
        for (int i = 0; i < inputs; i++) {
            double lo = random.nextDouble(0.5, 2.5);
            box[i] = new Interval(lo, lo + random.nextDouble(widest));
        }
        return box;
    }
}
