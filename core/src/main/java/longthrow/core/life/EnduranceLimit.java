package longthrow.core.life;

import longthrow.core.formula.Expression;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Require;

/**
 * From a polished specimen to the part: Marin's factors. Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 6-9 and table 6-2;
 * from memory. Strengths [Pa].
 */
public final class EnduranceLimit {
    /** Endurance limit over ultimate strength of steel, turned to and fro; Shigley eq. (6-8). */
    public static final double STEEL_RATIO = 0.5;

    /** Above it steel gains no more [Pa]: 700 MPa; Shigley eq. (6-8). */
    public static final double STEEL_CEILING = 700e6;

    /** Scatter of endurance limits as a share of their mean; Shigley section 6-9, after Haugen. */
    public static final double SCATTER = 0.08;

    private EnduranceLimit() {}

    /** How the surface was left: a factor a S^b with S in MPa, never above 1. Steel; for other metals it is a guide. */
    public enum Finish {
        GROUND("ground", 1.58, -0.085),
        MACHINED("machined or cold drawn", 4.51, -0.265),
        HOT_ROLLED("hot rolled", 57.7, -0.718),
        AS_FORGED("as forged or as cast", 272, -0.995);

        private final String label;
        private final double factor;
        private final double exponent;

        Finish(String label, double factor, double exponent) {
            this.label = label;
            this.factor = factor;
            this.exponent = exponent;
        }

        public String label() {
            return label;
        }

        /** Factor for an ultimate strength. */
        public Expression of(Expression ultimate) {
            Expression raw = ultimate.dividedBy(1e6).power(exponent).times(factor);
            return Expression.min(raw, Expression.constant(1));
        }
    }

    /** How it is loaded; Shigley eq. (6-26). */
    public enum Loading {
        BENDING(1),
        AXIAL(0.85),
        TORSION(0.59);

        private final double factor;

        Loading(double factor) {
            this.factor = factor;
        }

        public double factor() {
            return factor;
        }
    }

    /** Of a polished steel specimen. */
    public static Expression ofSteel(Expression ultimate) {
        return Expression.min(ultimate.times(STEEL_RATIO), Expression.constant(STEEL_CEILING));
    }

    /**
     * Size factor in bending and torsion of a round bar; 1 for axial loads. Shigley eq. (6-20), 2.79 to 254 mm; below that it counts as the smallest.
     * @param diameter turning, or of the round bar with as much highly stressed metal: 0.808 sqrt(h b) for a rectangle [m]
     */
    public static Expression size(Expression diameter) {
        Expression millimetres = Expression.max(diameter.times(1e3), Expression.constant(2.79));
        Expression small = millimetres.power(-0.107).times(1.24);
        Expression large = millimetres.power(-0.157).times(1.51);
        return Expression.min(small, large);
    }

    /**
     * So that this share of parts is better than what is reckoned: 1 - 0.08 z. 0.897 for 90 %, 0.814 for 99 %, 0.753 for 99.9 % (Shigley table 6-5).
     * @param reliability from 0.5 up to below 1
     */
    public static double reliability(double reliability) {
        Require.within("reliability", reliability, 0.5, 0.999_999_9);
        return 1 - SCATTER * StudentT.quantile(reliability, Double.POSITIVE_INFINITY);
    }
}
