package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A straight bar squeezed until it gives: Euler where it is slender, J. B. Johnson's parabola where it is stout. Budynas and Nisbett, Shigley's
 * Mechanical Engineering Design, sections 4-12 and 4-13; from memory. Loads [N]; holds for a load through the middle of a straight bar.
 * @param area     [m2]
 * @param gyration radius of gyration for the plane it bends in [m]
 * @param length   between the ends [m]
 * @param ends     constant of the ends: {@link #PINNED}, {@link #FIXED}
 * @param modulus  Young's [Pa]
 * @param yield    strength in compression [Pa]
 */
public record Column(
        Expression area, Expression gyration, Expression length, double ends, Expression modulus, Expression yield) {
    /** Both ends free to turn: a rod in the plane it swings in, a pushrod. */
    public static final double PINNED = 1;

    /** Both ends held straight: a rod sideways, by pin and crankpin. 4 in theory; sure only with stiff bearings, so Shigley recommends 1.2 where it matters. */
    public static final double FIXED = 4;

    /** Length over radius of gyration. */
    public Expression slenderness() {
        return length.dividedBy(gyration);
    }

    /** Slenderness at which both curves meet, at half the yield strength. */
    public Expression transition() {
        return modulus.times(2 * Math.PI * Math.PI * ends).dividedBy(yield).squareRoot();
    }

    /** Euler's load. */
    public Expression euler() {
        return area.times(modulus)
                .times(ends * Math.PI * Math.PI)
                .dividedBy(slenderness().squared());
    }

    /** Johnson's load; nonsense, even below 0, for a slender bar. */
    public Expression johnson() {
        return johnson(slenderness());
    }

    private Expression johnson(Expression slenderness) {
        Expression square = yield.times(slenderness).dividedBy(2 * Math.PI).squared();
        return area.times(yield.minus(square.dividedBy(modulus.times(ends))));
    }

    /** The load it gives at: Johnson's up to the transition, Euler's beyond. The curves touch there, so this has no step and no kink in its slope. */
    public Expression critical() {
        Expression stout = johnson(Expression.min(slenderness(), transition()));
        Expression beyond = transition().dividedBy(Expression.max(slenderness(), transition()));
        return stout.times(beyond.squared());
    }

    /** Rankine and Gordon's load with their constant by Euler: below both others, for comparison. */
    public Expression rankine() {
        Expression flexible = yield.dividedBy(modulus.times(ends * Math.PI * Math.PI))
                .times(slenderness().squared());
        return area.times(yield).dividedBy(flexible.plus(1));
    }
}
