package longthrow.core.reduce;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import longthrow.core.quantity.Fraction;

/**
 * Weights by which a window of evenly spaced samples gives the value or a slope, at its middle, of the polynomial that fits it best. Worked out in whole numbers, so
 * exact. Savitzky and Golay, Anal. Chem. 36 (1964) 1627, corrected by Steinier et al. (1972).
 */
public final class SavitzkyGolay {
    private final int half;
    private final List<Fraction> weights;

    private SavitzkyGolay(int half, List<Fraction> weights) {
        this.half = half;
        this.weights = List.copyOf(weights);
    }

    /**
     * Works them out.
     * @param half       samples on each side of the middle, at least 1
     * @param order      of the polynomial, 0 to twice half
     * @param derivative 0 for the value, 1 for the slope per sample, at most the order
     * @throws IllegalArgumentException where these do not go together
     */
    public static SavitzkyGolay of(int half, int order, int derivative) {
        if (half < 1 || order < 0 || order > 2 * half || derivative < 0 || derivative > order) {
            throw new IllegalArgumentException("half " + half + ", order " + order + ", derivative " + derivative
                    + ": want half of 1 or more, order of 0 to twice half, derivative of 0 to the order");
        }
        Fraction[] row = rowOfInverse(half, order, derivative);
        Fraction factorial = Fraction.ONE;
        for (int k = 2; k <= derivative; k++) {
            factorial = factorial.times(Fraction.of(k));
        }
        List<Fraction> weights = new ArrayList<>();
        for (int i = -half; i <= half; i++) {
            Fraction weight = Fraction.ZERO;
            Fraction power = Fraction.ONE;
            for (int k = 0; k <= order; k++) {
                weight = weight.plus(row[k].times(power));
                power = power.times(Fraction.of(i));
            }
            weights.add(weight.times(factorial));
        }
        return new SavitzkyGolay(half, weights);
    }

    /** One row of the inverse of the matrix of sums of powers: that matrix solved against a unit vector, by elimination. */
    private static Fraction[] rowOfInverse(int half, int order, int wanted) {
        int n = order + 1;
        Fraction[][] rows = new Fraction[n][n + 1];
        for (int r = 0; r < n; r++) {
            for (int c = 0; c < n; c++) {
                rows[r][c] = sumOfPowers(half, r + c);
            }
            rows[r][n] = r == wanted ? Fraction.ONE : Fraction.ZERO;
        }
        for (int pivot = 0; pivot < n; pivot++) { // sums of powers make a positive definite matrix: no pivot is zero
            Fraction over = rows[pivot][pivot];
            for (int c = pivot; c <= n; c++) {
                rows[pivot][c] = rows[pivot][c].over(over);
            }
            for (int r = 0; r < n; r++) {
                Fraction factor = rows[r][pivot];
                if (r != pivot && factor.signum() != 0) {
                    for (int c = pivot; c <= n; c++) {
                        rows[r][c] = rows[r][c].minus(factor.times(rows[pivot][c]));
                    }
                }
            }
        }
        Fraction[] solved = new Fraction[n];
        for (int r = 0; r < n; r++) {
            solved[r] = rows[r][n];
        }
        return solved;
    }

    private static Fraction sumOfPowers(int half, int power) {
        BigInteger sum = BigInteger.ZERO;
        for (int i = -half; i <= half; i++) {
            sum = sum.add(BigInteger.valueOf(i).pow(power));
        }
        return new Fraction(sum, BigInteger.ONE);
    }

    /** Samples on each side of the middle. */
    public int half() {
        return half;
    }

    /** Weight of the sample this many after the middle. */
    public Fraction weight(int index) {
        return weights.get(index + half);
    }

    /** The least whole number by which every weight becomes whole. */
    public BigInteger commonDenominator() {
        BigInteger common = BigInteger.ONE;
        for (Fraction weight : weights) {
            BigInteger d = weight.denominator();
            common = common.multiply(d.divide(common.gcd(d)));
        }
        return common;
    }
}
