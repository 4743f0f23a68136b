package longthrow.core;

import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;

/** Formulas of plain numbers: in and out. */
public final class Plain {
    private Plain() {}

    /** A number as the formulas take it. */
    public static Expression number(double value) {
        return Expression.constant(value);
    }

    /** What a formula without inputs comes to. */
    public static double value(Expression expression) {
        return Formula.of("plain", expression).at();
    }
}
